package count

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
	"pgregory.net/rapid"
)

// squares lists a table of frequencies: how often 0, 1, 2... were counted.
func squares(often ...int) []int {
	var counts []int
	for count, times := range often {
		for range times {
			counts = append(counts, count)
		}
	}
	return counts
}

// 'Student' 1907, Biometrika 5:351: yeast cells in 400 squares of a chamber.
func TestDispersionOfStudentsYeast(t *testing.T) {
	for _, c := range []struct {
		name                    string
		counts                  []int
		sum                     int
		mean, variance, chi2, p float64
		uneven                  bool
	}{
		{"I", squares(213, 128, 37, 18, 3, 1), 273, 0.6825, 0.81373, 475.718, 0.0049, true},
		{"IV", squares(0, 20, 43, 53, 86, 70, 54, 37, 18, 10, 5, 2, 2), 1872, 4.68, 4.46877, 380.991, 0.734, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			total := 0
			floats := make([]float64, len(c.counts))
			for i, x := range c.counts {
				total += x
				floats[i] = float64(x)
			}
			mean, variance := stat.MeanVariance(floats, nil)
			near(t, "mean", mean, c.mean, 1e-12)
			near(t, "variance", variance, c.variance, 1e-5)
			got, err := Dispersion(c.counts)
			if err != nil || total != c.sum || got.DF != 399 {
				t.Fatalf("sum %d, %+v, %v", total, got, err)
			}
			near(t, "X2", got.Statistic, c.chi2, 2e-6)
			near(t, "p", got.P, c.p, 5e-4)
			if got.Uneven != c.uneven {
				t.Errorf("uneven: got %v, want %v", got.Uneven, c.uneven)
			}
		})
	}
}

func TestDispersion(t *testing.T) {
	for _, c := range []struct {
		name   string
		counts []int
		chi2   float64
		want   string
		judged bool
	}{
		{"four alike", []int{12, 15, 11, 14}, 0.769, "even", true},
		{"four apart", []int{8, 21, 3, 19}, 17.627, "uneven", true}, // 5 % limit on 3 df: 7.815
		{"one", []int{40}, 0, "even", false},
		{"none seen", []int{0, 0}, 0, "even", false},
		{"too alike is no fault", []int{40, 40, 40, 40, 40, 40}, 0, "even", true},
	} {
		got, err := Dispersion(c.counts)
		if err != nil || got.String() != c.want || got.Judged != c.judged {
			t.Errorf("%s: got %+v, %v", c.name, got, err)
		}
		near(t, c.name, got.Statistic, c.chi2, 5e-4)
	}
	if _, err := Dispersion(nil); err == nil {
		t.Error("an empty list was judged")
	}
}

// Three counts with variance / mean of 4: chi-square 8 on 2 df, about 2 %.
func TestDispersionAtFourTimesTheMean(t *testing.T) {
	got, _ := Dispersion([]int{80, 100, 120}) // mean 100, variance 400
	near(t, "X2", got.Statistic, 8, 1e-12)
	near(t, "p", got.P, 0.0183, 2e-3)
}

// With even mixing, about 5 % of counts are called uneven, and about 5 % falling or rising.
func TestFalseAlarms(t *testing.T) {
	const rounds = 10_000
	for _, n := range []int{3, 5} {
		random := rand.New(rand.NewPCG(5, uint64(n)))
		larvae := distuv.Poisson{Lambda: 43, Src: random}
		uneven, trending := 0, 0
		for range rounds {
			counts, total := make([]int, n), 0
			for i := range counts {
				counts[i] = int(larvae.Rand())
				total += counts[i]
			}
			if dispersion(counts, total).Uneven {
				uneven++
			}
			if tr := trend(counts, total); tr.Falling || tr.Rising {
				trending++
			}
		}
		for what, times := range map[string]int{"uneven": uneven, "trend": trending} {
			if share := float64(times) / rounds; share < 0.04 || share > 0.06 {
				t.Errorf("%d subsamples, %s: %.3f of even counts, want about 0.05", n, what, share)
			}
		}
	}
}

func TestTrend(t *testing.T) {
	for _, c := range []struct {
		name            string
		counts          []int
		falling, rising bool
		judged          bool
	}{
		{"settling", []int{62, 48, 35, 30}, true, false, true},
		{"drawn from the bottom", []int{30, 35, 48, 62}, false, true, true},
		{"level", []int{40, 44, 39, 42}, false, false, true},
		{"dip in the middle", []int{60, 20, 60}, false, false, true},
		{"three are enough", []int{60, 43, 33}, true, false, true},
		{"two cannot tell a trend from chance", []int{90, 10}, false, false, false},
		{"none seen", []int{0, 0, 0}, false, false, false},
	} {
		total := 0
		for _, x := range c.counts {
			total += x
		}
		got := trend(c.counts, total)
		if got.Falling != c.falling || got.Rising != c.rising || got.Judged != c.judged {
			t.Errorf("%s: got %+v", c.name, got)
		}
	}
}

// Brute force: given the total, each larva fell into any subsample with the same
// chance. The chance of a weighted sum this far out is counted over all ways.
func TestTrendAgainstAllWays(t *testing.T) {
	for _, counts := range [][]int{{9, 4, 2}, {6, 5, 3, 1}, {2, 7, 9}, {12, 1, 1}, {3, 3, 3}, {1, 2, 3, 4, 5}} {
		total := 0
		for _, c := range counts {
			total += c
		}
		got, want := trend(counts, total).P, trendByAllWays(counts, total)
		if math.Abs(got-want) > 0.012 {
			t.Errorf("%v: p %.4f, by all ways %.4f", counts, got, want)
		}
	}
}

func trendByAllWays(counts []int, total int) float64 {
	n := len(counts)
	ways := []float64{1} // chance of each sum of ranks
	for range total {
		next := make([]float64, len(ways)+n)
		for s, p := range ways {
			for rank := 1; rank <= n; rank++ {
				next[s+rank] += p / float64(n)
			}
		}
		ways = next
	}
	seen, mean := 0.0, float64(total*(n+1))/2
	for i, c := range counts {
		seen += float64((i + 1) * c)
	}
	p := 0.0
	for s, chance := range ways {
		if math.Abs(float64(s)-mean) >= math.Abs(seen-mean)-1e-9 {
			p += chance
		}
	}
	return p
}

func TestTrendTurnsWithTheOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		counts := rapid.SliceOfN(rapid.IntRange(0, 200), 3, 9).Draw(t, "counts")
		total := 0
		back := make([]int, len(counts))
		for i, c := range counts {
			total += c
			back[len(counts)-1-i] = c
		}
		a, b := trend(counts, total), trend(back, total)
		if a.Falling != b.Rising || math.Abs(a.P-b.P) > 1e-12 || !(a.P >= 0 && a.P <= 1) {
			t.Fatalf("%+v and backwards %+v", a, b)
		}
	})
}
