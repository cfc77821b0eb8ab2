package session

import (
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/tui/keys"
	"drainboard/tui/screen"
	"drainboard/tui/text"
)

func afterKeys() keys.Table {
	return keys.Table{Title: "Session, after", Bindings: []keys.Binding{
		{Action: accept, Keys: []string{"enter", "-"}, Short: "to the board", Long: "Go to the board."},
	}}
}

func (s *Session) pressAfter(key tea.KeyMsg) tea.Cmd {
	if action, _ := s.Keys().Match(key); action == accept || key.Type == tea.KeyEsc {
		return screen.Send(screen.Back{})
	}
	return nil
}

// closedSession is the session that was closed on this screen.
func (s *Session) closedSession() *model.SessionNow {
	for _, session := range s.desk.Ledger.Sessions() {
		if session.N == s.closed {
			return session
		}
	}
	return nil
}

// viewAfter draws what a closed session did.
func (s *Session) viewAfter(w, h int) []string {
	l, th := s.desk.Ledger, s.desk.Theme
	session := s.closedSession()
	if session == nil {
		return stack([]block{s.headline(th.Strong, "the session was taken back", w)}, w, h)
	}
	blocks := []block{
		s.headline(th.Strong, closedWords(session), w),
		{lines: s.noteLines(w), rank: 4},
		{lines: listed(movedLines(l, session, th.Marks.Arrow), w, h*2/5), air: true},
	}
	if went := deviations(l, session); len(went) > 0 {
		lines := append([]string{th.Title.Render("WENT OTHERWISE")}, listed(went, w, h/3)...)
		blocks = append(blocks, block{lines: lines, rank: 1, air: true})
	} else {
		blocks = append(blocks, block{lines: []string{th.Faint.Render("everything went as agreed")}, rank: 3, air: true})
	}
	return stack(append(blocks, block{lines: styled(th.Strong, emptyWords(l), w), rank: 2, air: true}), w, h)
}

// listed cuts lines to w cells and at most n rows, saying how many are left out.
func listed(lines []string, w, n int) []string {
	var out []string
	for i, line := range lines {
		if len(out) >= max(1, n-1) && i < len(lines)-1 {
			return append(out, text.Truncate(fmt.Sprintf("and %d more; the log has them", len(lines)-i), w))
		}
		out = append(out, text.Truncate(line, w))
	}
	return out
}

func closedWords(session *model.SessionNow) string {
	words := "complete"
	if !session.Closed.Closed.Complete {
		words = "INCOMPLETE"
	}
	moved := 0
	for _, n := range session.Moved {
		if n != 0 {
			moved++
		}
	}
	return fmt.Sprintf("SESSION %d closed, %s: %d of %s", session.N, words, moved, movesWord(len(session.Legs)))
}

// movedLines says of each move when it was made and when its larvae are due next.
func movedLines(l *model.Ledger, session *model.SessionNow, arrow string) []string {
	zone := l.Room().Zone
	var lines []string
	for i := range session.Legs {
		leg := session.Leg(i + 1)
		line := text.Clean(leg.From) + arrow + text.Clean(leg.To)
		n := session.Moved[i]
		if n == 0 {
			lines = append(lines, line+"  not moved")
			continue
		}
		to, ok := l.Tank(leg.To)
		line += "  moved " + l.Entries()[n-1].At.In(zone).Format("15:04")
		if ok && to.Larvae != nil {
			line += "  " + text.Clean(to.Larvae.Batch) + ", next due " + l.Due(to).In(zone).Format("Mon 2 Jan 15:04")
		}
		lines = append(lines, line)
	}
	return lines
}

// deviations lists what went otherwise than agreed: other destinations, moves
// left out, holds passed with a reason, steps put off or done again.
func deviations(l *model.Ledger, session *model.SessionNow) []string {
	procedure := l.Room().Procedure
	var lines []string
	if why := session.Closed.Closed.Why; why != "" {
		lines = append(lines, "closed: "+why)
	}
	for i, agreed := range session.Legs {
		if into := session.Leg(i + 1).To; into != agreed.To {
			lines = append(lines, fmt.Sprintf("%s went into %s, agreed was %s", agreed.From, into, agreed.To))
		}
	}
	for _, r := range session.Steps {
		_, known := procedure.Step(r.Step.Name)
		_, ahead, overridden := strings.Cut(r.Step.Why, "; went ahead: ")
		switch {
		case r.Step.Name == model.StepLeftOut && r.Step.Done:
			lines = append(lines, stepWords(r.Step))
		case r.Step.Done && overridden:
			figure, _, _ := strings.Cut(r.Step.Why, ";")
			lines = append(lines, fmt.Sprintf("hold passed at %s of move %d on %s: %s", stepName(r.Step.Name), r.Step.Move, figure, ahead))
		case known && !r.Step.Done:
			words := stepWords(r.Step)
			if _, later := session.Answer(r.Step.Move, r.Step.Name); later {
				words += "; done later"
			}
			lines = append(lines, words)
		case !known && !r.Step.Done:
			lines = append(lines, fmt.Sprintf("move %d went back to %s: %s", r.Step.Move, r.Step.Name, r.Step.Why))
		}
	}
	for i := range lines {
		lines[i] = text.Clean(lines[i])
	}
	return lines
}

// emptyWords names the tanks that stand empty now.
func emptyWords(l *model.Ledger) string {
	var words []string
	for _, t := range l.Tanks() {
		if t.Empty() {
			words = append(words, text.Clean(t.Tank.Name)+" ("+string(t.State)+")")
		}
	}
	if len(words) == 0 {
		return "No tank stands empty."
	}
	return "EMPTY NOW: " + strings.Join(words, ", ")
}
