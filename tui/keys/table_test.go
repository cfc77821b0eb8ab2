package keys

import (
	"slices"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
)

func board() Table {
	return Table{Title: "Board", Bindings: []Binding{
		{Action: "open", Keys: []string{"enter"}, Short: "open", Long: "Open the chosen tank."},
		{Action: "move", Keys: []string{"up", "down"}, Label: "arrows", Long: "Choose a tank."},
		{Action: "wall", Keys: []string{"w"}, Short: "wall", Long: "Show names only, readable from across the room."},
		{Action: "quit", Keys: []string{"q"}, Short: "quit", Long: "Leave the program."},
	}}
}

func TestMatch(t *testing.T) {
	table := board().Off("wall", "the window is too small")
	for _, c := range []struct {
		name   string
		msg    tea.KeyMsg
		action Action
		why    string
	}{
		{"key", Msg("enter"), "open", ""},
		{"one of two keys", Msg("down"), "move", ""},
		{"small letter", Msg("q"), "quit", ""},
		{"caps lock", Msg("Q"), "quit", ""},
		{"disabled", Msg("w"), "", "the window is too small"},
		{"unknown", Msg("x"), "", ""},
		{"pasted", tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("q"), Paste: true}, "", ""},
		{"chord", tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("q"), Alt: true}, "", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			action, ok := table.Match(c.msg)
			if action != c.action || ok != (c.action != "") {
				t.Errorf("Match = %q, %v, want %q", action, ok, c.action)
			}
			why, refused := table.Refused(c.msg)
			if why != c.why || refused != (c.why != "") {
				t.Errorf("Refused = %q, %v, want %q", why, refused, c.why)
			}
		})
	}
}

func TestOffLeavesTheOriginalAlone(t *testing.T) {
	table := board()
	off := table.Off("quit", "")
	if _, ok := table.Match(Msg("q")); !ok {
		t.Error("Off changed the table it was called on")
	}
	if why, _ := off.Refused(Msg("q")); why != "not now" {
		t.Errorf("no reason given: got %q, want a default", why)
	}
	if _, ok := off.On("quit").Match(Msg("q")); !ok {
		t.Error("On does not enable again")
	}
}

func names(rows []Binding) string {
	var out []string
	for _, b := range rows {
		out = append(out, b.Name()+" "+b.Short)
	}
	return strings.Join(out, ", ")
}

func TestFooter(t *testing.T) {
	if got, want := names(board().Off("wall", "no room").Footer()), "Enter open, q quit"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	if got := len(board().With(board()).With(board()).Footer()); got != FooterKeys {
		t.Errorf("%d keys in the footer, want %d", got, FooterKeys)
	}
	full := board().With(board()).With(board()).With(Everywhere()).Footer()
	if got := full[FooterKeys-1].Action; len(full) != FooterKeys || got != Help {
		t.Errorf("a full footer ends with %q, want help", got)
	}
}

func TestKeyNames(t *testing.T) {
	b := Binding{Keys: []string{"enter", "pgdown", " ", "f1", "ctrl+c", "+", "u"}}
	if got, want := b.Names(), "Enter, PgDn, Space, F1, Ctrl+C, +, u"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	if got, want := board().Bindings[1].Names(), "arrows"; got != want {
		t.Errorf("got %q, want the label %q", got, want)
	}
	if got, want := board().Key("open"), "Enter"; got != want {
		t.Errorf("Key(open) = %q, want %q", got, want)
	}
	if got := board().Key("fly"); got != "" {
		t.Errorf("Key of an unknown action = %q", got)
	}
}

func TestPressSetsOffItsAction(t *testing.T) {
	for _, table := range []Table{board(), Everywhere()} {
		for _, b := range table.Bindings {
			if got, _ := table.Match(table.Press(b.Action)); got != b.Action {
				t.Errorf("pressing %s gives %q", b.Action, got)
			}
		}
	}
}

func TestMsgKnowsEveryName(t *testing.T) {
	for _, n := range []string{"enter", "esc", "tab", "shift+tab", "backspace", "delete", "up", "down", "left", "right", "pgup", "pgdown", "home", "end", "f1", "f9", "f12", "ctrl+c", "ctrl+@", " ", "u", "?", "+"} {
		if got := Msg(n).String(); got != n {
			t.Errorf("Msg(%q) prints as %q", n, got)
		}
		if n != "u" && n != "?" && n != "+" && Msg(n).Type == tea.KeyRunes {
			t.Errorf("Msg(%q) is text", n)
		}
	}
}

func TestProblems(t *testing.T) {
	if got := Problems(board(), Everywhere()); got != nil {
		t.Errorf("got %q, want none", got)
	}
	bad := Table{Title: "Bad", Bindings: []Binding{
		{Action: "a", Keys: []string{"q"}, Long: "x"},
		{Action: "b", Keys: []string{"Q"}, Long: "x"},
		{Action: "c", Keys: []string{"q", "ctrl+m", "alt+x"}, Long: "x"},
		{Action: "d"},
	}}
	want := []string{
		"Bad: b: Q differs from a small letter by case only",
		"Bad: a and Bad: c share the key q",
		"Bad: c: terminals report ctrl+m as another key",
		"Bad: c: alt+x is a chord",
		"Bad: d lacks its action, keys or sentence",
	}
	if got := Problems(bad); !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestMarkdown(t *testing.T) {
	got := Markdown(Table{Title: "Board", Bindings: []Binding{
		{Keys: []string{"?", "f1"}, Long: "Help."}, {Keys: []string{"|"}, Long: "Split."},
	}})
	want := "### Board\n\n| Key | What it does |\n|---|---|\n| ?, F1 | Help. |\n| \\| | Split. |\n"
	if got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

func TestBubbles(t *testing.T) {
	b := board().Off("wall", "no room").Bindings[2].Bubbles()
	if b.Enabled() || b.Help().Key != "w" || b.Help().Desc != "wall" {
		t.Errorf("got %+v, enabled %v", b.Help(), b.Enabled())
	}
}

func TestNormalise(t *testing.T) {
	runes := func(s string, alt, paste bool) tea.KeyMsg {
		return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(s), Alt: alt, Paste: paste}
	}
	for _, c := range []struct {
		name string
		in   tea.KeyMsg
		want []string
	}{
		{"letters of one read", runes("uu", false, false), []string{"u", "u"}},
		{"paste stays whole", runes("u1\r", false, true), []string{"[u1\r]"}},
		{"alt and digit", runes("5", true, false), []string{"5"}},
		{"alt and letter", runes("q", true, false), []string{"alt+q"}},
		{"full-width digits", runes("２７", false, false), []string{"2", "7"}},
		{"line feed", tea.KeyMsg{Type: tea.KeyCtrlJ}, []string{"enter"}},
		{"alt and enter", tea.KeyMsg{Type: tea.KeyEnter, Alt: true}, []string{"enter"}},
		{"alt and escape", tea.KeyMsg{Type: tea.KeyEsc, Alt: true}, []string{"esc"}},
		{"control h", tea.KeyMsg{Type: tea.KeyCtrlH}, []string{"backspace"}},
		{"space", Msg(" "), []string{" "}},
		{"nothing", runes("", false, false), nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			var got []string
			for _, k := range Normalise(c.in) {
				got = append(got, k.String())
			}
			if !slices.Equal(got, c.want) {
				t.Errorf("got %q, want %q", got, c.want)
			}
		})
	}
}

func TestGuard(t *testing.T) {
	type press struct {
		key string
		ms  int // since the start
	}
	for _, c := range []struct {
		name      string
		capturing bool
		presses   []press
		want      string // one letter each: y heeded, n swallowed
	}{
		{"bounce", false, []press{{"enter", 0}, {"enter", 60}}, "yn"},
		{"pressed again", false, []press{{"enter", 0}, {"enter", 150}}, "yy"},
		{"held down", false, []press{{"u", 0}, {"u", 100}, {"u", 200}, {"u", 300}}, "ynnn"},
		{"other key between", false, []press{{"+", 0}, {"-", 50}, {"+", 100}}, "yyy"},
		{"digits never", false, []press{{"5", 0}, {"5", 10}, {".", 20}, {".", 30}}, "yyyy"},
		{"digit between", false, []press{{"enter", 0}, {"7", 40}, {"enter", 80}}, "yyy"},
		{"arrows never", false, []press{{"down", 0}, {"down", 30}, {"pgdown", 40}, {"pgdown", 50}}, "yyyy"},
		{"correcting never", false, []press{{"backspace", 0}, {"backspace", 30}}, "yy"},
		{"letters of a name", true, []press{{"A", 0}, {"A", 30}, {" ", 40}, {" ", 50}}, "yyyy"},
		{"enter in a field", true, []press{{"enter", 0}, {"enter", 30}}, "yn"},
		{"case does not matter", false, []press{{"u", 0}, {"U", 30}}, "yn"},
		{"clock set back", false, []press{{"u", 1000}, {"u", 0}}, "yy"},
	} {
		t.Run(c.name, func(t *testing.T) {
			var g Guard
			start := time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC)
			got := ""
			for _, p := range c.presses {
				var ok bool
				g, ok = g.Pass(Msg(p.key), start.Add(time.Duration(p.ms)*time.Millisecond), c.capturing)
				got += map[bool]string{true: "y", false: "n"}[ok]
			}
			if got != c.want {
				t.Errorf("got %s, want %s", got, c.want)
			}
		})
	}
}
