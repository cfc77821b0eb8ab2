package board

import (
	"strconv"
	"time"

	"drainboard/model"
	"drainboard/tui/text"

	"github.com/charmbracelet/lipgloss"
)

// wallTile draws a tank's name and state in large digits, to be read across the
// room: the hours left, or the word of an empty tank.
func (b *Board) wallTile(t model.TankNow, g grid) []string {
	d := b.desk
	u := urgencyOf(d, t)
	style := u.style(d.Theme)
	if b.next == t.Tank.Name && u == calm {
		style = d.Theme.Action
	}
	inner := g.tileW - 1
	lines := big(text.Clean(t.Tank.Name), inner, d.Theme.ASCII, d.Theme.Strong)
	lines = append(lines, big(b.wallWord(t), inner, d.Theme.ASCII, style)...)
	return text.Frame(lines, g.tileW, g.tileH)
}

// big writes a word three rows high, or small where it does not fit.
func big(s string, w int, ascii bool, style lipgloss.Style) []string {
	rows, ok := text.Big(s, ascii)
	if !ok || text.BigWidth(s) > w {
		return []string{"", style.Render(text.Fit(s, min(w, text.Width(s)))), ""}
	}
	lines := make([]string, len(rows))
	for i, row := range rows {
		lines[i] = style.Render(row)
	}
	return lines
}

// wallWord is the state in at most four signs: hours left, hours late with a
// minus before them, or the short word of an empty tank.
func (b *Board) wallWord(t model.TankNow) string {
	switch t.State {
	case model.Ready:
		return "RDY"
	case model.Dirty:
		return "DTY"
	case model.WashedDown:
		return "WSH"
	case model.Out:
		return "OUT"
	}
	left := b.desk.Ledger.Due(t).Sub(b.desk.Now)
	if left.Abs() < time.Hour {
		return strconv.Itoa(int(left.Minutes())) + "M"
	}
	return strconv.Itoa(int(left.Hours())) + "H"
}
