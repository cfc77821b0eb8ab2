package growth

import (
	"fmt"
	"math"
)

// ReadyState is where a batch stands on the way to the length at which it is called ready.
type ReadyState int

const (
	Ahead   ReadyState = iota // the curve reaches the length after the last look
	Reached                   // the curve had reached it by the last look
	Never                     // it does not rise, or so little that it takes over a year
)

func (s ReadyState) String() string {
	switch s {
	case Reached:
		return "reached"
	case Never:
		return "never at this rate"
	}
	return "ahead"
}

// longestWait is the age in days beyond which a ready age is no forecast.
const longestWait = 365.0

// Ready is the age at which a batch's mean length reaches a given one.
type Ready struct {
	State   ReadyState
	AgeDays float64 // not for Never; 0 where the curve puts it before hatch

	// Interval holds the ages at which the curve may reach the length. Where LowOpen or HighOpen is
	// set, the readings do not bound that end and its number is 0: growth is not sure enough yet.
	Interval          Interval
	LowOpen, HighOpen bool

	// Far is set where AgeDays lies beyond twice the span of the looks, counted from the first:
	// a figure to plan by, not to rely on.
	Far            bool
	Readings, Days int // what it comes from
}

// Ready says at which age the curve reaches readyUM. The interval is Fieller's (1954, J. R. Stat.
// Soc. B 16:175-185): all ages at which a mean of readyUM lies within the curve's own interval. It
// refuses looks of fewer than FewestDays days and a length that cannot be one.
func (f Fit) Ready(readyUM float64) (Ready, error) {
	if !f.HasIntervals {
		return Ready{}, fmt.Errorf("looks of %d days: a ready date needs looks of %d days or more", f.Days, FewestDays)
	}
	if !measurable(readyUM) || readyUM <= 0 {
		return Ready{}, fmt.Errorf("ready length %g um: give a length above zero", readyUM)
	}
	r := Ready{Readings: f.Readings, Days: f.Days}
	r.State, r.AgeDays = f.reaches(f.scale(readyUM))
	r.LowOpen, r.HighOpen = true, true
	if r.State != Never && f.Slope > 0 {
		r.Interval, r.LowOpen, r.HighOpen = f.fieller(f.scale(readyUM))
	}
	r.clip()
	r.Far = r.State == Ahead && r.AgeDays-f.FirstAgeDay > 2*(f.LastAgeDay-f.FirstAgeDay)
	return r, nil
}

// reaches gives the state and the age for a target y in the straight scale.
func (f *Fit) reaches(y float64) (ReadyState, float64) {
	there := f.line(f.LastAgeDay) >= y
	if f.Slope <= 0 {
		if there {
			return Reached, f.FirstAgeDay
		}
		return Never, 0
	}
	age := f.meanAge + (y-f.line(f.meanAge))/f.Slope
	switch {
	case there:
		return Reached, age
	case age > longestWait:
		return Never, 0
	}
	return Ahead, age
}

// fieller solves (line(x) - y)^2 = reach^2 (1/weight + (x - meanAge)^2 / sxx) for x, with u = x -
// meanAge and d = y - line(meanAge): a u^2 - 2 slope d u + c = 0. Slope > 0. The roots are written
// so that neither subtracts two near numbers: far / a and c / far.
func (f *Fit) fieller(y float64) (i Interval, lowOpen, highOpen bool) {
	d := y - f.line(f.meanAge)
	if f.reach == 0 {
		return around(f.meanAge+d/f.Slope, 0), false, false
	}
	a := f.Slope*f.Slope - f.reach*f.reach/f.sxx
	c := d*d - f.reach*f.reach/f.weight
	far := f.Slope*d + math.Copysign(math.Sqrt(max(0, f.Slope*f.Slope*d*d-a*c)), d)
	switch {
	case a > 0: // the slope is surely above zero: both ends are bounded
		near, away := f.meanAge+c/far, f.meanAge+far/a
		return Interval{Low: min(near, away), High: max(near, away)}, false, false
	case c <= 0: // the slope may be zero and the target be the mean of all looks: any age will do
		return Interval{}, true, true
	case d > 0: // the slope may be zero: not before this age, and perhaps never
		return Interval{Low: f.meanAge + c/far}, false, true
	}
	return Interval{High: f.meanAge + c/far}, true, false
}

// clip keeps ages within what can be an age: not before hatch, and open beyond a year.
func (r *Ready) clip() {
	r.AgeDays = max(r.AgeDays, 0)
	r.Interval.Low = max(r.Interval.Low, 0)
	r.Interval.High = max(r.Interval.High, 0)
	if r.Interval.High > longestWait {
		r.Interval.High, r.HighOpen = 0, true
	}
}
