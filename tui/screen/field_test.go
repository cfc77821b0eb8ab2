package screen_test

import (
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/tui/keys"
	"drainboard/tui/screen"
	"drainboard/tui/screen/screentest"
	"drainboard/tui/text"
	"drainboard/tui/theme"
)

func paste(s string) tea.KeyMsg {
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(s), Paste: true}
}

// into presses keys by name, each letter of another word by itself, and gives
// the last outcome.
func into(f screen.Field, words ...string) (screen.Field, screen.Outcome) {
	var out screen.Outcome
	for _, w := range words {
		for _, msg := range keys.Normalise(keys.Msg(w)) {
			f, out = f.Update(msg)
		}
	}
	return f, out
}

func TestField(t *testing.T) {
	for _, c := range []struct {
		name  string
		kind  screen.Kind
		typed []string
		want  string
		out   screen.Outcome
	}{
		{"figure with a point", screen.Number, []string{"27.4"}, "27.4", screen.Edited},
		{"figure with a comma", screen.Number, []string{"27,4"}, "27,4", screen.Edited},
		{"second decimal sign", screen.Number, []string{"27.4,"}, "27.4", screen.Rejected},
		{"decimal sign in a whole number", screen.Whole, []string{"720."}, "720", screen.Rejected},
		{"letter in a figure is left to the screen", screen.Number, []string{"7u"}, "7", screen.Ignored},
		{"plus in a figure is left to the screen", screen.Whole, []string{"7+"}, "7", screen.Ignored},
		{"too long", screen.Whole, []string{"1234567890123"}, "1234567890", screen.Rejected},
		{"enter", screen.Number, []string{"7", "enter"}, "7", screen.Entered},
		{"backspace", screen.Number, []string{"27", "backspace"}, "2", screen.Edited},
		{"backspace in an empty field", screen.Number, []string{"backspace"}, "", screen.TakeBack},
		{"backspace until empty is no take-back", screen.Number, []string{"2", "backspace"}, "", screen.Edited},
		{"backspace at the start of a text", screen.Number, []string{"2", "home", "backspace"}, "2", screen.Edited},
		{"in the middle", screen.Number, []string{"274", "left", "."}, "27.4", screen.Edited},
		{"delete", screen.Number, []string{"274", "home", "delete"}, "74", screen.Edited},
		{"delete at the end", screen.Number, []string{"274", "delete"}, "274", screen.Edited},
		{"end", screen.Number, []string{"74", "home", "2", "end", "5"}, "2745", screen.Edited},
		{"name", screen.Name, []string{"C-5"}, "C-5", screen.Edited},
		{"no space before a name", screen.Name, []string{" "}, "", screen.Rejected},
		{"space in a name", screen.Name, []string{"C", " ", "5"}, "C 5", screen.Edited},
		{"note", screen.Line, []string{"air on?"}, "air on?", screen.Edited},
		{"letter and its accent", screen.Line, []string{"e\u0301"}, "e\u0301", screen.Edited},
		{"accent alone", screen.Line, []string{"\u0301"}, "", screen.Rejected},
		{"function key", screen.Line, []string{"f5"}, "", screen.Ignored},
		{"up", screen.Line, []string{"up"}, "", screen.Ignored},
	} {
		t.Run(c.name, func(t *testing.T) {
			f, out := into(screen.NewField(c.kind, 10), c.typed...)
			if f.Text() != c.want || out != c.out {
				t.Errorf("got %q, outcome %v, want %q, %v", f.Text(), out, c.want, c.out)
			}
		})
	}
}

func TestFieldPaste(t *testing.T) {
	for _, c := range []struct {
		name  string
		kind  screen.Kind
		paste string
		want  string
		out   screen.Outcome
	}{
		{"figure", screen.Number, " 98,49\r\n", "98,49", screen.Edited},
		{"column into one field", screen.Number, "98\n97", "", screen.Rejected},
		{"words into a figure", screen.Number, "about 98", "", screen.Rejected},
		{"two lines of a note", screen.Line, "air\non", "air on", screen.Edited},
		{"escape sequence in a note", screen.Line, "\x1b[31mair", "air", screen.Edited},
		{"nothing", screen.Line, "", "", screen.Rejected},
		{"too long", screen.Line, "the air is on", "", screen.Rejected},
	} {
		t.Run(c.name, func(t *testing.T) {
			f, out := screen.NewField(c.kind, 10).Update(paste(c.paste))
			if f.Text() != c.want || out != c.out {
				t.Errorf("got %q, outcome %v, want %q, %v", f.Text(), out, c.want, c.out)
			}
		})
	}
}

func TestFieldIsAValue(t *testing.T) {
	f, _ := into(screen.NewField(screen.Line, 20), "abc")
	g, _ := into(f, "left", "left", "backspace", "xyz")
	h, _ := into(f, "d")
	if f.Text() != "abc" || g.Text() != "xyzbc" || h.Text() != "abcd" {
		t.Errorf("copies share their text: %q %q %q", f.Text(), g.Text(), h.Text())
	}
}

func TestParseNumber(t *testing.T) {
	for in, want := range map[string]float64{"27.4": 27.4, "27,4": 27.4, " 7 ": 7, "5.": 5, ".5": 0.5, "007": 7} {
		if got, ok := screen.ParseNumber(in); !ok || got != want {
			t.Errorf("ParseNumber(%q) = %v, %v, want %v", in, got, ok, want)
		}
	}
	for _, in := range []string{"", ".", ",", "1.2.3", "1,2.3", "-1", "+1", "1e3", "0x10", "NaN", "Inf", "1 2", "٣"} {
		if got, ok := screen.ParseNumber(in); ok {
			t.Errorf("ParseNumber(%q) = %v, want it refused", in, got)
		}
	}
}

func TestColumn(t *testing.T) {
	got, ok := screen.Column(paste("98,49\r\n97.88\t101;99\n"))
	if want := "98,49 97.88 101 99"; !ok || join(got) != want {
		t.Errorf("got %q, %v, want %q", join(got), ok, want)
	}
	if _, ok := screen.Column(paste("98,49\n")); ok {
		t.Error("one figure is no column")
	}
	if _, ok := screen.Column(keys.Msg("98 97")); ok {
		t.Error("typed text is no column")
	}
}

func join(words []string) string {
	out := ""
	for i, w := range words {
		if i > 0 {
			out += " "
		}
		out += w
	}
	return out
}

func TestSameName(t *testing.T) {
	for _, c := range []struct {
		typed, name string
		want        bool
	}{{"c5", "C5", true}, {" C5 ", "C5", true}, {"C6", "C5", false}, {"", "C5", false}, {"köln", "KÖLN", true}} {
		if got := screen.SameName(c.typed, c.name); got != c.want {
			t.Errorf("SameName(%q, %q) = %v", c.typed, c.name, got)
		}
	}
}

func TestFieldView(t *testing.T) {
	bare := theme.Bare(false)
	for _, c := range []struct {
		name    string
		f       screen.Field
		w       int
		focused bool
		want    string
	}{
		{"empty", screen.NewField(screen.Number, 9), 6, false, "      "},
		{"empty, focused", screen.NewField(screen.Number, 9), 6, true, "_     "},
		{"text", screen.NewField(screen.Number, 9).With("27.4"), 6, true, "27.4_ "},
		{"long, focused at its end", screen.NewField(screen.Line, 20).With("the air is on"), 6, true, "…s on_"},
		{"long, not focused", screen.NewField(screen.Line, 20).With("the air is on"), 6, false, "the a…"},
		{"one cell", screen.NewField(screen.Line, 20).With("air"), 1, true, "…"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := c.f.View(bare, c.w, c.focused); got != c.want {
				t.Errorf("got %q, want %q", got, c.want)
			}
		})
	}
	f, _ := into(screen.NewField(screen.Number, 9).With("27"), "left")
	styled := theme.Build(true, theme.TrueColor, false)
	if got, want := f.View(styled, 4, true), "2"+styled.Focus.Render("7")+" "; text.Fit(want, 4) != got {
		t.Errorf("cursor in the middle: got %q, want %q", got, want)
	}
}

// FuzzField types anything anywhere: the text stays clean and within its length
// and the view exact.
func FuzzField(f *testing.F) {
	f.Add(uint8(3), "air on\x1b[31m", []byte{0, 1, 2, 3, 4, 5, 6, 7}, 9)
	f.Add(uint8(0), "27.4,", []byte{1, 1, 1, 6, 2}, 4)
	f.Add(uint8(2), "e\u0301北\u0301", []byte{2, 0, 7, 0}, 5)
	moves := []string{"backspace", "left", "home", "right", "end", "delete"}
	f.Fuzz(func(t *testing.T, kind uint8, typed string, script []byte, w int) {
		field := screen.NewField(screen.Kind(kind%4), 12)
		w = max(0, min(w, 100))
		for _, b := range script {
			switch {
			case int(b) < len(moves):
				field, _ = field.Update(keys.Msg(moves[b]))
			case b%2 == 0:
				field, _ = field.Update(paste(typed))
			default:
				for _, msg := range keys.Normalise(keys.Msg(typed)) {
					field, _ = field.Update(msg)
				}
			}
			got := field.Text()
			if text.Clean(got) != got || len([]rune(got)) > 12 {
				t.Fatalf("field holds %q", got)
			}
			for _, focused := range []bool{true, false} {
				screentest.Exact(t, []string{field.View(theme.Build(true, theme.Ansi256, false), w, focused)}, w, 1)
			}
		}
	})
}
