package growth

import (
	"fmt"
	"math"
)

// Shape is the kind of curve laid through the looks of a batch.
type Shape int

const (
	Straight    Shape = iota // mean length = Intercept + Slope x age
	Exponential              // ln(mean length) = Intercept + Slope x age
)

func (s Shape) String() string {
	if s == Exponential {
		return "exponential"
	}
	return "straight line"
}

// FewestDays is the number of different days with looks from which a fit has intervals and a
// ready date. Two days always lie exactly on a line, which says nothing of how sure it is.
const FewestDays = 3

// Fit is a curve through the looks of a batch by least squares weighted by the number of readings.
// Its intervals treat each look as one observation, since the larvae of a look share their tank,
// their day and their eye at the microscope; the readings of a look only set a floor: an interval
// is never narrower than their own scatter would give. Looks count as of different days when at
// least half a day apart.
type Fit struct {
	Shape Shape
	// Straight: um, and um per day. Exponential: ln(um), and per day.
	Intercept, Slope float64

	// HasIntervals is true with looks of at least FewestDays days; without it the standard errors
	// and ResidualSD are 0 and say nothing.
	HasIntervals            bool
	InterceptSE, SlopeSE    float64 // from the scatter of the looks about the curve
	ResidualSD              float64 // of a single reading, in the scale of the fit
	RSquared                float64 // in the scale of the fit; 0 where all means are equal
	SquaresUM               float64 // sum of N x (mean - curve)^2, um^2, whatever the shape
	Looks, Readings, Days   int
	FirstAgeDay, LastAgeDay float64

	meanAge, sxx float64 // weighted mean age, and weighted sum of squares about it
	weight       float64
	reach        float64 // t x sd of a single reading: what the intervals are made of
}

// FitLine lays a straight line through looks of at least two days. Formulas: weighted least
// squares, Draper & Smith 1998, Applied Regression Analysis, ch. 1 and 9.
func FitLine(looks []Look) (Fit, error) { return fit(Straight, looks) }

// FitExponential lays L = exp(Intercept + Slope x age) through looks of at least two days, as a
// straight line through the logarithms.
func FitExponential(looks []Look) (Fit, error) { return fit(Exponential, looks) }

func fit(shape Shape, looks []Look) (Fit, error) {
	sorted, err := checked(looks)
	if err != nil {
		return Fit{}, err
	}
	days := len(byDay(sorted))
	if days < 2 {
		return Fit{}, fmt.Errorf("looks of %s: growth needs looks of two days or more", dayCount(days))
	}
	f := Fit{
		Shape: shape, Looks: len(sorted), Days: days, HasIntervals: days >= FewestDays,
		FirstAgeDay: sorted[0].AgeDays, LastAgeDay: sorted[len(sorted)-1].AgeDays,
	}
	f.lay(sorted)
	f.judge(sorted)
	return f, nil
}

func dayCount(n int) string {
	if n == 1 {
		return "1 day"
	}
	return fmt.Sprintf("%d days", n)
}

// lay finds the curve.
func (f *Fit) lay(looks []Look) {
	meanY := 0.0
	for _, l := range looks {
		f.Readings += l.N
	}
	f.weight = float64(f.Readings)
	for _, l := range looks {
		share := float64(l.N) / f.weight
		f.meanAge += share * l.AgeDays
		meanY += share * f.scale(l.MeanUM)
	}
	sxy := 0.0
	for _, l := range looks {
		dx := l.AgeDays - f.meanAge
		f.sxx += float64(l.N) * dx * dx
		sxy += float64(l.N) * dx * (f.scale(l.MeanUM) - meanY)
	}
	f.Slope = sxy / f.sxx
	f.Intercept = meanY - f.Slope*f.meanAge
	f.RSquared = f.explained(looks, meanY)
}

// explained is the share of the weighted squares about the mean that the curve takes away.
func (f *Fit) explained(looks []Look, meanY float64) float64 {
	left, total := 0.0, 0.0
	for _, l := range looks {
		y := f.scale(l.MeanUM)
		off := y - f.line(l.AgeDays)
		left += float64(l.N) * off * off
		total += float64(l.N) * (y - meanY) * (y - meanY)
	}
	if total == 0 {
		return 0
	}
	return max(0, 1-left/total)
}

// judge adds how far the looks lie from the curve and what that says of it.
func (f *Fit) judge(looks []Look) {
	squares := 0.0
	for _, l := range looks {
		off := f.scale(l.MeanUM) - f.line(l.AgeDays)
		squares += float64(l.N) * off * off
		miss := l.MeanUM - f.At(l.AgeDays)
		f.SquaresUM += float64(l.N) * miss * miss
	}
	if !f.HasIntervals {
		return
	}
	df := float64(f.Looks - 2)
	f.ResidualSD = math.Sqrt(squares / df)
	f.SlopeSE = f.ResidualSD / math.Sqrt(f.sxx)
	f.InterceptSE = f.ResidualSD * math.Sqrt(1/f.weight+f.meanAge*f.meanAge/f.sxx)
	f.reach = max(student(df)*f.ResidualSD, f.sampling(looks))
}

// sampling is t x sd from the readings within the looks alone; 0 where no look tells.
func (f *Fit) sampling(looks []Look) float64 {
	squares, df := 0.0, 0.0
	for _, l := range looks {
		if l.N < 2 || l.SDUM == 0 {
			continue
		}
		sd := l.SDUM
		if f.Shape == Exponential {
			sd /= l.MeanUM // the sd of a logarithm is about the coefficient of variation
		}
		squares += float64(l.N-1) * sd * sd
		df += float64(l.N - 1)
	}
	if df == 0 {
		return 0
	}
	return student(df) * math.Sqrt(squares/df)
}

// scale brings a length to the scale in which the curve is straight.
func (f *Fit) scale(um float64) float64 {
	if f.Shape == Exponential {
		return math.Log(um)
	}
	return um
}

// unscale brings a value of the straight scale back to um.
func (f *Fit) unscale(y float64) float64 {
	if f.Shape == Exponential {
		return math.Exp(y)
	}
	return y
}

func (f *Fit) line(ageDays float64) float64 { return f.Intercept + f.Slope*ageDays }

// half is half the width, in the straight scale, of the interval of the curve at an age.
func (f *Fit) half(ageDays float64) float64 {
	dx := ageDays - f.meanAge
	return f.reach * math.Sqrt(1/f.weight+dx*dx/f.sxx)
}

// At is the mean length, um, that the curve has at an age in days.
func (f Fit) At(ageDays float64) float64 { return f.unscale(f.line(ageDays)) }

// MeanInterval is the interval, um, of the batch's mean length at an age in days. It is not the
// interval of a single larva. Known only with HasIntervals.
func (f Fit) MeanInterval(ageDays float64) (interval Interval, known bool) {
	if !f.HasIntervals {
		return Interval{}, false
	}
	y, half := f.line(ageDays), f.half(ageDays)
	return Interval{Low: f.unscale(y - half), High: f.unscale(y + half)}, true
}

// SlopeInterval is the interval of Slope, in Slope's own unit. Known only with HasIntervals.
func (f Fit) SlopeInterval() (interval Interval, known bool) {
	if !f.HasIntervals {
		return Interval{}, false
	}
	return around(f.Slope, f.reach/math.Sqrt(f.sxx)), true
}

// PerDay is the growth in um per day at an age in days: the slope of a straight line, or Slope
// times the length on an exponential.
func (f Fit) PerDay(ageDays float64) float64 {
	if f.Shape == Exponential {
		return f.Slope * f.At(ageDays)
	}
	return f.Slope
}

// PerDayInterval is the interval of PerDay, um per day. On an exponential the length at that age
// is taken as known. Known only with HasIntervals.
func (f Fit) PerDayInterval(ageDays float64) (interval Interval, known bool) {
	interval, known = f.SlopeInterval()
	if known && f.Shape == Exponential {
		interval = interval.scaled(f.At(ageDays))
	}
	return interval, known
}

// DoublingDays is the time in which an exponential doubles the length, ln 2 / Slope. A straight
// line, or a curve that does not rise, has none.
func (f Fit) DoublingDays() (days float64, known bool) {
	if f.Shape != Exponential || f.Slope <= 0 {
		return 0, false
	}
	return math.Ln2 / f.Slope, true
}
