package screen

import (
	"slices"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/tui/text"
	"drainboard/tui/theme"
)

// Row is one line of a [Form].
type Row struct {
	Label string
	Field Field
	Unit  string // stands after the field
	Note  string // what to type, shown while the row has the focus
	// Problem is what is wrong with the field, in the place of Note and whether
	// or not the row has the focus.
	Problem string
}

// Form is labelled fields beneath each other. Up, down, Tab and Enter move
// between them; Enter in the last one is [Entered].
type Form struct {
	Rows  []Row
	Focus int
}

// Update takes a key for the field in focus.
func (f Form) Update(msg tea.KeyMsg) (Form, Outcome) {
	if len(f.Rows) == 0 {
		return f, Ignored
	}
	f.Focus = inRange(f.Focus, len(f.Rows))
	switch msg.Type {
	case tea.KeyUp, tea.KeyShiftTab:
		return f.to(f.Focus - 1)
	case tea.KeyDown, tea.KeyTab:
		return f.to(f.Focus + 1)
	}
	field, out := f.Rows[f.Focus].Field.Update(msg)
	if out == Entered && f.Focus < len(f.Rows)-1 {
		return f.to(f.Focus + 1)
	}
	f.Rows = slices.Clone(f.Rows)
	if string(field.text) != string(f.Rows[f.Focus].Field.text) {
		f.Rows[f.Focus].Problem = "" // it was about the text before
	}
	f.Rows[f.Focus].Field = field
	return f, out
}

func (f Form) to(i int) (Form, Outcome) {
	f.Focus = inRange(i, len(f.Rows))
	return f, Edited
}

// View draws the form in exactly h rows of w cells. Where it does not fit, the
// rows around the focus are shown.
func (f Form) View(th theme.Theme, w, h int) []string {
	labels := 0
	for _, r := range f.Rows {
		labels = max(labels, text.Width(r.Label))
	}
	labels = min(labels, w/2)
	var lines []string
	focus := 0
	for i, r := range f.Rows {
		if i == f.Focus {
			focus = len(lines)
		}
		lines = append(lines, r.view(th, labels, w, i == f.Focus)...)
	}
	top := window(len(lines), focus, h)
	return text.Frame(lines[top:], w, h)
}

func (r Row) view(th theme.Theme, labels, w int, focused bool) []string {
	pointer, label := "  ", text.Fit(r.Label, labels)
	if focused {
		pointer, label = th.Strong.Render(th.Marks.Pointer)+" ", th.Strong.Render(label)
	}
	room := max(2, w-2-labels-2-text.Width(r.Unit)-1)
	field := r.Field.View(th, min(room, r.Field.max+1), focused)
	lines := []string{pointer + label + "  " + field + " " + th.Faint.Render(r.Unit)}
	indent := "    "
	switch {
	case r.Problem != "":
		lines = append(lines, indent+th.Error.Render(" "+text.Truncate(r.Problem, w-len(indent)-2)+" "))
	case focused && r.Note != "":
		lines = append(lines, indent+th.Faint.Render(text.Truncate(r.Note, w-len(indent))))
	}
	return lines
}

// inRange brings an index into a list of n, 0 where it is empty.
func inRange(i, n int) int { return max(0, min(i, n-1)) }

// window is the first of h rows to show out of n so that the chosen one is
// seen, in the middle where possible.
func window(n, chosen, h int) int {
	return max(0, min(chosen-max(0, h)/2, n-max(0, h)))
}
