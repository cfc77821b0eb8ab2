package feed

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/model/bench"
	"drainboard/model/count"
	"drainboard/tui/screen"
	"drainboard/tui/text"
)

// Rows of the form of a cell count. That of a culture has the alga before them.
const (
	rowCounts = iota
	rowChamber
	rowDilution
)

// counting is a cell count that is being typed.
type counting struct {
	feed *Feed
	tank string // whose cells left are counted; empty for a culture
	at   int    // row of the counts
}

// startCulture begins a cell count of a culture. The alga is typed where there
// is more than one, the dilution always: with either of them guessed, a slip of
// ten times would pass.
func (f *Feed) startCulture() {
	room := f.desk.Ledger.Room()
	c := counting{feed: f, at: 1}
	alga := screen.NewField(screen.Name, 40)
	note := "the short name or its beginning: " + strings.Join(algaNames(room), ", ")
	if len(room.Algae) == 1 {
		alga = alga.With(room.Algae[0].Name)
	}
	f.startSlip(slip{
		title: "COUNT A CULTURE", look: c.look, save: c.save,
		form: screen.Form{Rows: append([]screen.Row{{Label: "alga", Field: alga, Note: note}}, c.rows("")...)},
	})
}

// startLeft begins a count of the cells left in a tank.
func (f *Feed) startLeft(name string) tea.Cmd {
	t, ok := f.tank(name)
	if !ok {
		return f.refuse("no tank is chosen")
	}
	c := counting{feed: f, tank: t.Tank.Tank.Name}
	f.startSlip(slip{
		title: "CELLS LEFT IN " + text.Clean(t.Tank.Tank.Name), back: f.phase, look: c.look, save: c.save,
		heading: f.tankLines(t, 1000)[:1],
		form:    screen.Form{Rows: c.rows("1")},
	})
	return nil
}

func (c counting) rows(dilution string) []screen.Row {
	return []screen.Row{
		{Label: "counts", Field: screen.NewField(screen.Line, 2000), Note: "cells, one number a field, with spaces between"},
		{Label: "chamber", Field: screen.NewField(screen.Name, 40).With(c.lastChamber()), Note: "its name or the beginning of it, or the mL one count covers"},
		{Label: "diluted", Field: screen.NewField(screen.Number, 10).With(dilution), Unit: "times", Note: "1 is not diluted, 10 is one part in ten; Enter saves"},
	}
}

// lastChamber is the chamber of the last count of the same sort, by name where it
// has one.
func (c counting) lastChamber() string {
	entries := c.feed.desk.Ledger.Entries()
	for i := len(entries) - 1; i >= 0; i-- {
		cells, ok := entries[i].Fact.(*model.Cells)
		if !ok || (cells.Tank != "") != (c.tank != "") {
			continue
		}
		for _, chamber := range count.Chambers() {
			if chamber.ML == cells.ChamberML {
				return chamber.Name
			}
		}
		return plain(cells.ChamberML)
	}
	return ""
}

func plain(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

func algaNames(room *model.Room) []string {
	names := make([]string, len(room.Algae))
	for i, a := range room.Algae {
		names[i] = text.Clean(a.Name)
	}
	return names
}

// alga finds the alga by its name or a beginning that only one has.
func (c counting) alga(typed string) (string, error) {
	room := c.feed.desk.Ledger.Room()
	if i, ok := room.Alga(typed); ok {
		return room.Algae[i].Name, nil
	}
	var found []string
	for _, a := range room.Algae {
		if strings.HasPrefix(strings.ToLower(a.Name), strings.ToLower(typed)) {
			found = append(found, a.Name)
		}
	}
	switch {
	case typed == "":
		return "", errMissing
	case len(found) == 1:
		return found[0], nil
	case len(found) > 1:
		return "", fmt.Errorf("%q may be %s", typed, strings.Join(found, " or "))
	}
	return "", fmt.Errorf("%q is not an alga of this room (%s)", typed, strings.Join(algaNames(room), ", "))
}

// errMissing marks a row in which nothing stands yet.
var errMissing = errors.New("is missing")

// read reads the rows into a fact. What is wrong is given by row.
func (c counting) read(s *slip) (*model.Cells, map[int]error) {
	fact, wrong := &model.Cells{Tank: c.tank}, map[int]error{}
	var err error
	if c.tank == "" {
		if fact.Algae, err = c.alga(s.text(0)); err != nil {
			wrong[0] = err
		}
	}
	if typed := s.text(c.at + rowCounts); typed == "" {
		wrong[c.at+rowCounts] = errMissing
	} else if fact.Counts, err = bench.ReadCounts(typed); err != nil {
		wrong[c.at+rowCounts] = err
	}
	if typed := s.text(c.at + rowChamber); typed == "" {
		wrong[c.at+rowChamber] = errMissing
	} else if fact.ChamberML, err = bench.ReadVolume(typed); err != nil {
		wrong[c.at+rowChamber] = err
	} else if fact.ChamberML <= 0 {
		wrong[c.at+rowChamber] = errors.New("a volume above 0 mL is expected")
	}
	dilution, ok := screen.ParseNumber(s.text(c.at + rowDilution))
	switch {
	case s.text(c.at+rowDilution) == "":
		wrong[c.at+rowDilution] = errMissing
	case !ok || dilution < 1:
		wrong[c.at+rowDilution] = errors.New("a number from 1 on is expected; 1 is not diluted")
	}
	fact.Dilution = &dilution
	return fact, wrong
}

// look marks what is wrong and says what the counts come to.
func (c counting) look(s *slip) {
	fact, wrong := c.read(s)
	s.form.Rows = slices.Clone(s.form.Rows)
	for i := range s.form.Rows {
		s.form.Rows[i].Problem = ""
		if err := wrong[i]; err != nil && err != errMissing && !(i == s.form.Focus && c.mayBecome(i, s.text(i))) {
			s.form.Rows[i].Problem = text.Clean(err.Error())
		}
	}
	s.result, s.warn, s.choices = []string{count.BorderRule}, nil, c.choices(s)
	if len(wrong) > 0 {
		return
	}
	cells, err := fact.PerML()
	if err != nil {
		s.warn = []string{text.Clean(err.Error())}
		return
	}
	e := cells.PerML
	what := text.Clean(fact.Algae + fact.Tank)
	s.result = []string{
		fmt.Sprintf("%s: %s cells/mL, between %s and %s (95 %%, chance alone)", what, cellWords(e.Value.X), cellWords(e.Low.X), cellWords(e.High.X)),
		fmt.Sprintf("%d cells in %d fields of %s mL, %s", cells.Counted, cells.Fields, plain(fact.ChamberML), cells.Mixing),
		count.BorderRule,
	}
	s.warn = append(bench.CellRemarks(cells, fact.ChamberML, *fact.Dilution), c.against(fact.Algae, e.Value.X)...)
}

// mayBecome says that a name in a row is not wrong yet, only not typed to its end.
func (c counting) mayBecome(row int, typed string) bool {
	begins := func(name string) bool { return strings.HasPrefix(strings.ToLower(name), strings.ToLower(typed)) }
	switch row {
	case c.at + rowChamber:
		return len(bench.ChambersBegun(typed)) > 0
	case c.at - 1:
		return slices.ContainsFunc(c.feed.desk.Ledger.Room().Algae, func(a model.Alga) bool { return begins(a.Name) })
	}
	return false
}

// choices are the chambers that may be meant while their row is in focus.
func (c counting) choices(s *slip) []string {
	if s.form.Focus != c.at+rowChamber {
		return nil
	}
	begun := bench.ChambersBegun(s.text(c.at + rowChamber))
	if len(begun) == 0 {
		begun = count.Chambers()
	}
	lines := make([]string, len(begun))
	for i, chamber := range begun {
		lines[i] = fmt.Sprintf("%s %s mL  %s", text.Fit(chamber.Name, 18), text.FitRight(plain(chamber.ML), 10), chamber.Full)
	}
	return lines
}

// farFromLast is how many times the last count a new one may be before a slip of
// the dilution or the chamber is thought of. A choice of ours, no source.
const farFromLast = 4

// against holds a new count of a culture against the last one.
func (c counting) against(alga string, perML float64) []string {
	last := c.feed.desk.Ledger.Culture(alga)
	if alga == "" || last == nil || perML <= 0 {
		return nil
	}
	cells, err := last.Cells.PerML()
	if err != nil || cells.PerML.Value.X <= 0 {
		return nil
	}
	times := perML / cells.PerML.Value.X
	if times <= farFromLast && times >= 1.0/farFromLast {
		return nil
	}
	return []string{fmt.Sprintf("%s times the last count, %s of %s: look at dilution and chamber.",
		text.Decimal(times, 2), cellWords(cells.PerML.Value.X), ago(c.feed.desk.Now.Sub(last.At)))}
}

// save enters the count.
func (c counting) save() tea.Cmd {
	f := c.feed
	fact, wrong := c.read(&f.slip)
	for i := range f.slip.form.Rows {
		if err := wrong[i]; err != nil {
			return f.wrong(i, err.Error())
		}
	}
	if _, err := f.desk.Enter(fact); err != nil {
		return f.notSaved(err)
	}
	cells, _ := fact.PerML() // it was shown while typing
	what := text.Clean(fact.Algae)
	if c.tank != "" {
		what = text.Clean(c.tank) + " has left"
	}
	f.phase = f.slip.back
	f.say = message{fmt.Sprintf("%s %s cells/mL saved", what, cellWords(cells.PerML.Value.X)), screen.Saved}
	return nil
}
