package model

import (
	"slices"
	"time"
)

// Prompt is the step of a change session to be answered now.
type Prompt struct {
	Move  int // from 1; 0 for a step of the whole session
	Leg   Leg // of the move
	Step  Step
	Stage int  // counts the sections passed so far
	Again bool // it was deferred and is asked again
	Why   string
}

// Steps a session writes beside those of the procedure.
const (
	StepLeftOut = "left-out" // the move is not done in this session; why says the reason
	StepInto    = "into"     // the move goes into another tank; why names it
)

// Leg returns the agreed move (from 1) as it stands now, its destination
// changed where the crew has chosen another.
func (s *SessionNow) Leg(move int) Leg {
	leg := s.Legs[move-1]
	if into, ok := s.Answer(move, StepInto); ok {
		leg.To = into
	}
	return leg
}

// LeftOut reports whether a move was left out of the session, and why.
func (s *SessionNow) LeftOut(move int) (string, bool) { return s.Answer(move, StepLeftOut) }

// MoverPrompt returns the step the mover is at, and false when all are
// answered. Deferred steps come back once at each pause point.
func (s *SessionNow) MoverPrompt(p Procedure) (Prompt, bool) {
	at, open := s.firstOpen(p)
	if again, ok := s.deferredBefore(p, at.Stage); ok {
		return again, true
	}
	return at, open
}

// firstOpen finds the first step that was never answered; at the end it returns
// a prompt that holds only the stage.
func (s *SessionNow) firstOpen(p Procedure) (Prompt, bool) {
	for _, step := range p.In(LaneSession) {
		if _, ok := s.record(0, step.Name); !ok {
			return Prompt{Step: step}, true
		}
	}
	sections := p.Sections()
	for i := range s.Legs {
		if _, out := s.LeftOut(i + 1); out {
			continue
		}
		for k, section := range sections {
			stage := 1 + i*len(sections) + k
			if step, ok := s.openIn(section, i+1); ok {
				return Prompt{Move: i + 1, Leg: s.Leg(i + 1), Step: step, Stage: stage}, true
			}
		}
	}
	return Prompt{Stage: 1 + len(s.Legs)*len(sections)}, false
}

// openIn finds the first step of a section that has no answer since the section
// was last begun.
func (s *SessionNow) openIn(section []Step, move int) (Step, bool) {
	begun := 0
	if r, ok := s.record(move, section[0].Pause); ok && section[0].Pause != "" {
		begun = r.N
	}
	for _, step := range section {
		if r, ok := s.record(move, step.Name); !ok || r.N < begun {
			return step, true
		}
	}
	return Step{}, false
}

func (s *SessionNow) deferredBefore(p Procedure, stage int) (Prompt, bool) {
	for _, r := range s.Deferred(p) {
		step, _ := p.Step(r.Step.Name)
		if r.Stage >= stage || step.Lane == LaneWash {
			continue
		}
		again := Prompt{Move: r.Step.Move, Step: step, Stage: stage, Again: true, Why: r.Step.Why}
		if r.Step.Move > 0 {
			if _, out := s.LeftOut(r.Step.Move); out {
				continue
			}
			again.Leg = s.Leg(r.Step.Move)
		}
		return again, true
	}
	return Prompt{}, false
}

// PausePoint returns the name of the pause point that began the section the
// prompt stands in, and whether an answer was given since.
func (s *SessionNow) PausePoint(p Procedure, at Prompt) (name string, answered bool) {
	sections := p.Sections()
	if at.Move == 0 || len(sections) == 0 {
		return "", false
	}
	section := sections[(at.Stage-1)%len(sections)]
	return section[0].Pause, !at.Again && section[0].Name != at.Step.Name
}

// Away returns how long ago the session's last entry was made.
func (s *SessionNow) Away(now time.Time) time.Duration { return now.Sub(s.Last) }

// Recorded returns the name of the procedure's step that records what, and
// false where no step does.
func (p Procedure) Recorded(what string) (string, bool) {
	i := slices.IndexFunc(p, func(s Step) bool { return s.Records == what })
	if i < 0 {
		return "", false
	}
	return p[i].Name, true
}

// WashPrompt is the work of the washer now: one tank and what it needs next.
type WashPrompt struct {
	Tank TankNow
	Step Step
}

// WashQueue lists the tanks to be made ready, in the order in which they were
// emptied, each with its next step.
func (l *Ledger) WashQueue() []WashPrompt {
	var queue []WashPrompt
	for _, t := range l.fold.tanks {
		what := RecordWashed
		switch t.State {
		case WashedDown:
			what = RecordFilled
		case Dirty:
		default:
			continue
		}
		if name, ok := l.room.Procedure.Recorded(what); ok {
			step, _ := l.room.Procedure.Step(name)
			queue = append(queue, WashPrompt{t, step})
		}
	}
	slices.SortStableFunc(queue, func(a, b WashPrompt) int { return a.Tank.EmptySince().Compare(b.Tank.EmptySince()) })
	return queue
}
