package season

import (
	"testing"

	"drainboard/model"
	"drainboard/model/count"
)

func TestChanges(t *testing.T) {
	part := func(from, to string, share float64, join bool) *model.Moved {
		return &model.Moved{From: from, To: to, Share: num(share), Join: join}
	}
	cases := map[string]struct {
		enter         func(b book)
		late, overdue float64
		n             int
	}{
		"none yet, in time": {func(b book) {}, 0, 0, 0},
		"standing too long": {func(b book) { b.at("06-04 12:00", &model.Noted{Text: "x"}) }, 100, 100, 1},
		"standing past due within the grace": {func(b book) {
			b.at("06-03 12:00", move("A", "B", 28, 28))
			b.at("06-05 14:00", &model.Noted{Text: "x"})
		}, 50, 0, 2},
		"ended in time is no change": {func(b book) {
			b.at("06-03 12:00", move("A", "B", 28, 28))
			b.at("06-04 12:00", &model.Ended{Tank: "B", Why: model.Lost})
		}, 0, 0, 1},
		"ended in old water": {func(b book) {
			b.at("06-03 12:00", move("A", "B", 28, 28))
			b.at("06-07 12:00", &model.Ended{Tank: "B", Why: model.Lost})
		}, 50, 50, 2},
		"half of them stay in the old water": {func(b book) {
			b.at("06-03 12:00", part("A", "B", 0.5, false)) // 48 h
			b.at("06-04 12:00", move("A", "C", 28, 28))     // 72 h
			b.at("06-05 12:00", move("B", "D", 28, 28))     // 48 h
			b.at("06-05 13:00", part("C", "D", 1, true))    // 25 h; D keeps its hour
		}, 25, 25, 4},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			b := newBook(t)
			b.at("06-01 12:00", b.stocked("A", "Q", "2026-06-01", 1000))
			c.enter(b)
			events := b.ledger.Events()
			x := Of(b.ledger, events[len(events)-1].At).Batches[0]
			for h, want := range map[Habit]float64{Late: c.late, Overdue: c.overdue} {
				got := x.Habit(h)
				if got.Known != (c.n > 0) || got.X != want || got.N != c.n {
					t.Errorf("%s = %+v; want %v over %d", h, got, want, c.n)
				}
			}
		})
	}
}

func TestDensity(t *testing.T) {
	cases := map[string]struct {
		enter func(b book)
		want  count.Figure
		n     int
	}{
		"just stocked": {func(b book) {}, count.Known(10), 1},
		"a split halves it, a join puts it together": {func(b book) {
			b.at("06-02 12:00", &model.Moved{From: "A", To: "B", Share: num(0.5)})            // 24 h at 10
			b.at("06-03 12:00", &model.Moved{From: "A", To: "B", Share: num(1), Join: true})  // 2 tanks, 24 h at 5
			b.at("06-04 12:00", &model.Ended{Tank: "B", Why: model.Settled, Larvae: num(10)}) // 24 h at 10
		}, count.Known((24*10 + 48*5 + 24*10) / 96.), 1},
		"removed": {func(b book) {
			b.at("06-02 12:00", &model.Removed{Tank: "A", Larvae: 400, Why: "sample"}) // 24 h at 10
			b.at("06-03 12:00", &model.Removed{Tank: "A", Larvae: 900, Why: "sample"}) // 24 h at 6, then none
			b.at("06-04 12:00", &model.Ended{Tank: "A", Why: model.Lost})
		}, count.Known(16 / 3.), 1},
		"an unknown number is left out": {func(b book) {
			b.at("06-02 12:00", b.stocked("B", "Q", "2026-06-01", 0)) // 24 h at 10
			b.at("06-03 12:00", counted("B", 10))                     // 24 h at 10; B unknown
			b.at("06-04 12:00", counted("B", 10))                     // 24 h at 10, 24 h at 20
		}, count.Known((3*24*10 + 24*20) / 96.), 3},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			b := newBook(t)
			b.at("06-01 12:00", b.stocked("A", "Q", "2026-06-01", 1000))
			c.enter(b)
			got := b.one("06-30 12:00").Habit(Density)
			near(t, "density", got.Figure, c.want.X)
			if got.N != c.n {
				t.Errorf("over %d numbers; want %d", got.N, c.n)
			}
		})
	}
	b := newBook(t)
	b.at("06-01 12:00", b.stocked("A", "Q", "2026-06-01", 0))
	b.at("06-03 12:00", move("A", "B", 28, 28))
	if got := b.one("06-05 12:00").Habit(Density); got.Known || got.N != 0 {
		t.Errorf("density %+v; want it unknown where no number was given", got)
	}
}

// Readings of one decimal differ by just step_fine or step_hold, whatever binary
// fractions make of them.
func TestDifferencesOnTheLimit(t *testing.T) {
	b := newBook(t)
	b.at("06-01 12:00", b.stocked("A", "Q", "2026-06-01", 1000))
	b.at("06-02 12:00", move("A", "B", 28.1, 26.1)) // 28.1-26.1 = 2.0000000000000036 in binary
	b.at("06-03 12:00", move("B", "C", 24.3, 28.3))
	x := b.one("06-03 12:00")
	near(t, "over fine", x.Habit(OverFine).Figure, 50)
	near(t, "over hold", x.Habit(OverHold).Figure, 0)
}
