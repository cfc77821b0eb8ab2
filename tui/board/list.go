package board

import (
	"drainboard/model"
	"drainboard/tui/text"
)

// row is one tank in one line of w cells.
func (b *Board) row(t model.TankNow, w int) string {
	d := b.desk
	u := urgencyOf(d, t)
	pointer := " "
	if b.chosen == t.Tank.Name {
		pointer = d.Theme.Marks.Pointer
	}
	line := pointer + text.Fit(text.Clean(t.Tank.Name), 6) + " "
	if t.State != model.Holding {
		line += text.Fit(stateWord(d, t, u), 12) + " "
		if t.State == model.Ready {
			line += celsiusWords(d, t)
		}
		return text.Fit(line, w)
	}
	line += text.Fit(batchWords(d, t, 14), 14) + " "
	line += u.style(d.Theme).Render(text.Fit(dueWords(d, t), 10)) + " "
	line += text.Fit(celsiusWords(d, t), 9) + " " + text.Fit(meshWords(d, t), 11) + " "
	mark := stateWord(d, t, u)
	if t.Suspect {
		mark += " " + d.Theme.Marks.Suspect
	}
	return text.Fit(line+mark+" "+markWords(d, t), w)
}
