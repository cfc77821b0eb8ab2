package calendar

import (
	"cmp"
	"math"
	"slices"
	"time"

	"drainboard/model"
)

// job is the work on one tank: the larvae are moved out of it, then it is made
// ready again. A tank that stands empty already has no move.
type job struct{ move, prepare time.Duration }

// jobOf is the work of changing a tank of so many litres, by the timetable of the
// house: a move takes litres / drain + handle minutes, making ready wash + litres /
// fill. It is rounded to the millisecond as the order of moves is.
func jobOf(h model.House, litres float64) job {
	return job{
		minutes(litres/h.Litres.Drain + h.Minutes.Handle),
		minutes(litres/h.Litres.Fill + h.Minutes.Wash),
	}
}

// standing is the work of making a tank ready that stands dirty, or washed.
func standing(h model.House, litres float64, washed bool) job {
	if washed {
		return job{prepare: minutes(litres / h.Litres.Fill)}
	}
	return job{prepare: jobOf(h, litres).prepare}
}

func minutes(m float64) time.Duration {
	return max(time.Duration(math.Round(m*60_000)), 1) * time.Millisecond
}

// crew is who works on a day and how many empty tanks they have to begin with.
type crew struct{ people, empty int }

// serial says that moves and making ready follow each other: one person does
// both, or the mover waits for the only empty tank to be made ready.
func (c crew) serial() bool { return c.people < 2 || c.empty < 2 }

// session is how long the jobs take from the first to the last tank ready again.
//
// One person needs the sum, and so do two with one empty tank between them. With
// two or more empty tanks one moves while the other makes ready: the shortest
// time of two machines in a row, by the rule of Johnson (1954, Naval Research
// Logistics Quarterly 1:61-68). That is a lower estimate, as it takes the next
// ready tank to be there and large enough whenever the mover is free. The jobs are
// in the order of [byJohnson].
func (c crew) session(jobs []job) time.Duration {
	var mover, washer time.Duration
	for _, j := range jobs {
		mover += j.move
		if c.serial() {
			mover += j.prepare
			continue
		}
		washer = max(washer, mover) + j.prepare
	}
	return max(mover, washer)
}

// byJohnson compares jobs by Johnson's rule: first those that are quicker to move
// than to make ready, by the length of the move; then the others, by the length
// of making ready, the longest first.
func byJohnson(a, b job) int {
	firstA, firstB := a.move <= a.prepare, b.move <= b.prepare
	switch {
	case firstA && firstB:
		return cmp.Compare(a.move, b.move)
	case firstA:
		return -1
	case firstB:
		return 1
	}
	return cmp.Compare(b.prepare, a.prepare)
}

// inOrder is the jobs in the order of Johnson's rule.
func inOrder(jobs []job) []job {
	sorted := slices.Clone(jobs)
	slices.SortStableFunc(sorted, byJohnson)
	return sorted
}
