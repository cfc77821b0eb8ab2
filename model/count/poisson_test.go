package count

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"
	"pgregory.net/rapid"
)

// near compares to a relative tolerance, and absolutely around 0.
func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance*math.Max(1, math.Abs(want))) {
		t.Errorf("%s: got %.10g, want %.10g", what, got, want)
	}
}

// Limits of Garwood 1936 (Biometrika 28:437) to six decimals, on which scipy,
// R poisson.test, mpmath and gonum agree.
func TestGarwoodTable(t *testing.T) {
	table := []struct {
		k                                        int
		low90, high90, low95, high95, low99, h99 float64
	}{
		{0, 0, 2.995732, 0, 3.688879, 0, 5.298317},
		{1, 0.051293, 4.743865, 0.025318, 5.571643, 0.005013, 7.430130},
		{2, 0.355362, 6.295794, 0.242209, 7.224688, 0.103495, 9.273792},
		{3, 0.817691, 7.753657, 0.618672, 8.767273, 0.337863, 10.977477},
		{4, 1.366318, 9.153519, 1.089865, 10.241589, 0.672207, 12.594090},
		{5, 1.970150, 10.513035, 1.623486, 11.668332, 1.077928, 14.149759},
		{10, 5.425406, 16.962219, 4.795389, 18.390356, 3.716922, 21.397827},
		{15, 9.246330, 23.097130, 8.395386, 24.740219, 6.893360, 28.164057},
		{20, 13.254652, 29.062019, 12.216520, 30.888378, 10.353268, 34.667999},
		{25, 17.382126, 34.916080, 16.178682, 36.904932, 13.995374, 41.000413},
		{30, 21.593979, 40.690508, 20.240874, 42.826865, 17.767246, 47.209326},
		{50, 38.964733, 63.287074, 37.110964, 65.918767, 33.663782, 71.266088},
		{75, 61.345888, 90.885123, 58.992258, 94.013149, 54.571124, 100.328378},
		{100, 84.139277, 118.079273, 81.363991, 121.626794, 76.120496, 128.760580},
		{400, 367.681174, 434.496809, 361.756297, 441.186648, 350.362503, 454.457449},
	}
	for _, row := range table {
		for _, c := range []struct{ confidence, low, high float64 }{
			{0.90, row.low90, row.high90}, {0.95, row.low95, row.high95}, {0.99, row.low99, row.h99},
		} {
			low, high, err := Garwood(row.k, c.confidence)
			if err != nil {
				t.Fatal(err)
			}
			if math.Abs(low-c.low) > 6e-7 || math.Abs(high-c.high) > 6e-7 {
				t.Errorf("k=%d at %g: got %.6f - %.6f, want %.6f - %.6f", row.k, c.confidence, low, high, c.low, c.high)
			}
		}
	}
}

// Printed by GraphPad's calculator of Poisson limits, to its two or three decimals.
func TestGarwoodGraphPad(t *testing.T) {
	for _, c := range []struct {
		k                           int
		confidence, low, high, unit float64
	}{
		{25, 0.90, 17.38, 34.92, 0.005},
		{25, 0.95, 16.18, 36.90, 0.005},
		{25, 0.99, 14.00, 41.00, 0.005},
		{10, 0.95, 4.80, 18.39, 0.005},
		{0, 0.95, 0, 3.689, 0.0005},
	} {
		low, high, _ := Garwood(c.k, c.confidence)
		if math.Abs(low-c.low) > c.unit || math.Abs(high-c.high) > c.unit {
			t.Errorf("k=%d at %g: got %.4f - %.4f, want %g - %g", c.k, c.confidence, low, high, c.low, c.high)
		}
	}
}

// Two figures that are in print and wrong for a two-sided 95 % interval.
func TestGarwoodTraps(t *testing.T) {
	if low, _, _ := Garwood(1, 0.95); math.Abs(low-0.02529) < 1e-5 {
		t.Errorf("k=1 lower limit %.6f is that of epitools pois.exact; the true one is 0.025318", low)
	}
	if _, high, _ := Garwood(0, 0.95); math.Abs(high-2.996) < 0.1 {
		t.Errorf("k=0 upper limit %.4f is the one-sided one; two-sided is 3.689", high)
	}
}

func TestGarwoodLargeCounts(t *testing.T) {
	// Computed with gonum's chi-square and with scipy, equal to nine decimals.
	for _, c := range []struct {
		k         int
		low, high float64
	}{
		{10_000, 9804.952467260, 10197.951624661},
		{100_000, 99381.152663745, 100621.744739744},
	} {
		low, high, _ := Garwood(c.k, 0.95)
		near(t, "low", low, c.low, 1e-12)
		near(t, "high", high, c.high, 1e-12)
	}
}

func TestGarwoodAgainstChiSquared(t *testing.T) {
	for k := range 300 {
		low, high, _ := Garwood(k, 0.95)
		want := 0.0
		if k > 0 {
			want = distuv.ChiSquared{K: float64(2 * k)}.Quantile(0.025) / 2
		}
		near(t, "low", low, want, 1e-9)
		near(t, "high", high, distuv.ChiSquared{K: float64(2*k + 2)}.Quantile(0.975)/2, 1e-9)
	}
}

func TestGarwoodTurnsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.IntRange(0, MostCounted).Draw(t, "k")
		confidence := rapid.Float64Range(0.5, 0.999).Draw(t, "confidence")
		low, high, err := Garwood(k, confidence)
		if err != nil || !(low <= float64(k) && float64(k) < high) {
			t.Fatalf("k=%d at %g: %g - %g, %v", k, confidence, low, high, err)
		}
		tail := (1 - confidence) / 2
		if math.Abs(poissonAtMost(k, high)-tail) > 1e-6 || k > 0 && math.Abs(poissonAtLeast(k, low)-tail) > 1e-6 {
			t.Fatalf("k=%d at %g: tails %g and %g, want %g", k, confidence, poissonAtLeast(k, low), poissonAtMost(k, high), tail)
		}
	})
}

func TestGarwoodRefuses(t *testing.T) {
	for _, c := range []struct {
		name       string
		k          int
		confidence float64
		want       string
	}{
		{"negative", -1, 0.95, "counts: -1 is not a count; give whole numbers of 0 or more"},
		{"per cent for share", 3, 95, "confidence: 95 is not possible; give a share between 0 and 1"},
		{"certainty", 3, 1, "confidence: 1 is not possible; give a share between 0 and 1"},
		{"NaN", 3, math.NaN(), "confidence: NaN is not possible; give a share between 0 and 1"},
	} {
		if _, _, err := Garwood(c.k, c.confidence); err == nil || err.Error() != c.want {
			t.Errorf("%s: got %v, want %s", c.name, err, c.want)
		}
	}
}

// The chance that the interval holds the truth, summed over every count there
// can be: never below 95 %, for small means and large.
func TestGarwoodCoverageIsExact(t *testing.T) {
	const counts = 200
	var low, high [counts]float64
	for k := range counts {
		low[k], high[k] = garwood(k, 0.95)
	}
	for mean := 0.05; mean < 60; mean += 0.01 {
		held := 0.0
		for k, pmf := 0, math.Exp(-mean); k < counts; k++ {
			if low[k] <= mean && mean <= high[k] {
				held += pmf
			}
			pmf *= mean / float64(k+1)
		}
		if held < 0.95-1e-12 {
			t.Fatalf("mean %.2f: held in %.5f of counts", mean, held)
		}
	}
}

// 10,000 simulated counts of three subsamples each, from jugs that truly hold a
// known number; what is asked is the total, by the way a person gets it.
func TestTotalHoldsTheTruth(t *testing.T) {
	const counts, sampleML, holdingML = 10_000, 0.05, 70.0
	for _, mean := range []float64{0.1, 0.5, 1, 2, 4, 10, 43, 200} {
		random := rand.New(rand.NewPCG(1907, 1936))
		larvae := distuv.Poisson{Lambda: mean, Src: random}
		truth := mean * holdingML / sampleML
		held := 0
		for range counts {
			live := []int{int(larvae.Rand()), int(larvae.Rand()), int(larvae.Rand())}
			r, err := Total(Sample{Live: live, SampleML: sampleML, HoldingML: holdingML})
			if err != nil {
				t.Fatal(err)
			}
			if r.Total.Low.X <= truth && truth <= r.Total.High.X {
				held++
			}
		}
		t.Logf("mean %g per subsample: held in %.2f %%", mean, 100*float64(held)/counts)
		if held < 0.95*counts {
			t.Errorf("mean %g per subsample: held in %d of %d", mean, held, counts)
		}
	}
}

func BenchmarkGarwood(b *testing.B) {
	for b.Loop() {
		garwood(130, 0.95)
	}
}
