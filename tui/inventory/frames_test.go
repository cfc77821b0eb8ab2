package inventory

import (
	"fmt"
	"strings"
	"testing"

	"drainboard/model"
	"drainboard/tui/desk/desktest"
	"drainboard/tui/screen/screentest"
)

func TestEverySize(t *testing.T) {
	s, _, _ := opened(t)
	screentest.EverySize(t, s.View)
	typed(t, s, "h", "e\u0301te\u0301 \u5317\u4eac", "enter", "99", "enter", "never", "enter", "12800")
	screentest.EverySize(t, s.View)
	s, d, _ := opened(t)
	typed(t, s, wholeRoom...)
	screentest.EverySize(t, s.View)
	d.Keeper = &failing{left: 2}
	typed(t, s, "enter")
	screentest.EverySize(t, s.View)
	typed(t, s, "esc")
	screentest.EverySize(t, s.View)
}

// Names of tanks and what is pasted may be hostile.
func TestHostileTexts(t *testing.T) {
	d, _ := desktest.Empty(t)
	for i, name := range []string{"\x1b[31mred", "\u0301x", "a\u200db\u202ec", strings.Repeat("long ", 30), "\u5317\u4eac\u6c34", "Éte\u0301"} {
		d.Ledger.Room().Tanks[i].Name = name
	}
	d.Ledger = model.NewLedger(d.Ledger.Room())
	s := New(d).(*Inventory)
	for _, name := range []string{"\x1b]0;x\x07P", "P\u0301\u0301", "\u5317\u4eac", "e\u0301t\u00e9"} {
		typed(t, s, "h")
		s.Update(keyPaste(name))
		typed(t, s, "enter", "7", "enter", "20", "enter", "enter", "enter")
	}
	screentest.EverySize(t, s.View)
	typed(t, s, "*")
	screentest.EverySize(t, s.View)
	if strings.Contains(frame(s), "\x1b") {
		t.Error("an escape sequence reached the frame")
	}
}

// Every cell of a room of two hundred tanks can be reached, and frames stay quick
// enough to be drawn at each key.
func TestLargeRoom(t *testing.T) {
	d, _ := desktest.Empty(t)
	d.Ledger.Room().Tanks = nil
	for i := range 200 {
		d.Ledger.Room().Tanks = append(d.Ledger.Room().Tanks, model.Tank{Name: fmt.Sprint("T", i+1), Litres: 100})
	}
	d.Ledger = model.NewLedger(d.Ledger.Room())
	s := New(d).(*Inventory)
	typed(t, s, "h", "P-01", "enter", "9", "enter", "20", "enter", "enter", "enter")
	for range 199 {
		typed(t, s, "+", "+", "+", "enter", "enter")
	}
	if s.phase != asking {
		t.Fatalf("the last row does not lead to the review:\n%s", frame(s))
	}
	typed(t, s, "enter")
	if got := len(d.Ledger.Entries()); got != 200 {
		t.Errorf("%d entries; want 200", got)
	}
}
