package calendar

import "time"

// chain is all ways in which the changes of one tank's larvae may be put ahead.
//
// A change that is put ahead to day q is made at the latest moment at which its
// move still ends on that day, and every later one follows from there. So the
// changes after q depend on q alone: the chain's phase q+1. Phase 0 is as they
// fall due.
type chain struct {
	larvae
	due   [][]int8          // [phase][day]: changes that fall due
	ahead [][]time.Duration // [phase][day]: by how much the next change after the day is early on it; 0 where it cannot be
	next  [][]int           // [phase][day]: the first day from there on to which a change can be put ahead; days where there is none
	least [][]time.Duration // [phase][day]: the smallest ahead from there on
}

// chainOf works out the ways of some larvae.
func chainOf(x larvae, c change, h horizon) chain {
	n := h.days()
	k := chain{larvae: x}
	for phase := range n + 1 {
		var times []time.Time
		from := 0
		if phase == 0 {
			times = c.follow(h, x.due, x.last)
		} else if at, ok := latest(h, phase-1, x.job.move); ok {
			from = phase - 1
			times = c.follow(h, at, x.last)
		}
		k.addPhase(h, times, from, c.early)
	}
	return k
}

// latest is the moment at which a move of a day begins at the latest, and false
// where it does not fit into what there is of the day.
func latest(h horizon, d int, move time.Duration) (time.Time, bool) {
	at := h.starts[d+1].Add(-move)
	return at, !at.Before(h.begin(d))
}

// addPhase adds a phase with changes at these times, which begins on a day.
func (k *chain) addPhase(h horizon, times []time.Time, from int, early time.Duration) {
	n := h.days()
	due, ahead := make([]int8, n), make([]time.Duration, n+1)
	next, least := make([]int, n+1), make([]time.Duration, n+1)
	for _, t := range times {
		due[h.day(t)]++
	}
	for i := 0; i < len(times); i++ {
		on := h.day(times[i])
		for d := on - 1; d >= from && (i == 0 || d >= h.day(times[i-1])); d-- {
			at, ok := latest(h, d, k.job.move)
			if by := times[i].Sub(at); ok && by <= early {
				ahead[d] = by
			}
		}
	}
	next[n] = n
	for d := n - 1; d >= 0; d-- {
		next[d], least[d] = next[d+1], least[d+1]
		if ahead[d] > 0 {
			next[d] = d
			if least[d] == 0 || ahead[d] < least[d] {
				least[d] = ahead[d]
			}
		}
	}
	k.due, k.ahead = append(k.due, due), append(k.ahead, ahead[:n])
	k.next, k.least = append(k.next, next), append(k.least, least)
}

// from is when a change that is put ahead to day d may be made at the earliest, at
// is when it is reckoned to be made, by how much before it is due.
func (k *chain) window(h horizon, phase, d int, early time.Duration) (from, at, due time.Time) {
	at, _ = latest(h, d, k.job.move)
	due = at.Add(k.ahead[phase][d])
	return laterOf(due.Add(-early), h.begin(d)), at, due
}
