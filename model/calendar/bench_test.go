package calendar

import (
	"fmt"
	"math/rand/v2"
	"testing"
	"time"

	"drainboard/model"
)

// benchRoom is a room of so many tanks, two of them empty, in which batches of
// four or five tanks were changed today or yesterday from nine on, one after the
// other.
func benchRoom(t testing.TB, tanks int) (*model.Ledger, time.Time) {
	t.Helper()
	r := &model.Room{Name: "bench", Zone: nassau(t), House: model.DefaultHouse(), Algae: model.DefaultAlgae()}
	for i := range tanks {
		r.Tanks = append(r.Tanks, model.Tank{Name: fmt.Sprintf("T%d", i+1), Litres: []float64{120, 120, 160}[i%3]})
	}
	l := model.NewLedger(r)
	now := time.Date(2026, 11, 25, 7, 30, 0, 0, r.Zone)
	dice := rand.New(rand.NewPCG(1, uint64(tanks)))
	minute := [2]int{}
	for i := range tanks {
		ago := 1 + i%2
		if dice.IntN(4) == 0 {
			ago = 1
		}
		at := time.Date(2026, 11, 25-ago, 9, minute[ago-1], 0, 0, r.Zone)
		minute[ago-1] += 27
		put(t, l, at.Add(-time.Minute), &model.Filled{Tank: r.Tanks[i].Name})
		if i >= tanks-2 {
			continue
		}
		larvae := 9000.0
		day := model.DayOf(now, r.Zone).Add(-3 - 5*(i/5))
		put(t, l, at, &model.Stocked{Tank: r.Tanks[i].Name, Batch: fmt.Sprintf("B-%d", i/5), Hatched: model.Hatched{Date: day}, Larvae: &larvae})
	}
	put(t, l, now.Add(-time.Hour), &model.Cells{Algae: "iso", Counts: []int{5000000}, ChamberML: 1})
	return l, now
}

func put(t testing.TB, l *model.Ledger, at time.Time, fact model.Fact) {
	t.Helper()
	e := model.Entry{At: at, Fact: fact}
	err := l.Check(&e, at)
	if err == nil {
		err = l.Apply(e)
	}
	if err != nil {
		t.Fatalf("%v %s: %v", at, fact.Kind(), err)
	}
}

func BenchmarkFor40(b *testing.B) {
	l, now := benchRoom(b, 40)
	for b.Loop() {
		if _, err := For(l, now, DefaultDays); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkLevel(b *testing.B) {
	for _, tanks := range []int{12, 40} {
		for _, minutes := range []float64{1200, 720, 600, 480, 300, 120} {
			for _, early := range []float64{12, 24} {
				b.Run(fmt.Sprintf("%d/%.0f min/%.0f h early", tanks, minutes, early), func(b *testing.B) {
					l, now := benchRoom(b, tanks)
					l.Room().House.DayMinutes, l.Room().House.EarlyHours = minutes, early
					c, err := For(l, now, DefaultDays)
					if err != nil {
						b.Fatal(err)
					}
					var level Level
					for b.Loop() {
						level = c.Level(0)
					}
					b.ReportMetric(float64(level.Nodes), "nodes")
					b.ReportMetric(float64(len(level.Early)), "early")
					b.ReportMetric(float64(level.Over), "over")
					b.ReportMetric(map[bool]float64{true: 1}[level.Best], "best")
				})
			}
		}
	}
}

func BenchmarkOneMore40(b *testing.B) {
	l, now := benchRoom(b, 40)
	for b.Loop() {
		if _, ok, err := OneMore(l, now, 40_000); err != nil || !ok {
			b.Fatal(ok, err)
		}
	}
}
