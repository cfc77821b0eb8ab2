package calendar

import (
	"testing"
	"time"

	"drainboard/model"
	"drainboard/tui/desk"
	"drainboard/tui/theme"
)

func moment(t testing.TB, s string) time.Time {
	t.Helper()
	at, err := time.Parse(time.RFC3339, s)
	if err != nil {
		t.Fatal(err)
	}
	return at
}

// empty is a desk at an invented room of nine tanks in which nothing was entered.
func empty(t testing.TB, now string) *desk.Desk {
	t.Helper()
	zone, err := time.LoadLocation("America/Nassau")
	if err != nil {
		t.Fatal(err)
	}
	house := model.DefaultHouse()
	house.Ration = []model.RationBand{
		{FromDay: 0, CellsPerML: 5000, Share: map[string]float64{"iso": 1}},
		{FromDay: 8, CellsPerML: 15000, Share: map[string]float64{"iso": 3, "chaet": 1}},
	}
	r := &model.Room{
		Name: "Quay larval room", Zone: zone, House: house, Procedure: model.DefaultProcedure(),
		Algae: []model.Alga{{Name: "iso", Full: "Isochrysis"}, {Name: "chaet", Full: "Chaetoceros"}},
	}
	for _, name := range []string{"K1", "K2", "K3", "K4", "K5", "K6"} {
		r.Tanks = append(r.Tanks, model.Tank{Name: name, Litres: 120})
	}
	for _, name := range []string{"L1", "L2", "L3"} {
		r.Tanks = append(r.Tanks, model.Tank{Name: name, Litres: 160})
	}
	return &desk.Desk{Ledger: model.NewLedger(r), Now: moment(t, now), Theme: theme.Bare(false), By: "KT"}
}

func put(t testing.TB, d *desk.Desk, at string, fact model.Fact) {
	t.Helper()
	e := model.Entry{At: moment(t, at), Fact: fact}
	err := d.Ledger.Check(&e, d.Now)
	if err == nil {
		err = d.Ledger.Apply(e)
	}
	if err != nil {
		t.Fatalf("%s %s: %v", at, fact.Kind(), err)
	}
}

func stock(t testing.TB, d *desk.Desk, at, tank, batch, hatched string) {
	t.Helper()
	day, err := model.ParseDay(hatched)
	if err != nil {
		t.Fatal(err)
	}
	larvae := 6000.0
	put(t, d, at, &model.Stocked{Tank: tank, Batch: batch, Hatched: model.Hatched{Date: day}, Larvae: &larvae})
}

// busy is that room at work: seven tanks hold larvae of three batches, five of
// them due in the night and morning of one day, two on the other. K1 is overdue,
// L3 is dirty, K6 ready. P-03 grows and is expected to be ready on 3 December.
func busy(t testing.TB) *desk.Desk {
	t.Helper()
	d := empty(t, "2026-11-25T09:14:05-05:00")
	put(t, d, "2026-11-20T09:00:00-05:00", &model.Filled{Tank: "K6"})
	stock(t, d, "2026-11-23T02:00:00-05:00", "K1", "P-03", "2026-11-15")
	stock(t, d, "2026-11-23T10:10:00-05:00", "K2", "P-03", "2026-11-15")
	stock(t, d, "2026-11-24T06:40:00-05:00", "K3", "P-04", "2026-11-18")
	stock(t, d, "2026-11-24T07:10:00-05:00", "K4", "P-04", "2026-11-18")
	stock(t, d, "2026-11-24T07:40:00-05:00", "K5", "P-04", "2026-11-18")
	stock(t, d, "2026-11-24T08:10:00-05:00", "L1", "P-05", "2026-11-22")
	stock(t, d, "2026-11-24T09:10:00-05:00", "L2", "P-05", "2026-11-22")
	for _, x := range []struct {
		at   string
		mean float64
	}{{"2026-11-23T11:00:00-05:00", 622}, {"2026-11-24T11:00:00-05:00", 673}, {"2026-11-25T08:00:00-05:00", 717}} {
		put(t, d, x.at, &model.Sizes{Tank: "K2", UM: []float64{x.mean - 6, x.mean - 2, x.mean + 2, x.mean + 6}})
	}
	put(t, d, "2026-11-24T20:00:00-05:00", &model.Look{Tank: "K2", Swim: model.SwimGood})
	put(t, d, "2026-11-25T08:30:00-05:00", &model.Fed{Tank: "K2", Litres: map[string]float64{"iso": 0.3}})
	put(t, d, "2026-11-25T08:40:00-05:00", &model.Cells{Algae: "iso", Counts: []int{5_100_000}, ChamberML: 1})
	put(t, d, "2026-11-25T08:50:00-05:00", &model.Cells{Algae: "chaet", Counts: []int{4_800_000}, ChamberML: 1})
	return d
}
