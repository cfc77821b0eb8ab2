package screen

import (
	tea "github.com/charmbracelet/bubbletea"

	"drainboard/tui/text"
	"drainboard/tui/theme"
)

// Page is lines to read and scroll through. A line may be styled.
type Page struct {
	Lines []string
	Top   int // first line shown
}

// Update takes a scrolling key: the arrows, PgUp, PgDn, Space, Home and End. The
// height is that of the last View.
func (p Page) Update(msg tea.KeyMsg, h int) (Page, Outcome) {
	to := p.Top
	switch msg.Type {
	case tea.KeyUp:
		to--
	case tea.KeyDown:
		to++
	case tea.KeyPgUp:
		to -= max(1, h-1)
	case tea.KeyPgDown, tea.KeySpace:
		to += max(1, h-1)
	case tea.KeyHome:
		to = 0
	case tea.KeyEnd:
		to = len(p.Lines)
	default:
		return p, Ignored
	}
	p.Top = p.clamp(to, h)
	return p, Edited
}

func (p Page) clamp(top, h int) int { return max(0, min(top, len(p.Lines)-max(0, h))) }

// View draws the page in exactly h rows of w cells. The last cell of each row
// is kept for a mark that shows where lines are hidden above or below.
func (p Page) View(th theme.Theme, w, h int) []string {
	if w < 2 {
		return text.Frame(nil, w, h)
	}
	top := p.clamp(p.Top, h)
	rows := text.Frame(p.Lines[top:], w-1, h)
	more := th.Faint.Render(th.Marks.More)
	for y := range rows {
		edge := " "
		if y == 0 && top > 0 || y == h-1 && top+h < len(p.Lines) {
			edge = more
		}
		rows[y] += edge
	}
	return rows
}
