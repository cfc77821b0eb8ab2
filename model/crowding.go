package model

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"time"

	"drainboard/model/count"
)

// Certainty says how surely a tank holds more larvae than the house allows, by the
// limits of its estimate.
type Certainty string

// The degrees of certainty.
const (
	Over       Certainty = "over"        // even by the low limit, or by a number told without limits
	LikelyOver Certainty = "likely over" // by the estimate itself
	MayBeOver  Certainty = "may be over" // by the high limit only
)

// Crowd is a tank that holds more larvae per litre than the house allows at their
// age, or will before a change made now falls due again. Tanks whose larvae were
// never counted are no Crowd: nothing is known of them.
type Crowd struct {
	Tank, Batch string
	AgeDays     int
	PerLitre    count.Estimate // larvae per litre
	Limit       float64        // larvae per litre not to exceed, the strictest until that change
	FromDay     int            // age in days from which it is too dense; AgeDays where it is now
	Certain     Certainty
	MustGo      count.Estimate // larvae above the limit; none by the estimate itself where it only may be over
	Reliefs     []Relief       // what can be done, the gentlest first; none where it only may be over
	Text        string
}

// Crowding lists the tanks that are too dense or will be, in the order of room.toml,
// each with what can be done about it.
func (l *Ledger) Crowding(now time.Time) []Crowd {
	var crowds []Crowd
	for _, t := range l.fold.tanks {
		if c, ok := l.crowd(t, now); ok {
			crowds = append(crowds, c)
		}
	}
	return crowds
}

func (l *Ledger) crowd(t TankNow, now time.Time) (Crowd, bool) {
	age, holding := l.Age(t, now)
	if !holding || !t.Larvae.Number.Value.Known {
		return Crowd{}, false
	}
	c := Crowd{
		Tank: t.Tank.Name, Batch: t.Larvae.Batch, AgeDays: age,
		PerLitre: scaled(t.Larvae.Number, 1/t.Tank.Litres), Limit: l.strictest(t, now),
	}
	if c.Limit == 0 || !c.judge() {
		return Crowd{}, false
	}
	c.FromDay = l.tooDenseFrom(t, c, now)
	c.MustGo = t.Larvae.Number.Minus(count.Exactly(c.Limit * t.Tank.Litres))
	if c.Certain != MayBeOver {
		c.Reliefs = l.reliefs(t, c.Limit)
	}
	c.Text = c.words()
	return c, true
}

// dust is the relative error that shares leave in a number of larvae.
const dust = 1e-9

// judge sets how certain it is; false where even the high limit keeps the rule.
func (c *Crowd) judge() bool {
	low, high := c.PerLitre.Low, c.PerLitre.High
	over := func(per float64) bool { return per > c.Limit*(1+dust) }
	switch {
	case over(c.PerLitre.Value.X) && (!low.Known || over(low.X)):
		c.Certain = Over
	case over(c.PerLitre.Value.X):
		c.Certain = LikelyOver
	case high.Known && over(high.X):
		c.Certain = MayBeOver
	default:
		return false
	}
	return true
}

// lastAge is the age of a tank's larvae when a change made now falls due again.
func (l *Ledger) lastAge(t TankNow, now time.Time) int {
	age, _ := l.Age(t, now.Add(hours(l.room.House.ChangeHours)))
	return age
}

// strictest returns the lowest density limit that a tank's larvae meet before a
// change made now falls due again; 0 where the room gives none.
func (l *Ledger) strictest(t TankNow, now time.Time) float64 {
	age, _ := l.Age(t, now)
	limit := 0.0
	for day := age; day <= l.lastAge(t, now); day++ {
		if at := l.room.House.DensityAt(day); at > 0 && (limit == 0 || at < limit) {
			limit = at
		}
	}
	return limit
}

// tooDenseFrom returns the first age at which the tank is too dense.
func (l *Ledger) tooDenseFrom(t TankNow, c Crowd, now time.Time) int {
	per := c.PerLitre.Value.X
	if c.Certain == MayBeOver {
		per = c.PerLitre.High.X
	}
	day := c.AgeDays
	for last := l.lastAge(t, now); day < last; day++ {
		if at := l.room.House.DensityAt(day); at > 0 && per > at {
			break
		}
	}
	return day
}

// words reads "C5 holds 125.0 larvae per litre (110.2 to 141.3), over the limit of
// 100: 3000 must go".
func (c Crowd) words() string {
	text := fmt.Sprintf("%s holds %.1f larvae per litre%s, %s the limit of %s",
		c.Tank, c.PerLitre.Value.X, between(c.PerLitre, 1), c.Certain, plain(c.Limit))
	if c.FromDay > c.AgeDays {
		text += fmt.Sprintf(" from day %d (it is day %d)", c.FromDay, c.AgeDays)
	}
	if c.Certain == MayBeOver {
		return text + ": count again before anything is moved"
	}
	return text + fmt.Sprintf(": %.0f%s must go", up(c.MustGo.Value.X), between(c.MustGo, 0))
}

// between words the limits of an estimate, nothing where it has none.
func between(e count.Estimate, decimals int) string {
	if !e.Low.Known || !e.High.Known || e.Low.X == e.High.X {
		return ""
	}
	return fmt.Sprintf(" (%.*f to %.*f)", decimals, e.Low.X, decimals, e.High.X)
}

// readyFor lists the ready tanks in the order in which a tank's larvae go into
// them: the smallest known difference of temperature, then ready longest, then as
// room.toml lists them.
func (l *Ledger) readyFor(t TankNow) []TankNow {
	gap := func(to TankNow) float64 {
		a, okA := t.celsius()
		b, okB := to.celsius()
		if !okA || !okB {
			return math.Inf(1)
		}
		return math.Round(1000 * math.Abs(a.Value-b.Value))
	}
	var ready []TankNow
	for _, to := range l.fold.tanks {
		if to.State == Ready {
			ready = append(ready, to)
		}
	}
	slices.SortStableFunc(ready, func(a, b TankNow) int {
		return cmp.Or(cmp.Compare(gap(a), gap(b)), a.Since.Compare(b.Since))
	})
	return ready
}
