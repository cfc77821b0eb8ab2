package feed

import (
	"fmt"
	"strings"
	"time"

	"drainboard/model"
	"drainboard/tui/text"
)

// cultureLines are the cultures in at most h rows, a heading among them.
func (f *Feed) cultureLines(w, h int) []string {
	th := f.desk.Theme
	draws := map[string][3]string{}
	for _, d := range f.round.Round.Draws {
		have := "not given"
		if !d.Unlimited {
			have = litreWords(d.Have)
		}
		draws[d.Alga] = [3]string{have, litreWords(d.Needed), litreWords(f.measured(d.Alga))}
	}
	lines := []string{th.Faint.Render(text.Fit(" CULTURE          CELLS/ML  COUNTED             AT HAND    ASKED    POURS", w))}
	for i, c := range f.round.Cultures {
		if i == h-2 && len(f.round.Cultures) > h-1 {
			lines = append(lines, th.Faint.Render(fmt.Sprintf(" and %d more, in the pour list", len(f.round.Cultures)-i)))
			break
		}
		lines = append(lines, f.cultureLine(c, draws[c.Alga.Name], w))
	}
	return lines
}

// measured is the litres of an alga in the pours of the round.
func (f *Feed) measured(alga string) float64 {
	total := 0.0
	for _, t := range f.round.Tanks {
		total += t.Litres()[alga]
	}
	return total
}

func (f *Feed) cultureLine(c model.CultureNow, draw [3]string, w int) string {
	th := f.desk.Theme
	line := " " + text.Fit(text.Clean(c.Alga.Name), 12) + " "
	if c.Problem != "" {
		return line + th.Hold.Render(text.Truncate(" "+text.Clean(c.Problem)+" ", max(1, w-14)))
	}
	density, counted := text.FitRight(cellWords(c.Cells.PerML.Value.X), 12), text.Fit(ago(c.Age), 17)
	if c.Stale {
		density = th.Stale.Render(text.FitRight(cellWords(c.Cells.PerML.Value.X)+th.Marks.Stale, 12))
		counted = th.Stale.Render(text.Fit(text.ShortDuration(c.Age)+" ago STALE", 17))
	}
	line += density + "  " + counted
	for i, s := range draw {
		line += " " + text.FitRight(s, []int{10, 8, 8}[i])
	}
	return line
}

// columns are the widths of the table of tanks.
type columns struct {
	batch, add, note int
	lean             bool     // what is wanted and left stands beneath the table only
	algae            []string // each has a column of its own; none where they do not all fit
}

// Cells of the table: those of the pointer, tank and age, those of what is wanted and
// left, those of one pour, and the least of a note that is read at a glance.
const (
	namesW    = 2 + 7 + 4
	wantW     = 8 + 15
	pourW     = 9
	leastNote = 8
)

// columnsFor shares the width out. The algae of the round come first: a column each,
// for all of them or none, so that no row shows half of a feed. Then what is wanted
// and left, the cells to add, a longer batch, and the note.
func (f *Feed) columnsFor(w int) columns {
	c := columns{batch: 8}
	for _, d := range f.round.Round.Draws {
		c.algae = append(c.algae, d.Alga)
	}
	room := w - namesW - c.batch - 1 - pourW*len(c.algae)
	if room < leastNote {
		room += pourW * len(c.algae)
		c.algae = nil
	}
	c.lean = room < wantW+leastNote
	if !c.lean {
		room -= wantW
	}
	if len(c.algae) > 0 && room >= 9+14 {
		c.add = 8
		room -= 9
	}
	if extra := min(8, room-18); extra > 0 {
		c.batch += extra
		room -= extra
	}
	c.note = max(0, room-1)
	return c
}

// tankTable is the tanks in exactly h rows, a heading first and the chosen one
// always among them.
func (f *Feed) tankTable(w, h int) []string {
	th, c := f.desk.Theme, f.columnsFor(w)
	head := "  " + text.Fit("TANK", 6) + " " + text.Fit("BATCH", c.batch) + " " + text.FitRight("AGE", 3)
	if !c.lean {
		head += " " + text.FitRight("WANT", 7) + "  " + text.Fit("LEFT", 13)
	}
	if c.add > 0 {
		head += " " + text.FitRight("ADD", c.add)
	}
	for _, a := range c.algae {
		head += " " + text.FitRight(text.Truncate(text.Clean(a), pourW-4)+" mL", pourW-1)
	}
	lines := []string{th.Faint.Render(text.Fit(head, w))}
	at := 0
	for i, t := range f.round.Tanks {
		if t.Tank.Tank.Name == f.chosen {
			at = i
		}
	}
	room := max(0, h-1)
	top := max(0, min(at-room/2, len(f.round.Tanks)-room))
	for i := top; i < len(f.round.Tanks) && len(lines) < h; i++ {
		edge := i == top && top > 0 || len(lines) == h-1 && i < len(f.round.Tanks)-1
		lines = append(lines, f.tankRow(f.round.Tanks[i], c, w, edge))
	}
	return text.Frame(lines, w, max(1, min(h, len(f.round.Tanks)+1)))
}

// tankRow is one tank in the table.
func (f *Feed) tankRow(t model.TankFeeding, c columns, w int, edge bool) string {
	th := f.desk.Theme
	name := text.Fit(text.Clean(t.Tank.Tank.Name), 6)
	line := "  " + name
	switch {
	case t.Tank.Tank.Name == f.chosen:
		line = th.Focus.Render(th.Marks.Pointer + " " + name)
	case edge:
		line = th.Faint.Render(th.Marks.More) + " " + name
	}
	want := text.Unknown
	if t.HasRation {
		want = cellWords(t.Ration.CellsPerML)
	}
	left := text.Fit(f.leftShort(t), 13)
	if t.Left.Stale || t.Left.Basis == model.LeftUnknown {
		left = th.Stale.Render(left)
	}
	line += " " + text.Fit(text.Clean(t.Tank.Larvae.Batch), c.batch) + " " + text.FitRight(fmt.Sprint("d", t.AgeDays), 3)
	if !c.lean {
		line += " " + text.FitRight(want, 7) + "  " + left
	}
	if _, done := f.round.fed[t.Tank.Tank.Name]; len(c.algae) == 0 || len(t.Litres()) == 0 && !done {
		return text.Fit(line+" "+f.gets(t), w)
	}
	if c.add > 0 {
		line += " " + text.FitRight(cellWords(t.ToAdd()), c.add)
	}
	for _, a := range c.algae {
		line += " " + th.Strong.Render(text.FitRight(pourOf(t, a), pourW-1))
	}
	return text.Fit(line+" "+f.rowNote(t, c.note), w)
}

// pourOf is the pour of one alga, empty where the tank gets none.
func pourOf(t model.TankFeeding, alga string) string {
	for _, p := range t.Pours {
		if p.Alga == alga {
			return ml(p)
		}
	}
	return "-"
}

// rowNote says what is out of the ordinary in a row, the gravest first.
func (f *Feed) rowNote(t model.TankFeeding, w int) string {
	th := f.desk.Theme
	if e, done := f.round.fed[t.Tank.Tank.Name]; done {
		words := " " + th.Marks.Done + " fed "
		if w >= 14 {
			words += e.At.In(f.desk.Ledger.Room().Zone).Format("15:04 ")
		}
		return th.Saved.Render(text.Truncate(words, max(1, w)))
	}
	var words []string
	if t.Part < 1 {
		words = append(words, fmt.Sprintf("%.0f %%", 100*t.Part))
	}
	if t.Overflows() {
		words = append(words, "OVERFLOWS")
	}
	if t.Tank.Suspect {
		words = append(words, th.Marks.Suspect+" suspect")
	}
	if len(words) == 0 {
		return ""
	}
	return th.Hold.Render(text.Truncate(" "+strings.Join(words, " ")+" ", max(1, w)))
}

// leftShort is the food left, for a narrow column, with the age of its count.
func (f *Feed) leftShort(t model.TankFeeding) string {
	switch t.Left.Basis {
	case model.LeftFresh:
		return "none, fresh"
	case model.LeftUnknown:
		return "not counted" + f.desk.Theme.Marks.Stale
	case model.LeftCounted:
	}
	mark := ""
	if t.Left.Stale {
		mark = f.desk.Theme.Marks.Stale
	}
	return cellWords(t.Left.Reckoned()) + mark + " " + text.ShortDuration(f.desk.Now.Sub(t.Left.At))
}

// feedDue is how long it is until the larvae are to be fed again.
func (f *Feed) feedDue(t model.TankFeeding) time.Duration {
	return f.desk.Ledger.FeedDue(t.Tank).Sub(f.desk.Now)
}
