package session

import (
	"fmt"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/tui/screen"
	"drainboard/tui/text"
)

// mostTanks is how many other tanks a question offers.
const mostTanks = 3

// heldQuestion offers the ways out of a step that waits.
func (s *Session) heldQuestion(at now, wait *model.Wait) question {
	l, p := s.desk.Ledger, at.prompt
	again := "look again"
	if wait.Difference != nil {
		again = "read again in " + p.Leg.To
	}
	choices := []choice{{text: again, act: readAgain}}
	if wait.Difference != nil {
		choices = append(choices, wayChoices(l.WaysOut(p.Leg, wait.From, wait.To, s.desk.Now))...)
	}
	if p.Move > 0 && !s.made(at) {
		choices = append(choices, choice{text: "leave this move out, with a reason", act: leaveOut})
	}
	choices = append(choices, choice{text: "go ahead, with a reason", act: goAhead})
	q := ask(held, wait.Text, true, l.Next(), choices...)
	q.big = "HOLD"
	if wait.Difference != nil {
		q.big = "HOLD: " + text.Decimal(wait.Difference.Celsius, 1) + " APART"
	}
	return q
}

// wayChoices turns ways out into choices; one that brings the water nearer leads
// to reading it again.
func wayChoices(ways []model.WayOut) []choice {
	var choices []choice
	tanks := 0
	for _, w := range ways {
		c := choice{text: w.Text, act: readAgain}
		if w.Into != "" {
			c.act, c.arg = goInto, w.Into
			if tanks++; tanks > mostTanks {
				continue
			}
		}
		choices = append(choices, c)
	}
	return choices
}

// blockedQuestion says why the destination cannot take larvae, and what can be
// done.
func (s *Session) blockedQuestion(at now) question {
	l, p := s.desk.Ledger, at.prompt
	t, _ := l.Tank(p.Leg.To)
	head := fmt.Sprintf("HOLD: %s is %s; larvae go into a ready tank", p.Leg.To, t.State)
	if t.State == model.Holding {
		head = fmt.Sprintf("HOLD: %s holds larvae of %s; larvae go into a ready tank", p.Leg.To, t.Larvae.Batch)
	}
	var choices []choice
	if slices.ContainsFunc(at.queue, func(w model.WashPrompt) bool { return w.Tank.Tank.Name == t.Tank.Name }) {
		choices = append(choices, choice{text: "wash and fill " + p.Leg.To + " first: to the washer's lane", act: toWasher, arg: t.Tank.Name})
	}
	choices = append(choices, wayChoices(l.InsteadOf(p.Leg, s.desk.Now))...)
	choices = append(choices, choice{text: "leave this move out, with a reason", act: leaveOut})
	q := ask(blocked, head, true, l.Next(), choices...)
	q.big = "HOLD: " + p.Leg.To + " " + string(t.State)
	return q
}

// stopQuestion stops at a wrong tank. Where larvae can go into the tank typed,
// that is offered.
func (s *Session) stopQuestion(at now, typed string, err error) question {
	l, p := s.desk.Ledger, at.prompt
	choices := []choice{{text: "go to " + asked(p) + " and type its name", act: goOn}}
	if p.Step.Name == model.NameTo && !s.made(at) {
		for _, w := range l.InsteadOf(p.Leg, s.desk.Now) {
			if strings.EqualFold(w.Into, typed) {
				choices = append(choices, choice{text: w.Text, act: goInto, arg: w.Into})
			}
		}
	}
	if !s.made(at) {
		choices = append(choices, choice{text: "leave this move out, with a reason", act: leaveOut})
	}
	q := ask(stopped, err.Error(), true, l.Next(), choices...)
	q.big = "STOP: " + typed + ", NOT " + asked(p)
	return q
}

// menuQuestion offers the ways back from where the session stands.
func (s *Session) menuQuestion(at now) question {
	l := s.desk.Ledger
	choices := []choice{{text: "go on", act: goOn}}
	if last, ok := lastEntry(l); ok && last.N > at.session.N {
		choices = append(choices, choice{text: "take back the last entry: " + entryWords(last), act: takeBack})
	}
	if pause, answered := at.session.PausePoint(l.Room().Procedure, at.prompt); at.open && pause != "" && answered {
		choices = append(choices, choice{text: "back to the pause point " + pause, act: toPause, arg: pause})
	}
	if at.open && at.prompt.Move > 0 && !s.made(at) {
		choices = append(choices, choice{text: "leave this move out, with a reason", act: leaveOut})
	}
	board := "to the board; the session stays open"
	if !s.running.mover.Empty() {
		board += ", " + s.running.mover.Text() + " is not entered"
	}
	choices = append(choices, choice{text: board, act: toBoard},
		choice{text: "close the session as incomplete, with a reason", act: closeIncomplete})
	return ask(menu, "BACK: what do you want to do?", false, l.Next(), choices...)
}

// lastEntry is the last entry that counts.
func lastEntry(l *model.Ledger) (model.Entry, bool) {
	undo, ok := l.Undo()
	if !ok {
		return model.Entry{}, false
	}
	return l.Entries()[undo.Entry-1], true
}

// endQuestion offers to close a session of which no step is left.
func (s *Session) endQuestion(at now) question {
	l := s.desk.Ledger
	var choices []choice
	pending := pendingWash(l, at.session)
	if len(pending) > 0 {
		choices = append(choices, choice{text: "wash and fill " + strings.Join(pending, ", ") + ": to the washer's lane", act: toWasher})
	}
	open := leftOpen(l, at.session)
	switch {
	case len(open) > 0:
	case len(pending) > 0:
		choices = append(choices, choice{text: "close the session; washing later", act: closeComplete, arg: strings.Join(pending, ", ") + " to be washed and filled later"})
	default:
		choices = append(choices, choice{text: "close the session: complete", act: closeComplete})
	}
	choices = append(choices, choice{text: "close the session as incomplete, with a reason", act: closeIncomplete})
	head := "No step is left."
	if len(open) > 0 {
		head = "Open: " + strings.Join(open, "; ") + ". It can close as incomplete only."
	}
	return ask(ending, head, len(open) > 0, l.Next(), choices...)
}

// pendingWash lists the tanks the session emptied that are not ready yet.
func pendingWash(l *model.Ledger, session *model.SessionNow) []string {
	var names []string
	for i := range session.Legs {
		t, ok := l.Tank(session.Leg(i + 1).From)
		if ok && session.Moved[i] != 0 && (t.State == model.Dirty || t.State == model.WashedDown) {
			names = append(names, text.Clean(t.Tank.Name))
		}
	}
	return names
}

// leftOpen lists what lets a session close as incomplete only: critical steps that
// are put off, and moves neither made nor left out.
func leftOpen(l *model.Ledger, session *model.SessionNow) []string {
	var words []string
	for i, n := range session.Moved {
		if _, out := session.LeftOut(i + 1); n == 0 && !out {
			leg := session.Leg(i + 1)
			words = append(words, leg.From+" into "+leg.To+" is not moved")
		}
	}
	procedure := l.Room().Procedure
	for _, r := range session.Deferred(procedure) {
		if step, ok := procedure.Step(r.Step.Name); ok && step.Critical {
			words = append(words, stepWords(r.Step))
		}
	}
	return words
}

// pressQuestion takes a key of a numbered question.
func (s *Session) pressQuestion(key tea.KeyMsg) tea.Cmd {
	r := &s.running
	field, out := r.anew(r.ask.field, key).Update(key)
	switch out {
	case screen.Entered:
		c, err := r.ask.picked()
		if err != nil {
			return s.refused(err)
		}
		return s.take(c)
	case screen.Rejected:
		return beep(1)
	case screen.Ignored, screen.Edited, screen.TakeBack:
	}
	r.ask.field = field
	return nil
}

// take does what was chosen.
func (s *Session) take(c choice) tea.Cmd {
	at, r := s.now(), &s.running
	switch c.act {
	case goOn:
		r.ask = question{}
	case readAgain:
		r.ask, r.wait, r.again = question{}, nil, true
		r.mover = moverField(at, s.plainGuard(at))
	case toWasher:
		r.washing, r.job = true, c.arg
	case goInto:
		s.goInto(at, c.arg)
	case toPause:
		s.write(&model.StepDone{Session: at.session.N, Move: at.prompt.Move, Name: c.arg, Why: "asked for"})
	case takeBack:
		s.undo()
	case toBoard:
		r.ask = question{}
		return screen.Send(screen.Back{})
	case keepFigure:
		r.ask = question{}
		return s.answerWasher(c.arg, true)
	case closeComplete:
		s.close(true, c.arg)
	case leaveOut:
		r.reason = askReason(leaveOut, "", leaveOutHead(at.prompt))
	case goAhead:
		r.reason = askReason(goAhead, s.heldAnswer(at), "GO AHEAD: why?")
		if at.prompt.Step.Records == model.RecordToCelsius {
			r.reason.list = warmReasons()
		}
	case closeIncomplete:
		r.reason = askReason(closeIncomplete, "", "CLOSE AS INCOMPLETE: why?")
	case putOff:
	}
	return nil
}

// heldAnswer is the answer that waits: what was typed, or after a restart the
// reading that holds the move.
func (s *Session) heldAnswer(at now) string {
	if wait := s.desk.Ledger.Held(at.prompt, s.desk.Now); wait != nil {
		return plain(wait.To)
	}
	return s.running.mover.Text()
}

// goInto gives the move another destination and goes back to where its water is
// read.
func (s *Session) goInto(at now, tank string) {
	n, move := at.session.N, at.prompt.Move
	facts := []model.Fact{&model.StepDone{Session: n, Move: move, Name: model.StepInto, Done: true, Why: tank}}
	if pause := readingPause(s.desk.Ledger.Room().Procedure); pause != "" {
		facts = append(facts, &model.StepDone{Session: n, Move: move, Name: pause, Why: "into " + tank})
	}
	s.write(facts...)
}

// readingPause is the pause point of the section in which the destination's water
// is read, or of the first section.
func readingPause(p model.Procedure) string {
	sections := p.Sections()
	for _, section := range sections {
		if slices.ContainsFunc(section, func(step model.Step) bool { return step.Records == model.RecordToCelsius }) {
			return section[0].Pause
		}
	}
	if len(sections) == 0 {
		return ""
	}
	return sections[0][0].Pause
}

// undo takes the last entry back by a correction.
func (s *Session) undo() {
	last, _ := lastEntry(s.desk.Ledger)
	if _, err := s.desk.Undo(); err != nil {
		s.setNote(refusal(err), screen.Refused)
		return
	}
	s.running.ask = question{}
	s.setNote("taken back: "+entryWords(last), screen.Saved)
}

// close ends the session.
func (s *Session) close(complete bool, why string) {
	n := s.desk.Ledger.Session().N
	if s.write(&model.Closed{Session: n, Complete: complete, Why: why}) {
		s.closed, s.running = n, running{}
	}
}

// pressReason takes a key of a reason.
func (s *Session) pressReason(key tea.KeyMsg) tea.Cmd {
	r := &s.running
	if key.Type == tea.KeyEsc || key.String() == "-" && r.reason.field.Empty() {
		if !r.reason.field.Empty() {
			s.setNote("nothing was written; the reason was not taken", screen.Info)
		}
		r.reason = reason{}
		return nil
	}
	field, out := r.reason.field.Update(key)
	switch out {
	case screen.Entered:
		return s.takeReason(reasonTyped(r.reason.list, r.reason.field.Text()))
	case screen.Rejected:
		return beep(1)
	case screen.Ignored, screen.Edited, screen.TakeBack:
	}
	r.reason.field = field
	return nil
}

// takeReason writes what the reason was asked for.
func (s *Session) takeReason(why string) tea.Cmd {
	if why == "" {
		return s.refused(fmt.Errorf("give a reason: a number of the list, or your own words"))
	}
	at, r, l := s.now(), &s.running, s.desk.Ledger
	switch r.reason.act {
	case leaveOut:
		s.write(&model.StepDone{Session: at.session.N, Move: at.prompt.Move, Name: model.StepLeftOut, Done: true, Why: why})
	case putOff:
		fact, err := l.Defer(at.prompt, why)
		if err != nil {
			return s.refused(err)
		}
		s.write(fact)
	case closeIncomplete:
		s.close(false, why)
	case goAhead:
		reply, err := l.Answer(at.prompt, r.reason.arg, why, s.desk.Now)
		if err != nil {
			return s.refused(err)
		}
		s.write(reply.Facts...)
	}
	if s.note.mood == screen.Refused {
		return beep(2)
	}
	r.reason = reason{}
	return nil
}
