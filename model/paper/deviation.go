package paper

import (
	"slices"
	"strings"
	"time"

	"drainboard/model"
)

// DeviationKind says in which way something went otherwise.
type DeviationKind string

// The kinds of deviations.
const (
	WentAhead  DeviationKind = "went ahead" // a step that held was passed with a reason
	MovedWhy   DeviationKind = "moved, why" // a move that was given a reason
	PutOff     DeviationKind = "put off"    // a step deferred
	LeftOut    DeviationKind = "left out"   // an agreed move that was not made
	OtherTank  DeviationKind = "other tank" // a move into another tank than agreed
	Incomplete DeviationKind = "incomplete" // a session closed with something open
	Corrected  DeviationKind = "corrected"
	Odd        DeviationKind = "odd"
)

// Deviation is one thing that went otherwise than the room has it.
type Deviation struct {
	Kind DeviationKind
	N    int
	At   time.Time
	By   string
	Fact model.Fact
	Why  string    // the reason given, or what was odd
	Leg  model.Leg // for what is of a session's move
}

// deviations lists what went otherwise between two moments, in the order in
// which it happened.
func deviations(l *model.Ledger, since, now time.Time) ([]Deviation, error) {
	list, err := oddSince(l, since)
	if err != nil {
		return nil, err
	}
	for _, s := range l.Sessions() {
		list = append(list, ofSteps(s, since)...)
	}
	for _, e := range l.Events() {
		if e.At.Before(since) {
			continue
		}
		switch x := e.Fact.(type) {
		case *model.Moved:
			if x.Why != "" {
				list = append(list, Deviation{Kind: MovedWhy, N: e.N, At: e.At, By: e.By, Fact: x, Why: x.Why})
			}
		case *model.Closed:
			if !x.Complete {
				list = append(list, Deviation{Kind: Incomplete, N: e.N, At: e.At, By: e.By, Fact: x, Why: x.Why})
			}
		}
	}
	for _, e := range l.Entries() {
		if x, ok := e.Fact.(*model.Corrected); ok && !e.At.Before(since) && !e.At.After(now) {
			list = append(list, Deviation{Kind: Corrected, N: e.N, At: e.At, By: e.By, Fact: x, Why: x.Why})
		}
	}
	all := slices.Clone(list)
	list = slices.DeleteFunc(list, func(d Deviation) bool { return d.Kind == MovedWhy && toldAtSteps(d, all) })
	slices.SortStableFunc(list, func(a, b Deviation) int { return a.At.Compare(b.At) })
	return list, nil
}

// toldAtSteps reports whether the reasons of a move are those given at its steps,
// where they stand with what was answered.
func toldAtSteps(d Deviation, list []Deviation) bool {
	from := d.Fact.(*model.Moved).From
	for reason := range strings.SplitSeq(d.Why, "; ") {
		if !slices.ContainsFunc(list, func(s Deviation) bool {
			return s.Kind == WentAhead && s.Leg.From == from && !s.At.After(d.At) && strings.Contains(s.Why, reason)
		}) {
			return false
		}
	}
	return true
}

// aheadMark parts what was answered at a step from the reason to go ahead.
const aheadMark = "; went ahead: "

func ofSteps(s *model.SessionNow, since time.Time) []Deviation {
	var list []Deviation
	for _, r := range s.Steps {
		if r.At.Before(since) {
			continue
		}
		d := Deviation{N: r.N, At: r.At, By: r.By, Fact: r.Step, Why: r.Step.Why}
		if r.Step.Move > 0 {
			d.Leg = s.Legs[r.Step.Move-1]
		}
		answer, reason, ahead := strings.Cut(r.Step.Why, aheadMark)
		switch {
		case r.Step.Name == model.StepLeftOut && r.Step.Done:
			d.Kind = LeftOut
		case r.Step.Name == model.StepInto && r.Step.Done:
			d.Kind = OtherTank
		case !r.Step.Done:
			d.Kind = PutOff
		case ahead:
			d.Kind, d.Why = WentAhead, strings.TrimPrefix(answer+": "+reason, ": ")
		default:
			continue
		}
		list = append(list, d)
	}
	return list
}

// oddSince lists the readings since a moment that were odd when they were
// entered.
func oddSince(l *model.Ledger, since time.Time) ([]Deviation, error) {
	var list []Deviation
	err := replay(l, ofSession, func(then *model.Ledger, e model.Entry) {
		if e.At.Before(since) || ofSource(e.Fact) {
			return
		}
		if odd := then.Odd(e); len(odd) > 0 {
			list = append(list, Deviation{Kind: Odd, N: e.N, At: e.At, By: e.By, Fact: e.Fact, Why: strings.Join(odd, "; ")})
		}
	}, nil)
	return list, err
}

// ofSource reports whether a fact is a temperature of a water source: one that is
// kept cold or warm on purpose is nothing that went otherwise.
func ofSource(fact model.Fact) bool {
	x, ok := fact.(*model.Temperature)
	return ok && x.Supply != ""
}

// acknowledges reports whether a remark says that an alarm was seen.
func acknowledges(n *model.Noted) bool {
	return n.Tank != "" && strings.HasPrefix(n.Text, model.SeenPrefix)
}
