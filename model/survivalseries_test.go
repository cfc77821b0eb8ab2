package model

import (
	"fmt"
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"

	"drainboard/model/count"
)

// close fails unless a figure is known and within a millionth of want.
func closeTo(t testing.TB, what string, got count.Figure, want float64) {
	t.Helper()
	if !got.Known || math.Abs(got.X-want) > 1e-6*max(1, math.Abs(want)) {
		t.Errorf("%s = %+v; want %.6f", what, got, want)
	}
}

// days is a moment so many days after the hatch of the tests' batches.
func days(x float64) string {
	return at("2026-11-08T00:00:00-05:00").Add(hours(24 * x)).Format(time.RFC3339)
}

// survivalLedger is one batch stocked in C1 on day 2 with a number, or none.
func survivalLedger(t testing.TB, larvae *float64) *Ledger {
	t.Helper()
	l := NewLedger(smallRoom(t))
	mustEnter(t, l, days(2), &Stocked{Tank: "C1", Batch: "S", Hatched: hatched("2026-11-08"), Larvae: larvae})
	return l
}

func lastStep(t testing.TB, l *Ledger) SurvivalStep {
	t.Helper()
	steps := l.SurvivalSeries(l.Batch("S")).Steps
	return steps[len(steps)-1]
}

// Bay scallop F2 of 2022 (US National Marine Fisheries Service, Northeast
// Fisheries Science Center), tank B: the counts of day 2 and day 6 as written,
// the later totals as published, each by one subsample of ours. The published
// shares of day 2: 28.0, 14.6, 7.97, 3.32 and, risen, 5.50 %.
func TestSurvivalSeriesOfBayScallop(t *testing.T) {
	l := survivalLedger(t, num(40133))
	mustEnter(t, l, days(2.1), &Count{Tank: "C1", Live: []int{21, 30, 35}, SampleML: 0.05, HoldingML: 70})
	mustEnter(t, l, days(6.1), &Count{Tank: "C1", Live: []int{6, 5, 7, 7}, SampleML: 0.05, HoldingML: 90})
	for _, c := range []struct {
		day   float64
		live  int
		total float64
	}{{8.1, 22, 5867}, {10.1, 12, 3200}, {14.1, 10, 1333}, {21.1, 16, 2208}} {
		mustEnter(t, l, days(c.day), &Count{Tank: "C1", Live: []int{c.live}, SampleML: 1, HoldingML: c.total / float64(c.live)})
	}
	s := l.SurvivalSeries(l.Batch("S"))
	if len(s.Steps) != 7 || s.FromCount {
		t.Fatalf("%d steps, from a count %v; want 7 from the stocking", len(s.Steps), s.FromCount)
	}
	totals := []float64{40133, 40133.333333, 11250, 5867, 3200, 1333, 2208}
	shares := []float64{1, 1, 0.280, 0.146, 0.0797, 0.0332, 0.0550}
	for i, step := range s.Steps {
		closeTo(t, fmt.Sprintf("total %d", i), step.Total.Value, totals[i])
		if got := step.Alive.Share.Value.X; math.Abs(got-shares[i]) > 0.0006 {
			t.Errorf("alive at step %d = %.4f; want %.4f", i, got, shares[i])
		}
	}
	// Garwood 1936, exact limits of a Poisson count of 25: 16.179 and 36.905.
	day6 := s.Steps[2]
	if math.Abs(day6.Total.Low.X-16.17868*450) > 1 || math.Abs(day6.Total.High.X-36.90493*450) > 1 {
		t.Errorf("limits of day 6 = %.1f to %.1f; want %.1f to %.1f", day6.Total.Low.X, day6.Total.High.X, 16.17868*450, 36.90493*450)
	}
	closeTo(t, "low share of day 6", day6.Alive.Share.Low, day6.Total.Low.X/40133)
	if !day6.Count.Change.Fell || day6.Count.Above || s.Steps[2].Count.Days < 3.99 {
		t.Errorf("day 6: %+v; want a fall in 4 days", day6.Count)
	}
	closeTo(t, "kept a day to day 6", day6.Count.KeptADay.Value, math.Pow(11250/40133.333333333336, 1.0/4))
	risen := s.Steps[6].Count
	if !risen.Above || risen.Change.Fell || risen.Change.Rose || risen.Fewer.Value.X != 0 {
		t.Errorf("day 21: %+v %+v; want above the last, and no more than chance allows", risen, risen.Change)
	}
	kept, over := s.KeptADay()
	if math.Abs(over-19.1) > 1e-9 {
		t.Errorf("mean loss over %.3f days; want 19.1 from the stocking", over)
	}
	closeTo(t, "mean share kept a day", kept.Value, math.Pow(2208.0/40133, 1/19.1))
}

// A count split over two tanks and put together again has the limits it had, and
// the loss of a later count is that of its own tank.
func TestSurvivalSeriesSplitAndJoin(t *testing.T) {
	l := survivalLedger(t, num(9000))
	mustEnter(t, l, days(4), &Count{Tank: "C1", Live: []int{40, 40}, SampleML: 10, HoldingML: 2000})
	before := lastStep(t, l).Total
	mustEnter(t, l, days(4.1), &Filled{Tank: "C2"})
	mustEnter(t, l, days(4.1), &Filled{Tank: "C3"})
	mustEnter(t, l, days(4.2), &Moved{From: "C1", To: "C2", Share: num(0.25)})
	split := lastStep(t, l)
	closeTo(t, "moved", split.Larvae.Value, 2000)
	mustEnter(t, l, days(4.3), &Moved{From: "C1", To: "C3", MeshUM: num(150)})
	both := lastStep(t, l)
	for _, s := range []SurvivalStep{split, both} {
		closeTo(t, "total", s.Total.Value, 8000)
		closeTo(t, "low", s.Total.Low, before.Low.X)
		closeTo(t, "high", s.Total.High, before.High.X)
		closeTo(t, "alive", s.Alive.Share.Value, 8000.0/9000)
	}
	mustEnter(t, l, days(6), &Count{Tank: "C2", Live: []int{9}, SampleML: 10, HoldingML: 2000})
	part := lastStep(t, l)
	closeTo(t, "expected in C2", part.Count.Expected.Value, 2000)
	closeTo(t, "fewer", part.Count.Fewer.Value, 200)
	closeTo(t, "all", part.Total.Value, 7800)
	if len(part.Count.Moves) != 1 || part.Count.Moves[0].Move.To != "C2" || part.Count.Change.Fell {
		t.Errorf("count of C2: %+v; want the one move into C2 and no fall", part.Count)
	}
	// 1,800 of its own count (9 seen, Garwood 4.115 to 17.085, 200 each) and 6,000
	// of the old one, in quadrature.
	closeTo(t, "low of both", part.Total.Low,
		7800-math.Hypot((9-4.1153730805)*200, 0.75*(before.Value.X-before.Low.X)))
	mustEnter(t, l, days(6.1), &Moved{From: "C2", To: "C3", Join: true})
	closeTo(t, "joined", lastStep(t, l).Total.Low, part.Total.Low.X)
	mustEnter(t, l, days(8), &Count{Tank: "C3", Live: []int{35}, SampleML: 10, HoldingML: 2000})
	joined := lastStep(t, l)
	if joined.Count.Change != nil || joined.Count.Untested == "" || len(joined.Count.Moves) != 3 {
		t.Errorf("count after a join: %+v; want three moves, no test, and why", joined.Count)
	}
	if !joined.Count.Since.Equal(at(days(4))) {
		t.Errorf("since %v; want the earlier of the two counts", joined.Count.Since)
	}
}

func TestSurvivalSeriesLosses(t *testing.T) {
	l := survivalLedger(t, num(10000))
	mustEnter(t, l, days(4), &Count{Tank: "C1", Live: []int{80}, SampleML: 10, HoldingML: 1000})
	mustEnter(t, l, days(4.5), &Removed{Tank: "C1", Larvae: 2000, Why: "sample"})
	taken := lastStep(t, l)
	closeTo(t, "left", taken.Total.Value, 6000)
	closeTo(t, "before", taken.Before.Value, 8000)
	closeTo(t, "alive, a sample taken", taken.Alive.Share.Value, 0.8)
	mustEnter(t, l, days(5), &Filled{Tank: "C2"})
	mustEnter(t, l, days(5), &Filled{Tank: "C3"})
	mustEnter(t, l, days(5.1), &Moved{From: "C1", To: "C2", Share: num(0.5)})
	mustEnter(t, l, days(5.2), &Moved{From: "C1", To: "C3", Share: num(0.5)})
	mustEnter(t, l, days(6), &Ended{Tank: "C3", Why: Discarded})
	culled := lastStep(t, l)
	closeTo(t, "culled", culled.Larvae.Value, 1500)
	closeTo(t, "before the cull", culled.Before.Value, 1500)
	closeTo(t, "alive, a quarter culled", culled.Alive.Share.Value, 0.8)
	mustEnter(t, l, days(7), &Ended{Tank: "C2", Why: Settled})
	settled := lastStep(t, l)
	closeTo(t, "left in the room", settled.Total.Value, 1500)
	closeTo(t, "alive, settled among them", settled.Alive.Share.Value, 0.8)
	if lo := settled.Alive.Share.Low; !lo.Known || lo.X >= 0.8 {
		t.Errorf("low of the settled = %+v; want that of their count", lo)
	}
	mustEnter(t, l, days(8), &Ended{Tank: "C1", Why: Lost})
	lost := lastStep(t, l)
	closeTo(t, "nothing left", lost.Total.Value, 0)
	closeTo(t, "alive are the settled", lost.Alive.Share.Value, 0.8*3000/4500)
	if lost.Why != Lost || lost.What != KindEnded || lost.Tank != "C1" {
		t.Errorf("step %+v; want C1 lost", lost)
	}
}

func TestSurvivalSeriesWithoutAStockedNumber(t *testing.T) {
	l := survivalLedger(t, nil)
	if s := lastStep(t, l); s.Total.Value.Known || s.Alive.Share.Value.Known {
		t.Errorf("total %+v, alive %+v; want neither known", s.Total, s.Alive)
	}
	mustEnter(t, l, days(4), &Count{Tank: "C1", Live: []int{80}, SampleML: 10, HoldingML: 1000})
	mustEnter(t, l, days(6), &Count{Tank: "C1", Live: []int{60}, SampleML: 10, HoldingML: 1000})
	s := l.SurvivalSeries(l.Batch("S"))
	if !s.FromCount || !s.StartAt.Equal(at(days(4))) {
		t.Errorf("start at %v, from a count %v; want the first count", s.StartAt, s.FromCount)
	}
	closeTo(t, "start", s.Start.Value, 8000)
	closeTo(t, "alive at the first count", s.Steps[1].Alive.Share.High, 1)
	closeTo(t, "alive at the second", s.Steps[2].Alive.Share.Value, 0.75)
	if got := s.Steps[1].Count.Untested; got != "there is no count before it" {
		t.Errorf("untested: %q", got)
	}
	want := s.Steps[2].Larvae.Over(s.Steps[1].Larvae)
	closeTo(t, "its high limit, both counts in it", s.Steps[2].Alive.Share.High, want.High.X)
}

func TestSurvivalSeriesSaysWhyThereIsNoTest(t *testing.T) {
	l := survivalLedger(t, num(9000))
	mustEnter(t, l, days(4), &Count{Tank: "C1", Live: []int{80}, SampleML: 10, HoldingML: 1000})
	mustEnter(t, l, days(4.1), &Count{Tank: "C1", Live: []int{10, 90}, SampleML: 10, HoldingML: 1000})
	c := lastStep(t, l).Count
	if c.Change != nil || c.Untested != "its subsamples are uneven: mix and count again" {
		t.Errorf("uneven count: %+v", c)
	}
	if c.KeptADay.Value.Known {
		t.Error("two counts of one morning give a loss a day")
	}
}

// drawStep draws a fact that moves, counts or takes larvae.
func drawStep(t *rapid.T, batch string) Fact {
	tank := func(label string) string { return rapid.SampledFrom([]string{"C1", "C2", "C3"}).Draw(t, label) }
	maybe := func(label string, xs ...float64) *float64 {
		if i := rapid.IntRange(-1, len(xs)-1).Draw(t, label); i >= 0 {
			return &xs[i]
		}
		return nil
	}
	switch rapid.IntRange(0, 11).Draw(t, "kind") {
	case 0:
		return &Stocked{Tank: tank("tank"), Batch: batch, Hatched: hatched("2026-11-08"), Larvae: maybe("larvae", 1000, 9000)}
	case 1, 2, 3:
		return &Moved{From: tank("from"), To: tank("to"), Join: true, Share: maybe("share", 0.25, 0.6)}
	case 4, 5, 6:
		live := rapid.SliceOfN(rapid.IntRange(10, 40), 1, 2).Draw(t, "live")
		return &Count{Tank: tank("tank"), Live: live, SampleML: 10, HoldingML: 1000}
	case 7, 8, 9:
		return &Removed{Tank: tank("tank"), Larvae: rapid.SampledFrom([]float64{50, 400, 3000}).Draw(t, "larvae"), Why: "sample"}
	case 10:
		return &Ended{Tank: tank("tank"), Why: rapid.SampledFrom([]string{Settled, Discarded, Lost}).Draw(t, "why"), Larvae: maybe("larvae", 0, 800)}
	}
	return &Filled{Tank: tank("tank")}
}

// The obvious way: fold every entry and ask the ledger. Values, tests and shares
// are the same after each, whatever happened; limits hold their value.
func TestSurvivalSeriesIsTheLedgersOwn(t *testing.T) {
	room := smallRoom(t)
	rapid.Check(t, func(t *rapid.T) {
		l := NewLedger(room)
		_ = enter(l, days(3), &Stocked{Tank: "C1", Batch: "S", Hatched: hatched("2026-11-08"), Larvae: num(4000)})
		for i := range rapid.IntRange(1, 40).Draw(t, "entries") {
			fact := drawStep(t, rapid.SampledFrom([]string{"S", "T"}).Draw(t, "batch"))
			if m, ok := fact.(*Moved); ok { // the washing between is not what this is about
				_ = enter(l, days(4+float64(i)/4), &Washed{Tank: m.To})
				_ = enter(l, days(4+float64(i)/4), &Filled{Tank: m.To})
			}
			_ = enter(l, days(4+float64(i)/4), fact) // what cannot be is left out
		}
		for _, b := range l.Batches() {
			sameAsFolded(t, l, b)
		}
	})
}

func sameAsFolded(t *rapid.T, l *Ledger, b *Batch) {
	steps := map[int]SurvivalStep{}
	for _, s := range l.SurvivalSeries(b).Steps {
		steps[s.N] = s
	}
	f := newFold(l.room)
	seen := 0
	for _, e := range l.Events() {
		if err := f.add(e); err != nil {
			t.Fatal(err)
		}
		s, ok := steps[e.N]
		if !ok {
			continue
		}
		seen++
		then := &Ledger{room: l.room, fold: f}
		same(t, e, "total", s.Total.Value, f.standing(b.Name).Value)
		inside(t, e, s.Total)
		inside(t, e, s.Alive.Share)
		if survival, err := then.Survival(then.Batch(b.Name)); err == nil && survival.Share.Value.Known {
			same(t, e, "alive", s.Alive.Share.Value, survival.Share.Value)
		}
		if s.Count == nil {
			continue
		}
		counts := then.Batch(b.Name).Counts
		same(t, e, "expected", s.Count.Expected.Value, counts[len(counts)-1].Before.Value)
		fell := f.tank(s.Tank).Larvae.Fell
		if got := s.Count.Change != nil && s.Count.Change.Fell; got != (fell != nil) {
			t.Fatalf("entry %d: fell %v; the ledger says %v", e.N, s.Count.Change, fell)
		}
		if fell != nil && math.Abs(fell.PFell-s.Count.Change.PFell) > 1e-9 {
			t.Fatalf("entry %d: p %g; the ledger says %g", e.N, s.Count.Change.PFell, fell.PFell)
		}
	}
	if seen != len(steps) {
		t.Fatalf("%d steps, %d of them entries", len(steps), seen)
	}
}

func same(t *rapid.T, e Entry, what string, got, want count.Figure) {
	if got.Known != want.Known || math.Abs(got.X-want.X) > 1e-6*max(1, want.X) {
		t.Fatalf("entry %d (%s): %s = %+v; the ledger says %+v", e.N, e.Kind(), what, got, want)
	}
}

func inside(t *rapid.T, e Entry, x count.Estimate) {
	if x.Low.Known && x.High.Known && !(x.Low.X <= x.Value.X+1e-9 && x.Value.X <= x.High.X+1e-9) {
		t.Fatalf("entry %d (%s): %+v lies outside its limits", e.N, e.Kind(), x)
	}
}

func BenchmarkSurvivalSeries(b *testing.B) {
	l := survivalLedger(b, num(9000))
	for i := range 40 {
		mustEnter(b, l, days(3+float64(i)), &Count{Tank: "C1", Live: []int{80 - i, 70 - i}, SampleML: 10, HoldingML: 1000})
	}
	b.ReportAllocs()
	for b.Loop() {
		l.SurvivalSeries(l.Batch("S"))
	}
}
