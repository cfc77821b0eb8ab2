package document

import (
	"fmt"
	"math"
	"strings"

	"drainboard/tui/chart"
	"drainboard/tui/text"
)

// The size of a drawn chart and the room around it, in SVG units.
const (
	svgWidth  = 680
	svgHeight = 300
	svgLeft   = 56
	svgRight  = 16
	svgTop    = 24
	svgBottom = 44
)

// drawing is a chart as the template draws it: everything in SVG units. It is
// readable without colour: points are dots with bars, a curve is a whole line, a
// forecast a dashed one, the corridor two dotted ones.
type drawing struct {
	Width, Height            int
	Left, Right, Top, Bottom int // edges of the plot
	TitleX, TitleY, Axis     int
	Label                    string // read out where the drawing cannot be seen
	XTitle, YTitle           string
	XTicks, YTicks           []drawnTick
	Points                   []drawnPoint
	Curves                   []drawnPath
	Levels                   []drawnTick
	Marks                    []drawnMark
	Legend                   string
	Empty                    string
}

type drawnTick struct {
	At   string
	Text string
}

type drawnPoint struct{ X, Y, Low, High, CapLeft, CapRight string }

type drawnPath struct{ Class, D string }

type drawnMark struct{ X, Low, High, Text, Anchor string }

// interval is a range of values.
type interval struct{ low, high float64 }

func (r *interval) take(values ...float64) {
	for _, v := range values {
		if finite(v) {
			r.low, r.high = min(r.low, v), max(r.high, v)
		}
	}
}

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

// widened is never empty.
func (r interval) widened() interval {
	switch {
	case !(r.low <= r.high):
		return interval{0, 1}
	case r.high-r.low < 1e-9*max(1, math.Abs(r.high)):
		return interval{r.low - 1, r.high + 1}
	}
	return r
}

// draw lays a chart out.
func draw(s chart.Scatter) drawing {
	x, y := ranges(s)
	d := drawing{
		Width: svgWidth, Height: svgHeight,
		Left: svgLeft, Right: svgWidth - svgRight, Top: svgTop, Bottom: svgHeight - svgBottom,
		TitleX: (svgLeft + svgWidth - svgRight) / 2, TitleY: svgHeight - 8, Axis: svgHeight - svgBottom + 16,
		Label: text.Clean(s.Title), XTitle: text.Clean(s.X.Title), YTitle: text.Clean(s.Y.Title),
		Legend: legend(s),
	}
	atX := func(v float64) float64 { return place(v, x, float64(d.Left), float64(d.Right)) }
	atY := func(v float64) float64 { return place(v, y, float64(d.Bottom), float64(d.Top)) }
	for _, t := range ticks(x) {
		d.XTicks = append(d.XTicks, drawnTick{unit(atX(t)), tickText(t)})
	}
	for _, t := range ticks(y) {
		d.YTicks = append(d.YTicks, drawnTick{unit(atY(t)), tickText(t)})
	}
	for _, p := range s.Points {
		if !finite(p.X) || !finite(p.Y) {
			continue
		}
		d.Points = append(d.Points, drawPoint(p, atX, atY))
	}
	for _, c := range s.Curves {
		d.Curves = append(d.Curves, drawCurve(c, x, atX, atY))
	}
	for _, b := range s.Corridor {
		d.Curves = append(d.Curves, drawBand(b, x, atX, atY)...)
	}
	for _, l := range s.Levels {
		d.Levels = append(d.Levels, drawnTick{unit(atY(l.Y)), text.Clean(l.Name)})
	}
	for _, m := range s.Marks {
		d.Marks = append(d.Marks, drawMark(m, x, atX))
	}
	if len(d.Points) == 0 && len(s.Curves) == 0 {
		d.Empty = text.Clean(s.Empty)
	}
	return d
}

func ranges(s chart.Scatter) (x, y interval) {
	x, y = interval{math.Inf(1), math.Inf(-1)}, interval{math.Inf(1), math.Inf(-1)}
	for _, p := range s.Points {
		x.take(p.X)
		y.take(p.Y)
		if p.Low < p.High {
			y.take(p.Low, p.High)
		}
	}
	for _, c := range s.Curves {
		x.take(c.From, c.To)
		y.take(c.At(c.From), c.At(c.To))
	}
	for _, l := range s.Levels {
		y.take(l.Y)
	}
	for _, m := range s.Marks {
		x.take(m.X)
	}
	for _, b := range s.Corridor {
		if b.FromX <= x.high && b.ToX > x.low {
			y.take(b.Low, b.High)
		}
	}
	if s.X.Low < s.X.High {
		x = interval{s.X.Low, s.X.High}
	}
	if s.Y.Low < s.Y.High {
		y = interval{s.Y.Low, s.Y.High}
	}
	return x.widened(), loose(y.widened())
}

// loose widens a range to the ticks around it.
func loose(r interval) interval {
	step := tickStep(r)
	return interval{step * math.Floor(r.low/step), step * math.Ceil(r.high/step)}
}

func place(v float64, r interval, low, high float64) float64 {
	return low + (high-low)*(v-r.low)/(r.high-r.low)
}

// unit writes a length in SVG units, within bounds a drawing can have.
func unit(v float64) string {
	return fmt.Sprintf("%.1f", min(max(v, -10*svgWidth), 10*svgWidth))
}

func drawPoint(p chart.Point, atX, atY func(float64) float64) drawnPoint {
	x := atX(p.X)
	d := drawnPoint{X: unit(x), Y: unit(atY(p.Y)), CapLeft: unit(x - 3), CapRight: unit(x + 3)}
	if p.Low < p.High {
		d.Low, d.High = unit(atY(p.Low)), unit(atY(p.High))
	}
	return d
}

// pieces is how many straight pieces a curve is drawn in.
const pieces = 48

func drawCurve(c chart.Curve, x interval, atX, atY func(float64) float64) drawnPath {
	from, to := max(c.From, x.low), min(c.To, x.high)
	var b strings.Builder
	for i := range pieces + 1 {
		v := from + (to-from)*float64(i)/pieces
		fmt.Fprintf(&b, "%c%s %s", "ML"[min(i, 1)], unit(atX(v)), unit(atY(c.At(v))))
	}
	if c.Forecast {
		return drawnPath{"forecast", b.String()}
	}
	return drawnPath{"curve", b.String()}
}

func drawBand(b chart.Span, x interval, atX, atY func(float64) float64) []drawnPath {
	from, to := max(b.FromX, x.low), min(b.ToX, x.high)
	if !(from < to) {
		return nil
	}
	var paths []drawnPath
	for _, v := range []float64{b.Low, b.High} {
		paths = append(paths, drawnPath{"corridor", fmt.Sprintf("M%s %sH%s", unit(atX(from)), unit(atY(v)), unit(atX(to)))})
	}
	return paths
}

func drawMark(m chart.Mark, x interval, atX func(float64) float64) drawnMark {
	d := drawnMark{X: unit(atX(m.X)), Text: text.Clean(m.Name), Anchor: "start"}
	if m.X > (x.low+x.high)/2 {
		d.Anchor = "end"
	}
	if m.Low < m.High {
		d.Low, d.High = unit(atX(max(m.Low, x.low))), unit(atX(min(m.High, x.high)))
	}
	return d
}

func legend(s chart.Scatter) string {
	var parts []string
	for _, p := range [][2]string{
		{s.Names.Points, "● "}, {s.Names.Curve, "— "}, {s.Names.Forecast, "- - "}, {s.Names.Corridor, "· · · "},
	} {
		if p[0] != "" {
			parts = append(parts, p[1]+text.Clean(p[0]))
		}
	}
	return strings.Join(parts, "   ")
}

// tickStep is 1, 2 or 5 times a power of ten, so that some five fit.
func tickStep(r interval) float64 {
	rough := (r.high - r.low) / 6
	power := math.Pow(10, math.Floor(math.Log10(rough)))
	for _, m := range []float64{1, 2, 5} {
		if m*power >= rough {
			return m * power
		}
	}
	return 10 * power
}

func ticks(r interval) []float64 {
	step := tickStep(r)
	var list []float64
	for k := math.Ceil(r.low/step - 1e-9); k*step <= r.high+1e-9*step && len(list) < 20; k++ {
		list = append(list, k*step)
	}
	return list
}

func tickText(v float64) string {
	return strings.TrimRight(strings.TrimRight(fmt.Sprintf("%.4f", v+0), "0"), ".")
}
