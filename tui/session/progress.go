package session

import (
	"fmt"
	"strings"

	"drainboard/model"
	"drainboard/tui/text"
)

// mostDeferred is how many steps that are put off are named; more are counted.
const mostDeferred = 3

// deferredLines names the steps that are put off, with their reasons.
func (s *Session) deferredLines(at now, w int) []string {
	th := s.desk.Theme
	open := at.session.Deferred(s.desk.Ledger.Room().Procedure)
	var lines []string
	for i, r := range open {
		if i == mostDeferred {
			lines = append(lines, th.Strong.Render(text.Truncate(fmt.Sprintf("%s and %d more put off", th.Marks.Deferred, len(open)-i), w)))
			break
		}
		lines = append(lines, th.Strong.Render(text.Truncate(th.Marks.Deferred+" "+text.Clean(stepWords(r.Step)), w)))
	}
	return lines
}

// progressLines says which moves are done and at which pause point the crew is.
func (s *Session) progressLines(at now, w int) []string {
	th := s.desk.Theme
	moves := s.movesLine(at)
	if text.Width(moves) > w {
		moves = countsLine(at)
	}
	lines := []string{text.Truncate(moves, w)}
	if points := s.pauseLine(at); points != "" {
		lines = append(lines, text.Truncate(points, w))
	}
	for i := range lines {
		lines[i] = th.Faint.Render(lines[i])
	}
	return lines
}

// movesLine marks every move: done, at hand, left out or to come.
func (s *Session) movesLine(at now) string {
	m := s.desk.Theme.Marks
	words := make([]string, len(at.session.Legs))
	for i := range at.session.Legs {
		leg := at.session.Leg(i + 1)
		mark := m.Bullet
		_, out := at.session.LeftOut(i + 1)
		switch {
		case out:
			mark = m.Out
		case at.open && at.prompt.Move == i+1:
			mark = m.Pointer
		case at.session.Moved[i] != 0:
			mark = m.Done
		}
		words[i] = mark + text.Clean(leg.From) + m.Arrow + text.Clean(leg.To)
		if out {
			words[i] += " left out"
		}
	}
	return strings.Join(words, "  ")
}

// countsLine is movesLine in few words.
func countsLine(at now) string {
	done, out := 0, 0
	for i, n := range at.session.Moved {
		if n != 0 {
			done++
		} else if _, left := at.session.LeftOut(i + 1); left {
			out++
		}
	}
	words := fmt.Sprintf("%d of %s done", done, movesWord(len(at.session.Legs)))
	if out > 0 {
		words += fmt.Sprintf(", %d left out", out)
	}
	return words
}

// pauseLine marks the pause points of the move at hand.
func (s *Session) pauseLine(at now) string {
	p := at.prompt
	if !at.open || p.Move == 0 || p.Again {
		return ""
	}
	m := s.desk.Theme.Marks
	sections := s.desk.Ledger.Room().Procedure.Sections()
	current := (p.Stage - 1) % len(sections)
	var words []string
	for i, section := range sections {
		if section[0].Pause == "" {
			continue
		}
		name := text.Clean(section[0].Pause)
		switch {
		case i < current:
			name = m.Done + name
		case i == current:
			name = fmt.Sprintf("%s%s, step %d of %d", m.Pointer, name, stepIn(section, p.Step.Name), len(section))
		default:
			name = m.Bullet + name
		}
		words = append(words, name)
	}
	return strings.Join(words, "  ")
}

func stepIn(section []model.Step, name string) int {
	for i, step := range section {
		if step.Name == name {
			return i + 1
		}
	}
	return 1
}
