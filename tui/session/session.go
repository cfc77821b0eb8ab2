package session

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/tui/desk"
	"drainboard/tui/keys"
	"drainboard/tui/screen"
)

// Session is the screen of a change session.
type Session struct {
	desk    *desk.Desk
	before  before
	running running
	note    note
	closed  int       // n of the session closed on this screen, 0 for none
	seen    time.Time // the clock when the last message came
}

// New returns the session screen of a desk: the plan, or the open session where
// one is open.
func New(d *desk.Desk) *Session {
	return &Session{desk: d, seen: d.Now}
}

// phase is where a session stands.
type phase int

const (
	planning phase = iota
	open
	done
)

func (s *Session) phase() phase {
	switch {
	case s.desk.Ledger.Session() != nil:
		return open
	case s.closed > 0:
		return done
	}
	return planning
}

// Title is the name of the screen.
func (s *Session) Title() string { return "Session" }

// Init goes on with an open session: after a long absence, or with another
// person, from the last pause point.
func (s *Session) Init() tea.Cmd {
	s.seen = s.desk.Now
	if session := s.desk.Ledger.Session(); session != nil {
		s.comeBack(session.Away(s.desk.Now))
	}
	s.sync()
	return nil
}

// Update takes a message.
func (s *Session) Update(msg tea.Msg) (screen.Screen, tea.Cmd) {
	s.wake()
	key, ok := msg.(tea.KeyMsg)
	if !ok {
		return s, nil
	}
	return s, s.press(key)
}

// wake looks whether time was lost since the last message: a closed lid stops
// the program without ending it.
func (s *Session) wake() {
	gap := s.desk.Now.Sub(s.seen)
	s.seen = s.desk.Now
	if s.phase() == open && gap >= shortAway {
		s.comeBack(gap)
	}
	s.sync()
}

// comeBack goes on with the open session after an absence.
func (s *Session) comeBack(away time.Duration) {
	l := s.desk.Ledger
	r := resume(l.Session(), l.Room().Procedure, s.desk.By, away)
	s.running.away = r.Note
	if r.Back == nil || s.desk.ReadOnly != "" {
		return
	}
	if s.write(r.Back) {
		s.running = running{away: r.Note + ": back to the pause point " + r.Back.Name}
		s.note = note{}
	}
}

// press takes a key.
func (s *Session) press(key tea.KeyMsg) tea.Cmd {
	if s.note.mood != screen.Refused || key.Type == tea.KeyEnter {
		s.note = note{}
	}
	switch s.phase() {
	case open:
		return s.pressRunning(key)
	case done:
		return s.pressAfter(key)
	}
	return s.pressBefore(key)
}

// write enters facts, and says so where they cannot be saved. What was typed is
// kept then.
func (s *Session) write(facts ...model.Fact) bool {
	saved, err := s.desk.Enter(facts...)
	if err != nil {
		s.setNote(refusal(err), screen.Refused)
		return false
	}
	s.running.away = ""
	s.setNote(savedWords(s.desk.Ledger, saved), screen.Saved)
	return true
}

// Capturing says that a name or a reason is being typed.
func (s *Session) Capturing() bool {
	switch s.phase() {
	case open:
		return s.running.typesText()
	case planning:
		return s.before.typing != nothing
	}
	return false
}

// Keys is what the keys do now.
func (s *Session) Keys() keys.Table {
	switch s.phase() {
	case open:
		return s.runningKeys()
	case done:
		return afterKeys()
	}
	return s.beforeKeys()
}
