package session

import (
	"fmt"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/tui/keys"
	"drainboard/tui/screen"
)

// The actions of an open session.
const (
	enter    keys.Action = "enter"
	lane     keys.Action = "lane"
	postpone keys.Action = "put-off"
	back     keys.Action = "level"
	leave    keys.Action = "leave"
)

// place is what a typed answer belongs to; a new place begins with an empty field.
type place struct {
	session, move, stage int
	step, tank           string
	again                bool
}

// running is the screen while a session is open: only what is being typed.
type running struct {
	washing bool   // the washer's lane has the keys
	job     string // the tank the washer turned to; empty for the first in the queue

	mover, washer           screen.Field
	moverPlace, washerPlace place

	refused bool // the answer was refused: the next letter begins a new one

	wait   *model.Wait // why the answer typed waits; a hold of temperatures is told by the ledger
	again  bool        // the destination is read again although it is held
	ask    question
	reason reason
	away   string // how long the crew was away
}

// typesText says that letters are text now.
func (r *running) typesText() bool {
	switch {
	case r.reason.active:
		return true
	case r.asking(), r.washing:
		return false
	}
	return r.moverPlace.tank != ""
}

// asking says that a numbered question has the keys. What the ledger asks of the
// mover leaves the washer's lane alone.
func (r *running) asking() bool {
	return r.ask.kind != none && !(r.washing && r.ask.kind.automatic())
}

// now is what the ledger asks for at this moment.
type now struct {
	session *model.SessionNow
	prompt  model.Prompt
	open    bool // a step of the mover is left
	queue   []model.WashPrompt
}

func (s *Session) now() now {
	l := s.desk.Ledger
	session := l.Session()
	if session == nil {
		return now{}
	}
	p, ok := session.MoverPrompt(l.Room().Procedure)
	return now{session, p, ok, l.WashQueue()}
}

// sync brings what is being typed in line with the ledger, which others change
// too: an undo, the other lane, another screen.
func (s *Session) sync() {
	at := s.now()
	if at.session == nil {
		return
	}
	r := &s.running
	if p := moverPlaceOf(at); p != r.moverPlace {
		r.moverPlace, r.mover = p, moverField(at, s.plainGuard(at))
		r.wait, r.again, r.refused, r.ask, r.reason = nil, false, false, question{}, reason{}
	}
	if p := s.washerPlaceOf(at); p != r.washerPlace {
		r.washerPlace, r.washer, r.refused = p, s.washerField(at), false
		if r.ask.kind == doubted {
			r.ask = question{}
		}
	}
	s.syncQuestion(at)
}

func moverPlaceOf(at now) place {
	p := place{session: at.session.N, move: at.prompt.Move, stage: at.prompt.Stage, again: at.prompt.Again}
	if !at.open {
		return p
	}
	p.step = at.prompt.Step.Name
	if at.prompt.Step.Ask == model.AskTank {
		p.tank = asked(at.prompt)
	}
	return p
}

// asked is the tank whose name a step wants.
func asked(p model.Prompt) string {
	if p.Step.Name == model.NameTo {
		return p.Leg.To
	}
	return p.Leg.From
}

func moverField(at now, guard bool) screen.Field {
	if !at.open {
		return screen.Field{}
	}
	switch at.prompt.Step.Ask {
	case model.AskTank:
		return nameField()
	case model.AskChoice:
		return screen.NewField(screen.Whole, 2)
	case model.AskEnter:
		if !guard {
			return screen.Field{}
		}
		return screen.NewField(screen.Whole, 1)
	}
	return screen.NewField(screen.Number, 9)
}

// mostPlain is how many plain actions in a row are taken by Enter alone; the next
// one wants a digit, so that no one runs ahead by pressing Enter.
const mostPlain = 2

// plainGuard says that the step at hand is a plain action after too many others.
func (s *Session) plainGuard(at now) bool {
	if !at.open || at.prompt.Step.Ask != model.AskEnter {
		return false
	}
	procedure, plain := s.desk.Ledger.Room().Procedure, 0
	for _, r := range slices.Backward(at.session.Steps) {
		step, ok := procedure.Step(r.Step.Name)
		if !ok || !r.Step.Done || step.Ask != model.AskEnter {
			break
		}
		plain++
	}
	return plain >= mostPlain
}

// syncQuestion brings up what the ledger alone asks: a held or blocked move, the
// end. A question stays as it was shown until an entry was made.
func (s *Session) syncQuestion(at now) {
	r, next := &s.running, s.desk.Ledger.Next()
	if r.ask.kind != none && !r.ask.kind.automatic() {
		return
	}
	q := s.askedByLedger(at)
	if q.kind == r.ask.kind && r.ask.at == next {
		return
	}
	r.ask = q
}

func (s *Session) askedByLedger(at now) question {
	switch {
	case !at.open:
		return s.endQuestion(at)
	case s.destinationClosed(at):
		return s.blockedQuestion(at)
	case s.running.again:
		return question{}
	}
	if wait := s.waiting(at); wait != nil {
		return s.heldQuestion(at, wait)
	}
	return question{}
}

// waiting is why the mover's step waits, nil where it does not.
func (s *Session) waiting(at now) *model.Wait {
	if s.running.wait != nil {
		return s.running.wait
	}
	return s.desk.Ledger.Held(at.prompt, s.desk.Now)
}

// destinationClosed says that the move at hand has yet to be made and its
// destination cannot take larvae: no one begins to siphon then.
func (s *Session) destinationClosed(at now) bool {
	p := at.prompt
	if p.Move == 0 || at.session.Moved[p.Move-1] != 0 {
		return false
	}
	t, ok := s.desk.Ledger.Tank(p.Leg.To)
	return ok && t.Known && t.State != model.Ready
}

func (s *Session) runningKeys() keys.Table {
	r := &s.running
	t := keys.Table{Title: "Session, open"}
	switch {
	case r.reason.active:
		t.Bindings = []keys.Binding{{Action: enter, Keys: []string{"enter"}, Short: "take the reason", Long: "Take the reason: its number in the list, or your own words."}}
		return t
	case r.asking():
		t.Bindings = []keys.Binding{{Action: enter, Keys: []string{"enter"}, Short: "take the number", Long: "Take the numbered choice."}}
	default:
		t.Bindings = []keys.Binding{{Action: enter, Keys: []string{"enter"}, Short: "answer", Long: "Give the answer; it is saved before the next step shows. On a number pad a tank's number does for its name, or a point and its place in the room's list, as in .3."}}
	}
	other, off := strings.ToLower(s.washerName()), "put off"
	if r.washing {
		other, off = "mover", "next tank"
	}
	t.Bindings = append(t.Bindings,
		keys.Binding{Action: lane, Keys: []string{"+", "tab"}, Short: other, Long: "Go to the other lane: the mover's or the washer's."},
		keys.Binding{Action: postpone, Keys: []string{"*"}, Short: off, Long: "Put the step off with a reason; it is asked again at the next pause point. At a tank's name: leave the move out. In the washer's lane: turn to the next tank."},
		keys.Binding{Action: back, Keys: []string{"-"}, Short: "back", Long: "Back one level: take back, to the pause point, to the board, close early."},
	)
	if !r.typesText() {
		t.Bindings = append(t.Bindings, keys.Binding{Action: leave, Keys: []string{"q"}, Long: "Ask how to leave; the session stays open unless you close it."})
	}
	return t
}

// pressRunning takes a key while a session is open.
func (s *Session) pressRunning(key tea.KeyMsg) tea.Cmd {
	s.sync()
	defer s.sync()
	r := &s.running
	if r.reason.active {
		return s.pressReason(key)
	}
	if action, ok := s.command(key); ok {
		return s.pressCommand(action)
	}
	if r.asking() {
		return s.pressQuestion(key)
	}
	if r.washing {
		return s.pressWasher(key)
	}
	return s.pressMover(key)
}

// command finds the command of a key. In a name the signs of the number pad are
// letters once something was typed, where a tank of the room has them in its name.
func (s *Session) command(key tea.KeyMsg) (keys.Action, bool) {
	r := &s.running
	if key.Type == tea.KeyEsc {
		return back, true
	}
	action, ok := s.Keys().Match(key)
	if !ok || action == enter {
		return "", false
	}
	sign := key.String()
	if r.typesText() && key.Type == tea.KeyRunes && !r.mover.Empty() && s.inNames(sign) {
		return "", false
	}
	return action, true
}

func (s *Session) inNames(sign string) bool {
	return slices.ContainsFunc(s.desk.Ledger.Room().Tanks, func(t model.Tank) bool { return strings.Contains(t.Name, sign) })
}

func (s *Session) pressCommand(action keys.Action) tea.Cmd {
	r := &s.running
	switch action {
	case lane:
		r.washing, r.refused = !r.washing, false
		if !r.ask.kind.automatic() {
			r.ask = question{}
		}
	case postpone:
		return s.putOffStep()
	case back, leave:
		s.goBack()
	}
	return nil
}

// goBack closes what the crew asked for, or brings up the ways back.
func (s *Session) goBack() {
	r := &s.running
	switch r.ask.kind {
	case menu, stopped, doubted:
		r.ask = question{}
	default:
		r.ask = s.menuQuestion(s.now())
	}
}

// putOffStep asks for the reason of a deferral.
func (s *Session) putOffStep() tea.Cmd {
	at := s.now()
	r := &s.running
	switch {
	case r.washing:
		s.nextJob(at)
	case !at.open:
		s.setNote("no step is left to put off", screen.Refused)
		return beep(1)
	case at.prompt.Step.Ask == model.AskTank && s.made(at):
		s.setNote("the move is made; type the tank's name", screen.Refused)
		return beep(1)
	case at.prompt.Step.Ask == model.AskTank:
		r.reason = askReason(leaveOut, "", leaveOutHead(at.prompt))
	default:
		r.reason = askReason(putOff, "", fmt.Sprintf("PUT OFF %s: why? It is asked again at the next pause point.", stepName(at.prompt.Step.Name)))
	}
	return nil
}

func leaveOutHead(p model.Prompt) string {
	return fmt.Sprintf("LEAVE OUT the move %s into %s: why?", p.Leg.From, p.Leg.To)
}

// made says that the move at hand was entered.
func (s *Session) made(at now) bool {
	return at.prompt.Move > 0 && at.session.Moved[at.prompt.Move-1] != 0
}
