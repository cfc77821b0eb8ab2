package scope

import (
	"fmt"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/model/growth"
	"drainboard/tui/factform"
	"drainboard/tui/screen"
)

// columnOf gives the words of a pasted column of lengths, or of a line of them
// with commas between. One comma is a decimal sign.
func columnOf(key tea.KeyMsg) ([]string, bool) {
	if words, ok := screen.Column(key); ok {
		return words, true
	}
	if !key.Paste || strings.Count(string(key.Runes), ",") < 2 {
		return nil, false
	}
	return strings.Split(strings.Trim(string(key.Runes), ", \t\r\n"), ","), true
}

// onColumn asks once before a pasted column is taken as one entry. A column with
// a word that is no length is refused as a whole.
func (s *Scope) onColumn(words []string) tea.Cmd {
	um := make([]float64, len(words))
	for i, w := range words {
		typed, ok := screen.ParseNumber(w)
		if !ok {
			return s.refuse(fmt.Sprintf("nothing of the %d pasted was taken: number %d is %q, no length", len(words), i+1, short(w)))
		}
		um[i] = s.unit.um(typed)
		if err := growth.CheckLength(um[i]); err != nil {
			return s.refuse(fmt.Sprintf("nothing of the %d pasted was taken: number %d: %v", len(words), i+1, err))
		}
	}
	sum, err := growth.Summarize(um)
	if err != nil {
		return s.refuse(err.Error())
	}
	ask := fmt.Sprintf("Take %d pasted lengths %s, %s to %s µm, mean %.1f", len(um), s.unit.words(), figure(slices.Min(um)), figure(slices.Max(um)), sum.Mean)
	if len(sum.Odd) > 0 {
		ask += fmt.Sprintf(", %d of them odd", len(sum.Odd))
	}
	s.ask = &question{ask + "? They are a sample of their own.", func() tea.Cmd { return s.takeColumn(um, len(sum.Odd)) }}
	return nil
}

// short is the beginning of a pasted word, for a refusal.
func short(w string) string {
	runes := []rune(w)
	if len(runes) > 20 {
		return string(runes[:20]) + "..."
	}
	return w
}

func (s *Scope) takeColumn(um []float64, odd int) tea.Cmd {
	if _, err := s.desk.Enter(&model.Sizes{Tank: s.tank, UM: um, UMPerDivision: s.unit.factor()}); err != nil {
		// The column stays in question, so that Enter tries again.
		s.ask = &question{
			factform.NotSaved(err) + ". Try again to take the pasted lengths?",
			func() tea.Cmd { return s.takeColumn(um, odd) },
		}
		return screen.Send(screen.Beep{Times: 1})
	}
	s.say = message{fmt.Sprintf("%d pasted lengths saved", len(um)), screen.Saved}
	if odd > 0 {
		s.say = message{fmt.Sprintf("%d pasted lengths saved, %d of them odd", len(um), odd), screen.Refused}
		return screen.Send(screen.Beep{Times: 2})
	}
	return nil
}
