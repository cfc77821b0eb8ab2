package text

import (
	"math"
	"strings"
	"testing"
	"time"
)

func TestDuration(t *testing.T) {
	for _, c := range []struct {
		d           time.Duration
		want, short string
	}{
		{0, "0 s", "0s"},
		{40 * time.Second, "40 s", "40s"},
		{59*time.Minute + 59*time.Second, "59 min", "59min"},
		{72 * time.Minute, "1 h 12 min", "1h12"},
		{-72 * time.Minute, "1 h 12 min", "1h12"},
		{3*time.Hour + 5*time.Minute + 59*time.Second, "3 h 05 min", "3h05"},
		{71*time.Hour + 59*time.Minute, "71 h 59 min", "71h59"},
		{76 * time.Hour, "3 d 4 h", "3d04h"},
		{math.MinInt64, "106751 d 23 h", "106751d23h"},
	} {
		if got := Duration(c.d); got != c.want {
			t.Errorf("Duration(%v) = %q, want %q", c.d, got, c.want)
		}
		if got := ShortDuration(c.d); got != c.short {
			t.Errorf("ShortDuration(%v) = %q, want %q", c.d, got, c.short)
		}
	}
}

func TestUntil(t *testing.T) {
	for _, c := range []struct {
		left        time.Duration
		overdue     bool
		want, short string
	}{
		{3*time.Hour + 5*time.Minute, false, "in 3 h 05 min", "in 3h05"},
		{59 * time.Second, false, "now", "now"},
		{-59 * time.Second, false, "now", "now"},
		{-12 * time.Minute, false, "12 min ago", "12min ago"},
		{-72 * time.Minute, true, "overdue 1 h 12 min", "late 1h12"},
	} {
		if got := Until(c.left, c.overdue); got != c.want {
			t.Errorf("Until(%v, %v) = %q, want %q", c.left, c.overdue, got, c.want)
		}
		if got := ShortUntil(c.left, c.overdue); got != c.short {
			t.Errorf("ShortUntil(%v, %v) = %q, want %q", c.left, c.overdue, got, c.short)
		}
	}
}

func TestWhole(t *testing.T) {
	for n, want := range map[int]string{0: "0", 999: "999", 5200: "5 200", 1234567: "1 234 567", -1000: "-1 000", -100: "-100"} {
		if got := Whole(n); got != want {
			t.Errorf("Whole(%d) = %q, want %q", n, got, want)
		}
	}
}

func TestDecimal(t *testing.T) {
	for _, c := range []struct {
		name   string
		x      float64
		places int
		want   string
	}{
		{"one place", 27.44, 1, "27.4"},
		{"thousands", 12400.5, 1, "12 400.5"},
		{"no places", 5199.6, 0, "5 200"},
		{"no minus before nothing", -0.04, 1, "0.0"},
		{"negative", -1234.5, 1, "-1 234.5"},
		{"unknown", math.NaN(), 1, "?"},
		{"infinite", math.Inf(-1), 1, "?"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := Decimal(c.x, c.places); got != c.want {
				t.Errorf("got %q, want %q", got, c.want)
			}
		})
	}
}

func TestBigWritesEverySign(t *testing.T) {
	const signs = "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789.,:-+/%!?_ "
	seen := map[[BigRows]string]rune{}
	for _, r := range signs {
		for _, ascii := range []bool{false, true} {
			rows, ok := Big(string(r), ascii)
			if !ok {
				t.Fatalf("Big(%q) is unknown", r)
			}
			for _, row := range rows {
				if Width(row) != BigWidth(string(r)) || Width(row) == 0 {
					t.Errorf("Big(%q): row %q of %d cells, want %d", r, row, Width(row), BigWidth(string(r)))
				}
				if ascii && ASCII(row) != row {
					t.Errorf("Big(%q): row %q is not ASCII", r, row)
				}
			}
			if other, twice := seen[rows]; twice {
				t.Errorf("%q and %q look the same", r, other)
			}
			if r != ' ' {
				seen[rows] = r
			}
		}
	}
}

func TestBigTank(t *testing.T) {
	rows, ok := Big("c5", false)
	if got, want := strings.Join(rows[:], "|"), "▄▀▀ █▀▀|█   ▀▀█|▀▄▄ ▄▄█"; !ok || got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	if _, ok := Big("é", false); ok || BigWidth("é") != 0 {
		t.Error("é has no big letter, yet Big claims one")
	}
}

func TestASCII(t *testing.T) {
	for in, want := range map[string]string{
		"27.4 °C → C1…":          "27.4 'C > C1~",
		"┌──┐│╔══╗":              "+--+|+--+",
		red + "▂▄█" + reset:      red + "__#" + reset,
		"北 e\u0301":              "?? e",
		"plain":                  "plain",
		"720 µm · 5 × 2 ± 1":     "720 um . 5 x 2 + 1",
		"Köln – “quoted” \u00a0": "K?ln - ?quoted?  ",
	} {
		if got := ASCII(in); got != want {
			t.Errorf("ASCII(%q) = %q, want %q", in, got, want)
		}
		if Width(ASCII(in)) != Width(in) {
			t.Errorf("ASCII(%q) changes the width", in)
		}
	}
}
