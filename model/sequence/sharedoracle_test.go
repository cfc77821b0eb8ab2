package sequence_test

import (
	"slices"
	"time"

	"drainboard/model/sequence"
)

// The oracle for sources that are split or joined acts every order of all their
// parts out, person by person, and keeps the best by the three aims. A source is
// moved in all its parts or not at all. It shares no code with the package.

// everySharedOrder returns the best of all orders.
func everySharedOrder(p sequence.Problem) played {
	best, _ := actOut(p, nil)
	var extend func(order []int)
	extend = func(order []int) {
		for s := range p.Sources {
			if times(order, s) == partsOf(p, s) {
				continue
			}
			longer := append(slices.Clone(order), s)
			got, ok := actOut(p, longer)
			if !ok {
				continue
			}
			if whole(p, longer) && sharedBeats(p, got, best) {
				best = got
			}
			extend(longer)
		}
	}
	extend(nil)
	return best
}

func partsOf(p sequence.Problem, s int) int { return max(1, p.Sources[s].Parts) }

func times(order []int, s int) int {
	n := 0
	for _, x := range order {
		if x == s {
			n++
		}
	}
	return n
}

// whole says that no source is moved in part only.
func whole(p sequence.Problem, order []int) bool {
	for s := range p.Sources {
		if n := times(order, s); n != 0 && n != partsOf(p, s) {
			return false
		}
	}
	return true
}

func sharedBeats(p sequence.Problem, a, b played) bool {
	movedA, movedB := 0, 0
	for s := range p.Sources {
		movedA += min(1, times(a.order, s))
		movedB += min(1, times(b.order, s))
	}
	if movedA != movedB {
		return movedA > movedB
	}
	if a.worst != b.worst {
		return a.worst < b.worst
	}
	for i := range a.order {
		if a.order[i] != b.order[i] {
			return ranksBefore(p, a.order[i], b.order[i])
		}
	}
	return false
}

// partner returns the source that s is to be put together with, or -1.
func partner(p sequence.Problem, s int) int {
	sourceOf := func(tank int) int {
		return slices.IndexFunc(p.Sources, func(x sequence.Source) bool { return x.Tank == tank })
	}
	for _, j := range p.Joins {
		switch p.Sources[s].Tank {
		case j.A:
			return sourceOf(j.B)
		case j.B:
			return sourceOf(j.A)
		}
	}
	return -1
}

// crowd is what a session has come to.
type crowd struct {
	ready []standIn
	queue []int // tanks to be made ready
	went  map[int]int
}

// actOut acts an order out; ok is false when some part never gets a tank.
func actOut(p sequence.Problem, order []int) (played, bool) {
	c := crowd{went: map[int]int{}}
	for t, tank := range p.Tanks {
		switch tank.State {
		case sequence.Ready:
			c.ready = append(c.ready, standIn{tank: t, since: tank.Since})
		case sequence.Dirty, sequence.Washed:
			at := 0
			for at < len(c.queue) && !tank.Since.Before(p.Tanks[c.queue[at]].Since) {
				at++
			}
			c.queue = slices.Insert(c.queue, at, t)
		}
	}
	out := played{order: order, finish: p.Now}
	mover, washer := p.Now, p.Now
	emptied := map[int]time.Time{}
	if p.Crew == 1 {
		return actAlone(p, c, out)
	}
	washed := func() time.Time { // when the head of the queue is ready
		return later(washer, emptied[c.queue[0]]).Add(preparing(p, c.queue[0]))
	}
	wash := func() {
		washer = washed()
		c.ready = append(c.ready, standIn{c.queue[0], washer, true})
		c.queue = c.queue[1:]
	}
	for i, s := range order {
		for len(c.queue) > 0 && !washed().After(mover) {
			wash()
		}
		if !c.waits(p, s, wash) {
			return out, false
		}
		if to, joined := c.joins(p, s); joined {
			out.note(p, s, to, mover)
		} else {
			slot := c.takes(p, s)
			mover = later(mover, c.ready[slot].since)
			out.note(p, s, c.take(s, slot), mover)
		}
		mover = mover.Add(movingPart(p, s))
		out.ends = append(out.ends, mover)
		if times(order[:i+1], s) == partsOf(p, s) {
			emptied[p.Sources[s].Tank] = mover
			c.queue = append(c.queue, p.Sources[s].Tank)
		}
	}
	for len(c.queue) > 0 {
		wash()
	}
	out.finish = later(mover, washer)
	return out, true
}

func actAlone(p sequence.Problem, c crowd, out played) (played, bool) {
	now := p.Now
	wash := func() {
		now = now.Add(preparing(p, c.queue[0]))
		c.ready = append(c.ready, standIn{c.queue[0], now, true})
		c.queue = c.queue[1:]
	}
	for i, s := range out.order {
		if !c.waits(p, s, wash) {
			return out, false
		}
		to, joined := c.joins(p, s)
		if !joined {
			to = c.take(s, c.takes(p, s))
		}
		out.note(p, s, to, now)
		now = now.Add(movingPart(p, s))
		out.ends = append(out.ends, now)
		if times(out.order[:i+1], s) == partsOf(p, s) {
			c.queue = append(c.queue, p.Sources[s].Tank)
		}
	}
	for len(c.queue) > 0 {
		wash()
	}
	out.finish = now
	return out, true
}

// joins returns the tank in which the partner of s is, if both fit there.
func (c crowd) joins(p sequence.Problem, s int) (int, bool) {
	other := partner(p, s)
	if other < 0 {
		return 0, false
	}
	to, ok := c.went[other]
	return to, ok && fitTogether(p, s, other, to)
}

// waits has tanks washed until s can be moved: in a tank for both, if there is or
// will be one among those empty now.
func (c *crowd) waits(p sequence.Problem, s int, wash func()) bool {
	if _, ok := c.joins(p, s); ok {
		return true
	}
	fit := c.wanted(p, s)
	if fit == nil {
		return false
	}
	for !slices.ContainsFunc(c.ready, func(r standIn) bool { return fit(r.tank) }) {
		wash()
	}
	return true
}

// wanted says which tanks s goes into: those that hold its partner too, where the
// partner is yet to come and such a tank is empty; else those that hold it; nil
// where none is empty.
func (c *crowd) wanted(p sequence.Problem, s int) func(tank int) bool {
	empty := slices.Clone(c.queue)
	for _, r := range c.ready {
		empty = append(empty, r.tank)
	}
	if other := partner(p, s); other >= 0 {
		both := func(tank int) bool { return fitTogether(p, s, other, tank) }
		if _, gone := c.went[other]; !gone && slices.ContainsFunc(empty, both) {
			return both
		}
	}
	alone := func(tank int) bool { return fitsPart(p, s, tank) }
	if !slices.ContainsFunc(empty, alone) {
		return nil
	}
	return alone
}

// takes returns the place in ready of the tank that s goes into.
func (c *crowd) takes(p sequence.Problem, s int) int {
	fit, best := c.wanted(p, s), -1
	for i, r := range c.ready {
		if fit(r.tank) && (best < 0 || prefers(p, s, r, c.ready[best])) {
			best = i
		}
	}
	return best
}

func (c *crowd) take(s, i int) int {
	to := c.ready[i].tank
	c.ready = slices.Delete(slices.Clone(c.ready), i, i+1)
	c.went[s] = to
	return to
}

func fitsPart(p sequence.Problem, s, tank int) bool {
	src := p.Sources[s]
	if p.Tanks[tank].Litres >= p.Tanks[src.Tank].Litres {
		return true
	}
	return src.Larvae.Known && src.PerLitre > 0 &&
		src.Larvae.Value/float64(partsOf(p, s))/p.Tanks[tank].Litres <= src.PerLitre
}

func fitTogether(p sequence.Problem, a, b, tank int) bool {
	sa, sb := p.Sources[a], p.Sources[b]
	if p.Tanks[tank].Litres >= p.Tanks[sa.Tank].Litres+p.Tanks[sb.Tank].Litres {
		return true
	}
	return sa.Larvae.Known && sb.Larvae.Known && sa.PerLitre > 0 &&
		(sa.Larvae.Value+sb.Larvae.Value)/p.Tanks[tank].Litres <= sa.PerLitre
}

func movingPart(p sequence.Problem, s int) time.Duration {
	return inMinutes(p.Tanks[p.Sources[s].Tank].Litres/float64(partsOf(p, s))/p.Pace.DrainLPM + p.Pace.HandleMinutes)
}
