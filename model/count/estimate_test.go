package count

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"
	"pgregory.net/rapid"
)

func TestZeroEstimateIsUnknown(t *testing.T) {
	var e Estimate
	for name, got := range map[string]Estimate{
		"plus": e.Plus(Exactly(5)), "minus": e.Minus(Exactly(5)), "over": Exactly(5).Over(e), "times": e.times(2),
	} {
		if got != (Estimate{}) {
			t.Errorf("%s: got %+v, want nothing known", name, got)
		}
	}
	if Known(math.NaN()).Known || Known(math.Inf(1)).Known {
		t.Error("what is not a number passed for a known figure")
	}
}

func TestEstimateByHand(t *testing.T) {
	a, b := Between(100, 80, 130), Between(50, 35, 90)
	for _, c := range []struct {
		name      string
		got, want Estimate
	}{
		{"sum in quadrature", a.Plus(b), Between(150, 150-25, 150+50)},
		{"exact plus exact", Exactly(3).Plus(Exactly(4)), Exactly(7)},
		{"known plus told", a.Plus(About(7)), About(107)},
		{"removed one by one", a.Minus(Exactly(20)), Between(80, 60, 110)},
		{"removed by count", a.Minus(b), Between(50, 50-math.Hypot(20, 40), 50+math.Hypot(30, 15))},
		{"more removed than there", b.Minus(Exactly(60)), Between(0, 0, 30)},
		{"far more removed than there", b.Minus(Exactly(600)), Between(0, 0, 0)},
		{"exact over exact", Exactly(30).Over(Exactly(40)), Exactly(0.75)},
		{"over an exact start", a.Over(Exactly(200)), Between(0.5, 0.4, 0.65)},
		{"none left", Between(0, 0, 30).Over(Exactly(300)), Between(0, 0, 0.1)},
		{"start may be 0", Exactly(1).Over(Between(2, 0, 5)), Estimate{Known(0.5), Exactly(1).Over(Between(2, 0, 5)).Low, Figure{}}},
		{"start is 0", a.Over(Exactly(0)), Estimate{}},
		{"none of none", Exactly(0).Over(Exactly(0)), Estimate{}},
	} {
		t.Run(c.name, func(t *testing.T) {
			for _, pair := range [][2]Figure{{c.got.Value, c.want.Value}, {c.got.Low, c.want.Low}, {c.got.High, c.want.High}} {
				if pair[0].Known != pair[1].Known {
					t.Fatalf("got %+v, want %+v", c.got, c.want)
				}
				near(t, "figure", pair[0].X, pair[1].X, 1e-12)
			}
		})
	}
}

func TestScale(t *testing.T) {
	got, err := Between(100, 80, 130).Scale(0.5)
	if err != nil || got != Between(50, 40, 65) {
		t.Errorf("got %+v, %v", got, err)
	}
	for _, share := range []float64{-0.5, math.NaN(), math.Inf(1)} {
		if _, err := Exactly(1).Scale(share); err == nil {
			t.Errorf("share %g was taken", share)
		}
	}
}

func estimates() *rapid.Generator[Estimate] {
	return rapid.Custom(func(t *rapid.T) Estimate {
		low := rapid.Float64Range(0, 1e6).Draw(t, "low")
		value := low + rapid.Float64Range(0, 1e6).Draw(t, "up to value")
		return Between(value, low, value+rapid.Float64Range(0, 1e6).Draw(t, "up to high"))
	})
}

func TestOperationsKeepTheOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := estimates().Draw(t, "a"), estimates().Draw(t, "b")
		for name, e := range map[string]Estimate{"plus": a.Plus(b), "minus": a.Minus(b), "over": a.Over(b), "times": a.times(0.37)} {
			slack := 1e-9 * (1 + math.Abs(e.Value.X))
			if e.Low.Known && e.Low.X < 0 || e.Value.Known && e.Low.Known && e.Low.X > e.Value.X+slack || e.High.Known && e.Value.X > e.High.X+slack {
				t.Fatalf("%s of %+v and %+v: %+v", name, a, b, e)
			}
		}
		if a.Plus(b) != b.Plus(a) {
			t.Fatalf("the sum depends on the order: %+v, %+v", a, b)
		}
	})
}

// The limits of a ratio are where the difference, in quadrature, touches 0.
func TestRatioLimitsTouchZero(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := estimates().Draw(t, "a"), estimates().Draw(t, "b")
		r := a.Over(b)
		if a.Value.X < 1 || b.Low.X < 1 {
			t.Skip("a ratio to almost nothing")
		}
		low := a.Value.X - r.Low.X*b.Value.X - math.Hypot(a.Value.X-a.Low.X, r.Low.X*(b.High.X-b.Value.X))
		high := a.Value.X - r.High.X*b.Value.X + math.Hypot(a.High.X-a.Value.X, r.High.X*(b.Value.X-b.Low.X))
		slack := 1e-9 * (a.High.X + r.High.X*b.High.X)
		if math.Abs(low) > slack || math.Abs(high) > slack {
			t.Fatalf("%+v over %+v = %+v: left over %g and %g", a, b, r, low, high)
		}
	})
}

// How often the carried limits hold the truth, over 10,000 simulated pairs.
func TestCarriedLimitsHoldTheTruth(t *testing.T) {
	const rounds = 10_000
	for _, c := range []struct{ a, b float64 }{{3, 60}, {20, 130}, {130, 130}, {400, 40}} {
		random := rand.New(rand.NewPCG(2008, 27))
		first, second := distuv.Poisson{Lambda: c.a, Src: random}, distuv.Poisson{Lambda: c.b, Src: random}
		sums, ratios := 0, 0
		for range rounds {
			a, b := pooled(int(first.Rand()), 1), pooled(int(second.Rand()), 1)
			if s := a.Plus(b); s.Low.X <= c.a+c.b && c.a+c.b <= s.High.X {
				sums++
			}
			if r := a.Over(b); r.Low.X <= c.a/c.b && c.a/c.b <= r.High.X {
				ratios++
			}
		}
		t.Logf("means %g and %g: sums %.2f %%, ratios %.2f %%", c.a, c.b, float64(sums)/rounds*100, float64(ratios)/rounds*100)
		if sums < 0.95*rounds || ratios < 0.95*rounds {
			t.Errorf("means %g and %g: sums held %d, ratios %d of %d", c.a, c.b, sums, ratios, rounds)
		}
	}
}

// Bay scallop F2 2022 (NOAA/NEFSC data sheets), tanks A and B, day 2 on.
func TestSurvivalOfRealSeries(t *testing.T) {
	for _, c := range []struct {
		tank    string
		larvae  []float64
		percent []float64
		unit    float64
	}{
		{"A", []float64{60667, 16800, 12333, 5800, 2400, 1139}, []float64{100, 27.7, 20.3, 9.56, 3.96, 1.88}, 0.05},
		{"B", []float64{40133, 1333, 2208}, []float64{100, 3.3, 5.5}, 0.05},
	} {
		last := math.Inf(1)
		rises := false
		for i, n := range c.larvae {
			s, err := Surviving(About(n), About(c.larvae[0]), 1)
			if err != nil {
				t.Fatal(err)
			}
			if math.Abs(100*s.Share.Value.X-c.percent[i]) > c.unit {
				t.Errorf("tank %s: got %.3f %%, want %g %%", c.tank, 100*s.Share.Value.X, c.percent[i])
			}
			rises = rises || s.Share.Value.X > last
			last = s.Share.Value.X
		}
		if (c.tank == "B") != rises {
			t.Errorf("tank %s: rises %v", c.tank, rises)
		}
	}
}

func TestSurvivingWithRemovals(t *testing.T) {
	// 1,000 at the start; 200 of 800 taken out; half of the rest lost afterwards.
	kept, err := Kept(Exactly(800), 200)
	if err != nil || kept != Known(0.75) {
		t.Fatalf("kept %+v, %v", kept, err)
	}
	s, err := Surviving(Exactly(300), Exactly(1000), kept.X)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "survival", s.Share.Value.X, 0.8*0.5, 1e-12) // 80 % up to the removal, half after it
	if s.Above {
		t.Error("0.4 is not above the start")
	}
	if s, _ := Surviving(Exactly(1100), Exactly(1000), 1); !s.Above {
		t.Error("more than at the start was not marked")
	}
}

func TestKept(t *testing.T) {
	for _, c := range []struct {
		name     string
		standing Estimate
		removed  float64
		want     Figure
	}{
		{"none", Exactly(800), 0, Known(1)},
		{"all", Exactly(800), 800, Known(0)},
		{"more than all", Exactly(800), 900, Known(0)},
		{"unknown", Estimate{}, 10, Figure{}},
		{"nothing there", Exactly(0), 10, Figure{}},
	} {
		if got, err := Kept(c.standing, c.removed); err != nil || got != c.want {
			t.Errorf("%s: got %+v, %v, want %+v", c.name, got, err, c.want)
		}
	}
	if _, err := Kept(Exactly(5), -1); err == nil {
		t.Error("a negative removal was taken")
	}
	for _, kept := range []float64{0, 1.5, math.NaN()} {
		if _, err := Surviving(Exactly(5), Exactly(5), kept); err == nil {
			t.Errorf("kept %g was taken", kept)
		}
	}
}
