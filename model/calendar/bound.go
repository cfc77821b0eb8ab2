package calendar

import (
	"slices"
	"time"
)

// bound is a score that nothing the node leads to falls below.
//
// Too much time: what cannot leave a day stays over its limit, and as changes only
// ever come earlier, the days up to any one together hold at least the work they
// hold now. Early changes: each tank that has to leave a day needs one of its own,
// and a day has to lose as many as its heaviest tanks must leave before the rest
// can fit.
func (s *search) bound() score {
	b := score{over: max(sum(s.stuck), s.pressed()), early: len(s.pulls), ahead: s.ahead}
	slack := s.best.over - sum(s.stuck)
	more, hours := 0, time.Duration(0)
	for d := range s.over {
		if s.over[d] == 0 {
			continue
		}
		n := s.leaving(d, s.stuck[d]+slack)
		more = max(more, n)
		hours = max(hours, s.cheapestOf(d, n))
	}
	b.early += more
	b.ahead += hours
	return b
}

// pressed is the time too much that the days from the first on have together,
// however their changes are spread over them.
func (s *search) pressed() time.Duration {
	var worst time.Duration
	for _, w := range weights() {
		var all time.Duration
		for d := range s.work {
			if !w.holds(s.crews[d]) {
				break
			}
			if d == 0 {
				all += w.of(job{prepare: s.standing})
			}
			for i := range s.chains {
				all += time.Duration(s.at[i].counts[d]) * w.of(s.chains[i].job)
			}
			all += min(s.limit[d], s.rest(d, w)) - s.limit[d]
			worst = max(worst, all)
		}
	}
	return worst
}

// rest is what any session with a move has beside the sum of the weight: see floor.
// Where a day loses all its moves its time too much is 0, which is no less than a
// rest within the limit makes of it.
func (s *search) rest(d int, w weight) time.Duration {
	if w.move && w.prepare || len(s.chains) == 0 || d == 0 && w.prepare && s.standing > 0 {
		return 0
	}
	other := weight{!w.move, !w.prepare}
	least := other.of(s.chains[0].job)
	for i := range s.chains {
		least = min(least, other.of(s.chains[i].job))
	}
	return least
}

// weight is a part of the work of a tank; a session is never shorter than the sum
// of it.
type weight struct{ move, prepare bool }

func weights() [3]weight {
	return [3]weight{{move: true, prepare: true}, {move: true}, {prepare: true}}
}

// holds says that the weight is a bound for a crew: both together only where they
// follow each other.
func (w weight) holds(c crew) bool { return !w.move || !w.prepare || c.serial() }

func (w weight) of(j job) time.Duration {
	var all time.Duration
	if w.move {
		all += j.move
	}
	if w.prepare {
		all += j.prepare
	}
	return all
}

// leaving is how many tanks have to leave a day at least, for it to be no more
// than allowed over its limit.
func (s *search) leaving(d int, allowed time.Duration) int {
	most := 0
	for _, w := range weights() {
		if w.holds(s.crews[d]) {
			most = max(most, s.leavingBy(d, allowed, w))
		}
	}
	return most
}

func (s *search) leavingBy(d int, allowed time.Duration, w weight) int {
	var free []time.Duration
	over := s.floor(d, w) - s.limit[d] - allowed
	for i := range s.chains {
		one := time.Duration(s.at[i].counts[d]) * w.of(s.chains[i].job)
		over += one
		if one > 0 && s.leaves(i, d) {
			free = append(free, one)
		}
	}
	slices.Sort(free)
	n := 0
	for n < len(free) && over > 0 {
		over -= free[len(free)-1-n]
		n++
	}
	return n
}

// floor is the part of a session beside the sum of the weight: what stands empty
// is made ready, where one moves and one makes ready the last tank is made ready
// after the last move, and the first moved before anything is there to make ready.
func (s *search) floor(d int, w weight) time.Duration {
	var all time.Duration
	if d == 0 {
		all = w.of(job{prepare: s.standing})
	}
	if w.move && w.prepare || all > 0 {
		return all
	}
	other := weight{!w.move, !w.prepare}
	least := time.Duration(-1)
	for i := range s.chains {
		if one := other.of(s.chains[i].job); s.at[i].counts[d] > 0 && (least < 0 || one < least) {
			least = one
		}
	}
	return max(0, least)
}

// cheapestOf is the least by which so many of the tanks that can leave a day are
// early together.
func (s *search) cheapestOf(d, n int) time.Duration {
	if n == 0 {
		return 0
	}
	var ahead []time.Duration
	for i := range s.chains {
		if s.at[i].counts[d] > 0 && s.leaves(i, d) {
			ahead = append(ahead, s.cheapest(i))
		}
	}
	slices.Sort(ahead)
	return sum(ahead[:min(n, len(ahead))])
}
