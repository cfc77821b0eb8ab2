package chart

import (
	"strings"

	"github.com/charmbracelet/x/ansi"

	"drainboard/tui/text"
)

// Mode is the set of characters that a chart is drawn with.
type Mode int

const (
	Block   Mode = iota // box and block characters
	Braille             // dots, two by four in a cell: finer, where the font has them
	ASCII               // for terminals that have nothing else
)

// Class says what a cell shows.
type Class uint8

const (
	ClassBlank     Class = iota
	ClassAxis            // lines and ticks of the frame
	ClassLabel           // numbers at ticks, titles of axes
	ClassTitle           // the chart's own title, the names in its legend
	ClassNote            // what is said where there is nothing to draw
	ClassCorridor        // the room's expected range
	ClassLevel           // a horizontal line and its name
	ClassMark            // a vertical line, its name and its interval on the axis
	ClassForecast        // the part of a curve beyond the readings
	ClassCurve           // a curve through the readings
	ClassError           // the error bar of a point
	ClassPoint           // a point
	ClassBar             // a bar of the present sample, and of a sparkline
	ClassBarBefore       // a bar of the sample before
)

// Cell is one cell of a terminal. The second cell of a wide character has an empty Text.
type Cell struct {
	Text  string
	Class Class
}

// Grid is a drawn chart, row by row.
type Grid [][]Cell

// Lines gives the chart as plain text, one string a row.
func (g Grid) Lines() []string {
	return g.Styled(func(_ Class, s string) string { return s })
}

// Styled gives the chart row by row with style applied to each run of cells of one class. The
// style must not change the width of the text.
func (g Grid) Styled(style func(class Class, text string) string) []string {
	lines := make([]string, len(g))
	for y, row := range g {
		var line, run strings.Builder
		for x, cell := range row {
			if x > 0 && cell.Class != row[x-1].Class {
				line.WriteString(style(row[x-1].Class, run.String()))
				run.Reset()
			}
			run.WriteString(cell.Text)
		}
		if len(row) > 0 {
			line.WriteString(style(row[len(row)-1].Class, run.String()))
		}
		lines[y] = line.String()
	}
	return lines
}

func newGrid(width, height int) Grid {
	width, height = max(width, 0), max(height, 0)
	cells := make([]Cell, width*height)
	for i := range cells {
		cells[i].Text = " "
	}
	g := make(Grid, height)
	for y := range g {
		g[y] = cells[y*width : (y+1)*width : (y+1)*width]
	}
	return g
}

func (g Grid) inside(x, y int) bool {
	return y >= 0 && y < len(g) && x >= 0 && x < len(g[y])
}

// set puts a one-cell character; outside the grid it does nothing. The other half of a wide
// character that was there becomes a space.
func (g Grid) set(x, y int, glyph string, class Class) {
	if !g.inside(x, y) {
		return
	}
	row := g[y]
	if row[x].Text == "" {
		row[x-1].Text = " "
	}
	if x+1 < len(row) && row[x+1].Text == "" {
		row[x+1].Text = " "
	}
	row[x] = Cell{Text: glyph, Class: class}
}

func (g Grid) class(x, y int) Class {
	if !g.inside(x, y) {
		return ClassBlank
	}
	return g[y][x].Class
}

// label cleans a text from outside and puts it into the mode's characters.
func label(s string, mode Mode) string {
	s = text.Clean(s)
	if mode == ASCII {
		s = text.ASCII(s)
	}
	return s
}

// write puts an already cleaned text from x on, as much of it as lies before the column end and
// within the grid.
func (g Grid) write(x, y, end int, s string, class Class) {
	for s != "" {
		cluster, w := first(s)
		s = s[len(cluster):]
		if w < 1 || w > 2 {
			continue
		}
		if x+w > end || !g.inside(x, y) || !g.inside(x+w-1, y) {
			return
		}
		g.set(x, y, cluster, class)
		if w == 2 {
			g.set(x+1, y, " ", class)
			g[y][x+1].Text = "" // its second half
		}
		x += w
	}
}

// first gives the first character of a text and its cells as ansi.StringWidth counts them: ASCII
// each for itself, so that an accent laid on a letter is a character of its own.
func first(s string) (character string, cells int) {
	if s[0] < 0x80 {
		return s[:1], 1
	}
	character, cells = ansi.FirstGraphemeCluster(s, ansi.GraphemeWidth)
	if character == "" {
		return s[:1], 0
	}
	return character, cells
}

// settle makes sure of the width of each row. Characters of names may join across cells; a row
// that came out narrower or wider shows each of its foreign characters as a question mark.
func (g Grid) settle() Grid {
	for _, row := range g {
		var line strings.Builder
		for _, cell := range row {
			line.WriteString(cell.Text)
		}
		if ansi.StringWidth(line.String()) == len(row) {
			continue
		}
		for x, cell := range row {
			if named(cell.Class) && (len(cell.Text) != 1) {
				row[x].Text = "?"
			}
		}
	}
	return g
}

// named says whether cells of the class may hold text from outside.
func named(c Class) bool {
	switch c {
	case ClassLabel, ClassTitle, ClassNote, ClassLevel, ClassMark:
		return true
	}
	return false
}
