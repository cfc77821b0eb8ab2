package sequence

import (
	"slices"
	"time"
)

// scene is the floor together with what a split or a join needs to be known: how
// many parts of each source are still to come, and where its larvae went.
type scene struct {
	floor
	parts []int // by job: moves still needed to empty its tank
	into  []int // by job: the tank that took its larvae last, -1 before
	left  int   // jobs whose tanks still hold larvae
	begun int   // of these, jobs of which some part has been moved
}

// Answers of rule that name no slot.
const (
	noSlot  = -1 // no empty tank fits
	joining = -2 // into the tank that took the partner's larvae
)

// begin returns the scene when the session begins; all as for open.
func (r *room) begin(all bool) scene {
	n := len(r.jobs)
	c := scene{floor: r.open(all), parts: make([]int, n), into: make([]int, n), left: n}
	for j := range r.jobs {
		c.parts[j], c.into[j] = r.jobs[j].parts, -1
	}
	return c
}

// rule returns the slot of the next move of job j, and the tanks it was chosen
// from. Where the partner of j is already in a tank that holds both, that is the
// one; while the partner is to come, a tank for both is chosen before any other.
func (r *room) rule(c *scene, j int) (slot int, fits []bool) {
	jb := &r.jobs[j]
	if jb.partner >= 0 {
		if at := c.into[jb.partner]; at < 0 {
			if i := c.choose(jb.both, jb.prefer); i >= 0 {
				return i, jb.both
			}
		} else if jb.both[at] {
			return joining, jb.both
		}
	}
	return c.choose(jb.fits, jb.prefer), jb.fits
}

// begins is when a move of c into slot i starts; a join waits for no tank.
func (c *scene) begins(i int) time.Duration {
	if i == joining {
		return c.free
	}
	return c.start(i)
}

// act makes the next move of job j into slot i and returns its start.
func (r *room) act(c *scene, i, j int, all bool) time.Duration {
	jb := &r.jobs[j]
	start := c.begins(i)
	if i == joining {
		c.into[j] = c.into[jb.partner]
	} else {
		c.into[j] = c.slots[i].tank
		c.fill(i)
	}
	r.work(&c.floor, start, jb.move)
	if c.parts[j] == jb.parts {
		c.begun++
	}
	if c.parts[j]--; c.parts[j] == 0 {
		c.begun--
		c.left--
		r.vacate(&c.floor, j, all)
	}
	return start
}

// copyFrom makes c equal to d, keeping c's memory.
func (c *scene) copyFrom(d *scene) {
	floor := c.floor
	floor.copyFrom(&d.floor)
	parts, into := append(c.parts[:0], d.parts...), append(c.into[:0], d.into...)
	*c = *d
	c.floor, c.parts, c.into = floor, parts, into
}

// pairJobs notes which jobs are to be put together, and where both fit: the tank
// is as large as both of theirs, or the density limit is known to hold in it.
func (r *room) pairJobs() {
	jobOf := func(tank int) int {
		return slices.IndexFunc(r.Sources, func(s Source) bool { return s.Tank == tank })
	}
	for _, pair := range r.Joins {
		a, b := jobOf(pair.A), jobOf(pair.B)
		sa, sb := r.Sources[a], r.Sources[b]
		larvae := Reading{sa.Larvae.Value + sb.Larvae.Value, sa.Larvae.Known && sb.Larvae.Known}
		both := r.roomFor(r.Tanks[pair.A].Litres+r.Tanks[pair.B].Litres, larvae, sa.PerLitre)
		r.jobs[a].partner, r.jobs[b].partner = b, a
		r.jobs[a].both, r.jobs[b].both = both, both
	}
}

// shared says whether any source is split or joined.
func (r *room) shared() bool {
	return len(r.Joins) > 0 || slices.ContainsFunc(r.jobs, func(jb job) bool { return jb.parts > 1 })
}

// parts is in how many moves the source is moved.
func (s Source) parts() int { return max(1, s.Parts) }
