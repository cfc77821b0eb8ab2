package count

import (
	"math"

	"gonum.org/v1/gonum/mathext"
	"gonum.org/v1/gonum/stat/distuv"
)

// exactTrials is the number of trials up to which the exact binomial is used.
// Beyond it the incomplete beta function loses digits (at 1e8 trials it is
// plainly wrong) while the normal curve is good to 0.0001.
const exactTrials = 1_000_000

// binomialAtMost is the chance of k or fewer hits in n trials; miss is 1-p.
func binomialAtMost(k, n int, p, miss float64) float64 {
	switch {
	case k < 0:
		return 0
	case k >= n || p <= 0:
		return 1
	case miss <= 0:
		return 0
	case n > exactTrials:
		return normalAtMost(k, n, p, miss)
	}
	return mathext.RegIncBeta(float64(n-k), float64(k)+1, miss)
}

// normalAtMost is binomialAtMost on the normal curve, half a hit for continuity.
func normalAtMost(k, n int, p, miss float64) float64 {
	mean := float64(n) * p
	return distuv.UnitNormal.CDF((float64(k) + 0.5 - mean) / math.Sqrt(mean*miss))
}

// clopperPearson returns k in n as a share with its exact 95 % limits (Clopper &
// Pearson 1934, Biometrika 26:404). With n = 0 nothing is known.
func clopperPearson(k, n int) Estimate {
	if n == 0 {
		return Estimate{}
	}
	tail, hits, misses := (1-Confidence)/2, float64(k), float64(n-k)
	low, high := 0.0, 1.0
	if k > 0 {
		low = mathext.InvRegIncBeta(hits, misses+1, tail)
	}
	if k < n {
		high = mathext.InvRegIncBeta(hits+1, misses, 1-tail)
	}
	return Between(hits/float64(n), low, high)
}
