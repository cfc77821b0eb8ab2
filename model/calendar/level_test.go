package calendar

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"drainboard/model"
)

// drawn is a calendar drawn at random: larvae, days, crew and limits, no ledger.
type drawn struct{ Calendar }

func oneOf[T any](r *rand.Rand, xs ...T) T { return xs[r.IntN(len(xs))] }

// draw draws a small room whose days are likely to be too full. It begins on a
// Friday before clocks change in Nassau, or on a day in summer.
func draw(r *rand.Rand, zone *time.Location) drawn {
	now := oneOf(r,
		time.Date(2026, 3, 6, 9, 14, 0, 0, zone), time.Date(2026, 10, 30, 9, 14, 0, 0, zone), time.Date(2026, 7, 1, 21, 40, 0, 0, zone))
	house := model.DefaultHouse()
	house.ChangeHours, house.EarlyHours = oneOf(r, 20.0, 24, 36, 48), oneOf(r, 6.0, 12, 18, 24)
	days := 3 + r.IntN(4)
	c := Calendar{At: now, Zone: zone, Crew: 1 + r.IntN(2), change: changeBy(house), horizon: newHorizon(now, zone, days)}
	c.Days = make([]Day, days)
	empty := r.IntN(4)
	for d := range c.Days {
		c.Days[d] = Day{Date: c.horizon.first.Add(d), Empty: empty}
		empty += r.IntN(5) / 4 // now and then a batch leaves
	}
	for i := range 2 + r.IntN(4) {
		litres := oneOf(r, 60.0, 120, 200)
		c.larvae = append(c.larvae, larvae{
			tank: fmt.Sprint(i), litres: litres, job: jobOf(house, litres),
			due: now.Add(time.Duration(r.IntN(int(1.2*house.ChangeHours))-5) * time.Hour), last: oneOf(r, days, days, r.IntN(days)),
		})
	}
	for range r.IntN(3) {
		c.standing = append(c.standing, standing(house, 120, r.IntN(2) == 0))
	}
	c.Limit = time.Duration((0.5 + r.Float64()/2) * float64(fullest(c)))
	for d := range c.Days {
		c.Days[d].Limit = c.limitOf(d)
	}
	return drawn{c}
}

// fullest is the most work of a day as the changes fall due.
func fullest(c Calendar) time.Duration {
	var most time.Duration
	for d := range c.Days {
		var jobs []job
		if d == 0 {
			jobs = append(jobs, c.standing...)
		}
		for _, x := range c.larvae {
			for _, t := range c.change.follow(c.horizon, x.due, x.last) {
				if c.horizon.day(t) == d {
					jobs = append(jobs, x.job)
				}
			}
		}
		most = max(most, c.crewOf(d).session(inOrder(jobs)))
	}
	return most
}

// oracle tries every set of early changes, day by day by the clock.
type oracle struct {
	drawn
	best   score
	tried  int
	length map[string]time.Duration
}

func bruteForce(c drawn) *oracle {
	o := &oracle{drawn: c, best: score{over: 1 << 62}, length: map[string]time.Duration{}}
	next := make([]time.Time, len(c.larvae))
	for i, x := range c.larvae {
		next[i] = laterOf(x.due, c.At)
	}
	o.day(0, next, score{})
	return o
}

// day decides on the days from d on.
func (o *oracle) day(d int, next []time.Time, so score) {
	if d == len(o.Days) {
		o.tried++
		if so.less(o.best) {
			o.best = so
		}
		return
	}
	next = slices.Clone(next)
	changed := make([]int, len(next))
	for i, x := range o.larvae {
		for o.horizon.day(next[i]) == d && d <= x.last {
			changed[i]++
			next[i] = next[i].Add(o.change.every)
		}
	}
	o.early(d, 0, next, changed, so)
}

// early decides on the tanks from i on whether their next change is made on day d.
func (o *oracle) early(d, i int, next []time.Time, changed []int, so score) {
	if i == len(next) {
		so.over += max(0, o.session(d, changed)-o.Days[d].Limit)
		o.day(d+1, next, so)
		return
	}
	o.early(d, i+1, next, changed, so)
	x := o.larvae[i]
	on := o.horizon.day(next[i])
	at := o.horizon.starts[d+1].Add(-x.job.move)
	by := next[i].Sub(at)
	if on <= d || on > min(x.last, len(o.Days)-1) || by > o.change.early || at.Before(o.horizon.begin(d)) {
		return
	}
	next, changed = slices.Clone(next), slices.Clone(changed)
	next[i] = at.Add(o.change.every)
	changed[i]++
	so.early++
	so.ahead += by
	o.early(d, i+1, next, changed, so)
}

// session is the shortest time of a day's jobs, by every order of them.
func (o *oracle) session(d int, changed []int) time.Duration {
	key := fmt.Sprint(d == 0, o.crewOf(d), changed)
	if known, ok := o.length[key]; ok {
		return known
	}
	var jobs []job
	for i, n := range changed {
		for range n {
			jobs = append(jobs, o.larvae[i].job)
		}
	}
	var washer time.Duration
	if d == 0 {
		for _, j := range o.standing {
			washer += j.prepare
		}
	}
	o.length[key] = shortest(o.crewOf(d).serial(), jobs, 0, washer)
	return o.length[key]
}

// shortest tries every order of jobs.
func shortest(serial bool, jobs []job, mover, washer time.Duration) time.Duration {
	if len(jobs) == 0 {
		if serial {
			return mover + washer
		}
		return max(mover, washer)
	}
	best := time.Duration(1 << 62)
	for i, j := range jobs {
		m := mover + j.move
		w := max(washer, m) + j.prepare
		if serial {
			w = washer + j.prepare
		}
		best = min(best, shortest(serial, slices.Delete(slices.Clone(jobs), i, i+1), m, w))
	}
	return best
}

func TestLevelAgainstEverySetOfEarlyChanges(t *testing.T) {
	zone := nassau(t)
	rooms := 600
	if testing.Short() {
		rooms = 120
	}
	levelled, early, impossible := 0, 0, 0
	for seed := range uint64(rooms) {
		c := draw(rand.New(rand.NewPCG(seed, 7)), zone)
		want := bruteForce(c)
		got := c.Level(1 << 30)
		have := score{over: got.OverBy, early: len(got.Early)}
		for _, e := range got.Early {
			have.ahead += e.Ahead()
		}
		if have != want.best || !got.Best {
			t.Fatalf("room %d: %v over, %d early by %v, best %v; want %v, %d, %v of %d sets", seed,
				have.over, have.early, have.ahead, got.Best, want.best.over, want.best.early, want.best.ahead, want.tried)
		}
		kept(t, c, got)
		if len(got.Early) > 0 && got.Over == 0 {
			levelled++
		}
		if got.Over > 0 {
			impossible++
		}
		early += len(got.Early)
	}
	t.Logf("%d rooms: %d levelled, %d impossible, %d early changes", rooms, levelled, impossible, early)
	if levelled < rooms/20 || impossible < rooms/20 {
		t.Errorf("of %d rooms %d were levelled and %d could not be: the draw tests too little", rooms, levelled, impossible)
	}
}

// kept holds a proposal to the rules: it is what the days say, nothing is late and
// nothing earlier than the house allows.
func kept(t *testing.T, c drawn, l Level) {
	t.Helper()
	moves := make([]int, len(c.Days))
	for _, x := range c.larvae {
		next := laterOf(x.due, c.At)
		for c.horizon.day(next) <= min(x.last, len(c.Days)-1) {
			for _, e := range l.Early {
				if e.Tank != x.tank || !e.Due.Equal(next) {
					continue
				}
				if e.By.After(e.Due) || e.Due.Sub(e.From) > c.change.early || e.From.After(e.By) || e.From.Before(c.At) {
					t.Errorf("%s due %v is to be changed from %v by %v", e.Tank, e.Due, e.From, e.By)
				}
				if on := model.DayOf(e.By, c.Zone); on != e.Day || model.DayOf(e.From, c.Zone) != e.Day {
					t.Errorf("%s is to be changed on %v, from %v by %v", e.Tank, e.Day, e.From, e.By)
				}
				next = e.By
			}
			moves[c.horizon.day(next)]++
			next = next.Add(c.change.every)
		}
	}
	for d := range moves {
		if moves[d] != l.Days[d].Moves {
			t.Errorf("%v: %d moves by the days; by the early changes %d", l.Days[d].Date, l.Days[d].Moves, moves[d])
		}
	}
}

func TestLevelSaysWhenItsNodesRanOut(t *testing.T) {
	zone := nassau(t)
	cut := 0
	for seed := range uint64(200) {
		c := draw(rand.New(rand.NewPCG(seed, 9)), zone)
		whole, some := c.Level(1<<30), c.Level(3)
		if (whole.Nodes > 3) == some.Best || some.Nodes > 3 {
			t.Errorf("room %d: best %v after %d nodes of 3, of %d", seed, some.Best, some.Nodes, whole.Nodes)
		}
		kept(t, c, some)
		if !some.Best {
			cut++
		}
	}
	if cut < 20 {
		t.Errorf("the nodes ran out in %d rooms only", cut)
	}
}
