package tui

import (
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/tui/desk"
	"drainboard/tui/keys"
	"drainboard/tui/screen/screentest"
	"drainboard/tui/theme"
)

// clock is a clock that tests move by hand.
type clock struct{ now time.Time }

func (c *clock) tell() time.Time { return c.now }

// keeper keeps entries in memory.
type keeper struct{ entries []model.Entry }

func (k *keeper) Append(entries ...model.Entry) error {
	k.entries = append(k.entries, entries...)
	return nil
}

func app(t testing.TB) (*App, *clock) {
	t.Helper()
	room := &model.Room{
		Name: "Test room", Zone: time.UTC, House: model.DefaultHouse(), Procedure: model.DefaultProcedure(),
		Tanks: []model.Tank{{Name: "T1", Litres: 120}, {Name: "T2", Litres: 120}},
	}
	c := &clock{time.Date(2026, 11, 25, 15, 0, 0, 0, time.UTC)}
	d := &desk.Desk{Ledger: model.NewLedger(room), Now: c.now, Theme: theme.Bare(false), Keeper: &keeper{}}
	hatched := model.Hatched{Date: model.Day{Year: 2026, Month: 11, Date: 20}}
	if _, err := d.EnterAt(c.now.Add(-50*time.Hour), &model.Stocked{Tank: "T1", Batch: "N-1", Hatched: hatched}); err != nil {
		t.Fatal(err)
	}
	a := New(d, Options{Clock: c.tell})
	a.Update(tea.WindowSizeMsg{Width: 80, Height: 24})
	return a, c
}

// press presses keys one after the other, each a second after the last, and
// follows what they ask for. It reports whether the program is to end.
func press(a *App, c *clock, names ...string) (quit bool) {
	for _, name := range names {
		c.now = c.now.Add(time.Second)
		_, cmd := a.Update(keys.Msg(name))
		quit = settle(a, cmd) || quit
	}
	return quit
}

func settle(a *App, cmd tea.Cmd) (quit bool) {
	for _, msg := range screentest.Run(cmd) {
		if _, ends := msg.(tea.QuitMsg); ends {
			return true
		}
		_, next := a.Update(msg)
		quit = settle(a, next) || quit
	}
	return quit
}

func TestCtrlCTwiceLeaves(t *testing.T) {
	a, c := app(t)
	if press(a, c, "ctrl+c") {
		t.Fatal("the first ctrl+c left")
	}
	if !strings.Contains(a.View(), "again to leave") {
		t.Error("the first ctrl+c says nothing")
	}
	if !press(a, c, "ctrl+c") {
		t.Error("the second ctrl+c did not leave")
	}
}

func TestEscNeverLeaves(t *testing.T) {
	a, c := app(t)
	if press(a, c, "esc", "esc", "esc") {
		t.Error("esc left the program")
	}
}

func TestQuitAsksInASession(t *testing.T) {
	a, c := app(t)
	if !press(a, c, "q") {
		t.Error("q on the board did not leave")
	}
	a.desk.Now = c.now
	if _, err := a.desk.Enter(&model.Filled{Tank: "T2"}, &model.Opened{Moves: []model.Leg{{From: "T1", To: "T2"}}}); err != nil {
		t.Fatal(err)
	}
	if press(a, c, "q") {
		t.Error("q left an open session without a question")
	}
	if press(a, c, "esc") || !press(a, c, "q", "enter") {
		t.Error("the question was not followed")
	}
}

func TestUndoNamesTheEntryAndAsks(t *testing.T) {
	a, c := app(t)
	press(a, c, "u")
	if !strings.Contains(a.View(), "Undo entry 1? T1 stocked") {
		t.Fatalf("the question does not name the entry:\n%s", a.View())
	}
	a.desk.Now = c.now
	press(a, c, "enter")
	if t1, _ := a.desk.Ledger.Tank("T1"); t1.State == model.Holding {
		t.Error("the entry was not undone")
	}
	if len(a.desk.Ledger.Entries()) != 2 {
		t.Errorf("%d entries; want the undone one and its correction", len(a.desk.Ledger.Entries()))
	}
}

func TestF9LocksTheKeys(t *testing.T) {
	a, c := app(t)
	if press(a, c, "f9", "q") {
		t.Error("a locked key left the program")
	}
	if !strings.Contains(a.View(), "LOCKED") {
		t.Error("the lock does not show")
	}
	if !press(a, c, "f9", "q") {
		t.Error("the keys stay dead after the second F9")
	}
}

func TestFinderKnowsTanksOnly(t *testing.T) {
	a, c := app(t)
	press(a, c, "/", "X", "9", "enter")
	if !strings.Contains(a.View(), "no tank of this room") {
		t.Errorf("an unknown name is not refused:\n%s", a.View())
	}
	press(a, c, "esc")
	if a.cover != nil {
		t.Error("esc does not close the finder")
	}
}

func TestPasteRunsNoCommand(t *testing.T) {
	a, c := app(t)
	c.now = c.now.Add(time.Second)
	_, cmd := a.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("q"), Paste: true})
	if settle(a, cmd) {
		t.Error("a pasted q left the program")
	}
}

func TestHeldKeyIsHeededOnce(t *testing.T) {
	a, _ := app(t)
	a.Update(keys.Msg("w"))
	a.Update(keys.Msg("w"))
	first := a.View()
	b, _ := app(t)
	b.Update(keys.Msg("w"))
	if b.View() != first {
		t.Error("a key repeated at once was heeded twice")
	}
}

func TestReaderFollows(t *testing.T) {
	a, c := app(t)
	other := a.desk.Ledger.Copy()
	e := model.Entry{At: c.now, Fact: &model.Filled{Tank: "T2"}}
	if err := other.Check(&e, c.now); err != nil {
		t.Fatal(err)
	}
	if err := other.Apply(e); err != nil {
		t.Fatal(err)
	}
	a.desk.ReadOnly = "another program keeps this room"
	a.options.Follow = func() (*model.Ledger, error) { return other, nil }
	a.Update(tick(c.now.Add(2 * time.Second)))
	if !strings.Contains(a.View(), "READY") {
		t.Error("what the writer entered does not show after two seconds")
	}
	a.desk.Now = c.now
	if _, err := a.desk.Enter(&model.Washed{Tank: "T2"}); err == nil {
		t.Error("a reader could enter a fact")
	}
}

func TestEveryFrameIsExact(t *testing.T) {
	a, c := app(t)
	view := func(w, h int) []string {
		a.Update(tea.WindowSizeMsg{Width: w, Height: h})
		return strings.Split(a.View(), "\n")
	}
	for name, do := range map[string]func(){
		"board":    func() {},
		"help":     func() { press(a, c, "?") },
		"question": func() { press(a, c, "esc", "u") },
		"finder":   func() { press(a, c, "esc", "/") },
	} {
		t.Run(name, func(t *testing.T) {
			do()
			screentest.EverySize(t, view)
			a.cover = nil
		})
	}
}

func TestTablesAreSound(t *testing.T) {
	a, c := app(t)
	for _, p := range keys.Problems(a.top().Keys(), everywhere()) {
		t.Error(p)
	}
	for _, name := range []string{"?", "u", "/"} {
		press(a, c, name)
		for _, p := range keys.Problems(a.cover.keys()) {
			t.Error(p)
		}
		a.cover = nil
	}
}
