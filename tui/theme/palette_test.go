package theme

import (
	"math"
	"strconv"
	"testing"
)

// rgb is a colour of the sRGB space.
type rgb [3]int

func hex(t *testing.T, s string) rgb {
	t.Helper()
	n, err := strconv.ParseUint(s[1:], 16, 32)
	if err != nil {
		t.Fatal(err)
	}
	return rgb{int(n >> 16), int(n >> 8 & 255), int(n & 255)}
}

// xterm256 is colour n of 16-255 in the table of xterm (256colres.pl).
func xterm256(t *testing.T, s string) rgb {
	t.Helper()
	n, err := strconv.Atoi(s)
	if err != nil || n < 16 || n > 255 {
		t.Fatalf("colour %q is not among the fixed 16-255", s)
	}
	if n >= 232 {
		g := 8 + 10*(n-232)
		return rgb{g, g, g}
	}
	level := [6]int{0, 95, 135, 175, 215, 255}
	n -= 16
	return rgb{level[n/36], level[n/6%6], level[n%6]}
}

// luminance and contrast: WCAG 2.2, "relative luminance" and "contrast ratio".
func luminance(c rgb) float64 {
	var l [3]float64
	for i, v := range c {
		x := float64(v) / 255
		if l[i] = x / 12.92; x > 0.04045 {
			l[i] = math.Pow((x+0.055)/1.055, 2.4)
		}
	}
	return 0.2126*l[0] + 0.7152*l[1] + 0.0722*l[2]
}

func contrast(a, b rgb) float64 {
	la, lb := luminance(a), luminance(b)
	return (max(la, lb) + 0.05) / (min(la, lb) + 0.05)
}

func TestContrastFormula(t *testing.T) {
	// WCAG 2.2: black on white is 21:1; #767676 is the lightest grey that
	// reaches 4.5:1 on white (4.54).
	if got := contrast(rgb{}, rgb{255, 255, 255}); math.Abs(got-21) > 1e-9 {
		t.Errorf("black on white: %.3f, want 21", got)
	}
	if got := contrast(hex(t, "#767676"), rgb{255, 255, 255}); math.Abs(got-4.54) > 0.01 {
		t.Errorf("#767676 on white: %.3f, want 4.54", got)
	}
}

// grounds are the backgrounds the theme must be readable on.
var grounds = map[bool][]string{
	true:  {"#000000", "#111111", "#1E1E1E"},
	false: {"#FFFFFF", "#FDF6E3"},
}

// fullAnd256 checks a pair at both depths.
func fullAnd256(t *testing.T, name string, ink, fill shade, least float64) {
	t.Helper()
	if got := contrast(hex(t, ink.full), hex(t, fill.full)); got < least {
		t.Errorf("%s: %s on %s is %.2f, want at least %v", name, ink.full, fill.full, got, least)
	}
	if got := contrast(xterm256(t, ink.ansi256), xterm256(t, fill.ansi256)); got < least {
		t.Errorf("%s: %s on %s of 256 is %.2f, want at least %v", name, ink.ansi256, fill.ansi256, got, least)
	}
}

func TestBadgesAreReadable(t *testing.T) {
	for _, dark := range []bool{true, false} {
		p := colours(dark)
		for name, pair := range badges(p) {
			fullAnd256(t, name, pair[0], pair[1], 4.5)
		}
	}
}

func badges(p palette) map[string][2]shade {
	return map[string][2]shade{
		"overdue": {p.dark, p.overdueFill}, "due": {p.dark, p.dueFill}, "moving": {p.dark, p.movingFill},
		"action": {p.light, p.actionFill}, "saved": {p.dark, p.savedFill},
		"suspect": {p.suspInk, p.suspFill}, "focus": {p.focusInk, p.focusFill},
	}
}

// TestBadgesInSixteenColours uses two common tables of the 16 colours, from
// memory: xterm's and VGA's.
func TestBadgesInSixteenColours(t *testing.T) {
	for table, c := range map[string]map[string]string{
		"xterm": {"0": "#000000", "4": "#0000EE", "7": "#E5E5E5", "9": "#FF0000", "10": "#00FF00", "11": "#FFFF00", "14": "#00FFFF", "15": "#FFFFFF"},
		"VGA":   {"0": "#000000", "4": "#0000AA", "7": "#AAAAAA", "9": "#FF5555", "10": "#55FF55", "11": "#FFFF55", "14": "#55FFFF", "15": "#FFFFFF"},
	} {
		for _, dark := range []bool{true, false} {
			for name, pair := range badges(colours(dark)) {
				if got := contrast(hex(t, c[pair[0].ansi16]), hex(t, c[pair[1].ansi16])); got < 4.5 {
					t.Errorf("%s, %s: %.2f, want at least 4.5", table, name, got)
				}
			}
		}
	}
}

func TestTextAndLinesAreReadable(t *testing.T) {
	for dark, backs := range grounds {
		p := colours(dark)
		for _, back := range backs {
			for name, c := range map[string]struct {
				ink   shade
				least float64
			}{
				"faint": {p.faint, 4.5}, "frame": {p.line, 3}, "water": {p.water, 3}, "overdue frame": {p.overdueLine, 3},
			} {
				if got := contrast(hex(t, c.ink.full), hex(t, back)); got < c.least {
					t.Errorf("%s %s on %s: %.2f, want at least %v", name, c.ink.full, back, got, c.least)
				}
				if got := contrast(xterm256(t, c.ink.ansi256), hex(t, back)); got < c.least {
					t.Errorf("%s %s of 256 on %s: %.2f, want at least %v", name, c.ink.ansi256, back, got, c.least)
				}
			}
		}
	}
}

func TestNormalIsGrey(t *testing.T) {
	for _, dark := range []bool{true, false} {
		p := colours(dark)
		for name, s := range map[string]shade{
			"faint": p.faint, "frame": p.line, "water": p.water,
			"focus ink": p.focusInk, "focus fill": p.focusFill, "suspect ink": p.suspInk, "suspect fill": p.suspFill,
		} {
			for _, c := range []rgb{hex(t, s.full), xterm256(t, s.ansi256)} {
				if c[0] != c[1] || c[1] != c[2] {
					t.Errorf("%s (dark %v): %v has a hue", name, dark, c)
				}
			}
		}
	}
}

// TestNearestOf256 holds that the 256-colour twin of each hue is close to it:
// no other colour of the fixed 240 is nearer by more than a little.
func TestNearestOf256(t *testing.T) {
	p := colours(true)
	for name, s := range map[string]shade{"overdue": p.overdueFill, "due": p.dueFill, "moving": p.movingFill, "action": p.actionFill, "saved": p.savedFill} {
		want := hex(t, s.full)
		best := math.Inf(1)
		for n := 16; n < 256; n++ {
			best = min(best, distance(want, xterm256(t, strconv.Itoa(n))))
		}
		if got := distance(want, xterm256(t, s.ansi256)); got > best+20 {
			t.Errorf("%s: %s is %.0f away from %s, the nearest is %.0f away", name, s.ansi256, got, s.full, best)
		}
	}
}

func distance(a, b rgb) float64 {
	sum := 0.0
	for i := range a {
		sum += float64((a[i] - b[i]) * (a[i] - b[i]))
	}
	return math.Sqrt(sum)
}
