package feed

import (
	"slices"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/tui/screen"
	"drainboard/tui/text"
)

// slip is a form on its way to be entered.
type slip struct {
	title string
	back  phase // what is shown when it is closed
	form  screen.Form
	begun []string // the texts it began with
	// fresh are rows whose text was put there by the screen and not gone into yet:
	// what is typed takes its place, so that 10 does not become 110.
	fresh []bool
	// look checks the texts after each key: it marks what is wrong at its row and
	// says what they come to.
	look func(*slip)
	// save enters what was typed and closes the form, or marks why not.
	save func() tea.Cmd

	heading []string // above the form
	result  []string // beneath it: what the texts come to
	warn    []string // what is odd about it
	choices []string // beneath that: what may be typed in the row in focus
}

// startSlip shows a form.
func (f *Feed) startSlip(s slip) {
	for _, r := range s.form.Rows {
		s.begun, s.fresh = append(s.begun, r.Field.Text()), append(s.fresh, !r.Field.Empty())
	}
	f.phase, f.slip, f.say = typing, s, message{}
	f.slip.look(&f.slip)
}

// typed says that a text differs from the one it began with.
func (s slip) typed() bool {
	for i := range s.form.Rows {
		if s.touched(i) {
			return true
		}
	}
	return false
}

func (s slip) touched(row int) bool { return s.form.Rows[row].Field.Text() != s.begun[row] }

func (s slip) text(row int) string { return s.form.Rows[row].Field.Text() }

// onSlip takes a key while a form is typed into.
func (f *Feed) onSlip(key tea.KeyMsg) tea.Cmd {
	if key.Type == tea.KeyEsc {
		return f.leaveSlip()
	}
	f.say = message{}
	if words, ok := screen.Column(key); ok {
		key.Runes = []rune(joinWords(words))
	}
	last := f.slip.form.Focus == len(f.slip.form.Rows)-1
	f.slip.goInto(key)
	form, out := f.slip.form.Update(key)
	f.slip.form = form
	f.slip.look(&f.slip)
	switch {
	case out == screen.Entered && last:
		return f.slip.save()
	case out == screen.Rejected, out == screen.Ignored && key.Type == tea.KeyRunes:
		return f.refuse("this cannot stand in the field")
	}
	return nil
}

// goInto empties a fresh row when something is typed into it or rubbed out.
func (s *slip) goInto(key tea.KeyMsg) {
	at := s.form.Focus
	if !s.fresh[at] {
		return
	}
	empty := s.form.Rows[at].Field.With("")
	switch key.Type {
	case tea.KeyUp, tea.KeyDown, tea.KeyTab, tea.KeyShiftTab, tea.KeyEnter:
		return
	case tea.KeyRunes:
		if _, out := empty.Update(key); out != screen.Edited {
			return
		}
	case tea.KeyBackspace, tea.KeyDelete:
	default:
		s.fresh[at] = false // the cursor moves: the text is to be mended
		return
	}
	s.fresh[at] = false
	s.form.Rows = slices.Clone(s.form.Rows)
	s.form.Rows[at].Field = empty
}

func joinWords(words []string) string {
	joined := ""
	for i, w := range words {
		if i > 0 {
			joined += " "
		}
		joined += w
	}
	return joined
}

// leaveSlip goes back to the table; typed figures are not thrown away without a
// question.
func (f *Feed) leaveSlip() tea.Cmd {
	back := func() tea.Cmd {
		f.phase, f.say = f.slip.back, message{}
		return nil
	}
	if !f.slip.typed() {
		return back()
	}
	f.ask = &question{"Throw away what was typed?", back}
	return nil
}

// wrong marks a row, puts the cursor there and rings the bell.
func (f *Feed) wrong(row int, problem string) tea.Cmd {
	f.slip.form.Rows[row].Problem = problem
	f.slip.form.Focus = row
	return f.refuse(f.slip.form.Rows[row].Label + ": " + problem)
}

// slipView draws the form, what it comes to, and what may be typed.
func (f *Feed) slipView(w, h int) []string {
	s, th := &f.slip, f.desk.Theme
	lines := []string{f.titleLine(s.title, th.Strong, w)}
	foot := f.sayLines(f.say, w)
	var under []string
	for i, l := range s.result {
		style := th.Plain
		if i == 0 && len(s.result) > 1 {
			style = th.Strong
		}
		for _, part := range text.Wrap(l, max(1, w-2)) {
			under = append(under, "  "+style.Render(part))
		}
	}
	for _, l := range s.warn {
		under = append(under, badgeLines(th.Hold, l, w)...)
	}
	formH := 0
	for i, r := range s.form.Rows {
		formH++
		if r.Problem != "" || i == s.form.Focus && r.Note != "" {
			formH++
		}
	}
	room := h - len(lines) - len(foot)
	air := room > formH+len(under)+len(s.heading)+3
	if air || room > formH+len(under)+len(s.heading) {
		for _, l := range s.heading {
			lines = append(lines, "  "+th.Faint.Render(text.Truncate(l, max(1, w-2))))
		}
	}
	if air {
		lines = append(lines, "")
	}
	room = h - len(lines) - len(foot)
	formH = min(formH, max(min(room, 2), room-len(under)))
	lines = append(lines, s.form.View(th, w, max(0, formH))...)
	if air {
		lines = append(lines, "")
	}
	lines = append(lines, under...)
	if air && len(s.choices) > 0 {
		lines = append(lines, "")
		for _, l := range s.choices {
			lines = append(lines, "  "+th.Faint.Render(text.Truncate(l, max(1, w-2))))
		}
	}
	room = max(0, h-len(foot))
	return text.Frame(append(lines[:min(len(lines), room)], foot...), w, h)
}
