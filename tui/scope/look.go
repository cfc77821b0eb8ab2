package scope

import (
	"errors"
	"math"
	"strconv"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/tui/keys"
	"drainboard/tui/screen"
)

// look is the form of the look.
type look struct{ form screen.Form }

// The rows of the look, in the order in which they are asked.
const (
	lobes = iota
	golden
	swimming
	dead
	remark
)

func newLook() look {
	share := func() screen.Field { return screen.NewField(screen.Line, 9) }
	return look{screen.Form{Rows: []screen.Row{
		{Label: "lobes", Field: screen.NewField(screen.Whole, 1), Note: "2, 4 or 6; Enter leaves it out"},
		{Label: "golden gut", Field: share(), Unit: "%", Note: "per cent, or 18/25 as counted"},
		{Label: "swimming", Field: screen.NewField(screen.Whole, 1), Note: "1 good, 2 fair, 3 poor"},
		{Label: "dead", Field: share(), Unit: "%", Note: "per cent, or 1/25 as counted"},
		{Label: "remark", Field: screen.NewField(screen.Line, 2000), Note: "Enter saves the look"},
	}}}
}

func lookKeys() keys.Table {
	return keys.Table{Title: "Look", Bindings: []keys.Binding{
		{Action: take, Keys: []string{"enter"}, Short: "next, save", Long: "Take the field, left out where it is empty; the last one saves the look."},
		{Action: takeBack, Keys: []string{"backspace"}, Short: "field back", Long: "In an empty field: back to the one before."},
		{Action: rows, Keys: []string{"up", "down", "tab", "shift+tab"}, Label: "arrows", Short: "fields", Long: "Go from field to field."},
	}}
}

// onLook takes a key while the look is typed.
func (s *Scope) onLook(key tea.KeyMsg) tea.Cmd {
	if key.Type == tea.KeyEsc {
		return s.leaveLook()
	}
	f := s.look.form
	at := f.Focus
	if (at == golden || at == dead) && key.Type == tea.KeyRunes && strings.Trim(string(key.Runes), "0123456789.,/ ") != "" {
		return s.refuse("per cent, or two counts as 18/25")
	}
	form, out := f.Update(key)
	if entered := key.Type == tea.KeyEnter; entered {
		if _, err := s.lookField(at); err != nil {
			s.look.form.Rows[at].Problem = err.Error()
			return s.refuse(err.Error())
		}
	}
	s.look.form = form
	switch out {
	case screen.Rejected:
		return s.refuse("this does not fit into the field")
	case screen.TakeBack:
		s.look.form.Focus = max(0, at-1)
	case screen.Entered:
		return s.saveLook()
	}
	return nil
}

// leaveLook goes back to the readings; a typed look is kept only where it is not
// thrown away by an answer.
func (s *Scope) leaveLook() tea.Cmd {
	back := func() tea.Cmd {
		s.look, s.phase, s.say = newLook(), reading, message{}
		return nil
	}
	if !s.look.typed() {
		return back()
	}
	s.ask = &question{"Throw away the look that was typed? The lengths are saved.", back}
	return nil
}

func (l look) typed() bool {
	for _, r := range l.form.Rows {
		if !r.Field.Empty() {
			return true
		}
	}
	return false
}

// lookField reads one row into a look of its own.
func (s *Scope) lookField(at int) (*model.Look, error) {
	fact := &model.Look{}
	typed := s.look.form.Rows[at].Field.Text()
	if typed == "" {
		return fact, nil
	}
	switch at {
	case lobes:
		n, err := strconv.Atoi(typed)
		if err != nil || n != 2 && n != 4 && n != 6 {
			return nil, errors.New("a veliger has 2, 4 or 6 lobes")
		}
		fact.Lobes = &n
	case golden, dead:
		share, err := shareOf(typed)
		if err != nil {
			return nil, err
		}
		if at == golden {
			fact.Golden = &share
		} else {
			fact.Dead = &share
		}
	case swimming:
		words := map[string]string{"1": model.SwimGood, "2": model.SwimFair, "3": model.SwimPoor}
		if fact.Swim = words[typed]; fact.Swim == "" {
			return nil, errors.New("1 good, 2 fair or 3 poor")
		}
	case remark:
		fact.Text = typed
	}
	return fact, nil
}

// shareOf reads per cent, or so many out of so many, as per cent to a tenth.
func shareOf(typed string) (float64, error) {
	part, whole, counted := strings.Cut(typed, "/")
	x, ok := screen.ParseNumber(part)
	switch {
	case !ok:
		return 0, errors.New("per cent, or two counts as 18/25")
	case counted:
		of, ok := screen.ParseNumber(whole)
		if !ok || of <= 0 || x != math.Trunc(x) || of != math.Trunc(of) {
			return 0, errors.New("two whole counts, as 18/25")
		}
		if x > of {
			return 0, errors.New(typed + " is more than all")
		}
		x = math.Round(1000*x/of) / 10
	case x > 100:
		return 0, errors.New(typed + " % is more than all")
	}
	return x, nil
}

// saveLook enters the look as one entry. Where nothing was seen, nothing is
// entered; where it cannot be saved, it stays as typed.
func (s *Scope) saveLook() tea.Cmd {
	if !s.look.typed() {
		s.done("no look entered", screen.Info)
		return nil
	}
	fact := &model.Look{Tank: s.tank}
	for at := range s.look.form.Rows {
		one, err := s.lookField(at)
		if err != nil {
			s.look.form.Rows[at].Problem = err.Error()
			s.look.form.Focus = at
			return s.refuse(err.Error())
		}
		fact.Lobes, fact.Golden, fact.Dead = first(fact.Lobes, one.Lobes), first(fact.Golden, one.Golden), first(fact.Dead, one.Dead)
		fact.Swim, fact.Text = fact.Swim+one.Swim, fact.Text+one.Text
	}
	if _, err := s.desk.Enter(fact); err != nil {
		return s.notSaved(err)
	}
	s.done(model.Sentence(fact)+" saved", screen.Saved)
	return nil
}

func first[T any](a, b *T) *T {
	if a != nil {
		return a
	}
	return b
}

// done ends the work at a tank: the next one is chosen.
func (s *Scope) done(words string, mood screen.Mood) {
	s.look, s.next, s.phase = newLook(), newNext(), leaving
	s.say = message{words, mood}
}
