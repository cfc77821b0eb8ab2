package desk

import (
	"time"

	"drainboard/model/sequence"
)

// Plan is the next change session as it looks now, with the problem it solves.
type Plan struct {
	Problem sequence.Problem
	Plan    sequence.Plan
	Err     error // why no plan can be made
}

// planned is the plan kept from one frame to the next.
type planned struct {
	next   int       // entry number it was made for
	minute time.Time // and minute of the clock
	plan   Plan
}

// Plan returns the plan of the next change session. It is made anew when an
// entry was made or the minute has changed.
func (d *Desk) Plan() Plan {
	minute := d.Now.Truncate(time.Minute)
	if d.planned != nil && d.planned.next == d.Ledger.Next() && d.planned.minute.Equal(minute) {
		return d.planned.plan
	}
	var p Plan
	p.Problem, p.Err = sequence.FromLedger(d.Ledger, d.Now.Truncate(time.Second), sequence.Options{})
	p.Problem.Budget = planBudget
	if p.Err == nil {
		p.Plan, p.Err = sequence.Best(p.Problem)
	}
	d.planned = &planned{d.Ledger.Next(), minute, p}
	return p
}

// planBudget bounds the search of a plan made between two frames: a room that
// needs more is shown the best order found, and told that it is not proved.
const planBudget = 40_000

// Name returns the name of the tank at a place of the plan's problem.
func (p Plan) Name(tank int) string { return p.Problem.Tanks[tank].Name }
