package growth

import (
	"math"
	"slices"
)

// Histogram counts readings in bins of one width shared by all its samples.
type Histogram struct {
	LowUM   float64 // lower edge of the first bin
	WidthUM float64 // 1, 2 or 5 times a power of ten
	// Counts holds for each sample the readings in each bin; a bin takes its lower edge and not its
	// upper one.
	Counts [][]int
}

// Bins is the number of bins.
func (h Histogram) Bins() int {
	if len(h.Counts) == 0 {
		return 0
	}
	return len(h.Counts[0])
}

// Bin sorts the readings of one or more samples, um, into common bins, at most maxBins of them.
// The width follows Freedman & Diaconis (1981, Z. Wahrscheinlichkeitstheorie 57:453-476), 2 IQR
// n^(-1/3), for the sample that asks for the finest, rounded up to 1, 2 or 5 times a power of ten;
// where the quartiles tie, the range in Sturges' (1926) number of classes. Values that are not
// numbers are left out. Without readings there are no bins.
func Bin(maxBins int, samples ...[]float64) Histogram {
	clean := make([][]float64, len(samples))
	var all []float64
	for i, s := range samples {
		for _, x := range s {
			if measurable(x) {
				clean[i] = append(clean[i], x)
			}
		}
		all = append(all, clean[i]...)
	}
	if len(all) == 0 {
		return Histogram{}
	}
	low, width, bins := layBins(slices.Min(all), slices.Max(all), finestWidth(clean), max(maxBins, 1))
	h := Histogram{LowUM: low, WidthUM: width, Counts: make([][]int, len(clean))}
	for i, s := range clean {
		h.Counts[i] = make([]int, bins)
		for _, x := range s {
			h.Counts[i][binOf(x, low, width, bins)]++
		}
	}
	return h
}

// finestWidth is the smallest bin width that any of the samples asks for; 0 where none does.
func finestWidth(samples [][]float64) float64 {
	finest := 0.0
	for _, s := range samples {
		if len(s) < 2 {
			continue
		}
		n := float64(len(s))
		width := 2 * (Quantile(s, 0.75) - Quantile(s, 0.25)) / math.Cbrt(n)
		if width <= 0 {
			width = (slices.Max(s) - slices.Min(s)) / (math.Ceil(math.Log2(n)) + 1)
		}
		if width > 0 && (finest == 0 || width < finest) {
			finest = width
		}
	}
	return finest
}

// layBins chooses a round width of at least want and the lower edge, so that at most maxBins bins
// cover low to high.
func layBins(low, high, want float64, maxBins int) (edge, width float64, bins int) {
	// Below a ten-thousandth of the values themselves a width means nothing to a reader.
	least := max(math.Abs(low), math.Abs(high)) * 1e-4
	want = max(want, least, (high-low)/float64(maxBins)*0.999)
	if want <= 0 {
		want = 1
	}
	for width = roundUp(want); ; width = roundUp(width * 1.5) {
		edge = math.Floor(low/width) * width
		bins = int(math.Floor((high-edge)/width)) + 1
		if bins <= maxBins {
			return edge, width, bins
		}
		// An edge always lies at zero, so that one bin on such edges may never hold all readings.
		if maxBins == 1 {
			return low, roundUp(max(want, (high-low)*1.001)), 1
		}
	}
}

func binOf(x, low, width float64, bins int) int {
	return min(max(int(math.Floor((x-low)/width)), 0), bins-1)
}

// roundUp is the smallest of 1, 2 and 5 times a power of ten that is not below x, x > 0.
func roundUp(x float64) float64 {
	power := math.Pow(10, math.Floor(math.Log10(x)))
	for _, m := range []float64{1, 2, 5} {
		if m*power >= x*(1-1e-12) {
			return m * power
		}
	}
	return 10 * power
}
