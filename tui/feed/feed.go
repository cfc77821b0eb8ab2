package feed

import (
	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/tui/desk"
	"drainboard/tui/factform"
	"drainboard/tui/keys"
	"drainboard/tui/screen"
)

// Feed is the screen of the feed round.
type Feed struct {
	desk   *desk.Desk
	phase  phase
	chosen string // name of the tank under the pointer
	say    message
	ask    *question // lies over the phase until it is answered

	round  round
	hand   map[string]model.AtHand // litres of algae as typed; of others there is enough
	going  going
	slip   slip // a form that is being typed into
	page   screen.Page
	pageH  int // of the page in the last frame
	demand demand
}

// phase is what the screen shows.
type phase int

const (
	table    phase = iota // every tank
	oneByOne              // tank after tank
	typing                // a form: cells counted, litres at hand
	pours                 // the list to carry
	ahead                 // the demand of the days to come
)

// message is the line that says what the last key did.
type message struct {
	text string
	mood screen.Mood
}

// question is asked before typed figures are thrown away.
type question struct {
	ask string
	yes func() tea.Cmd
}

// New returns the screen with the pointer on a tank; with an empty name, on the
// first that is to be fed.
func New(d *desk.Desk, arg string) screen.Screen {
	f := &Feed{desk: d, hand: map[string]model.AtHand{}}
	if i, ok := d.Ledger.Room().Tank(arg); ok {
		f.chosen = d.Ledger.Room().Tanks[i].Name
	}
	f.sync()
	return f
}

// The actions of the screen.
const (
	fed     keys.Action = "fed"
	through keys.Action = "one by one"
	culture keys.Action = "culture"
	leftIn  keys.Action = "left"
	litres  keys.Action = "litres"
	list    keys.Action = "pours"
	days    keys.Action = "days"
	move    keys.Action = "move"
	next    keys.Action = "next"
	before  keys.Action = "before"
	rows    keys.Action = "fields"
	save    keys.Action = "save"
	scroll  keys.Action = "scroll"
	yes     keys.Action = "yes"
)

// Keys is what the keys do now.
func (f *Feed) Keys() keys.Table {
	switch {
	case f.ask != nil:
		return keys.Table{Title: "Question", Bindings: []keys.Binding{
			{Action: yes, Keys: []string{"enter"}, Short: "yes", Long: "Do it."},
		}}
	case f.phase == oneByOne:
		return f.goingKeys()
	case f.phase == typing:
		return keys.Table{Title: f.slip.title, Bindings: []keys.Binding{
			{Action: save, Keys: []string{"enter"}, Short: "next, save", Long: "Go to the next field; in the last one save."},
			{Action: rows, Keys: []string{"up", "down", "tab", "shift+tab"}, Label: "arrows", Short: "fields", Long: "Go from field to field."},
		}}
	case f.phase == pours, f.phase == ahead:
		return keys.Table{Title: f.Title(), Bindings: []keys.Binding{
			{Action: scroll, Keys: []string{"up", "down", "pgup", "pgdown", " ", "home", "end"}, Label: "arrows", Short: "scroll", Long: "Scroll through the page."},
		}}
	}
	return f.tableKeys()
}

func (f *Feed) tableKeys() keys.Table {
	t := keys.Table{Title: "Feed", Bindings: []keys.Binding{
		{Action: fed, Keys: []string{"enter"}, Short: "fed", Long: "Enter the chosen tank as fed with the amounts that are shown."},
		{Action: through, Keys: []string{"f"}, Short: "one by one", Long: "Go through the tanks that are to be fed, each confirmed by itself."},
		{Action: list, Keys: []string{"p"}, Short: "pours", Long: "The pour list in millilitres, to carry along."},
		{Action: culture, Keys: []string{"c"}, Short: "culture", Long: "Enter a cell count of a culture."},
		{Action: leftIn, Keys: []string{"r"}, Short: "left", Long: "Enter a count of the cells left in the chosen tank."},
		{Action: litres, Keys: []string{"l"}, Short: "litres", Long: "Say how many litres of each alga are at hand; what is short is shared out."},
		{Action: days, Keys: []string{"d"}, Long: "What the algae room must grow in the next 14 days."},
		{Action: move, Keys: []string{"up", "down", "pgup", "pgdown", "home", "end"}, Label: "arrows", Long: "Choose a tank."},
	}}
	if f.desk.ReadOnly != "" {
		for _, a := range []keys.Action{fed, through, culture, leftIn} {
			t = t.Off(a, f.desk.ReadOnly)
		}
		return t
	}
	if len(f.round.Tanks) == 0 {
		t = t.Off(fed, "no tank holds larvae").Off(leftIn, "no tank holds larvae")
	}
	if len(f.toFeed()) == 0 {
		t = t.Off(through, "no tank is to be fed now")
	}
	return t
}

// Title is the name of the screen.
func (f *Feed) Title() string {
	switch f.phase {
	case pours:
		return "Pour list"
	case ahead:
		return "Demand"
	case table, oneByOne, typing:
	}
	return "Feed"
}

// Init has nothing to prepare.
func (f *Feed) Init() tea.Cmd { return nil }

// Capturing is true where figures are typed or a question waits.
func (f *Feed) Capturing() bool { return f.ask != nil || f.phase == typing }

// Update takes a key, or the time.
func (f *Feed) Update(msg tea.Msg) (screen.Screen, tea.Cmd) {
	f.sync()
	key, ok := msg.(tea.KeyMsg)
	switch {
	case !ok:
		return f, nil
	case f.ask != nil:
		return f, f.answered(key)
	case f.phase == typing:
		return f, f.onSlip(key)
	case f.phase == oneByOne:
		return f, f.onGoing(key)
	case f.phase == pours, f.phase == ahead:
		return f, f.onPage(key)
	}
	return f, f.onTable(key)
}

// onTable takes a key while every tank is shown.
func (f *Feed) onTable(key tea.KeyMsg) tea.Cmd {
	action, _ := f.Keys().Match(key)
	if action != "" && action != move {
		f.say = message{}
	}
	switch action {
	case fed:
		return f.enterFed(f.chosen)
	case through:
		f.startGoing()
	case culture:
		f.startCulture()
	case leftIn:
		return f.startLeft(f.chosen)
	case litres:
		f.startLitres()
	case list, days:
		f.phase = map[keys.Action]phase{list: pours, days: ahead}[action]
		f.page = screen.Page{}
	case move:
		f.step(key)
	}
	if key.Type == tea.KeyEsc {
		return f.leave()
	}
	return nil
}

// leave closes the screen; typed litres are not thrown away without a question.
func (f *Feed) leave() tea.Cmd {
	back := func() tea.Cmd { return screen.Send(screen.Back{}) }
	if len(f.hand) == 0 {
		return back()
	}
	f.ask = &question{"Leave? The litres at hand that were typed here are not kept. All that was entered is.", back}
	return nil
}

// step moves the pointer.
func (f *Feed) step(key tea.KeyMsg) {
	names := make([]string, len(f.round.Tanks))
	l := screen.List{Items: names}
	for i, t := range f.round.Tanks {
		names[i] = t.Tank.Tank.Name
		if names[i] == f.chosen {
			l.Chosen = i
		}
	}
	if l, _ = l.Update(key); l.Chosen < len(names) {
		f.chosen = names[l.Chosen]
	}
}

func (f *Feed) answered(key tea.KeyMsg) tea.Cmd {
	q := f.ask
	switch key.Type {
	case tea.KeyEnter:
		f.ask = nil
		return q.yes()
	case tea.KeyEsc:
		f.ask = nil
	}
	return nil
}

// onPage scrolls a page, or closes it.
func (f *Feed) onPage(key tea.KeyMsg) tea.Cmd {
	if key.Type == tea.KeyEsc {
		f.phase = table
		return nil
	}
	f.page, _ = f.page.Update(key, f.pageH)
	return nil
}

// refuse says why a key was not taken and rings the bell once.
func (f *Feed) refuse(why string) tea.Cmd {
	f.say = message{why, screen.Refused}
	return screen.Send(screen.Beep{Times: 1})
}

// notSaved says why an entry was not made.
func (f *Feed) notSaved(err error) tea.Cmd { return f.refuse(factform.NotSaved(err)) }
