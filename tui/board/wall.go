package board

import (
	"strconv"
	"strings"
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
	if u == calm && (b.next == t.Tank.Name || b.into == t.Tank.Name) {
		style = d.Theme.Action
	}
	inner, half := g.tileW-1, g.tileH/2
	lines := big(text.Clean(t.Tank.Name), inner, half, d.Theme.ASCII, d.Theme.Strong)
	for len(lines) < half {
		lines = append(lines, "")
	}
	lines = append(lines, big(b.wallWord(t), inner, g.tileH-half, d.Theme.ASCII, style)...)
	return text.Frame(lines, g.tileW, g.tileH)
}

// big writes a word in at most w x h cells: six rows high where that fits, else
// three, else small.
func big(s string, w, h int, ascii bool, style lipgloss.Style) []string {
	drawn, ok := text.Big(s, ascii)
	if !ok || text.BigWidth(s)+2 > w || h < text.BigRows {
		return []string{style.Render(text.Truncate(" "+s+" ", w))}
	}
	rows := drawn[:]
	if 2*text.BigWidth(s)+2 <= w && h > 2*text.BigRows {
		rows = doubled(rows)
	}
	lines := make([]string, len(rows))
	for i, row := range rows {
		lines[i] = style.Render(" " + row + " ")
	}
	return lines
}

// doubled makes large digits twice as wide and twice as high.
func doubled(rows []string) []string {
	upper := strings.NewReplacer("▀", "██", "▄", "  ", "█", "██", `"`, "##", "_", "  ", "#", "##", " ", "  ")
	lower := strings.NewReplacer("▀", "  ", "▄", "██", "█", "██", `"`, "  ", "_", "##", "#", "##", " ", "  ")
	out := make([]string, 0, 2*len(rows))
	for _, row := range rows {
		out = append(out, upper.Replace(row), lower.Replace(row))
	}
	return out
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
