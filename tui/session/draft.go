package session

import (
	"fmt"
	"slices"
	"time"

	"drainboard/model"
	"drainboard/model/sequence"
	"drainboard/tui/desk"
	"drainboard/tui/text"
)

// leg is one row of the crew's list. An empty destination is left to the rule.
type leg struct{ from, to string }

// draft is the list of moves as the crew wants it. The zero value is the best
// plan, whatever it is.
type draft struct {
	legs    []leg
	changed bool
}

// row is one leg laid out in time, or what is wrong with it.
type row struct {
	leg       leg
	move      *sequence.Move
	complaint string
}

// laid is a draft laid out in time, beside the best plan for the same tanks.
type laid struct {
	problem sequence.Problem
	plan    sequence.Plan
	best    sequence.Plan
	rows    []row
	err     error
}

// name returns the name of a tank of the plan.
func (t laid) name(tank int) string { return t.problem.Tanks[tank].Name }

// layOut times a draft. base is the best plan for what falls due; best finds that
// of a problem with tanks the crew added.
func layOut(l *model.Ledger, d draft, base desk.Plan, best func(sequence.Problem) (sequence.Plan, error)) laid {
	t := laid{problem: base.Problem, best: base.Plan, err: base.Err}
	if t.err != nil {
		return t
	}
	if !d.changed {
		return t.asBest()
	}
	t.problem.Sources = withAdded(l, t.problem, d.legs)
	if len(t.problem.Sources) > len(base.Problem.Sources) {
		if t.best, t.err = best(t.problem); t.err != nil {
			return t
		}
	}
	t.retime(l, d.legs)
	return t
}

// asBest shows the best plan as the list.
func (t laid) asBest() laid {
	t.plan = t.best
	for i := range t.plan.Moves {
		m := &t.plan.Moves[i]
		t.rows = append(t.rows, row{leg: leg{from: t.name(m.From), to: t.name(m.To)}, move: m})
	}
	return t
}

// withAdded gives the sources of the window and those the crew added.
func withAdded(l *model.Ledger, p sequence.Problem, legs []leg) []sequence.Source {
	sources := slices.Clip(p.Sources)
	for _, leg := range legs {
		t, ok := l.Tank(leg.from)
		if !ok || t.State != model.Holding || slices.ContainsFunc(sources, func(s sequence.Source) bool { return s.Tank == t.Place }) {
			continue
		}
		sources = append(sources, sequence.SourceOf(l, t, p.Now))
	}
	return sources
}

// retime lays the crew's own list out, each leg with its complaint where it
// cannot be made.
func (t *laid) retime(l *model.Ledger, legs []leg) {
	listed := make([]sequence.Leg, len(legs))
	for i, leg := range legs {
		listed[i] = sequence.Leg{From: placeOf(l, leg.from), To: sequence.ByRule}
		if leg.to != "" {
			listed[i].To = placeOf(l, leg.to)
		}
	}
	var complaints []sequence.Complaint
	if t.plan, complaints, t.err = sequence.Retime(t.problem, listed); t.err != nil {
		return
	}
	next := 0
	for i, leg := range legs {
		at := slices.IndexFunc(complaints, func(c sequence.Complaint) bool { return c.Leg == i })
		if at >= 0 {
			t.rows = append(t.rows, row{leg: leg, complaint: complaints[at].Why})
			continue
		}
		m := &t.plan.Moves[next]
		next++
		t.rows = append(t.rows, row{leg: leg, move: m})
	}
}

// placeOf is the place of a tank in the room; one it does not have is none.
func placeOf(l *model.Ledger, name string) int {
	i, _ := l.Room().Tank(name)
	return i
}

// legs are the moves that can be made, as a session is opened with.
func (t laid) legs() []model.Leg {
	var legs []model.Leg
	for _, m := range t.plan.Moves {
		legs = append(legs, model.Leg{From: t.name(m.From), To: t.name(m.To)})
	}
	return legs
}

// washes is how many tanks the session has to wash: those it empties and those
// that stand dirty.
func (t laid) washes() int {
	n := 0
	for _, p := range t.plan.Preparations {
		if p.Wash {
			n++
		}
	}
	return n
}

// against words how the crew's list compares with the best plan.
func (t laid) against() string {
	words := fmt.Sprintf("your list: worst overrun %d min, best plan %d", lateMinutes(t.plan.WorstOverrun), lateMinutes(t.best.WorstOverrun))
	if n, m := len(t.plan.Unmoved), len(t.best.Unmoved); n != m {
		words += fmt.Sprintf("; %d not moved, best %d", n, m)
	}
	switch gap := t.plan.Finish.Sub(t.best.Finish); {
	case gap >= time.Minute:
		words += "; " + text.Duration(gap) + " later"
	case gap <= -time.Minute:
		words += "; " + text.Duration(gap) + " earlier"
	}
	return words
}

// lateMinutes rounds an overrun up: a minute begun counts.
func lateMinutes(d time.Duration) int { return int((d + time.Minute - 1) / time.Minute) }

// own turns the plan shown into the crew's own list, destinations left to the
// rule but for those that were chosen.
func (d draft) own(t laid) draft {
	if d.changed {
		return draft{slices.Clone(d.legs), true}
	}
	own := draft{changed: true}
	for _, r := range t.rows {
		own.legs = append(own.legs, leg{from: r.leg.from})
	}
	return own
}

// shift moves a row up (-1) or down (1) and returns where it stands then.
func (d draft) shift(i, by int) (draft, int) {
	to := i + by
	if i < 0 || i >= len(d.legs) || to < 0 || to >= len(d.legs) {
		return d, i
	}
	d.legs[i], d.legs[to] = d.legs[to], d.legs[i]
	return d, to
}

// drop leaves a row out.
func (d draft) drop(i int) draft {
	if i >= 0 && i < len(d.legs) {
		d.legs = slices.Delete(d.legs, i, i+1)
	}
	return d
}

// add puts a tank at the end of the list, or says why it cannot stand there.
func (d draft) add(l *model.Ledger, name string, now time.Time) (draft, error) {
	if _, err := sequence.FromLedger(l, now, sequence.Options{Tanks: []string{name}}); err != nil {
		return d, err
	}
	t, _ := l.Tank(name)
	if slices.ContainsFunc(d.legs, func(x leg) bool { return x.from == t.Tank.Name }) {
		return d, fmt.Errorf("%s is in the list already", t.Tank.Name)
	}
	d.legs = append(d.legs, leg{from: t.Tank.Name})
	return d, nil
}

// into sets the destination of a row; no name leaves it to the rule again.
func (d draft) into(l *model.Ledger, i int, name string) (draft, error) {
	if i < 0 || i >= len(d.legs) {
		return d, fmt.Errorf("no move is chosen")
	}
	to := ""
	if name != "" {
		t, ok := l.Tank(name)
		if !ok {
			return d, fmt.Errorf("tank %q is not one of this room", name)
		}
		to = t.Tank.Name
	}
	d.legs[i].to = to
	return d, nil
}
