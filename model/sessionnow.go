package model

import "time"

// SessionNow is a change session as the entries leave it.
type SessionNow struct {
	N      int // n of its opened entry
	Opened time.Time
	By     string // who keyed its last entry, where given
	Legs   []Leg
	Steps  []StepRecord
	// Moved holds, for each leg, the n of the moved entry that did it, 0 before.
	Moved []int
	// Last is when the last entry of the session was made.
	Last   time.Time
	Closed *ClosedAt // nil while it is open
}

// StepRecord is one step entry of a session.
type StepRecord struct {
	At   time.Time
	N    int
	By   string
	Step *StepDone
	// Stage is the number of sections of the mover's lane that stood behind
	// when the record was made: a deferred step is asked again once it is past.
	Stage int
}

// ClosedAt is how a session ended.
type ClosedAt struct {
	At     time.Time
	N      int
	Closed *Closed
}

// record returns the last record of a step, and false where there is none.
func (s *SessionNow) record(move int, name string) (StepRecord, bool) {
	for i := len(s.Steps) - 1; i >= 0; i-- {
		if r := s.Steps[i]; r.Step.Move == move && r.Step.Name == name {
			return r, true
		}
	}
	return StepRecord{}, false
}

// Answer returns what was last answered at a step of a move, and false where it
// is not done.
func (s *SessionNow) Answer(move int, name string) (string, bool) {
	r, ok := s.record(move, name)
	if !ok || !r.Step.Done {
		return "", false
	}
	return r.Step.Why, true
}

// made reports whether a move (from 1) was entered.
func (s *SessionNow) made(move int) bool { return move > 0 && s.Moved[move-1] != 0 }

// lastRecord returns the n of the last step entry of a move, or of the session's
// opening where it has none.
func (s *SessionNow) lastRecord(move int) int {
	for i := len(s.Steps) - 1; i >= 0; i-- {
		if s.Steps[i].Step.Move == move {
			return s.Steps[i].N
		}
	}
	return s.N
}

// Deferred lists the steps whose last word is that they are not done, but for
// those of moves that were left out.
func (s *SessionNow) Deferred(p Procedure) []StepRecord {
	var open []StepRecord
	for i, r := range s.Steps {
		if r.Step.Done || s.after(i, r.Step) {
			continue
		}
		if _, out := s.LeftOut(r.Step.Move); out {
			continue
		}
		if _, ok := p.Step(r.Step.Name); ok {
			open = append(open, r)
		}
	}
	return open
}

// after reports whether a later record speaks of the same step.
func (s *SessionNow) after(i int, step *StepDone) bool {
	for _, later := range s.Steps[i+1:] {
		if later.Step.Move == step.Move && later.Step.Name == step.Name {
			return true
		}
	}
	return false
}
