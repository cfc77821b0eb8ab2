package session

import (
	"errors"
	"fmt"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/tui/screen"
	"drainboard/tui/text"
)

// pressMover takes a key of the mover's answer.
func (s *Session) pressMover(key tea.KeyMsg) tea.Cmd {
	field, out := s.running.anew(s.running.mover, key).Update(key)
	switch out {
	case screen.Entered:
		return s.answerMover()
	case screen.Rejected:
		return beep(1)
	case screen.Ignored, screen.Edited, screen.TakeBack:
	}
	s.running.mover = field
	return nil
}

// anew gives the field for a key: an empty one where the answer in it was refused
// and a new one is begun.
func (r *running) anew(f screen.Field, key tea.KeyMsg) screen.Field {
	if r.refused && key.Type == tea.KeyRunes {
		f = f.With("")
	}
	if key.Type != tea.KeyEnter {
		r.refused = false
	}
	return f
}

// answerMover submits what was typed at the mover's step.
func (s *Session) answerMover() tea.Cmd {
	at, r, l := s.now(), &s.running, s.desk.Ledger
	typed := r.mover.Text()
	if s.plainGuard(at) && typed != "1" {
		return s.refused(errors.New("type 1, then Enter: the step is done"))
	}
	if at.prompt.Step.Ask == model.AskTank && typed != "" {
		name, err := tankTyped(l.Room(), typed)
		if err != nil {
			return s.refused(err)
		}
		typed = name
	}
	reply, err := l.Answer(at.prompt, typed, "", s.desk.Now)
	if err != nil {
		return s.notTaken(at, typed, err)
	}
	if len(reply.Facts) > 0 && !s.write(reply.Facts...) {
		return beep(2)
	}
	r.again, r.wait = false, nil
	if reply.Wait != nil {
		if reply.Wait.Difference == nil {
			r.wait = reply.Wait
		} else { // the ledger keeps the reading and tells of the hold
			r.mover = moverField(at, false)
		}
		s.note = note{}
		return beep(2)
	}
	r.mover = screen.Field{}
	s.sayVerdict(at)
	return nil
}

func (s *Session) refused(err error) tea.Cmd {
	s.running.refused = true
	s.setNote(err.Error(), screen.Refused)
	return beep(1)
}

// notTaken refuses an answer; another tank's name stops the step.
func (s *Session) notTaken(at now, typed string, err error) tea.Cmd {
	if at.prompt.Step.Ask != model.AskTank || typed == "" {
		return s.refused(err)
	}
	s.running.mover = nameField()
	s.running.ask = s.stopQuestion(at, typed, err)
	return beep(2)
}

// sayVerdict adds to the note how far the two waters lie apart.
func (s *Session) sayVerdict(at now) {
	if at.prompt.Step.Records != model.RecordToCelsius {
		return
	}
	l := s.desk.Ledger
	from, _ := l.Tank(at.prompt.Leg.From)
	to, _ := l.Tank(at.prompt.Leg.To)
	a, okA := from.LastCelsius()
	b, okB := to.LastCelsius()
	if !okA || !okB {
		return
	}
	d := l.Rules().Compare(&a.Value, &b.Value)
	s.note.text += fmt.Sprintf("; %s °C apart: %s", text.Decimal(d.Celsius, 1), d.Verdict)
}
