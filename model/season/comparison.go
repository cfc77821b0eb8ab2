package season

import (
	"math"

	"drainboard/model/count"
)

// Outcome is by what batches are called better.
type Outcome string

// The outcomes.
const (
	Survival Outcome = "survival" // share alive a day later, per cent: Alive.ADay
	Speed    Outcome = "growth"   // um a day: Growth.PerDay
)

// Outcomes lists the outcomes in the order to show them.
func Outcomes() []Outcome { return []Outcome{Survival, Speed} }

// Words says what an outcome is.
func (o Outcome) Words() string {
	if o == Speed {
		return "growth"
	}
	return "alive a day later"
}

// Unit is the unit of an outcome, as the model writes units.
func (o Outcome) Unit() string {
	if o == Speed {
		return "um/day"
	}
	return "per cent"
}

// FewestBatches is how many batches a rank correlation is given from. Of four in
// a row in the same order by chance alone there is one chance in twelve (two of
// the 24 orders), of five one in sixty: below five even a perfect agreement says
// nothing.
const FewestBatches = 5

// Comparison is one habit held against one outcome over the batches that know
// both.
type Comparison struct {
	Habit   Habit
	Outcome Outcome
	N       int // batches that know both
	// Rho is Spearman's rank correlation: above 0 where more of the habit went with
	// more of the outcome. Unknown below FewestBatches, and where all batches are
	// alike in one of the two.
	Rho count.Figure
}

// Why says why there is no correlation, empty where there is one.
func (c Comparison) Why() string {
	switch {
	case c.Rho.Known:
		return ""
	case c.N < FewestBatches:
		return "too few"
	}
	return "all alike"
}

// Point is one batch in a plot of a habit against an outcome.
type Point struct {
	Batch string
	X, Y  float64
	// Low and High are the limits of Y; unknown where it has none.
	Low, High count.Figure
}

// Points are the batches that know both.
func (s Season) Points(h Habit, o Outcome) []Point { return points(s.Batches, h, o) }

func points(batches []Batch, h Habit, o Outcome) []Point {
	var ps []Point
	for _, b := range batches {
		x, y := b.Habit(h), b.outcome(o)
		if x.Known && y.Value.Known {
			ps = append(ps, Point{b.Name, x.X, y.Value.X, y.Low, y.High})
		}
	}
	return ps
}

// outcome of a batch in its unit. Limits of growth may lie below 0.
func (b Batch) outcome(o Outcome) count.Estimate {
	if o == Speed {
		return count.Estimate{Value: b.Growth.PerDay, Low: b.Growth.Low, High: b.Growth.High}
	}
	percent := func(f count.Figure) count.Figure { return count.Figure{X: 100 * f.X, Known: f.Known} }
	e := b.Alive.ADay
	return count.Estimate{Value: percent(e.Value), Low: percent(e.Low), High: percent(e.High)}
}

func compare(batches []Batch, h Habit, o Outcome) Comparison {
	c := Comparison{Habit: h, Outcome: o}
	var x, y []float64
	for _, p := range points(batches, h, o) {
		x, y = append(x, settled(p.X)), append(y, settled(p.Y))
	}
	c.N = len(x)
	if rho, known := Spearman(x, y); known && c.N >= FewestBatches {
		c.Rho = count.Known(rho)
	}
	return c
}

// settled takes the dust of binary fractions off, so that equal figures tie.
func settled(x float64) float64 { return math.Round(x*1e9) / 1e9 }
