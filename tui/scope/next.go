package scope

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/tui/keys"
	"drainboard/tui/screen"
	"drainboard/tui/text"
)

// next is the choice of the tank to go on with.
type next struct {
	field  screen.Field
	chosen string // under the pointer; empty for the one longest without a look
}

func newNext() next { return next{field: screen.NewField(screen.Name, 40)} }

func nextKeys() keys.Table {
	return keys.Table{Title: "Next tank", Bindings: []keys.Binding{
		{Action: take, Keys: []string{"enter"}, Short: "go on there", Long: "Go on with the tank typed by name or number, or with the one under the pointer."},
		{Action: choose, Keys: []string{"up", "down"}, Label: "arrows", Short: "choose", Long: "Move the pointer."},
	}}
}

// candidates are the tanks that hold larvae, the one longest without a look first.
func (s *Scope) candidates() []model.TankNow {
	l := s.desk.Ledger
	tanks := l.Ranked(s.desk.Now)
	slices.SortStableFunc(tanks, func(a, b model.TankNow) int { return l.LookDue(a).Compare(l.LookDue(b)) })
	return tanks
}

func at(tanks []model.TankNow, name string) int {
	return slices.IndexFunc(tanks, func(t model.TankNow) bool { return screen.SameName(t.Tank.Name, name) })
}

// onNext takes a key while the next tank is chosen.
func (s *Scope) onNext(key tea.KeyMsg) (screen.Screen, tea.Cmd) {
	tanks := s.candidates()
	chosen := max(0, at(tanks, s.next.chosen))
	switch key.Type {
	case tea.KeyEsc:
		return s, screen.Send(screen.Back{})
	case tea.KeyUp, tea.KeyDown:
		chosen += map[bool]int{true: 1, false: -1}[key.Type == tea.KeyDown]
		if chosen >= 0 && chosen < len(tanks) {
			s.next.chosen = tanks[chosen].Tank.Name
		}
		return s, nil
	case tea.KeyEnter:
		return s.goOn(tanks, chosen)
	}
	var out screen.Outcome
	s.next.field, out = s.next.field.Update(key)
	if out == screen.Rejected {
		return s, s.refuse("no tank has so long a name")
	}
	return s, nil
}

// goOn opens the tank typed, or the one under the pointer where nothing is.
func (s *Scope) goOn(tanks []model.TankNow, chosen int) (screen.Screen, tea.Cmd) {
	typed := s.next.field.Text()
	switch {
	case typed != "":
		chosen = named(tanks, typed)
	case len(tanks) == 0:
		return s, s.refuse("no tank holds larvae")
	}
	if chosen < 0 {
		s.next.field = newNext().field
		return s, s.refuse(s.unnamed(typed))
	}
	following := New(s.desk, tanks[chosen].Tank.Name).(*Scope)
	following.want, following.unit = s.want, s.unit
	return following, nil
}

// named finds a tank by its name, or by its number in the list where no tank has
// such a name.
func named(tanks []model.TankNow, typed string) int {
	if i := at(tanks, typed); i >= 0 {
		return i
	}
	if n, err := strconv.Atoi(typed); err == nil && n >= 1 && n <= len(tanks) {
		return n - 1
	}
	return -1
}

func (s *Scope) unnamed(typed string) string {
	if t, ok := s.desk.Ledger.Tank(typed); ok {
		return t.Tank.Name + " holds no larvae"
	}
	return typed + " is neither a tank nor a number of the list"
}

// nextView draws the choice in exactly h rows of w cells.
func (s *Scope) nextView(w, h int) []string {
	th, tanks := s.desk.Theme, s.candidates()
	head := []string{"  next tank: " + s.next.field.View(th, max(2, min(20, w-14)), true)}
	if alarms := s.alarmLines(w); h > len(alarms)+6 {
		head = append(alarms, head...)
	}
	list := screen.List{Chosen: max(0, at(tanks, s.next.chosen))}
	for i, t := range tanks {
		list.Items = append(list.Items, fmt.Sprintf("%2d  %s  %s", i+1, text.Fit(text.Clean(t.Tank.Name), 5), s.candidateWords(t)))
	}
	if len(tanks) == 0 {
		list.Items = []string{"no tank holds larvae"}
	}
	left := max(0, h-len(head))
	return text.Frame(append(head, list.View(th, w, left)...), w, h)
}

// candidateWords say what a tank holds and when it was looked at.
func (s *Scope) candidateWords(t model.TankNow) string {
	d := s.desk
	days, _ := d.Ledger.Age(t, d.Now)
	words := text.Fit(text.Clean(t.Larvae.Batch)+" day "+strconv.Itoa(days), 14)
	if t.Larvae.Looked.IsZero() {
		words += "  never looked at"
	} else {
		words += "  looked at " + ago(d.Now, t.Larvae.Looked)
	}
	if d.Now.After(d.Ledger.LookDue(t)) {
		words += ", late"
	}
	return words
}

// alarmLines are what is wrong with the tank just looked at.
func (s *Scope) alarmLines(w int) []string {
	var lines []string
	for _, a := range s.desk.Ledger.Alarms(s.desk.Now) {
		if !strings.EqualFold(a.Tank, s.tank) || a.Seen || s.phase != leaving {
			continue
		}
		for _, l := range text.Wrap(inMicrometres(a.Tank+": "+a.Text+" "+s.desk.Theme.Marks.Arrow+" "+a.Advice), max(1, w-4)) {
			lines = append(lines, "  "+s.desk.Theme.Strong.Render(l))
		}
	}
	if len(lines) > 0 {
		lines = append(lines, "")
	}
	return lines
}
