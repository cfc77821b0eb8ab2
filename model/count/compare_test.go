package count

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"
	"pgregory.net/rapid"
)

// R's help page of poisson.test (from memory): 11 events in 800, 21 in 3011, rate
// ratio 1.971488, exact 95 % limits 0.8584264 and 4.2772659. At a limit, one tail
// of the test is 2.5 %.
func TestCompareAgainstR(t *testing.T) {
	earlier, later := Tally{Counted: 21, Each: 1.0 / 3011}, Tally{Counted: 11, Each: 1.0 / 800}
	low, err := Compare(earlier, later, 0.8584264)
	if err != nil {
		t.Fatal(err)
	}
	high, _ := Compare(earlier, later, 4.2772659)
	near(t, "upper tail at the low limit", low.PRose, 0.025, 1e-7)
	near(t, "lower tail at the high limit", high.PFell, 0.025, 1e-7)
}

func TestCompare(t *testing.T) {
	each := func(k int) Tally { return Tally{Counted: k, Each: 100} }
	all := func(k int) Tally { return Tally{Counted: k, Each: 1, Exact: true} }
	for _, c := range []struct {
		name           string
		earlier, later Tally
		share          float64
		fell, rose     bool
		expected       float64
	}{
		{"same", each(130), each(130), 1, false, false, 13000},
		{"a little lower", each(130), each(110), 1, false, false, 13000},
		{"much lower", each(130), each(80), 1, true, false, 13000},
		{"lower, but half was removed", each(130), each(68), 0.5, false, false, 6500},
		{"half removed, and fell beside that", each(130), each(40), 0.5, true, false, 6500},
		{"clinging larvae came back", each(16), each(53), 1, false, true, 1600},
		{"both none", each(0), each(0), 1, false, false, 0},
		{"few to none", each(3), each(0), 1, false, false, 300},
		{"many to none", each(9), each(0), 1, true, false, 900},
		{"all removed, none found", each(9), each(0), 0, false, false, 0},
		{"all removed, some found", each(9), each(1), 0, false, true, 0},
		{"known number stocked, then counted alike", Tally{5200, 1, true}, each(50), 1, false, false, 5200},
		{"known number stocked, then counted fewer", Tally{5200, 1, true}, each(30), 1, true, false, 5200},
		{"counted by sample, then all: alike", each(2), all(150), 1, false, false, 200},
		{"counted by sample, then all: fewer", each(9), all(150), 1, true, false, 900},
		{"counted by sample, then all: more", each(1), all(1500), 1, false, true, 100},
		{"all, then all: one lost", all(200), all(199), 1, true, false, 200},
		{"all, then all: one found", all(200), all(201), 1, false, true, 200},
		{"all, then all, 20 removed", all(200), all(180), 0.9, false, false, 180},
		{"all removed by sample, then all: some", each(9), all(3), 0, false, true, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := Compare(c.earlier, c.later, c.share)
			if err != nil {
				t.Fatal(err)
			}
			if got.Fell != c.fell || got.Rose != c.rose {
				t.Errorf("got %+v, want fell %v, rose %v", got, c.fell, c.rose)
			}
			near(t, "expected", got.ExpectedLarvae, c.expected, 1e-12)
		})
	}
}

// The tails summed term by term.
func TestCompareAgainstSums(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k1 := rapid.IntRange(0, 150).Draw(t, "earlier")
		k2 := rapid.IntRange(0, 150).Draw(t, "later")
		e1 := rapid.Float64Range(0.1, 500).Draw(t, "each earlier")
		e2 := rapid.Float64Range(0.1, 500).Draw(t, "each later")
		share := rapid.Float64Range(0.01, 1).Draw(t, "share")
		got, err := Compare(Tally{Counted: k1, Each: e1}, Tally{Counted: k2, Each: e2}, share)
		if err != nil {
			t.Fatal(err)
		}
		w1, w2 := 1/e1, share/e2
		coin := distuv.Binomial{N: float64(k1 + k2), P: w2 / (w1 + w2)}
		fell, rose := 0.0, 0.0
		for x := 0; x <= k1+k2; x++ {
			if p := coin.Prob(float64(x)); x <= k2 {
				fell += p
			}
			if p := coin.Prob(float64(x)); x >= k2 {
				rose += p
			}
		}
		if k1+k2 == 0 {
			fell, rose = 1, 1
		}
		if math.Abs(got.PFell-fell) > 1e-9 || math.Abs(got.PRose-rose) > 1e-9 {
			t.Fatalf("got %g and %g, summed %g and %g", got.PFell, got.PRose, fell, rose)
		}
	})
}

func TestCompareAgainstPoissonSums(t *testing.T) {
	for _, k := range []int{0, 1, 7, 52, 90} {
		got, _ := Compare(Tally{Counted: 5200, Each: 1, Exact: true}, Tally{Counted: k, Each: 100}, 1)
		fell, rose := 0.0, 0.0
		for x := range 400 {
			p := distuv.Poisson{Lambda: 52}.Prob(float64(x))
			if x <= k {
				fell += p
			}
			if x >= k {
				rose += p
			}
		}
		near(t, "fell", got.PFell, fell, 1e-12)
		near(t, "rose", got.PRose, rose, 1e-12)
	}
}

// Where nothing but chance is at work, no more than 2.5 % fall and 2.5 % rise.
func TestCompareFalseAlarms(t *testing.T) {
	const rounds = 10_000
	for _, mean := range []float64{2, 20, 130} {
		random := rand.New(rand.NewPCG(1940, 31))
		first := distuv.Poisson{Lambda: mean, Src: random}
		second := distuv.Poisson{Lambda: 0.6 * mean * 2, Src: random} // 40 % removed, twice the water looked at
		fell, rose := 0, 0
		for range rounds {
			c, err := Compare(Tally{Counted: int(first.Rand()), Each: 100}, Tally{Counted: int(second.Rand()), Each: 50}, 0.6)
			if err != nil {
				t.Fatal(err)
			}
			if c.Fell {
				fell++
			}
			if c.Rose {
				rose++
			}
		}
		if fell > rounds*ChangeLevel || rose > rounds*ChangeLevel {
			t.Errorf("mean %g: %d fell, %d rose of %d", mean, fell, rose, rounds)
		}
	}
}

// Large machine counts: exact and normal agree where one gives way to the other.
func TestBinomialAtItsLimit(t *testing.T) {
	for _, p := range []float64{0.3, 0.5, 0.8} {
		for _, z := range []float64{-2.5, -1, 0, 2} {
			n := exactTrials
			k := int(float64(n)*p + z*math.Sqrt(float64(n)*p*(1-p)))
			got, want := normalAtMost(k, n, p, 1-p), binomialAtMost(k, n, p, 1-p)
			if math.Abs(got-want) > 1e-4 {
				t.Errorf("p=%g z=%g: %.5f and %.5f", p, z, got, want)
			}
			if beyond := binomialAtMost(k+1, n+1, p, 1-p); math.Abs(beyond-want) > 1e-3 {
				t.Errorf("p=%g z=%g: a jump from %.5f to %.5f", p, z, want, beyond)
			}
		}
	}
}

func TestCompareRefuses(t *testing.T) {
	ok := Tally{Counted: 5, Each: 10}
	for _, c := range []struct {
		name           string
		earlier, later Tally
		share          float64
		want           string
	}{
		{"negative count", Tally{Counted: -5, Each: 10}, ok, 1, "counted: -5 is not a count; give whole numbers of 0 or more"},
		{"no scale", ok, Tally{Counted: 5}, 1, "each: 0 is not possible; give a number above 0"},
		{"negative share", ok, ok, -0.1, "share: -0.1 is not possible; give a number of 0 or more"},
		{"NaN share", ok, ok, math.NaN(), "share: NaN is not possible; give a number of 0 or more"},
	} {
		if _, err := Compare(c.earlier, c.later, c.share); err == nil || err.Error() != c.want {
			t.Errorf("%s: got %v, want %s", c.name, err, c.want)
		}
	}
}
