package sequence

import (
	"cmp"
	"slices"
	"time"
)

// bound computes a lateness that no completion can beat. Two relaxations are
// taken and the stronger one counts:
//
// Slots: the k-th move from here cannot start before the k-1 smallest tanks are
// moved and as many as needed are ready; the jobs take these starts, the earliest
// limit first (Jackson 1955: on one machine that makes the greatest lateness
// smallest). With equal volumes the starts are exact, and so is the bound.
//
// One machine: the mover alone, the washer alone, or both in turn when a single
// tank is empty. There, starts counted against a limit are ends counted against
// limit + duration, and Jackson's order is best again.
type bound struct {
	byLitres  []int // jobs by volume, so by move and by preparing at once
	byLimit   []int
	byMove    []int           // by limit + move
	byPrepare []int           // by limit + prepare
	byBoth    []int           // by limit + move + prepare
	moving    []time.Duration // sum of the k shortest moves left
	preparing []time.Duration // sum of the k shortest preparations left
	earliest  []time.Duration // lower bounds of the starts from here
}

func newBound(r *room) bound {
	sorted := func(key func(jb *job) time.Duration) []int {
		order := slices.Clone(r.rank)
		slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(key(&r.jobs[a]), key(&r.jobs[b])) })
		return order
	}
	return bound{
		byLitres:  sorted(func(jb *job) time.Duration { return jb.move + jb.prepare }),
		byLimit:   sorted(func(jb *job) time.Duration { return jb.limit }),
		byMove:    sorted(func(jb *job) time.Duration { return jb.limit + jb.move }),
		byPrepare: sorted(func(jb *job) time.Duration { return jb.limit + jb.prepare }),
		byBoth:    sorted(func(jb *job) time.Duration { return jb.limit + jb.move + jb.prepare }),
	}
}

// lateness bounds from below the worst start - limit over the moves left, of which
// there is one at least, and a tank for it.
func (b *bound) lateness(s *search) time.Duration {
	f := s.floor()
	b.sum(s)
	b.starts(f, s.Crew, s.left)
	return max(b.bySlots(s), b.byMachine(s, f))
}

// sum adds up the durations left, smallest first.
func (b *bound) sum(s *search) {
	b.moving = append(b.moving[:0], 0)
	b.preparing = append(b.preparing[:0], 0)
	n := 0
	for _, j := range b.byLitres {
		if !s.gone[j] {
			b.moving = append(b.moving, b.moving[n]+s.jobs[j].move)
			b.preparing = append(b.preparing, b.preparing[n]+s.jobs[j].prepare)
			n++
		}
	}
}

// starts fills earliest[k] for the (k+1)-th move from here.
func (b *bound) starts(f *floor, crew, left int) {
	b.earliest = b.earliest[:0]
	for k := range left {
		if crew == 1 {
			b.earliest = append(b.earliest, b.alone(f, k))
		} else {
			b.earliest = append(b.earliest, b.together(f, k))
		}
	}
}

// alone bounds the start after k moves by one person, who has made them and has
// prepared as many tanks as are needed, in turn.
func (b *bound) alone(f *floor, k int) time.Duration {
	empty := len(f.slots)
	if k < empty {
		return f.start(k) + b.moving[k]
	}
	return max(f.free, f.tail) + b.moving[k] + b.preparing[k-empty+1]
}

// together bounds the start after k moves by two people. It is the longest path
// through moves and preparations, each path taken at its smallest: by how many
// moves and how many preparations it has. With two or more tanks empty a path that
// goes over to the washer for b preparations has b + empty - 2 moves fewer, so one
// crossing is best; and as sums of the smallest durations are convex in their
// number, only the shortest and the longest crossing matter.
func (b *bound) together(f *floor, k int) time.Duration {
	empty := len(f.slots)
	m, p := b.moving, b.preparing
	latest := time.Duration(0)
	for i := range min(k+1, empty) { // waiting for the (i+1)-th tank, then k-i moves
		from, n := f.start(i), k-i
		switch {
		case empty == 1:
			latest = max(latest, from+m[n]+p[n])
		case n >= empty:
			latest = max(latest, from+m[n], from+m[1]+p[n-empty+1], from+m[n-empty+1]+p[1])
		default:
			latest = max(latest, from+m[n])
		}
	}
	if k < empty {
		return latest
	}
	from, n := max(f.tail, f.free), k-empty+1 // the washer never idle, n tanks since now
	if empty == 1 {
		return max(latest, from+p[n]+m[n-1])
	}
	return max(latest, from+p[n], from+p[1]+m[n-1])
}

// bySlots gives the earliest start to the job with the earliest limit, and so on.
func (b *bound) bySlots(s *search) time.Duration {
	worst, k := -anyLate, 0
	for _, j := range b.byLimit {
		if !s.gone[j] {
			worst = max(worst, b.earliest[k]-s.jobs[j].limit)
			k++
		}
	}
	return worst
}

// byMachine bounds the lateness by each machine alone.
func (b *bound) byMachine(s *search, f *floor) time.Duration {
	move := func(jb *job) time.Duration { return jb.move }
	prepare := func(jb *job) time.Duration { return jb.prepare }
	both := func(jb *job) time.Duration { return jb.move + jb.prepare }
	if len(f.slots) == 1 {
		return jackson(s, b.byBoth, f.start(0), both)
	}
	mover := jackson(s, b.byMove, f.start(0), move)
	if s.Crew == 1 {
		return max(mover, jackson(s, b.byBoth, b.lag(f), both))
	}
	return max(mover, jackson(s, b.byPrepare, b.lag(f), prepare))
}

// lag is a base from which preparations may be counted as if each had to be over
// before the next move: the last empty-1 tanks emptied need not be ready, so that
// many of the longest preparations are taken off.
func (b *bound) lag(f *floor) time.Duration {
	empty, n := len(f.slots), len(b.preparing)-1
	longest := func(k int) time.Duration { return b.preparing[n] - b.preparing[n-min(k, n)] }
	base := max(f.free, f.tail)
	for i := range empty {
		base = min(base, f.start(i)+longest(empty-1)-longest(i))
	}
	return base - longest(empty-1)
}

// jackson is the greatest start - limit when the jobs left pass one machine from
// base on, in order of limit + duration.
func jackson(s *search, order []int, base time.Duration, duration func(*job) time.Duration) time.Duration {
	worst := -anyLate
	for _, j := range order {
		if !s.gone[j] {
			worst = max(worst, base-s.jobs[j].limit)
			base += duration(&s.jobs[j])
		}
	}
	return worst
}
