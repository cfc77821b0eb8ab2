package count

import (
	"math"

	"gonum.org/v1/gonum/mathext"
)

// Confidence is the share of intervals that hold the truth, for every limit
// this package works out by itself.
const Confidence = 0.95

// Garwood returns the exact limits of the mean of a Poisson variable of which
// k were counted: low is the mean at which k or more, high the mean at which k
// or fewer, would turn up with a chance of (1-confidence)/2. Low is 0 for k = 0.
// The interval holds the true mean at least as often as confidence says.
// Pool the raw counts first and scale the limits afterwards.
//
// Source: Garwood 1936, Biometrika 28:437. It refuses a negative k and a
// confidence that does not lie between 0 and 1.
func Garwood(k int, confidence float64) (low, high float64, err error) {
	if k < 0 {
		return 0, 0, wrong("counts", "%d is not a count; give whole numbers of 0 or more", k)
	}
	if !(confidence > 0 && confidence < 1) {
		return 0, 0, wrong("confidence", "%s is not possible; give a share between 0 and 1", plain(confidence))
	}
	low, high = garwood(k, confidence)
	return low, high, nil
}

func garwood(k int, confidence float64) (low, high float64) {
	tail := (1 - confidence) / 2
	if k > 0 {
		low = mathext.GammaIncRegInv(float64(k), tail)
	}
	return low, mathext.GammaIncRegCompInv(float64(k)+1, tail)
}

// poissonAtMost is the chance of k or fewer where mean are expected.
func poissonAtMost(k int, mean float64) float64 {
	if mean <= 0 {
		return 1
	}
	return mathext.GammaIncRegComp(float64(k)+1, mean)
}

// poissonAtLeast is the chance of k or more where mean are expected.
func poissonAtLeast(k int, mean float64) float64 {
	switch {
	case k == 0:
		return 1
	case mean <= 0:
		return 0
	}
	return mathext.GammaIncReg(float64(k), mean)
}

// pooled returns the estimate of k counted, each of which stands for scale.
func pooled(k int, scale float64) Estimate {
	low, high := garwood(k, Confidence)
	return Between(float64(k)*scale, low*scale, high*scale)
}

// halfWidthPercent is half the 95 % interval of k counted, in per cent of k.
func halfWidthPercent(k int) float64 {
	if k == 0 {
		return math.Inf(1)
	}
	low, high := garwood(k, Confidence)
	return 100 * (high - low) / 2 / float64(k)
}
