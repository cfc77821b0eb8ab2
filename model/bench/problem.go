package bench

import (
	"errors"
	"strings"

	"drainboard/model/count"
	"drainboard/model/feed"
	"drainboard/model/wash"
	"drainboard/model/water"
)

// Problem says which input is wrong and what would be right.
type Problem struct {
	Field   string // the name of the input; empty where it is of the sum as a whole
	Given   string // the number that was refused; empty where Problem holds it
	Problem string // one line
	Missing bool   // nothing was typed yet
}

// Error reads "ph 81: must be between 4 and 11".
func (p Problem) Error() string {
	return strings.TrimPrefix(strings.TrimRight(p.Field+" "+p.Given, " ")+": "+p.Problem, ": ")
}

// problem names the input that a refusal of a sum is about.
func (s Sum) problem(err error) Problem {
	var (
		own     Problem
		byWater *water.FieldError
		byWash  *wash.FieldError
		byCount *count.FieldError
		byFeed  *feed.FieldError
	)
	switch {
	case errors.As(err, &own):
		return own
	case errors.As(err, &byWater):
		return s.at(byWater.Field, byWater.Given, byWater.Problem)
	case errors.As(err, &byWash):
		return s.at(byWash.Field, byWash.Given, byWash.Problem)
	case errors.As(err, &byCount):
		return s.at(byCount.Field, "", byCount.Problem)
	case errors.As(err, &byFeed):
		return s.ofAlga(byFeed)
	}
	return Problem{Problem: err.Error()}
}

// at finds the input by the name a package has for it.
func (s Sum) at(field, given, problem string) Problem {
	name := strings.ReplaceAll(field, "_", "-")
	if _, known := s.Input(name); known {
		return Problem{Field: name, Given: given, Problem: problem}
	}
	return Problem{Problem: strings.TrimRight(name+" "+given, " ") + ": " + problem}
}

// ofAlga takes the name of an alga, which stands before the field, over into the
// problem.
func (s Sum) ofAlga(err *feed.FieldError) Problem {
	if i := strings.LastIndexByte(err.Field, ' '); i >= 0 {
		return s.at(err.Field[i+1:], "", err.Field[:i]+": "+err.Problem)
	}
	return s.at(err.Field, "", err.Problem)
}
