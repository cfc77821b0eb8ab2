package log

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"drainboard/model"
	"drainboard/tui/desk/desktest"
	"drainboard/tui/screen"
	"drainboard/tui/screen/screentest"
)

// found are the entries a search lists, worded.
func found(l *Log) []string {
	var out []string
	for i := range l.count() {
		out = append(out, model.Sentence(l.entry(l.at(i)).Fact))
	}
	return out
}

func TestSearch(t *testing.T) {
	l, d, _ := logOf(t)
	desktest.Enter(t, d, 0, &model.Noted{Text: "Header filter changed"})
	desktest.Enter(t, d, 0, &model.Noted{Tank: "K1", Text: "header near K12"})
	cases := map[string]struct {
		typed string
		holds func(model.Entry) bool // the obvious way, entry by entry
	}{
		"a tank":     {"k1", func(e model.Entry) bool { return model.SpeaksOf(e.Fact, "K1") }},
		"a kind":     {"sizes", func(e model.Entry) bool { return e.Kind() == model.KindSizes }},
		"initials":   {"tr", func(e model.Entry) bool { return e.By == "TR" || contains(e, "tr") }},
		"a sentence": {"HEADER", func(e model.Entry) bool { return contains(e, "header") }},
		"a date": {"2026-11-20", func(e model.Entry) bool {
			return strings.HasPrefix(e.At.In(d.Ledger.Room().Zone).Format(time.RFC3339), "2026-11-20")
		}},
		"a day": {"11-20", func(e model.Entry) bool {
			return strings.HasPrefix(e.At.In(d.Ledger.Room().Zone).Format(time.RFC3339), "2026-11-20")
		}},
		"two words": {"k3 moved", func(e model.Entry) bool { return e.Kind() == model.KindMoved && model.SpeaksOf(e.Fact, "K3") }},
		"a figure":  {"27.4", func(e model.Entry) bool { return contains(e, "27.4") }},
		"nothing":   {"zzz", func(model.Entry) bool { return false }},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			typed(t, l, "s", c.typed)
			var want []string
			for _, e := range slices.Backward(d.Ledger.Entries()) {
				if c.holds(e) {
					want = append(want, model.Sentence(e.Fact))
				}
			}
			if got := found(l); !slices.Equal(got, want) {
				t.Errorf("found %d, want %d:\n%q\n%q", len(got), len(want), got, want)
			}
			if name != "nothing" && len(want) == 0 {
				t.Error("the case finds nothing at all")
			}
			typed(t, l, "esc")
		})
	}
	typed(t, l, "s", fmt.Sprint(3))
	if got := l.at(l.count() - 1); got > 3 {
		t.Errorf("searching for 3 ends at entry %d; want entry 3 among the found", got)
	}
}

func contains(e model.Entry, s string) bool {
	return strings.Contains(strings.ToLower(model.Sentence(e.Fact)), s) || strings.Contains(string(e.Kind()), s)
}

func TestSearchKeys(t *testing.T) {
	l, d, _ := logOf(t)
	typed(t, l, "/", "look")
	if !l.Capturing() {
		t.Fatal("the search does not capture letters")
	}
	typed(t, l, "enter")
	if l.Capturing() || !strings.Contains(frame(l), "search: look") {
		t.Errorf("Enter does not go to the list:\n%s", frame(l))
	}
	typed(t, l, "down", "enter")
	if l.page == nil || l.entry(l.page.n).Kind() != model.KindLook {
		t.Fatal("Enter in the found list opens no look")
	}
	first := l.page.n
	typed(t, l, "right")
	if l.entry(l.page.n).Kind() != model.KindLook || l.page.n >= first {
		t.Errorf("older goes from entry %d to %d, a %s", first, l.page.n, l.entry(l.page.n).Kind())
	}
	typed(t, l, "left")
	if l.page.n != first {
		t.Errorf("newer goes back to entry %d; want %d", l.page.n, first)
	}
	typed(t, l, "esc", "esc")
	if l.seek.on() || l.count() != d.Ledger.Next()-1 {
		t.Error("Esc in the list keeps the search")
	}
	l.View(80, 20)
	if l.at(l.list.index) != first {
		t.Errorf("the pointer is on entry %d; want %d, which was read", l.at(l.list.index), first)
	}
	if sent := typed(t, l, "esc"); len(sent) != 1 || sent[0] != (screen.Back{}) {
		t.Errorf("sent %v; want Back", sent)
	}
	typed(t, l, "s", "x", "backspace", "backspace")
	if l.seek.typing {
		t.Error("Backspace in an empty search does not close it")
	}
}

// A long search goes on in pieces, from messages of its own and, where those went
// to another screen, from the clock; letters typed meanwhile begin it anew.
func TestSearchInPieces(t *testing.T) {
	l, d, _ := many(t, 3*piece)
	all := d.Ledger.Next() - 1
	_, sent := screentest.Type(l, "s", "r", "e")
	if len(l.seek.hits) != piece || l.seek.done() {
		t.Fatalf("the first piece found %d, done %v; want %d and not", len(l.seek.hits), l.seek.done(), piece)
	}
	if !strings.Contains(frame(l), "searching") {
		t.Errorf("it is not said that the search goes on:\n%s", frame(l))
	}
	l.Update(sent[len(sent)-2]) // asked for before the second letter
	if len(l.seek.hits) != piece {
		t.Errorf("an old piece was looked at: %d found", len(l.seek.hits))
	}
	_, cmd := l.Update(screen.Tick{Now: d.Now})
	settle(l, screentest.Run(cmd))
	if !l.seek.done() || len(l.seek.hits) != all || !slices.IsSortedFunc(l.seek.hits, func(a, b int) int { return b - a }) {
		t.Errorf("found %d of %d, done %v", len(l.seek.hits), all, l.seek.done())
	}
}

func TestSearchFollowsTheLedger(t *testing.T) {
	l, d, _ := logOf(t)
	typed(t, l, "s", "airlift", "enter")
	if l.count() != 0 || !strings.Contains(frame(l), "nothing found") {
		t.Fatalf("frame\n%s", frame(l))
	}
	desktest.Enter(t, d, 0, &model.Noted{Text: "airlift turned down"})
	if !strings.Contains(frame(l), "airlift turned down") {
		t.Errorf("a new entry is not found:\n%s", frame(l))
	}
}
