package batch

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"drainboard/model"
	"drainboard/tui/desk"
	"drainboard/tui/desk/desktest"
	"drainboard/tui/text"
)

// counted is a desk where batch S of K2 was stocked ten days ago, with a number or
// none, and shows its survival.
func counted(t testing.TB, larvae *float64) (*Batch, *desk.Desk) {
	t.Helper()
	d, _ := desktest.Empty(t)
	hatched, err := model.ParseHatched("2026-11-13")
	if err != nil {
		t.Fatal(err)
	}
	at(t, d, 10, &model.Stocked{Tank: "K2", Batch: "S", Hatched: hatched, Larvae: larvae})
	s := New(d, "S").(*Batch)
	s.page = survivalPage
	return s, d
}

// at enters a fact so many days ago.
func at(t testing.TB, d *desk.Desk, daysAgo float64, fact model.Fact) {
	t.Helper()
	desktest.Enter(t, d, time.Duration(daysAgo*24*float64(time.Hour)), fact)
}

// live is a count of subsamples of 10 mL of a litre: each larva stands for 100.
func live(tank string, n ...int) *model.Count {
	return &model.Count{Tank: tank, Live: n, SampleML: 10, HoldingML: 1000}
}

func larvae(x float64) *float64 { return &x }

func TestSurvivalInWords(t *testing.T) {
	for _, c := range []struct {
		name  string
		start *float64
		play  func(t *testing.T, d *desk.Desk)
		wants []string
	}{
		{"a fall", larvae(10000), func(t *testing.T, d *desk.Desk) {
			at(t, d, 8, live("K2", 100))
			at(t, d, 6, live("K2", 60))
		}, []string{
			"alive     60.0 % (45.8 to 77.2) of the 10 000 stocked Sun 15 Nov (limits of the counts",
			"6 000 (4 579 to 7 723) in the room, the last count 6 d 0 h ago",
			"loss      12.0 % a day (",
			"FELL      K2, Thu 19 Nov: 6 000 where 10 000 were expected by the count of Tue 17 Nov, more than chance allows (p 0.0010)",
			"two Poisson rates, exact (Przyborowski & Wilenski 1940), each tail 2.5 %",
			"FELL 22.5 %",
		}},
		{"no fall", larvae(10000), func(t *testing.T, d *desk.Desk) {
			at(t, d, 8, live("K2", 100))
			at(t, d, 6, live("K2", 90))
		}, []string{"falls     none larger than chance in 1 count against the one before; test: two Poisson rates"}},
		{"above, within chance", larvae(10000), func(t *testing.T, d *desk.Desk) {
			at(t, d, 8, live("K2", 50))
			at(t, d, 6, live("K2", 55))
		}, []string{"above     * K2, Thu 19 Nov: 5 500 counted, 5 000 thought to be there, within chance (p 0.3"}},
		{"above, more than chance", larvae(10000), func(t *testing.T, d *desk.Desk) {
			at(t, d, 8, live("K2", 50))
			at(t, d, 6, live("K2", 90))
		}, []string{"9 000 counted, 5 000 thought to be there, more than chance allows (p 0.000", "larvae that cling hid from the count before, or it was low"}},
		{"above, not tested", larvae(1000), func(t *testing.T, d *desk.Desk) {
			at(t, d, 8, live("K2", 50))
		}, []string{"5 000 counted, 1 000 thought to be there; not tested: there is no count before it", "500.0 % (371.1 to 659.2) of the 1 000 stocked", ", more than at the start *"}},
		{"one move between counts", larvae(10000), func(t *testing.T, d *desk.Desk) {
			mesh := 150.0
			at(t, d, 8, live("K2", 100))
			at(t, d, 7, &model.Moved{From: "K2", To: "K3", MeshUM: &mesh})
			at(t, d, 6, live("K3", 80))
		}, []string{"moves     K2 → K3 over 150 µm, Wed 18 Nov: 10 000 before (Tue 17 Nov), 8 000 after (Thu 19 Nov), 2 000 missing (0 to 4 7", "what died between the two counts is among the missing"}},
		{"two moves between counts", larvae(10000), func(t *testing.T, d *desk.Desk) {
			at(t, d, 8, live("K2", 100))
			at(t, d, 7.5, &model.Moved{From: "K2", To: "K3"})
			at(t, d, 7, &model.Moved{From: "K3", To: "K4"})
			at(t, d, 6, live("K4", 110))
		}, []string{"2 moves, the last K3 → K4, Wed 18 Nov: 10 000 before (Tue 17 Nov), 11 000 after (Thu 19 Nov), none missing"}},
		{"a move with no count before", larvae(10000), func(t *testing.T, d *desk.Desk) {
			at(t, d, 7.5, &model.Moved{From: "K2", To: "K3"})
			at(t, d, 6, live("K3", 60))
		}, []string{"none has a count before and after it, so what went over the side is not known"}},
		{"taken out", larvae(10000), func(t *testing.T, d *desk.Desk) {
			at(t, d, 8, live("K2", 100))
			at(t, d, 7, &model.Removed{Tank: "K2", Larvae: 400, Why: "sample"})
			at(t, d, 6, &model.Removed{Tank: "K2", Larvae: 20000, Why: "slip"})
			at(t, d, 5, &model.Ended{Tank: "K2", Why: model.Discarded, Larvae: larvae(10)})
		}, []string{
			"taken out K2, Fri 20 Nov: ended, discarded, 10 larvae",
			"K2, Thu 19 Nov: removed, slip, 20 000 larvae where 9 600 were thought to be *",
			"K2, Wed 18 Nov: removed, sample, 400 larvae",
			"alive     no share: all were taken out on purpose",
		}},
		{"no stocked number", nil, func(t *testing.T, d *desk.Desk) {}, []string{
			"share not known: the stocking has no number and not every tank was counted yet; number not known in the room",
		}},
		{"no stocked number, counted", nil, func(t *testing.T, d *desk.Desk) {
			at(t, d, 8, live("K2", 100))
			at(t, d, 6, live("K2", 80))
		}, []string{"80.0 % (5", "of the 10 000 of Tue 17 Nov, the first time all were counted: the stocking has no number"}},
		{"an old count", larvae(10000), func(t *testing.T, d *desk.Desk) {
			at(t, d, 8, live("K2", 100))
		}, []string{"the last count 8 d 0 h ago?"}},
		{"a part never counted", larvae(10000), func(t *testing.T, d *desk.Desk) {
			at(t, d, 8, &model.Moved{From: "K2", To: "K3", Share: larvae(0.5)})
			at(t, d, 6, live("K3", 40))
		}, []string{"; 9 000 in the room, the last count 6 d 0 h ago, a part of them never counted?", "9 000?"}},
		{"settled, nothing told", larvae(10000), func(t *testing.T, d *desk.Desk) {
			at(t, d, 8, live("K2", 40))
			at(t, d, 6, &model.Ended{Tank: "K2", Why: model.Settled})
		}, []string{"ENDED Thu 19 Nov, day 6: settled", "alive     40.0 % (28.6 to 54.5) of the 10 000 stocked", "K2, Thu 19 Nov: ended, settled, 4 000 (2 858 to 5 447) larvae"}},
		{"lost", larvae(10000), func(t *testing.T, d *desk.Desk) {
			at(t, d, 6, &model.Ended{Tank: "K2", Why: model.Lost})
		}, []string{"alive     0.0 % of the 10 000 stocked", "K2, Thu 19 Nov: ended, lost, 10 000 larvae"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s, d := counted(t, c.start)
			c.play(t, d)
			shows(t, frame(s), c.wants...)
		})
	}
}

// Every row of the table is a step of the model, the latest first, with its
// figures; so is every point of the chart.
func TestSurvivalTableAndChartAreTheModels(t *testing.T) {
	d, _ := desktest.Desk(t)
	endedBatch(t, d)
	s := New(d, "P-01").(*Batch)
	s.page = survivalPage
	b := s.now()
	steps := d.Ledger.SurvivalSeries(b).Steps
	var want []string
	var points int
	c := s.survivalChart(b)
	for _, step := range steps {
		if step.What == model.KindMoved {
			continue
		}
		if p := c.Points[points]; p.X != step.AgeDays || p.Y != step.Total.Value.X || p.Low != step.Total.Low.X || p.High != step.Total.High.X {
			t.Errorf("point %d = %+v; want %+v at day %g", points, p, step.Total, step.AgeDays)
		}
		points++
		want = append([]string{fmt.Sprintf("%s %s", step.Tank, step.What) + "|" + text.Decimal(step.Total.Value.X, 0)}, want...)
	}
	if points != len(c.Points) || len(c.Marks) != 1 || c.Marks[0].Name != "FELL" {
		t.Errorf("%d points for %d steps, marks %+v", len(c.Points), points, c.Marks)
	}
	var rows []string
	table := s.stepTable(b, d.Ledger.SurvivalSeries(b), 120)
	for _, f := range table[2:] {
		rows = append(rows, f.words)
	}
	if len(rows) != len(want) {
		t.Fatalf("%d rows for %d steps", len(rows), len(want))
	}
	for i, w := range want {
		entry, total, _ := strings.Cut(w, "|")
		entry = strings.Replace(entry, "ended", steps[len(steps)-1-i].Why, 1)
		if !strings.Contains(rows[i], entry) || !strings.Contains(rows[i], total) {
			t.Errorf("row %d = %q; want %q and %q in it", i, rows[i], entry, total)
		}
	}
	s.share = true
	if got, want := s.survivalChart(b).Points[1].Y, 100*steps[1].Alive.Share.Value.X; got != want {
		t.Errorf("in per cent %g; want %g", got, want)
	}
}

func TestPerCentByAKey(t *testing.T) {
	s, _ := shown(t, "P-03")
	typed(t, s, "3")
	shows(t, frame(s), "larvae in the room")
	typed(t, s, "a")
	shows(t, frame(s), "per cent alive", "100┤")
}

func TestRoundUp(t *testing.T) {
	for x, want := range map[float64]float64{0: 1, -3: 1, 1: 1, 1.1: 1.2, 9: 10, 100: 100, 101: 120, 24_900: 25_000, 0.31: 0.4} {
		if got := roundUp(x); got < want*(1-1e-12) || got > want*(1+1e-12) {
			t.Errorf("roundUp(%g) = %g; want %g", x, got, want)
		}
	}
}
