package calendar

import (
	"time"

	"drainboard/model"
	"drainboard/model/sequence"
)

// Spare is what one more ready tank would save in the next change session.
type Spare struct {
	At     time.Time // when the session is taken to begin
	Moves  int       // that it asks for
	Litres float64   // of the tank more: as large as the largest that is changed
	As     Outcome   // with the tanks there are
	More   Outcome   // with one more
}

// Outcome is what a session comes to in its best order.
type Outcome struct {
	Unmoved int           // tanks that have to stay
	Worst   time.Duration // overrun: a start past due and grace
	Length  time.Duration // till the last emptied tank is ready again
	Best    bool          // the order is proved best
}

// Saves reports whether the tank would save anything.
func (s Spare) Saves() bool {
	return s.More.Unmoved < s.As.Unmoved || s.More.Worst < s.As.Worst || s.More.Length < s.As.Length
}

// OneMore works out what one more ready tank would save in the next change
// session: the one of now, or where nothing falls due within house.window_hours,
// the one that begins when the next tank falls due. It is false where no tank
// holds larvae. The node budget is that of [sequence.Problem], for each of the two
// plans.
func OneMore(l *model.Ledger, now time.Time, budget int) (Spare, bool, error) {
	next, ok := l.NextDue(now)
	if !ok {
		return Spare{}, false, nil
	}
	at := now
	if !l.InWindow(next, now) {
		at = l.Due(next)
	}
	p, err := sequence.FromLedger(l, at, sequence.Options{})
	if err != nil {
		return Spare{}, false, err
	}
	p.Budget = budget
	s := Spare{At: at, Moves: len(p.Sources)}
	for _, source := range p.Sources {
		s.Litres = max(s.Litres, p.Tanks[source.Tank].Litres)
	}
	if s.As, err = outcome(p); err != nil {
		return Spare{}, false, err
	}
	p.Tanks = append(p.Tanks, sequence.Tank{Name: "one more", Litres: s.Litres, State: sequence.Ready, Since: at})
	s.More, err = outcome(p)
	return s, err == nil, err
}

func outcome(p sequence.Problem) (Outcome, error) {
	plan, err := sequence.Best(p)
	return Outcome{len(plan.Unmoved), plan.WorstOverrun, plan.Finish.Sub(p.Now), plan.Best}, err
}
