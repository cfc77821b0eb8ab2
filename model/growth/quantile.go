package growth

import (
	"math"
	"slices"
)

// Median is the middle value, or the mean of the two middle values. NaN for an empty list.
func Median(values []float64) float64 {
	sorted := slices.Clone(values)
	slices.Sort(sorted)
	return middle(sorted)
}

// middle is the median of values already in order.
func middle(sorted []float64) float64 {
	n := len(sorted)
	switch {
	case n == 0:
		return math.NaN()
	case n%2 == 1:
		return sorted[n/2]
	}
	low, high := sorted[n/2-1], sorted[n/2]
	return low + (high-low)/2
}

// Quantile is the value below which the share p (0 to 1) of the sample lies, by linear
// interpolation between order statistics at (n-1)p: definition 7 of Hyndman & Fan (1996, The
// American Statistician 50:361-365). At p = 0.5 it is the median. NaN for an empty list or a p
// outside 0 to 1.
func Quantile(values []float64, p float64) float64 {
	sorted := slices.Clone(values)
	slices.Sort(sorted)
	return quantile(sorted, p)
}

// quantile is Quantile of values already in order.
func quantile(sorted []float64, p float64) float64 {
	if len(sorted) == 0 || !(p >= 0 && p <= 1) {
		return math.NaN()
	}
	at := float64(len(sorted)-1) * p
	i := int(at)
	if i+1 >= len(sorted) {
		return sorted[len(sorted)-1]
	}
	return sorted[i] + (at-float64(i))*(sorted[i+1]-sorted[i])
}
