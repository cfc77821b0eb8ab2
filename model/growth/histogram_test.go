package growth

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func TestBin(t *testing.T) {
	tests := []struct {
		name       string
		maxBins    int
		samples    [][]float64
		low, width float64
		counts     [][]int
	}{
		{"edges lie on multiples of the width", 10, [][]float64{{10, 12, 19, 20, 29, 30}}, 0, 20, [][]int{{3, 3}}},
		{
			// IQR 103.02 - 96.46 (R), 25 readings: 2 x 6.56 / 2.924 = 4.49, rounded up to 5.
			"bay scallop day 2, Freedman & Diaconis", 12, [][]float64{bayScallopDay2}, 90, 5, [][]int{{5, 5, 10, 4, 1}},
		},
		// IQR 47.25 - 15.75, 64 readings: 2 x 31.5 / 4 = 15.75, rounded up to 20.
		{"0 to 63, Freedman & Diaconis", 12, [][]float64{upTo(64)}, 0, 20, [][]int{{20, 20, 20, 4}}},
		{"two samples share edges", 5, [][]float64{{100, 110, 120}, {200, 210, 220}}, 100, 50, [][]int{{3, 0, 0}, {0, 0, 3}}},
		{"all alike", 10, [][]float64{{300, 300, 300}}, 300, 0.05, [][]int{{3}}},
		{"one reading", 10, [][]float64{{300}}, 300, 0.05, [][]int{{1}}},
		{"one bin", 1, [][]float64{{-3, 0, 4}}, -3, 10, [][]int{{3}}},
		{"a sample without readings", 5, [][]float64{{100, 110, 120}, nil}, 100, 20, [][]int{{2, 1}, {0, 0}}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			h := Bin(tt.maxBins, tt.samples...)
			near(t, "low", h.LowUM, tt.low, 1e-12)
			near(t, "width", h.WidthUM, tt.width, 1e-12)
			if !slices.EqualFunc(h.Counts, tt.counts, slices.Equal) {
				t.Errorf("counts %v, want %v", h.Counts, tt.counts)
			}
		})
	}
	for _, empty := range []Histogram{Bin(10), Bin(10, nil), Bin(10, []float64{math.NaN(), math.Inf(1)})} {
		if empty.Bins() != 0 {
			t.Errorf("bins of nothing: %+v", empty)
		}
	}
}

// upTo gives 0, 1, 2 and so on, n values.
func upTo(n int) []float64 {
	list := make([]float64, n)
	for i := range list {
		list[i] = float64(i)
	}
	return list
}

func TestBinProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		reading := rapid.OneOf(rapid.Float64Range(20, 5000), rapid.Float64Range(-1e12, 1e12), rapid.SampledFrom([]float64{0, 300, 1e-9, math.NaN()}))
		one := rapid.SliceOfN(reading, 0, 40).Draw(t, "one")
		two := rapid.SliceOfN(reading, 0, 40).Draw(t, "two")
		maxBins := rapid.IntRange(-1, 40).Draw(t, "max")
		h := Bin(maxBins, one, two)
		if h.Bins() > max(maxBins, 1) {
			t.Fatalf("%d bins, want at most %d", h.Bins(), maxBins)
		}
		for i, s := range [][]float64{one, two} {
			want := 0
			for _, x := range s {
				if !math.IsNaN(x) {
					want++
				}
			}
			got := 0
			if h.Bins() > 0 {
				for _, n := range h.Counts[i] {
					got += n
				}
			}
			if got != want {
				t.Fatalf("sample %d: %d readings in bins, want %d", i, got, want)
			}
			for _, x := range s {
				if high := h.LowUM + float64(h.Bins())*h.WidthUM; x < h.LowUM-1e-9*h.WidthUM || x > high+1e-9*h.WidthUM {
					t.Fatalf("%g outside %g to %g", x, h.LowUM, high)
				}
			}
		}
	})
}
