package board

import (
	"time"

	"drainboard/model"
	"drainboard/tui/desk"
	"drainboard/tui/text"

	"github.com/charmbracelet/lipgloss"
)

// tile draws one tank in exactly h rows of w cells.
func (b *Board) tile(t *model.TankNow, g grid) []string {
	if t == nil {
		return text.Frame(nil, g.tileW, g.tileH)
	}
	d := b.desk
	u := urgencyOf(d, *t)
	box, frame := d.Theme.Boxes.Single, d.Theme.Frame
	switch {
	case u == overdue:
		box, frame = d.Theme.Boxes.Double, d.Theme.FrameOverdue
	case t.Empty():
		box = d.Theme.Boxes.Open
	}
	body := b.caption(*t, g.tileW-2, u)
	if g.kind == asCones {
		body = b.coned(*t, g.tileW-2, u)
	}
	return box.Around(frame, b.heading(*t, u), body, g.tileW, g.tileH)
}

// heading is the name and the state, on the frame.
func (b *Board) heading(t model.TankNow, u urgency) string {
	th := b.desk.Theme
	name := text.Clean(t.Tank.Name)
	head := th.Strong.Render(" " + name + " ")
	if b.chosen == t.Tank.Name {
		head = th.Focus.Render(th.Marks.Pointer + name + " ")
	}
	word := stateWord(b.desk, t, u)
	switch {
	case word == "":
	case u != calm:
		head += u.style(th).Render(" " + word + " ")
	default:
		head += th.Strong.Render(word + " ")
	}
	switch {
	case t.Suspect && word == "":
		head += th.Suspect.Render(th.Marks.Suspect + " SUSPECT")
	case t.Suspect:
		head += th.Suspect.Render(th.Marks.Suspect)
	}
	return head
}

// coned is the inside of a tile with its cone on the left.
func (b *Board) coned(t model.TankNow, w int, u urgency) []string {
	d := b.desk
	drawn := cone(d.Theme.Marks, b.share(t))
	left := make([]string, coneRows)
	for i, row := range drawn {
		left[i] = d.Theme.Water.Render(row)
	}
	lines := b.caption(t, w-coneCells-1, u)
	return text.Beside(max(len(lines), coneRows), 1,
		text.Column{Lines: left, W: coneCells},
		text.Column{Lines: lines, W: w - coneCells - 1})
}

// share is the water level: the time left to the change, full for clean water.
func (b *Board) share(t model.TankNow) float64 {
	switch t.State {
	case model.Holding:
		whole := b.desk.Ledger.Due(t).Sub(t.Since)
		return float64(b.desk.Ledger.Due(t).Sub(b.desk.Now)) / float64(whole)
	case model.Ready:
		return 1
	}
	return 0
}

// caption is what stands in a tile, the gravest first, w cells wide.
func (b *Board) caption(t model.TankNow, w int, u urgency) []string {
	if t.State != model.Holding {
		return emptyCaption(b.desk, t)
	}
	d := b.desk
	left := dueWords(d, t)
	lines := []string{
		batchWords(d, t, w),
		u.style(d.Theme).Render(left),
		celsiusStyle(d, t).Render(celsiusWords(d, t)),
		d.Theme.Faint.Render(meshWords(d, t)),
	}
	if marks := markWords(d, t); marks != "" {
		lines = append(lines, d.Theme.Strong.Render(text.Truncate(marks, w)))
	}
	for _, words := range []string{larvaeWords(t), lengthWords(t), feedWords(d, t), lookWords(d, t)} {
		if words != "" {
			lines = append(lines, d.Theme.Faint.Render(text.Truncate(words, w)))
		}
	}
	return lines
}

func celsiusStyle(d *desk.Desk, t model.TankNow) lipgloss.Style {
	if last, ok := t.LastCelsius(); !ok || d.Now.Sub(last.At) > d.Ledger.ReadingLimit() {
		return d.Theme.Stale
	}
	return d.Theme.Plain
}

func emptyCaption(d *desk.Desk, t model.TankNow) []string {
	lines := []string{d.Theme.Faint.Render(text.Decimal(t.Tank.Litres, 0) + " L")}
	if !t.Known {
		return append(lines, d.Theme.Faint.Render("no entry"), d.Theme.Faint.Render("yet"))
	}
	if t.State == model.Ready {
		lines = append(lines, celsiusStyle(d, t).Render(celsiusWords(d, t)))
	}
	since := t.Since.In(d.Ledger.Room().Zone)
	layout := "15:04"
	if d.Now.Sub(t.Since) > 20*time.Hour {
		layout = "2 Jan"
	}
	return append(lines, d.Theme.Faint.Render(since.Format(layout)))
}
