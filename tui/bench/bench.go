package bench

import (
	"fmt"

	tea "github.com/charmbracelet/bubbletea"

	sums "drainboard/model/bench"
	"drainboard/tui/desk"
	"drainboard/tui/keys"
	"drainboard/tui/screen"
)

// Bench is the screen of the bench sums.
type Bench struct {
	desk    *desk.Desk
	sheets  []sheet // one a sum, kept while the screen is open
	list    screen.List
	open    bool // the chosen sheet is shown, not the list
	leaving bool // it is asked whether to leave
	below   screen.Page
	belowH  int // rows of that page in the last frame
}

// New returns the screen with the list of sums or, by the name of a sum, with its
// form.
func New(d *desk.Desk, arg string) screen.Screen {
	b := &Bench{desk: d}
	for i, s := range sums.Sums() {
		b.sheets = append(b.sheets, newSheet(s, d.Ledger.Room().House))
		b.list.Items = append(b.list.Items, fmt.Sprintf("%-10s  %s", s.Name, s.Short))
		if s.Name == arg {
			b.list.Chosen, b.open = i, true
		}
	}
	return b
}

// The actions of the screen.
const (
	choose keys.Action = "choose"
	move   keys.Action = "move"
	next   keys.Action = "next"
	rows   keys.Action = "fields"
	scroll keys.Action = "scroll"
	yes    keys.Action = "yes"
)

// Keys is what the keys do now.
func (b *Bench) Keys() keys.Table {
	switch {
	case b.leaving:
		return keys.Table{Title: "Question", Bindings: []keys.Binding{
			{Action: yes, Keys: []string{"enter"}, Short: "leave", Long: "Leave; the figures typed at the bench are not kept."},
		}}
	case b.open:
		return keys.Table{Title: "Bench", Bindings: []keys.Binding{
			{Action: next, Keys: []string{"enter"}, Short: "next", Long: "Go to the next field, from the last to the first. The figures follow each key."},
			{Action: rows, Keys: []string{"up", "down", "tab", "shift+tab"}, Label: "arrows", Short: "fields", Long: "Go from field to field."},
			{Action: scroll, Keys: []string{"pgdown", "pgup"}, Short: "scroll", Long: "Scroll through the cautions and remarks."},
		}}
	}
	return keys.Table{Title: "Bench", Bindings: []keys.Binding{
		{Action: choose, Keys: []string{"enter"}, Short: "open", Long: "Open the chosen sum."},
		{Action: move, Keys: []string{"up", "down", "pgup", "pgdown", "home", "end"}, Label: "arrows", Short: "choose", Long: "Choose a sum."},
	}}
}

// Title is the name of the screen.
func (b *Bench) Title() string { return "Bench" }

// Init has nothing to prepare.
func (b *Bench) Init() tea.Cmd { return nil }

// Capturing is true while a form or a question is open.
func (b *Bench) Capturing() bool { return b.open || b.leaving }

// sheet is the one that is chosen.
func (b *Bench) sheet() *sheet { return &b.sheets[b.list.Chosen] }

// Update takes a key.
func (b *Bench) Update(msg tea.Msg) (screen.Screen, tea.Cmd) {
	key, ok := msg.(tea.KeyMsg)
	switch {
	case !ok:
		return b, nil
	case b.leaving:
		return b, b.answered(key)
	case b.open:
		return b, b.onSheet(key)
	}
	return b, b.onList(key)
}

func (b *Bench) onList(key tea.KeyMsg) tea.Cmd {
	if key.Type == tea.KeyEsc {
		return b.leave()
	}
	list, out := b.list.Update(key)
	b.list = list
	if out == screen.Entered {
		b.open, b.below = true, screen.Page{}
	}
	return nil
}

// leave closes the screen; typed figures are not thrown away without a question.
func (b *Bench) leave() tea.Cmd {
	for i := range b.sheets {
		if b.sheets[i].typed() {
			b.leaving = true
			return nil
		}
	}
	return screen.Send(screen.Back{})
}

func (b *Bench) answered(key tea.KeyMsg) tea.Cmd {
	switch key.Type {
	case tea.KeyEnter:
		return screen.Send(screen.Back{})
	case tea.KeyEsc:
		b.leaving = false
	}
	return nil
}

// onSheet takes a key for the form that is open. Esc goes back to the list; what
// was typed stays in its form.
func (b *Bench) onSheet(key tea.KeyMsg) tea.Cmd {
	switch key.Type {
	case tea.KeyEsc:
		b.open = false
		return nil
	case tea.KeyPgDown, tea.KeyPgUp:
		b.below, _ = b.below.Update(key, b.belowH)
		return nil
	}
	if !b.sheet().update(key) {
		return screen.Send(screen.Beep{Times: 1})
	}
	return nil
}
