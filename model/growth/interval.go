package growth

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// Interval is a two-sided 95 % interval in the unit of the figure it belongs to.
type Interval struct {
	Low, High float64
}

// Contains says whether x lies in the interval, ends included.
func (i Interval) Contains(x float64) bool { return i.Low <= x && x <= i.High }

func around(centre, half float64) Interval {
	return Interval{Low: centre - half, High: centre + half}
}

// scaled multiplies both ends by a factor that is not negative.
func (i Interval) scaled(factor float64) Interval {
	return Interval{Low: i.Low * factor, High: i.High * factor}
}

// student is the 97.5 % point of Student's t ("Student" 1908) with df degrees of freedom, df > 0.
func student(df float64) float64 {
	return distuv.StudentsT{Mu: 0, Sigma: 1, Nu: df}.Quantile(0.975)
}

// farthest bounds what the statistics accept, so that no sum of squares can overflow. It lies far
// outside anything a microscope shows; CheckLength holds the limits that mean something.
const farthest = 1e12

// measurable says whether x is a number that arithmetic can be trusted with.
func measurable(x float64) bool {
	return !math.IsNaN(x) && math.Abs(x) <= farthest
}
