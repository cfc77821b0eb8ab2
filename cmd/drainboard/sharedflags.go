package main

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"drainboard/model/sequence"
)

// splits reads the tanks to be moved in parts, as in C5,C6:3. Two parts are meant
// where no number is given.
func splits(flag string) ([]sequence.Split, error) {
	var all []sequence.Split
	for part := range strings.SplitSeq(flag, ",") {
		name, count, counted := strings.Cut(part, ":")
		s := sequence.Split{Tank: strings.TrimSpace(name), Parts: 2}
		if counted {
			n, err := strconv.Atoi(strings.TrimSpace(count))
			if err != nil || n < 2 {
				return nil, usagef("--split %q: write TANK or TANK:PARTS with 2 parts or more, as in C5,C6:3", flag)
			}
			s.Parts = n
		}
		if s.Tank == "" {
			return nil, usagef("--split %q: name tanks as in C5,C6:3", flag)
		}
		all = append(all, s)
	}
	return all, nil
}

// pairs reads the tanks to be put together, as in C2:C3,C4:C6.
func pairs(flag string) ([]sequence.Together, error) {
	var all []sequence.Together
	for part := range strings.SplitSeq(flag, ",") {
		a, b, ok := strings.Cut(part, ":")
		pair := sequence.Together{A: strings.TrimSpace(a), B: strings.TrimSpace(b)}
		if !ok || pair.A == "" || pair.B == "" || strings.Contains(pair.B, ":") {
			return nil, usagef("--join %q: name two tanks each time, as in C2:C3", flag)
		}
		all = append(all, pair)
	}
	return all, nil
}

// shareOf is the share of a move as its entry will hold it; nil for a whole move.
func shareOf(m sequence.Move) *float64 {
	if m.Part == 0 {
		return nil
	}
	share := math.Round(m.Share*1e4) / 1e4
	return &share
}

// tanks words where a move goes, and what of the larvae.
func (m moveView) tanks() string {
	words := m.From + " -> " + m.To
	switch {
	case m.Join:
		words += " (joins)"
	case m.Share != nil && *m.Share == 1:
		words += " (the rest)"
	case m.Share != nil:
		words += fmt.Sprintf(" (%.0f %%)", 100**m.Share)
	}
	return words
}

// emptied counts the tanks that the moves of a plan leave to be washed.
func emptied(plan sequence.Plan) int {
	n := 0
	for _, m := range plan.Moves {
		if m.Share == 1 {
			n++
		}
	}
	return n
}
