package growth

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/stat"
	"pgregory.net/rapid"
)

func TestSummarizePublished(t *testing.T) {
	accuracy4 := []float64{10000000.2}
	for range 500 {
		accuracy4 = append(accuracy4, 10000000.1, 10000000.3)
	}
	michelson := make([]float64, len(michelsonSpeed))
	for i, v := range michelsonSpeed {
		michelson[i] = 299 + v/1000
	}
	tests := []struct {
		name      string // with its source
		um        []float64
		mean, sd  float64
		low, high float64 // NaN: not published
		tolerance float64
	}{
		{"NIST StRD Michelso, certified; interval by R", michelson, 299.8524, 0.0790105478190518, 299.8367226, 299.8680774, 1e-9},
		{"NIST StRD NumAcc1, certified (from memory)", []float64{10000001, 10000003, 10000002}, 10000002, 1, math.NaN(), math.NaN(), 1e-12},
		{"NIST StRD NumAcc4, certified (from memory)", accuracy4, 10000000.2, 0.1, math.NaN(), math.NaN(), 1e-8},
		{"R sleep group 1, t.test", sleepOne, 0.75, 1.789010, -0.5297804, 2.0297804, 1e-6},
		{"bay scallop F2 tank B day 2, published mean and SD; interval by R", bayScallopDay2, 100.096, 5.25021190049, 97.92881904207, 102.26318095793, 1e-10},
		{"invented lengths; by hand", numbers("212 205 219 208 214 210 207 216 211 209"), 211.1, 4.280446, 208.03795, 214.16205, 1e-6},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			s, err := Summarize(tt.um)
			if err != nil {
				t.Fatal(err)
			}
			near(t, "mean", s.Mean, tt.mean, tt.tolerance)
			near(t, "sd", s.SD, tt.sd, tt.tolerance)
			near(t, "cv %", s.CVPercent, 100*tt.sd/tt.mean, max(tt.tolerance, 1e-6))
			if !math.IsNaN(tt.low) {
				nearInterval(t, "mean interval", s.MeanInterval, tt.low, tt.high, tt.tolerance)
			}
		})
	}
}

// NIST/SEMATECH e-Handbook, ZARR13: n 195, mean 9.261460, s 0.022789 gives 9.258242 to 9.264679.
// The rounded summary stands for the data: one reading at the mean, the others one s above or below,
// which has that mean and that s exactly.
func TestMeanIntervalZarr13(t *testing.T) {
	const n, mean, sd = 195, 9.261460, 0.022789
	um := []float64{mean}
	for range (n - 1) / 2 {
		um = append(um, mean-sd, mean+sd)
	}
	s := must(Summarize(um))
	near(t, "sd", s.SD, sd, 1e-12)
	nearInterval(t, "interval", s.MeanInterval, 9.258242, 9.264679, 1e-6)
}

func TestSummarizePlaces(t *testing.T) {
	s := must(Summarize(bayScallopDay2)) // R 4.2.2: median, quantile(type 7), range
	near(t, "median", s.Median, 101.1, 1e-12)
	near(t, "min", s.Min, 90.43, 1e-12)
	near(t, "max", s.Max, 110.59, 1e-12)
	near(t, "p05", s.P05, 92.108, 1e-12)
	near(t, "p25", s.P25, 96.46, 1e-12)
	near(t, "p75", s.P75, 103.02, 1e-12)
	near(t, "p95", s.P95, 107.508, 1e-12)
	if s.N != 25 || len(s.Odd) != 0 {
		t.Errorf("n = %d, odd = %v, want 25 and none", s.N, s.Odd)
	}
}

func TestSummarizeOneReading(t *testing.T) {
	s := must(Summarize([]float64{212}))
	want := Sample{N: 1, Mean: 212, Median: 212, Min: 212, Max: 212, P05: 212, P25: 212, P75: 212, P95: 212}
	if s.HasSpread || s.Mean != want.Mean || s.Median != want.Median || s.SD != 0 || s.MeanInterval != (Interval{}) || s.P05 != 212 {
		t.Errorf("got %+v, want %+v", s, want)
	}
}

func TestSummarizeRefuses(t *testing.T) {
	tests := []struct {
		name  string
		um    []float64
		words string
	}{
		{"nothing", nil, "no readings"},
		{"not a number", []float64{100, math.NaN()}, "reading 2"},
		{"infinite", []float64{math.Inf(-1)}, "reading 1"},
		{"absurd", []float64{1, 2, 1e200}, "reading 3"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := Summarize(tt.um)
			refuses(t, err, tt.words)
		})
	}
}

func TestMedian(t *testing.T) {
	tests := []struct {
		name   string
		values []float64
		want   float64
	}{
		{"odd number", []float64{3, 1, 2}, 2},
		{"even number", []float64{4, 1, 3, 2}, 2.5},
		{"five", []float64{5, 4, 3, 2, 1}, 3},
		{"one", []float64{7}, 7},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := Median(tt.values); got != tt.want {
				t.Errorf("got %g, want %g", got, tt.want)
			}
			if got := Quantile(tt.values, 0.5); got != tt.want {
				t.Errorf("quantile 0.5: got %g, want %g", got, tt.want)
			}
		})
	}
	if got := Median(nil); !math.IsNaN(got) {
		t.Errorf("median of nothing = %g, want NaN", got)
	}
}

// R 4.2.2: quantile(1:10, p), type 7 of Hyndman & Fan 1996.
func TestQuantile(t *testing.T) {
	ten := numbers("10 9 8 7 6 5 4 3 2 1")
	for p, want := range map[float64]float64{0: 1, 0.05: 1.45, 0.1: 1.9, 0.25: 3.25, 0.33: 3.97, 0.9: 9.1, 1: 10} {
		near(t, "quantile", Quantile(ten, p), want, 1e-12)
	}
	for _, p := range []float64{-0.1, 1.1, math.NaN()} {
		if got := Quantile(ten, p); !math.IsNaN(got) {
			t.Errorf("quantile %g = %g, want NaN", p, got)
		}
	}
}

func drawLengths(t *rapid.T, least, most int) []float64 {
	return rapid.SliceOfN(rapid.Float64Range(ShortestUM, LongestUM), least, most).Draw(t, "um")
}

func TestSummarizeProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		um := drawLengths(t, 1, 60)
		before := slices.Clone(um)
		s := must(Summarize(um))
		if !slices.Equal(um, before) {
			t.Fatal("the list was changed")
		}
		places := []float64{s.Min, s.P05, s.P25, s.Median, s.P75, s.P95, s.Max}
		if !slices.IsSorted(places) {
			t.Fatalf("out of order: %v", places)
		}
		if s.Mean < s.Min-1e-9 || s.Mean > s.Max+1e-9 {
			t.Fatalf("mean %g outside %g to %g", s.Mean, s.Min, s.Max)
		}
		if s.HasSpread {
			mean, sd := stat.MeanStdDev(um, nil) // gonum
			if math.Abs(mean-s.Mean) > 1e-9*mean || math.Abs(sd-s.SD) > 1e-9*mean || !s.MeanInterval.Contains(s.Mean) {
				t.Fatalf("mean, sd = %g, %g, want %g, %g", s.Mean, s.SD, mean, sd)
			}
		}
		for i, at := range s.OddAt {
			if um[at] != s.Odd[i] {
				t.Fatalf("odd %d is %g, want %g", i, s.Odd[i], um[at])
			}
		}
		shuffled := slices.Clone(um)
		rand.New(rand.NewPCG(1, rapid.Uint64().Draw(t, "seed"))).Shuffle(len(shuffled), func(i, j int) {
			shuffled[i], shuffled[j] = shuffled[j], shuffled[i]
		})
		other := must(Summarize(shuffled))
		if other.Median != s.Median || other.P95 != s.P95 || len(other.Odd) != len(s.Odd) {
			t.Fatalf("the order matters: %+v and %+v", s, other)
		}
	})
}
