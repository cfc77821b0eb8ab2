package sequence_test

import (
	"math"
	"slices"
	"time"

	"drainboard/model/sequence"
)

// The oracle plans a session the obvious way: it tries every ordered choice of
// sources and plays each out from the beginning, person by person. It shares no
// code with the package.

// played is what one order of sources leads to.
type played struct {
	order  []int // indices in Problem.Sources
	worst  time.Duration
	starts []time.Time
	ends   []time.Time
	to     []int
	finish time.Time
}

// everyOrder returns the best of all orders by the three aims.
func everyOrder(p sequence.Problem) played {
	best, _ := play(p, nil)
	var extend func(order []int)
	extend = func(order []int) {
		for s := range p.Sources {
			if slices.Contains(order, s) {
				continue
			}
			longer := append(slices.Clone(order), s)
			got, ok := play(p, longer)
			if !ok {
				continue
			}
			if beats(p, got, best) {
				best = got
			}
			extend(longer)
		}
	}
	extend(nil)
	return best
}

func beats(p sequence.Problem, a, b played) bool {
	if len(a.order) != len(b.order) {
		return len(a.order) > len(b.order)
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

func ranksBefore(p sequence.Problem, a, b int) bool {
	sa, sb := p.Sources[a], p.Sources[b]
	if sa.Suspect != sb.Suspect {
		return sb.Suspect
	}
	if p.Order == sequence.OldestFirst && sa.AgeDays != sb.AgeDays {
		return sa.AgeDays > sb.AgeDays
	}
	if p.Order == sequence.YoungestFirst && sa.AgeDays != sb.AgeDays {
		return sa.AgeDays < sb.AgeDays
	}
	if !sa.Due.Equal(sb.Due) {
		return sa.Due.Before(sb.Due)
	}
	return sa.Tank < sb.Tank
}

func inMinutes(m float64) time.Duration {
	return time.Duration(math.Round(m*60*1000)) * time.Millisecond
}

// standIn is an empty tank that is full of clean water.
type standIn struct {
	tank  int
	since time.Time
	fresh bool // filled in this session, so its temperature is not known
}

// play acts an order out; ok is false when some source never gets a tank.
func play(p sequence.Problem, order []int) (played, bool) {
	var ready []standIn
	var queue []int
	for t, tank := range p.Tanks {
		switch tank.State {
		case sequence.Ready:
			ready = append(ready, standIn{tank: t, since: tank.Since})
		case sequence.Dirty, sequence.Washed:
			at := 0
			for at < len(queue) && !tank.Since.Before(p.Tanks[queue[at]].Since) {
				at++
			}
			queue = slices.Insert(queue, at, t)
		}
	}
	if p.Crew == 1 {
		return playAlone(p, order, ready, queue)
	}
	return playTogether(p, order, ready, queue)
}

func playAlone(p sequence.Problem, order []int, ready []standIn, queue []int) (played, bool) {
	out := played{order: order, finish: p.Now}
	now := p.Now
	makeReady := func() {
		now = now.Add(preparing(p, queue[0]))
		ready = append(ready, standIn{queue[0], now, true})
		queue = queue[1:]
	}
	for _, s := range order {
		for choose(p, s, ready) < 0 {
			if len(queue) == 0 {
				return out, false
			}
			makeReady()
		}
		i := choose(p, s, ready)
		out.note(p, s, ready[i].tank, now)
		ready = slices.Delete(ready, i, i+1)
		now = now.Add(moving(p, s))
		out.ends = append(out.ends, now)
		queue = append(queue, p.Sources[s].Tank)
	}
	for len(queue) > 0 {
		makeReady()
	}
	out.finish = now
	return out, true
}

func playTogether(p sequence.Problem, order []int, ready []standIn, queue []int) (played, bool) {
	out := played{order: order, finish: p.Now}
	now := p.Now        // the mover
	washerFree := p.Now // the washer
	emptied := map[int]time.Time{}
	// nextReady is when the washer will have the head of the queue ready.
	nextReady := func() time.Time {
		begin := washerFree
		if e, ok := emptied[queue[0]]; ok && e.After(begin) {
			begin = e
		}
		return begin.Add(preparing(p, queue[0]))
	}
	washOne := func() {
		washerFree = nextReady()
		ready = append(ready, standIn{queue[0], washerFree, true})
		queue = queue[1:]
	}
	for _, s := range order {
		for len(queue) > 0 && !nextReady().After(now) {
			washOne()
		}
		for choose(p, s, ready) < 0 {
			if len(queue) == 0 {
				return out, false
			}
			washOne()
			now = later(now, washerFree)
		}
		i := choose(p, s, ready)
		out.note(p, s, ready[i].tank, now)
		ready = slices.Delete(ready, i, i+1)
		now = now.Add(moving(p, s))
		out.ends = append(out.ends, now)
		emptied[p.Sources[s].Tank] = now
		queue = append(queue, p.Sources[s].Tank)
	}
	for len(queue) > 0 {
		washOne()
	}
	out.finish = later(now, washerFree)
	return out, true
}

func (o *played) note(p sequence.Problem, s, to int, start time.Time) {
	o.starts = append(o.starts, start)
	o.to = append(o.to, to)
	if late := start.Sub(p.Sources[s].Due.Add(p.Grace)); late > o.worst {
		o.worst = late
	}
}

// choose returns the place in ready of the tank the rule takes, or -1.
func choose(p sequence.Problem, s int, ready []standIn) int {
	best := -1
	for i, r := range ready {
		if fits(p, s, r.tank) && (best < 0 || prefers(p, s, r, ready[best])) {
			best = i
		}
	}
	return best
}

func prefers(p sequence.Problem, s int, a, b standIn) bool {
	da, knownA := degrees(p, s, a)
	db, knownB := degrees(p, s, b)
	switch {
	case knownA != knownB:
		return knownA
	case knownA && da != db:
		return da < db
	case !a.since.Equal(b.since):
		return a.since.Before(b.since)
	}
	return a.tank < b.tank
}

// degrees is the difference in thousandths.
func degrees(p sequence.Problem, s int, r standIn) (int, bool) {
	from, to := p.Tanks[p.Sources[s].Tank].Celsius, p.Tanks[r.tank].Celsius
	if r.fresh || !from.Known || !to.Known {
		return 0, false
	}
	return int(math.Abs(from.Value-to.Value)*1000 + 0.5), true
}

func fits(p sequence.Problem, s, tank int) bool {
	src := p.Sources[s]
	if p.Tanks[tank].Litres >= p.Tanks[src.Tank].Litres {
		return true
	}
	return src.Larvae.Known && src.PerLitre > 0 && src.Larvae.Value/p.Tanks[tank].Litres <= src.PerLitre
}

func moving(p sequence.Problem, s int) time.Duration {
	return inMinutes(p.Tanks[p.Sources[s].Tank].Litres/p.Pace.DrainLPM + p.Pace.HandleMinutes)
}

func preparing(p sequence.Problem, tank int) time.Duration {
	m := p.Tanks[tank].Litres / p.Pace.FillLPM
	if p.Tanks[tank].State != sequence.Washed {
		m += p.Pace.WashMinutes
	}
	return inMinutes(m)
}

func later(a, b time.Time) time.Time {
	if a.After(b) {
		return a
	}
	return b
}
