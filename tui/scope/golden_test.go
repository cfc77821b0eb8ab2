package scope

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"drainboard/tui/keys"
	"drainboard/tui/screen"
	"drainboard/tui/screen/screentest"
)

var update = flag.Bool("update", false, "write the frames to testdata")

// framed holds the frame of a screen, its keys beneath, to testdata.
func framed(t *testing.T, s *Scope, name string, w, h int) {
	t.Helper()
	rows := s.View(w, h-1)
	screentest.Exact(t, rows, w, h-1)
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
	for _, size := range [][2]int{{80, 24}, {120, 40}} {
		w, h := size[0], size[1]
		s, _, _ := scope(t, "K3")
		framed(t, s, "begun", w, h)
		for _, um := range []int{702, 745, 731, 719, 760, 688, 739, 752, 1480, 726, 744} {
			typed(t, s, fmt.Sprint(um), "enter")
		}
		typed(t, s, "7")
		framed(t, s, "reading", w, h)
		typed(t, s, "backspace", "*")
		framed(t, s, "figures", w, h)
		typed(t, s, "enter", "6", "enter", "18/25")
		framed(t, s, "look", w, h)
		typed(t, s, "enter", "1", "enter", "5/25", "enter", "enter")
		framed(t, s, "next", w, h)
	}
}
