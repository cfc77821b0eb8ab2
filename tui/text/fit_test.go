package text

import (
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"pgregory.net/rapid"
)

const red = "\x1b[31m"

func TestFit(t *testing.T) {
	for _, c := range []struct {
		name, in string
		w        int
		want     string
	}{
		{"padded", "C5", 4, "C5  "},
		{"exact", "C5", 2, "C5"},
		{"cut", "overdue", 4, "ove…"},
		{"one cell", "overdue", 1, "…"},
		{"no cells", "C5", 0, ""},
		{"negative", "C5", -3, ""},
		{"wide character cut in half", "北北", 3, "北…"},
		{"wide character that leaves a hole", "a北北", 3, "a… "},
		{"line break", "a\nb", 4, "a b "},
		{"styled and padded", red + "C5" + reset, 4, red + "C5" + reset + "  "},
		{"styled and cut keeps its reset", red + "overdue" + reset, 4, red + "ove…" + reset},
		{"style left open is closed", red + "C5", 4, red + "C5" + reset + "  "},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := Fit(c.in, c.w); got != c.want {
				t.Errorf("Fit(%q, %d) = %q, want %q", c.in, c.w, got, c.want)
			}
		})
	}
}

func TestFitSides(t *testing.T) {
	if got, want := FitRight("27.4", 6), "  27.4"; got != want {
		t.Errorf("FitRight = %q, want %q", got, want)
	}
	if got, want := FitCentre("C5", 5), " C5  "; got != want {
		t.Errorf("FitCentre = %q, want %q", got, want)
	}
}

func TestEnds(t *testing.T) {
	for _, c := range []struct {
		name, left, right string
		w                 int
		want              string
	}{
		{"both", "NEXT C5", "09:14", 16, "NEXT C5    09:14"},
		{"left is cut first", "NEXT C5 into C1", "09:14", 12, "NEXT … 09:14"},
		{"only right", "NEXT C5", "09:14", 5, "09:14"},
		{"right is cut last", "NEXT", "09:14", 3, "09…"},
		{"no right", "NEXT", "", 6, "NEXT  "},
		{"nothing", "NEXT", "09:14", 0, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := Ends(c.left, c.right, c.w); got != c.want {
				t.Errorf("Ends(%q, %q, %d) = %q, want %q", c.left, c.right, c.w, got, c.want)
			}
		})
	}
}

func FuzzFit(f *testing.F) {
	for _, s := range []string{"", "C5", "\xeb0", "\u0301x", red + "overdue" + reset, red + "open", "👩‍🔬 am Mikroskop", "a\nb\tc"} {
		f.Add(s, 7)
	}
	f.Fuzz(func(t *testing.T, s string, w int) {
		w %= 250
		for name, got := range map[string]string{
			"Fit of cleaned":       Fit(Clean(s), w),
			"FitRight of cleaned":  FitRight(Clean(s), w),
			"FitCentre of cleaned": FitCentre(Clean(s), w),
			"Ends of cleaned":      Ends(Clean(s), "09:14", w),
			"Fit of styled":        Fit(red+Clean(s)+reset, w),
		} {
			if n := Width(got); n != max(0, w) {
				t.Errorf("%s(%q, %d) = %q: %d cells", name, s, w, got, n)
			}
			if strings.ContainsAny(got, "\n\r\t") {
				t.Errorf("%s(%q, %d) = %q leaves the row", name, s, w, got)
			}
		}
	})
}

// drawWords makes lines of the words a room can produce, styled or not.
func drawWords(t *rapid.T) []string {
	words := rapid.SampledFrom([]string{"C5", "overdue", "北", "e\u0301", "27.4 °C", red + "x" + reset, "", "👩", "│", "a\nb"})
	return rapid.SliceOf(rapid.Map(rapid.SliceOf(words), func(w []string) string { return strings.Join(w, " ") })).Draw(t, "lines")
}

func TestFrameIsExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lines := drawWords(t)
		w, h := rapid.IntRange(-1, 220).Draw(t, "w"), rapid.IntRange(-1, 70).Draw(t, "h")
		for name, frame := range map[string][]string{"Frame": Frame(lines, w, h), "Centre": Centre(lines, w, h)} {
			if w <= 0 || h <= 0 {
				if len(frame) != 0 {
					t.Fatalf("%s: %d rows at %dx%d, want none", name, len(frame), w, h)
				}
				continue
			}
			if len(frame) != h {
				t.Fatalf("%s: %d rows, want %d", name, len(frame), h)
			}
			for _, row := range frame {
				if Width(row) != w {
					t.Fatalf("%s: row %q of %d cells, want %d", name, row, Width(row), w)
				}
			}
		}
	})
}

func TestBesideIsExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawWords(t), drawWords(t)
		wa, wb := rapid.IntRange(0, 60).Draw(t, "wa"), rapid.IntRange(0, 60).Draw(t, "wb")
		h, gap := rapid.IntRange(0, 40).Draw(t, "h"), rapid.IntRange(0, 3).Draw(t, "gap")
		rows := Beside(h, gap, Column{a, wa}, Column{b, wb})
		if len(rows) != h {
			t.Fatalf("%d rows, want %d", len(rows), h)
		}
		for _, row := range rows {
			if Width(row) != wa+gap+wb {
				t.Fatalf("row %q of %d cells, want %d", row, Width(row), wa+gap+wb)
			}
		}
	})
}

func TestBeside(t *testing.T) {
	got := Beside(2, 1, Column{[]string{"C1", "C2"}, 3}, Column{[]string{"holding"}, 5})
	for i, want := range []string{"C1  hold…", "C2       "} {
		if got[i] != want {
			t.Errorf("row %d: got %q, want %q", i, got[i], want)
		}
	}
}

func TestCentre(t *testing.T) {
	got := strings.Join(Centre([]string{"no tank", "is due"}, 11, 4), "|")
	if want := "           |  no tank  |  is due   |           "; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestWrap(t *testing.T) {
	for _, c := range []struct {
		name, in string
		w        int
		want     string
	}{
		{"at spaces", "siphon the tank down to the cone", 12, "siphon the|tank down to|the cone"},
		{"long word", "thermometers", 5, "therm|omete|rs"},
		{"own breaks", "a\n\nb", 5, "a||b"},
		{"empty", "", 5, ""},
		{"wide letters", "北北北", 4, "北北|北"},
		{"a letter that fits on no line", "a北b", 1, "a|b"},
		{"styling is dropped", red + "warm" + reset + " water", 5, "warm|water"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := strings.Join(Wrap(c.in, c.w), "|"); got != c.want {
				t.Errorf("got %q, want %q", got, c.want)
			}
		})
	}
	if got := Wrap("x", 0); got != nil {
		t.Errorf("no cells: got %q, want no lines", got)
	}
}

// FuzzWrap holds that no line is too wide and that no word is lost.
func FuzzWrap(f *testing.F) {
	f.Add("siphon the tank down", 7)
	f.Add("北北北 e\u0301\u0301 👩‍🔬", 3)
	f.Fuzz(func(t *testing.T, s string, w int) {
		w = 2 + max(w, -w)%80
		lines := Wrap(s, w)
		for _, line := range lines {
			if ansi.StringWidth(line) > w {
				t.Errorf("Wrap(%q, %d): line %q is too wide", s, w, line)
			}
		}
		squeeze := func(s string) string { return strings.ReplaceAll(s, " ", "") }
		var want strings.Builder
		for part := range strings.SplitSeq(s, "\n") {
			want.WriteString(strings.Join(strings.Fields(Clean(part)), ""))
		}
		if got := squeeze(strings.Join(lines, "")); Width(want.String()) <= w*len(lines) && got != want.String() {
			t.Errorf("Wrap(%q, %d) = %q lost text", s, w, lines)
		}
	})
}

func BenchmarkFrame(b *testing.B) {
	lines := make([]string, 60)
	for i := range lines {
		lines[i] = strings.Repeat(red+"C5 27.4 °C"+reset+" │ ", 12)
	}
	for b.Loop() {
		Frame(lines, 200, 60)
	}
}
