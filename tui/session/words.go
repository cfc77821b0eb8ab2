package session

import (
	"errors"
	"fmt"
	"strings"

	"drainboard/model"
	"drainboard/tui/desk"
	"drainboard/tui/screen"
	"drainboard/tui/text"

	"github.com/charmbracelet/lipgloss"
)

// note is one line that says what came of the last key.
type note struct {
	text string
	mood screen.Mood
}

func (s *Session) setNote(words string, mood screen.Mood) { s.note = note{text.Clean(words), mood} }

// noteLines draws the note.
func (s *Session) noteLines(w int) []string {
	if s.note.text == "" {
		return nil
	}
	th := s.desk.Theme
	style, before := th.Strong, ""
	switch s.note.mood {
	case screen.Saved:
		style, before = th.Saved, th.Marks.Done+" "
	case screen.Refused:
		style, before = th.Error, th.Marks.Overdue+" "
	case screen.Info:
	}
	return badge(style, before+s.note.text, w)
}

// badge draws words as a filled label, broken into lines where it is too long.
func badge(style lipgloss.Style, words string, w int) []string {
	var lines []string
	for _, line := range text.Wrap(words, max(1, w-2)) {
		lines = append(lines, style.Render(" "+line+" "))
	}
	return lines
}

// styled draws each line of words broken to w cells.
func styled(style lipgloss.Style, words string, w int) []string {
	var lines []string
	for _, line := range text.Wrap(words, max(1, w)) {
		lines = append(lines, style.Render(line))
	}
	return lines
}

// refusal words why nothing was written.
func refusal(err error) string {
	var readOnly *desk.ReadOnlyError
	if errors.As(err, &readOnly) {
		return err.Error()
	}
	return "NOT SAVED: " + err.Error() + ". What you typed is kept; Enter tries again"
}

// savedWords says what was just made durable.
func savedWords(l *model.Ledger, saved desk.Saved) string {
	if len(saved.Entries) == 0 {
		return ""
	}
	last := saved.Entries[len(saved.Entries)-1]
	words := "saved " + last.At.In(l.Room().Zone).Format("15:04") + ": " + entryWords(last)
	if len(saved.Odd) > 0 {
		words += " (odd: " + strings.Join(saved.Odd, "; ") + ")"
	}
	return words
}

// entryWords says in a few words what an entry is.
func entryWords(e model.Entry) string {
	if step, ok := e.Fact.(*model.StepDone); ok {
		return stepWords(step)
	}
	return model.Sentence(e.Fact)
}

func stepWords(x *model.StepDone) string {
	name := stepName(x.Name)
	if x.Move > 0 {
		name += fmt.Sprintf(" of move %d", x.Move)
	}
	switch {
	case x.Name == model.StepLeftOut:
		return fmt.Sprintf("move %d left out: %s", x.Move, x.Why)
	case x.Name == model.StepInto:
		return fmt.Sprintf("move %d goes into %s", x.Move, x.Why)
	case !x.Done:
		return name + " put off: " + x.Why
	case x.Why == "":
		return name + " done"
	}
	return name + ": " + x.Why
}

// stepName writes the name of a step for people.
func stepName(name string) string { return strings.ReplaceAll(name, "_", " ") }

func movesWord(n int) string {
	if n == 1 {
		return "1 move"
	}
	return fmt.Sprintf("%d moves", n)
}

// clockWords is the running clock of row 1.
func (s *Session) clockWords(w int) string {
	d := s.desk
	layout := "Mon 2 Jan 15:04:05"
	if w < 60 {
		layout = "15:04"
	}
	words := d.Theme.Faint.Render(d.Now.In(d.Ledger.Room().Zone).Format(layout))
	if d.ReadOnly != "" && w >= 60 {
		return d.Theme.Action.Render(" reading along ") + " " + words
	}
	return words
}

// headline is row 1: what is next, in words, and the clock.
func (s *Session) headline(style lipgloss.Style, words string, w int) block {
	clock := s.clockWords(w)
	left := style.Render(" " + text.Truncate(words, max(1, w-text.Width(clock)-3)) + " ")
	return block{lines: []string{text.Ends(left, clock, w)}}
}

// wordsForLarge writes words so that large letters can show them.
func wordsForLarge(s string) []string {
	return strings.Fields(strings.NewReplacer("µ", "u", "°", "", ";", ",", "(", "", ")", "", "'", "", "’", "").Replace(s))
}
