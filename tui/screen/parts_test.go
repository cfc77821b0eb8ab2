package screen_test

import (
	"fmt"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/tui/keys"
	"drainboard/tui/screen"
	"drainboard/tui/screen/screentest"
	"drainboard/tui/text"
	"drainboard/tui/theme"
)

func form() screen.Form {
	return screen.Form{Rows: []screen.Row{
		{Label: "Water of C5", Field: screen.NewField(screen.Number, 5).With("27.4"), Unit: "°C", Note: "in the middle of the tank"},
		{Label: "Water of C1", Field: screen.NewField(screen.Number, 5), Unit: "°C"},
		{Label: "Note", Field: screen.NewField(screen.Line, 60), Problem: "too long"},
	}}
}

func TestFormView(t *testing.T) {
	got := screentest.Join(form().View(theme.Bare(false), 40, 6))
	want := `► Water of C5  27.4_  °C
    in the middle of the tank
  Water of C1         °C
  Note
     too long

`
	if got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

func TestFormMoves(t *testing.T) {
	f := form()
	for _, c := range []struct {
		key   string
		focus int
		out   screen.Outcome
	}{
		{"up", 0, screen.Edited},
		{"enter", 1, screen.Edited},
		{"7", 1, screen.Edited},
		{"down", 2, screen.Edited},
		{"tab", 2, screen.Edited},
		{"x", 2, screen.Edited},
		{"enter", 2, screen.Entered},
		{"shift+tab", 1, screen.Edited},
		{"u", 1, screen.Ignored},
	} {
		var out screen.Outcome
		f, out = f.Update(keys.Msg(c.key))
		if f.Focus != c.focus || out != c.out {
			t.Fatalf("%s: focus %d, outcome %v, want %d, %v", c.key, f.Focus, out, c.focus, c.out)
		}
	}
	if got := f.Rows[1].Field.Text(); got != "7" {
		t.Errorf("the field in focus holds %q, want 7", got)
	}
	if f.Rows[2].Problem != "" {
		t.Errorf("the problem stays after the text has changed: %q", f.Rows[2].Problem)
	}
	if _, out := (screen.Form{}).Update(keys.Msg("enter")); out != screen.Ignored {
		t.Errorf("a form without rows: outcome %v", out)
	}
}

func TestFormIsAValue(t *testing.T) {
	f := form()
	g, _ := f.Update(keys.Msg("5"))
	if f.Rows[0].Field.Text() != "27.4" || g.Rows[0].Field.Text() != "27.45" {
		t.Errorf("copies share their rows: %q, %q", f.Rows[0].Field.Text(), g.Rows[0].Field.Text())
	}
}

func tanks(n int) screen.List {
	var l screen.List
	for i := range n {
		l.Items = append(l.Items, fmt.Sprintf("C%d holding", i+1))
	}
	return l
}

func TestListView(t *testing.T) {
	l := tanks(9)
	l.Chosen = 4
	got := screentest.Join(l.View(theme.Bare(false), 14, 5))
	if want := "⋮ C3 holding\n  C4 holding\n► C5 holding\n  C6 holding\n⋮ C7 holding\n"; got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

func TestListMoves(t *testing.T) {
	l := tanks(30)
	for _, c := range []struct {
		key    string
		chosen int
		out    screen.Outcome
	}{
		{"up", 0, screen.Edited},
		{"down", 1, screen.Edited},
		{"pgdown", 11, screen.Edited},
		{"end", 29, screen.Edited},
		{"down", 29, screen.Edited},
		{"pgup", 19, screen.Edited},
		{"home", 0, screen.Edited},
		{"enter", 0, screen.Entered},
		{"u", 0, screen.Ignored},
	} {
		var out screen.Outcome
		l, out = l.Update(keys.Msg(c.key))
		if l.Chosen != c.chosen || out != c.out {
			t.Fatalf("%s: chosen %d, outcome %v, want %d, %v", c.key, l.Chosen, out, c.chosen, c.out)
		}
	}
	if _, out := (screen.List{}).Update(keys.Msg("enter")); out != screen.Ignored {
		t.Errorf("an empty list lets nothing be chosen: outcome %v", out)
	}
}

func TestPage(t *testing.T) {
	p := screen.Page{}
	for i := range 10 {
		p.Lines = append(p.Lines, fmt.Sprint("line ", i))
	}
	for _, c := range []struct {
		key string
		top int
	}{{"up", 0}, {"down", 1}, {"pgdown", 4}, {" ", 6}, {"end", 6}, {"pgup", 3}, {"home", 0}} {
		p, _ = p.Update(keys.Msg(c.key), 4)
		if p.Top != c.top {
			t.Fatalf("%s: top %d, want %d", c.key, p.Top, c.top)
		}
	}
	p.Top = 2
	got := screentest.Join(p.View(theme.Bare(false), 8, 3))
	if want := "line 2 ⋮\nline 3\nline 4 ⋮\n"; got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

func table() keys.Table {
	return keys.Table{Title: "Board", Bindings: []keys.Binding{
		{Action: "open", Keys: []string{"enter"}, Short: "open", Long: "Open the chosen tank."},
		{Action: "session", Keys: []string{"s"}, Short: "change session", Long: "Plan the next change session."},
		{Action: "wall", Keys: []string{"w"}, Short: "wall", Long: "Names and states only, to be read from across the room."},
	}}.With(keys.Everywhere()).Off("wall", "the window is too small")
}

func TestFooterDropsTheLastButHelp(t *testing.T) {
	bare := theme.Bare(false)
	for w, want := range map[int]string{
		80: "Enter open   s change session   ? help   Esc back   / find   u undo",
		50: "Enter open   s change session   ? help   Esc back",
		38: "Enter open   s change session   ? help",
		20: "Enter open   ? help",
		8:  "? help",
		4:  "? h…",
	} {
		if got := strings.TrimRight(screen.Footer(table(), bare, w), " "); got != want {
			t.Errorf("%d cells: got %q, want %q", w, got, want)
		}
	}
}

func TestHelpLines(t *testing.T) {
	got := strings.Join(screen.HelpLines(theme.Bare(false), 44, table()), "\n")
	for _, want := range []string{
		"Board\nEnter   Open the chosen tank.\n",
		"\nw       Names and states only, to be read\n        from across the room. Not now: the\n        window is too small.\n",
		"\n?, F1   Show what the keys do here.\n",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("got\n%s\nwant in it\n%s", got, want)
		}
	}
}

// TestPartsAtEverySize draws all parts with long, wide and styled text.
func TestPartsAtEverySize(t *testing.T) {
	th := theme.Build(true, theme.Ansi256, false)
	f, l, p := form(), tanks(100), screen.Page{Top: 3}
	f.Rows = append(f.Rows, screen.Row{Label: strings.Repeat("北", 200), Field: screen.NewField(screen.Line, 300).With(strings.Repeat("lang ", 60)), Unit: "µm", Problem: strings.Repeat("x", 300)})
	f.Focus = 3
	l.Items[50] = th.Overdue.Render(strings.Repeat("overdue ", 50))
	l.Chosen = 50
	screentest.EverySize(t, func(w, h int) []string {
		p.Lines = []string{strings.Repeat("line ", 50), "", "3", "4", "5", "6", "7"}
		rows := []string{screen.Footer(table(), th, w)}
		third := (h - 1) / 3
		rows = append(rows, f.View(th, w, third)...)
		rows = append(rows, l.View(th, w, third)...)
		return append(rows, p.View(th, w, h-1-2*third)...)
	})
	for _, c := range [][2]int{{0, 5}, {5, 0}, {-1, -1}, {1, 1}, {3, 2}} {
		w, h := c[0], c[1]
		for name, rows := range map[string][]string{"form": f.View(th, w, h), "list": l.View(th, w, h), "page": p.View(th, w, h)} {
			if want := max(0, min(h, h*w)); len(rows) != want && w > 0 {
				t.Errorf("%s at %dx%d: %d rows", name, w, h, len(rows))
			}
			for _, row := range rows {
				if text.Width(row) != w {
					t.Errorf("%s at %dx%d: row %q", name, w, h, row)
				}
			}
		}
	}
	for w := range 60 {
		for _, line := range screen.HelpLines(th, w, table()) {
			if w > 4 && text.Width(line) > w {
				t.Errorf("help at %d cells: line %q of %d", w, line, text.Width(line))
			}
		}
	}
}

// sample is the smallest screen that does something.
type sample struct{ field screen.Field }

func (s sample) Init() tea.Cmd    { return nil }
func (s sample) Title() string    { return "Sample" }
func (s sample) Capturing() bool  { return true }
func (s sample) Keys() keys.Table { return table() }

func (s sample) View(w, h int) []string {
	return text.Frame([]string{s.field.View(theme.Bare(false), w, true)}, w, h)
}

func (s sample) Update(msg tea.Msg) (screen.Screen, tea.Cmd) {
	k, ok := msg.(tea.KeyMsg)
	if !ok {
		return s, nil
	}
	if a, _ := s.Keys().Match(k); a == "open" {
		return s, tea.Batch(screen.Send(screen.Open{Name: "tank", Arg: s.field.Text()}), screen.Send(screen.Beep{Times: 2}))
	}
	s.field, _ = s.field.Update(k)
	return s, nil
}

func TestScreenThroughItsKeys(t *testing.T) {
	var s screen.Screen = sample{screen.NewField(screen.Number, 6)}
	s, sent := screentest.Type(s, "27.4")
	if len(sent) != 0 {
		t.Errorf("typing sends %v", sent)
	}
	_, sent = screentest.Press(t, s, "open")
	if len(sent) != 2 {
		t.Fatalf("sent %v, want two messages", sent)
	}
	if got := sent[0]; got != (screen.Open{Name: "tank", Arg: "27.4"}) {
		t.Errorf("sent %#v, want the figure handed on", got)
	}
	if got := sent[1]; got != (screen.Beep{Times: 2}) {
		t.Errorf("sent %#v, want two beeps", got)
	}
}

// recorder catches what screentest reports.
type recorder struct {
	testing.TB
	failed bool
}

func (r *recorder) Helper()               {}
func (r *recorder) Errorf(string, ...any) { r.failed = true }

func TestEverySizeFindsWhatIsWrong(t *testing.T) {
	t.Setenv("DRAINBOARD_EVERY_SIZE", "1")
	for name, view := range map[string]func(w, h int) []string{
		"one row short":      func(w, h int) []string { return text.Frame(nil, w, h-1) },
		"one cell wide":      func(w, h int) []string { return text.Frame(nil, w+1, h) },
		"only at one size":   func(w, h int) []string { return text.Frame(nil, w+btoi(w == 20+7*9 && h == 44), h) },
		"line break in rows": func(w, h int) []string { return append(text.Frame(nil, w, h-1), strings.Repeat(" ", w)+"\n") },
	} {
		r := &recorder{TB: t}
		if screentest.EverySize(r, view); !r.failed {
			t.Errorf("%s is not found", name)
		}
	}
	r := &recorder{TB: t}
	if screentest.EverySize(r, func(w, h int) []string { return text.Frame(nil, w, h) }); r.failed {
		t.Error("an exact view is refused")
	}
}

func btoi(b bool) int {
	if b {
		return 1
	}
	return 0
}
