package growth

import (
	"fmt"
	"math"
)

// Change is the growth from one look to a later one.
type Change struct {
	UM   float64 // difference of the means, um
	Days float64 // between the looks

	// HasInterval is true where both looks have at least two readings and a known standard
	// deviation. Interval is that of UM, by Welch's (1947, Biometrika 34:28-35) t with
	// Satterthwaite's (1946, Biometrics Bulletin 2:110-114) degrees of freedom.
	HasInterval bool
	Interval    Interval
	DF          float64

	// HasRate is true where the looks lie at least half a day apart. PerDay is UM / Days,
	// PerDayInterval (where HasInterval) its interval, and Instant is ln(mean2 / mean1) / Days, the
	// instantaneous rate per day.
	HasRate        bool
	PerDay         float64
	PerDayInterval Interval
	Instant        float64
}

// Sure says whether the interval leaves out zero: growth, or shrinking, more than chance explains.
func (c Change) Sure() bool { return c.HasInterval && !c.Interval.Contains(0) }

// Compare gives the growth between two looks. It refuses a look that cannot be one and a second
// look taken before the first. Looks of the same day (two tanks) have a difference and no rate.
func Compare(before, after Look) (Change, error) {
	for _, l := range []Look{before, after} {
		if err := l.check(); err != nil {
			return Change{}, err
		}
	}
	if after.AgeDays < before.AgeDays {
		return Change{}, fmt.Errorf("look at day %g comes before day %g: give the earlier look first", after.AgeDays, before.AgeDays)
	}
	c := Change{UM: after.MeanUM - before.MeanUM, Days: after.AgeDays - before.AgeDays}
	c.addInterval(before, after)
	if c.Days >= dayApart {
		c.HasRate = true
		c.PerDay = c.UM / c.Days
		c.PerDayInterval = c.Interval.scaled(1 / c.Days)
		c.Instant = math.Log(after.MeanUM/before.MeanUM) / c.Days
	}
	return c, nil
}

func (c *Change) addInterval(a, b Look) {
	if a.N < 2 || b.N < 2 || a.SDUM == 0 || b.SDUM == 0 {
		return
	}
	na, nb := float64(a.N), float64(b.N)
	va, vb := a.SDUM*a.SDUM/na, b.SDUM*b.SDUM/nb
	c.DF = (va + vb) * (va + vb) / (va*va/(na-1) + vb*vb/(nb-1))
	if !(c.DF > 0) { // underflow of a standard deviation that is all but zero
		c.DF = 0
		return
	}
	c.Interval = around(c.UM, student(c.DF)*math.Sqrt(va+vb))
	c.HasInterval = true
}
