package chart

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// find gives the places of a class as column and row of the grid.
func find(g Grid, c Class) (at [][2]int) {
	for y, row := range g {
		for x, cell := range row {
			if cell.Class == c {
				at = append(at, [2]int{x, y})
			}
		}
	}
	return at
}

func draws(t *testing.T, chart drawing, width, height int, mode Mode, want ...string) {
	t.Helper()
	got := chart.Draw(width, height, mode).Lines()
	if !slices.Equal(got, want) {
		t.Errorf("drawn:\n%s\nwant:\n%s", strings.Join(got, "|\n"), strings.Join(want, "|\n"))
	}
}

// By hand: 11 columns of days 0 to 10 and 5 rows of 0 to 40 um.
func TestScatterByHand(t *testing.T) {
	s := Scatter{
		X: Axis{Low: 0, High: 10, Whole: true}, Y: Axis{Low: 0, High: 40},
		Points: []Point{{0, 0, 0, 0}, {5, 20, 10, 30}, {10, 40, 40, 40}},
	}
	draws(
		t, s, 14, 7, Block,
		"40┤          ●",
		"  │     ┬     ",
		"20┤     ●     ",
		"  │     ┴     ",
		" 0┤●          ",
		"  └┬────┬────┬",
		"   0    5   10",
	)
	draws(
		t, s, 14, 7, ASCII,
		"40+          o",
		"  |     |     ",
		"20+     o     ",
		"  |     |     ",
		" 0+o          ",
		"  ++----+----+",
		"   0    5   10",
	)
}

func TestScatterCurveByHand(t *testing.T) {
	axes := Scatter{X: Axis{Low: 0, High: 10}, Y: Axis{Low: 0, High: 40}}
	tests := []struct {
		name  string
		curve Curve
		mode  Mode
		want  []string // the plot
	}{
		{"rising by a row at a time", Curve{At: func(x float64) float64 { return 4 * x }, From: 0, To: 10}, Block, []string{
			"         ╭─",
			"       ╭─╯ ",
			"    ╭──╯   ",
			"  ╭─╯      ",
			"──╯        ",
		}},
		{"falling at once", Curve{At: func(x float64) float64 { return 40 * math.Round(1-x/10) }, From: 0, To: 10}, Block, []string{
			"──────╮    ",
			"      │    ",
			"      │    ",
			"      │    ",
			"      ╰────",
		}},
		{"forecast beyond day 5", Curve{At: func(x float64) float64 { return 4 * x }, From: 5, To: 10, Forecast: true}, Block, []string{
			"         ··",
			"       ··  ",
			"     ··    ",
			"           ",
			"           ",
		}},
		{"in ASCII", Curve{At: func(x float64) float64 { return 4 * x }, From: 0, To: 10}, ASCII, []string{
			"          -",
			"        -/ ",
			"     --/   ",
			"   -/      ",
			"--/        ",
		}},
		{"out of the range and back", Curve{At: func(x float64) float64 { return 60 - 12*math.Abs(x-5) }, From: 0, To: 10}, Block, []string{
			"   ╭╯  ╰╮  ",
			"   │    │  ",
			"  ╭╯    ╰╮ ",
			" ╭╯      ╰╮",
			"─╯        ╰",
		}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			s := axes
			s.Curves = []Curve{tt.curve}
			var got []string
			for _, line := range s.Draw(14, 7, tt.mode).Lines()[:5] {
				got = append(got, string([]rune(line)[3:]))
			}
			if !slices.Equal(got, tt.want) {
				t.Errorf("drawn:\n%s\nwant:\n%s", strings.Join(got, "|\n"), strings.Join(tt.want, "|\n"))
			}
		})
	}
}

// A point whose value has a label stands in the row of that label, in every mode.
func TestPointsStandAtTheirLabels(t *testing.T) {
	for _, mode := range []Mode{Block, Braille, ASCII} {
		for height := 6; height < 40; height++ {
			for _, value := range []float64{400, 600, 800} {
				s := batch()
				s.Points = []Point{{4, value, 0, 0}}
				g := s.Draw(70, height, mode)
				at := find(g, ClassPoint)
				at = slices.DeleteFunc(at, func(p [2]int) bool { return p[1] == 0 }) // in the legend
				if len(at) != 1 {
					t.Fatalf("mode %d, height %d: points at %v", mode, height, at)
				}
				for y, line := range g.Lines() {
					labelled := strings.TrimSpace(string([]rune(line)[:4])) == strconv.Itoa(int(value))
					if labelled && y != at[0][1] {
						t.Errorf("mode %d, height %d: %g stands in row %d, its label in row %d", mode, height, value, at[0][1], y)
					}
				}
			}
		}
	}
}

func TestCorridorFollowsItsBands(t *testing.T) {
	for _, mode := range []Mode{Block, Braille, ASCII} {
		s := Scatter{
			X: Axis{Low: 0, High: 20}, Y: Axis{Low: 0, High: 100},
			Corridor: []Span{{5, 10, 20, 40}, {10, math.Inf(1), 60, 80}},
		}
		f := newFrame(60, 30, mode, false)
		g := s.Draw(60, 30, mode)
		f.setY(span{0, 100}, s.Y.ticks(span{0, 100}, 10, mode), f.row)
		f.x = span{0, 20}
		cells := find(g, ClassCorridor)
		if len(cells) < 100 {
			t.Fatalf("mode %d: %d cells of corridor", mode, len(cells))
		}
		for _, c := range cells {
			x := f.x.at(float64(c[0]-f.left), f.cols)
			y := f.y.at(float64(f.rows-1-(c[1]-f.top)), f.rows)
			low, high := 20.0, 40.0
			if x >= 9.9 {
				low, high = 60, 80
			}
			if x < 4.8 || y < low-2 || y > high+2 {
				t.Errorf("mode %d: shaded at day %.1f, %.1f um", mode, x, y)
			}
		}
	}
}

// A band holds up to, not at, the day on which the next begins.
func TestCorridorAt(t *testing.T) {
	s := batch()
	for x, want := range map[float64]float64{0: 280, 5.9: 280, 6: 400, 12: 520, 400: 640} {
		if b, found := s.corridorAt(x); !found || b.Low != want {
			t.Errorf("day %g: band from %g um, want %g", x, b.Low, want)
		}
	}
	if _, found := s.corridorAt(-0.1); found {
		t.Error("a band before the first")
	}
}

// What lies outside a fixed horizontal range does not stretch the vertical one.
func TestRangeOfWhatShows(t *testing.T) {
	s := Scatter{X: Axis{Low: 0, High: 10}, Points: []Point{{2, 300, 0, 0}, {8, 400, 0, 0}}}
	want := s.Draw(50, 12, Block).Lines()
	s.Points = append(s.Points, Point{11, 4000, 0, 9000})
	s.Corridor = []Span{{12, 20, 5000, 6000}}
	s.Curves = []Curve{{At: func(x float64) float64 { return 1000 * x }, From: 10.5, To: 14}}
	if got := s.Draw(50, 12, Block).Lines(); !slices.Equal(got, want) {
		t.Errorf("drawn:\n%s\nwant:\n%s", strings.Join(got, "|\n"), strings.Join(want, "|\n"))
	}
}

func TestMarkInterval(t *testing.T) {
	tests := []struct {
		name      string
		low, high float64
		want      string
	}{
		{"bounded", 4, 8, "└────━━┻━━──"},
		{"open at the end", 4, math.Inf(1), "└────━━┻━━━━"},
		{"none", 0, 0, "└──────┻────"},
		{"not a number", math.NaN(), 8, "└──────┻────"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			s := Scatter{
				X: Axis{Low: 0, High: 10, Format: func(float64) string { return "" }}, Y: Axis{Low: 0, High: 1},
				Points: []Point{{0, 0, 0, 0}}, Marks: []Mark{{6, tt.low, tt.high, "ready"}},
			}
			lines := s.Draw(13, 6, Block).Lines()
			if got := strings.TrimSpace(strings.ReplaceAll(lines[4], "┬", "─")); got != tt.want {
				t.Errorf("got %s, want %s", got, tt.want)
			}
		})
	}
}

// A name never covers a point, a curve, an error bar or another name.
func TestNamesCoverNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyScatter(t)
		width, height, mode := anySize(t)
		named := s.Draw(width, height, mode)
		s.Levels, s.Marks = slices.Clone(s.Levels), slices.Clone(s.Marks)
		for i := range s.Levels {
			s.Levels[i].Name = ""
		}
		for i := range s.Marks {
			s.Marks[i].Name = ""
		}
		bare := s.Draw(width, height, mode)
		for y := range bare {
			for x, cell := range bare[y] {
				switch cell.Class {
				case ClassPoint, ClassCurve, ClassForecast, ClassError, ClassNote, ClassAxis, ClassMark:
					settled := cell.Class == ClassNote && named[y][x].Text == "?" // a name joined across cells
					if named[y][x] != cell && !settled {
						t.Fatalf("%+v at %d, %d became %+v", cell, x, y, named[y][x])
					}
				}
			}
		}
	})
}

func TestLeavesOutWhatIsNoNumber(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	clean := Scatter{Points: []Point{{2, 300, 290, 310}, {4, 350, 340, 360}}}
	dirty := clean
	dirty.Points = append(slices.Clone(clean.Points), Point{nan, 1, 0, 0}, Point{3, nan, 0, 900}, Point{3, inf, 0, 0}, Point{-inf, 3, 0, 0}, Point{3, 1e13, 0, 0})
	for _, mode := range []Mode{Block, Braille, ASCII} {
		if got, want := dirty.Draw(50, 12, mode).Lines(), clean.Draw(50, 12, mode).Lines(); !slices.Equal(got, want) {
			t.Errorf("drawn:\n%s\nwant:\n%s", strings.Join(got, "|\n"), strings.Join(want, "|\n"))
		}
	}
}

// Two numbers that would share a row are never written over each other.
func TestLabelsInOneRow(t *testing.T) {
	s := Scatter{Points: []Point{{0, -800, 0, 0}, {1, 900, 0, 0}}}
	draws(
		t, s, 16, 2, Block,
		"    0┤         ●",
		"-1000┤●         ",
	)
}
