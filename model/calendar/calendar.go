package calendar

import (
	"fmt"
	"slices"
	"time"

	"drainboard/model"
	"drainboard/model/growth"
)

// DefaultDays is how far a calendar looks ahead, MostDays how far it can.
const (
	DefaultDays = 14
	MostDays    = 60
)

// Calendar is the room's work in the days to come, today the first.
type Calendar struct {
	At    time.Time
	Zone  *time.Location
	Crew  int
	Limit time.Duration // house.day_minutes; 0 for none
	// Early is by how much a change may be put ahead: house.early_hours, or half of
	// the time between two changes where that is less.
	Early time.Duration
	Days  []Day
	// Batches are those in the room, in the order of their first stocking.
	Batches []Batch
	// Uncounted are the algae whose litres are not known, as their culture has no
	// count to reckon with. Gaps are tanks that may ask for more food than is told.
	Uncounted []string
	Gaps      []string
	// WashProblem says why the acid is not known; empty where it is.
	WashProblem string

	horizon  horizon
	change   change
	larvae   []larvae
	standing []job // today's
}

// Batch is how long a batch is reckoned with.
type Batch struct {
	Name  string
	Ready model.Day // when it is expected to be ready; zero where that is not known
	Last  model.Day // the last day its larvae are fed and changed; zero where it stays
	Why   string    // where that comes from, or why it is not known
}

// For works out the calendar of so many days, today the first. It refuses days
// out of range, and water that is changed more than once an hour.
func For(l *model.Ledger, now time.Time, days int) (Calendar, error) {
	house := l.Room().House
	if days < 1 || days > MostDays {
		return Calendar{}, fmt.Errorf("days: %d; give 1 to %d", days, MostDays)
	}
	c := Calendar{At: now, Zone: l.Room().Zone, Crew: house.Crew, Limit: minutesOf(house.DayMinutes), change: changeBy(house)}
	c.Early = c.change.early
	if c.change.every < time.Hour {
		return Calendar{}, fmt.Errorf("house.change_hours: %g; a calendar takes 1 or more", house.ChangeHours)
	}
	c.horizon = newHorizon(now, c.Zone, days)
	c.Days = make([]Day, days)
	for d := range c.Days {
		c.Days[d] = Day{Date: c.horizon.first.Add(d), Empty: emptyToday(l)}
	}
	c.addFood(l)
	c.addBatches(l)
	c.addLarvae(l)
	c.addChanges(house)
	c.addStanding(l)
	c.addWork(house)
	return c, nil
}

func minutesOf(m float64) time.Duration {
	if m <= 0 {
		return 0
	}
	return minutes(m)
}

func emptyToday(l *model.Ledger) int {
	empty := 0
	for _, t := range l.Tanks() {
		if t.Empty() {
			empty++
		}
	}
	return empty
}

// addFood adds what the algae room is asked for, and how long each batch stays.
func (c *Calendar) addFood(l *model.Ledger) {
	demand := l.FeedDemand(c.At, len(c.Days))
	c.Uncounted, c.Gaps = demand.Uncounted, demand.Gaps
	for d := range c.Days {
		c.Days[d].Algae, c.Days[d].Cells = demand.Days[d].Litres, demand.Days[d].Cells
	}
	for _, s := range demand.Stays {
		c.Batches = append(c.Batches, Batch{Name: s.Batch, Last: s.Last, Why: s.Why})
	}
}

// addBatches adds the days on which batches are expected to be ready.
func (c *Calendar) addBatches(l *model.Ledger) {
	for i := range c.Batches {
		b := l.Batch(c.Batches[i].Name)
		ready, err := l.Ready(b)
		if err != nil || ready.State == growth.Never {
			continue
		}
		c.Batches[i].Ready = l.DayAtAge(b, ready.AgeDays)
		if d := c.Batches[i].Ready.Sub(c.horizon.first); d >= 0 && d < len(c.Days) {
			c.Days[d].Ready = append(c.Days[d].Ready, b.Name)
		}
	}
}

// lastOf is the place of the last day a batch is reckoned with.
func (c *Calendar) lastOf(batch string) int {
	i := slices.IndexFunc(c.Batches, func(b Batch) bool { return b.Name == batch })
	if i < 0 || c.Batches[i].Last.IsZero() {
		return len(c.Days)
	}
	return c.Batches[i].Last.Sub(c.horizon.first)
}

// addLarvae lists the larvae and adds their looks and feeds. A tank whose batch
// has left is empty from the day after.
func (c *Calendar) addLarvae(l *model.Ledger) {
	house := l.Room().House
	for _, t := range l.Ranked(c.At) {
		x := larvae{
			tank: t.Tank.Name, batch: t.Larvae.Batch, litres: t.Tank.Litres, job: jobOf(house, t.Tank.Litres),
			born: l.Batch(t.Larvae.Batch).Hatched.Day(c.Zone), due: l.Due(t), late: l.Late(t), last: c.lastOf(t.Larvae.Batch),
		}
		looks := c.horizon.fall(l.LookDue(t), hours(house.LookHours), x.last)
		feeds := c.horizon.fall(l.FeedDue(t), hours(house.FeedHours), x.last)
		for d := range c.Days {
			c.Days[d].Looks += looks[d]
			c.Days[d].Feeds += feeds[d]
			if d > x.last {
				c.Days[d].Empty++
			}
		}
		c.larvae = append(c.larvae, x)
	}
}

// addChanges adds the changes by the day on which they fall due, and the sea
// water that fills the tanks again.
func (c *Calendar) addChanges(house model.House) {
	for _, x := range c.larvae {
		for i, t := range c.change.follow(c.horizon, x.due, x.last) {
			day := &c.Days[c.horizon.day(t)]
			one := Change{Tank: x.tank, Batch: x.batch, AgeDays: day.Date.Sub(x.born), Due: t}
			if i == 0 {
				one.Due, one.Overdue = x.due, c.At.After(x.late)
			}
			day.Changes = append(day.Changes, one)
			day.SeaWaterLitres += x.litres
		}
	}
	for d := range c.Days {
		slices.SortStableFunc(c.Days[d].Changes, func(a, b Change) int { return a.Due.Compare(b.Due) })
	}
}

// addStanding adds what stands dirty or washed to the work of today.
func (c *Calendar) addStanding(l *model.Ledger) {
	today := &c.Days[0]
	for _, t := range l.Tanks() {
		if t.State != model.Dirty && t.State != model.WashedDown {
			continue
		}
		c.standing = append(c.standing, standing(l.Room().House, t.Tank.Litres, t.State == model.WashedDown))
		today.Standing = append(today.Standing, t.Tank.Name)
		today.SeaWaterLitres += t.Tank.Litres
		if t.State == model.Dirty {
			today.dirty++
		}
	}
}

// addWork adds how long the crew needs and what the wash takes.
func (c *Calendar) addWork(house model.House) {
	for d := range c.Days {
		day := &c.Days[d]
		var jobs []job
		if d == 0 {
			jobs = append(jobs, c.standing...)
		}
		for _, change := range day.Changes {
			jobs = append(jobs, c.jobOf(change.Tank))
		}
		day.Work = c.crewOf(d).session(inOrder(jobs))
		there := c.horizon.left(d)
		day.Limit = c.limitOf(d)
		day.Full = fullness(day.Work, day.Limit, there)
		var err error
		if day.Wash, err = washOf(house.Wash, day.Moves(), day.dirty); err != nil {
			c.WashProblem = err.Error()
		}
	}
}

func (c *Calendar) jobOf(tank string) job {
	i := slices.IndexFunc(c.larvae, func(x larvae) bool { return x.tank == tank })
	return c.larvae[i].job
}

func (c *Calendar) crewOf(d int) crew { return crew{c.Crew, c.Days[d].Empty} }

// limitOf is how long the crew has on a day.
func (c *Calendar) limitOf(d int) time.Duration {
	there := c.horizon.left(d)
	if c.Limit > 0 {
		return min(c.Limit, there)
	}
	return there
}
