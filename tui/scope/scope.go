package scope

import (
	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/tui/desk"
	"drainboard/tui/factform"
	"drainboard/tui/keys"
	"drainboard/tui/screen"
)

// Scope is the screen at the microscope, for one tank at a time.
type Scope struct {
	desk  *desk.Desk
	tank  string
	phase phase
	say   message

	field screen.Field // the length being typed
	held  bool         // it could not be saved: nothing is added to it
	unit  unit
	want  int       // readings wanted
	ask   *question // lies over the phase until it is answered

	figures figures
	page    screen.Page // the figures as they scroll
	height  int         // of the page in the last frame

	look look
	next next
}

// phase is how far the work at one tank has come.
type phase int

const (
	reading phase = iota // lengths
	summary              // what they add up to
	looking              // lobes, gut, swimming, dead, remark
	leaving              // which tank next
)

// wanted is how many lengths are read where nobody says otherwise: common
// practice are 20 to 30.
const wanted = 25

// message is the line that says what the last key did.
type message struct {
	text string
	mood screen.Mood
}

// question is asked before something that is not undone by a key.
type question struct {
	ask string
	yes func() tea.Cmd
}

// New returns the screen for a tank. Without one, or with one that holds no
// larvae, it begins with the choice of a tank.
func New(d *desk.Desk, arg string) screen.Screen {
	s := &Scope{desk: d, tank: arg, want: wanted, field: newLength(), unit: lastUnit(d), look: newLook(), next: newNext()}
	if t, ok := s.now(); !ok || t.Larvae == nil {
		s.phase = leaving
		s.say = message{"choose a tank that holds larvae", screen.Info}
	}
	return s
}

// mostDigits is how long a typed length may be.
const mostDigits = 8

func newLength() screen.Field { return screen.NewField(screen.Number, mostDigits) }

// now is the tank as it stands.
func (s *Scope) now() (model.TankNow, bool) { return s.desk.Ledger.Tank(s.tank) }

// sitting is the sample that is being read: the last one of the tank's larvae,
// as long as no more than the gap of a sitting has passed. Nil where the next
// reading begins a new one.
func (s *Scope) sitting() *model.Sample {
	sample := s.last()
	if sample == nil || s.desk.Now.Sub(sample.Last) > model.SittingGap {
		return nil
	}
	return sample
}

// last is the last sample read of this tank's larvae in this tank.
func (s *Scope) last() *model.Sample {
	t, _ := s.now()
	if t.Larvae == nil || t.Larvae.Sample == nil || t.Larvae.Sample.Tank != t.Tank.Name {
		return nil
	}
	return t.Larvae.Sample
}

// The actions of the screen.
const (
	take     keys.Action = "take"
	takeBack keys.Action = "take back"
	end      keys.Action = "figures"
	eyepiece keys.Action = "eyepiece"
	more     keys.Action = "more"
	fewer    keys.Action = "fewer"
	scroll   keys.Action = "scroll"
	onward   keys.Action = "look"
	readOn   keys.Action = "read on"
	skip     keys.Action = "skip"
	rows     keys.Action = "fields"
	choose   keys.Action = "choose"
	yes      keys.Action = "yes"
)

// Keys is what the keys do in the phase.
func (s *Scope) Keys() keys.Table {
	switch {
	case s.ask != nil:
		return keys.Table{Title: "Question", Bindings: []keys.Binding{
			{Action: yes, Keys: []string{"enter"}, Short: "yes", Long: "Do it."},
		}}
	case s.phase == summary:
		return summaryKeys()
	case s.phase == looking:
		return lookKeys()
	case s.phase == leaving:
		return nextKeys()
	}
	return s.readingKeys()
}

// Title is the name of the screen.
func (s *Scope) Title() string { return "Microscope" }

// Init has nothing to prepare.
func (s *Scope) Init() tea.Cmd { return nil }

// Capturing is true wherever figures or text are typed: a key struck without
// looking must not run a command of another screen.
func (s *Scope) Capturing() bool { return s.ask != nil || s.phase != summary }

// Update takes a key.
func (s *Scope) Update(msg tea.Msg) (screen.Screen, tea.Cmd) {
	key, ok := msg.(tea.KeyMsg)
	switch {
	case !ok:
		s.followed()
		return s, nil
	case s.ask != nil:
		return s, s.answered(key)
	}
	switch s.phase {
	case summary:
		return s, s.onSummary(key)
	case looking:
		return s, s.onLook(key)
	case leaving:
		return s.onNext(key)
	}
	return s, s.onReading(key)
}

// followed takes in what changed in the ledger beneath the figures.
func (s *Scope) followed() {
	if s.phase == summary && s.figures.made != s.desk.Ledger.Next() {
		s.sumUp()
	}
}

func (s *Scope) answered(key tea.KeyMsg) tea.Cmd {
	action, _ := s.Keys().Match(key)
	q := s.ask
	switch {
	case action == yes:
		s.ask = nil
		return q.yes()
	case key.Type == tea.KeyEsc:
		s.ask = nil
	}
	return nil
}

// refuse says why a key was not taken and rings the bell once.
func (s *Scope) refuse(why string) tea.Cmd {
	s.say = message{why, screen.Refused}
	return screen.Send(screen.Beep{Times: 1})
}

// notSaved says why an entry was not made.
func (s *Scope) notSaved(err error) tea.Cmd { return s.refuse(factform.NotSaved(err)) }
