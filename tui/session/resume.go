package session

import (
	"strings"
	"time"

	"drainboard/model"
	"drainboard/tui/text"
)

// longAway is the absence after which a section is begun again: what was read
// before it says little of the water now. Common practice, no source.
const longAway = 30 * time.Minute

// shortAway is the absence from which one is told of it.
const shortAway = 2 * time.Minute

// resumption is what it takes to go on with an open session.
type resumption struct {
	// Note says how long the crew was away; empty where it is not worth a word.
	Note string
	// Back is the record that goes back to the last pause point, nil where the
	// session goes on where it was left.
	Back *model.StepDone
}

// resume says how an open session is gone on with by a person (initials, or none)
// who was away so long: after a long absence or by another person from the last pause
// point, else from the step at which it was left.
func resume(s *model.SessionNow, p model.Procedure, by string, away time.Duration) resumption {
	var words []string
	if away >= shortAway {
		words = append(words, "away "+text.Duration(away))
	}
	other := by != "" && s.By != "" && by != s.By
	if other {
		words = append(words, by+" goes on for "+s.By)
	}
	r := resumption{Note: strings.Join(words, ", ")}
	at, open := s.MoverPrompt(p)
	if !open || away < longAway && !other {
		return r
	}
	if pause, answered := s.PausePoint(p, at); pause != "" && answered {
		r.Back = &model.StepDone{Session: s.N, Move: at.Move, Name: pause, Why: r.Note}
	}
	return r
}
