package chart

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestHistogramByHand(t *testing.T) {
	h := Histogram{LowEdge: 100, BinWidth: 10, Today: []int{1, 4, 2}, X: Axis{Title: "um"}}
	draws(
		t, h, 18, 6, Block,
		"4┤      ████      ",
		" │      ████      ",
		"2┤      ████ ████ ",
		" │ ████ ████ ████ ",
		"0└┬────┬────┬────┬",
		" 100  110  120  um",
	)
}

// Two samples of different size are drawn as shares, so that the same shape is drawn as high.
func TestHistogramShares(t *testing.T) {
	h := Histogram{LowEdge: 0, BinWidth: 1, Today: []int{1, 2, 1}, Before: []int{10, 20, 10}}
	g := h.Draw(40, 12, Braille)
	if today, before := len(find(g, ClassBar)), len(find(g, ClassBarBefore)); today != before || today == 0 {
		t.Errorf("%d cells today, %d before", today, before)
	}
}

// Joining bins for a narrow chart loses no reading.
func TestHistogramJoins(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := Histogram{BinWidth: 5, Today: rapid.SliceOfN(rapid.IntRange(0, 20), 1, 90).Draw(t, "today")}
		if rapid.Bool().Draw(t, "two") {
			h.Before = rapid.SliceOfN(rapid.IntRange(0, 20), 1, 90).Draw(t, "before")
		}
		h = h.clean()
		b := bars{Histogram: h, frame: newFrame(rapid.IntRange(1, 80).Draw(t, "width"), 12, Block, false), join: 1}
		b.arrange()
		total := 0.0
		for bin := range b.bins {
			total += b.height(h.Today, bin)
		}
		want := sum(h.Today)
		if b.double() && want > 0 {
			want = 100
		}
		if math.Abs(total-want) > 1e-9*max(want, 1) {
			t.Fatalf("bars add up to %g, want %g", total, want)
		}
	})
}

// Every bin with a reading shows, however small its share.
func TestHistogramShowsTheSmallest(t *testing.T) {
	h := Histogram{BinWidth: 1, Today: []int{1000, 1}}
	for _, mode := range []Mode{Block, Braille, ASCII} {
		g := h.Draw(30, 8, mode)
		right := 0
		for _, at := range find(g, ClassBar) {
			right = max(right, at[0])
		}
		if right < 15 {
			t.Errorf("mode %d: the small bar is missing:\n%s", mode, strings.Join(g.Lines(), "\n"))
		}
	}
}

func TestHistogramWithoutReadings(t *testing.T) {
	for name, h := range map[string]Histogram{
		"nothing":        {},
		"zeroes":         {BinWidth: 5, Today: []int{0, 0}},
		"no width":       {Today: []int{3}},
		"no number":      {BinWidth: math.NaN(), Today: []int{3}},
		"negative":       {BinWidth: 5, Today: []int{-3}},
		"negative width": {BinWidth: -5, Today: []int{3}},
	} {
		t.Run(name, func(t *testing.T) {
			h.Empty = "no readings yet"
			drawn := strings.Join(h.Draw(40, 10, Block).Lines(), "\n")
			if !strings.Contains(drawn, "no readings yet") || strings.ContainsAny(drawn, "█▁") {
				t.Errorf("drawn:\n%s", drawn)
			}
		})
	}
}
