package chart

import (
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the drawn charts to testdata")

// batch is an invented batch on its way to the ready length.
func batch() Scatter {
	line := func(age float64) float64 { return 304 + 24.3*age }
	return Scatter{
		Title: "shell length, um", Names: Names{Points: "look", Curve: "line", Forecast: "forecast", Corridor: "house"},
		X: Axis{Title: "day", Whole: true},
		Points: []Point{
			{2, 352, 340, 364},
			{4, 401, 385, 417},
			{6, 448, 430, 466},
			{8, 505, 480, 530},
			{10, 540, 512, 568},
			{12, 602, 570, 634},
			{14, 640, 600, 680},
		},
		Curves:   []Curve{{At: line, From: 2, To: 14}, {At: line, From: 14, To: 28, Forecast: true}},
		Corridor: []Span{{0, 6, 280, 420}, {6, 12, 400, 560}, {12, 18, 520, 700}, {18, math.Inf(1), 640, 950}},
		Levels:   []Level{{900, "ready 900"}},
		Marks:    []Mark{{24.5, 23, 27, "8 Dec"}},
	}
}

func twoLooks() Histogram {
	return Histogram{
		Title: "% of readings", X: Axis{Title: "um"}, LowEdge: 380, BinWidth: 20,
		Before: []int{1, 2, 4, 6, 5, 3, 2, 1, 0, 0, 0, 0, 0}, BeforeName: "last 24",
		Today: []int{0, 0, 1, 1, 2, 3, 5, 6, 5, 3, 2, 1, 1}, TodayName: "today 30",
	}
}

func oneLook() Histogram {
	h := twoLooks()
	h.Title, h.Before, h.BeforeName = "readings", nil, ""
	return h
}

func temperatures() Sparkline {
	return Sparkline{Values: []float64{27.1, 27.3, 27.9, 28.4, 28.1, 27.2, math.NaN(), 26.8, 26.2, 27, 29, 30}}
}

type drawing interface {
	Draw(width, height int, mode Mode) Grid
}

func TestGolden(t *testing.T) {
	charts := []struct {
		name  string
		chart drawing
		sizes [][2]int
	}{
		{"scatter", batch(), [][2]int{{60, 14}, {100, 28}, {40, 10}, {24, 7}, {9, 3}, {3, 2}}},
		{"two", twoLooks(), [][2]int{{60, 14}, {100, 28}, {24, 7}, {12, 5}}},
		{"one", oneLook(), [][2]int{{60, 14}, {30, 8}, {8, 3}}},
		{"spark", temperatures(), [][2]int{{14, 1}, {14, 3}, {5, 1}}},
		{"empty", Scatter{X: Axis{Title: "day"}, Empty: "no looks yet"}, [][2]int{{60, 14}, {20, 4}}},
		{"expected", Scatter{Corridor: batch().Corridor, X: Axis{Low: 0, High: 28, Title: "day"}, Empty: "no looks yet"}, [][2]int{{60, 14}}},
		{"lone", Scatter{Points: []Point{{2, 352, 340, 364}}, X: Axis{Title: "day", Whole: true}}, [][2]int{{40, 10}}},
	}
	for _, c := range charts {
		for mode, suffix := range map[Mode]string{Block: "block", Braille: "braille", ASCII: "ascii"} {
			name := c.name + "-" + suffix
			t.Run(name, func(t *testing.T) {
				var drawn strings.Builder
				for _, size := range c.sizes {
					fmt.Fprintf(&drawn, "%d x %d\n", size[0], size[1])
					for _, line := range c.chart.Draw(size[0], size[1], mode).Lines() {
						fmt.Fprintf(&drawn, "[%s]\n", line)
					}
				}
				compare(t, filepath.Join("testdata", name+".txt"), drawn.String())
			})
		}
	}
}

func compare(t *testing.T, file, got string) {
	t.Helper()
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatalf("%v: draw it with go test ./tui/chart -update", err)
	}
	if got != string(want) {
		t.Errorf("%s differs; drawn:\n%s", file, got)
	}
}
