package count

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Counts from real count sheets. NEFSC: bay scallop F2 2022, NOAA/NEFSC data
// sheets, day 2 tanks A, B, C and day 6 tank B. Spencer: Olympia oyster sheet of
// 30 March 2018 (Spencer et al. 2021), live and dead together as that sheet had it.
func TestTotalOfRealSheets(t *testing.T) {
	for _, c := range []struct {
		name                          string
		live                          []int
		sampleML, holdingML           float64
		total, perML, perMLOfTenLitre float64
	}{
		{"NEFSC day 2 A", []int{38, 42, 50}, 0.05, 70, 60666.7, 866.67, 6.067},
		{"NEFSC day 2 B", []int{21, 30, 35}, 0.05, 70, 40133.3, 573.33, 4.013},
		{"NEFSC day 2 C", []int{40, 49, 34}, 0.05, 60, 49200, 820, 4.92},
		{"NEFSC day 6 B", []int{6, 5, 7, 7}, 0.05, 90, 11250, 125, 1.125},
		{"Spencer live + dead", []int{287, 260, 256}, 1, 820, 219487, 267.667, 21.9487},
	} {
		t.Run(c.name, func(t *testing.T) {
			r, err := Total(Sample{Live: c.live, SampleML: c.sampleML, HoldingML: c.holdingML})
			if err != nil {
				t.Fatal(err)
			}
			near(t, "larvae", r.Total.Value.X, c.total, 2e-6)
			near(t, "per mL", r.PerML.Value.X, c.perML, 1e-5)
			perLitre, _ := PerLitre(r.Total, 10)
			near(t, "per mL of a 10 L tank", perLitre.Value.X/1000, c.perMLOfTenLitre, 1e-4)
			if r.DeadPercent.Value.Known {
				t.Error("dead per cent known though none were counted")
			}
		})
	}
}

func TestTotalLimits(t *testing.T) {
	r, _ := Total(Sample{Live: []int{38, 42, 50}, SampleML: 0.05, HoldingML: 70})
	// Garwood limits of 130, worked out apart: 108.6147 and 154.3644.
	low, high, _ := Garwood(130, 0.95)
	near(t, "low", r.Total.Low.X, low*70/0.15, 1e-12)
	near(t, "high", r.Total.High.X, high*70/0.15, 1e-12)
	if r.Subsamples != 3 || r.Counted != 130 || r.Whole || r.Mixing.Uneven || !r.Mixing.Judged {
		t.Errorf("got %+v", r)
	}
	near(t, "half-width", r.HalfWidthPercent.X, 100*(high-low)/2/130, 1e-12)
	if math.Abs(low-108.6) > 0.1 || math.Abs(high-154.4) > 0.1 {
		t.Errorf("limits of 130: got %.2f - %.2f", low, high)
	}
}

func TestTotalOfNone(t *testing.T) {
	r, err := Total(Sample{Live: []int{0, 0, 0}, Dead: []int{0, 0, 0}, SampleML: 1, HoldingML: 300})
	if err != nil {
		t.Fatal(err)
	}
	// 3.688879 at most in 3 mL of 300.
	want := Between(0, 0, 368.8879)
	near(t, "high", r.Total.High.X, want.High.X, 1e-6)
	if r.Total.Value != want.Value || r.Total.Low != want.Low {
		t.Errorf("got %+v", r.Total)
	}
	if r.Mixing.Judged || r.Mixing.String() != "even" || r.Trend.Judged {
		t.Errorf("none seen must not be judged: %+v %+v", r.Mixing, r.Trend)
	}
	if r.DeadPercent.Value.Known || r.HalfWidthPercent.Known {
		t.Errorf("per cent of nothing is unknown: %+v %+v", r.DeadPercent, r.HalfWidthPercent)
	}
}

func TestTotalOfOneSubsample(t *testing.T) {
	r, _ := Total(Sample{Live: []int{25}, SampleML: 1, HoldingML: 100})
	if r.Mixing.String() != "even" || r.Mixing.Judged {
		t.Errorf("one count cannot show uneven mixing: %+v", r.Mixing)
	}
	near(t, "low", r.Total.Low.X, 1617.8682, 1e-7) // Garwood k = 25
}

func TestTotalOfTheWhole(t *testing.T) {
	r, _ := Total(Sample{Live: []int{312}, SampleML: 500, HoldingML: 500})
	if want := Exactly(312); r.Total != want || !r.Whole {
		t.Errorf("all counted: got %+v, want %+v", r.Total, want)
	}
	r, _ = Total(Sample{Live: []int{150, 162}, SampleML: 500, HoldingML: 500})
	if r.Whole {
		t.Error("two draws of the whole volume are two counts, not one")
	}
}

// Spencer's sheet of 30 March 2018: 803 shells in three subsamples; live only
// makes 208,280. How the 41 dead fell on the three is invented.
func TestDeadStayOutOfTheTotal(t *testing.T) {
	r, err := Total(Sample{Live: []int{272, 247, 243}, Dead: []int{15, 13, 13}, SampleML: 1, HoldingML: 820})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "live", r.Total.Value.X, 208280, 1e-9)
	near(t, "dead", r.DeadPercent.Value.X, 100*41.0/803, 1e-12)
}

// gonum's and scipy's Beta(3,48) and Beta(4,47): exact limits of 3 in 50.
func TestDeadPercentLimits(t *testing.T) {
	r, _ := Total(Sample{Live: []int{20, 27}, Dead: []int{1, 2}, SampleML: 1, HoldingML: 10})
	near(t, "value", r.DeadPercent.Value.X, 6, 1e-12)
	near(t, "low", r.DeadPercent.Low.X, 1.2548587835, 1e-9)
	near(t, "high", r.DeadPercent.High.X, 16.5481946604, 1e-9)
	r, _ = Total(Sample{Live: []int{0}, Dead: []int{9}, SampleML: 1, HoldingML: 10})
	if r.DeadPercent.Value.X != 100 || r.DeadPercent.High.X != 100 {
		t.Errorf("all dead: got %+v", r.DeadPercent)
	}
}

func TestTotalRefuses(t *testing.T) {
	ok := Sample{Live: []int{1, 2}, SampleML: 1, HoldingML: 10}
	for _, c := range []struct {
		name   string
		change func(*Sample)
		want   string
	}{
		{"no counts", func(s *Sample) { s.Live = nil }, "live: no counts; give at least one"},
		{"negative", func(s *Sample) { s.Live = []int{3, -4} }, "live: -4 is not a count; give whole numbers of 0 or more"},
		{"too many", func(s *Sample) { s.Live = []int{math.MaxInt, 5} }, "live: more than 1000000000 in all is not a count; look at the numbers typed"},
		{"dead for another number", func(s *Sample) { s.Dead = []int{1} }, "dead: 1 numbers for 2 subsamples; give one for each, 0 where none"},
		{"dead negative", func(s *Sample) { s.Dead = []int{1, -1} }, "dead: -1 is not a count; give whole numbers of 0 or more"},
		{"no sample volume", func(s *Sample) { s.SampleML = 0 }, "sample_ml: 0 is not possible; give a number above 0"},
		{"NaN", func(s *Sample) { s.SampleML = math.NaN() }, "sample_ml: NaN is not possible; give a number above 0"},
		{"negative volume", func(s *Sample) { s.HoldingML = -70 }, "holding_ml: -70 is not possible; give a number above 0"},
		{"endless", func(s *Sample) { s.HoldingML = math.Inf(1) }, "holding_ml: +Inf is not possible; give a number above 0"},
		{"volumes swapped", func(s *Sample) { s.SampleML, s.HoldingML = 70, 0.05 }, "sample_ml: 70 mL is more than the 0.05 mL it was taken from; look at both"},
	} {
		s := ok
		c.change(&s)
		if _, err := Total(s); err == nil || err.Error() != c.want {
			t.Errorf("%s: got %v, want %s", c.name, err, c.want)
		}
	}
}

func TestWhole(t *testing.T) {
	got, err := Whole("counts", []float64{0, 38, 42})
	if err != nil || len(got) != 3 || got[1] != 38 {
		t.Errorf("got %v, %v", got, err)
	}
	for _, c := range []struct {
		typed []float64
		want  string
	}{
		{[]float64{3.5}, "counts: 3.5 is not a count; give whole numbers of 0 or more"},
		{[]float64{math.NaN()}, "counts: NaN is not a count; give whole numbers of 0 or more"},
		{[]float64{1e300}, "counts: 1e+300 is not a count; give whole numbers of 0 or more"},
		{[]float64{-1}, "counts: -1 is not a count; give whole numbers of 0 or more"},
		{nil, "counts: no counts; give at least one"},
	} {
		if _, err := Whole("counts", c.typed); err == nil || err.Error() != c.want {
			t.Errorf("%v: got %v, want %s", c.typed, err, c.want)
		}
	}
}

// 800 larvae at 268 per mL: 2.985 mL (the sheet of Spencer et al. 2021 rounds to 2.99).
func TestMLToTake(t *testing.T) {
	got, err := MLToTake(800, About(268))
	if err != nil {
		t.Fatal(err)
	}
	near(t, "mL", got.Value.X, 2.985, 1e-4)
	if _, err := MLToTake(800, Exactly(0)); err == nil {
		t.Error("a density of 0 gave a volume")
	}
	if _, err := MLToTake(-1, About(268)); err == nil {
		t.Error("-1 larvae gave a volume")
	}
}

func TestPerLitreRefuses(t *testing.T) {
	if _, err := PerLitre(Exactly(5), 0); err == nil || err.Error() != "tank_litres: 0 is not possible; give a number above 0" {
		t.Errorf("got %v", err)
	}
}

// The rule of thumb, 196/sqrt(N) per cent: N = 25, 100, 400, 1600 give 39, 19.6,
// 9.8, 4.9. The exact interval is a little wider where N is small.
func TestHalfWidthAgainstTheRule(t *testing.T) {
	for _, c := range []struct {
		counted int
		rule    float64
	}{{25, 39}, {100, 19.6}, {400, 9.8}, {1600, 4.9}} {
		got := halfWidthPercent(c.counted)
		near(t, "rule", 196/math.Sqrt(float64(c.counted)), c.rule, 0.006)
		if got < c.rule || got > c.rule*(1+0.35/math.Sqrt(float64(c.counted))) {
			t.Errorf("N=%d: exact half-width %.2f %%, rule %.1f %%", c.counted, got, c.rule)
		}
	}
}

func TestMoreSubsamples(t *testing.T) {
	for _, c := range []struct {
		name    string
		live    []int
		percent float64
		want    int
	}{
		{"there already", []int{130, 140, 140}, 10, 0},
		{"from 130 to 10 %", []int{38, 42, 50}, 10, 7}, // 395 larvae at 43.3 each: 10 subsamples
		{"one larva", []int{1, 0}, 50, 34},             // 18 larvae at half a larva each: 36 subsamples
	} {
		got, err := MoreSubsamples(c.live, c.percent)
		if err != nil || got != c.want {
			t.Errorf("%s: got %d, %v, want %d", c.name, got, err, c.want)
		}
	}
	for _, c := range []struct {
		live    []int
		percent float64
		want    string
	}{
		{[]int{0, 0}, 10, "live: none seen, so no number of subsamples is known; take larger ones"},
		{[]int{5}, 0, "percent: 0 is out of reach; give a half-width between 0.1 and 100"},
		{[]int{5}, math.NaN(), "percent: NaN is out of reach; give a half-width between 0.1 and 100"},
		{nil, 10, "live: no counts; give at least one"},
	} {
		if _, err := MoreSubsamples(c.live, c.percent); err == nil || err.Error() != c.want {
			t.Errorf("got %v, want %s", err, c.want)
		}
	}
}

func TestCountForIsTheLeast(t *testing.T) {
	for _, percent := range []float64{100, 60, 39, 20, 10, 5} {
		want := 1
		for halfWidthPercent(want) > percent {
			want++
		}
		if got := countFor(percent); got != want {
			t.Errorf("%g %%: got %d, want %d", percent, got, want)
		}
	}
}

func TestTotalIsOrderedAndFinite(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := Sample{
			Live:     rapid.SliceOfN(rapid.IntRange(0, 5000), 1, 8).Draw(t, "live"),
			SampleML: rapid.Float64Range(1e-9, 1e6).Draw(t, "sample"),
		}
		s.HoldingML = s.SampleML * rapid.Float64Range(1, 1e8).Draw(t, "times")
		if rapid.Bool().Draw(t, "with dead") {
			s.Dead = rapid.SliceOfN(rapid.IntRange(0, 5000), len(s.Live), len(s.Live)).Draw(t, "dead")
		}
		r, err := Total(s)
		if err != nil {
			t.Fatal(err)
		}
		for _, e := range []Estimate{r.Total, r.PerML} {
			if !e.Value.Known || !e.Low.Known || !e.High.Known || !(0 <= e.Low.X && e.Low.X <= e.Value.X && e.Value.X <= e.High.X) {
				t.Fatalf("%+v", e)
			}
		}
		if d := r.DeadPercent; d.Value.Known && !(0 <= d.Low.X && d.Low.X <= d.Value.X && d.Value.X <= d.High.X && d.High.X <= 100+1e-9) {
			t.Fatalf("dead %+v", d)
		}
	})
}

func BenchmarkTotal(b *testing.B) {
	s := Sample{Live: []int{38, 42, 50}, Dead: []int{1, 0, 2}, SampleML: 0.05, HoldingML: 70}
	for b.Loop() {
		if _, err := Total(s); err != nil {
			b.Fatal(err)
		}
	}
}
