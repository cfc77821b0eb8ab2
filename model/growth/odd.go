package growth

import (
	"math"
	"slices"
)

const (
	// oddScore is the modified z score beyond which a reading is odd: Iglewicz & Hoaglin 1993,
	// "How to Detect and Handle Outliers", ASQC Quality Press.
	oddScore = 3.5
	// madToSD makes the median absolute deviation of normal data estimate the standard deviation:
	// 1 / 0.6745, the normal upper quartile of the same source.
	madToSD = 1 / 0.6745
	// meanDeviationToSD does the same for the mean absolute deviation: sqrt(pi/2).
	meanDeviationToSD = 1.2533141373155003

	// oddFloor, a share of the median, is the difference below which nothing is odd, so that a
	// very even sample does not mark readings one eyepiece division apart. Common practice, no source.
	oddFloor = 0.03
	// earlyFloor replaces oddFloor in Odd while fewer than earlyReadings have been typed. Simulated
	// normal lengths (cv 8 %) behind four others would be called odd 14 times in 100 without it and
	// 2 times with it, and a person who hears the beep too often stops listening.
	earlyFloor    = 0.20
	earlyReadings = 10

	// FewestForOdd is the number of readings before which none is called odd.
	FewestForOdd = 4
)

// Odd says whether x is unlike the readings typed before it, all in um: further than 3.5 scaled
// MAD from their median (Iglewicz & Hoaglin 1993) and further than 3 % of the median, or than 20 %
// while fewer than ten have been typed. With fewer than FewestForOdd nothing is odd; a value that
// is not a number always is. An odd reading is taken and marked, never dropped.
func Odd(previous []float64, x float64) bool {
	if !measurable(x) {
		return true
	}
	floor := oddFloor
	if len(previous) < earlyReadings {
		floor = earlyFloor
	}
	s, ok := spread(previous, floor)
	return ok && s.odd(x)
}

// oddOnes gives the places in values of the readings that are odd within the whole sample.
func oddOnes(values []float64) []int {
	s, ok := spread(values, oddFloor)
	if !ok {
		return nil
	}
	var at []int
	for i, x := range values {
		if s.odd(x) {
			at = append(at, i)
		}
	}
	return at
}

// spreading is what a reading is judged against, um.
type spreading struct {
	median float64
	reach  float64 // further than this from the median is odd
}

func (s spreading) odd(x float64) bool { return math.Abs(x-s.median) > s.reach }

func spread(values []float64, floor float64) (spreading, bool) {
	if len(values) < FewestForOdd || slices.ContainsFunc(values, func(x float64) bool { return !measurable(x) }) {
		return spreading{}, false
	}
	median := Median(values)
	reach := max(oddScore*robustSD(values, median), floor*math.Abs(median))
	return spreading{median: median, reach: reach}, true
}

// robustSD estimates the standard deviation from the median absolute deviation. When more than half
// the readings tie, that is zero and the mean absolute deviation stands in; when all tie, it is 0 and
// only the floor decides.
func robustSD(values []float64, median float64) float64 {
	deviations := make([]float64, len(values))
	mean := 0.0
	for i, x := range values {
		deviations[i] = math.Abs(x - median)
		mean += deviations[i] / float64(len(values))
	}
	if mad := Median(deviations); mad > 0 {
		return madToSD * mad
	}
	return meanDeviationToSD * mean
}

// ModifiedZ is 0.6745 (x - median) / MAD, the modified z score of Iglewicz & Hoaglin (1993). It is
// known only where the median absolute deviation of the sample is above zero.
func ModifiedZ(sample []float64, x float64) (z float64, known bool) {
	median := Median(sample)
	deviations := make([]float64, len(sample))
	for i, v := range sample {
		deviations[i] = math.Abs(v - median)
	}
	mad := Median(deviations)
	if !(mad > 0) || !measurable(x) {
		return 0, false
	}
	return (x - median) / (madToSD * mad), true
}
