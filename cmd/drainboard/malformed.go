package main

import (
	"math"
	"strconv"
	"strings"

	"drainboard/model"
)

// malformed reports whether a table of texts is not even written as a fact's
// fields are: a name it does not have, a field it needs and lacks, or a value of
// the wrong type. What is well written may still be untrue.
func malformed(fact model.Fact, table map[string]string) bool {
	known := map[string]bool{}
	for _, f := range fact.Fields() {
		known[f.Name] = true
		value, given := table[f.Name]
		if !given && f.Need || given && !written(f, value) {
			return true
		}
	}
	for name := range table {
		if !known[name] {
			return true
		}
	}
	return false
}

// written reports whether a text is of a field's type.
func written(f model.Field, s string) bool {
	if model.ParseField(f, s) == nil {
		return true
	}
	switch f.Type {
	case model.Number:
		return isNumber(s)
	case model.Whole:
		return isWhole(s)
	case model.Numbers:
		return each(s, isNumber)
	case model.Wholes:
		return each(s, isWhole)
	case model.PerAlga:
		return each(s, func(part string) bool {
			alga, x, ok := strings.Cut(part, ":")
			return ok && strings.TrimSpace(alga) != "" && isNumber(x)
		})
	case model.Legs:
		return each(s, func(part string) bool { return strings.ContainsAny(part, ":>") })
	case model.Text, model.TankName, model.Source, model.ShortName, model.AlgaName:
		return !f.Need || strings.TrimSpace(s) != ""
	}
	return false // a word, a flag, a day or a change that was not taken is not one
}

func each(s string, ok func(string) bool) bool {
	for part := range strings.SplitSeq(s, ",") {
		if !ok(part) {
			return false
		}
	}
	return true
}

// isNumber takes what is written as a decimal number, be it ever so large.
func isNumber(s string) bool {
	s = strings.TrimSpace(s)
	if s == "" || strings.Trim(s, "0123456789.+-eE") != "" {
		return false
	}
	_, err := strconv.ParseFloat(s, 64)
	return err == nil || strings.HasSuffix(err.Error(), strconv.ErrRange.Error())
}

func isWhole(s string) bool {
	x, err := strconv.ParseFloat(strings.TrimSpace(s), 64)
	return isNumber(s) && (err != nil || x == math.Trunc(x))
}
