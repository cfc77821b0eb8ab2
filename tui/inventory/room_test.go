package inventory

import (
	"fmt"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/tui/desk"
	"drainboard/tui/desk/desktest"
	"drainboard/tui/keys"
	"drainboard/tui/screen"
	"drainboard/tui/screen/screentest"
)

// opened is the screen at a desk at which nothing was entered yet: tanks K1 to K5
// and L1 to L4, Wednesday 25 November 2026 at 09:14.
func opened(t testing.TB) (*Inventory, *desk.Desk, *desktest.Keeper) {
	t.Helper()
	d, k := desktest.Empty(t)
	return New(d).(*Inventory), d, k
}

// typed presses keys and types words, and gives what the screen sent.
func typed(t testing.TB, s *Inventory, words ...string) []tea.Msg {
	t.Helper()
	next, sent := screentest.Type(s, words...)
	if next != screen.Screen(s) {
		t.Fatalf("%v opened another screen", words)
	}
	return sent
}

// pressed counts the keys of words as screentest types them.
func pressed(words ...string) int {
	n := 0
	for _, w := range words {
		n += len(keys.Normalise(keys.Msg(w)))
	}
	return n
}

func frame(s *Inventory) string { return screentest.Join(s.View(100, 36)) }

// written is every entry as "Mon 15:04 sentence".
func written(d *desk.Desk) []string {
	var lines []string
	for _, e := range d.Ledger.Entries() {
		lines = append(lines, fmt.Sprintf("%s %s", e.At.In(d.Ledger.Room().Zone).Format("Mon 15:04"), model.Sentence(e.Fact)))
	}
	return lines
}

// wholeRoom are the keys of the room's nine tanks: six of two batches, one ready,
// one washed, one dirty.
var wholeRoom = []string{
	"1", "P-05", "enter", "17", "enter", "26", "enter", "12800", "enter", "720", "enter",
	"1", "+", "+", "11900", "enter", "enter",
	"1", "+", "y1430", "enter", "12100", "enter", "enter",
	"1", "P-06", "enter", "4", "enter", "0630", "enter", "9800", "enter", "enter",
	"1", "+", "+", "9400", "enter", "enter",
	"1", "+", "+", "enter", "enter",
	"2", "23 16:00", "enter",
	"3", "enter",
	"4", "2026-11-24 17:10", "enter",
}
