package season

import (
	"slices"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/model/season"
	"drainboard/tui/desk"
	"drainboard/tui/keys"
	"drainboard/tui/screen"
)

// page is one of the pages of the screen.
type page int

const (
	batchPage page = iota
	habitPage
	pages // how many there are
)

// Season is the screen of all batches.
type Season struct {
	desk    *desk.Desk
	page    page
	year    int    // in which the batches hatched; 0 for all
	chosen  string // name of the batch under the pointer
	habit   int    // index in season.Habits
	outcome int    // index in season.Outcomes
	known   known
}

// known are the figures as they were last worked out.
type known struct {
	ledger *model.Ledger
	next   int
	minute time.Time
	all    season.Season
	year   int
	shown  season.Season
}

// New returns the screen with the youngest batch under the pointer.
func New(d *desk.Desk) screen.Screen {
	s := &Season{desk: d}
	if n := len(s.shown().Batches); n > 0 {
		s.chosen = s.shown().Batches[n-1].Name
	}
	return s
}

// shown is the season of the year that is shown. It is worked out anew when an
// entry was made or the minute has changed.
func (s *Season) shown() season.Season {
	d, k := s.desk, &s.known
	minute := d.Now.Truncate(time.Minute)
	if k.ledger != d.Ledger || k.next != d.Ledger.Next() || !k.minute.Equal(minute) {
		*k = known{ledger: d.Ledger, next: d.Ledger.Next(), minute: minute, all: season.Of(d.Ledger, d.Now), year: -1}
	}
	if k.year != s.year {
		k.year, k.shown = s.year, k.all
		if s.year != 0 {
			k.shown = k.all.In(s.year)
		}
	}
	return k.shown
}

// The actions of the screen.
const (
	turn    keys.Action = "page"
	outcome keys.Action = "outcome"
	year    keys.Action = "year"
	batch   keys.Action = "batch"
	move    keys.Action = "move"
)

// Keys is what the keys do now.
func (s *Season) Keys() keys.Table {
	t := keys.Table{Title: "Season", Bindings: []keys.Binding{
		{Action: turn, Keys: []string{"right", "left", "tab"}, Label: "←→", Short: "page", Long: "Turn between the batches and the habits."},
		{Action: batch, Keys: []string{"enter"}, Short: "batch", Long: "Open the batch under the pointer."},
		{Action: outcome, Keys: []string{"o"}, Short: "outcome", Long: "Hold the habits against survival or against growth in the plot."},
		{Action: year, Keys: []string{"y"}, Short: "year", Long: "Show the batches of one year after the other, then all."},
		{Action: move, Keys: []string{"up", "down", "pgup", "pgdown", "home", "end"}, Label: "↑↓", Short: "choose", Long: "Choose a batch, or a habit to plot."},
	}}
	if s.page == batchPage {
		t = t.Off(outcome, "it is for the page of the habits")
	} else {
		t = t.Off(batch, "it is for the page of the batches")
	}
	if len(s.shown().Batches) == 0 {
		t = t.Off(batch, "there is no batch")
	}
	if len(s.known.all.Years()) < 2 {
		t = t.Off(year, "all batches hatched in one year")
	}
	return t
}

// Title is the name of the screen.
func (s *Season) Title() string { return "Season" }

// Init has nothing to prepare.
func (s *Season) Init() tea.Cmd { return nil }

// Capturing is false: nothing is typed here.
func (s *Season) Capturing() bool { return false }

// Update takes a key.
func (s *Season) Update(msg tea.Msg) (screen.Screen, tea.Cmd) {
	key, ok := msg.(tea.KeyMsg)
	if !ok {
		return s, nil
	}
	table := s.Keys()
	if why, off := table.Refused(key); off {
		return s, screen.Send(screen.Toast{Text: "not now: " + why, Mood: screen.Refused})
	}
	action, _ := table.Match(key)
	switch {
	case key.Type == tea.KeyEsc:
		return s, screen.Send(screen.Back{})
	case action == turn:
		s.page = (s.page + 1) % pages
	case action == batch:
		if b, ok := s.pointed(); ok {
			return s, screen.Send(screen.Open{Name: "batch", Arg: b.Name})
		}
	case action == outcome:
		s.outcome = (s.outcome + 1) % len(season.Outcomes())
	case action == year:
		s.nextYear()
	case action == move:
		s.move(key)
	}
	return s, nil
}

// nextYear goes from all years to the latest, and back in time from there.
func (s *Season) nextYear() {
	years := s.known.all.Years()
	i := slices.Index(years, s.year) // -1 for all
	s.year = 0
	if i+1 < len(years) {
		s.year = years[i+1]
	}
	s.shown()
}

// move moves the pointer of the page.
func (s *Season) move(key tea.KeyMsg) {
	if s.page == habitPage {
		l := screen.List{Items: make([]string, len(season.Habits())), Chosen: s.habit}
		l, _ = l.Update(key)
		s.habit = l.Chosen
		return
	}
	batches := s.shown().Batches
	l := screen.List{Items: make([]string, len(batches)), Chosen: max(0, s.place())}
	if l, _ = l.Update(key); l.Chosen < len(batches) {
		s.chosen = batches[l.Chosen].Name
	}
}

// place is the pointer's place among the batches that are shown; the last where the
// chosen one is not among them.
func (s *Season) place() int {
	batches := s.shown().Batches
	i := slices.IndexFunc(batches, func(b season.Batch) bool { return b.Name == s.chosen })
	if i < 0 {
		return len(batches) - 1
	}
	return i
}

// pointed is the batch under the pointer.
func (s *Season) pointed() (season.Batch, bool) {
	i := s.place()
	if i < 0 {
		return season.Batch{}, false
	}
	return s.shown().Batches[i], true
}
