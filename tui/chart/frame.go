package chart

import (
	"github.com/charmbracelet/x/ansi"
)

// frame is a grid with its axes laid out: what is left for the plot, and the ranges it shows.
type frame struct {
	grid Grid
	glyphs
	mode       Mode
	left, top  int // first column and row of the plot
	cols, rows int // of the plot, at least 1 where the grid has a cell
	axisCol    int // -1 where there is no room for it
	axisRow    int
	labelRow   int
	titleRow   int
	x, y       span
}

// Rows and columns below which parts of the frame give way to the plot.
const (
	rowsForAxis   = 3
	rowsForLabels = 4
	rowsForTitle  = 6
	colsForAxis   = 4
	colsForLabels = 8 // left for the plot once the labels have theirs
	rowsPerTickY  = 2
)

// newFrame shares out the grid. It does not draw.
func newFrame(width, height int, mode Mode, titled bool) *frame {
	f := &frame{
		grid: newGrid(width, height), glyphs: glyphsOf(mode), mode: mode,
		axisCol: -1, axisRow: -1, labelRow: -1, titleRow: -1,
		cols: max(width, 0), rows: max(height, 0),
	}
	if titled && height >= rowsForTitle {
		f.titleRow, f.top = 0, 1
		f.rows--
	}
	if height >= rowsForLabels {
		f.rows--
		f.labelRow = height - 1
	}
	if height >= rowsForAxis {
		f.rows--
		f.axisRow = f.top + f.rows
	}
	return f
}

// mostTicksY is how many numbers the vertical axis has room for.
func (f *frame) mostTicksY() int { return max(2, (f.rows-1)/rowsPerTickY+1) }

// setY fixes the vertical range, draws its axis with each tick in the row that at gives, and leaves
// the rest of the width to the plot.
func (f *frame) setY(s span, list []tick, at func(value float64) int) {
	f.y = s
	w := widest(list)
	if f.cols-w-1 < colsForLabels {
		list, w = nil, 0
	}
	if f.cols >= colsForAxis {
		f.axisCol, f.left = w, w+1
		f.cols -= w + 1
	}
	if f.axisCol < 0 {
		return
	}
	for row := range f.rows {
		f.grid.set(f.axisCol, f.top+row, f.vertical, ClassAxis)
	}
	taken := -1
	for _, t := range list {
		row := at(t.value)
		if row == taken || row < 0 || row > f.rows || f.top+row == f.labelRow {
			continue
		}
		taken = row
		f.grid.set(f.axisCol, f.top+row, f.tickY, ClassAxis)
		f.grid.write(w-ansi.StringWidth(t.text), f.top+row, w, t.text, ClassLabel)
	}
}

// drawX draws the horizontal axis over the first cols columns of the plot, ticks at the given
// columns, and its title: left of the labels where it fits, else at the right end.
func (f *frame) drawX(cols int, ticks []tick, at func(tick) int, title string) {
	if f.axisRow >= 0 {
		if f.axisCol >= 0 {
			f.grid.set(f.axisCol, f.axisRow, f.corner, ClassAxis)
		}
		for c := range cols {
			f.grid.set(f.left+c, f.axisRow, f.horizontal, ClassAxis)
		}
		for _, t := range ticks {
			if c := at(t); c >= 0 && c < cols {
				f.grid.set(f.left+c, f.axisRow, f.tickX, ClassAxis)
			}
		}
	}
	if f.labelRow < 0 {
		return
	}
	start, end := f.titleX(ticks, at, label(title, f.mode))
	for _, t := range ticks {
		w := ansi.StringWidth(t.text)
		from := f.left + at(t) - w/2
		if from < start || from+w > end {
			continue
		}
		f.grid.write(from, f.labelRow, end, t.text, ClassLabel)
	}
}

// titleX writes the title of the horizontal axis and gives the columns left for the labels.
func (f *frame) titleX(ticks []tick, at func(tick) int, title string) (start, end int) {
	width := len(f.grid[f.labelRow])
	w := ansi.StringWidth(title)
	if w == 0 || w > width/3 {
		return 0, width
	}
	first := f.left
	if len(ticks) > 0 {
		first = min(first, f.left+at(ticks[0])-ansi.StringWidth(ticks[0].text)/2)
	}
	if first-w-1 >= 0 {
		f.grid.write(first-w-1, f.labelRow, first-1, title, ClassLabel)
		return first, width
	}
	f.grid.write(width-w, f.labelRow, width, title, ClassLabel)
	return 0, width - w - 1
}

// entry is one name in the legend, behind the character it stands for.
type entry struct {
	glyph string
	class Class
	name  string
}

// drawTitle writes the title at the left of the first row and as much of the legend as fits at the
// right.
func (f *frame) drawTitle(title string, legend []entry) {
	if f.titleRow < 0 {
		return
	}
	width := len(f.grid[f.titleRow])
	title = label(title, f.mode)
	f.grid.write(0, f.titleRow, width, title, ClassTitle)
	room := width - ansi.StringWidth(title)
	var shown []entry
	total := 0
	for _, e := range legend {
		e.name = label(e.name, f.mode)
		w := ansi.StringWidth(e.name) + 4 // a gap of two, the character, a space
		if e.name == "" || total+w > room {
			continue
		}
		shown = append(shown, e)
		total += w
	}
	x := width - total
	for _, e := range shown {
		w := ansi.StringWidth(e.name)
		f.grid.set(x+2, f.titleRow, e.glyph, e.class)
		f.grid.write(x+4, f.titleRow, x+4+w, e.name, ClassTitle)
		x += w + 4
	}
}

// note writes a text in the middle of the plot.
func (f *frame) note(s string) {
	s = label(s, f.mode)
	if s == "" {
		return
	}
	s = ansi.Truncate(" "+s+" ", f.cols, "")
	f.grid.write(f.left+(f.cols-ansi.StringWidth(s))/2, f.top+(f.rows-1)/2, f.left+f.cols, s, ClassNote)
}

// row is the row of the plot, from 0 at the top, in which a value lies; -1 above and rows below it.
func (f *frame) row(y float64) int {
	row := f.y.cell(y, f.rows)
	return f.rows - 1 - row
}

// col is the column of the plot, from 0, in which a value lies; -1 and cols outside.
func (f *frame) col(x float64) int { return f.x.cell(x, f.cols) }

// put sets a cell of the plot; outside the plot it does nothing.
func (f *frame) put(col, row int, glyph string, class Class) {
	if glyph == "" || col < 0 || row < 0 || col >= f.cols || row >= f.rows {
		return
	}
	f.grid.set(f.left+col, f.top+row, glyph, class)
}

// at is the class of a cell of the plot.
func (f *frame) at(col, row int) Class { return f.grid.class(f.left+col, f.top+row) }
