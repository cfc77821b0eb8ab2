package log

import (
	"strconv"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/tui/desk"
	"drainboard/tui/screen"
)

// seek is the search: what is typed and what was found so far. It looks at the
// entries from the newest to the first, a piece at a time.
type seek struct {
	field  screen.Field
	typing bool
	words  []word
	hits   []int // entries found, the newest first
	next   int   // the entry to look at next; 0 when all were
	turn   int   // goes up when the search begins anew, so that an old piece is dropped
}

// piece is how many entries are looked at between two keys; far fewer than a
// person would notice.
const piece = 2000

// goOn asks for the next piece of a search.
type goOn struct{ turn int }

const mostSearch = 80

func newSeek() seek { return seek{field: screen.NewField(screen.Line, mostSearch)} }

// on says that the list is narrowed.
func (s *seek) on() bool { return len(s.words) > 0 }

// done says that every entry was looked at.
func (s *seek) done() bool { return s.next == 0 }

func (s *seek) clear() {
	*s = seek{field: newSeek().field, turn: s.turn + 1}
}

// typed takes a key for the search and looks at the first piece at once.
func (s *seek) typed(d *desk.Desk, key tea.KeyMsg) tea.Cmd {
	field, out := s.field.Update(key)
	switch {
	case out == screen.TakeBack:
		s.clear()
		return nil
	case out == screen.Rejected:
		return screen.Send(screen.Beep{Times: 1})
	}
	changed := field.Text() != s.field.Text()
	s.field = field
	if !changed {
		return nil
	}
	return s.begin(d, field.Text())
}

// begin starts the search for words.
func (s *seek) begin(d *desk.Desk, typed string) tea.Cmd {
	s.turn++
	s.words, s.hits, s.next = wordsOf(d.Ledger.Room(), typed), nil, 0
	if !s.on() {
		return nil
	}
	s.next = len(d.Ledger.Entries())
	return s.look(d)
}

// look looks at one piece and asks for the next.
func (s *seek) look(d *desk.Desk) tea.Cmd {
	entries, zone := d.Ledger.Entries(), d.Ledger.Room().Zone
	for range piece {
		if s.next == 0 {
			return nil
		}
		if e := entries[s.next-1]; s.matches(e, zone) {
			s.hits = append(s.hits, e.N)
		}
		s.next--
	}
	return screen.Send(goOn{s.turn})
}

// goOn looks at the next piece, unless the search began anew since it was asked
// for.
func (s *seek) goOn(d *desk.Desk, asked goOn) tea.Cmd {
	if asked.turn != s.turn || s.next == 0 {
		return nil
	}
	return s.look(d)
}

// again takes up a search whose last piece went to another screen.
func (s *seek) again(d *desk.Desk) tea.Cmd {
	if s.next == 0 {
		return nil
	}
	s.turn++
	return s.look(d)
}

// matches says that an entry holds every word.
func (s *seek) matches(e model.Entry, zone *time.Location) bool {
	sentence := ""
	for _, w := range s.words {
		if w.plain(e, zone) {
			continue
		}
		if w.tank != "" {
			return false
		}
		if sentence == "" {
			sentence = strings.ToLower(model.Sentence(e.Fact))
		}
		if !strings.Contains(sentence, w.lower) {
			return false
		}
	}
	return true
}

// word is one word of a search.
type word struct {
	lower string
	tank  string // the tank it names, empty for none
	n     int    // the entry it may name, 0 for none
	date  bool   // it may be part of a date
}

func wordsOf(room *model.Room, typed string) []word {
	var words []word
	for _, s := range strings.Fields(strings.ToLower(typed)) {
		w := word{lower: s, date: strings.Trim(s, "0123456789-:") == "" && strings.ContainsAny(s, "-:")}
		if i, ok := room.Tank(s); ok {
			w.tank = room.Tanks[i].Name
		}
		w.n, _ = strconv.Atoi(s)
		words = append(words, w)
	}
	return words
}

// plain says that a word is in what need not be worded: the tank, the kind, the
// number, the initials or the date. A word that is a tank's name means the tank
// alone, so that C1 does not find C12.
func (w word) plain(e model.Entry, zone *time.Location) bool {
	switch {
	case w.tank != "":
		return model.SpeaksOf(e.Fact, w.tank)
	case strings.Contains(string(e.Kind()), w.lower), w.n == e.N && w.n > 0, strings.EqualFold(e.By, w.lower):
		return true
	case w.date:
		return strings.Contains(e.At.In(zone).Format("2006-01-02 15:04"), w.lower)
	}
	return false
}
