package log

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/tui/desk"
	"drainboard/tui/desk/desktest"
	"drainboard/tui/keys"
	"drainboard/tui/screen/screentest"
)

func logOf(t testing.TB) (*Log, *desk.Desk, *desktest.Keeper) {
	t.Helper()
	d, k := desktest.Desk(t)
	return New(d, "").(*Log), d, k
}

// amended is the log of the invented room with an entry that is corrected and one
// that is void; their corrections are the last two entries.
func amended(t testing.TB) (*Log, *desk.Desk, *desktest.Keeper) {
	t.Helper()
	l, d, k := logOf(t)
	desktest.Enter(t, d, 0, &model.Temperature{Tank: "K3", Celsius: 27.2})
	desktest.Enter(t, d, 0, &model.Temperature{Tank: "K1", Celsius: 29.1})
	n := d.Ledger.Next() - 1
	desktest.Enter(t, d, 0, &model.Corrected{Entry: n - 1, Why: "misread", Set: map[string]any{"celsius": 27.4}})
	desktest.Enter(t, d, 0, &model.Corrected{Entry: n, Why: "wrong tank", Void: true})
	return l, d, k
}

// typed presses keys and types words, and runs what the screen sends itself.
func typed(t testing.TB, l *Log, words ...string) []tea.Msg {
	t.Helper()
	var out []tea.Msg
	for _, w := range words {
		keys := []string{w}
		if erased, ok := strings.CutPrefix(w, "erase "); ok {
			keys = slices.Repeat([]string{"backspace"}, len(erased))
		}
		_, sent := screentest.Type(l, keys...)
		out = append(out, settle(l, sent)...)
	}
	return out
}

// eraser is so many times Backspace.
func eraser(n int) string { return "erase " + strings.Repeat("x", n) }

// settle hands the screen its own messages until the search is done, and gives
// the others.
func settle(l *Log, sent []tea.Msg) []tea.Msg {
	var out []tea.Msg
	for len(sent) > 0 {
		msg := sent[0]
		sent = sent[1:]
		if _, own := msg.(goOn); !own {
			out = append(out, msg)
			continue
		}
		_, cmd := l.Update(msg)
		sent = append(sent, screentest.Run(cmd)...)
	}
	return out
}

func frame(l *Log) string { return screentest.Join(l.View(110, 30)) }

func last(d *desk.Desk) model.Entry {
	entries := d.Ledger.Entries()
	return entries[len(entries)-1]
}

func TestListIsNewestFirst(t *testing.T) {
	l, d, _ := amended(t)
	all := d.Ledger.Next() - 1
	rows := l.View(110, 12)
	for i, want := range []string{"LOG", "wrong tank", "misread", "VOID  K1 29.1", "CORRECTED  K3 27.2"} {
		if !strings.Contains(rows[i], want) {
			t.Errorf("row %d is %q; want %q in it", i, rows[i], want)
		}
	}
	if !strings.Contains(rows[1], fmt.Sprint(all)) || !strings.Contains(rows[1], "Wed 25 Nov 09:14  KT") {
		t.Errorf("the first row is %q; want entry %d with its moment and initials", rows[1], all)
	}
}

func TestPointerStaysWithItsEntry(t *testing.T) {
	l, d, _ := logOf(t)
	l.View(80, 20)
	typed(t, l, "down", "down")
	chosen := l.list.chosen
	desktest.Enter(t, d, 0, &model.Noted{Text: "one more"})
	l.View(80, 20)
	if got := l.at(l.list.index); got != chosen {
		t.Errorf("the pointer is on entry %d; want it still on %d", got, chosen)
	}
	typed(t, l, "end")
	if got := l.at(l.list.index); got != 1 {
		t.Errorf("End goes to entry %d; want 1", got)
	}
	typed(t, l, "home")
	if got := l.at(l.list.index); got != d.Ledger.Next()-1 {
		t.Errorf("Home goes to entry %d; want the newest", got)
	}
}

func TestEntryInFull(t *testing.T) {
	l, d, _ := amended(t)
	n := d.Ledger.Next() - 1
	for entry, want := range map[int][]string{
		n - 3: {"temperature", "CORRECTED", "K3 27.2 °C", "Wed 25 Nov 2026 09:14:05 -05:00", "at once", "KT", "celsius          27.2 °C", "Reads now", "K3 27.4 °C", fmt.Sprint("entry ", n-1), "misread"},
		n - 2: {"VOID", "K1 29.1 °C", fmt.Sprint("entry ", n), "wrong tank"},
		n - 1: {"corrected", "set              celsius 27.4", "of which it speaks", "K3 27.2 °C"},
	} {
		l.page = &page{n: entry}
		for _, w := range want {
			if f := frame(l); !strings.Contains(f, w) {
				t.Errorf("entry %d lacks %q:\n%s", entry, w, f)
			}
		}
	}
}

func TestEscapeAsksWhereSomethingWasTyped(t *testing.T) {
	l, _, _ := logOf(t)
	openEntry(t, l, 0)
	typed(t, l, "x", "a reason", "esc")
	if l.slip == nil || !strings.Contains(frame(l), "Throw away") {
		t.Fatalf("frame\n%s", frame(l))
	}
	typed(t, l, "enter", "esc")
	if l.slip != nil || l.page != nil {
		t.Error("the levels do not close one after the other")
	}
	typed(t, l, "+", "esc")
	if l.pick != nil {
		t.Error("Esc does not close the kinds")
	}
}

func TestEmptyLog(t *testing.T) {
	d, _ := desktest.Empty(t)
	l := New(d, "").(*Log)
	if f := frame(l); !strings.Contains(f, "nothing was entered yet") {
		t.Errorf("frame\n%s", f)
	}
	typed(t, l, "enter", "end", "down")
	if l.page != nil {
		t.Error("an entry is open where there is none")
	}
}

func TestKeyTables(t *testing.T) {
	l, _, _ := amended(t)
	check := func(name string) {
		if got := keys.Problems(l.Keys()); len(got) > 0 {
			t.Errorf("%s: %v", name, got)
		}
	}
	check("list")
	typed(t, l, "s")
	check("search")
	typed(t, l, "esc", "enter")
	check("entry")
	typed(t, l, "x")
	check("void")
	typed(t, l, "esc", "esc", "+")
	check("kinds")
}

func TestEverySize(t *testing.T) {
	l, d, _ := amended(t)
	desktest.Enter(t, d, 0, &model.Noted{Tank: "K3", Text: "室\u0301 wide \U0001F980 \u202e and\nbroken " + strings.Repeat("long ", 80)})
	screentest.EverySize(t, l.View)
	typed(t, l, "s", "27")
	screentest.EverySize(t, l.View)
	typed(t, l, "esc", "home", "enter")
	screentest.EverySize(t, l.View)
	typed(t, l, "e", "x")
	screentest.EverySize(t, l.View)
	typed(t, l, "esc", "enter", "esc", "+")
	screentest.EverySize(t, l.View)
}
