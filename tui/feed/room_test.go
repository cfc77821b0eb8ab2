package feed

import (
	"errors"
	"fmt"
	"testing"
	"time"

	"drainboard/model"
	"drainboard/tui/desk"
	"drainboard/tui/theme"
)

// keeper keeps entries in memory. While fail is set it keeps nothing.
type keeper struct {
	entries []model.Entry
	fail    error
}

func (k *keeper) Append(entries ...model.Entry) error {
	if k.fail != nil {
		return k.fail
	}
	k.entries = append(k.entries, entries...)
	return nil
}

var errDisk = errors.New("write journal/2026-11.toml: no space left on device")

func num(x float64) *float64 { return &x }

func share(iso, chaet, pav float64) map[string]float64 {
	m := map[string]float64{"iso": iso}
	if chaet > 0 {
		m["chaet"] = chaet
	}
	if pav > 0 {
		m["pav"] = pav
	}
	return m
}

// room is an invented room of eight tanks and three algae.
func room(t testing.TB) *model.Room {
	t.Helper()
	zone, err := time.LoadLocation("America/Nassau")
	if err != nil {
		t.Fatal(err)
	}
	house := model.DefaultHouse()
	house.Ration = []model.RationBand{
		{FromDay: 2, CellsPerML: 5000, Share: share(1, 0, 0)},
		{FromDay: 8, CellsPerML: 15000, Share: share(3, 1, 0)},
		{FromDay: 15, CellsPerML: 25000, Share: share(2, 1, 1)},
	}
	r := &model.Room{
		Name: "Quay larval room", Zone: zone, House: house, Procedure: model.DefaultProcedure(),
		Algae: []model.Alga{{Name: "iso", Full: "Isochrysis"}, {Name: "chaet", Full: "Chaetoceros"}, {Name: "pav", Full: "Pavlova"}},
	}
	for i := range 6 {
		r.Tanks = append(r.Tanks, model.Tank{Name: fmt.Sprint("K", i+1), Litres: 120})
	}
	r.Tanks = append(r.Tanks, model.Tank{Name: "L1", Litres: 160}, model.Tank{Name: "L2", Litres: 160})
	return r
}

// work is a desk and what is entered at it.
type work struct {
	t    testing.TB
	desk *desk.Desk
	kept *keeper
}

func newWork(t testing.TB, r *model.Room) work {
	t.Helper()
	now, err := time.Parse(time.RFC3339, "2026-11-25T09:14:05-05:00")
	if err != nil {
		t.Fatal(err)
	}
	k := &keeper{}
	return work{t, &desk.Desk{Ledger: model.NewLedger(r), Now: now, Theme: theme.Bare(false), By: "KT", Keeper: k}, k}
}

// ago enters facts so many hours before now.
func (w work) ago(hours float64, facts ...model.Fact) {
	w.t.Helper()
	if _, err := w.desk.EnterAt(w.desk.Now.Add(-time.Duration(hours*float64(time.Hour))), facts...); err != nil {
		w.t.Fatal(err)
	}
}

// stock puts larvae of an age into a tank so many hours ago.
func (w work) stock(hours float64, tank, batch string, day int) {
	w.t.Helper()
	hatched := model.Hatched{Date: model.DayOf(w.desk.Now, w.desk.Ledger.Room().Zone).Add(-day)}
	w.ago(hours+0.1, &model.Filled{Tank: tank})
	w.ago(hours, &model.Stocked{Tank: tank, Batch: batch, Hatched: hatched, Larvae: num(9000)})
}

func (w work) cells(hours float64, alga, tank string, perML int) {
	w.t.Helper()
	w.ago(hours, &model.Cells{Algae: alga, Tank: tank, Counts: []int{perML}, ChamberML: 1})
}

// busy is a room with a tank of every sort: K1 counted, K2 fed and not counted
// since, K3 fed two hours ago, K4 too young, K5 with enough, K6 suspect.
func busy(t testing.TB) work {
	t.Helper()
	w := newWork(t, room(t))
	w.stock(30, "K1", "P-03", 18)
	w.stock(46, "K2", "P-04", 10)
	w.stock(20, "K3", "P-05", 4)
	w.stock(12, "K4", "P-06", 1)
	w.stock(46, "K5", "P-04", 10)
	w.stock(30, "K6", "P-03", 18)
	w.ago(60, &model.Cells{Algae: "chaet", Counts: []int{52, 47, 50}, ChamberML: 9e-4, Dilution: num(80)})
	w.ago(3, &model.Cells{Algae: "iso", Counts: []int{46, 44, 48}, ChamberML: 9e-4, Dilution: num(100)})
	w.ago(20, &model.Fed{Tank: "K2", Litres: share(0.3, 0.1, 0)})
	w.ago(2, &model.Fed{Tank: "K3", Litres: share(0.1, 0, 0)})
	w.cells(3.1, "", "K1", 1200)
	w.cells(1, "", "K5", 16200)
	w.ago(2, &model.Suspect{Tank: "K6", On: true, Why: "pale gut"})
	return w
}

func (w work) screen() *Feed { return New(w.desk, "").(*Feed) }
