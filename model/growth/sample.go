package growth

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"
)

// ErrNoReadings is returned where a figure is asked of an empty list of readings.
var ErrNoReadings = errors.New("no readings: measure at least one shell")

// Sample is the summary of the shell lengths read in one look. Lengths are um.
type Sample struct {
	N    int
	Mean float64

	// HasSpread is true from two readings on. Without it SD, CVPercent and MeanInterval are zero
	// and say nothing.
	HasSpread    bool
	SD           float64  // with n - 1
	CVPercent    float64  // 100 SD / mean; 0 where the mean is 0
	MeanInterval Interval // of the mean, by Student's t: mean +- t SD / sqrt(n)

	Median   float64
	Min, Max float64
	// Quantiles as Quantile defines them. P05, the length that 1 in 20 falls short of, is what a
	// sieve is judged by.
	P05, P25, P75, P95 float64

	Odd   []float64 // the odd readings, in the order they were read
	OddAt []int     // their places in the list, from 0
}

// Summarize describes a sample of shell lengths, in um and in any order; the list is not changed.
// It refuses an empty list and values that are not numbers. It does not apply CheckLength.
func Summarize(um []float64) (Sample, error) {
	if len(um) == 0 {
		return Sample{}, ErrNoReadings
	}
	if i := slices.IndexFunc(um, func(x float64) bool { return !measurable(x) }); i >= 0 {
		return Sample{}, fmt.Errorf("reading %d (%g): not a length in um", i+1, um[i])
	}
	sorted := slices.Clone(um)
	slices.Sort(sorted)
	s := Sample{
		N: len(um), Min: sorted[0], Max: sorted[len(sorted)-1], Median: middle(sorted),
		P05: quantile(sorted, 0.05), P25: quantile(sorted, 0.25),
		P75: quantile(sorted, 0.75), P95: quantile(sorted, 0.95),
	}
	s.addMean(um)
	s.OddAt = oddOnes(um)
	for _, i := range s.OddAt {
		s.Odd = append(s.Odd, um[i])
	}
	return s, nil
}

func (s *Sample) addMean(um []float64) {
	if s.N == 1 {
		s.Mean = um[0]
		return
	}
	mean, sd := stat.MeanStdDev(um, nil)
	s.Mean, s.SD, s.HasSpread = mean, sd, true
	if mean != 0 {
		s.CVPercent = 100 * sd / math.Abs(mean)
	}
	n := float64(s.N)
	s.MeanInterval = around(mean, student(n-1)*sd/math.Sqrt(n))
}

// Look gives the sample the age, in days, at which it was taken.
func (s Sample) Look(ageDays float64) Look {
	return Look{AgeDays: ageDays, MeanUM: s.Mean, SDUM: s.SD, N: s.N}
}
