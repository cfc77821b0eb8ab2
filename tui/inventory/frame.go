package inventory

import (
	"fmt"
	"slices"
	"strings"

	"drainboard/tui/text"
)

// View draws the screen in exactly h rows of w cells.
func (s *Inventory) View(w, h int) []string {
	if w < 1 || h < 1 {
		return nil
	}
	switch s.phase {
	case asking:
		return s.reviewView(w, h)
	case leaving:
		return s.question(fmt.Sprintf("Leave without what was typed of %s? Nothing of it is saved.", tanks(len(s.filled()))), w, h)
	case typing:
	}
	return s.tableView(w, h)
}

// titleLine is the name of the screen, how far it is, and the clock.
func (s *Inventory) titleLine(words string, w int) string {
	d := s.desk
	layout := "Mon 2 Jan 15:04:05"
	if w < 60 {
		layout = "15:04:05"
	}
	return text.Ends(d.Theme.Title.Render(" "+words), d.Theme.Faint.Render(d.Now.In(d.Ledger.Room().Zone).Format(layout)), w)
}

func (s *Inventory) reviewView(w, h int) []string {
	n := fmt.Sprintf("ENTER %s? %s", tanks(len(s.review.rows)), entries(len(s.review.list)))
	lines := []string{s.titleLine(n, w)}
	if h > 8 {
		lines = append(lines, "")
	}
	s.review.h = max(1, h-len(lines)-1)
	s.review.page.Lines = s.reviewLines(w - 1)
	lines = append(lines, s.review.page.View(s.desk.Theme, w, s.review.h)...)
	return text.Frame(append(lines, "  "+s.desk.Theme.Action.Render(" Enter: enter them ")+"  Esc: go on typing"), w, h)
}

// question asks in the middle of the screen.
func (s *Inventory) question(ask string, w, h int) []string {
	var lines []string
	for _, l := range text.Wrap(ask, max(1, w-4)) {
		lines = append(lines, "  "+s.desk.Theme.Strong.Render(l))
	}
	lines = lines[:min(len(lines), max(0, h-1))]
	return text.Centre(append(lines, "  "+s.desk.Theme.Action.Render(" Enter: yes ")+"  Esc: no"), w, h)
}

// Rows from which there is air around the table.
const airyH = 18

func (s *Inventory) tableView(w, h int) []string {
	lines := []string{s.titleLine(s.heading(), w)}
	if h >= airyH {
		lines = append(lines, s.desk.Theme.Faint.Render(text.Fit(" One row a tank. * shows it all in words and asks before anything is entered.", w)), "")
	}
	wrong := s.wrong()
	below := s.below(wrong, w)
	most := max(0, min(len(below), (h-3)/2))
	if h >= airyH {
		most = max(most, min(len(below), 7))
	}
	below = below[:most]
	if h >= airyH {
		below = append([]string{""}, below...)
	}
	room := max(1, min(len(s.rows)+1, h-len(lines)-len(below)))
	lines = append(lines, s.table(wrong, w, room)...)
	return text.Frame(append(lines, below...), w, h)
}

func (s *Inventory) heading() string {
	before := 0
	for i := range s.rows {
		if !s.open(i) && len(s.rows[i].pending) == 0 {
			before++
		}
	}
	words := fmt.Sprintf("OPENING INVENTORY  %d of %s typed", len(s.filled()), tanks(len(s.rows)-before))
	switch {
	case before == len(s.rows):
		words = "OPENING INVENTORY  every tank is entered; nothing is left to type"
	case before > 0:
		words += fmt.Sprintf(", %d entered before", before)
	}
	return words
}

// below is the row in words, what can be typed, and what is wrong.
func (s *Inventory) below(wrong map[cell]string, w int) []string {
	th := s.desk.Theme
	var lines []string
	say := func(words, mark string, render func(...string) string) {
		for k, l := range text.Wrap(words, max(1, w-5)) {
			if k > 0 {
				mark = strings.Repeat(" ", text.Width(mark))
			}
			lines = append(lines, " "+mark+render(l))
		}
	}
	if s.say != "" {
		say(s.say, "", func(l ...string) string { return th.Error.Render(" " + l[0] + " ") })
	}
	for _, c := range s.byNeed(wrong) {
		words := text.Clean(fmt.Sprintf("%s, %s: %s", s.rows[c.row].tank, c.column.name(), wrong[c]))
		say(words, th.Marks.Overdue+" ", th.Strong.Render)
	}
	if words := s.rowReads(s.at.row); words != "" {
		say(words, "", th.Plain.Render)
	}
	if s.open(s.at.row) {
		say(s.at.column.name()+": "+s.note(), "", th.Faint.Render)
	}
	return lines
}

// note says what can be typed into the cell under the cursor.
func (s *Inventory) note() string {
	switch s.at.column {
	case state:
		return "h or 1 holding, r or 2 ready (full, clean), w or 3 washed, d or 4 dirty, o or 5 out of use; Enter leaves the tank out"
	case batch:
		return "a short name; + as above"
	case hatched:
		return hatchNote
	case changed:
		if !s.rows[s.at.row].holding() {
			return whenNote + "; empty is now"
		}
		return whenNote + "; + as above"
	case larvae:
		return "how many live larvae by the last count; stays empty where nobody knows"
	case length, columns:
	}
	return "the last mean, µm, kept as a remark; stays empty where nobody knows"
}

// wrong is all that is wrong with what was typed.
func (s *Inventory) wrong() map[cell]string {
	_, wrong := s.gather()
	if !s.asked {
		for c := range wrong {
			if c.column == state {
				delete(wrong, c)
			}
		}
	}
	for c, words := range s.refused {
		wrong[c] = words
	}
	return wrong
}

// byNeed lists what is wrong, that of the row under the cursor first.
func (s *Inventory) byNeed(wrong map[cell]string) []cell {
	var list []cell
	for c := range wrong {
		list = append(list, c)
	}
	slices.SortFunc(list, func(a, b cell) int {
		here := func(c cell) int {
			if c.row == s.at.row {
				return -1
			}
			return c.row
		}
		if d := here(a) - here(b); d != 0 {
			return d
		}
		return int(a.column - b.column)
	})
	return list
}

// rowReads says what the row under the cursor comes to.
func (s *Inventory) rowReads(i int) string {
	r := &s.rows[i]
	name := text.Clean(r.tank)
	switch {
	case len(r.pending) > 0:
		return fmt.Sprintf("%s is saved in part; %s still to be saved: * tries again", name, entries(len(r.pending)))
	case !s.open(i):
		return name + " was entered before and is left alone"
	case r.state == "":
		return ""
	}
	words := s.reads(i, text.Until)
	if words == "" {
		return ""
	}
	return name + " " + words
}
