package model

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"drainboard/model/feed"
)

// scallopRoom has one 10 L tank a day of age and the diet of bay scallop F2 2022
// (NOAA/NEFSC feeding sheet): T-Iso and Chaetoceros 3:1 by cells.
func scallopRoom(t testing.TB, want float64) *Room {
	r := smallRoom(t)
	r.Tanks = []Tank{{Name: "B1", Litres: 10}, {Name: "B2", Litres: 10}}
	r.House.Ration = []RationBand{{FromDay: 0, CellsPerML: want, Share: map[string]float64{"iso": 3, "chaet": 1}}}
	return r
}

// scallop is that room with larvae of day 2 in B1 and the cultures counted, as
// recorded: 5,110,909 and 4,855,454 cells per mL.
func scallop(t testing.TB, want float64) *Ledger {
	t.Helper()
	l := NewLedger(scallopRoom(t, want))
	mustEnter(t, l, "2026-11-20T07:00:00-05:00", &Filled{Tank: "B1"})
	mustEnter(t, l, "2026-11-20T07:10:00-05:00", &Stocked{Tank: "B1", Batch: "S-1", Hatched: hatched("2026-11-18"), Larvae: num(40000)})
	cultured(t, l, "2026-11-20T08:00:00-05:00", "iso", 5110909)
	cultured(t, l, "2026-11-20T08:05:00-05:00", "chaet", 4855454)
	return l
}

// countedCulture is a count of so many cells per mL.
func countedCulture(perML int) *Cells { return &Cells{Counts: []int{perML}, ChamberML: 1} }

func cultured(t testing.TB, l *Ledger, when, alga string, perML int) {
	t.Helper()
	f := countedCulture(perML)
	f.Algae = alga
	mustEnter(t, l, when, f)
}

func countedLeft(t testing.TB, l *Ledger, when, tank string, perML int) {
	t.Helper()
	f := countedCulture(perML)
	f.Tank = tank
	mustEnter(t, l, when, f)
}

func feeding(t testing.TB, l *Ledger, now string, hand map[string]AtHand) Feeding {
	t.Helper()
	f, err := l.Feeding(at(now), hand)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

const nine = "2026-11-20T09:00:00-05:00"

// The inputs are those of the NOAA/NEFSC feeding sheet of bay scallop F2 2022,
// days 1, 2 and 4; the sums were made by hand.
func TestFeedingOfPublishedInputs(t *testing.T) {
	for name, c := range map[string]struct {
		want       float64
		there      int
		iso, chaet float64 // mL
	}{
		"none there":         {15000, 0, 22.012, 7.723},
		"some left":          {20000, 14080, 8.687, 3.048},
		"more than the want": {30000, 31454, 0, 0},
	} {
		t.Run(name, func(t *testing.T) {
			l := scallop(t, c.want)
			if c.there > 0 {
				countedLeft(t, l, "2026-11-20T08:30:00-05:00", "B1", c.there)
			}
			tank := feeding(t, l, nine, nil).Tanks[0]
			iso, chaet := 1000*tank.Feed.Litres["iso"], 1000*tank.Feed.Litres["chaet"]
			if math.Abs(iso-c.iso) > 5e-4 || math.Abs(chaet-c.chaet) > 5e-4 {
				t.Errorf("iso %.3f mL, chaet %.3f mL; want %.3f, %.3f", iso, chaet, c.iso, c.chaet)
			}
			if enough := c.iso == 0; tank.Enough() != enough || tank.InRound == enough || len(tank.Litres()) == 0 != enough {
				t.Errorf("enough %v, in round %v, to enter %v", tank.Enough(), tank.InRound, tank.Litres())
			}
		})
	}
}

func TestFeedIsEnteredAsMeasuredOut(t *testing.T) {
	got := feeding(t, scallop(t, 15000), nine, nil).Tanks[0].Litres()
	if got["iso"] != 0.022 || got["chaet"] != 0.0077 {
		t.Errorf("litres = %v; want 22 mL and 7.7 mL, the steps of a cylinder and a pipette", got)
	}
}

func TestLeftIsNeverTakenFromBeforeTheFeed(t *testing.T) {
	fed := &Fed{Tank: "B1", Litres: map[string]float64{"iso": 0.02}}
	for name, c := range map[string]struct {
		do    func(l *Ledger)
		basis LeftBasis
		left  float64
		asked bool
	}{
		"fresh water": {func(l *Ledger) {}, LeftFresh, 0, true},
		"counted":     {func(l *Ledger) { countedLeft(t, l, "2026-11-20T08:30:00-05:00", "B1", 4000) }, LeftCounted, 4000, true},
		"fed after the count": {func(l *Ledger) {
			countedLeft(t, l, "2026-11-20T08:30:00-05:00", "B1", 4000)
			mustEnter(t, l, "2026-11-20T08:30:00-05:00", fed)
		}, LeftUnknown, 0, false},
		"counted after the feed": {func(l *Ledger) {
			mustEnter(t, l, "2026-11-20T08:30:00-05:00", fed)
			countedLeft(t, l, "2026-11-20T08:30:00-05:00", "B1", 4000)
		}, LeftCounted, 4000, true},
		"moved after the feed": {func(l *Ledger) {
			mustEnter(t, l, "2026-11-20T08:30:00-05:00", fed)
			mustEnter(t, l, "2026-11-20T08:40:00-05:00", &Filled{Tank: "B2"})
			mustEnter(t, l, "2026-11-20T08:50:00-05:00", &Moved{From: "B1", To: "B2"})
		}, LeftFresh, 0, true},
	} {
		t.Run(name, func(t *testing.T) {
			l := scallop(t, 15000)
			c.do(l)
			got := feeding(t, l, nine, nil).Tanks[0]
			if got.Left.Basis != c.basis || got.Left.Reckoned() != c.left || got.Asked != c.asked {
				t.Errorf("left %v %v, asked %v; want %v %v, %v", got.Left.Basis, got.Left.Reckoned(), got.Asked, c.basis, c.left, c.asked)
			}
		})
	}
}

func TestFeedIsAskedAgainAfterHalfTheHours(t *testing.T) {
	l := scallop(t, 15000)
	mustEnter(t, l, nine, &Fed{Tank: "B1", Litres: map[string]float64{"iso": 0.02}})
	tank, _ := l.Tank("B1")
	for hours, want := range map[float64]bool{1: false, 12: false, 12.1: true, 30: true} {
		now := at(nine).Add(time.Duration(hours * float64(time.Hour)))
		if got := l.FeedAsked(tank, now); got != want {
			t.Errorf("%v h after the feed: asked %v, want %v", hours, got, want)
		}
	}
	if empty, _ := l.Tank("B2"); l.FeedAsked(empty, at(nine)) {
		t.Error("an empty tank is asked for")
	}
}

func TestAlgaThatCannotBePouredLeavesItsPart(t *testing.T) {
	l := NewLedger(scallopRoom(t, 15000))
	mustEnter(t, l, "2026-11-20T07:00:00-05:00", &Filled{Tank: "B1"})
	mustEnter(t, l, "2026-11-20T07:10:00-05:00", &Stocked{Tank: "B1", Batch: "S-1", Hatched: hatched("2026-11-18")})
	none := feeding(t, l, nine, nil)
	if tank := none.Tanks[0]; tank.InRound || !said(tank.Problems, "iso, 75 % of its ration, cannot be poured") || !said(tank.Problems, "nothing can be poured") {
		t.Errorf("without cultures: in round %v, problems %q", tank.InRound, tank.Problems)
	}
	if got := none.Cultures[0].Problem; !strings.Contains(got, "iso was never counted") {
		t.Errorf("culture problem %q", got)
	}
	cultured(t, l, "2026-11-20T08:00:00-05:00", "iso", 5110909)
	cultured(t, l, "2026-11-20T08:00:00-05:00", "chaet", 0)
	f := feeding(t, l, nine, nil)
	tank := f.Tanks[0]
	if iso := 1000 * tank.Feed.Litres["iso"]; math.Abs(iso-22.012) > 5e-4 || tank.Part != 0.75 {
		t.Errorf("iso %.3f mL, part %v; want its own 22.012 mL, which is 0.75 of the ration", iso, tank.Part)
	}
	if !said(tank.Problems, "chaet, 25 % of its ration") || !strings.Contains(f.Cultures[1].Problem, "no cells were found") {
		t.Errorf("problems %q, culture %q", tank.Problems, f.Cultures[1].Problem)
	}
}

func said(lines []string, want string) bool {
	return strings.Contains(strings.Join(lines, "\n"), want)
}

func TestOldCultureIsMarkedAndServes(t *testing.T) {
	l := scallop(t, 15000)
	f := feeding(t, l, "2026-11-22T08:02:00-05:00", nil)
	if !f.Cultures[0].Stale || f.Cultures[1].Stale {
		t.Errorf("stale after 48 h 02 min and 47 h 57 min: %v, %v; want true, false", f.Cultures[0].Stale, f.Cultures[1].Stale)
	}
	if !f.Tanks[0].InRound {
		t.Error("an old count keeps the tank from its feed")
	}
}

func TestShortCultureIsShared(t *testing.T) {
	l := scallop(t, 15000)
	l.room.House.Feeding.ReserveShare = 50
	from := l.Next()
	hand := map[string]AtHand{"iso": {Litres: 0.022012, From: from}}
	f := feeding(t, l, nine, hand)
	if got := f.Tanks[0].Part; math.Abs(got-0.5) > 1e-4 || f.Tanks[0].Feed.ShortOf != "iso" {
		t.Errorf("part %v, short of %q; want half, as half of the culture is seed", got, f.Tanks[0].Feed.ShortOf)
	}
	if got := f.Tanks[0].Litres()["chaet"]; got != 0.0039 {
		t.Errorf("chaet %v L; want half of 7.723 mL, so that the diet keeps its proportions", got)
	}
	mustEnter(t, l, nine, &Fed{Tank: "B1", Litres: map[string]float64{"iso": 0.01}})
	if got := feeding(t, l, nine, hand).Round.Draws[0].Have; math.Abs(got-0.001006) > 1e-9 {
		t.Errorf("left to pour %v L; want the 11.006 mL less the 10 mL poured since", got)
	}
	mustEnter(t, l, nine, &Corrected{Entry: l.Next() - 1, Why: "not poured", Void: true})
	if got := feeding(t, l, nine, hand).Round.Draws[0].Have; math.Abs(got-0.011006) > 1e-9 {
		t.Errorf("after the feed was undone %v L are left to pour; want 11.006 mL", got)
	}
	for _, bad := range []map[string]AtHand{{"iso": {Litres: -1}}, {"iso": {Litres: math.NaN()}}, {"kelp": {Litres: 1}}} {
		if _, err := l.Feeding(at(nine), bad); err == nil {
			t.Errorf("%v at hand is taken", bad)
		}
	}
}

func TestWhatATankLacksIsNamed(t *testing.T) {
	for name, c := range map[string]struct {
		ration []RationBand
		want   string
	}{
		"before the first band":    {[]RationBand{{FromDay: 3, CellsPerML: 5000, Share: map[string]float64{"iso": 1}}}, "no ration before day 3"},
		"no band":                  {nil, "no [[house.ration]]"},
		"share adding up to zero":  {[]RationBand{{CellsPerML: 5000, Share: map[string]float64{"iso": 0}}}, "the shares sum to 0"},
		"alga the room lacks":      {[]RationBand{{CellsPerML: 5000, Share: map[string]float64{"iso": 1, "kelp": 1}}}, "kelp, 50 % of its ration, cannot be poured"},
		"share below zero":         {[]RationBand{{CellsPerML: 5000, Share: map[string]float64{"iso": 2, "chaet": -1}}}, "-1 is not possible"},
		"a ration of no tank ever": {[]RationBand{{CellsPerML: math.Inf(1), Share: map[string]float64{"iso": 1}}}, "+Inf is not possible"},
	} {
		t.Run(name, func(t *testing.T) {
			l := scallop(t, 15000)
			l.room.House.Ration = c.ration
			f := feeding(t, l, nine, nil)
			if !said(f.Tanks[0].Problems, c.want) {
				t.Errorf("problems %q; want %q among them", f.Tanks[0].Problems, c.want)
			}
		})
	}
}

func TestOverflowIsWarnedFromOnePerCent(t *testing.T) {
	l := scallop(t, 15000) // 29.7 mL into 10 L: 0.3 %
	if f := feeding(t, l, nine, nil).Tanks[0]; f.Overflows() || math.Abs(f.Feed.OverBrim-0.029735) > 1e-6 {
		t.Errorf("overflows %v by %v L; want no warning of 29.7 mL", f.Overflows(), f.Feed.OverBrim)
	}
	l.room.House.Ration[0].CellsPerML = 60000 // four times as much: 1.2 %
	if f := feeding(t, l, nine, nil).Tanks[0]; !f.Overflows() {
		t.Errorf("%v L on top of 10 L are not warned of", f.Feed.OverBrim)
	}
}

func TestDemandFollowsAgeAndReadyDate(t *testing.T) {
	l := scallop(t, 15000)
	l.room.House.Ration = append(l.room.House.Ration, RationBand{FromDay: 4, CellsPerML: 30000, Share: map[string]float64{"iso": 1}})
	d := l.FeedDemand(at(nine), 14)
	iso := func(i int) float64 { return d.Days[i].Litres["iso"] }
	if len(d.Days) != 14 || math.Abs(iso(0)-0.022012) > 1e-6 || math.Abs(iso(2)-300e6/5110909/1000) > 1e-9 || d.Days[2].Litres["chaet"] != 0 {
		t.Errorf("%d days, iso %v and %v L; want the ration of day 2 and, two days on, of day 4", len(d.Days), iso(0), iso(2))
	}
	if got := d.Days[13]; got.Day.String() != "2026-12-03" || got.Tanks != 1 {
		t.Errorf("last day %v, %d tanks; want 3 December, one", got.Day, got.Tanks)
	}
	if !strings.Contains(d.Stays[0].Why, "no ready date yet") || !d.Stays[0].Last.IsZero() {
		t.Errorf("stay %+v; want it to stay, and why", d.Stays[0])
	}
	// 300, 400 and 500 um on three days reach 1150 um on day 8.5: 1 December.
	for i, um := range []float64{300, 400, 500} {
		day := 18 + i
		mustEnter(t, l, fmt.Sprintf("2026-11-%dT12:00:00-05:00", day+2), &Sizes{Tank: "B1", UM: []float64{um - 10, um, um + 10}})
	}
	d = l.FeedDemand(at("2026-11-22T13:00:00-05:00"), 14)
	if got := d.Stays[0].Last.String(); got != "2026-12-02" {
		t.Errorf("last day %s (%s); want 2 December, three days after the ready date", got, d.Stays[0].Why)
	}
	if d.Days[10].Tanks != 1 || d.Days[11].Tanks != 0 || len(d.Days[11].Litres) != 0 {
		t.Errorf("tanks on 2 and 3 December: %d, %d; want 1, 0", d.Days[10].Tanks, d.Days[11].Tanks)
	}
	d = l.FeedDemand(at("2026-12-20T09:00:00-05:00"), 14)
	if got := d.Stays[0]; got.Last.String() != "2026-12-23" || !strings.Contains(got.Why, "still here") {
		t.Errorf("past its ready date: %+v; want three days from today", got)
	}
}

func TestDemandNamesWhatIsMissing(t *testing.T) {
	l := NewLedger(scallopRoom(t, 15000))
	mustEnter(t, l, "2026-11-20T07:00:00-05:00", &Filled{Tank: "B1"})
	mustEnter(t, l, "2026-11-20T07:10:00-05:00", &Stocked{Tank: "B1", Batch: "S-1", Hatched: hatched("2026-11-18")})
	cultured(t, l, "2026-11-20T08:00:00-05:00", "iso", 5110909)
	d := l.FeedDemand(at(nine), 2)
	if fmt.Sprint(d.Uncounted) != "[chaet]" || d.Days[0].Cells["chaet"] != 37.5e6 {
		t.Errorf("uncounted %v, cells %v; want chaet, with its 37.5 million cells", d.Uncounted, d.Days[0].Cells)
	}
	if _, known := d.Days[0].Litres["chaet"]; known {
		t.Error("litres are given of a culture that was never counted")
	}
	l.room.House.FeedHours = 12
	if twice := l.FeedDemand(at(nine), 1); twice.Days[0].Cells["iso"] != 2*d.Days[0].Cells["iso"] {
		t.Errorf("fed every 12 h: %v cells, want twice %v", twice.Days[0].Cells["iso"], d.Days[0].Cells["iso"])
	}
	l.room.House.Ration[0].FromDay = 3
	if gap := l.FeedDemand(at(nine), 2); len(gap.Gaps) != 1 || !strings.Contains(gap.Gaps[0], "B1: no ration before day 3; on 1 of the days") || gap.Days[1].Tanks != 1 {
		t.Errorf("gaps %q; want B1 named for its first day only", gap.Gaps)
	}
	l.room.House.Ration[0] = RationBand{CellsPerML: 5000, Share: map[string]float64{"kelp": 1}}
	if gap := l.FeedDemand(at(nine), 2); len(gap.Gaps) != 1 || !strings.Contains(gap.Gaps[0], "B1 is left out") {
		t.Errorf("gaps %q; want B1 left out by name", gap.Gaps)
	}
}

// fortyTanks is a full room: forty tanks of eight batches on two algae.
func fortyTanks(t testing.TB) *Ledger {
	r := scallopRoom(t, 15000)
	r.Tanks = nil
	for i := range 40 {
		r.Tanks = append(r.Tanks, Tank{Name: fmt.Sprintf("T%d", i+1), Litres: 120})
	}
	l := NewLedger(r)
	for i, tank := range r.Tanks {
		mustEnter(t, l, "2026-11-20T07:00:00-05:00", &Filled{Tank: tank.Name})
		mustEnter(t, l, "2026-11-20T07:10:00-05:00", &Stocked{Tank: tank.Name, Batch: fmt.Sprint("S-", i/5), Hatched: hatched("2026-11-18"), Larvae: num(9000)})
	}
	cultured(t, l, "2026-11-20T08:00:00-05:00", "iso", 5110909)
	cultured(t, l, "2026-11-20T08:05:00-05:00", "chaet", 4855454)
	return l
}

func BenchmarkFeeding40Tanks(b *testing.B) {
	l, hand := fortyTanks(b), map[string]AtHand{"iso": {Litres: 5, From: 1}}
	for b.Loop() {
		if _, err := l.Feeding(at(nine), hand); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkFeedDemand40Tanks(b *testing.B) {
	l := fortyTanks(b)
	for b.Loop() {
		if d := l.FeedDemand(at(nine), 14); len(d.Gaps) > 0 {
			b.Fatal(d.Gaps)
		}
	}
}

// The round gives to each culture what its tanks get, however few litres there
// are.
func TestRoundAndTanksAgree(t *testing.T) {
	l := fortyTanks(t)
	for _, litres := range []float64{0, 0.1, 3, 50} {
		f := feeding(t, l, nine, map[string]AtHand{"iso": {Litres: litres, From: l.Next()}})
		sum := feed.ByAlga{}
		for _, tank := range f.Tanks {
			for alga, x := range tank.Feed.Litres {
				sum[alga] += x
			}
		}
		for _, draw := range f.Round.Draws {
			if math.Abs(sum[draw.Alga]-draw.Given) > 1e-9 {
				t.Errorf("%v L of iso: %s given %v, tanks get %v", litres, draw.Alga, draw.Given, sum[draw.Alga])
			}
		}
	}
}
