package calendar

import (
	tea "github.com/charmbracelet/bubbletea"

	"drainboard/tui/desk"
	"drainboard/tui/keys"
	"drainboard/tui/screen"
)

// Calendar is the screen of the days to come.
type Calendar struct {
	desk   *desk.Desk
	phase  phase
	chosen int // place of the day under the pointer
	page   screen.Page
	pageH  int // of the page in the last frame

	now   reckoned
	level *levelled // nil until it is asked for
}

// phase is what the screen shows.
type phase int

const (
	table phase = iota // every day
	day                // the chosen day
	level              // the proposal
)

// New returns the screen with the pointer on today.
func New(d *desk.Desk) screen.Screen {
	c := &Calendar{desk: d}
	c.sync()
	return c
}

// The actions of the screen.
const (
	open   keys.Action = "day"
	even   keys.Action = "level"
	move   keys.Action = "move"
	scroll keys.Action = "scroll"
)

// Keys is what the keys do now.
func (c *Calendar) Keys() keys.Table {
	if c.phase != table {
		return keys.Table{Title: c.Title(), Bindings: []keys.Binding{
			{Action: scroll, Keys: []string{"up", "down", "pgup", "pgdown", " ", "home", "end"}, Label: "arrows", Short: "scroll", Long: "Scroll through the page."},
		}}
	}
	t := keys.Table{Title: "Calendar", Bindings: []keys.Binding{
		{Action: open, Keys: []string{"enter"}, Short: "the day", Long: "The chosen day in full: the tanks by the hour, what to have ready, and how it is reckoned."},
		{Action: even, Keys: []string{"l"}, Short: "level", Long: "Which changes to make a little early so that no day is too full, and what one more empty tank would save."},
		{Action: move, Keys: []string{"up", "down", "pgup", "pgdown", "home", "end"}, Label: "arrows", Short: "choose", Long: "Choose a day."},
	}}
	if err := c.now.err; err != nil {
		return t.Off(open, err.Error()).Off(even, err.Error())
	}
	return t
}

// Title is the name of the screen.
func (c *Calendar) Title() string {
	switch c.phase {
	case day:
		return "Day"
	case level:
		return "Levelling"
	case table:
	}
	return "Calendar"
}

// Init has nothing to prepare.
func (c *Calendar) Init() tea.Cmd { return nil }

// Capturing is false: nothing is typed here.
func (c *Calendar) Capturing() bool { return false }

// Update takes a key, or the time.
func (c *Calendar) Update(msg tea.Msg) (screen.Screen, tea.Cmd) {
	c.sync()
	key, ok := msg.(tea.KeyMsg)
	if !ok {
		return c, nil
	}
	if key.Type == tea.KeyEsc {
		return c, c.leave()
	}
	action, _ := c.Keys().Match(key)
	switch action {
	case open:
		c.show(day)
	case even:
		c.show(level)
	case move:
		c.step(key)
	case scroll:
		c.page, _ = c.page.Update(key, c.pageH)
	}
	return c, nil
}

// show opens a page at its top.
func (c *Calendar) show(p phase) { c.phase, c.page = p, screen.Page{} }

// leave goes back from a page to the days, and from the days to the screen below.
func (c *Calendar) leave() tea.Cmd {
	if c.phase == table {
		return screen.Send(screen.Back{})
	}
	c.phase = table
	return nil
}

// step moves the pointer.
func (c *Calendar) step(key tea.KeyMsg) {
	l := screen.List{Items: make([]string, len(c.now.Days)), Chosen: c.chosen}
	l, _ = l.Update(key)
	c.chosen = l.Chosen
}
