package chart

import (
	"slices"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"pgregory.net/rapid"
)

func TestStyledKeepsText(t *testing.T) {
	g := batch().Draw(60, 14, Block)
	runs := 0
	styled := g.Styled(func(c Class, s string) string {
		runs++
		if s == "" {
			t.Error("an empty run")
		}
		return "\x1b[3" + string('0'+rune(c%8)) + "m" + s + "\x1b[0m"
	})
	for y, line := range g.Lines() {
		if got := ansi.Strip(styled[y]); got != line {
			t.Errorf("row %d: %q, want %q", y, got, line)
		}
	}
	if runs < 2*len(g) || runs > 60*len(g)/2 {
		t.Errorf("%d runs of style in %d rows: not one a run", runs, len(g))
	}
}

func TestWrite(t *testing.T) {
	tests := []struct {
		name string
		at   int
		end  int
		text string
		want string
	}{
		{"plain", 1, 8, "day", "[.day....]"},
		{"cut at the end", 6, 99, "day", "[......da]"},
		{"cut at a column", 1, 3, "day", "[.da.....]"},
		{"wide", 1, 8, "幼生", "[.幼生...]"},
		{"a wide one that would be cut in half", 1, 4, "幼生", "[.幼.....]"},
		{"left of the grid", -2, 8, "day", "[........]"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			g := newGrid(8, 1)
			for x := range 8 {
				g.set(x, 0, ".", ClassAxis)
			}
			g.write(tt.at, 0, tt.end, tt.text, ClassLabel)
			if got := "[" + g.Lines()[0] + "]"; got != tt.want {
				t.Errorf("got %s, want %s", got, tt.want)
			}
		})
	}
}

// Whatever is written over whatever, no half of a wide character is left behind.
func TestOverwrite(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := newGrid(10, 1)
		for range rapid.IntRange(1, 12).Draw(t, "writes") {
			x := rapid.IntRange(-1, 10).Draw(t, "x")
			if rapid.Bool().Draw(t, "one cell") {
				g.set(x, 0, "│", ClassAxis)
			} else {
				g.write(x, 0, 10, rapid.SampledFrom([]string{"幼", "a幼生", "day", "幼a"}).Draw(t, "text"), ClassLabel)
			}
			if w := ansi.StringWidth(g.Lines()[0]); w != 10 {
				t.Fatalf("%d wide: %q", w, g.Lines()[0])
			}
		}
	})
}

// A row whose names join across cells shows question marks, as wide as it should be.
func TestSettle(t *testing.T) {
	g := newGrid(4, 1)
	g[0][0] = Cell{"│", ClassAxis}
	g[0][1] = Cell{"\u0301", ClassLabel} // a combining accent alone has no cell
	g[0][2] = Cell{"e", ClassLabel}
	if got := g.settle().Lines()[0]; got != "│?e " {
		t.Errorf("got %q", got)
	}
}

// has says whether any cell is of a class.
func has(g Grid, c Class) bool {
	return slices.ContainsFunc(g, func(row []Cell) bool {
		return slices.ContainsFunc(row, func(cell Cell) bool { return cell.Class == c })
	})
}

func TestClasses(t *testing.T) {
	for _, mode := range []Mode{Block, Braille, ASCII} {
		g := batch().Draw(60, 14, mode)
		for c := ClassBlank; c <= ClassPoint; c++ {
			if want := c != ClassNote; has(g, c) != want {
				t.Errorf("mode %d, class %d drawn: %v, want %v", mode, c, !want, want)
			}
		}
		g = twoLooks().Draw(60, 14, mode)
		if !has(g, ClassBar) || !has(g, ClassBarBefore) {
			t.Errorf("mode %d: bars of both samples are missing", mode)
		}
		if g := (Scatter{Empty: "no looks yet"}).Draw(40, 8, mode); !has(g, ClassNote) || !strings.Contains(strings.Join(g.Lines(), "\n"), "no looks yet") {
			t.Errorf("mode %d: nothing said of an empty chart", mode)
		}
	}
}
