package inventory

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"drainboard/tui/desk/desktest"
	"drainboard/tui/screen/screentest"
)

var update = flag.Bool("update", false, "write the frames to testdata")

// golden holds the frame of a screen to testdata.
func golden(t *testing.T, s *Inventory, name string, w, h int) {
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

func TestGolden(t *testing.T) {
	for _, size := range [][2]int{{80, 23}, {120, 39}} {
		w, h := size[0], size[1]
		s, d, _ := opened(t)
		golden(t, s, "empty", w, h)
		typed(t, s, wholeRoom[:len(wholeRoom)-7]...)
		typed(t, s, "y16")
		golden(t, s, "typing", w, h)
		typed(t, s, "*")
		golden(t, s, "problem", w, h)
		typed(t, s, "00")
		typed(t, s, wholeRoom[len(wholeRoom)-6:]...)
		golden(t, s, "review", w, h)
		d.Keeper = &failing{left: 2}
		typed(t, s, "enter")
		golden(t, s, "failed", w, h)
		d, _ = desktest.Desk(t)
		golden(t, New(d).(*Inventory), "half-known", w, h)
	}
	s, _, _ := opened(t)
	typed(t, s, wholeRoom[:14]...)
	golden(t, s, "typing", 40, 10)
}
