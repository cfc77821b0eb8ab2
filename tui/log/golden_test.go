package log

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

// golden holds the frame of a screen, its keys beneath, to testdata.
func golden(t *testing.T, l *Log, name string, w, h int) {
	t.Helper()
	rows := l.View(w, h-1)
	screentest.Exact(t, rows, w, h-1)
	got := screentest.Join(append(rows, screen.Footer(l.Keys().With(keys.Everywhere()), l.desk.Theme, w)))
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
		l, _, _ := amended(t)
		golden(t, l, "list", w, h)
		typed(t, l, "s", "K3 look")
		golden(t, l, "search", w, h)
		typed(t, l, "esc", "down", "down", "down", "enter")
		golden(t, l, "entry", w, h)
		typed(t, l, "e", "down", "down", "backspace", "6")
		golden(t, l, "correct", w, h)
		typed(t, l, "esc", "enter", "x")
		golden(t, l, "void", w, h)
		typed(t, l, "esc", "esc", "+")
		golden(t, l, "kinds", w, h)
		typed(t, l, "down", "enter")
		golden(t, l, "late", w, h)
	}
}
