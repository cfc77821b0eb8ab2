package chart

import (
	"math"

	"github.com/charmbracelet/x/ansi"
)

// Histogram is a chart of one sample in bins of one width, or of two samples side by side. Two
// samples are drawn as shares of their own readings, since their sizes differ.
type Histogram struct {
	Title string // in the first row, at the left
	X     Axis   // Low, High and Whole do not apply: the bins are the range

	LowEdge, BinWidth float64 // lower edge of the first bin, width of each

	Today, Before         []int // readings in each bin; Before may be nil
	TodayName, BeforeName string

	// Empty is what is said when there are no readings.
	Empty string
}

// Draw gives the chart in exactly width by height cells. Where the bins do not fit, neighbours are
// joined.
func (h Histogram) Draw(width, height int, mode Mode) Grid {
	f := newFrame(width, height, mode, h.Title != "" || h.TodayName != "")
	if f.cols < 1 || f.rows < 1 {
		return f.grid
	}
	h = h.clean()
	b := bars{Histogram: h, frame: f, join: 1}
	y, known := b.heights()
	count := Axis{Whole: !b.double()}
	var list []tick
	if known {
		var step float64
		y, step = count.loose(y, f.mostTicksY())
		list = count.ticks(y, step, mode)
	}
	f.setY(y, list, b.topRow)
	f.drawTitle(h.Title, b.legend())
	if !known {
		f.drawX(f.cols, nil, nil, h.X.Title)
		f.note(h.Empty)
		return f.grid.settle()
	}
	b.lay()
	f.drawX(b.total(), b.edges(), b.edgeCol, h.X.Title)
	b.draw()
	return f.grid.settle()
}

// clean leaves out what is no count and makes both samples as long as each other.
func (h Histogram) clean() Histogram {
	n := max(len(h.Today), len(h.Before))
	if !drawable(h.LowEdge) || !drawable(h.BinWidth) || h.BinWidth <= 0 || !drawable(h.LowEdge+float64(n)*h.BinWidth) {
		n = 0
	}
	h.Today, h.Before = counts(h.Today, n), counts(h.Before, n)
	return h
}

func counts(from []int, n int) []int {
	if from == nil {
		return nil
	}
	list := make([]int, n)
	for i := range list {
		if i < len(from) {
			list[i] = min(max(from[i], 0), farthest)
		}
	}
	return list
}

func sum(list []int) float64 {
	total := 0.0
	for _, n := range list {
		total += float64(n)
	}
	return total
}

// bars is a histogram being drawn.
type bars struct {
	Histogram
	*frame
	join int // bins of the sample in one of the chart
	bins int // of the chart
	per  int // columns of a bin
}

// double says whether there are two samples to draw.
func (b *bars) double() bool { return b.Before != nil && b.Today != nil }

// heights is the range of the tallest bar.
func (b *bars) heights() (y span, known bool) {
	b.arrange()
	y = span{0, 0}
	for _, list := range [][]int{b.Today, b.Before} {
		for bin := range b.bins {
			y.take(b.height(list, bin))
		}
	}
	if y.high == 0 {
		return span{0, 1}, false
	}
	return y, true
}

// height is the value of a bin: its count, or its percentage where there are two samples.
func (b *bars) height(list []int, bin int) float64 {
	if list == nil {
		return 0
	}
	from := bin * b.join
	n := sum(list[from:min(from+b.join, len(list))])
	if total := sum(list); b.double() && total > 0 {
		return 100 * n / total
	}
	return n
}

// arrange joins as many bins as it takes for each to have its columns.
func (b *bars) arrange() {
	n := max(len(b.Today), len(b.Before))
	least := 1
	if b.double() {
		least = 2
	}
	most := max(1, (b.cols-labelReserve(b.cols))/least)
	b.join = max(1, (n+most-1)/most)
	b.bins = (n + b.join - 1) / b.join
}

// labelReserve is the room for the numbers of the vertical axis, which are not known before the
// bins are: at most four digits and the axis.
func labelReserve(cols int) int {
	if cols < colsForLabels {
		return 0
	}
	return min(5, cols-colsForLabels+1)
}

// widestBin keeps a chart of few bins from becoming a wall.
const widestBin = 9

// lay gives each bin its columns once the plot's width is known.
func (b *bars) lay() {
	b.per = min(max(b.cols/b.bins, 1), widestBin)
	if b.double() && b.per > 2 {
		b.per -= (b.per - 1) % 2 // two bars as wide as each other, and a gap
	}
}

func (b *bars) total() int { return min(b.bins*b.per+1, b.cols) }

// edges are ticks at the lower edges of bins, as many as have room.
func (b *bars) edges() []tick {
	width := b.BinWidth * float64(b.join)
	for every := 1; ; every++ {
		var list []tick
		for bin := 0; bin <= b.bins; bin += every {
			list = append(list, b.X.tick(b.LowEdge+float64(bin)*width, b.BinWidth, b.mode))
		}
		if every > b.bins || b.roomFor(list) {
			return list
		}
	}
}

func (b *bars) roomFor(list []tick) bool {
	end := -1 << 20
	for _, t := range list {
		w := ansi.StringWidth(t.text)
		start := b.edgeCol(t) - w/2
		if start <= end {
			return false
		}
		end = start + w
	}
	return true
}

func (b *bars) edgeCol(t tick) int {
	bin := math.Round((t.value - b.LowEdge) / (b.BinWidth * float64(b.join)))
	return int(bin) * b.per
}

func (b *bars) legend() []entry {
	return []entry{
		{b.before, ClassBarBefore, b.BeforeName},
		{b.today, ClassBar, b.TodayName},
	}
}

// draw puts the bars: the sample before at the left of each bin, today's at its right.
func (b *bars) draw() {
	gap := 0
	if b.per > 2 {
		gap = 1
	}
	for bin := range b.bins {
		left := bin * b.per
		if !b.double() {
			b.bar(left+gap, b.per-gap, b.height(b.Today, bin)+b.height(b.Before, bin), b.Today == nil)
			continue
		}
		half := max((b.per-gap)/2, 1)
		b.bar(left+gap, half, b.height(b.Before, bin), true)
		b.bar(left+gap+half, half, b.height(b.Today, bin), false)
	}
}

// bar draws one bar of the given height from a column on.
func (b *bars) bar(col, wide int, height float64, before bool) {
	if height <= 0 {
		return
	}
	eighths := max(1, int(math.Round(height/b.y.high*float64(b.rows)*8)))
	for c := col; c < col+wide; c++ {
		for row := range b.rows {
			level := min(max(eighths-(b.rows-1-row)*8, 0), 8)
			b.put(c, row, b.barGlyph(level, row == b.rows-1, before), barClass(before))
		}
	}
}

// topRow is the row that a bar of the given height fills last; for none, the row of the axis.
func (b *bars) topRow(height float64) int {
	return b.rows - int(math.Round(height/b.y.high*float64(b.rows)))
}

func barClass(before bool) Class {
	if before {
		return ClassBarBefore
	}
	return ClassBar
}

// barGlyph is the character of a cell of a bar filled to so many eighths; "" for none.
func (f *frame) barGlyph(eighths int, lowest, before bool) string {
	switch {
	case eighths == 0:
		return ""
	case f.mode == Braille:
		return dotBar((eighths+1)/2, before)
	case !before && f.mode == Block:
		return f.eighths[eighths]
	case eighths >= 4 && before:
		return f.before
	case eighths >= 4:
		return f.today
	case lowest:
		return f.beforeLow
	}
	return ""
}

// dotBar is a Braille cell filled from below to a number of rows: both columns, or only the left
// one for the sample before.
func dotBar(rows int, before bool) string {
	bits := rune(0)
	for y := dotsHigh - rows; y < dotsHigh; y++ {
		bits |= dotBit(0, y)
		if !before {
			bits |= dotBit(1, y)
		}
	}
	return string(brailleBase + bits)
}
