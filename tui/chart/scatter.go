package chart

// Scatter is a chart of points with error bars over a horizontal scale, and what belongs around
// them. Values that are not numbers are left out.
type Scatter struct {
	Title string // in the first row, at the left
	Names Names
	X, Y  Axis

	Points   []Point
	Curves   []Curve
	Corridor []Span
	Levels   []Level
	Marks    []Mark

	// Empty is what is said in the middle when there are neither points nor curves.
	Empty string
}

// Names are the words of the legend; an empty one is left out.
type Names struct {
	Points, Curve, Forecast, Corridor string
}

// Point is a point with its error bar, which is drawn where Low < High.
type Point struct {
	X, Y      float64
	Low, High float64
}

// Curve is a function drawn from From to To.
type Curve struct {
	At       func(x float64) float64
	From, To float64
	Forecast bool // drawn dotted: beyond the readings
}

// Span is a range of expected values, from FromX up to but not at ToX, which may be infinite.
type Span struct {
	FromX, ToX float64
	Low, High  float64
}

// Level is a horizontal line, such as the length at which a batch is ready.
type Level struct {
	Y    float64
	Name string
}

// Mark is a vertical line, such as a ready date, with its interval drawn on the axis where Low <
// High; either may be infinite for an open end.
type Mark struct {
	X         float64
	Low, High float64
	Name      string
}

// Draw gives the chart in exactly width by height cells.
func (s Scatter) Draw(width, height int, mode Mode) Grid {
	f := newFrame(width, height, mode, s.Title != "" || s.Names != Names{})
	if f.cols < 1 || f.rows < 1 {
		return f.grid
	}
	x, knownX := s.spanX()
	f.x = x
	y, knownY := s.spanY(x)
	var ticksY []tick
	if knownY {
		y, ticksY = s.ticksY(y, f)
	}
	f.setY(y, ticksY, f.row)
	var ticksX []tick
	if knownX {
		ticksX = s.X.sparse(f.x, f.cols, mode)
	}
	f.drawX(f.cols, ticksX, func(t tick) int { return f.col(t.value) }, s.X.Title)
	f.drawTitle(s.Title, s.legend(f))
	s.plot(f)
	return f.grid.settle()
}

func (s Scatter) ticksY(y span, f *frame) (span, []tick) {
	if _, fixed := s.Y.fixed(); fixed {
		return y, s.Y.ticks(y, s.Y.step(y, f.mostTicksY()), f.mode)
	}
	y, step := s.Y.loose(y, f.mostTicksY())
	return y, s.Y.ticks(y, step, f.mode)
}

func (s Scatter) legend(f *frame) []entry {
	return []entry{
		{f.point, ClassPoint, s.Names.Points},
		{f.flat, ClassCurve, s.Names.Curve},
		{f.forecast, ClassForecast, s.Names.Forecast},
		{f.corridor, ClassCorridor, s.Names.Corridor},
	}
}

// spanX is the horizontal range: points, curves and marks, never the corridor, which may go on for
// weeks, unless there is nothing else.
func (s Scatter) spanX() (x span, known bool) {
	if fixed, ok := s.X.fixed(); ok {
		return fixed, true
	}
	x = emptySpan()
	for _, p := range s.Points {
		if drawable(p.Y) {
			x.take(p.X)
		}
	}
	for _, c := range s.Curves {
		x.take(c.From, c.To)
	}
	for _, m := range s.Marks {
		x.take(m.X)
	}
	if x.empty() {
		for _, b := range s.Corridor {
			x.take(b.FromX, b.ToX)
		}
	}
	return x.open(), !x.empty()
}

// spanY is the vertical range of all that shows within the horizontal one.
func (s Scatter) spanY(x span) (y span, known bool) {
	if fixed, ok := s.Y.fixed(); ok {
		return fixed, true
	}
	y = emptySpan()
	for _, p := range s.Points {
		if !drawable(p.X) || !drawable(p.Y) || p.X < x.low || p.X > x.high {
			continue
		}
		y.take(p.Y)
		if p.Low < p.High {
			y.take(p.Low, p.High)
		}
	}
	for _, c := range s.Curves {
		s.takeCurve(&y, c, x)
	}
	for _, b := range s.Corridor {
		if b.FromX <= x.high && b.ToX > x.low && b.Low < b.High {
			y.take(b.Low, b.High)
		}
	}
	for _, l := range s.Levels {
		y.take(l.Y)
	}
	return y.open(), !y.empty()
}

// curveSamples is the number of places at which a curve is looked at for its range.
const curveSamples = 64

func (s Scatter) takeCurve(y *span, c Curve, x span) {
	from, to := max(c.From, x.low), min(c.To, x.high)
	if c.At == nil || !(from <= to) {
		return
	}
	for i := range curveSamples + 1 {
		y.take(c.At(from + (to-from)*float64(i)/curveSamples))
	}
}

// plot draws what is behind first.
func (s Scatter) plot(f *frame) {
	if f.mode == Braille {
		s.plotDots(f)
	} else {
		s.plotCells(f)
	}
	s.drawMarkFeet(f)
	for _, p := range s.Points {
		if drawable(p.X) && drawable(p.Y) {
			f.put(f.col(p.X), f.row(p.Y), f.point, ClassPoint)
		}
	}
	if !s.hasData() {
		f.note(s.Empty)
	}
	s.nameLevels(f)
	s.nameMarks(f)
}

func (s Scatter) hasData() bool {
	for _, p := range s.Points {
		if drawable(p.X) && drawable(p.Y) {
			return true
		}
	}
	for _, c := range s.Curves {
		if c.At != nil && c.From <= c.To {
			return true
		}
	}
	return false
}

// corridorAt is the expected range at x.
func (s Scatter) corridorAt(x float64) (Span, bool) {
	for _, b := range s.Corridor {
		if b.FromX <= x && x < b.ToX && b.Low < b.High {
			return b, true
		}
	}
	return Span{}, false
}
