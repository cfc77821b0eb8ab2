package chart

import (
	"math"
	"strconv"

	"github.com/charmbracelet/x/ansi"
)

// Axis is how one direction of a chart is labelled.
type Axis struct {
	Title string // what and unit: "day", "um"
	// Low and High fix the range where Low < High (by more than rounding); otherwise it follows the
	// data.
	Low, High float64
	// Whole keeps ticks on whole numbers, for days and counts.
	Whole bool
	// Format words a tick; nil writes the number with the decimals that its step needs.
	Format func(value float64) string
}

// farthest bounds the values that are drawn: what lies beyond is no figure of a hatchery and is
// left out like one that is not a number.
const farthest = 1e12

func drawable(v float64) bool { return math.Abs(v) <= farthest } // false for NaN

// span is a range of values. It is empty while low > high.
type span struct{ low, high float64 }

func emptySpan() span { return span{math.Inf(1), math.Inf(-1)} }

func (s span) empty() bool { return !(s.low <= s.high) }

// take widens the span to hold the values that can be drawn.
func (s *span) take(values ...float64) {
	for _, v := range values {
		if drawable(v) {
			s.low, s.high = min(s.low, v), max(s.high, v)
		}
	}
}

// open gives the span a width that can be divided: one value stands in the middle of its range.
func (s span) open() span {
	if s.empty() {
		return span{0, 1}
	}
	if s.divisible() {
		return s
	}
	pad := max(1, math.Abs(s.low)*0.05)
	return span{s.low - pad, s.high + pad}
}

// divisible says whether the span is wide enough, beside the size of its values, for steps and
// shares of it to be numbers.
func (s span) divisible() bool {
	return s.high-s.low > 1e-9*max(1, math.Abs(s.low), math.Abs(s.high))
}

// fixed is the axis's own range, if it has one.
func (a Axis) fixed() (span, bool) {
	s := span{a.Low, a.High}
	return s, drawable(a.Low) && drawable(a.High) && s.divisible()
}

// share is where v lies in the span, 0 to 1.
func (s span) share(v float64) float64 { return (v - s.low) / (s.high - s.low) }

// cell is the cell of n, from 0 at the low end, in which v lies; -1 and n stand for all that lies
// outside. The lowest and the highest value lie in the middle of the first and the last cell.
func (s span) cell(v float64, n int) int {
	return whole(s.share(v)*float64(n-1), n)
}

// dot is the dot of n cells with per dots each in which v lies, so that the dot's cell is the one
// that cell gives; -1 and n x per stand for all that lies outside.
func (s span) dot(v float64, n, per int) int {
	at := s.share(v) * float64(n-1) // in cells, from the middle of the first
	return whole((at+0.5)*float64(per)-0.5, n*per)
}

// whole rounds a place to one of n, or to -1 and n outside.
func whole(at float64, n int) int {
	at = math.Floor(at + 0.5)
	switch {
	case math.IsNaN(at) || at < 0:
		return -1
	case at > float64(n-1):
		return n
	}
	return int(at)
}

// at is the value in the middle of cell i of n; i may lie between cells.
func (s span) at(i float64, n int) float64 {
	if n < 2 {
		return (s.low + s.high) / 2
	}
	return s.low + (s.high-s.low)*i/float64(n-1)
}

// tick is a labelled place on an axis.
type tick struct {
	value float64
	text  string
}

// ticks lays ticks on the multiples of a step that lie in the span.
func (a Axis) ticks(s span, step float64, mode Mode) []tick {
	var list []tick
	first, last := steps(s, step)
	for k := first; k <= last; k++ {
		list = append(list, a.tick(k*step, step, mode))
	}
	return list
}

// steps are the first and the last multiple of a step within the span.
func steps(s span, step float64) (first, last float64) {
	return math.Ceil(s.low/step - 1e-9), math.Floor(s.high/step + 1e-9)
}

// step is the smallest 1, 2 or 5 times a power of ten of which at most most multiples, at least 1,
// lie in the span.
func (a Axis) step(s span, most int) float64 {
	step := a.roundStep((s.high - s.low) / float64(most))
	for {
		if first, last := steps(s, step); last-first+1 <= float64(most) {
			return step
		}
		step = a.roundStep(step * 1.5)
	}
}

// loose widens a span to begin and end on a tick, at least two and at most most of them.
func (a Axis) loose(s span, most int) (wide span, step float64) {
	most = max(most, 2)
	step = a.roundStep((s.high - s.low) / float64(most))
	for {
		first, last := math.Floor(s.low/step+1e-9), math.Ceil(s.high/step-1e-9)
		// A range across zero always has three: one below, zero and one above.
		if last-first+1 <= float64(max(most, 3)) {
			return span{first * step, last * step}, step
		}
		step = a.roundStep(step * 1.5)
	}
}

func (a Axis) roundStep(x float64) float64 {
	if a.Whole {
		x = max(x, 1)
	}
	return roundStep(x)
}

func (a Axis) tick(value, step float64, mode Mode) tick {
	value += 0 // no negative zero
	if a.Format != nil {
		return tick{value, label(a.Format(value), mode)}
	}
	decimals := max(0, int(math.Ceil(-math.Log10(step)-1e-9)))
	if math.Abs(value) >= 1e7 || decimals > 6 {
		return tick{value, strconv.FormatFloat(value, 'g', 4, 64)}
	}
	return tick{value, strconv.FormatFloat(value, 'f', decimals, 64)}
}

// roundStep is the smallest of 1, 2 and 5 times a power of ten that is not below x, x > 0.
func roundStep(x float64) float64 {
	power := math.Pow(10, math.Floor(math.Log10(x)))
	for _, m := range []float64{1, 2, 5} {
		if m*power >= x*(1-1e-9) {
			return m * power
		}
	}
	return 10 * power
}

// cellsPerTickX is how close ticks may come on a horizontal axis.
const cellsPerTickX = 4

// sparse gives the ticks that leave a space between their labels when the span takes cells cells.
func (a Axis) sparse(s span, cells int, mode Mode) []tick {
	for most := cells/cellsPerTickX + 1; most >= 1; most-- {
		list := a.ticks(s, a.step(s, most), mode)
		if apart(list, s, cells) {
			return list
		}
	}
	return nil
}

func apart(list []tick, s span, cells int) bool {
	end := -1
	for _, t := range list {
		w := ansi.StringWidth(t.text)
		start := s.cell(t.value, cells) - w/2
		if start <= end {
			return false
		}
		end = start + w
	}
	return true
}

func widest(list []tick) int {
	w := 0
	for _, t := range list {
		w = max(w, ansi.StringWidth(t.text))
	}
	return w
}
