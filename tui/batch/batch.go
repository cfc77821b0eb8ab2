package batch

import (
	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/tui/desk"
	"drainboard/tui/keys"
	"drainboard/tui/screen"
)

// page is one of the pages of the screen.
type page int

const (
	growthPage page = iota
	allPage
	survivalPage
	storyPage
	pages // how many there are
)

// Batch is the screen of one batch.
type Batch struct {
	desk  *desk.Desk
	name  string
	page  page
	dots  bool // charts are drawn in Braille
	share bool // the survival is drawn in per cent

	read  screen.Page // the words beneath the chart
	rows  int         // of them in the last frame
	known known
}

// New returns the screen of a batch by its name; without a name, that of the
// first batch in the room.
func New(d *desk.Desk, arg string) screen.Screen {
	s := &Batch{desk: d, name: arg}
	if order := s.order(); arg == "" && len(order) > 0 {
		s.name = order[0].Name
	}
	return s
}

// now is the batch that is shown, nil where the room has none of that name.
func (s *Batch) now() *model.Batch { return s.desk.Ledger.Batch(s.name) }

// The actions of the screen.
const (
	turn     keys.Action = "page"
	first    keys.Action = "growth"
	second   keys.Action = "all"
	third    keys.Action = "survival"
	fourth   keys.Action = "story"
	next     keys.Action = "next"
	previous keys.Action = "previous"
	braille  keys.Action = "braille"
	percent  keys.Action = "percent"
	open     keys.Action = "tank"
	scroll   keys.Action = "scroll"
)

// Keys is what the keys do now.
func (s *Batch) Keys() keys.Table {
	t := keys.Table{Title: "Batch", Bindings: []keys.Binding{
		{Action: turn, Keys: []string{"right", "left"}, Label: "←→", Short: "page", Long: "Turn to the next or the previous page."},
		{Action: next, Keys: []string{"n"}, Short: "next batch", Long: "Show the next batch, after those in the room the ended ones."},
		{Action: previous, Keys: []string{"p"}, Short: "previous", Long: "Show the previous batch."},
		{Action: percent, Keys: []string{"a"}, Short: "per cent", Long: "Draw the survival in larvae or in per cent alive."},
		{Action: braille, Keys: []string{"b"}, Short: "braille", Long: "Draw the charts in Braille dots, which are finer, or in blocks."},
		{Action: scroll, Keys: []string{"down", "up", "pgdown", "pgup", "home", "end"}, Label: "↑↓", Short: "read", Long: "Read on in the words beneath the chart."},
		{Action: open, Keys: []string{"t"}, Long: "Open the tank that holds the batch; of several the first."},
		{Action: first, Keys: []string{"1"}, Long: "Growth: length by age, and the day on which the batch should be ready."},
		{Action: second, Keys: []string{"2"}, Long: "The lengths of all batches by age over one another."},
		{Action: third, Keys: []string{"3"}, Long: "Survival: counts, losses, what was taken out and what the moves cost."},
		{Action: fourth, Keys: []string{"4"}, Long: "The story: tanks, feeds, looks and moves."},
	}}
	if s.page != survivalPage {
		t = t.Off(percent, "it is for the survival page")
	}
	switch {
	case s.desk.Theme.ASCII:
		t = t.Off(braille, "the screen is drawn in ASCII")
	case s.page == storyPage:
		t = t.Off(braille, "this page has no chart")
	}
	if len(s.order()) < 2 && s.now() != nil {
		t = t.Off(next, "there is no other batch").Off(previous, "there is no other batch")
	}
	if b := s.now(); b == nil || !s.desk.Ledger.Here(b) {
		t = t.Off(open, "no tank holds the batch")
	}
	return t
}

// Title is the name of the screen.
func (s *Batch) Title() string { return "Batch" }

// Init has nothing to prepare.
func (s *Batch) Init() tea.Cmd { return nil }

// Capturing is false: nothing is typed here.
func (s *Batch) Capturing() bool { return false }

// Update takes a key.
func (s *Batch) Update(msg tea.Msg) (screen.Screen, tea.Cmd) {
	key, ok := msg.(tea.KeyMsg)
	switch {
	case !ok:
		return s, nil
	case key.Type == tea.KeyEsc:
		return s, screen.Send(screen.Back{})
	}
	table := s.Keys()
	if why, off := table.Refused(key); off {
		return s, screen.Send(screen.Toast{Text: "not now: " + why, Mood: screen.Refused})
	}
	action, _ := table.Match(key)
	return s, s.do(action, key)
}

func (s *Batch) do(action keys.Action, key tea.KeyMsg) tea.Cmd {
	switch action {
	case turn:
		step := page(1)
		if key.Type == tea.KeyLeft {
			step = pages - 1
		}
		s.turnTo((s.page + step) % pages)
	case first:
		s.turnTo(growthPage)
	case second:
		s.turnTo(allPage)
	case third:
		s.turnTo(survivalPage)
	case fourth:
		s.turnTo(storyPage)
	case next:
		s.step(1)
	case previous:
		s.step(-1)
	case braille:
		s.dots = !s.dots
	case percent:
		s.share = !s.share
	case open:
		return screen.Send(screen.Open{Name: "tank", Arg: s.desk.Ledger.BatchTanks(s.now())[0].Tank.Name})
	case scroll:
		s.read, _ = s.read.Update(key, s.rows)
	}
	return nil
}

func (s *Batch) turnTo(p page) { s.page, s.read.Top = p, 0 }

// step shows the batch so many places on; from one that is not known it goes to
// the first.
func (s *Batch) step(by int) {
	order := s.order()
	if len(order) == 0 {
		return
	}
	i := s.place()
	if i < 0 {
		by, i = 0, 0
	}
	s.name, s.read.Top = order[(i+by+len(order))%len(order)].Name, 0
}
