package season

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/stat"
)

func TestSpearman(t *testing.T) {
	// The 32 cars of Henderson & Velleman 1981, Biometrics 37:391: miles per gallon
	// and weight, with many ties.
	mpg := []float64{
		21, 21, 22.8, 21.4, 18.7, 18.1, 14.3, 24.4, 22.8, 19.2, 17.8, 16.4, 17.3, 15.2, 10.4, 10.4,
		14.7, 32.4, 30.4, 33.9, 21.5, 15.5, 15.2, 13.3, 19.2, 27.3, 26, 30.4, 15.8, 19.7, 15, 21.4,
	}
	weight := []float64{
		2.62, 2.875, 2.32, 3.215, 3.44, 3.46, 3.57, 3.19, 3.15, 3.44, 3.44, 4.07, 3.73, 3.78, 5.25, 5.424,
		5.345, 2.2, 1.615, 1.835, 2.465, 3.52, 3.435, 3.84, 3.845, 1.935, 2.14, 1.513, 3.17, 2.77, 3.57, 2.78,
	}
	cases := map[string]struct {
		x, y  []float64
		want  float64
		known bool
	}{
		// A much used worked example (IQ and hours before a television), from memory:
		// squared rank differences add up to 194, so 1 - 6 x 194 / 990 = -29/165.
		"worked example without ties": {
			[]float64{106, 100, 86, 101, 99, 103, 97, 113, 112, 110},
			[]float64{7, 27, 2, 50, 28, 29, 20, 12, 6, 17},
			-29. / 165, true,
		},
		// R: cor(mtcars$mpg, mtcars$wt, method = "spearman"), from memory.
		"R on the cars, with ties": {mpg, weight, -0.886422, true},
		// By hand: ranks 1, 2.5, 2.5, 4 and 1, 2, 3.5, 3.5; 3.75 / sqrt(4.5 x 4.5).
		"ties on both sides, by hand": {[]float64{1, 2, 2, 3}, []float64{5, 6, 7, 7}, 3.75 / 4.5, true},
		"rising":                      {[]float64{1, 2, 30}, []float64{-5, 0, 1}, 1, true},
		"falling":                     {[]float64{1, 2, 30}, []float64{5, 0, -1}, -1, true},
		"all alike in one":            {[]float64{1, 2, 3}, []float64{4, 4, 4}, 0, false},
		"one pair":                    {[]float64{1}, []float64{4}, 0, false},
		"none":                        {nil, nil, 0, false},
		"lists of different length":   {[]float64{1, 2, 3}, []float64{4, 5}, 0, false},
		"not a number":                {[]float64{1, 2, math.NaN()}, []float64{4, 5, 6}, 0, false},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			got, known := Spearman(c.x, c.y)
			if known != c.known || math.Abs(got-c.want) > 1e-6 {
				t.Errorf("got %v, %v; want %v, %v", got, known, c.want, c.known)
			}
		})
	}
}

// TestSpearmanAgainstCounting ranks by counting who is smaller and who is equal,
// the slow and obvious way.
func TestSpearmanAgainstCounting(t *testing.T) {
	rank := func(xs []float64) []float64 {
		out := make([]float64, len(xs))
		for i, x := range xs {
			for _, other := range xs {
				switch {
				case other < x:
					out[i]++
				case other == x:
					out[i] += 0.5
				}
			}
			out[i] += 0.5
		}
		return out
	}
	rng := rand.New(rand.NewPCG(1, 2))
	for range 500 {
		n := 2 + rng.IntN(12)
		x, y := make([]float64, n), make([]float64, n)
		for i := range n {
			x[i], y[i] = float64(rng.IntN(6)), float64(rng.IntN(6))
		}
		want := stat.Correlation(rank(x), rank(y), nil)
		got, known := Spearman(x, y)
		if known == math.IsNaN(want) || known && math.Abs(got-want) > 1e-12 {
			t.Fatalf("%v, %v: got %v, %v; want %v", x, y, got, known, want)
		}
		if back, _ := Spearman(y, x); back != got {
			t.Fatalf("%v, %v: %v one way, %v the other", x, y, got, back)
		}
	}
}
