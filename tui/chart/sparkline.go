package chart

import "math"

// Sparkline is a row of small bars without axes: a series at a glance.
type Sparkline struct {
	// Values from the oldest to the newest; one that is not a number leaves a gap. Where there are
	// more than fit, neighbours are averaged.
	Values []float64
	// Low and High fix the range where Low < High; otherwise it follows the values. The lowest
	// value still shows.
	Low, High float64
}

// Draw gives the sparkline in exactly width by height cells.
func (s Sparkline) Draw(width, height int, mode Mode) Grid {
	g := newGrid(width, height)
	if width < 1 || height < 1 {
		return g
	}
	y, fixed := Axis{Low: s.Low, High: s.High}.fixed()
	if !fixed {
		y = emptySpan()
		y.take(s.Values...)
		y = y.open()
	}
	slots := width
	if mode == Braille {
		slots *= dotsWide
	}
	values := fold(s.Values, slots)
	if mode == Braille {
		sparkDots(g, values, y)
		return g
	}
	f := &frame{glyphs: glyphsOf(mode)}
	for x, v := range values {
		for level, row := units(v, y, height*8), height-1; level > 0 && row >= 0; level, row = level-8, row-1 {
			g.set(x, row, f.glyphs.eighths[min(level, 8)], ClassBar)
		}
	}
	return g
}

// fold averages neighbours until at most slots values are left.
func fold(values []float64, slots int) []float64 {
	if len(values) <= slots {
		return values
	}
	folded := make([]float64, slots)
	for i := range folded {
		from, to := i*len(values)/slots, (i+1)*len(values)/slots
		folded[i] = meanOf(values[from:to])
	}
	return folded
}

// meanOf is the mean of the values that can be drawn; not a number where there are none.
func meanOf(values []float64) float64 {
	total, n := 0.0, 0
	for _, v := range values {
		if drawable(v) {
			total += v
			n++
		}
	}
	if n == 0 {
		return math.NaN()
	}
	return total / float64(n)
}

// units is the height of a value in most units: 1 at the low end, so that it shows, 0 for none.
func units(v float64, y span, most int) int {
	if !drawable(v) {
		return 0
	}
	return 1 + int(math.Round(min(max(y.share(v), 0), 1)*float64(most-1)))
}

func sparkDots(g Grid, values []float64, y span) {
	height := len(g)
	bits := make([]rune, len(g[0])*height)
	for i, v := range values {
		for n := range units(v, y, height*dotsHigh) {
			row := height*dotsHigh - 1 - n
			bits[row/dotsHigh*len(g[0])+i/dotsWide] |= dotBit(i%dotsWide, row%dotsHigh)
		}
	}
	for i, b := range bits {
		if b != 0 {
			g.set(i%len(g[0]), i/len(g[0]), string(brailleBase+b), ClassBar)
		}
	}
}
