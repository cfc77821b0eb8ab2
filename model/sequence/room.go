package sequence

import (
	"cmp"
	"math"
	"slices"
	"time"
)

// room is a checked problem with every duration, fit and preference worked out,
// so that the search handles whole numbers only. Times are durations since Now.
type room struct {
	Problem
	jobs    []job           // one for each source, at the same index
	prepare []time.Duration // by tank: time to make it ready once emptied
	useful  []bool          // by tank: some source fits in it
	rank    []int           // jobs in rank order
}

// job is one source as the search sees it.
type job struct {
	tank    int
	move    time.Duration // time the move takes
	prepare time.Duration // time to make its tank ready afterwards
	limit   time.Duration // due + grace
	place   int           // place in rank order
	fits    []bool        // by tank
	prefer  []int         // by tank that stands ready: place in the order of choice
	parts   int           // moves that empty its tank; fits and move are those of one
	partner int           // job whose larvae it is to be put together with, else -1
	both    []bool        // by tank: it and its partner fit together; nil without one
}

// newRoom checks the problem and works it out.
func newRoom(p Problem) (*room, error) {
	if err := p.check(); err != nil {
		return nil, err
	}
	r := &room{Problem: p}
	r.prepare = make([]time.Duration, len(p.Tanks))
	r.useful = make([]bool, len(p.Tanks))
	for i, t := range p.Tanks {
		r.prepare[i] = p.Pace.preparing(t)
	}
	standing := r.readyTanks()
	r.jobs = make([]job, len(p.Sources))
	for j, s := range p.Sources {
		r.jobs[j] = job{
			tank:    s.Tank,
			move:    p.Pace.moving(p.Tanks[s.Tank], s.parts()),
			prepare: r.prepare[s.Tank],
			limit:   s.Due.Sub(p.Now) + p.Grace,
			fits:    r.fitsOf(s),
			prefer:  r.preferences(s, standing),
			parts:   s.parts(),
			partner: -1,
		}
		for i, fits := range r.jobs[j].fits {
			r.useful[i] = r.useful[i] || fits
		}
	}
	r.pairJobs()
	r.rankJobs()
	return r, nil
}

// moving is the time from setting up over the tank to the lid on the destination
// of one of its parts.
func (p Pace) moving(t Tank, parts int) time.Duration {
	return minutes(t.Litres/float64(parts)/p.DrainLPM + p.HandleMinutes)
}

// preparing is the time to make the tank ready again; one that stands washed
// needs only its filling.
func (p Pace) preparing(t Tank) time.Duration {
	if t.State == Washed {
		return minutes(t.Litres / p.FillLPM)
	}
	return minutes(t.Litres/p.FillLPM + p.WashMinutes)
}

// minutes rounds once, to the nearest millisecond; no step takes less than one,
// so two tanks are never made ready at the same instant.
func minutes(m float64) time.Duration {
	return max(time.Duration(math.Round(m*60_000)), 1) * time.Millisecond
}

// fitsOf says for every tank whether the source, or one part of it, may go into it:
// it is at least as large, or the density limit is known to hold in it.
func (r *room) fitsOf(s Source) []bool {
	part := Reading{s.Larvae.Value / float64(s.parts()), s.Larvae.Known}
	return r.roomFor(r.Tanks[s.Tank].Litres, part, s.PerLitre)
}

func (r *room) roomFor(litres float64, larvae Reading, perLitre float64) []bool {
	fits := make([]bool, len(r.Tanks))
	for i, t := range r.Tanks {
		fits[i] = t.Litres >= litres ||
			perLitre > 0 && larvae.Known && larvae.Value/t.Litres <= perLitre
	}
	return fits
}

// readyTanks returns the tanks that stand ready, the one ready longest first.
func (r *room) readyTanks() []int { return r.sinceOrder(Ready) }

// emptiedTanks returns the tanks that stand dirty or washed, the first emptied first.
func (r *room) emptiedTanks() []int { return r.sinceOrder(Dirty, Washed) }

func (r *room) sinceOrder(states ...State) []int {
	var tanks []int
	for i, t := range r.Tanks {
		if slices.Contains(states, t.State) {
			tanks = append(tanks, i)
		}
	}
	slices.SortStableFunc(tanks, func(a, b int) int { return r.since(a).Compare(r.since(b)) })
	return tanks
}

// since is the tank's Since, no later than Now.
func (r *room) since(tank int) time.Time {
	if s := r.Tanks[tank].Since; s.Before(r.Now) {
		return s
	}
	return r.Now
}

// preferences gives each tank that stands ready its place in the source's order
// of choice: smallest known difference, then ready longest, then room order.
func (r *room) preferences(s Source, standing []int) []int {
	chosen := slices.Clone(standing)
	slices.SortStableFunc(chosen, func(a, b int) int {
		return compareDifferences(r.difference(s.Tank, a), r.difference(s.Tank, b))
	})
	prefer := make([]int, len(r.Tanks))
	for place, tank := range chosen {
		prefer[tank] = place
	}
	return prefer
}

// difference of the temperatures read in two tanks, degrees Celsius.
func (r *room) difference(a, b int) Reading {
	ta, tb := r.Tanks[a].Celsius, r.Tanks[b].Celsius
	if !ta.Known || !tb.Known {
		return Reading{}
	}
	return Known(math.Abs(ta.Value - tb.Value))
}

// compareDifferences puts the smaller first and an unknown one after every known
// one. It compares thousandths of a degree, so that 27.4 - 26.2 ties with
// 28.6 - 27.4 as it does for people.
func compareDifferences(a, b Reading) int {
	if !a.Known || !b.Known {
		return cmp.Compare(b2i(b.Known), b2i(a.Known))
	}
	return cmp.Compare(math.Round(a.Value*1000), math.Round(b.Value*1000))
}

func b2i(b bool) int {
	if b {
		return 1
	}
	return 0
}

// rankJobs puts the jobs in rank order: suspect last, then the house order, then
// due time, then the order of the room.
func (r *room) rankJobs() {
	r.rank = make([]int, len(r.jobs))
	for j := range r.rank {
		r.rank[j] = j
	}
	slices.SortFunc(r.rank, func(a, b int) int {
		sa, sb := r.Sources[a], r.Sources[b]
		return cmp.Or(
			cmp.Compare(b2i(sa.Suspect), b2i(sb.Suspect)),
			r.Order.compare(sa, sb),
			sa.Due.Compare(sb.Due),
			cmp.Compare(sa.Tank, sb.Tank),
		)
	})
	for place, j := range r.rank {
		r.jobs[j].place = place
	}
}

func (o Order) compare(a, b Source) int {
	switch o {
	case OldestFirst:
		return cmp.Compare(b.AgeDays, a.AgeDays)
	case YoungestFirst:
		return cmp.Compare(a.AgeDays, b.AgeDays)
	}
	return a.Due.Compare(b.Due)
}
