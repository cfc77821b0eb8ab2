package growth

import (
	"math"
	"slices"
	"strings"
	"testing"
)

func curve(shape func(age float64) float64, ages ...float64) []Look {
	var looks []Look
	for i, age := range ages {
		wobble := []float64{1, -1, -1, 1}[i%4] // um, so that no fit is perfect
		looks = append(looks, Look{AgeDays: age, MeanUM: shape(age) + wobble, N: 25})
	}
	return looks
}

func TestGrowChooses(t *testing.T) {
	line := func(age float64) float64 { return 300 + 25*age }
	bent := func(age float64) float64 { return 90 * math.Exp(0.08*age) }
	tests := []struct {
		name   string
		looks  []Look
		better Shape
		clear  bool
		why    string
	}{
		{"a straight batch", curve(line, 0, 2, 4, 6, 8, 10, 12, 14), Straight, true, "straight line fits better"},
		{"a bent batch", curve(bent, 0, 2, 4, 6, 8, 10, 12, 14), Exponential, true, "exponential fits better"},
		{"bay scallop F1 to day 18, through settlement", bayScallopF1, Exponential, true, "exponential"},
		{"bay scallop F1 to day 10: too near to call", bayScallopF1[:5], Straight, false, "both fit alike"},
		{"bay scallop F2, three tanks", slices.Concat(bayScallopF2...), Exponential, true, "exponential"},
		{"three looks", curve(bent, 0, 8, 16), Straight, false, "too few"},
		{"two looks", curve(bent, 0, 8), Straight, false, "looks of 2 days"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			g := must(Grow(tt.looks))
			if g.Better != tt.better || g.Clear != tt.clear || g.Best().Shape != tt.better {
				t.Errorf("got %v, clear %v, margin %g; want %v, %v", g.Better, g.Clear, g.Margin, tt.better, tt.clear)
			}
			if !strings.Contains(g.Why, tt.why) {
				t.Errorf("why %q, want %q in it", g.Why, tt.why)
			}
		})
	}
}

// The squares of both shapes by R 4.2.2: F1 of the bay scallop, 7 ln(2815922.30783 / 599653.198923).
func TestGrowMargin(t *testing.T) {
	g := must(Grow(bayScallopF1))
	near(t, "margin", g.Margin, 7*math.Log(2815922.30783/599653.198923), 1e-9)
	near(t, "typical miss", g.Exponential.MissUM(), math.Sqrt(599653.198923/1547), 1e-9)
}

func TestGrowPerfectLine(t *testing.T) {
	g := must(Grow(looksOf(numbers("0 2 4 6 8"), numbers("300 350 400 450 500"))))
	if math.IsInf(g.Margin, 0) || math.IsNaN(g.Margin) || g.Better != Straight || !g.Clear {
		t.Errorf("got %+v, want a clear straight line with a finite margin", g)
	}
}
