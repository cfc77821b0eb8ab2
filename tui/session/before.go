package session

import (
	"fmt"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/model/sequence"
	"drainboard/tui/keys"
	"drainboard/tui/screen"
)

// The actions before a session.
const (
	accept  keys.Action = "accept"
	choose  keys.Action = "choose"
	earlier keys.Action = "earlier"
	later   keys.Action = "later"
	drop    keys.Action = "leave-out"
	add     keys.Action = "add"
	into    keys.Action = "into"
	asText  keys.Action = "text"
	best    keys.Action = "best"
)

// typing is what a name typed before a session is for.
type typing int

const (
	nothing typing = iota
	adding         // a tank to the list
	aiming         // the destination of the chosen row
)

// stage is what is shown before a session.
type stage int

const (
	listing    stage = iota
	confirming       // what is about to be opened
	printing         // the plan as plain text
	leaving          // the list was changed; shall it go?
)

// before is the screen while no session is open.
type before struct {
	draft  draft
	chosen int
	typing typing
	field  screen.Field
	stage  stage
	page   screen.Page
	pageH  int

	agreed laid // what is shown while confirming, and opened as it is shown

	// The plan as last laid out, and what it was laid out for.
	laid   laid
	key    laidKey
	edits  int
	proved map[string]sequence.Plan // best plans by the tanks added, of one key
}

type laidKey struct {
	next   int
	minute time.Time
	edits  int
}

// lay gives the list laid out as of now: anew when an entry was made, the minute
// changed or the list was changed.
func (s *Session) lay() *laid {
	d, b := s.desk, &s.before
	key := laidKey{d.Ledger.Next(), d.Now.Truncate(time.Minute), b.edits}
	if key == b.key && b.laid.problem.Crew != 0 {
		return &b.laid
	}
	if key.next != b.key.next || !key.minute.Equal(b.key.minute) {
		b.proved = map[string]sequence.Plan{}
	}
	b.key = key
	b.laid = layOut(d.Ledger, b.draft, d.Plan(), b.bestOf)
	b.chosen = max(0, min(b.chosen, len(b.laid.rows)-1))
	return &b.laid
}

// bestOf finds the best plan with tanks the crew added, once for each set.
func (b *before) bestOf(p sequence.Problem) (sequence.Plan, error) {
	name := ""
	for _, s := range p.Sources {
		name += fmt.Sprint(s.Tank, " ")
	}
	if plan, ok := b.proved[name]; ok {
		return plan, nil
	}
	plan, err := sequence.Best(p)
	if err == nil {
		b.proved[name] = plan
	}
	return plan, err
}

func (s *Session) beforeKeys() keys.Table {
	b := &s.before
	t := keys.Table{Title: "Session, before"}
	switch {
	case b.typing != nothing:
		t.Bindings = []keys.Binding{{Action: accept, Keys: []string{"enter"}, Short: "take it", Long: "Take the name typed."}}
	case b.stage == confirming:
		t.Bindings = []keys.Binding{
			{Action: accept, Keys: []string{"enter"}, Short: "open the session", Long: "Open the session with these moves."},
			{Action: earlier, Keys: []string{"-"}, Short: "back to the plan", Long: "Go back to the plan."},
		}
	case b.stage == printing:
		t.Bindings = []keys.Binding{
			{Action: accept, Keys: []string{"enter", "-", "p"}, Short: "back to the plan", Long: "Go back to the plan."},
			{Action: choose, Keys: []string{"up", "down", "pgup", "pgdown", " "}, Label: "arrows", Short: "scroll", Long: "Scroll."},
		}
	case b.stage == leaving:
		t.Bindings = []keys.Binding{
			{Action: accept, Keys: []string{"1", "enter", "-"}, Label: "1", Short: "keep on", Long: "Go on with your list."},
			{Action: drop, Keys: []string{"2"}, Short: "drop the list", Long: "Drop your list and leave."},
		}
	default:
		return s.listKeys()
	}
	return t
}

func (s *Session) listKeys() keys.Table {
	t := keys.Table{Title: "Session, before", Bindings: []keys.Binding{
		{Action: accept, Keys: []string{"enter"}, Short: "open", Long: "Show what is to be opened: moves, sieves, acid and water. A second Enter opens it."},
		{Action: earlier, Keys: []string{"-"}, Short: "earlier", Long: "Move the chosen row up."},
		{Action: later, Keys: []string{"+"}, Short: "later", Long: "Move the chosen row down."},
		{Action: drop, Keys: []string{"x", "delete", "."}, Short: "leave out", Long: "Leave the chosen row out of the session."},
		{Action: add, Keys: []string{"a", "*"}, Short: "add", Long: "Add a tank to the session by its name."},
		{Action: into, Keys: []string{"d", "0"}, Short: "into", Long: "Give the chosen row another destination; an empty name leaves it to the rule."},
		{Action: asText, Keys: []string{"p"}, Long: "Show the plan as plain text, to be printed or copied."},
		{Action: best, Keys: []string{"r"}, Long: "Go back to the best plan."},
		{Action: choose, Keys: []string{"up", "down", "1", "2", "3", "4", "5", "6", "7", "8", "9"}, Label: "arrows, digits", Long: "Choose a row; a digit chooses by its number."},
	}}
	if len(s.before.laid.plan.Moves) == 0 {
		t = t.Off(accept, "there is no move to make")
	}
	if len(s.before.laid.rows) == 0 {
		t = t.Off(earlier, "the list is empty").Off(later, "the list is empty").Off(drop, "the list is empty").Off(into, "the list is empty")
	}
	if !s.before.draft.changed {
		t = t.Off(best, "the best plan is shown")
	}
	return t
}

// pressBefore takes a key before a session.
func (s *Session) pressBefore(key tea.KeyMsg) tea.Cmd {
	b := &s.before
	s.lay()
	switch {
	case b.typing != nothing:
		return s.typeName(key)
	case b.stage == printing:
		return s.pressPrinted(key)
	}
	action, _ := s.Keys().Match(key)
	switch {
	case b.stage == confirming:
		return s.pressConfirm(key, action)
	case b.stage == leaving:
		return s.pressLeaving(key, action)
	case key.Type == tea.KeyEsc:
		return s.leavePlan()
	}
	return s.pressList(key, action)
}

// leavePlan goes back, but asks first where the list was changed.
func (s *Session) leavePlan() tea.Cmd {
	if s.before.draft.changed {
		s.before.stage = leaving
		return nil
	}
	return screen.Send(screen.Back{})
}

func (s *Session) pressLeaving(key tea.KeyMsg, action keys.Action) tea.Cmd {
	switch {
	case action == drop:
		s.before = before{}
		return screen.Send(screen.Back{})
	case action == accept, key.Type == tea.KeyEsc:
		s.before.stage = listing
	}
	return nil
}

func (s *Session) pressList(key tea.KeyMsg, action keys.Action) tea.Cmd {
	b := &s.before
	switch action {
	case accept:
		b.stage, b.agreed = confirming, b.laid
	case choose:
		b.choose(key)
	case earlier:
		s.edit(func(d draft) draft { d, b.chosen = d.shift(b.chosen, -1); return d })
	case later:
		s.edit(func(d draft) draft { d, b.chosen = d.shift(b.chosen, 1); return d })
	case drop:
		s.edit(func(d draft) draft { return d.drop(b.chosen) })
	case add:
		b.typing, b.field = adding, nameField()
	case into:
		b.typing, b.field = aiming, nameField()
	case best:
		s.edit(func(draft) draft { return draft{} })
	case asText:
		return s.printPlan()
	}
	return nil
}

// nameField takes a tank's name.
func nameField() screen.Field { return screen.NewField(screen.Name, 40) }

func (b *before) choose(key tea.KeyMsg) {
	switch name := key.String(); name {
	case "up":
		b.chosen--
	case "down":
		b.chosen++
	default:
		if n := int(name[0] - '1'); n < len(b.laid.rows) {
			b.chosen = n
		}
	}
	b.chosen = max(0, min(b.chosen, len(b.laid.rows)-1))
}

// edit changes the list and times it again at once.
func (s *Session) edit(change func(draft) draft) {
	b := &s.before
	b.draft = change(b.draft.own(b.laid))
	b.edits++
	s.lay()
}

// typeName takes a key of a name being typed.
func (s *Session) typeName(key tea.KeyMsg) tea.Cmd {
	b := &s.before
	if key.Type == tea.KeyEsc {
		b.typing = nothing
		if !b.field.Empty() {
			s.setNote(b.field.Text()+" was not taken; the list is as it was", screen.Info)
		}
		return nil
	}
	field, out := b.field.Update(key)
	b.field = field
	switch out {
	case screen.Entered:
		return s.takeName()
	case screen.Rejected:
		return screen.Send(screen.Beep{Times: 1})
	}
	return nil
}

// takeName adds the tank typed, or makes it the destination of the chosen row.
func (s *Session) takeName() tea.Cmd {
	b, l := &s.before, s.desk.Ledger
	name, err := tankTyped(l.Room(), b.field.Text())
	var next draft
	switch {
	case err != nil:
	case b.typing == adding:
		next, err = b.draft.own(b.laid).add(l, name, s.desk.Now)
	default:
		next, err = b.draft.own(b.laid).into(l, b.chosen, name)
	}
	if err != nil {
		s.setNote(err.Error(), screen.Refused)
		return screen.Send(screen.Beep{Times: 1})
	}
	if b.typing == adding {
		b.chosen = len(next.legs) - 1
	}
	b.typing = nothing
	s.edit(func(draft) draft { return next })
	return nil
}

// Print asks the root to offer the plan as plain lines of at most 80 cells.
type Print struct{ Lines []string }

// printPlan shows the plan as plain text and offers it to the root.
func (s *Session) printPlan() tea.Cmd {
	b := &s.before
	if b.laid.err != nil {
		s.setNote(b.laid.err.Error(), screen.Refused)
		return nil
	}
	lines := planText(s.desk.Ledger, b.laid, s.desk.Now, b.draft.changed)
	b.stage, b.page = printing, screen.Page{Lines: lines}
	return screen.Send(Print{lines})
}

func (s *Session) pressPrinted(key tea.KeyMsg) tea.Cmd {
	b := &s.before
	if action, _ := s.Keys().Match(key); action == accept || key.Type == tea.KeyEsc {
		b.stage = listing
		return nil
	}
	b.page, _ = b.page.Update(key, b.pageH)
	return nil
}

// pressConfirm opens the session by a second Enter.
func (s *Session) pressConfirm(key tea.KeyMsg, action keys.Action) tea.Cmd {
	switch {
	case action == earlier, key.Type == tea.KeyEsc:
		s.before.stage = listing
	case action == accept:
		if s.write(&model.Opened{Moves: s.before.agreed.legs()}) {
			s.before, s.running = before{}, running{}
			s.sync()
		}
	}
	return nil
}
