package tui

import (
	"strconv"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/tui/keys"
	"drainboard/tui/screen"
	"drainboard/tui/text"
)

func itoa(n int) string { return strconv.Itoa(n) }

// close is the action by which a cover goes away.
const (
	closeCover keys.Action = "close"
	accept     keys.Action = "accept"
)

// help shows what the keys do.
type help struct{ page screen.Page }

func (a *App) newHelp() cover {
	w := max(20, a.w)
	return &help{screen.Page{Lines: screen.HelpLines(a.desk.Theme, w, a.top().Keys(), everywhere())}}
}

func (c *help) keys() keys.Table {
	return keys.Table{Title: "Help", Bindings: []keys.Binding{
		{Action: closeCover, Keys: []string{"esc", "?", "f1", "q", "enter"}, Short: "close", Long: "Close the help."},
		{Action: "scroll", Keys: []string{"up", "down", "pgup", "pgdown"}, Label: "arrows", Short: "scroll", Long: "Scroll."},
	}}
}

func (c *help) capturing() bool { return false }

func (c *help) update(a *App, msg tea.KeyMsg) tea.Cmd {
	if action, _ := c.keys().Match(msg); action == closeCover {
		a.cover = nil
		return nil
	}
	c.page, _ = c.page.Update(msg, a.h-1)
	return nil
}

func (c *help) view(a *App, w, h int) []string { return c.page.View(a.desk.Theme, w, h) }

// question asks before something durable or final is done.
type question struct {
	ask, beneath string
	yes          func(*App) tea.Cmd
}

func newQuestion(ask, beneath string, yes func(*App) tea.Cmd) cover {
	return &question{ask, beneath, yes}
}

func (c *question) keys() keys.Table {
	return keys.Table{Title: "Question", Bindings: []keys.Binding{
		{Action: accept, Keys: []string{"enter"}, Short: "yes", Long: "Do it."},
		{Action: closeCover, Keys: []string{"esc"}, Short: "no", Long: "Leave everything as it is."},
	}}
}

func (c *question) capturing() bool { return false }

func (c *question) update(a *App, msg tea.KeyMsg) tea.Cmd {
	action, _ := c.keys().Match(msg)
	switch action {
	case accept:
		a.cover = nil
		return c.yes(a)
	case closeCover:
		a.cover = nil
	}
	return nil
}

func (c *question) view(a *App, w, h int) []string {
	var lines []string
	for _, l := range text.Wrap(text.Clean(c.ask), max(1, w-4)) {
		lines = append(lines, "  "+a.desk.Theme.Strong.Render(l))
	}
	lines = append(lines, "")
	for _, l := range text.Wrap(text.Clean(c.beneath), max(1, w-4)) {
		lines = append(lines, "  "+l)
	}
	lines = append(lines, "", "  "+a.desk.Theme.Action.Render(" Enter: yes ")+"  Esc: no")
	return text.Centre(lines, w, h)
}

// notices are lines to be read once at the start.
type notices struct{ page screen.Page }

func newNotices(lines []string) cover { return &notices{screen.Page{Lines: lines}} }

func (c *notices) keys() keys.Table {
	return keys.Table{Title: "Notice", Bindings: []keys.Binding{
		{Action: closeCover, Keys: []string{"enter", "esc"}, Short: "go on", Long: "Go on to the board."},
	}}
}

func (c *notices) capturing() bool { return false }

func (c *notices) update(a *App, msg tea.KeyMsg) tea.Cmd {
	if action, _ := c.keys().Match(msg); action == closeCover {
		a.cover = nil
	}
	return nil
}

func (c *notices) view(a *App, w, h int) []string {
	lines := []string{a.desk.Theme.Title.Render("Before you start"), ""}
	for _, notice := range c.page.Lines {
		for _, l := range text.Wrap(text.Clean(notice), max(1, w-2)) {
			lines = append(lines, " "+l)
		}
		lines = append(lines, "")
	}
	return text.Frame(append(lines, " "+a.desk.Theme.Action.Render(" Enter goes on ")), w, h)
}

// finder goes to a tank by its name.
type finder struct {
	field   screen.Field
	problem string
}

func newFinder(begun string) cover {
	return &finder{field: screen.NewField(screen.Name, 16).With(begun)}
}

func (c *finder) keys() keys.Table {
	return keys.Table{Title: "Go to a tank", Bindings: []keys.Binding{
		{Action: accept, Keys: []string{"enter"}, Short: "go", Long: "Go to the tank."},
		{Action: closeCover, Keys: []string{"esc"}, Short: "back", Long: "Back to the screen."},
	}}
}

func (c *finder) capturing() bool { return true }

func (c *finder) update(a *App, msg tea.KeyMsg) tea.Cmd {
	if action, _ := c.keys().Match(msg); action == closeCover {
		a.cover = nil
		return nil
	}
	var out screen.Outcome
	c.field, out = c.field.Update(msg)
	if out != screen.Entered {
		c.problem = ""
		return nil
	}
	t, ok := a.desk.Ledger.Tank(c.field.Text())
	if !ok {
		c.problem = "no tank of this room has that name"
		return a.beep(1)
	}
	a.cover = nil
	return a.open(screen.Open{Name: "tank", Arg: t.Tank.Name})
}

func (c *finder) view(a *App, w, h int) []string {
	th := a.desk.Theme
	lines := []string{
		"  " + th.Title.Render("Go to a tank"), "",
		"  name: " + c.field.View(th, min(20, max(2, w-10)), true), "",
		"  " + th.Error.Render(c.problem),
	}
	return text.Centre(lines, w, h)
}
