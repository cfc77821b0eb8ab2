package log

import (
	"slices"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/tui/desk"
	"drainboard/tui/factform"
	"drainboard/tui/keys"
	"drainboard/tui/screen"
)

// Log is the screen of every entry.
type Log struct {
	desk *desk.Desk
	list list
	seek seek
	page *page          // the entry that is read in full, nil for none
	pick *screen.List   // the kinds to choose a late entry from, nil where it is closed
	slip *factform.Slip // the form that is open, nil for none
	done func(factform.Form) (tea.Cmd, error)

	known known
}

// New returns the log of a desk.
func New(d *desk.Desk, _ string) screen.Screen { return &Log{desk: d, seek: newSeek()} }

// known is what corrections say of the entries. It is made anew when an entry
// was made.
type known struct {
	ledger *model.Ledger
	made   int
	void   map[int]bool
	by     map[int][]int // corrections in force, by the entry they speak of
}

// refresh takes in what was entered since the last frame.
func (l *Log) refresh() {
	ledger := l.desk.Ledger
	if l.known.ledger == ledger && l.known.made == ledger.Next() {
		return
	}
	l.known = known{ledger, ledger.Next(), ledger.Void(), ledger.CorrectedBy()}
	if l.seek.on() {
		l.seek.begin(l.desk, l.seek.field.Text())
	}
}

func (l *Log) entry(n int) model.Entry { return l.desk.Ledger.Entries()[n-1] }

// The actions of the screen.
const (
	read   keys.Action = "read"
	search keys.Action = "search"
	late   keys.Action = "late"
	scroll keys.Action = "scroll"
	void   keys.Action = "void"
	edit   keys.Action = "edit"
	older  keys.Action = "older"
	newer  keys.Action = "newer"
	choose keys.Action = "choose"
	keep   keys.Action = "keep"
)

// Keys is what the keys do now.
func (l *Log) Keys() keys.Table {
	switch {
	case l.slip != nil:
		return l.slip.Keys()
	case l.pick != nil:
		return keys.Table{Title: "Late entry", Bindings: []keys.Binding{
			{Action: choose, Keys: []string{"enter"}, Short: "choose", Long: "Enter a fact of the chosen kind."},
			{Action: scroll, Keys: []string{"up", "down", "pgup", "pgdown", "home", "end"}, Label: "arrows", Short: "kinds", Long: "Move the pointer."},
		}}
	case l.page != nil:
		return l.pageKeys()
	case l.seek.typing:
		return keys.Table{Title: "Search", Bindings: []keys.Binding{
			{Action: keep, Keys: []string{"enter"}, Short: "to the list", Long: "Keep the search and go to what was found."},
			{Action: scroll, Keys: []string{"up", "down", "pgup", "pgdown"}, Label: "arrows", Short: "list", Long: "Move the pointer through what was found."},
		}}
	}
	return keys.Table{Title: "Log", Bindings: []keys.Binding{
		{Action: read, Keys: []string{"enter"}, Short: "read", Long: "Read the chosen entry in full; there it can be corrected."},
		{Action: search, Keys: []string{"s", "/"}, Short: "search", Long: "Search for words: a tank, a kind, initials, a date as 2026-11-20, any part of the sentence."},
		{Action: late, Keys: []string{"+"}, Short: "late entry", Long: "Enter what happened earlier."},
		{Action: scroll, Keys: []string{"up", "down", "pgup", "pgdown", "home", "end"}, Label: "arrows", Short: "move", Long: "Move the pointer."},
	}}
}

// Title is the name of the screen.
func (l *Log) Title() string { return "Log" }

// Init has nothing to prepare.
func (l *Log) Init() tea.Cmd { return nil }

// Capturing is true while text is typed.
func (l *Log) Capturing() bool { return l.slip != nil || l.seek.typing }

// Update takes a key, or goes on with a search.
func (l *Log) Update(msg tea.Msg) (screen.Screen, tea.Cmd) {
	l.refresh()
	switch msg := msg.(type) {
	case tea.KeyMsg:
		return l, l.onKey(msg)
	case goOn:
		return l, l.seek.goOn(l.desk, msg)
	case screen.Tick:
		return l, l.seek.again(l.desk)
	}
	return l, nil
}

func (l *Log) onKey(key tea.KeyMsg) tea.Cmd {
	switch {
	case l.slip != nil:
		return l.onSlip(key)
	case l.pick != nil:
		return l.onPick(key)
	case l.page != nil:
		return l.onPage(key)
	case l.seek.typing:
		return l.onSearch(key)
	}
	return l.onList(key)
}

// onList takes a key over the list.
func (l *Log) onList(key tea.KeyMsg) tea.Cmd {
	action, _ := l.Keys().Match(key)
	switch {
	case key.Type == tea.KeyEsc && l.seek.on():
		l.seek.clear()
		return nil
	case key.Type == tea.KeyEsc:
		return screen.Send(screen.Back{})
	case action == read:
		l.open()
	case action == search:
		l.seek.typing = true
	case action == late:
		l.pick = &screen.List{Items: lateItems()}
	case action == scroll:
		l.list.move(key, l.count())
		l.list.chosen = l.at(l.list.index)
	}
	return nil
}

// onSearch takes a key while the search is typed.
func (l *Log) onSearch(key tea.KeyMsg) tea.Cmd {
	action, _ := l.Keys().Match(key)
	switch {
	case key.Type == tea.KeyEsc:
		l.seek.clear()
		return nil
	case action == keep:
		l.seek.typing = false
		return nil
	case action == scroll:
		l.list.move(key, l.count())
		l.list.chosen = l.at(l.list.index)
		return nil
	}
	return l.seek.typed(l.desk, key)
}

// open reads the entry under the pointer.
func (l *Log) open() {
	l.place()
	if n := l.at(l.list.index); n > 0 {
		l.page = &page{n: n}
	}
}

// count is how many entries are listed, and at is the entry of a row, from 0; 0
// where there is none.
func (l *Log) count() int {
	if l.seek.on() {
		return len(l.seek.hits)
	}
	return len(l.desk.Ledger.Entries())
}

func (l *Log) at(row int) int {
	switch {
	case row < 0 || row >= l.count():
		return 0
	case l.seek.on():
		return l.seek.hits[row]
	}
	return l.count() - row
}

// place finds the row of the chosen entry again, which entries made meanwhile
// and a search have moved; the newest where it is not listed.
func (l *Log) place() {
	l.list.index = 0
	switch n := l.list.chosen; {
	case n == 0:
	case l.seek.on():
		i, found := slices.BinarySearchFunc(l.seek.hits, n, func(a, b int) int { return b - a })
		if found {
			l.list.index = i
		}
	case n <= l.count():
		l.list.index = l.count() - n
	}
}

// say shows a line for a while.
func say(text string, mood screen.Mood) tea.Cmd {
	return screen.Send(screen.Toast{Text: text, Mood: mood})
}
