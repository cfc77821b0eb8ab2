package chart

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func TestTicks(t *testing.T) {
	day := func(v float64) string { return "d" + string('0'+rune(int(v)%10)) }
	tests := []struct {
		name      string
		axis      Axis
		low, high float64
		most      int
		want      []string
	}{
		{"hundreds", Axis{}, 0, 1000, 6, []string{"0", "200", "400", "600", "800", "1000"}},
		{"days from 2", Axis{Whole: true}, 2, 28, 14, []string{"2", "4", "6", "8", "10", "12", "14", "16", "18", "20", "22", "24", "26", "28"}},
		{"days from 2, fewer", Axis{Whole: true}, 2, 28, 6, []string{"5", "10", "15", "20", "25"}},
		{"tenths", Axis{}, 26.8, 28.1, 7, []string{"26.8", "27.0", "27.2", "27.4", "27.6", "27.8", "28.0"}},
		{"halves", Axis{}, -1, 1, 5, []string{"-1.0", "-0.5", "0.0", "0.5", "1.0"}},
		{"whole only", Axis{Whole: true}, 0, 2, 9, []string{"0", "1", "2"}},
		{"across zero, one at most", Axis{}, -1, 1, 1, []string{"0"}},
		{"thousandths", Axis{}, 0.001, 0.004, 4, []string{"0.001", "0.002", "0.003", "0.004"}},
		{"large", Axis{}, 0, 5e7, 6, []string{"0", "1e+07", "2e+07", "3e+07", "4e+07", "5e+07"}},
		{"worded", Axis{Format: day}, 0, 3, 4, []string{"d0", "d1", "d2", "d3"}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			s := span{tt.low, tt.high}
			var got []string
			for _, tick := range tt.axis.ticks(s, tt.axis.step(s, tt.most), Block) {
				got = append(got, tick.text)
			}
			if !slices.Equal(got, tt.want) {
				t.Errorf("got %q, want %q", got, tt.want)
			}
		})
	}
}

func drawSpan(t *rapid.T) span {
	s := emptySpan()
	s.take(rapid.Float64Range(-1e12, 1e12).Draw(t, "a"), rapid.OneOf(rapid.Float64Range(-1e12, 1e12), rapid.Float64Range(0, 1000)).Draw(t, "b"))
	return s.open()
}

// Steps are 1, 2 or 5 times a power of ten, ticks are within the span and no more than asked for.
func TestTickProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, most := drawSpan(t), rapid.IntRange(1, 60).Draw(t, "most")
		a := Axis{Whole: rapid.Bool().Draw(t, "whole")}
		step := a.step(s, most)
		leading := step / math.Pow(10, math.Floor(math.Log10(step)+1e-9))
		if !slices.ContainsFunc([]float64{1, 2, 5}, func(m float64) bool { return math.Abs(leading-m) < 1e-6 }) {
			t.Fatalf("step %g", step)
		}
		list := a.ticks(s, step, Block)
		if len(list) > most {
			t.Fatalf("%d ticks, want at most %d", len(list), most)
		}
		for _, k := range list {
			if k.value < s.low-1e-6*step || k.value > s.high+1e-6*step || (a.Whole && k.value != math.Round(k.value)) {
				t.Fatalf("tick %g outside %g to %g", k.value, s.low, s.high)
			}
		}
		wide, wideStep := a.loose(s, most)
		if wide.low > s.low+1e-6*wideStep || wide.high < s.high-1e-6*wideStep {
			t.Fatalf("%+v does not hold %+v", wide, s)
		}
		ends := a.ticks(wide, wideStep, Block)
		if n := len(ends); n < 2 || n > max(most, 3) || ends[0].value != wide.low || math.Abs(ends[n-1].value-wide.high) > 1e-6*wideStep {
			t.Fatalf("%+v has ticks %+v", wide, ends)
		}
	})
}

// The dots of a value lie in its cell, and the middle of a cell is in that cell.
func TestCellsAndDotsAgree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, n := drawSpan(t), rapid.IntRange(1, 300).Draw(t, "cells")
		v := rapid.Float64Range(s.low, s.high).Draw(t, "value")
		cell := s.cell(v, n)
		if cell < 0 || cell >= n {
			t.Fatalf("%g of %+v in cell %d of %d", v, s, cell, n)
		}
		at := s.share(v) * float64(n-1)
		if onEdge := math.Abs(at-math.Floor(at)-0.5) < 1e-6; onEdge {
			return
		}
		for _, per := range []int{dotsWide, dotsHigh} {
			if dot := s.dot(v, n, per); dot/per != cell {
				t.Fatalf("%g of %+v in cell %d and dot %d of %d", v, s, cell, dot, per)
			}
		}
		if i := rapid.IntRange(0, n-1).Draw(t, "i"); n > 1 && s.cell(s.at(float64(i), n), n) != i {
			t.Fatalf("the middle of cell %d of %+v is in cell %d", i, s, s.cell(s.at(float64(i), n), n))
		}
	})
}

func TestSpanOutside(t *testing.T) {
	s := span{0, 10}
	for v, want := range map[float64]int{-1: -1, 0: 0, 5: 5, 10: 10, 11: 11, 1e300: 11, math.Inf(1): 11, math.Inf(-1): -1} {
		if got := s.cell(v, 11); got != want {
			t.Errorf("cell of %g = %d, want %d", v, got, want)
		}
	}
	if got := s.cell(math.NaN(), 11); got != -1 {
		t.Errorf("cell of no number = %d, want -1", got)
	}
}

func TestFixedRange(t *testing.T) {
	tests := []struct {
		name      string
		low, high float64
		want      bool
	}{
		{"ordinary", 25, 31, true},
		{"none", 0, 0, false},
		{"upside down", 31, 25, false},
		{"narrower than rounding", 0, 5e-324, false},
		{"narrow for its values", 1e12, 1e12 + 1, false},
		{"beyond what is drawn", 0, 1e13, false},
		{"no number", math.NaN(), 31, false},
		{"endless", 25, math.Inf(1), false},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			a := Axis{Low: tt.low, High: tt.high}
			if _, got := a.fixed(); got != tt.want {
				t.Errorf("got %v, want %v", got, tt.want)
			}
			s := Scatter{X: a, Y: a, Points: []Point{{27, 27, 0, 0}}}
			exact(t, s.Draw(40, 10, Block), 40, 10)
		})
	}
}
