package chart

import (
	"math"
	"testing"
)

func TestSparklineByHand(t *testing.T) {
	rising := Sparkline{Values: []float64{0, 1, 2, 3, 4, 5, 6, 7}}
	draws(t, rising, 8, 1, Block, "▁▂▃▄▅▆▇█")
	draws(t, rising, 10, 1, Block, "▁▂▃▄▅▆▇█  ")
	draws(t, rising, 8, 2, Block, "    ▂▄▆█", "▁▃▅▇████")
	draws(t, rising, 4, 1, Block, "▂▄▆█") // means 0.5, 2.5, 4.5, 6.5 of a range 0 to 7, halves rounded up
	draws(t, rising, 8, 1, ASCII, "___--==#")
	draws(t, Sparkline{Values: []float64{0, 1, 2, 3}}, 2, 1, Braille, "⣠⣾")
	draws(t, Sparkline{Values: []float64{0, math.NaN(), 7}}, 3, 1, Block, "▁ █")
	draws(t, Sparkline{Values: []float64{5, 5, 5}}, 3, 1, Block, "▅▅▅")
	draws(t, Sparkline{Values: []float64{25, 28, 40}, Low: 25, High: 31}, 3, 1, Block, "▁▅█")
	draws(t, Sparkline{}, 3, 1, Block, "   ")
}
