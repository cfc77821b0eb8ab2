package chart

import (
	"math"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"pgregory.net/rapid"
)

// exact fails unless the grid and its text have exactly the size asked for.
func exact(t interface{ Fatalf(string, ...any) }, g Grid, width, height int) {
	width, height = max(width, 0), max(height, 0)
	if len(g) != height {
		t.Fatalf("%d rows, want %d", len(g), height)
	}
	for y, line := range g.Lines() {
		if len(g[y]) != width {
			t.Fatalf("row %d has %d cells, want %d", y, len(g[y]), width)
		}
		if w := ansi.StringWidth(line); w != width {
			t.Fatalf("row %d is %d wide, want %d: %q", y, w, width, line)
		}
	}
}

// numbers that break arithmetic, beside ordinary ones.
func anyNumber() *rapid.Generator[float64] {
	return rapid.OneOf(
		rapid.Float64Range(0, 1200),
		rapid.Float64Range(-5, 40),
		rapid.Float64(),
		rapid.SampledFrom([]float64{0, 1, -1, math.NaN(), math.Inf(1), math.Inf(-1), 1e12, -1e12, 1e-300, 1e300, 5e-324, 300, 300.0000001}),
	)
}

// names that break widths, beside ordinary ones.
func anyName() *rapid.Generator[string] {
	return rapid.OneOf(
		rapid.SampledFrom([]string{"", "day", "µm", "8 Dec", "幼生", "e\u0301", "\u0301x", "🇧🇸", "🇧", "👩‍🔬 x", "\x1b[31mred", "a\tb\nc", "\xeb0", "ᄀ", "ᅡ", "ａ", "\u202ex"}),
		rapid.String(),
	)
}

func anyAxis(t *rapid.T) Axis {
	a := Axis{Title: anyName().Draw(t, "axis")}
	if rapid.Bool().Draw(t, "fixed") {
		a.Low, a.High = anyNumber().Draw(t, "low"), anyNumber().Draw(t, "high")
	}
	a.Whole = rapid.Bool().Draw(t, "whole")
	if rapid.Bool().Draw(t, "format") {
		word := anyName().Draw(t, "word")
		a.Format = func(float64) string { return word }
	}
	return a
}

func anyScatter(t *rapid.T) Scatter {
	number, name := anyNumber(), anyName()
	s := Scatter{
		Title: name.Draw(t, "title"), Empty: name.Draw(t, "empty"),
		Names: Names{name.Draw(t, "n1"), name.Draw(t, "n2"), name.Draw(t, "n3"), name.Draw(t, "n4")},
		X:     anyAxis(t), Y: anyAxis(t),
		Points: rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Point {
			return Point{number.Draw(t, "x"), number.Draw(t, "y"), number.Draw(t, "low"), number.Draw(t, "high")}
		}), 0, 5).Draw(t, "points"),
		Corridor: rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Span {
			return Span{number.Draw(t, "from"), number.Draw(t, "to"), number.Draw(t, "low"), number.Draw(t, "high")}
		}), 0, 3).Draw(t, "corridor"),
		Levels: rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Level {
			return Level{number.Draw(t, "y"), name.Draw(t, "name")}
		}), 0, 2).Draw(t, "levels"),
		Marks: rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Mark {
			return Mark{number.Draw(t, "x"), number.Draw(t, "low"), number.Draw(t, "high"), name.Draw(t, "name")}
		}), 0, 2).Draw(t, "marks"),
	}
	for range rapid.IntRange(0, 2).Draw(t, "curves") {
		a, b := number.Draw(t, "a"), number.Draw(t, "b")
		s.Curves = append(s.Curves, Curve{
			At:   func(x float64) float64 { return a + b*x },
			From: number.Draw(t, "from"), To: number.Draw(t, "to"), Forecast: rapid.Bool().Draw(t, "forecast"),
		})
	}
	return s
}

func anyHistogram(t *rapid.T) Histogram {
	counts := rapid.SliceOfN(rapid.OneOf(rapid.IntRange(0, 30), rapid.Int()), 0, 40)
	h := Histogram{
		Title: anyName().Draw(t, "title"), X: anyAxis(t), Empty: anyName().Draw(t, "empty"),
		LowEdge: anyNumber().Draw(t, "edge"), BinWidth: anyNumber().Draw(t, "width"),
		Today: counts.Draw(t, "today"), TodayName: anyName().Draw(t, "today's name"), BeforeName: anyName().Draw(t, "before's name"),
	}
	if rapid.Bool().Draw(t, "two") {
		h.Before = counts.Draw(t, "before")
	}
	if rapid.Bool().Draw(t, "only before") {
		h.Today = nil
	}
	return h
}

func anySparkline(t *rapid.T) Sparkline {
	return Sparkline{
		Values: rapid.SliceOfN(anyNumber(), 0, 60).Draw(t, "values"),
		Low:    anyNumber().Draw(t, "low"), High: anyNumber().Draw(t, "high"),
	}
}

func anyDrawing(t *rapid.T) drawing {
	switch rapid.IntRange(0, 3).Draw(t, "chart") {
	case 0:
		return anyHistogram(t)
	case 1:
		return anySparkline(t)
	}
	return anyScatter(t)
}

// sizeOf draws the mode and a size; now and then one below zero or far too large.
func anySize(t *rapid.T) (width, height int, mode Mode) {
	width = rapid.OneOf(rapid.IntRange(1, 120), rapid.IntRange(-1, 12), rapid.IntRange(200, 400)).Draw(t, "width")
	height = rapid.OneOf(rapid.IntRange(1, 30), rapid.IntRange(-1, 6), rapid.IntRange(60, 90)).Draw(t, "height")
	return width, height, rapid.SampledFrom([]Mode{Block, Braille, ASCII}).Draw(t, "mode")
}

func sizeHolds(t *rapid.T) {
	chart := anyDrawing(t)
	width, height, mode := anySize(t)
	g := chart.Draw(width, height, mode)
	exact(t, g, width, height)
	if mode != ASCII {
		return
	}
	for _, line := range g.Lines() {
		for _, r := range line {
			if r < ' ' || r > '~' {
				t.Fatalf("%q is not ASCII in %q", r, line)
			}
		}
	}
}

func TestExactSize(t *testing.T) { rapid.Check(t, sizeHolds) }

func FuzzExactSize(f *testing.F) { f.Fuzz(rapid.MakeFuzz(sizeHolds)) }

// The charts that people see, at every size of a terminal.
func TestEverySize(t *testing.T) {
	for _, chart := range []drawing{batch(), twoLooks(), oneLook(), temperatures(), Scatter{}, Histogram{}, Sparkline{}} {
		for _, mode := range []Mode{Block, Braille, ASCII} {
			for width := 0; width <= 220; width += 1 + width/6 {
				for height := 0; height <= 70; height += 1 + height/6 {
					exact(t, chart.Draw(width, height, mode), width, height)
				}
			}
		}
	}
}

func TestHugeSize(t *testing.T) {
	exact(t, batch().Draw(1000, 300, Braille), 1000, 300)
	exact(t, twoLooks().Draw(1000, 300, Block), 1000, 300)
	exact(t, temperatures().Draw(1000, 300, Block), 1000, 300)
}

func BenchmarkScatter(b *testing.B) {
	for b.Loop() {
		batch().Draw(100, 28, Block).Lines()
	}
}

func BenchmarkScatterBraille(b *testing.B) {
	for b.Loop() {
		batch().Draw(200, 60, Braille).Lines()
	}
}
