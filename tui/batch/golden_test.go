package batch

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"drainboard/model"
	"drainboard/tui/keys"
	"drainboard/tui/screen"
	"drainboard/tui/screen/screentest"
	"drainboard/tui/theme"
)

var update = flag.Bool("update", false, "write the frames to testdata")

// golden holds the frame of a screen, its keys beneath, to testdata.
func golden(t *testing.T, s *Batch, name string, w, h int) {
	t.Helper()
	rows := s.View(w, h)
	screentest.Exact(t, rows, w, h)
	got := screentest.Join(append(rows, screen.Footer(s.Keys().With(keys.Everywhere()), s.desk.Theme, w)))
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

func TestGolden(t *testing.T) {
	for _, size := range [][2]int{{80, 23}, {120, 39}} {
		w, h := size[0], size[1]
		s, d := shown(t, "P-03")
		endedBatch(t, d)
		golden(t, s, "growth", w, h)
		typed(t, s, "b")
		golden(t, s, "growth-braille", w, h)
		typed(t, s, "b", "2")
		golden(t, s, "all", w, h)
		typed(t, s, "3")
		golden(t, s, "survival", w, h)
		typed(t, s, "4")
		golden(t, s, "story", w, h)
		typed(t, s, "p", "3")
		golden(t, s, "ended-survival", w, h)
		typed(t, s, "a", "end")
		golden(t, s, "ended-per-cent", w, h)
		typed(t, s, "1")
		golden(t, s, "ended-growth", w, h)
		typed(t, s, "p")
		golden(t, s, "young-growth", w, h)
		typed(t, s, "a", "3")
		golden(t, s, "young-survival", w, h)
		typed(t, s, "4")
		golden(t, s, "young-story", w, h)
	}
}

// The house's own rules: a corridor and a ready length near by, in ASCII.
func TestGoldenOfTheHouse(t *testing.T) {
	s, d := shown(t, "P-03")
	house := &d.Ledger.Room().House
	house.Growth.ReadyUM = 880
	house.Corridor = []model.GrowthBand{
		{FromDay: 0, LowUM: 280, HighUM: 400},
		{FromDay: 5, LowUM: 380, HighUM: 560},
		{FromDay: 10, LowUM: 500, HighUM: 720},
		{FromDay: 16, LowUM: 640, HighUM: 880},
	}
	golden(t, s, "house-growth", 80, 23)
	golden(t, s, "house-growth", 120, 39)
	d.Theme = theme.Bare(true)
	golden(t, s, "house-ascii", 80, 23)
	golden(t, s, "house-ascii", 120, 39)
}
