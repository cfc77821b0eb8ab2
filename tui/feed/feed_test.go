package feed

import (
	"fmt"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/model/count"
	"drainboard/tui/keys"
	"drainboard/tui/screen"
	"drainboard/tui/screen/screentest"
)

// frame is what is seen at 100x30.
func (f *Feed) frame() string { return screentest.Join(f.View(100, 30)) }

func sees(t *testing.T, f *Feed, wants ...string) {
	t.Helper()
	got := f.frame()
	for _, want := range wants {
		if !strings.Contains(got, want) {
			t.Errorf("%q is not in\n%s", want, got)
		}
	}
}

func seesNot(t *testing.T, f *Feed, wants ...string) {
	t.Helper()
	got := f.frame()
	for _, want := range wants {
		if strings.Contains(got, want) {
			t.Errorf("%q is in\n%s", want, got)
		}
	}
}

// last is the last entry kept.
func (w work) last() model.Fact {
	if len(w.kept.entries) == 0 {
		return nil
	}
	return w.kept.entries[len(w.kept.entries)-1].Fact
}

// row is the row of a tank.
func row(f *Feed, tank string) string {
	for line := range strings.SplitSeq(f.frame(), "\n") {
		if words := strings.Fields(strings.TrimPrefix(line, "►")); len(words) > 1 && words[0] == tank {
			return line
		}
	}
	return ""
}

func TestFedIsEnteredAsShown(t *testing.T) {
	w := busy(t)
	f := w.screen()
	if !strings.Contains(row(f, "K1"), "280      162") {
		t.Fatalf("row of K1: %q", row(f, "K1"))
	}
	screentest.Press(t, f, fed)
	got, ok := w.last().(*model.Fed)
	if !ok || got.Tank != "K1" || got.Litres["iso"] != 0.28 || got.Litres["chaet"] != 0.162 || len(got.Litres) != 2 {
		t.Fatalf("entered %+v; want K1 with 280 mL and 162 mL", w.last())
	}
	sees(t, f, "✓ K1 fed: iso 280 mL, chaet 162 mL, saved as entry 20", "✓ fed 09:14")
	n := len(w.kept.entries)
	_, sent := screentest.Press(t, f, fed)
	if len(w.kept.entries) != n || len(sent) != 1 || sent[0] != (screen.Beep{Times: 1}) {
		t.Errorf("a second Enter enters it again, or sends %v", sent)
	}
	sees(t, f, "K1 is entered as fed already, entry 20")
	if _, err := w.desk.Undo(); err != nil {
		t.Fatal(err)
	}
	f.Update(screen.Tick{Now: w.desk.Now})
	if !strings.Contains(row(f, "K1"), "280      162") || strings.Contains(row(f, "K1"), "fed") {
		t.Errorf("after the undo the row of K1 is %q", row(f, "K1"))
	}
}

func TestNothingLooksSavedThatIsNot(t *testing.T) {
	w := busy(t)
	f := w.screen()
	w.kept.fail = errDisk
	screentest.Press(t, f, fed)
	sees(t, f, "not saved: write journal/2026-11.toml: no space left on device")
	seesNot(t, f, "✓")
	screentest.Type(f, "f", "enter")
	sees(t, f, "FEED 1 of 3", "not saved")
	w.kept.fail = nil
	screentest.Type(f, "enter")
	sees(t, f, "FEED 2 of 3", "✓ K1 fed")

	w.kept.fail = errDisk
	screentest.Type(f, "esc", "c", "iso", "enter", "50", "enter", "neubauer-all", "enter", "1", "enter")
	sees(t, f, "COUNT A CULTURE", "not saved", "counts   50")
	w.kept.fail = nil
	screentest.Type(f, "enter")
	sees(t, f, "iso 55 556 cells/mL saved")
}

func TestOneByOne(t *testing.T) {
	w := busy(t)
	f := w.screen()
	before := len(w.kept.entries)
	screentest.Type(f, "f")
	sees(t, f, "FEED 1 of 3", "K1  batch P-03, day 18")
	screentest.Type(f, "enter", "+")
	sees(t, f, "FEED 3 of 3")
	screentest.Type(f, "-")
	sees(t, f, "FEED 2 of 3", "K2  batch P-04")
	screentest.Type(f, "+", "enter")
	sees(t, f, "all gone through", "fed, 2: K1, K6", "not fed yet, 1: K2")
	if got := len(w.kept.entries) - before; got != 2 {
		t.Errorf("%d entries; want one a confirmed tank, 2", got)
	}
	screentest.Type(f, "enter")
	sees(t, f, "FEED 1 of 6 tanks now", "TANK")
}

func TestLeftIsCountedOnTheWay(t *testing.T) {
	w := busy(t)
	f := w.screen()
	screentest.Type(f, "f", "enter", "r", "96", "enter", "sixteen-all", "enter", "9.9", "enter")
	sees(t, f, "FEED 2 of 3", "K2 has left 14 850 cells/mL saved")
	if got := w.last().(*model.Cells); got.Tank != "K2" {
		t.Errorf("counted %s, want K2", got.Tank)
	}
	screentest.Type(f, "+", "-")
	sees(t, f, "add 150: pour iso 2.6 mL, chaet 1.0 mL")
	screentest.Type(f, "r", "esc")
	sees(t, f, "FEED 2 of 3")
}

// What was carried along stays true while tanks are entered.
func TestRoundStandsWhileTanksAreFed(t *testing.T) {
	w := busy(t)
	f := w.screen()
	screentest.Type(f, "l", "0.2", "enter", "enter", "enter")
	before := row(f, "K6")
	w.desk.Now = w.desk.Now.Add(20 * time.Minute)
	screentest.Press(t, f, fed)
	if after := row(f, "K6"); after != before {
		t.Errorf("row of K6 went from\n%s\nto\n%s", before, after)
	}
	w.desk.Now = w.desk.Now.Add(50 * time.Minute)
	f.Update(screen.Tick{Now: w.desk.Now})
	if got := row(f, "K1"); !strings.Contains(got, "fed 50min ago, next in 23h10") {
		t.Errorf("an hour after the round was made, the row of K1 is %q", got)
	}
	if _, left := f.leftOf("chaet"); left {
		t.Error("chaet has litres that nobody typed")
	}
	if left, _ := f.leftOf("iso"); left < 0.1329 || left > 0.1331 {
		t.Errorf("iso left %v L; want the 0.2 less the 0.067 poured", left)
	}
}

func TestTanksThatGetNothingSayWhy(t *testing.T) {
	f := busy(t).screen()
	for tank, want := range map[string]string{
		"K5": "enough there: pour nothing",
		"K3": "fed 2h00 ago, next in 22h00",
		"K4": "no ration before day 2",
	} {
		if got := row(f, tank); !strings.Contains(got, want) {
			t.Errorf("row of %s: %q, want %q", tank, got, want)
		}
	}
	for tank, want := range map[string]string{
		"K5": "K5 has enough: nothing is to be poured",
		"K3": "K3 was fed 2 h 00 min ago; count what is left (r) to feed it again",
		"K4": "K4: no ration before day 2",
	} {
		f.chosen = tank
		screentest.Press(t, f, fed)
		sees(t, f, want)
	}
}

func TestNothingAtHand(t *testing.T) {
	w := busy(t)
	f := w.screen()
	screentest.Type(f, "l", "0", "enter", "enter", "enter")
	sees(t, f, "nothing: no iso at hand")
	screentest.Press(t, f, fed)
	sees(t, f, "K1 gets nothing: there is no iso at hand")
}

func TestCultureIsCounted(t *testing.T) {
	w := busy(t)
	f := w.screen()
	sees(t, f, "60h00 ago STALE", "pav was never counted and cannot be poured")
	screentest.Type(f, "c", "p", "enter", "46 50", "enter", "neubauer-all", "enter", "100")
	sees(t, f, "pav: 5 333 333 cells/mL, between 4 320 017 and 6 512 913", count.BorderRule[:40])
	if _, ok := w.last().(*model.Cells); ok && w.last().(*model.Cells).Algae == "pav" {
		t.Fatal("it is entered before it is confirmed")
	}
	screentest.Type(f, "enter")
	got, ok := w.last().(*model.Cells)
	if !ok || got.Algae != "pav" || fmt.Sprint(got.Counts) != "[46 50]" || got.ChamberML != 9e-4 || *got.Dilution != 100 {
		t.Fatalf("entered %+v", w.last())
	}
	sees(t, f, "✓ pav 5 333 333 cells/mL saved")
	seesNot(t, f, "never counted", "75 %")
	if pours := f.round.Tanks[0].Pours; len(pours) != 3 {
		t.Errorf("K1 gets %v; want all three algae now", pours)
	}
}

func TestCellsLeftAreCounted(t *testing.T) {
	w := busy(t)
	f := w.screen()
	f.chosen = "K3"
	screentest.Type(f, "r", "40", "enter", "sixteen-all", "enter")
	sees(t, f, "CELLS LEFT IN K3", "K3: 625 cells/mL")
	screentest.Type(f, "enter")
	if got, ok := w.last().(*model.Cells); !ok || got.Tank != "K3" || *got.Dilution != 1 {
		t.Fatalf("entered %+v", w.last())
	}
	sees(t, f, "K3 has left 625 cells/mL saved")
	if got := row(f, "K3"); !strings.Contains(got, "625") || !strings.Contains(got, "103") {
		t.Errorf("row of K3: %q; want it in the round again with 103 mL", got)
	}
}

func TestWhatIsTypedReplacesWhatTheFormBeganWith(t *testing.T) {
	w := busy(t)
	f := w.screen()
	screentest.Type(f, "r", "40", "enter", "sixteen-all", "enter", "10", "enter")
	if got := w.last().(*model.Cells); *got.Dilution != 10 || got.ChamberML != 0.064 {
		t.Errorf("diluted %v in %v mL; want 10, not 110", *got.Dilution, got.ChamberML)
	}
	screentest.Type(f, "r", "down", "right", "2")
	if got := f.slip.text(1); got != "sixteen-all2" {
		t.Errorf("after the cursor moved the field holds %q; want the text mended", got)
	}
}

func TestBadCountsAreNamed(t *testing.T) {
	good := []string{"iso", "46 50", "neubauer-all", "10"}
	for name, c := range map[string]struct {
		row   int
		typed string
		want  string
	}{
		"a fractional count":      {1, "46.5 50", "46.5 is not a count; give whole numbers of 0 or more"},
		"no count":                {1, "", "counts: is missing"},
		"a word":                  {1, "46 many", `item 2: "many" is not a number`},
		"a count left out":        {1, "46,,50", "item 2: a number is missing"},
		"an unknown alga":         {0, "kelp", `"kelp" is not an alga of this room (iso, chaet, pav)`},
		"no alga":                 {0, "", "alga: is missing"},
		"an unknown chamber":      {2, "burker", `"burker" is not known; give one of neubauer-large`},
		"one of several chambers": {2, "neubauer-c", `"neubauer-c" may be neubauer-centre or neubauer-corner`},
		"a volume of zero":        {2, "0", "a volume above 0 mL is expected"},
		"no dilution":             {3, "", "diluted: is missing"},
		"a dilution below one":    {3, "0.5", "a number from 1 on is expected"},
	} {
		t.Run(name, func(t *testing.T) {
			w := busy(t)
			f := w.screen()
			n := len(w.kept.entries)
			screentest.Type(f, "c")
			for i, typed := range good {
				if i == c.row {
					typed = c.typed
				}
				if typed == "" {
					screentest.Type(f, "backspace", "enter")
					f.slip.form.Rows[i].Field = f.slip.form.Rows[i].Field.With("")
					continue
				}
				screentest.Type(f, typed, "enter")
			}
			f.slip.form.Focus = 3
			screentest.Type(f, "enter")
			if len(w.kept.entries) != n {
				t.Fatalf("entered %+v", w.last())
			}
			sees(t, f, c.want)
			if f.slip.form.Focus != c.row {
				t.Errorf("the cursor is in row %d, want %d", f.slip.form.Focus, c.row)
			}
		})
	}
}

func TestASlipOfTheDilutionIsWarnedOf(t *testing.T) {
	f := busy(t).screen()
	screentest.Type(f, "c", "iso", "enter", "46 50", "enter", "neubauer-all", "enter", "10")
	sees(t, f, "0.10 times the last count, 5 111 111 of 3 h 00 min ago: look at dilution and chamber")
	screentest.Type(f, "0")
	seesNot(t, f, "times the last count")
}

func TestAPastedColumnOfCounts(t *testing.T) {
	f := busy(t).screen()
	screentest.Type(f, "c", "iso", "enter")
	f.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("46\n50\n48\n"), Paste: true})
	if got := f.slip.text(1); got != "46 50 48" {
		t.Errorf("the counts are %q, want 46 50 48", got)
	}
}

func TestTypedFiguresAreNotThrownAway(t *testing.T) {
	f := busy(t).screen()
	screentest.Type(f, "c", "esc")
	sees(t, f, "TANK")
	screentest.Type(f, "c", "iso", "esc")
	sees(t, f, "Throw away what was typed?")
	screentest.Type(f, "esc")
	sees(t, f, "COUNT A CULTURE")
	screentest.Type(f, "esc", "enter")
	sees(t, f, "TANK")
	_, sent := screentest.Type(f, "l", "3", "enter", "enter", "enter", "esc")
	sees(t, f, "Leave? The litres at hand that were typed here are not kept")
	if len(sent) != 0 {
		t.Errorf("sent %v before the answer", sent)
	}
	if _, sent = screentest.Type(f, "enter"); len(sent) != 1 || sent[0] != (screen.Back{}) {
		t.Errorf("sent %v, want to go back", sent)
	}
}

func TestLitresThatAreNotTouchedGoOn(t *testing.T) {
	w := busy(t)
	f := w.screen()
	screentest.Type(f, "l", "0.9", "enter", "enter", "enter", "enter", "l")
	if got := f.slip.text(0); got != "0.620" {
		t.Errorf("iso at hand reads %q; want 0.9 less the 0.28 poured", got)
	}
	screentest.Type(f, "down", "5", "enter", "enter")
	if f.hand["iso"].Litres != 0.9 || f.hand["chaet"].Litres != 5 {
		t.Errorf("at hand %+v; want iso as typed before and chaet 5", f.hand)
	}
	if got := f.round.Round.Draws[0].Have; got < 0.6199 || got > 0.6201 {
		t.Errorf("iso to pour %v, want 0.62", got)
	}
	screentest.Type(f, "l", "down", "backspace", "enter", "enter")
	if _, had := f.hand["chaet"]; had {
		t.Error("an emptied field still limits chaet")
	}
}

func TestReadingAlong(t *testing.T) {
	w := busy(t)
	w.desk.ReadOnly = "another program writes this room"
	f := w.screen()
	n := len(w.kept.entries)
	screentest.Type(f, "enter", "f", "c", "r")
	if len(w.kept.entries) != n || f.phase != table {
		t.Errorf("phase %v, %d new entries; want the table as it was", f.phase, len(w.kept.entries)-n)
	}
	if why, refused := f.Keys().Refused(keys.Msg("enter")); !refused || why != w.desk.ReadOnly {
		t.Errorf("Enter is refused %v with %q", refused, why)
	}
	sees(t, f, "reading along")
}

func TestPagesAreReadAndLeft(t *testing.T) {
	f := busy(t).screen()
	screentest.Type(f, "enter", "p")
	sees(t, f, "POUR LIST Quay larval room", "[x] K1", "[ ] K2   iso          270 mL   chaet        102 mL", "iso 840 mL")
	screentest.Type(f, "esc", "d")
	sees(t, f, "DEMAND of the next 14 days", "Wed 25 Nov     5      1.233      0.544      1.500", "pav: its culture has no count", "K4: no ration before day 2")
	screentest.Type(f, "esc")
	_, sent := screentest.Type(f, "esc")
	if len(sent) != 1 || sent[0] != (screen.Back{}) {
		t.Errorf("sent %v, want to go back", sent)
	}
}

func TestOverflowIsWarned(t *testing.T) {
	w := busy(t)
	w.desk.Ledger.Room().House.Ration[2].CellsPerML = 90000
	f := w.screen()
	if got := row(f, "K1"); !strings.Contains(got, "OVERFLOWS") {
		t.Errorf("row of K1: %q", got)
	}
	sees(t, f, "at 120 L it overflows by 1.65 L: draw that much off first")
}

func TestThePointerBeginsAtTheTankAsked(t *testing.T) {
	w := busy(t)
	if got := New(w.desk, "k6").(*Feed).chosen; got != "K6" {
		t.Errorf("chosen %q, want K6", got)
	}
	if got := w.screen().chosen; got != "K1" {
		t.Errorf("chosen %q, want the first to be fed, K1", got)
	}
	f := w.screen()
	screentest.Type(f, "down", "down")
	if f.chosen != f.round.Tanks[2].Tank.Tank.Name {
		t.Errorf("two rows down is %q", f.chosen)
	}
}
