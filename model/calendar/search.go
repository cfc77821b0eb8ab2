package calendar

import (
	"slices"
	"time"
)

// search looks for the best set of changes to put ahead, branch and bound.
//
// A node has put some changes ahead and decided against others, each tank up to a
// day of its own; what follows is taken as it falls due. At the first day that is
// too full one of its tanks must leave it, by a change put ahead on an earlier
// day: the node branches on the first day open to that tank, ahead or not.
type search struct {
	chains   []chain // in the order of Johnson's rule
	crews    []crew  // by day
	standing time.Duration
	limit    []time.Duration

	at    []place
	pulls []pull
	ahead time.Duration // of the pulls, together

	best   solution
	cut    bool // the nodes ran out
	nodes  int
	budget int

	// Of the node last looked at, by day: how long the work is, by how much it is
	// too long, and by how much at least whatever is still put ahead.
	work, over, stuck []time.Duration
	jobs              []job // room for the jobs of a day
}

// place is where a tank's chain stands.
type place struct {
	phase  int
	from   int    // the first day not decided on
	counts []int8 // changes by day, as they fall due from here
}

// pull is one change put ahead.
type pull struct{ chain, phase, day int }

// solution is a set of changes put ahead and what it comes to.
type solution struct {
	score
	pulls  []pull
	counts [][]int8
	work   []time.Duration
}

// score is what proposals are compared by, in this order.
type score struct {
	over  time.Duration
	early int
	ahead time.Duration
}

func (a score) less(b score) bool {
	switch {
	case a.over != b.over:
		return a.over < b.over
	case a.early != b.early:
		return a.early < b.early
	}
	return a.ahead < b.ahead
}

func newSearch(c *Calendar, budget int) *search {
	n := len(c.Days)
	s := &search{budget: budget, work: make([]time.Duration, n), over: make([]time.Duration, n), stuck: make([]time.Duration, n)}
	for _, x := range c.larvae {
		s.chains = append(s.chains, chainOf(x, c.change, c.horizon))
	}
	slices.SortStableFunc(s.chains, func(a, b chain) int { return byJohnson(a.job, b.job) })
	for i := range s.chains {
		s.at = append(s.at, place{counts: slices.Clone(s.chains[i].due[0])})
	}
	for d := range c.Days {
		s.crews = append(s.crews, c.crewOf(d))
		s.limit = append(s.limit, c.Days[d].Limit)
	}
	for _, j := range c.standing {
		s.standing += j.prepare
	}
	return s
}

// run searches from the days as they fall due, which is the first solution.
func (s *search) run() {
	s.project()
	s.record()
	s.search()
}

// search goes on from where the chains stand.
func (s *search) search() {
	if s.nodes == s.budget {
		s.cut = true
		return
	}
	s.nodes++
	s.project()
	if !s.bound().less(s.best.score) {
		return
	}
	if now := s.score(); now.less(s.best.score) {
		s.record()
	}
	i, ok := s.branch()
	if !ok {
		return
	}
	first, second := s.pull, s.keep
	if s.worseAhead(i) {
		first, second = s.keep, s.pull
	}
	first(i)
	second(i)
}

// pull searches on with the next change of a tank put ahead on the first day that
// is open to it.
func (s *search) pull(i int) {
	undo, undoAhead := s.at[i], s.ahead
	s.putAhead(i)
	s.search()
	s.pulls, s.ahead = s.pulls[:len(s.pulls)-1], undoAhead
	s.at[i] = undo
}

func (s *search) putAhead(i int) {
	at, k := s.at[i], &s.chains[i]
	q := k.next[at.phase][at.from]
	s.pulls = append(s.pulls, pull{i, at.phase, q})
	s.ahead += k.ahead[at.phase][q]
	counts := slices.Clone(at.counts)
	counts[q]++ // beside what falls due on that day itself
	copy(counts[q+1:], k.due[q+1][q+1:])
	s.at[i] = place{q + 1, q + 1, counts}
}

// keep searches on without it.
func (s *search) keep(i int) {
	undo := s.at[i].from
	s.at[i].from = s.chains[i].next[s.at[i].phase][undo] + 1
	s.search()
	s.at[i].from = undo
}

// worseAhead says that putting the change ahead makes the days together fuller
// than they are now.
func (s *search) worseAhead(i int) bool {
	before := sum(s.over)
	undo, undoAhead := s.at[i], s.ahead
	s.putAhead(i)
	s.project()
	s.pulls, s.ahead, s.at[i] = s.pulls[:len(s.pulls)-1], undoAhead, undo
	return sum(s.over) > before
}

func sum(ds []time.Duration) time.Duration {
	var all time.Duration
	for _, d := range ds {
		all += d
	}
	return all
}

// score is what the node comes to.
func (s *search) score() score { return score{sum(s.over), len(s.pulls), s.ahead} }

// record keeps the node as the best found so far.
func (s *search) record() {
	s.best = solution{score: s.score(), pulls: slices.Clone(s.pulls), work: slices.Clone(s.work), counts: make([][]int8, len(s.at))}
	for i := range s.at {
		s.best.counts[i] = slices.Clone(s.at[i].counts)
	}
}

// leaves says that a tank may still be got off a day.
func (s *search) leaves(i, d int) bool {
	at := s.at[i]
	return s.chains[i].next[at.phase][at.from] < d
}

// project works out the days of the node.
func (s *search) project() {
	for d := range s.work {
		s.work[d] = s.session(d, false)
		s.over[d] = max(0, s.work[d]-s.limit[d])
		s.stuck[d] = 0
		if s.over[d] > 0 {
			s.stuck[d] = max(0, s.session(d, true)-s.limit[d])
		}
	}
}

// session is how long the work of a day is; of the tanks that cannot leave it
// any more, where only they are asked for.
func (s *search) session(d int, fixed bool) time.Duration {
	s.jobs = s.jobs[:0]
	if d == 0 && s.standing > 0 {
		s.jobs = append(s.jobs, job{prepare: s.standing})
	}
	for i := range s.chains {
		if fixed && s.leaves(i, d) {
			continue
		}
		for range s.at[i].counts[d] {
			s.jobs = append(s.jobs, s.chains[i].job)
		}
	}
	return s.crews[d].session(s.jobs)
}

// branch chooses the tank to decide on: of those that can leave the first day that
// is too full, the one with the most work, then the one that is least early.
func (s *search) branch() (int, bool) {
	for d := range s.over {
		if s.over[d] == 0 {
			continue
		}
		chosen := -1
		for i := range s.chains {
			if s.at[i].counts[d] > 0 && s.leaves(i, d) && (chosen < 0 || s.sooner(i, chosen)) {
				chosen = i
			}
		}
		if chosen >= 0 {
			return chosen, true
		}
	}
	return 0, false
}

func (s *search) sooner(i, j int) bool {
	a, b := s.chains[i].job, s.chains[j].job
	if wa, wb := a.move+a.prepare, b.move+b.prepare; wa != wb {
		return wa > wb
	}
	return s.cheapest(i) < s.cheapest(j)
}

// cheapest is the least by which the next change put ahead of a tank is early.
func (s *search) cheapest(i int) time.Duration {
	at := s.at[i]
	return s.chains[i].least[at.phase][at.from]
}
