package factform

import (
	tea "github.com/charmbracelet/bubbletea"

	"drainboard/tui/keys"
	"drainboard/tui/screen"
	"drainboard/tui/text"
	"drainboard/tui/theme"
)

// Slip is a form on its way to be entered: it asks before what was typed is
// thrown away, and before the fact is entered where that is asked for.
type Slip struct {
	Title string
	Form  Form
	// Confirm is asked with the concrete thing before the form is done; nil or an
	// empty text ask nothing.
	Confirm func(Form) string

	asking asking
	ask    string
}

type asking int

const (
	nothing asking = iota
	whetherToLeave
	whetherToEnter
)

// Step is what a key made of a slip.
type Step int

// Typing: it goes on. Left: it is closed and nothing is kept. Done: the form is
// to be read and entered. Rejected: the key was refused; ring the bell once.
const (
	Typing Step = iota
	Left
	Done
	Rejected
)

// The actions of a slip.
const (
	enter keys.Action = "enter"
	rows  keys.Action = "rows"
)

// Keys is what the keys do in the slip.
func (s Slip) Keys() keys.Table {
	if s.asking != nothing {
		return keys.Table{Title: s.Title, Bindings: []keys.Binding{
			{Action: enter, Keys: []string{"enter"}, Short: "yes", Long: "Do it."},
		}}
	}
	return keys.Table{Title: s.Title, Bindings: []keys.Binding{
		{Action: enter, Keys: []string{"enter"}, Short: "next, save", Long: "Go to the next field; in the last one save the entry."},
		{Action: rows, Keys: []string{"up", "down", "tab", "shift+tab"}, Label: "arrows", Short: "fields", Long: "Go from field to field."},
	}}
}

// Update takes a key.
func (s Slip) Update(msg tea.KeyMsg) (Slip, Step) {
	if s.asking != nothing {
		return s.answered(msg)
	}
	if msg.Type == tea.KeyEsc {
		if !s.Form.Typed() {
			return s, Left
		}
		s.asking, s.ask = whetherToLeave, "Throw away what was typed?"
		return s, Typing
	}
	var out screen.Outcome
	s.Form, out = s.Form.Update(msg)
	switch out {
	case screen.Entered:
		return s.done()
	case screen.Rejected:
		return s, Rejected
	}
	return s, Typing
}

// done asks first where that is wanted and the form reads well.
func (s Slip) done() (Slip, Step) {
	if s.Confirm == nil {
		return s, Done
	}
	if _, err := s.Form.Fact(); err != nil {
		return s, Done // to be refused with its reason
	}
	if s.ask = s.Confirm(s.Form); s.ask == "" {
		return s, Done
	}
	s.asking = whetherToEnter
	return s, Typing
}

func (s Slip) answered(msg tea.KeyMsg) (Slip, Step) {
	asked := s.asking
	switch {
	case msg.Type == tea.KeyEsc:
		s.asking = nothing
	case msg.Type == tea.KeyEnter && asked == whetherToLeave:
		return s, Left
	case msg.Type == tea.KeyEnter:
		s.asking = nothing
		return s, Done
	}
	return s, Typing
}

// Refused shows why the fact was not entered; what was typed stays.
func (s Slip) Refused(err error) Slip {
	s.Form = s.Form.Refused(err)
	return s
}

// View draws the slip in exactly h rows of w cells, with lines below the form
// where there is room.
func (s Slip) View(th theme.Theme, w, h int, below []string) []string {
	if h < 1 || w < 1 {
		return nil
	}
	if s.asking != nothing {
		return s.question(th, w, h)
	}
	lines := []string{th.Title.Render(text.Truncate(text.Clean(s.Title), w))}
	if h > 12 {
		lines = append(lines, "")
	}
	return append(text.Frame(lines, w, len(lines)), s.Form.View(th, w, h-len(lines), below)...)
}

func (s Slip) question(th theme.Theme, w, h int) []string {
	answers := "  " + th.Action.Render(" Enter: yes ") + "  Esc: no"
	var lines []string
	for _, l := range text.Wrap(text.Clean(s.ask), max(1, w-4)) {
		lines = append(lines, "  "+th.Strong.Render(l))
	}
	if len(lines)+2 > h {
		lines = append(lines[:max(0, min(len(lines), h-1))], answers)
		return text.Frame(lines, w, h)
	}
	return text.Centre(append(lines, "", answers), w, h)
}
