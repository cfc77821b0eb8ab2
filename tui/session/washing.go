package session

import (
	"fmt"
	"slices"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/tui/screen"
)

// job is what the washer is at: the tank turned to, or the first in the queue;
// rest are the others.
func (s *Session) jobOf(at now) (job model.WashPrompt, rest []model.WashPrompt, ok bool) {
	if len(at.queue) == 0 {
		return model.WashPrompt{}, nil, false
	}
	i := max(0, slices.IndexFunc(at.queue, func(w model.WashPrompt) bool { return w.Tank.Tank.Name == s.running.job }))
	return at.queue[i], slices.Concat(at.queue[:i], at.queue[i+1:]), true
}

// nextJob turns to the tank that was emptied after the one at hand.
func (s *Session) nextJob(at now) {
	job, _, ok := s.jobOf(at)
	if !ok {
		return
	}
	i := slices.IndexFunc(at.queue, func(w model.WashPrompt) bool { return w.Tank.Tank.Name == job.Tank.Tank.Name })
	s.running.job = at.queue[(i+1)%len(at.queue)].Tank.Tank.Name
}

func (s *Session) washerPlaceOf(at now) place {
	job, _, ok := s.jobOf(at)
	if !ok {
		return place{session: at.session.N}
	}
	return place{session: at.session.N, step: job.Step.Name, tank: job.Tank.Tank.Name}
}

func (s *Session) washerField(at now) screen.Field {
	job, _, ok := s.jobOf(at)
	if !ok || job.Step.Ask == model.AskEnter {
		return screen.Field{}
	}
	return screen.NewField(screen.Number, 9)
}

// pressWasher takes a key of the washer's answer.
func (s *Session) pressWasher(key tea.KeyMsg) tea.Cmd {
	field, out := s.running.anew(s.running.washer, key).Update(key)
	switch out {
	case screen.Entered:
		return s.answerWasher(s.running.washer.Text(), false)
	case screen.Rejected:
		return beep(1)
	case screen.Ignored, screen.Edited, screen.TakeBack:
	}
	s.running.washer = field
	return nil
}

// answerWasher submits a figure of the washer; one far from the plan is asked
// about first.
func (s *Session) answerWasher(typed string, sure bool) tea.Cmd {
	at := s.now()
	w, _, ok := s.jobOf(at)
	if !ok {
		s.setNote("nothing is to be washed now", screen.Info)
		return nil
	}
	fact, err := s.desk.Ledger.AnswerWash(w, typed)
	if err != nil {
		return s.refused(err)
	}
	if planned, doubt := s.doubt(fact); doubt && !sure {
		s.running.ask = ask(doubted, fmt.Sprintf("%s mL typed, %s mL planned for %s", typed, plain(planned), w.Tank.Tank.Name), true, s.desk.Ledger.Next(),
			choice{text: "type it again", act: goOn}, choice{text: typed + " mL is right", act: keepFigure, arg: typed})
		return beep(1)
	}
	waits := s.destinationClosed(at)
	if !s.write(fact) {
		return beep(2)
	}
	s.running.washer = screen.Field{}
	// The keys go back to a mover who waited for this tank.
	s.running.washing = len(s.now().queue) > 0 && !(waits && !s.destinationClosed(s.now()))
	return nil
}

// doubt says that more than half as much acid again, or less than half, was used
// than planned: as likely a slip of the keys.
func (s *Session) doubt(fact model.Fact) (planned float64, doubt bool) {
	washed, ok := fact.(*model.Washed)
	if !ok || washed.AcidML == nil {
		return 0, false
	}
	mix, err := mixFor(s.desk.Ledger.Room().House.Wash, 1)
	if err != nil {
		return 0, false
	}
	planned = mix.PerTank.AcidML
	return planned, *washed.AcidML > 1.5*planned || *washed.AcidML < planned/2
}
