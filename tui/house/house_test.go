package house

import (
	"strings"
	"testing"
	"time"

	"drainboard/model"
	"drainboard/tui/desk"
	"drainboard/tui/keys"
	"drainboard/tui/screen"
	"drainboard/tui/screen/screentest"
	"drainboard/tui/theme"
)

func shown(t *testing.T) *House {
	t.Helper()
	room := &model.Room{
		Name: "Test\x1b[31m room", Zone: time.UTC, House: model.DefaultHouse(), Algae: model.DefaultAlgae(),
		Tanks: []model.Tank{{Name: "T1", Litres: 120}},
	}
	room.House.ChangeHours = 36
	return New(&desk.Desk{Ledger: model.NewLedger(room), Now: time.Unix(0, 0), Theme: theme.Bare(false)})
}

func TestADifferentRuleIsMarked(t *testing.T) {
	frame := screentest.Join(shown(t).View(120, 40))
	for _, want := range []string{" * change_hours", "36 h", "   grace_hours", "day 12: 200 or 250", "T1 120 L", "UTC"} {
		if !strings.Contains(frame, want) {
			t.Errorf("%q does not show in\n%s", want, frame)
		}
	}
	if strings.Contains(frame, "\x1b") {
		t.Error("an escape sequence of the room's name reached the screen")
	}
}

func TestEverySize(t *testing.T) { screentest.EverySize(t, shown(t).View) }

func TestKeys(t *testing.T) {
	s := shown(t)
	for _, p := range keys.Problems(s.Keys(), keys.Everywhere()) {
		t.Error(p)
	}
	s.View(80, 10)
	before := screentest.Join(s.View(80, 10))
	screentest.Type(s, "pgdown")
	if screentest.Join(s.View(80, 10)) == before {
		t.Error("PgDn does not scroll")
	}
	if _, sent := screentest.Type(s, "esc"); len(sent) != 1 || sent[0] != (screen.Back{}) {
		t.Errorf("esc sent %v; want to go back", sent)
	}
}
