package batch

import (
	"fmt"
	"strings"
	"testing"

	"drainboard/model"
	"drainboard/tui/chart"
	"drainboard/tui/desk"
	"drainboard/tui/desk/desktest"
)

// manyBatchesIn gives the room so many batches one after the other through tank K2, each
// with lengths of two days.
func manyBatchesIn(t testing.TB, d *desk.Desk, n int) {
	t.Helper()
	for i := range n {
		daysAgo := float64(n-i)*3 + 20
		day := d.Now.AddDate(0, 0, -int(daysAgo)-2).Format("2006-01-02")
		hatched, err := model.ParseHatched(day)
		if err != nil {
			t.Fatal(err)
		}
		at(t, d, daysAgo, &model.Stocked{Tank: "K2", Batch: fmt.Sprintf("S-%02d", i+1), Hatched: hatched})
		at(t, d, daysAgo-0.1, &model.Sizes{Tank: "K2", UM: []float64{300 + 10*float64(i), 310 + 10*float64(i)}})
		at(t, d, daysAgo-2.1, &model.Sizes{Tank: "K2", UM: []float64{350 + 10*float64(i), 360 + 10*float64(i)}})
		if i < n-1 {
			at(t, d, daysAgo-2.5, &model.Ended{Tank: "K2", Why: model.Lost})
			at(t, d, daysAgo-2.6, &model.Washed{Tank: "K2"})
			at(t, d, daysAgo-2.7, &model.Filled{Tank: "K2"})
		}
	}
}

// The letter of each batch stands where a chart of its points alone has them.
func TestLettersStandAtTheirPoints(t *testing.T) {
	for _, mode := range []bool{false, true} {
		s, d := shown(t, "P-03")
		endedBatch(t, d)
		s.dots = mode
		b := s.now()
		drawn := s.allChart(b, 79, 20)
		base := s.allBase(b)
		for i, other := range s.order() {
			alone := chart.Scatter{X: base.X, Y: base.Y, Title: base.Title, Points: points(s.of(other).looks)}
			want := letter(i)
			if other == b {
				want = "A"
			}
			n := 0
			for y, row := range alone.Draw(79, 20, s.mode()) {
				for x, cell := range row {
					if cell.Class != chart.ClassPoint {
						continue
					}
					n++
					if got := drawn[y][x].Text; got != want && got != several {
						t.Errorf("%s at %d, %d: %q; want %q", other.Name, x, y, got, want)
					}
				}
			}
			if looks := len(s.of(other).looks); n > looks || n == 0 && looks > 0 {
				t.Errorf("%s: %d letters for %d days of lengths", other.Name, n, looks)
			}
		}
		if text := strings.Join(drawn.Lines(), "\n"); strings.Contains(text, "●") {
			t.Errorf("a point without its letter:\n%s", text)
		}
	}
}

// Two batches of the same lengths at the same age share their places.
func TestSharedPlacesAreMarked(t *testing.T) {
	d, _ := desktest.Empty(t)
	hatched, err := model.ParseHatched("2026-11-13")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range [][2]string{{"K1", "A-1"}, {"K2", "A-2"}} {
		at(t, d, 8, &model.Stocked{Tank: c[0], Batch: c[1], Hatched: hatched})
		at(t, d, 6, &model.Sizes{Tank: c[0], UM: []float64{400, 420}})
		at(t, d, 4, &model.Sizes{Tank: c[0], UM: []float64{460, 480}})
	}
	s := New(d, "A-1").(*Batch)
	n := 0
	for _, row := range s.allChart(s.now(), 79, 20) {
		for _, cell := range row {
			if cell.Text == several && cell.Class == chart.ClassPoint {
				n++
			}
		}
	}
	if n != 2 {
		t.Errorf("%d places shared by both; want 2", n)
	}
}

// With more batches than letters those in the room and the latest have one, and
// the others are named all the same.
func TestMoreBatchesThanLetters(t *testing.T) {
	d, _ := desktest.Empty(t)
	manyBatchesIn(t, d, 30)
	s := New(d, "").(*Batch)
	if s.name != "S-30" || len(s.order()) != 30 || s.order()[1].Name != "S-29" {
		t.Fatalf("first %s, then %s of %d; want S-30, then the latest ended", s.name, s.order()[1].Name, len(s.order()))
	}
	s.page = allPage
	shows(t, frame(s), "►  A  S-30", "   z  S-05", "4 batches that ended earlier have no letter; p goes to the earliest of them.")
	hides(t, frame(s), "S-04")
	typed(t, s, "p")
	shows(t, frame(s), "►     S-01", "batch 30 of 30")
}

func TestBatchesSideBySide(t *testing.T) {
	s, d := shown(t, "P-03")
	endedBatch(t, d)
	typed(t, s, "2")
	f := s.of(s.now())
	best := f.growth.Best()
	in, _ := best.PerDayInterval(best.LastAgeDay)
	shows(t, frame(s),
		"►  A  P-03          day 18 in K3          731 µm  "+fmt.Sprintf("%+.1f µm/d (%.1f to %.1f)", best.Slope, in.Low, in.High),
		"ready "+s.dayAt(s.now(), f.ready.AgeDays),
		"b  P-05          day 4 in K1                   no lengths yet",
		"c  P-01          ended day 28          592 µm")
}

func BenchmarkAllOf26(b *testing.B) {
	d, _ := desktest.Empty(b)
	manyBatchesIn(b, d, 30)
	s := New(d, "").(*Batch)
	s.page = allPage
	b.ReportAllocs()
	for b.Loop() {
		s.View(120, 39)
	}
}
