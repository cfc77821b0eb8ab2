package sequence

import (
	"cmp"
	"slices"
	"time"
)

// reach is the level of the best tank that may yet be a destination, as far as
// volumes and densities go.
func (p *parted) reach(c *scene) int {
	best := 0
	for _, sl := range c.slots {
		best = max(best, p.level[sl.tank])
	}
	for j := range p.jobs {
		if tank, ok := p.open(c, j); ok {
			best = max(best, p.level[tank])
		}
	}
	for _, j := range p.byNeed {
		if c.parts[j] > 0 && p.need[j] <= best {
			best = max(best, p.level[p.jobs[j].tank])
		}
	}
	return best
}

// open returns the tank that job j can join now.
func (p *parted) open(c *scene, j int) (tank int, ok bool) {
	jb := &p.jobs[j]
	if jb.partner < 0 || c.parts[j] == 0 || c.into[jb.partner] < 0 {
		return 0, false
	}
	tank = c.into[jb.partner]
	return tank, jb.both[tank]
}

// joins counts the joins that can be made now, and those that may come.
func (p *parted) joins(c *scene) (now, later int) {
	for j, jb := range p.jobs {
		if _, ok := p.open(c, j); ok {
			now++
		} else if jb.partner > j && c.parts[j] > 0 && c.parts[jb.partner] > 0 {
			later++
		}
	}
	return now, later
}

// hopeless says that no completion can exist.
func (p *parted) hopeless(c *scene) bool {
	now, _ := p.joins(c)
	return len(c.slots)+now == 0 ||
		!p.roomy(c) ||
		!p.tanksLast(c, p.stay) ||
		p.lateness(c) > p.limit ||
		p.known()
}

// roomy says that no more jobs than may stay are too large for every tank that is
// empty or will be.
func (p *parted) roomy(c *scene) bool {
	reach, small := p.reach(c), 0
	for j := range p.jobs {
		if c.parts[j] > 0 && p.need[j] > reach {
			small++
		}
	}
	return small <= p.stay
}

// tanksLast says that there may be tanks for all the parts if so many sources stay.
// A whole move takes a tank and leaves one, a join leaves one more, a source of k
// parts k-1 fewer; and when the last is done one is left.
func (p *parted) tanksLast(c *scene, stay int) bool {
	now, later := p.joins(c)
	spare := len(c.slots) + now + later - 1
	var extra []int // of those that may stay
	for j, jb := range p.jobs {
		switch k := c.parts[j]; {
		case k < jb.parts && k > 0:
			spare -= k - 1
		case k > 1:
			extra = append(extra, k-1)
		}
	}
	slices.Sort(extra)
	for _, k := range extra[:max(0, len(extra)-stay)] {
		spare -= k
	}
	return spare >= 0
}

// lateness bounds from below the worst start - limit of what is left to move.
// For what must be moved it is Jackson's (1955): the mover alone, who does no more
// than siphon, or waits for every tank in turn where there is but one.
func (p *parted) lateness(c *scene) time.Duration {
	now, later := p.joins(c)
	base := c.free
	if now == 0 && len(c.slots) > 0 {
		base = c.start(0)
	}
	if !p.must {
		return p.soonest(c, base)
	}
	order, prepare := p.byMove(), false
	if len(c.slots) == 1 && now+later == 0 {
		order, prepare = p.byTurn(), true
	}
	worst := -anyLate
	for _, j := range order {
		jb := &p.jobs[j]
		if p.stay > 0 && jb.parts > 1 {
			continue
		}
		for range c.parts[j] {
			worst = max(worst, base-jb.limit)
			base += jb.move
		}
		if prepare && c.parts[j] > 0 {
			base += jb.prepare
		}
	}
	return worst
}

// soonest is the lateness where any may stay: all but these begin no sooner than
// now.
func (p *parted) soonest(c *scene, base time.Duration) time.Duration {
	var late []time.Duration
	for j, jb := range p.jobs {
		if c.parts[j] > 0 {
			late = append(late, base-jb.limit)
		}
	}
	slices.Sort(late)
	if len(late) <= p.stay {
		return -anyLate
	}
	return late[len(late)-1-p.stay]
}

// candidates returns the jobs to be tried next, the most urgent first: of each
// kind the one with the earliest limit, but all where any may stay.
func (p *parted) candidates() []int {
	c := p.scene()
	var turn []int
	for _, j := range p.byTurn() {
		if c.parts[j] == 0 {
			continue
		}
		if p.must && slices.ContainsFunc(p.kinds[p.kind[j]], func(k int) bool { return c.parts[k] > 0 && p.before(k, j) }) {
			continue
		}
		turn = append(turn, j)
	}
	return turn
}

// before says that k stands before j in their kind.
func (p *parted) before(k, j int) bool {
	return cmp.Or(cmp.Compare(p.jobs[k].limit, p.jobs[j].limit), cmp.Compare(p.jobs[k].place, p.jobs[j].place)) < 0
}

// lose marks j and those of its kind with no earlier limits: what fails for j
// fails for them, since in time they may swap places with it.
func (p *parted) lose(lost []bool, j int) {
	for _, k := range p.kinds[p.kind[j]] {
		if p.jobs[k].limit >= p.jobs[j].limit {
			lost[k] = true
		}
	}
}

// learn keeps the present state as one that cannot be completed.
func (p *parted) learn() {
	p.describe()
	p.failed[string(p.key)] = append(p.failed[string(p.key)], p.now...)
}

// known says whether a state no worse than the present one has failed: as much
// moved, the same tanks empty and open to a join, and no time later.
func (p *parted) known() bool {
	p.describe()
	times, w := p.failed[string(p.key)], len(p.now)
	for ; len(times) > 0; times = times[w:] {
		if noneLater(times[:w], p.now) {
			return true
		}
	}
	return false
}

// describe writes the present state as key (what) and now (when).
func (p *parted) describe() {
	c := p.scene()
	p.key = p.key[:0]
	p.now = append(p.now[:0], c.free, max(c.tail, c.free))
	for j := range p.jobs {
		_, ok := p.open(c, j)
		p.key = append(p.key, byte(c.parts[j]), byte(b2i(ok)))
	}
	for _, sl := range c.slots {
		t := p.token[sl.tank]
		p.key = append(p.key, byte(t), byte(uint16(t)>>8))
		p.now = append(p.now, max(sl.ready, c.free))
	}
}
