package theme

import (
	"fmt"
	"reflect"
	"strings"
	"testing"

	"github.com/charmbracelet/lipgloss"
	"golang.org/x/text/width"

	"drainboard/tui/text"
)

func env(pairs ...string) func(string) string {
	return func(name string) string {
		for i := 0; i < len(pairs); i += 2 {
			if pairs[i] == name {
				return pairs[i+1]
			}
		}
		return ""
	}
}

func TestDepth(t *testing.T) {
	xterm := []string{"TERM", "xterm-256color"}
	for _, c := range []struct {
		name  string
		color string
		env   []string
		want  Depth
	}{
		{"256", "", xterm, Ansi256},
		{"truecolor", "auto", append(xterm, "COLORTERM", "truecolor"), TrueColor},
		{"16", "", []string{"TERM", "linux"}, Sixteen},
		{"no colours", "", []string{"TERM", "vt220"}, Attributes},
		{"NO_COLOR with any value", "", append(xterm, "NO_COLOR", "0"), Attributes},
		{"NO_COLOR empty", "", append(xterm, "NO_COLOR", ""), Ansi256},
		{"never", "never", xterm, Attributes},
		{"always beats NO_COLOR", "always", append(xterm, "NO_COLOR", "1"), Ansi256},
		{"always without TERM", "always", nil, Sixteen},
		{"dumb", "", []string{"TERM", "dumb", "COLORTERM", "truecolor"}, None},
		{"no TERM", "", nil, None},
		{"Windows Terminal", "", []string{"WT_SESSION", "x"}, TrueColor},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := New(Options{Color: c.color, Env: env(c.env...)}).Depth; got != c.want {
				t.Errorf("got depth %v, want %v", got, c.want)
			}
		})
	}
}

func TestGround(t *testing.T) {
	for _, c := range []struct {
		name, theme, colorfgbg string
		dark                   bool
	}{
		{"unknown", "", "", true},
		{"light by COLORFGBG", "auto", "0;15", false},
		{"light grey by COLORFGBG", "auto", "0;7", false},
		{"dark by COLORFGBG", "auto", "15;0", true},
		{"dark grey by COLORFGBG", "auto", "15;8", true},
		{"three parts", "auto", "0;default;15", false},
		{"nonsense", "auto", "white", true},
		{"asked for", "dark", "0;15", true},
		{"asked for", "light", "15;0", false},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := New(Options{Theme: c.theme, Env: env("COLORFGBG", c.colorfgbg)}).Dark; got != c.dark {
				t.Errorf("dark = %v, want %v", got, c.dark)
			}
		})
	}
}

func TestCheck(t *testing.T) {
	for _, c := range []struct {
		o    Options
		want string
	}{
		{Options{}, ""},
		{Options{Theme: "light", Color: "never"}, ""},
		{Options{Theme: "blue"}, `theme "blue" is not known: use auto, dark or light`},
		{Options{Color: "yes"}, `color "yes" is not known: use auto, always or never`},
	} {
		got := ""
		if err := c.o.Check(); err != nil {
			got = err.Error()
		}
		if got != c.want {
			t.Errorf("Check(%+v) = %q, want %q", c.o, got, c.want)
		}
	}
}

func TestASCII(t *testing.T) {
	for _, c := range []struct {
		name  string
		o     Options
		ascii bool
	}{
		{"a terminal with glyphs", Options{Env: env("TERM", "xterm")}, false},
		{"asked for", Options{ASCII: true, Env: env("TERM", "xterm")}, true},
		{"dumb", Options{Env: env("TERM", "dumb")}, true},
		{"frames two cells wide", Options{Env: env("RUNEWIDTH_EASTASIAN", "1")}, true},
		{"frames one cell wide", Options{Env: env("RUNEWIDTH_EASTASIAN", "0")}, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			th := New(c.o)
			if th.ASCII != c.ascii || (th.Boxes.Single.Left == "|") != c.ascii {
				t.Errorf("ascii = %v, frame %q, want %v", th.ASCII, th.Boxes.Single.Left, c.ascii)
			}
		})
	}
}

// styles gives each style of a theme by its field name.
func styles(th Theme) map[string]lipgloss.Style {
	out := map[string]lipgloss.Style{}
	v := reflect.ValueOf(th)
	for i := range v.NumField() {
		if s, ok := v.Field(i).Interface().(lipgloss.Style); ok {
			out[v.Type().Field(i).Name] = s
		}
	}
	return out
}

func TestStylesKeepTextAndWidth(t *testing.T) {
	t.Setenv("CLICOLOR_FORCE", "1") // must not matter: the theme reads no environment
	for d := None; d <= TrueColor; d++ {
		for name, s := range styles(Build(true, d, false)) {
			got := s.Render("C5 27.4 °C")
			if text.Clean(got) != "C5 27.4 °C" || text.Width(got) != 10 {
				t.Errorf("depth %v, %s: %q", d, name, got)
			}
			if has := strings.Contains(got, "\x1b"); has && d == None {
				t.Errorf("depth none, %s: %q has an escape sequence", name, got)
			}
			colour := strings.Contains(got, "[3") || strings.Contains(got, ";3") || strings.Contains(got, "[4") && !strings.Contains(got, "[4m")
			if d == Attributes && colour {
				t.Errorf("depth attributes, %s: %q has a colour", name, got)
			}
		}
	}
}

// TestBadgesSetInkAndFill allows one step of rounding on the way to the
// terminal.
func TestBadgesSetInkAndFill(t *testing.T) {
	th := Build(true, TrueColor, false)
	for name, c := range map[string]struct {
		s    lipgloss.Style
		want [6]int // ink, fill
	}{
		"overdue": {th.Overdue, [6]int{0, 0, 0, 0xD5, 0x5E, 0x00}},
		"due":     {th.Due, [6]int{0, 0, 0, 0xF0, 0xE4, 0x42}},
		"moving":  {th.Moving, [6]int{0, 0, 0, 0x56, 0xB4, 0xE9}},
		"action":  {th.Action, [6]int{255, 255, 255, 0x00, 0x72, 0xB2}},
		"saved":   {th.Saved, [6]int{0, 0, 0, 0x00, 0x9E, 0x73}},
	} {
		var got [6]int
		line := c.s.Render("C5")
		_, err := fmt.Sscanf(line, "\x1b[38;2;%d;%d;%d;48;2;%d;%d;%dmC5", &got[0], &got[1], &got[2], &got[3], &got[4], &got[5])
		if err != nil {
			t.Errorf("%s: %q: %v", name, line, err)
		}
		for i := range got {
			if d := got[i] - c.want[i]; d < -1 || d > 1 {
				t.Errorf("%s: got ink and fill %v, want %v", name, got, c.want)
				break
			}
		}
	}
}

// TestMarks holds one cell for each mark and no look-alikes among states.
func TestMarks(t *testing.T) {
	for _, ascii := range []bool{false, true} {
		m := marks(ascii)
		seen := map[string]string{}
		for i, state := range []string{m.Due, m.Overdue, m.Ready, m.Dirty, m.Washed, m.Out, m.Suspect, m.Hold, m.Moving, m.Done, m.Deferred, m.Odd, m.Stale} {
			name := reflect.TypeOf(m).Field(i).Name
			oneCell(t, name, state, ascii)
			if other, twice := seen[state]; twice {
				t.Errorf("ascii %v: %s and %s look the same", ascii, name, other)
			}
			seen[state] = name
			if k := width.LookupRune([]rune(state)[0]).Kind(); k == width.EastAsianAmbiguous || k == width.EastAsianWide {
				t.Errorf("%s: %q is wide in some terminals", name, state)
			}
		}
		for _, other := range append(m.Level[:], m.Pointer, m.Arrow, m.Bullet, m.More) {
			oneCell(t, "drawing", other, ascii)
		}
		for _, b := range []Box{boxes(ascii).Single, boxes(ascii).Double, boxes(ascii).Open} {
			for _, g := range []string{b.TopLeft, b.Top, b.TopRight, b.Left, b.Right, b.BottomLeft, b.Bottom, b.BottomRight} {
				oneCell(t, "frame", g, ascii)
			}
		}
	}
}

func oneCell(t *testing.T, name, glyph string, ascii bool) {
	t.Helper()
	if text.Width(glyph) != 1 || len([]rune(glyph)) != 1 {
		t.Errorf("%s: %q is not one cell", name, glyph)
	}
	if ascii && (len(glyph) != 1 || glyph[0] > '~') {
		t.Errorf("%s: %q is not ASCII", name, glyph)
	}
}

func TestFill(t *testing.T) {
	nan := 0.0
	nan /= nan
	for _, c := range []struct {
		share float64
		want  string
	}{{0, " "}, {-1, " "}, {nan, " "}, {0.001, "▁"}, {0.5, "▄"}, {0.999, "▇"}, {1, "█"}, {7, "█"}} {
		if got := marks(false).Fill(c.share); got != c.want {
			t.Errorf("Fill(%v) = %q, want %q", c.share, got, c.want)
		}
	}
}

func TestAround(t *testing.T) {
	th := Bare(false)
	got := strings.Join(th.Boxes.Double.Around(th.FrameOverdue, " C5 ", []string{"late"}, 10, 4), "\n")
	if want := "╔═ C5 ═══╗\n║late    ║\n║        ║\n╚════════╝"; got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

func TestAroundIsExact(t *testing.T) {
	th := Build(true, Ansi256, false)
	for w := range 30 {
		for h := range 10 {
			rows := th.Boxes.Open.Around(th.Frame, th.Title.Render("a long title\n北"), []string{"\x1b[1mbody that is wide\x1b[0m"}, w, h)
			if want := min(h, h*w); len(rows) != want {
				t.Fatalf("%dx%d: %d rows, want %d", w, h, len(rows), want)
			}
			for _, row := range rows {
				if text.Width(row) != w {
					t.Fatalf("%dx%d: row %q of %d cells", w, h, row, text.Width(row))
				}
			}
		}
	}
}
