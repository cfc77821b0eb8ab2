package inventory

import (
	"fmt"
	"strings"
	"time"

	"drainboard/model"
	"drainboard/model/growth"
	"drainboard/tui/text"
)

// grid is how the table shares the width out.
type grid struct {
	name   int
	widths [columns]int // 0 for a column that has no room
	reads  int          // of what the row comes to, 0 for none
}

// leastReads is the width from which a row says at its end what it comes to.
const leastReads = 24

// gridFor takes the column under the cursor first, then the others by how much they
// say.
func (s *Inventory) gridFor(w int) grid {
	g := grid{name: 4}
	for i := range s.rows {
		g.name = max(g.name, min(8, text.Width(text.Clean(s.rows[i].tank))))
	}
	g.name = min(g.name, max(1, w-4))
	wanted := [columns]int{8, 10, 11, 17, 8, 6}
	room := w - 2 - g.name
	for _, c := range []column{s.at.column, state, batch, changed, hatched, larvae, length} {
		if g.widths[c] == 0 && (room > wanted[c] || c == s.at.column) {
			g.widths[c] = max(1, min(wanted[c], room-1))
			room -= g.widths[c] + 1
		}
	}
	if extra := min(8, room-leastReads); extra > 0 && g.widths[batch] > 0 {
		g.widths[batch] += extra
		room -= extra
	}
	if room > leastReads {
		g.reads = room - 1
	}
	return g
}

// table is the rows in at most h lines with a heading, the one under the cursor
// always among them.
func (s *Inventory) table(wrong map[cell]string, w, h int) []string {
	g := s.gridFor(w)
	var lines []string
	if h > 1 {
		lines = append(lines, s.headings(g))
	}
	room := h - len(lines)
	top := max(0, min(s.at.row-room/2, len(s.rows)-room))
	for i := top; i < len(s.rows) && len(lines) < h; i++ {
		edge := i == top && top > 0 || len(lines) == h-1 && i < len(s.rows)-1
		lines = append(lines, s.line(i, g, wrong, edge))
	}
	return text.Frame(lines, w, h)
}

func (s *Inventory) headings(g grid) string {
	th := s.desk.Theme
	line := "  " + th.Faint.Render(text.Fit("TANK", g.name))
	for c := range columns {
		if g.widths[c] == 0 {
			continue
		}
		head := text.Fit(c.heading(), g.widths[c])
		if c == larvae || c == length {
			head = text.FitRight(c.heading(), g.widths[c])
		}
		style := th.Faint
		if c == s.at.column {
			style = th.Strong
		}
		line += " " + style.Render(head)
	}
	if g.reads > 0 {
		line += " " + th.Faint.Render(" READS AS")
	}
	return line
}

// line is one tank.
func (s *Inventory) line(i int, g grid, wrong map[cell]string, edge bool) string {
	th, here := s.desk.Theme, i == s.at.row
	mark, name := "  ", text.Fit(text.Clean(s.rows[i].tank), g.name)
	switch {
	case here:
		mark, name = th.Focus.Render(th.Marks.Pointer)+" ", th.Strong.Render(name)
	case edge:
		mark = th.Faint.Render(th.Marks.More) + " "
	}
	line := mark + name
	known := s.knownCells(i)
	for c := range columns {
		if g.widths[c] == 0 {
			continue
		}
		_, bad := wrong[cell{i, c}]
		switch {
		case known != nil:
			line += " " + th.Faint.Render(fit(c, known[c], g.widths[c]))
		case here && c == s.at.column:
			line += " " + s.focused(i, c, g.widths[c])
		case bad:
			line += " " + th.Error.Render(fit(c, th.Marks.Overdue+s.plain(i, c), g.widths[c]))
		default:
			line += " " + s.shown(i, c, g.widths[c])
		}
	}
	if g.reads > 0 {
		line += "  " + th.Faint.Render(text.Truncate(s.reads(i, text.ShortUntil), g.reads-1))
	}
	return line
}

// fit sets figures at the right.
func fit(c column, words string, w int) string {
	if c == larvae || c == length {
		return text.FitRight(words, w)
	}
	return text.Fit(words, w)
}

// focused is the cell under the cursor.
func (s *Inventory) focused(i int, c column, w int) string {
	th := s.desk.Theme
	if c == state {
		return th.Focus.Render(text.Fit(stateWord(s.rows[i].state)+"_", w))
	}
	return s.rows[i].fields[c].View(th, w, true)
}

// plain is what is typed in a cell.
func (s *Inventory) plain(i int, c column) string {
	if c == state {
		return stateWord(s.rows[i].state)
	}
	return s.rows[i].text(c)
}

// shown is a cell away from the cursor: what is typed, the hatch that comes with the
// batch, or a dot where the state takes nothing.
func (s *Inventory) shown(i int, c column, w int) string {
	r, th := &s.rows[i], s.desk.Theme
	switch {
	case !r.takes(c) && r.state != "":
		return th.Faint.Render(fit(c, "·", w))
	case c == hatched && r.empty(c) && r.holding():
		return th.Faint.Render(text.Fit(s.hatchWords(i), w))
	case c == changed && r.empty(c) && r.state != "" && !r.holding():
		return th.Faint.Render(text.Fit("now", w))
	case c == state:
		return th.Strong.Render(text.Fit(stateWord(r.state), w))
	}
	return fit(c, s.plain(i, c), w)
}

// hatchWords is the hatch that comes with the batch, as a date.
func (s *Inventory) hatchWords(i int) string {
	told := s.batchHatch(i)
	if h, err := hatchDay(told, s.desk.Now, s.desk.Ledger.Room().Zone); err == nil {
		return h.String()
	}
	return told
}

func stateWord(st model.State) string {
	if st == model.Out {
		return "out"
	}
	return string(st)
}

// knownCells is what stands in a tank that was entered before, nil for others.
func (s *Inventory) knownCells(i int) []string {
	t, ok := s.desk.Ledger.Tank(s.rows[i].tank)
	if !ok || !t.Known {
		return nil
	}
	known := make([]string, columns)
	known[state], known[changed] = stateWord(t.State), s.clock(t.Since)
	if t.Larvae == nil {
		return known
	}
	b := s.desk.Ledger.Batch(t.Larvae.Batch)
	known[batch], known[hatched] = text.Clean(b.Name), b.Hatched.Day(s.desk.Ledger.Room().Zone).String()
	if n := t.Larvae.Number.Value; n.Known {
		known[larvae] = text.Decimal(n.X, 0)
	}
	if t.Larvae.Sample != nil {
		if sum, err := growth.Summarize(t.Larvae.Sample.UM); err == nil {
			known[length] = text.Decimal(sum.Mean, 0)
		}
	}
	return known
}

// reads is what a row comes to, as far as it reads well, with the time left in the
// given words.
func (s *Inventory) reads(i int, until func(left time.Duration, overdue bool) string) string {
	r := &s.rows[i]
	switch {
	case len(r.pending) > 0:
		return "saved in part"
	case !s.open(i):
		return "entered before"
	case r.state == "":
		return ""
	}
	rd, wrong := s.read(i)
	var words []string
	if r.holding() && !rd.hatched.IsZero() && wrong[hatched] == "" {
		room := s.desk.Ledger.Room()
		words = append(words, fmt.Sprintf("day %d", model.DayOf(s.desk.Now, room.Zone).Sub(rd.hatched.Day(room.Zone))))
	}
	if wrong[changed] == "" && rd.timed {
		words = append(words, s.clock(rd.at))
		if r.holding() {
			words = append(words, s.dueWords(rd.at, until))
		}
	}
	return strings.Join(words, ", ")
}
