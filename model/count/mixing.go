package count

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// Levels of the two tests on a list of subsamples.
const (
	MixingLevel = 0.05 // upper tail: only counts that differ too much are uneven
	TrendLevel  = 0.05 // both tails together
)

// Mixing says whether subsamples differ more than chance lets them when the
// larvae hang evenly in the water: the dispersion test, X2 = sum of
// (x - mean)^2 / mean against chi-square on n - 1 degrees of freedom, upper
// tail (Fisher's index of dispersion; 'Student' 1907, Biometrika 5:351, gave the
// counts it is usually shown on).
//
// Uneven means that the limits of the count are too narrow. They are not
// widened behind anyone's back: mix, and count again. One count, or counts of
// none at all, cannot show uneven mixing: they read even and are not Judged.
type Mixing struct {
	Uneven    bool
	Judged    bool    // false where there was nothing to judge by
	Statistic float64 // X2
	DF        int     // degrees of freedom
	P         float64 // chance of an X2 this large or larger; 1 where not judged
}

// String returns "even" or "uneven".
func (m Mixing) String() string {
	if m.Uneven {
		return "uneven"
	}
	return "even"
}

// Dispersion tests counts of equal volumes for even mixing. It refuses an empty
// list and negative counts.
func Dispersion(counts []int) (Mixing, error) {
	total, err := sum("counts", counts)
	if err != nil {
		return Mixing{}, err
	}
	return dispersion(counts, total), nil
}

func dispersion(counts []int, total int) Mixing {
	m := Mixing{DF: len(counts) - 1, P: 1}
	if m.DF < 1 || total == 0 {
		return m
	}
	mean := float64(total) / float64(len(counts))
	for _, c := range counts {
		d := float64(c) - mean
		m.Statistic += d * d / mean
	}
	m.P = distuv.ChiSquared{K: float64(m.DF)}.Survival(m.Statistic)
	m.Judged, m.Uneven = true, m.P < MixingLevel
	return m
}

// Trend says whether counts rise or fall from the first subsample to the last,
// as they do when larvae settle in the jug while it is being sampled.
//
// It is the score test of a trend in Poisson counts on their order (Cox & Lewis
// 1966, from memory): given the total, sum of i*x_i against its mean and variance without a
// trend, half a step nearer for continuity, on the normal curve, both tails.
// A test on ranks could not reach 5 % with three subsamples; this one can.
type Trend struct {
	Falling, Rising bool
	Judged          bool    // false with fewer than three subsamples or nothing counted
	Z               float64 // below 0 when the counts fall
	P               float64 // 1 where not judged
}

func trend(counts []int, total int) Trend {
	n := len(counts)
	if n < 3 || total == 0 {
		return Trend{P: 1}
	}
	weighted := 0.0
	for i, c := range counts {
		weighted += float64(i+1) * float64(c)
	}
	mean := float64(total) * float64(n+1) / 2
	sd := math.Sqrt(float64(total) * float64(n*n-1) / 12)
	z := math.Max(0, math.Abs(weighted-mean)-0.5) / sd
	t := Trend{Judged: true, Z: math.Copysign(z, weighted-mean), P: 2 * distuv.UnitNormal.Survival(z)}
	t.Falling = t.P < TrendLevel && t.Z < 0
	t.Rising = t.P < TrendLevel && t.Z > 0
	return t
}
