package inventory

import (
	"fmt"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/tui/desk"
	"drainboard/tui/keys"
	"drainboard/tui/screen"
	"drainboard/tui/text"
)

// Inventory is the screen of the opening inventory.
type Inventory struct {
	desk *desk.Desk
	rows []row
	at   cell // under the cursor
	// asked is set once the review was asked for: from then on a cell that is needed
	// and empty is a problem.
	asked   bool
	refused map[cell]string // what the ledger does not take, until its row changes
	say     string          // why nothing or not all was saved

	phase  phase
	review review
}

// phase is what the keys are for.
type phase int

const (
	typing  phase = iota
	asking        // the review waits for its answer
	leaving       // whether to throw away what was typed
)

// New returns the screen with the cursor on the first tank of which nothing is
// known.
func New(d *desk.Desk) screen.Screen {
	s := &Inventory{desk: d, refused: map[cell]string{}}
	for _, t := range d.Ledger.Room().Tanks {
		s.rows = append(s.rows, newRow(t.Name))
	}
	for i := range s.rows {
		if s.open(i) {
			s.at.row = i
			break
		}
	}
	return s
}

// The actions of the screen.
const (
	next   keys.Action = "next"
	cells  keys.Action = "cells"
	same   keys.Action = "same"
	done   keys.Action = "done"
	yes    keys.Action = "yes"
	scroll keys.Action = "scroll"
)

// Keys is what the keys do now.
func (s *Inventory) Keys() keys.Table {
	switch s.phase {
	case asking:
		return keys.Table{Title: "Review", Bindings: []keys.Binding{
			{Action: yes, Keys: []string{"enter"}, Short: "enter them", Long: "Make the entries."},
			{Action: scroll, Keys: []string{"up", "down", "pgup", "pgdown", " ", "home", "end"}, Label: "arrows", Short: "scroll", Long: "Scroll through what will be entered."},
		}}
	case leaving:
		return keys.Table{Title: "Question", Bindings: []keys.Binding{
			{Action: yes, Keys: []string{"enter"}, Short: "yes", Long: "Leave without what was typed."},
		}}
	case typing:
	}
	t := keys.Table{Title: "Opening inventory", Bindings: []keys.Binding{
		{Action: next, Keys: []string{"enter"}, Short: "next", Long: "Go to the next cell that is needed; after the last one show what will be entered."},
		{Action: cells, Keys: []string{"up", "down", "left", "right", "tab", "shift+tab", "pgup", "pgdown"}, Label: "arrows", Short: "cells", Long: "Go from cell to cell."},
		{Action: same, Keys: []string{"+"}, Short: "as above", Long: "In an empty cell: the same as in the tank above."},
		{Action: done, Keys: []string{"*", "f2"}, Short: "done", Long: "Show in words what will be entered, and ask once."},
	}}
	if s.desk.ReadOnly != "" {
		t = t.Off(done, s.desk.ReadOnly)
	}
	return t
}

// Title is the name of the screen.
func (s *Inventory) Title() string { return "Inventory" }

// Init has nothing to prepare.
func (s *Inventory) Init() tea.Cmd { return nil }

// Capturing is true: letters are typed here.
func (s *Inventory) Capturing() bool { return true }

// Update takes a key.
func (s *Inventory) Update(msg tea.Msg) (screen.Screen, tea.Cmd) {
	key, ok := msg.(tea.KeyMsg)
	if !ok {
		return s, nil
	}
	switch s.phase {
	case asking:
		return s, s.onReview(key)
	case leaving:
		return s, s.onLeaving(key)
	case typing:
	}
	if key.Type == tea.KeyEsc {
		return s, s.leave()
	}
	table := s.Keys()
	if why, off := table.Refused(key); off {
		return s, s.beepFor(why)
	}
	action, _ := table.Match(key)
	switch action {
	case done:
		return s, s.toReview()
	case next:
		return s, s.onward()
	case cells:
		s.move(key)
		return s, nil
	case same:
		if s.rows[s.at.row].empty(s.at.column) {
			return s, s.asAbove()
		}
	}
	return s, s.typed(key)
}

// leave closes the screen; what was typed is not thrown away without a question.
func (s *Inventory) leave() tea.Cmd {
	if len(s.filled()) == 0 {
		return screen.Send(screen.Back{})
	}
	s.phase = leaving
	return nil
}

func (s *Inventory) onLeaving(key tea.KeyMsg) tea.Cmd {
	switch key.Type {
	case tea.KeyEsc:
		s.phase = typing
	case tea.KeyEnter:
		return screen.Send(screen.Back{})
	}
	return nil
}

// beepFor says why a key was not taken and rings the bell once.
func (s *Inventory) beepFor(why string) tea.Cmd {
	s.say = text.Clean(why)
	return screen.Send(screen.Beep{Times: 1})
}

// filled lists the rows in which something is typed and not saved.
func (s *Inventory) filled() []int {
	var list []int
	for i := range s.rows {
		if len(s.rows[i].pending) > 0 || s.open(i) && s.rows[i].begun() {
			list = append(list, i)
		}
	}
	return list
}

// tanks counts tanks in words.
func tanks(n int) string {
	if n == 1 {
		return "1 tank"
	}
	return fmt.Sprintf("%d tanks", n)
}

// entries counts entries in words.
func entries(n int) string {
	if n == 1 {
		return "1 entry"
	}
	return fmt.Sprintf("%d entries", n)
}
