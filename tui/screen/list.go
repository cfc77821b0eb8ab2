package screen

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/tui/text"
	"drainboard/tui/theme"
)

// pageStep is how many rows PgUp and PgDn move in a [List].
const pageStep = 10

// List is rows to choose one from. An item is one line and may be styled.
type List struct {
	Items  []string
	Chosen int
}

// Update takes a key: the arrows, PgUp, PgDn, Home, End, and Enter to choose.
func (l List) Update(msg tea.KeyMsg) (List, Outcome) {
	to := l.Chosen
	switch msg.Type {
	case tea.KeyEnter:
		if len(l.Items) == 0 {
			return l, Ignored
		}
		return l, Entered
	case tea.KeyUp:
		to--
	case tea.KeyDown:
		to++
	case tea.KeyPgUp:
		to -= pageStep
	case tea.KeyPgDown:
		to += pageStep
	case tea.KeyHome:
		to = 0
	case tea.KeyEnd:
		to = len(l.Items) - 1
	default:
		return l, Ignored
	}
	l.Chosen = inRange(to, len(l.Items))
	return l, Edited
}

// View draws the list in exactly h rows of w cells, the chosen row with a mark
// before it and, where it has no style of its own, in bold. The first and last row carry a mark where more are hidden.
func (l List) View(th theme.Theme, w, h int) []string {
	chosen := inRange(l.Chosen, len(l.Items))
	top := window(len(l.Items), chosen, h)
	var lines []string
	for i := top; i < len(l.Items) && len(lines) < h; i++ {
		before, item := "  ", l.Items[i]
		switch {
		case i == chosen:
			before = th.Focus.Render(th.Marks.Pointer) + " "
			if !strings.Contains(item, "\x1b") {
				item = th.Strong.Render(item)
			}
		case i == top && top > 0, len(lines) == h-1 && i < len(l.Items)-1:
			before = th.Faint.Render(th.Marks.More) + " "
		}
		lines = append(lines, before+item)
	}
	return text.Frame(lines, w, h)
}
