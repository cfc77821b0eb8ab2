package tank

import (
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/tui/desk"
	"drainboard/tui/factform"
	"drainboard/tui/keys"
	"drainboard/tui/screen"
	"drainboard/tui/text"
)

// Tank is the screen of one tank.
type Tank struct {
	desk  *desk.Desk
	name  string
	story story
	slip  *factform.Slip // the form that is open, nil for none
}

// New returns the screen of a tank.
func New(d *desk.Desk, arg string) screen.Screen {
	if t, ok := d.Ledger.Tank(arg); ok {
		arg = t.Tank.Name
	}
	return &Tank{desk: d, name: arg}
}

// now is the tank as it stands, false where the room has none of that name.
func (s *Tank) now() (model.TankNow, bool) { return s.desk.Ledger.Tank(s.name) }

// The actions of the screen beside those that open a form.
const (
	microscope keys.Action = "scope"
	batch      keys.Action = "batch"
	seen       keys.Action = "seen"
	scroll     keys.Action = "scroll"
)

// Keys is what the keys do now.
func (s *Tank) Keys() keys.Table {
	if s.slip != nil {
		return s.slip.Keys()
	}
	t, ok := s.now()
	table := keys.Table{Title: "Tank"}
	for i, k := range kinds() {
		table.Bindings = append(table.Bindings, k.binding())
		if i == 0 {
			table.Bindings = append(table.Bindings, keys.Binding{
				Action: microscope, Keys: []string{"m"}, Short: "microscope", Long: "Key shell lengths and the look.",
			})
		}
	}
	table.Bindings = append(table.Bindings, []keys.Binding{
		{Action: batch, Keys: []string{"g"}, Long: "Growth, survival and ready date of the batch."},
		{Action: seen, Keys: []string{"a"}, Long: "Acknowledge the first alarm of this tank that no one has seen."},
		{Action: scroll, Keys: []string{"up", "down", "pgup", "pgdown", "home", "end"}, Label: "arrows", Long: "Scroll through the story."},
	}...)
	return s.enabled(table, t, ok)
}

// enabled says of the keys that cannot be had now why not.
func (s *Tank) enabled(table keys.Table, t model.TankNow, ok bool) keys.Table {
	for _, k := range kinds() {
		why := "the room has no such tank"
		if ok {
			why = k.off(t)
		}
		if why != "" {
			table = table.Off(k.action, why)
		}
	}
	if t.Larvae == nil {
		table = table.Off(microscope, "it holds no larvae").Off(batch, "it holds no larvae")
	}
	if _, any := s.unseen(); !any {
		table = table.Off(seen, "no alarm of this tank is new")
	}
	return table
}

// Title is the name of the screen.
func (s *Tank) Title() string { return "Tank" }

// Init has nothing to prepare.
func (s *Tank) Init() tea.Cmd { return nil }

// Capturing is true while a form is open.
func (s *Tank) Capturing() bool { return s.slip != nil }

// Update takes a key.
func (s *Tank) Update(msg tea.Msg) (screen.Screen, tea.Cmd) {
	key, ok := msg.(tea.KeyMsg)
	switch {
	case !ok:
		return s, nil
	case s.slip != nil:
		return s, s.onSlip(key)
	case key.Type == tea.KeyEsc:
		return s, screen.Send(screen.Back{})
	}
	table := s.Keys()
	if why, off := table.Refused(key); off {
		return s, screen.Send(screen.Toast{Text: "not now: " + why, Mood: screen.Refused})
	}
	action, _ := table.Match(key)
	switch action {
	case microscope:
		return s, screen.Send(screen.Open{Name: "scope", Arg: s.name})
	case batch:
		t, _ := s.now()
		return s, screen.Send(screen.Open{Name: "batch", Arg: t.Larvae.Batch})
	case seen:
		return s, s.acknowledge()
	case scroll:
		s.story.scroll(key)
		return s, nil
	}
	s.open(action)
	return s, nil
}

// open opens the form of an action.
func (s *Tank) open(action keys.Action) {
	all := kinds()
	i := slices.IndexFunc(all, func(k kind) bool { return k.action == action })
	if i < 0 {
		return
	}
	t, _ := s.now()
	slip := all[i].slip(s, t)
	s.slip = &slip
}

// onSlip takes a key for the open form.
func (s *Tank) onSlip(key tea.KeyMsg) tea.Cmd {
	slip, step := s.slip.Update(key)
	s.slip = &slip
	switch step {
	case factform.Left:
		s.slip = nil
	case factform.Rejected:
		return screen.Send(screen.Beep{Times: 1})
	case factform.Done:
		return s.enter()
	}
	return nil
}

// enter makes the entry of the open form. What is refused or cannot be saved
// stays as it was typed, with the reason.
func (s *Tank) enter() tea.Cmd {
	fact, err := s.slip.Form.Fact()
	if err == nil {
		saved, enterErr := s.desk.Enter(fact)
		if err = enterErr; err == nil {
			s.slip = nil
			s.story.top = 0
			return said(fact, saved)
		}
	}
	slip := s.slip.Refused(err)
	s.slip = &slip
	return screen.Send(screen.Beep{Times: 1})
}

// said says what was saved, and what is odd of it.
func said(fact model.Fact, saved desk.Saved) tea.Cmd {
	words := model.Sentence(fact) + " saved"
	if len(saved.Odd) == 0 {
		return screen.Send(screen.Toast{Text: text.Clean(words), Mood: screen.Saved})
	}
	words += "; odd: " + strings.Join(saved.Odd, ", ")
	return tea.Batch(screen.Send(screen.Toast{Text: text.Clean(words), Mood: screen.Saved}), screen.Send(screen.Beep{Times: 2}))
}

// alarms are what is wrong with the tank.
func (s *Tank) alarms() []model.Alarm {
	return slices.DeleteFunc(s.desk.Ledger.Alarms(s.desk.Now), func(a model.Alarm) bool { return a.Tank != s.name })
}

func (s *Tank) unseen() (model.Alarm, bool) {
	all := s.alarms()
	i := slices.IndexFunc(all, func(a model.Alarm) bool { return !a.Seen })
	if i < 0 {
		return model.Alarm{}, false
	}
	return all[i], true
}

// acknowledge notes that the first unseen alarm of the tank was seen.
func (s *Tank) acknowledge() tea.Cmd {
	a, ok := s.unseen()
	if !ok {
		return nil
	}
	if _, err := s.desk.Enter(a.SeenFact()); err != nil {
		return screen.Send(screen.Toast{Text: factform.NotSaved(err), Mood: screen.Refused})
	}
	return screen.Send(screen.Toast{Text: "seen: " + a.Tank + ", " + string(a.Kind) + ". " + a.Advice, Mood: screen.Saved})
}
