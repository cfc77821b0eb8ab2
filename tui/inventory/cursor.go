package inventory

import (
	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/tui/screen"
)

// typed takes a key for the cell under the cursor.
func (s *Inventory) typed(key tea.KeyMsg) tea.Cmd {
	if !s.open(s.at.row) {
		return nil
	}
	r := &s.rows[s.at.row]
	if s.at.column == state {
		return s.chooseState(key)
	}
	field, out := r.fields[s.at.column].Update(key)
	r.fields[s.at.column] = field
	switch out {
	case screen.Edited:
		s.touched()
		if s.at.column == changed {
			r.typedAt = s.desk.Now
		}
	case screen.Rejected:
		return screen.Send(screen.Beep{Times: 1})
	case screen.TakeBack:
		s.step(-1)
	case screen.Ignored, screen.Entered:
	}
	return nil
}

// chooseState takes the letter or digit of a state and goes on.
func (s *Inventory) chooseState(key tea.KeyMsg) tea.Cmd {
	r := &s.rows[s.at.row]
	chosen, ok := stateOf(string(key.Runes))
	switch {
	case key.Type == tea.KeyBackspace, key.Type == tea.KeyDelete:
		r.state = ""
		s.touched()
	case ok && !key.Paste:
		r.state = chosen
		s.touched()
		s.step(+1)
	case key.Type == tea.KeyRunes:
		return screen.Send(screen.Beep{Times: 1})
	}
	return nil
}

// touched forgets what was wrong with the row before it changed.
func (s *Inventory) touched() {
	s.say = ""
	for c := range columns {
		delete(s.refused, cell{s.at.row, c})
	}
}

// settle brings the cell the cursor leaves into its spelling.
func (s *Inventory) settle() {
	r := &s.rows[s.at.row]
	if s.at.column == batch && !r.empty(batch) {
		r.fields[batch] = r.fields[batch].With(s.spelled(s.at.row))
	}
}

// onward goes to the next cell that is needed, and after the last to the review.
func (s *Inventory) onward() tea.Cmd {
	if !s.step(+1) {
		return s.toReview()
	}
	if r := &s.rows[s.at.row]; s.at.column == hatched && r.empty(hatched) && s.batchHatch(s.at.row) != "" {
		s.step(+1)
	}
	return nil
}

// step goes a cell on or back, over rows that take nothing; false where there is
// none.
func (s *Inventory) step(by int) bool {
	s.settle()
	to := s.at
	for {
		to.column += column(by)
		switch {
		case to.column >= columns:
			to = cell{to.row + 1, state}
		case to.column < 0:
			to = cell{to.row - 1, length}
		}
		if to.row < 0 || to.row >= len(s.rows) {
			return false
		}
		if s.open(to.row) && s.rows[to.row].takes(to.column) {
			s.at = to
			return true
		}
	}
}

// pageRows is how many rows PgUp and PgDn go.
const pageRows = 10

// move takes an arrow, Tab or a page key.
func (s *Inventory) move(key tea.KeyMsg) {
	switch key.Type {
	case tea.KeyTab, tea.KeyRight:
		s.step(+1)
	case tea.KeyShiftTab, tea.KeyLeft:
		s.step(-1)
	case tea.KeyDown:
		s.rowBy(+1)
	case tea.KeyUp:
		s.rowBy(-1)
	case tea.KeyPgDown:
		for range pageRows {
			s.rowBy(+1)
		}
	case tea.KeyPgUp:
		for range pageRows {
			s.rowBy(-1)
		}
	}
}

// rowBy goes to the same column of the open row below or above, or to the nearest
// column before it that the row takes.
func (s *Inventory) rowBy(by int) {
	s.settle()
	for i := s.at.row + by; i >= 0 && i < len(s.rows); i += by {
		if !s.open(i) {
			continue
		}
		c := s.at.column
		for !s.rows[i].takes(c) {
			c--
		}
		s.at = cell{i, c}
		return
	}
}

// asAbove copies the cell of the nearest row above that holds something in it, and
// goes on.
func (s *Inventory) asAbove() tea.Cmd {
	if !s.open(s.at.row) {
		return nil
	}
	r, c := &s.rows[s.at.row], s.at.column
	for i := s.at.row - 1; i >= 0; i-- {
		above := &s.rows[i]
		if !s.open(i) || above.empty(c) || !above.takes(c) {
			continue
		}
		if c == state {
			r.state = above.state
		} else {
			r.fields[c] = r.fields[c].With(above.text(c))
		}
		if c == changed {
			r.typedAt = above.typedAt
		}
		s.touched()
		return s.onward()
	}
	return s.beepFor("no tank above has its " + c.name() + " typed")
}

// holding says that a row is of a tank with larvae.
func (r *row) holding() bool { return r.state == model.Holding }
