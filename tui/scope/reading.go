package scope

import (
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/model/growth"
	"drainboard/tui/keys"
	"drainboard/tui/screen"
)

func (s *Scope) readingKeys() keys.Table {
	t := keys.Table{Title: "Microscope", Bindings: []keys.Binding{
		{Action: take, Keys: []string{"enter"}, Short: "take", Long: "Take the typed length. In an empty field: go to the figures."},
		{Action: takeBack, Keys: []string{"backspace"}, Short: "take back", Long: "In an empty field: take back the last length of this sitting, one after the other."},
		{Action: end, Keys: []string{"*"}, Short: "figures", Long: "Go to the figures; where nothing was read, to the look."},
		{Action: eyepiece, Keys: []string{"e"}, Short: "eyepiece", Long: "Type micrometres, or divisions of one of the house's eyepieces."},
		{Action: more, Keys: []string{"+"}, Short: "more", Long: "Read one larva more."},
		{Action: fewer, Keys: []string{"-"}, Short: "fewer", Long: "Read one larva fewer."},
	}}
	if len(s.desk.Ledger.Room().House.Growth.Eyepieces) == 0 {
		t = t.Off(eyepiece, "room.toml names no eyepiece under house.growth")
	}
	return t
}

// onReading takes a key while lengths are read.
func (s *Scope) onReading(key tea.KeyMsg) tea.Cmd {
	if column, ok := columnOf(key); ok {
		return s.onColumn(column)
	}
	table := s.readingKeys()
	if why, off := table.Refused(key); off {
		return s.refuse(why)
	}
	action, _ := table.Match(key)
	switch {
	case key.Type == tea.KeyEsc:
		return s.leave()
	case action == end:
		return s.finish()
	case action == eyepiece:
		s.unit = s.unit.after(s.desk.Ledger.Room().House)
		s.say = message{"lengths are typed " + s.unit.words(), screen.Info}
		return nil
	case action == more:
		s.want = min(s.want+1, 999)
		return nil
	case action == fewer:
		s.want = max(s.want-1, 1)
		return nil
	case action == take && s.field.Empty():
		return s.finish()
	case action == take:
		return s.take()
	}
	return s.typed(key)
}

// typed hands a key to the field.
func (s *Scope) typed(key tea.KeyMsg) tea.Cmd {
	adds := key.Type == tea.KeyRunes || key.Type == tea.KeySpace
	if s.held && adds {
		return s.refuse("not saved yet: Enter tries again, Backspace gives it up")
	}
	field, out := s.field.Update(key)
	s.field = field
	switch {
	case out == screen.TakeBack:
		return s.takeBack()
	case out == screen.Rejected && (key.String() == "." || key.String() == ","):
		return s.refuse("a second decimal sign is not taken")
	case out == screen.Rejected:
		return s.refuse("this does not fit into a length")
	case out == screen.Ignored && adds:
		return s.refuse("only digits and one . or , are taken")
	}
	if s.field.Empty() {
		s.held = false
	}
	return nil
}

// take enters the typed length. What cannot be true is refused and cleared, so
// that it can be typed again at once; what could not be saved stays.
func (s *Scope) take() tea.Cmd {
	typed, ok := s.field.Value()
	if !ok {
		s.field = newLength()
		return s.refuse("that is no number; type it again")
	}
	um := s.unit.um(typed)
	if err := growth.CheckLength(um); err != nil {
		s.field, s.held = newLength(), false
		return s.refuse("refused: " + err.Error())
	}
	odd := growth.Odd(s.soFar(), um)
	if _, err := s.desk.Enter(&model.Sizes{Tank: s.tank, UM: []float64{um}, UMPerDivision: s.unit.factor()}); err != nil {
		s.held = true
		return s.notSaved(err)
	}
	s.field, s.held = newLength(), false
	return s.taken(um, odd)
}

// soFar is what the next single reading is held against.
func (s *Scope) soFar() []float64 {
	if sample := s.sitting(); sample != nil && sample.OneByOne {
		return sample.UM
	}
	return nil
}

// taken says that a length was saved; an odd one rings twice.
func (s *Scope) taken(um float64, odd bool) tea.Cmd {
	n := len(s.soFar())
	words := figure(um) + " µm"
	if s.unit.umPer > 0 {
		words = figure(s.unit.typed(um)) + " div = " + words
	}
	switch {
	case odd:
		s.say = message{fmt.Sprintf("%s is unlike the %d before it; taken and marked, Backspace takes it back", words, n-1), screen.Refused}
		return screen.Send(screen.Beep{Times: 2})
	case n >= s.want:
		s.say = message{words + " saved. All are read: Enter shows the figures", screen.Saved}
	default:
		s.say = message{words + " saved", screen.Saved}
	}
	return nil
}

// takeBack makes the last reading of the sitting void. A pasted column goes as a
// whole, after a question.
func (s *Scope) takeBack() tea.Cmd {
	sample := s.sitting()
	if sample == nil {
		return s.refuse("nothing to take back in this sitting")
	}
	n := sample.N[len(sample.N)-1]
	if sample.OneByOne {
		return s.void(n, figure(sample.UM[len(sample.UM)-1])+" µm taken back")
	}
	words := fmt.Sprintf("%d lengths of entry %d", len(sample.UM), n)
	s.ask = &question{"Take back all " + words + "?", func() tea.Cmd { return s.void(n, words+" taken back") }}
	return nil
}

func (s *Scope) void(entry int, words string) tea.Cmd {
	if _, err := s.desk.Enter(&model.Corrected{Entry: entry, Why: "taken back at the microscope", Void: true}); err != nil {
		return s.notSaved(err)
	}
	s.say = message{words, screen.Info}
	return nil
}

// finish goes to the figures, or to the look where nothing was read.
func (s *Scope) finish() tea.Cmd {
	switch {
	case !s.field.Empty():
		return s.refuse("a length is typed: Enter takes it first, Backspace clears it")
	case s.sitting() == nil:
		s.say = message{"no length read; the look alone", screen.Info}
		s.phase = looking
		return nil
	}
	s.sumUp()
	s.phase, s.page.Top, s.say = summary, 0, message{}
	return nil
}

// leave goes back; a typed length is thrown away only after a question.
func (s *Scope) leave() tea.Cmd {
	if s.field.Empty() {
		return screen.Send(screen.Back{})
	}
	typed := s.field.Text()
	s.ask = &question{"Throw away the typed " + typed + "? Every length before it is saved.", func() tea.Cmd {
		s.field, s.held = newLength(), false
		return screen.Send(screen.Back{})
	}}
	return nil
}

// emptied says what became of a tank that holds no larvae any more, empty where
// it does.
func (s *Scope) emptied() string {
	t, ok := s.now()
	if !ok {
		return "there is no tank " + s.tank
	}
	if t.Larvae != nil {
		return ""
	}
	zone := s.desk.Ledger.Room().Zone
	words := t.Tank.Name + " holds no larvae"
	if !t.Since.IsZero() {
		words += " since " + t.Since.In(zone).Format("2 Jan 15:04")
	}
	if into := s.movedInto(); into != "" {
		words += ", they went into " + into
	}
	return words + ". Nothing can be read here"
}

// movedInto is where the larvae last moved out of the tank went.
func (s *Scope) movedInto() string {
	t, _ := s.now()
	events := s.desk.Ledger.Events()
	for i := len(events) - 1; i >= 0 && !events[i].At.Before(t.Since); i-- {
		if m, ok := events[i].Fact.(*model.Moved); ok && strings.EqualFold(m.From, t.Tank.Name) {
			return m.To
		}
	}
	return ""
}
