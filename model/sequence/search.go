package sequence

import (
	"cmp"
	"math"
	"slices"
	"time"
)

// search looks for orders that move every job not barred with no overrun above
// limit, depth first, one job of each class at a time.
type search struct {
	*room
	*alike
	limit time.Duration // worst start - (due + grace) allowed
	bound bound

	path   []int   // jobs moved so far
	floors []floor // floors[d] is the floor after d moves
	gone   []bool  // by job: moved, or barred from the start
	bits   []byte  // gone, packed
	left   int     // jobs not gone

	nodes, stop int                        // nodes opened, and where to give up
	failed      map[string][]time.Duration // states that cannot be completed: see learn
	key         []byte                     // scratch
	now         []time.Duration            // scratch
	turns       [][]int                    // scratch, by depth
}

// verdict is the answer to "can it be completed?".
type verdict int

const (
	no verdict = iota
	yes
	unknown // the nodes ran out
)

// anyLate is a limit nothing can pass.
const anyLate = time.Duration(math.MaxInt64)

// newSearch returns a search over the jobs that can be moved; the others are
// barred from it.
func newSearch(r *room, a *alike) *search {
	n := len(r.jobs)
	s := &search{
		room:   r,
		alike:  a,
		limit:  anyLate,
		bound:  newBound(r),
		floors: make([]floor, n+1),
		gone:   make([]bool, n),
		bits:   make([]byte, (n+7)/8),
		left:   n,
		failed: map[string][]time.Duration{},
		turns:  make([][]int, n+1),
	}
	s.floors[0] = r.open(false)
	for _, j := range a.byNeed[a.movable(r, s.floor(), s.gone):] {
		s.take(j)
	}
	return s
}

func (s *search) take(j int) {
	s.gone[j] = true
	s.bits[j/8] |= 1 << (j % 8)
	s.left--
}

func (s *search) giveBack(j int) {
	s.gone[j] = false
	s.bits[j/8] &^= 1 << (j % 8)
	s.left++
}

// floor is the floor after the moves made so far.
func (s *search) floor() *floor { return &s.floors[len(s.path)] }

// push moves job j into slot i.
func (s *search) push(i, j int) {
	d := len(s.path)
	next := &s.floors[d+1]
	next.copyFrom(&s.floors[d])
	s.move(next, i, j, false)
	s.take(j)
	s.path = append(s.path, j)
}

// back undoes moves until d are left.
func (s *search) back(d int) {
	for last := len(s.path) - 1; last >= d; last-- {
		s.giveBack(s.path[last])
		s.path = s.path[:last]
	}
}

// forget drops what was learnt, which holds for limits no higher than the one it
// was learnt under.
func (s *search) forget() { clear(s.failed) }

// complete says whether the moves made so far can be completed within the limit.
// After yes, path holds such an order; after any other answer it is as before.
func (s *search) complete() verdict {
	if s.left == 0 {
		return yes
	}
	if s.nodes >= s.stop {
		return unknown
	}
	s.nodes++
	if s.hopeless() {
		return no
	}
	answer, d := no, len(s.path)
	for _, j := range s.candidates() {
		s.push(s.pick(s.floor(), j), j)
		switch s.complete() {
		case yes:
			return yes
		case unknown:
			answer = unknown
		}
		s.back(d)
	}
	if answer == no {
		s.learn()
	}
	return answer
}

// hopeless says that no completion can exist: some job will find no tank, or be
// too late by a bound, or the same jobs were moved before with tanks no later than
// now, and that failed.
func (s *search) hopeless() bool {
	return !s.anywhere && s.movable(s.room, s.floor(), s.gone) < s.left ||
		s.bound.lateness(s) > s.limit ||
		s.known()
}

// candidates returns one job of each class, the one with the earliest limit: any
// order can be changed into one that takes the jobs of a class so, for they may
// swap places in time. It returns none when one of them would be too late already.
func (s *search) candidates() []int {
	f, d := s.floor(), len(s.path)
	turn := s.turns[d][:0]
	for _, members := range s.classes {
		first := slices.IndexFunc(members, func(j int) bool { return !s.gone[j] })
		if first < 0 {
			continue
		}
		j := members[first]
		i := s.pick(f, j)
		if i < 0 {
			continue
		}
		if f.start(i)-s.jobs[j].limit > s.limit {
			return nil
		}
		turn = append(turn, j)
	}
	slices.SortFunc(turn, func(a, b int) int {
		return cmp.Or(cmp.Compare(s.urgency(a), s.urgency(b)), cmp.Compare(s.jobs[a].place, s.jobs[b].place))
	})
	s.turns[d] = turn
	return turn
}

// urgency orders the attempts: Jackson's order for a single empty tank, and a good
// guess for more.
func (s *search) urgency(j int) time.Duration {
	return s.jobs[j].limit + s.jobs[j].move + s.jobs[j].prepare
}

// learn keeps the present state as one that cannot be completed.
func (s *search) learn() {
	s.describe()
	s.failed[string(s.key)] = append(s.failed[string(s.key)], s.now...)
}

// known says whether a state no worse than the present one has failed: the same
// jobs moved, the same tanks empty, and no time later.
func (s *search) known() bool {
	s.describe()
	times, w := s.failed[string(s.key)], len(s.now)
	for ; len(times) > 0; times = times[w:] {
		if noneLater(times[:w], s.now) {
			return true
		}
	}
	return false
}

func noneLater(a, b []time.Duration) bool {
	for i := range a {
		if a[i] > b[i] {
			return false
		}
	}
	return true
}

// describe writes the present state as key (what) and now (when).
func (s *search) describe() {
	f := s.floor()
	s.key = append(s.key[:0], s.bits...)
	s.now = append(s.now[:0], f.free, max(f.tail, f.free))
	for _, sl := range f.slots {
		t := s.token[sl.tank]
		s.key = append(s.key, byte(t), byte(t>>8))
		s.now = append(s.now, max(sl.ready, f.free))
	}
}

// follow moves the first of order that fits and keeps the limit, again and again.
// If that moves every job it leaves them in path and returns true.
func (s *search) follow(order []int) bool {
	from := len(s.path)
	for s.left > 0 {
		i, j := s.next(order)
		if i < 0 {
			s.back(from)
			return false
		}
		s.push(i, j)
	}
	return true
}

// next returns the slot and the job to move, or a slot of -1 when none can go or
// one is too late, for it will only be later.
func (s *search) next(order []int) (i, j int) {
	f := s.floor()
	for _, j := range order {
		if s.gone[j] {
			continue
		}
		i := s.pick(f, j)
		if i < 0 {
			continue
		}
		if f.start(i)-s.jobs[j].limit > s.limit {
			return -1, 0
		}
		return i, j
	}
	return -1, 0
}
