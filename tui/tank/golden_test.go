package tank

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"testing"
	"time"

	"drainboard/model"
	"drainboard/tui/desk/desktest"
	"drainboard/tui/keys"
	"drainboard/tui/screen"
	"drainboard/tui/screen/screentest"
)

var update = flag.Bool("update", false, "write the frames to testdata")

// golden holds the frame of a screen, its keys beneath, to testdata.
func golden(t *testing.T, s *Tank, name string, w, h int) {
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
		s, d, _ := tank(t, "K3")
		golden(t, s, "holding", w, h)
		typed(t, s, "c", "38 42 71", "enter", "10", "enter", "2000", "enter", "0 1 2")
		golden(t, s, "count", w, h)
		typed(t, s, "esc", "enter", "t", "31.9")
		golden(t, s, "temperature", w, h)
		typed(t, s, "enter", "e", "1", "enter", "enter")
		golden(t, s, "end", w, h)
		typed(t, s, "esc", "esc", "enter")
		desktest.Enter(t, d, 0, &model.Moved{From: "K3", To: "L2"})
		typed(t, s, "w")
		golden(t, s, "washed", w, h)
		d.Now = d.Now.Add(50 * time.Hour)
		k1, _, _ := tank(t, "K1")
		k1.desk.Now = d.Now
		golden(t, k1, "overdue", w, h)
		unknown, _, _ := tank(t, "K5")
		golden(t, unknown, "unknown", w, h)
	}
}
