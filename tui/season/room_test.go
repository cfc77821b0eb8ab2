package season

import (
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"testing"
	"time"

	"drainboard/model"
	"drainboard/tui/desk"
	"drainboard/tui/desk/desktest"
	"drainboard/tui/screen/screentest"
)

var update = flag.Bool("update", false, "write the frames to testdata")

// brood is one invented batch: the waters differ by so many degrees at its moves,
// the share is alive after so many days.
type brood struct {
	name           string
	ago, days      int // hatched so many days ago, ended so many days later; 0 where it is here
	larvae, differ float64
	alive, umDay   float64
	golden         float64
	late           time.Duration // past due at each change
	ended          string
}

// broods are two years of an invented room. P-03 was lost, Été-2 never counted, Q-1 stocked
// without a number.
func broods() []brood {
	return []brood{
		{"P-25", 420, 24, 9000, 1.2, 0.62, 27, 88, 0, model.Settled},
		{"P-01", 200, 26, 9400, 0.6, 0.71, 26.4, 91, 0, model.Settled},
		{"P-02", 170, 25, 12800, 1.9, 0.55, 25.1, 80, 3 * time.Hour, model.Settled},
		{"P-03", 140, 12, 11000, 4.6, 0.21, 17.5, 42, 8 * time.Hour, model.Lost},
		{"P-04", 112, 27, 8000, 1.1, 0.66, 25.8, 85, 0, model.Settled},
		{"Été-2", 84, 24, 9900, 2.4, 0, 23.9, 76, time.Hour, model.Discarded},
		{"Q-1", 56, 26, 0, 2.8, 0.44, 22.7, 70, 2 * time.Hour, model.Settled},
		{"P-05", 18, 0, 10200, 1.4, 0.74, 26.1, 83, 0, ""},
	}
}

func num(x float64) *float64 { return &x }

// play enters what happened to a batch, in K1 and K2.
func play(t testing.TB, d *desk.Desk, b brood) {
	t.Helper()
	now := d.Now
	start := now.AddDate(0, 0, -b.ago)
	enter := func(after time.Duration, facts ...model.Fact) {
		if at := start.Add(after); !at.After(now) {
			if _, err := d.EnterAt(at, facts...); err != nil {
				t.Fatalf("%s: %v", b.name, err)
			}
		}
	}
	const day = 24 * time.Hour
	stocked := &model.Stocked{Tank: "K1", Batch: b.name, Hatched: model.Hatched{Date: model.DayOf(start, d.Ledger.Room().Zone)}}
	if b.larvae > 0 {
		stocked.Larvae = num(b.larvae)
	}
	enter(-time.Hour, &model.Washed{Tank: "K1"}, &model.Filled{Tank: "K1"})
	enter(0, stocked)
	at, tanks, last := time.Duration(0), [2]string{"K1", "K2"}, b.days
	if last == 0 {
		last = b.ago
	}
	for n := 1; ; n++ {
		at += 2*day + b.late
		if at >= time.Duration(last)*day {
			break
		}
		enter(at-time.Hour, &model.Washed{Tank: tanks[1]}, &model.Filled{Tank: tanks[1]})
		enter(at, &model.Moved{From: tanks[0], To: tanks[1], FromCelsius: num(27.9), ToCelsius: num(math.Round(10*(27.9-b.differ-0.1*float64(n%3))) / 10)})
		tanks[0], tanks[1] = tanks[1], tanks[0]
		age := at.Hours() / 24
		mean := 300 + b.umDay*age
		enter(at+time.Hour, &model.Look{Tank: tanks[0], Golden: num(b.golden + float64(n%5))},
			&model.Sizes{Tank: tanks[0], UM: []float64{math.Round(mean * 0.96), math.Round(mean*1.01 + float64(n%4)), math.Round(mean * 1.04)}})
		if n%2 == 0 && b.alive > 0 {
			left := math.Max(b.larvae, 9000) * math.Pow(b.alive, age/float64(last))
			live := int(left / 200)
			enter(at+2*time.Hour, &model.Count{Tank: tanks[0], Live: []int{live, live + 2, live - 1}, SampleML: 10, HoldingML: 2000})
		}
	}
	if b.ended != "" {
		enter(time.Duration(b.days)*day, &model.Removed{Tank: tanks[0], Larvae: 150, Why: "sample"}, &model.Ended{Tank: tanks[0], Why: b.ended})
	}
}

// seasons is a desk of a room with two years of batches.
func seasons(t testing.TB) *desk.Desk {
	t.Helper()
	d, _ := desktest.Empty(t)
	for _, b := range broods() {
		play(t, d, b)
	}
	return d
}

func opened(t testing.TB) *Season {
	t.Helper()
	return New(seasons(t)).(*Season)
}

func frame(s *Season) string { return screentest.Join(s.View(120, 39)) }

// golden holds the frame of a screen to testdata.
func golden(t *testing.T, s *Season, name string, w, h int) {
	t.Helper()
	rows := s.View(w, h)
	screentest.Exact(t, rows, w, h)
	got := screentest.Join(rows)
	file := filepath.Join("testdata", fmt.Sprintf("%s-%dx%d.txt", name, w, h))
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("%s\ngot\n%s\nwant\n%s", file, got, want)
	}
}
