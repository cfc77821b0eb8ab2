package board

import (
	"slices"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/tui/desk"
	"drainboard/tui/keys"
	"drainboard/tui/screen"
)

// Board is the screen that shows every tank.
type Board struct {
	desk    *desk.Desk
	chosen  string // name of the tank under the pointer
	byPlace bool   // tiles stand as the tanks do
	wall    bool   // names and states in large digits

	// What the last frame showed.
	looked     stamp
	drawn      drawing
	grid       grid
	order      []model.TankNow
	alarms     []model.Alarm
	unseen     map[string]bool // overdue tanks that no one has acknowledged
	next, into string
}

// New returns the board of a desk.
func New(d *desk.Desk) *Board { return &Board{desk: d} }

// The actions of the board.
const (
	open     keys.Action = "tank"
	session  keys.Action = "session"
	scope    keys.Action = "scope"
	feed     keys.Action = "feed"
	batch    keys.Action = "batch"
	bench    keys.Action = "bench"
	calendar keys.Action = "calendar"
	house    keys.Action = "house"
	begin    keys.Action = "inventory"
	journal  keys.Action = "log"
	seen     keys.Action = "seen"
	layout   keys.Action = "layout"
	wall     keys.Action = "wall"
	move     keys.Action = "move"
	quit     keys.Action = "quit"
)

// Keys is what the keys do on the board.
func (b *Board) Keys() keys.Table {
	t := keys.Table{Title: "Board", Bindings: []keys.Binding{
		{Action: session, Keys: []string{"s"}, Short: "session", Long: "Plan the next change session, or go on with the open one."},
		{Action: open, Keys: []string{"enter"}, Short: "tank", Long: "Open the chosen tank: its story, temperatures and readings."},
		{Action: scope, Keys: []string{"m"}, Short: "microscope", Long: "Key shell lengths and the look of the chosen tank."},
		{Action: seen, Keys: []string{"a"}, Short: "seen", Long: "Acknowledge the first alarm that no one has seen; each is named."},
		{Action: journal, Keys: []string{"l"}, Short: "log", Long: "Read, search and correct what was entered."},
		{Action: feed, Keys: []string{"f"}, Long: "Cell counts in, litres out, for every tank."},
		{Action: batch, Keys: []string{"g"}, Long: "Growth, survival and ready date of the chosen tank's batch."},
		{Action: bench, Keys: []string{"b"}, Long: "The bench sums: acid, blending, counts, oxygen and the like."},
		{Action: calendar, Keys: []string{"c"}, Long: "The sessions of the next 14 days."},
		{Action: house, Keys: []string{"h"}, Long: "The house rules as read from room.toml."},
		{Action: begin, Keys: []string{"i"}, Long: "The opening inventory: type what stands where in a room that begins in mid-season."},
		{Action: layout, Keys: []string{"o"}, Long: "Sort the tanks by rank, or lay them out as they stand."},
		{Action: wall, Keys: []string{"w"}, Long: "Names and states in large digits, to be read across the room."},
		{Action: move, Keys: []string{"up", "down", "left", "right"}, Label: "arrows", Long: "Choose a tank."},
		{Action: quit, Keys: []string{"q"}, Short: "quit", Long: "Leave the program."},
	}}
	if !slices.ContainsFunc(b.alarms, func(a model.Alarm) bool { return !a.Seen }) {
		t = t.Off(seen, "no alarm is new")
	}
	return t
}

// Title is the name of the screen.
func (b *Board) Title() string { return "Board" }

// Init has nothing to prepare.
func (b *Board) Init() tea.Cmd { return nil }

// Capturing is false: nothing is typed on the board.
func (b *Board) Capturing() bool { return false }

// Update takes a key.
func (b *Board) Update(msg tea.Msg) (screen.Screen, tea.Cmd) {
	key, ok := msg.(tea.KeyMsg)
	if !ok {
		return b, nil
	}
	action, _ := b.Keys().Match(key)
	switch action {
	case session, feed, bench, calendar, house, begin, journal:
		return b, screen.Send(screen.Open{Name: string(action)})
	case open, scope:
		return b, b.openChosen(string(action))
	case batch:
		return b, b.openBatch()
	case seen:
		return b, b.acknowledge()
	case layout:
		b.byPlace, b.wall = !b.byPlace, false
	case wall:
		b.wall = !b.wall
	case move:
		b.step(key.String())
	case quit:
		return b, screen.Send(screen.Quit{})
	}
	return b, nil
}

func (b *Board) openChosen(name string) tea.Cmd {
	if b.chosen == "" {
		return nil
	}
	return screen.Send(screen.Open{Name: name, Arg: b.chosen})
}

func (b *Board) openBatch() tea.Cmd {
	t, ok := b.desk.Ledger.Tank(b.chosen)
	if !ok || t.Larvae == nil {
		return screen.Send(screen.Toast{Text: b.chosen + " holds no batch", Mood: screen.Refused})
	}
	return screen.Send(screen.Open{Name: string(batch), Arg: t.Larvae.Batch})
}

// acknowledge notes that the first unseen alarm was seen; alarms are never
// acknowledged in bulk.
func (b *Board) acknowledge() tea.Cmd {
	i := slices.IndexFunc(b.alarms, func(a model.Alarm) bool { return !a.Seen })
	if i < 0 {
		return nil
	}
	a := b.alarms[i]
	if _, err := b.desk.Enter(a.SeenFact()); err != nil {
		return screen.Send(screen.Toast{Text: err.Error(), Mood: screen.Refused})
	}
	return screen.Send(screen.Toast{Text: "seen: " + a.Tank + ", " + string(a.Kind) + ". " + a.Advice, Mood: screen.Saved})
}

// step moves the pointer as the tiles stand.
func (b *Board) step(direction string) {
	at := slices.IndexFunc(b.order, func(t model.TankNow) bool { return t.Tank.Name == b.chosen })
	cols := max(1, b.grid.cols)
	to := at + map[string]int{"up": -cols, "down": cols, "left": -1, "right": 1}[direction]
	if to >= 0 && to < len(b.order) {
		b.chosen = b.order[to].Tank.Name
	}
}
