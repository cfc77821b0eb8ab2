package inventory

import (
	"strings"
	"time"

	"drainboard/model"
	"drainboard/tui/screen"
)

// column is what a cell of a row holds.
type column int

const (
	state column = iota
	batch
	hatched
	changed
	larvae
	length
	columns // how many there are
)

// heading is the name of a column, with its unit.
func (c column) heading() string {
	return [columns]string{"STATE", "BATCH", "HATCHED", "LAST CHANGE", "LARVAE", "µm"}[c]
}

// name is a column in a sentence.
func (c column) name() string {
	return [columns]string{"state", "batch", "hatched", "last change", "larvae", "mean length"}[c]
}

// cell is one place of the table.
type cell struct {
	row    int
	column column
}

// row is one tank and what is typed of it.
type row struct {
	tank   string
	state  model.State // empty until it is chosen
	fields [columns]screen.Field
	// typedAt is when the last change was typed: hours ago are counted from there.
	typedAt time.Time
	// pending are entries that could not be saved while others of the row were; the
	// row can be typed into no longer.
	pending []dated
}

func newRow(tank string) row {
	r := row{tank: tank}
	r.fields[batch] = screen.NewField(screen.Name, 40)
	r.fields[hatched] = screen.NewField(screen.Name, 25)
	r.fields[changed] = screen.NewField(screen.Name, 25)
	r.fields[larvae] = screen.NewField(screen.Whole, 12)
	r.fields[length] = screen.NewField(screen.Number, 7)
	return r
}

func (r *row) text(c column) string { return r.fields[c].Text() }

// empty says that nothing is typed in a cell.
func (r *row) empty(c column) bool {
	if c == state {
		return r.state == ""
	}
	return r.fields[c].Empty()
}

// begun says that something is typed in the row.
func (r *row) begun() bool {
	for c := range columns {
		if !r.empty(c) {
			return true
		}
	}
	return false
}

// takes says that a column means something of a tank in the row's state. Before
// the state is chosen none other does.
func (r *row) takes(c column) bool {
	switch {
	case c == state, r.state == model.Holding:
		return true
	case r.state == "":
		return false
	}
	return c == changed
}

// open says that a row can be typed into: nothing was entered of the tank's state,
// and nothing of the row is saved.
func (s *Inventory) open(i int) bool {
	t, ok := s.desk.Ledger.Tank(s.rows[i].tank)
	return ok && !t.Known && len(s.rows[i].pending) == 0
}

// stateOf is the state of a letter or digit.
func stateOf(key string) (model.State, bool) {
	switch strings.ToLower(key) {
	case "h", "1":
		return model.Holding, true
	case "r", "2":
		return model.Ready, true
	case "w", "3":
		return model.WashedDown, true
	case "d", "4":
		return model.Dirty, true
	case "o", "5":
		return model.Out, true
	}
	return "", false
}

// batchHatch is when the row's batch hatched as told elsewhere: by the journal, or
// by another row; empty where nowhere.
func (s *Inventory) batchHatch(i int) string {
	name := s.rows[i].text(batch)
	if name == "" {
		return ""
	}
	for _, b := range s.desk.Ledger.Batches() {
		if screen.SameName(b.Name, name) {
			return b.Hatched.Day(s.desk.Ledger.Room().Zone).String()
		}
	}
	for k := range s.rows {
		if r := &s.rows[k]; k != i && s.open(k) && r.state == model.Holding && screen.SameName(r.text(batch), name) && !r.empty(hatched) {
			return r.text(hatched)
		}
	}
	return ""
}

// spelled is a batch's name as it was written first.
func (s *Inventory) spelled(i int) string {
	name := s.rows[i].text(batch)
	for _, b := range s.desk.Ledger.Batches() {
		if screen.SameName(b.Name, name) {
			return b.Name
		}
	}
	for k := range i {
		if r := &s.rows[k]; s.open(k) && r.state == model.Holding && screen.SameName(r.text(batch), name) {
			return r.text(batch)
		}
	}
	return name
}
