package bench

import (
	"slices"
	"strings"

	sums "drainboard/model/bench"
	"drainboard/tui/text"
)

// besideW is the width from which the figures stand beside the form, formW how
// much of it the form takes, figuresW the most the figures take, so that a value
// stays near its name.
const (
	besideW  = 72
	formW    = 36
	figuresW = 56
)

// View draws the screen in exactly h rows of w cells. The root draws the footer
// beneath it.
func (b *Bench) View(w, h int) []string {
	switch {
	case w < 1 || h < 1:
		return text.Frame(nil, w, h)
	case b.leaving:
		return b.leavingView(w, h)
	case b.open:
		return b.sheetView(w, h)
	}
	lines := []string{b.titleLine("BENCH", "choose a sum", w)}
	if h > len(b.list.Items)+2 {
		lines = append(lines, "")
	}
	return append(text.Frame(lines, w, len(lines)), b.list.View(b.desk.Theme, w, h-len(lines))...)
}

// titleLine is the first row, with the clock.
func (b *Bench) titleLine(name, what string, w int) string {
	d := b.desk
	clock := d.Now.In(d.Ledger.Room().Zone).Format("15:04:05")
	words := " " + d.Theme.Strong.Render(name) + "  " + d.Theme.Faint.Render(what)
	return text.Ends(words, d.Theme.Faint.Render(clock), w)
}

func (b *Bench) leavingView(w, h int) []string {
	th := b.desk.Theme
	var lines []string
	for _, l := range text.Wrap("Leave the bench? The figures typed here are not kept.", max(1, w-4)) {
		lines = append(lines, "  "+th.Strong.Render(l))
	}
	lines = lines[:min(len(lines), max(0, h-1))]
	return text.Centre(append(lines, "  "+th.Action.Render(" Enter: leave ")+"  Esc: stay"), w, h)
}

// sheetView is the form and the figures, and beneath them cautions, remarks and
// sources. Cautions come before the rest and are never left out: where they do not
// all fit, they scroll.
func (b *Bench) sheetView(w, h int) []string {
	s := b.sheet()
	lines := []string{b.titleLine(strings.ToUpper(s.sum.Name), s.sum.Short, w)}
	room := h - 1
	top, hidden := b.upper(w, room)
	below := b.belowLines(w, room-len(top))
	if allowed := b.topRoom(room, len(below)); len(top) > allowed {
		top, hidden = b.upper(w, allowed)
		below = b.belowLines(w, room-len(top))
	}
	below = append(below, hidden...)
	lines = append(lines, top...)
	if h > len(lines)+len(below)+1 {
		lines = append(lines, "")
	}
	b.belowH = max(0, h-len(lines))
	b.below.Lines = below
	return append(text.Frame(lines, w, min(h, len(lines))), b.below.View(b.desk.Theme, w, b.belowH)...)
}

// topRoom is the rows the form and the figures may take: what is left by the lines
// below, and at least half where those do not fit.
func (b *Bench) topRoom(room, below int) int {
	return max(1, room/2, room-below)
}

// upper is the form and what comes of it in at most room rows, and the figures for
// which there is none left. The note goes first, then rows of the form away from the
// focus, then the last figures.
func (b *Bench) upper(w, room int) (lines, hidden []string) {
	if w >= besideW {
		figures := b.figureLines(min(figuresW, w-formW-3))
		left := b.formLines(formW, room)
		if note := b.noteLines(formW); len(left)+len(note) <= room {
			left = append(left, note...)
		}
		shown := min(len(figures), room)
		lines = text.Beside(max(len(left), shown), 2,
			text.Column{Lines: left, W: formW},
			text.Column{Lines: figures[:shown], W: w - formW - 2})
		return lines, indented(figures[shown:])
	}
	figures := indented(b.figureLines(min(figuresW, w-3)))
	note := b.noteLines(w)
	lines = b.formLines(w, max(min(room, 2), room-len(figures)))
	if len(lines)+len(note)+len(figures) <= room {
		lines = append(lines, note...)
	}
	shown := max(0, min(len(figures), room-len(lines)))
	return append(lines, figures[:shown]...), figures[shown:]
}

func indented(lines []string) []string {
	out := make([]string, len(lines))
	for i, l := range lines {
		out[i] = "  " + l
	}
	return out
}

// formLines is the form without the notes of its rows, at most room of them.
func (b *Bench) formLines(w, room int) []string {
	f := b.sheet().form
	high := len(f.Rows)
	f.Rows = slices.Clone(f.Rows)
	for i := range f.Rows {
		f.Rows[i].Note = ""
		if f.Rows[i].Problem != "" {
			high++
		}
	}
	return f.View(b.desk.Theme, w, min(high, max(1, room)))
}

// noteLines say what to type into the row in focus.
func (b *Bench) noteLines(w int) []string {
	s := b.sheet()
	var lines []string
	for _, l := range text.Wrap(s.form.Rows[s.form.Focus].Note, max(1, w-4)) {
		lines = append(lines, "    "+b.desk.Theme.Faint.Render(l))
	}
	return lines
}

// belowLines are the cautions, the remarks, the choices of the field in focus and
// the sources. Where room is short the sources come before the remarks.
func (b *Bench) belowLines(w, room int) []string {
	s, th := b.sheet(), b.desk.Theme
	wide := max(1, w-3) // two cells before each line, and that of the page's mark
	var lines, remarks, sources []string
	for _, c := range s.answer.Cautions {
		for i, l := range text.Wrap(c, wide) {
			mark := th.Marks.Overdue
			if i > 0 {
				mark = " "
			}
			lines = append(lines, th.Strong.Render(mark+" "+l))
		}
	}
	for _, r := range s.answer.Remarks {
		for _, l := range text.Wrap(r, wide) {
			remarks = append(remarks, "  "+l)
		}
	}
	for _, l := range b.choices() {
		remarks = append(remarks, "  "+th.Faint.Render(text.Truncate(l, wide)))
	}
	for _, l := range text.Wrap("source: "+strings.Join(s.answer.Sources, "; "), wide) {
		sources = append(sources, "  "+th.Faint.Render(l))
	}
	if len(lines)+len(remarks)+len(sources) > room {
		return slices.Concat(lines, sources, remarks)
	}
	return slices.Concat(lines, remarks, sources)
}

// choices are the chambers that may be meant while a volume is typed.
func (b *Bench) choices() []string {
	s := b.sheet()
	if s.sum.Inputs[s.form.Focus].Kind != sums.Volume {
		return nil
	}
	begun := sums.ChambersBegun(s.form.Rows[s.form.Focus].Field.Text())
	lines := make([]string, len(begun))
	for i, c := range begun {
		lines[i] = text.Fit(c.Name, 18) + " " + text.FitRight(plain(c.ML), 10) + " mL  " + c.Full
	}
	return lines
}
