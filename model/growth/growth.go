package growth

import (
	"fmt"
	"math"
)

const (
	// clearMargin is the lead in AICc from which one shape is called better: below 2 both have
	// substantial support (Burnham & Anderson 2002, Model Selection and Multimodel Inference, ch. 2).
	clearMargin = 2.0
	// fewestToJudge is the number of days from which a lead counts: through three looks either
	// shape may pass close by luck.
	fewestToJudge = 4
)

// Growth is a batch's growth by both shapes and which of them to believe.
type Growth struct {
	Line, Exponential Fit
	// Better is the shape to use: the straight line unless the exponential is clearly better.
	Better Shape
	// Margin is the lead of the shape with the smaller misses over the other, in units of AICc; both
	// have as many parameters, so it is looks x ln(SquaresUM / SquaresUM). Both are compared by
	// their misses in um, which slightly favours the straight line, since the exponential is laid
	// through logarithms.
	Margin float64
	Clear  bool   // Margin is at least 2 and there are looks of at least four days
	Why    string // Better's reason in words
}

// Grow lays both shapes through looks of at least two days and compares them.
func Grow(looks []Look) (Growth, error) {
	line, err := FitLine(looks)
	if err != nil {
		return Growth{}, err
	}
	exponential, err := FitExponential(looks)
	if err != nil {
		return Growth{}, err
	}
	g := Growth{Line: line, Exponential: exponential}
	g.choose()
	return g, nil
}

// Best is the fit of the better shape.
func (g Growth) Best() Fit {
	if g.Better == Exponential {
		return g.Exponential
	}
	return g.Line
}

func (g *Growth) choose() {
	straight, curved := floored(g.Line), floored(g.Exponential)
	lead := float64(g.Line.Looks) * math.Log(straight/curved)
	g.Margin = math.Abs(lead)
	g.Clear = g.Margin >= clearMargin && g.Line.Days >= fewestToJudge
	if g.Clear && lead > 0 {
		g.Better = Exponential
	}
	g.Why = g.reason()
}

// floored keeps the squares of a perfect fit above zero: misses under a billionth of the length
// are rounding.
func floored(f Fit) float64 {
	least := 1e-9 * f.At(f.meanAge)
	return max(f.SquaresUM, f.weight*least*least)
}

func (g *Growth) reason() string {
	misses := fmt.Sprintf("typical miss %.3g um straight, %.3g um exponential", g.Line.MissUM(), g.Exponential.MissUM())
	switch {
	case g.Line.Days < fewestToJudge:
		return fmt.Sprintf("straight line: looks of %d days are too few to tell a curve", g.Line.Days)
	case !g.Clear:
		return "straight line, both fit alike: " + misses
	}
	return fmt.Sprintf("%s fits better: %s", g.Better, misses)
}

// MissUM is the typical distance, um, of a look's mean from the curve: the root of the mean square,
// weighted by readings.
func (f Fit) MissUM() float64 { return math.Sqrt(f.SquaresUM / f.weight) }
