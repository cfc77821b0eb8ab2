package season

import (
	"math"
	"testing"
	"time"

	"drainboard/model"
	"drainboard/model/count"
)

func near(t *testing.T, what string, got count.Figure, want float64) {
	t.Helper()
	if !got.Known || math.Abs(got.X-want) > 1e-6*max(1, math.Abs(want)) {
		t.Errorf("%s = %v; want %v", what, got, want)
	}
}

func unknown(t *testing.T, what string, got count.Figure) {
	t.Helper()
	if got.Known {
		t.Errorf("%s = %v; want it unknown", what, got.X)
	}
}

// worked is a batch whose every figure is worked out by hand in TestWorkedBatch.
func worked(t *testing.T) book {
	b := newBook(t)
	b.at("06-01 12:00", b.stocked("A", "Q-1", "2026-06-01", 10000))
	b.at("06-03 12:00", move("A", "B", 28, 27), &model.Sizes{Tank: "B", UM: []float64{390, 410}})
	b.at("06-04 12:00", &model.Look{Tank: "B", Golden: num(60)}, &model.Look{Tank: "B", Swim: model.SwimGood})
	b.at("06-05 18:00", move("B", "C", 28.1, 25.1), &model.Look{Tank: "C", Golden: num(80)})
	b.at("06-08 00:30", move("C", "D", 24, 29))
	b.at("06-08 12:00", &model.Sizes{Tank: "D", UM: []float64{495, 505}})
	b.at("06-11 12:00", counted("D", 25, 25), &model.Sizes{Tank: "D", UM: []float64{550, 570}})
	return b
}

func TestWorkedBatch(t *testing.T) {
	x := worked(t).one("06-11 12:00")
	near(t, "stocked", x.Stocked, 10000)
	// 25 larvae in 10 mL of 2 000 mL are 5 000: half of those stocked, ten days later.
	near(t, "alive", x.Alive.Share.Value, 0.5)
	near(t, "days", count.Known(x.Alive.Days), 10)
	near(t, "alive a day later", x.Alive.ADay.Value, math.Pow(0.5, 0.1))
	// Poisson limits of 50 seen: 37.11 and 65.92 (Garwood 1936), each for 100 larvae.
	if low, high := x.Alive.Share.Low.X, x.Alive.Share.High.X; math.Abs(low-0.3711) > 1e-4 || math.Abs(high-0.6592) > 1e-4 {
		t.Errorf("alive from %v to %v; want 0.3711 to 0.6592", low, high)
	}
	// 400 um on day 2.5, 500 on day 7.5, 560 on day 10.5: 20 um a day, and so
	// 350 + 20 x 40 = 1 150 um on day 40.
	near(t, "growth", x.Growth.PerDay, 20)
	if !(x.Growth.Low.X < 20 && 20 < x.Growth.High.X) || x.Growth.Days != 3 {
		t.Errorf("growth %+v; want limits around 20 and 3 days", x.Growth)
	}
	near(t, "last length", x.Growth.LastUM, 560)
	near(t, "ready", x.Ready.Days.Value, 40)
	if x.Ready.How != Expected || !x.Ready.Far {
		t.Errorf("ready %+v; want expected, far ahead", x.Ready)
	}
	if x.Moves != 3 || x.AgeDays != 10 || !x.Here {
		t.Errorf("moves %d, age %d, here %v; want 3, 10, true", x.Moves, x.AgeDays, x.Here)
	}
	for h, want := range map[Habit]Measure{
		Difference: {count.Known(3), 3}, // of 1, 3 and 5 degrees
		OverFine:   {count.Known(200. / 3), 3},
		OverHold:   {count.Known(100. / 3), 3},
		// Water of 48.0, 54.0 and 54.5 h, and 83.5 h in D now: due at 48, overdue past 54.
		Late:    {count.Known(75), 4},
		Overdue: {count.Known(50), 4},
		Golden:  {count.Known(70), 2},
		// 100 per L for 156.5 h, then 50 per L in the large tank for 83.5 h.
		Density: {count.Known((100*156.5 + 50*83.5) / 240), 2},
	} {
		got := x.Habit(h)
		near(t, string(h), got.Figure, want.X)
		if got.N != want.N {
			t.Errorf("%s over %d; want %d", h, got.N, want.N)
		}
	}
}

func TestAlive(t *testing.T) {
	cases := map[string]struct {
		enter     func(b book)
		known     bool
		share     float64
		days      float64
		fromCount bool
		told      bool
	}{
		"never counted": {func(b book) {
			b.at("06-01 12:00", b.stocked("A", "Q", "2026-06-01", 9000))
			b.at("06-09 12:00", move("A", "B", 28, 28))
		}, false, 0, 0, false, false},
		"settled by the number stocked": {func(b book) {
			b.at("06-01 12:00", b.stocked("A", "Q", "2026-06-01", 9000))
			b.at("06-27 12:00", &model.Ended{Tank: "A", Why: model.Settled})
		}, false, 0, 0, false, false},
		"settled and told": {func(b book) {
			b.at("06-01 12:00", b.stocked("A", "Q", "2026-06-01", 9000))
			b.at("06-27 12:00", &model.Ended{Tank: "A", Why: model.Settled, Larvae: num(4500)})
		}, true, 0.5, 26, false, false},
		"settled after a count": {func(b book) {
			b.at("06-01 12:00", b.stocked("A", "Q", "2026-06-01", 10000))
			b.at("06-21 12:00", counted("A", 30))
			b.at("06-27 12:00", &model.Ended{Tank: "A", Why: model.Settled})
		}, true, 0.6, 26, false, false},
		"all lost, never counted": {func(b book) {
			b.at("06-01 12:00", b.stocked("A", "Q", "2026-06-01", 9000))
			b.at("06-05 12:00", &model.Ended{Tank: "A", Why: model.Lost})
		}, true, 0, 4, false, false},
		"half of them lost, the rest not counted": {func(b book) {
			b.at("06-01 12:00", b.stocked("A", "Q", "2026-06-01", 5000), b.stocked("B", "Q", "2026-06-01", 5000))
			b.at("06-05 12:00", &model.Ended{Tank: "A", Why: model.Lost})
		}, true, 0.5, 4, false, true},
		"all discarded after a count": {func(b book) {
			b.at("06-01 12:00", b.stocked("A", "Q", "2026-06-01", 10000))
			b.at("06-09 12:00", counted("A", 20))
			b.at("06-10 12:00", &model.Ended{Tank: "A", Why: model.Discarded})
		}, true, 0.4, 8, false, false},
		"stocked without a number": {func(b book) {
			b.at("06-01 12:00", b.stocked("A", "Q", "2026-06-01", 0))
			b.at("06-05 12:00", counted("A", 50))
			b.at("06-09 12:00", counted("A", 40))
		}, true, 0.8, 4, true, false},
		"one count says nothing where it is the start": {func(b book) {
			b.at("06-01 12:00", b.stocked("A", "Q", "2026-06-01", 0))
			b.at("06-05 12:00", counted("A", 50))
		}, false, 0, 0, false, false},
		"settled in an unknown number": {func(b book) {
			b.at("06-01 12:00", b.stocked("A", "Q", "2026-06-01", 0))
			b.at("06-27 12:00", &model.Ended{Tank: "A", Why: model.Settled})
		}, false, 0, 0, false, false},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			b := newBook(t)
			c.enter(b)
			got := b.one("06-30 12:00").Alive
			if got.Share.Value.Known != c.known {
				t.Fatalf("alive %+v; want known %v", got, c.known)
			}
			if !c.known {
				unknown(t, "alive a day later", got.ADay.Value)
				return
			}
			near(t, "alive", got.Share.Value, c.share)
			near(t, "days", count.Known(got.Days), c.days)
			near(t, "alive a day later", got.ADay.Value, math.Pow(c.share, 1/c.days))
			if got.FromCount != c.fromCount || got.Told != c.told {
				t.Errorf("from a count %v, told %v; want %v, %v", got.FromCount, got.Told, c.fromCount, c.told)
			}
		})
	}
}

// A batch of which nothing but its stocking was entered, a year ago.
func TestAYearOfNothing(t *testing.T) {
	b := newBook(t)
	b.enter(moment(t, "06-01 12:00").AddDate(-1, 0, 0), b.stocked("A", "Q", "2025-06-01", 9000))
	x := b.one("06-01 12:00")
	unknown(t, "alive", x.Alive.Share.Value)
	unknown(t, "growth", x.Growth.PerDay)
	if x.Ready.How != Unsaid || x.AgeDays != 365 {
		t.Errorf("ready %q, age %d; want unknown, 365", x.Ready.How, x.AgeDays)
	}
	near(t, "density", x.Habit(Density).Figure, 90)
	for h, n := range map[Habit]int{Late: 1, Overdue: 1, Difference: 0, OverFine: 0, OverHold: 0, Golden: 0} {
		if x.Habit(h).N != n || x.Habit(h).Known != (n > 0) {
			t.Errorf("%s = %+v; want it over %d", h, x.Habit(h), n)
		}
	}
}

func TestLosses(t *testing.T) {
	b := newBook(t)
	b.at("06-01 12:00", b.stocked("A", "Q", "2026-06-01", 9000), b.stocked("B", "Q", "2026-06-01", 8000),
		b.stocked("C", "Q", "2026-06-01", 0), b.stocked("D", "Q", "2026-06-01", 7000))
	b.at("06-02 12:00", &model.Removed{Tank: "A", Larvae: 200, Why: "sample"}, &model.Removed{Tank: "B", Larvae: 300, Why: "cull"})
	b.at("06-10 12:00", &model.Ended{Tank: "A", Why: model.Discarded}, &model.Ended{Tank: "C", Why: model.Lost})
	b.at("06-25 12:00", &model.Ended{Tank: "B", Why: model.Settled, Larvae: num(4000)})
	x := b.one("06-30 12:00")
	want := Losses{Settled: Loss{1, 4000, 0}, Discarded: Loss{1, 8800, 0}, Lost: Loss{1, 0, 1}, Removed: Loss{2, 500, 0}}
	if x.Losses != want {
		t.Errorf("losses %+v; want %+v", x.Losses, want)
	}
	unknown(t, "stocked", x.Stocked)
	if x.Ready.How != Settled || x.Ready.Days.Value.X != 24.5 || x.AgeDays != 29 {
		t.Errorf("ready %+v, age %d; want settled on day 24.5, age 29: D is still here", x.Ready, x.AgeDays)
	}
}

func TestReady(t *testing.T) {
	lengths := func(b book, tank string, um ...float64) {
		for i, x := range um {
			b.at(time.Date(2026, 6, 2+5*i, 12, 0, 0, 0, time.UTC).Format("01-02 15:04"), &model.Sizes{Tank: tank, UM: []float64{x - 5, x, x + 5}})
		}
	}
	cases := map[string]struct {
		um    []float64
		ended bool
		want  How
	}{
		"no lengths":                 {nil, false, Unsaid},
		"one day":                    {[]float64{400}, false, Unsaid},
		"on its way":                 {[]float64{400, 500, 602}, false, Expected},
		"there":                      {[]float64{400, 800, 1202}, false, Reached},
		"there and gone":             {[]float64{400, 800, 1202}, true, Reached},
		"gone before":                {[]float64{400, 500, 602}, true, Gone},
		"gone without a length":      {nil, true, Gone},
		"shrinking":                  {[]float64{600, 500, 402}, false, Never},
		"shrinking until it was out": {[]float64{600, 500, 402}, true, Gone},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			b := newBook(t)
			b.at("06-01 12:00", b.stocked("A", "Q", "2026-06-01", 9000))
			lengths(b, "A", c.um...)
			if c.ended {
				b.at("06-20 12:00", &model.Ended{Tank: "A", Why: model.Discarded})
			}
			x := b.one("06-30 12:00")
			if x.Ready.How != c.want || x.Ready.Days.Value.Known != (c.want == Expected || c.want == Reached) {
				t.Errorf("ready %+v; want %s", x.Ready, c.want)
			}
			if want := map[bool]int{true: 19, false: 29}[c.ended]; x.AgeDays != want {
				t.Errorf("age %d; want %d", x.AgeDays, want)
			}
		})
	}
}
