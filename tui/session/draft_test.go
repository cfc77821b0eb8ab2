package session

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"drainboard/model"
	"drainboard/model/sequence"
	"drainboard/tui/keys"
	"drainboard/tui/screen"
	"drainboard/tui/text"
)

// listed is the plan as the screen shows it: "D1>C3", or "D1!" where it cannot go.
func (c *crew) listed() string {
	t := c.screen().lay()
	words := make([]string, len(t.rows))
	for i, r := range t.rows {
		words[i] = r.leg.from + "!"
		if r.move != nil {
			words[i] = r.leg.from + ">" + t.name(r.move.To)
		}
	}
	return strings.Join(words, " ")
}

func TestChangesAreTimedAgainAtOnce(t *testing.T) {
	for _, c := range []struct {
		name  string
		press []string
		want  string
		frame string // what the frame says of it
	}{
		{"the best plan", nil, "D1>C3 C1>D2 C2>C4", "proved the best order"},
		{"row down", []string{"+"}, "C1>C3 D1>D2 C2>C4", "your list: worst overrun 0 min, best plan 0"},
		{"row up", []string{"down", "down", "-"}, "D1>C3 C2>D2 C1>C4", ""},
		{"row up at the top stays", []string{"-"}, "D1>C3 C1>D2 C2>C4", ""},
		{"row chosen by its digit", []string{"3", "-", "-"}, "C2>C3 D1>D2 C1>C4", ""},
		{"left out", []string{"2", "x"}, "D1>C3 C2>D2", "not moved: C1, left out by you"},
		{"left out and added again", []string{"2", "x", "a", "c1", "enter"}, "D1>C3 C2>D2 C1>C4", ""},
		{"another destination", []string{"2", "d", "c4", "enter"}, "D1>C3 C1>C4 C2>D2", "C4 is your choice"},
		{"by the point of a number pad", []string{"2", "0", ".4", "enter"}, "D1>C3 C1>C4 C2>D2", "C4 is your choice"},
		{"destination left to the rule again", []string{"2", "d", "c4", "enter", "d", "enter"}, "D1>C3 C1>D2 C2>C4", ""},
		{"a destination that holds larvae", []string{"1", "d", "c2", "enter"}, "D1! C1>C3 C2>D2", "C2 still holds larvae then"},
		{"a tank emptied before is waited for", []string{"3", "d", "d1", "enter"}, "D1>C3 C1>D2 C2>D1", ""},
		{"the same destination twice", []string{"2", "d", "c3", "enter"}, "D1>C3 C1! C2>D2", "C3 holds the larvae of D1 by then"},
		{"back to the best plan", []string{"+", "x", "r"}, "D1>C3 C1>D2 C2>C4", "proved the best order"},
		{"adding what is in the list", []string{"a", "c1", "enter"}, "D1>C3 C1>D2 C2>C4", "C1 is in the list already"},
		{"adding an empty tank", []string{"a", "c3", "enter"}, "D1>C3 C1>D2 C2>C4", "tank C3 holds no larvae to change; it is ready"},
		{"adding no tank of the room", []string{"a", "x9", "enter"}, "D1>C3 C1>D2 C2>C4", `tank "x9" is not one of this room`},
		{"a name begun and given up", []string{"a", "c1", "esc"}, "D1>C3 C1>D2 C2>C4", "c1 was not taken"},
	} {
		t.Run(c.name, func(t *testing.T) {
			crew := newCrew(t, testRoom(t))
			crew.press(c.press...)
			if got := crew.listed(); got != c.want {
				t.Errorf("list = %s, want %s", got, c.want)
			}
			if got := crew.frame(120, 39); !strings.Contains(got, c.frame) {
				t.Errorf("the frame does not say %q:\n%s", c.frame, got)
			}
		})
	}
}

// TestAddedTankIsTimedWithItsOwnBest adds a tank that is not due yet.
func TestAddedTankIsTimedWithItsOwnBest(t *testing.T) {
	room := testRoom(t)
	c := newCrew(t, room)
	c.at(start.Add(-20*time.Hour), &model.Washed{Tank: "C4"})
	c.at(start.Add(-20*time.Hour), &model.Filled{Tank: "C4", Celsius: num(28)})
	c.at(start.Add(-19*time.Hour), &model.Stocked{Tank: "C4", Batch: "26-06", Hatched: model.Hatched{Date: model.DayOf(start.Add(-20*time.Hour), room.Zone)}})
	if got := c.listed(); got != "D1>C3 C1>D2 C2>D1" {
		t.Fatalf("list = %s", got)
	}
	c.press("a", "4", "enter")
	if got := c.listed(); got != "D1>C3 C1>D2 C2>D1 C4>C1" {
		t.Errorf("list = %s, want C4 at the end", got)
	}
	s := c.screen()
	if len(s.lay().best.Moves) != 4 {
		t.Errorf("the best plan beside it has %d moves, want that of the same four tanks", len(s.lay().best.Moves))
	}
}

// TestDifferenceToTheBestPlan puts the only tank that is late to the end.
func TestDifferenceToTheBestPlan(t *testing.T) {
	c := newCrew(t, testRoom(t))
	c.desk.Now = start.Add(8 * time.Hour) // limit of all: due 11:00 + 6 h = 17:00
	c.open()
	c.press("1", "+", "+")
	lay := c.screen().lay()
	mine, best := lateMinutes(lay.plan.WorstOverrun), lateMinutes(lay.best.WorstOverrun)
	if mine <= best {
		t.Fatalf("worst overrun %d, best %d: the case shows nothing", mine, best)
	}
	// 200 L take 39 min 20 s, 120 L take 26 min, and C1 passes its limit at 17:00:
	// C2, D1, C1 starts C1 65 min 20 s late; C1, C2, D1 starts D1 52 min after 17:00
	// and its limit is 17:02.
	if got := c.frame(80, 23); !strings.Contains(got, "your list: worst overrun 66 min, best plan 50") {
		t.Errorf("frame:\n%s", got)
	}
}

func TestRowsAreRecheckedWhenTheRoomChanges(t *testing.T) {
	c := newCrew(t, testRoom(t))
	c.press("1", "+")
	c.at(start, &model.Ended{Tank: "C1", Why: model.Discarded})
	if got := c.listed(); got != "C1! D1>C3 C2>D2" {
		t.Errorf("list = %s, want C1 complained of", got)
	}
	if got := c.frame(80, 23); !strings.Contains(got, "C1 is not one of the tanks to change") {
		t.Errorf("frame:\n%s", got)
	}
}

func TestOpeningShowsTheConcreteThing(t *testing.T) {
	c := newCrew(t, testRoom(t))
	c.press("2", "x", "enter")
	got := c.frame(80, 23)
	for _, want := range []string{
		"2 moves: D1→C3, C2→D2", "not moved: C1, left out by you", "LAY OUT sieves 105, 200 µm",
		"MIX in all 320 mL acid into 31.68 L water; stock 31.45 % HCl as on the label",
		"each of 3 tanks 40 mL acid into 3.96 L water; gear bin 200 mL into 19.8 L",
		"Acid into water, never the reverse.", "chlorine gas", "Dispose of it by local rules",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("the frame does not say %q:\n%s", want, got)
		}
	}
	if c.desk.Ledger.Session() != nil {
		t.Fatal("the first Enter opened the session")
	}
	c.press("esc")
	if c.desk.Ledger.Session() != nil || c.screen().before.stage != listing {
		t.Error("Esc does not go back to the plan")
	}
	c.press("enter", "enter")
	session := c.desk.Ledger.Session()
	if session == nil || !slices.Equal(session.Legs, []model.Leg{{From: "D1", To: "C3"}, {From: "C2", To: "D2"}}) {
		t.Errorf("session = %+v, want the two moves agreed", session)
	}
}

func TestWhatWasShownIsOpened(t *testing.T) {
	c := newCrew(t, testRoom(t))
	c.press("enter")
	shown := c.frame(80, 23)
	c.at(c.desk.Now, &model.Temperature{Tank: "C3", Celsius: 21}) // another first choice now
	c.press("enter")
	if legs := c.desk.Ledger.Session().Legs; legs[0].To != "C3" || !strings.Contains(shown, "D1→C3") {
		t.Errorf("opened %v, shown\n%s", legs, shown)
	}
}

func TestLeavingAListAsksFirst(t *testing.T) {
	c := newCrew(t, testRoom(t))
	c.press("esc")
	if !slices.Contains(c.sent, any(screen.Back{})) {
		t.Error("Esc on the plain plan does not go back")
	}
	c.open()
	c.press("+", "esc")
	if slices.Contains(c.sent, any(screen.Back{})) {
		t.Fatal("a changed list was dropped silently")
	}
	c.press("1")
	if got := c.listed(); got != "C1>C3 D1>D2 C2>C4" {
		t.Errorf("list = %s, want it kept", got)
	}
	c.press("esc", "2")
	if !slices.Contains(c.sent, any(screen.Back{})) {
		t.Error("the list cannot be left")
	}
}

func TestNothingDue(t *testing.T) {
	c := newCrew(t, testRoom(t))
	c.desk.Now = start.Add(-40 * time.Hour)
	c.desk.Ledger = c.desk.Ledger.At(c.desk.Now)
	c.open()
	if got := c.frame(80, 23); !strings.Contains(got, "No tank falls due within 12 h. Next: C1 in 1 d") && !strings.Contains(got, "Next: C1 in 42 h") {
		t.Errorf("frame:\n%s", got)
	}
	c.press("enter")
	if c.screen().before.stage != listing {
		t.Error("an empty session can be opened")
	}
}

func TestReadOnlyCannotOpen(t *testing.T) {
	c := newCrew(t, testRoom(t))
	c.desk.ReadOnly = "another program keeps the journal"
	c.press("enter", "enter")
	if c.desk.Ledger.Session() != nil {
		t.Fatal("a session was opened")
	}
	if got := c.frame(80, 23); !strings.Contains(got, "not saved: another program keeps the journal") {
		t.Errorf("frame:\n%s", got)
	}
}

func TestPlanText(t *testing.T) {
	c := newCrew(t, testRoom(t))
	l := c.desk.Ledger
	problem, err := sequence.FromLedger(l, start, sequence.Options{})
	if err != nil {
		t.Fatal(err)
	}
	plan, err := sequence.Best(problem)
	if err != nil {
		t.Fatal(err)
	}
	lines := PlanText(l, start, problem, plan)
	whole := strings.Join(lines, "\n")
	for _, want := range []string{"Test room", "Thu 12 Nov 2026 09:00", "D1 -> C3", "09:00-09:39", "[ ]", "empty then: C1, C2, D1", "MIX in all", "! Water first"} {
		if !strings.Contains(whole, want) {
			t.Errorf("it does not say %q:\n%s", want, whole)
		}
	}
	for _, line := range lines {
		if text.Width(line) > 80 {
			t.Errorf("%d cells: %q", text.Width(line), line)
		}
	}
	c.press("p")
	if got, ok := c.sent[len(c.sent)-1].(Print); !ok || !slices.Equal(got.Lines, lines) {
		t.Errorf("p sent %v, want the same lines", c.sent)
	}
	c.press("pgdown", "end")
	if got := c.frame(80, 23); !strings.Contains(got, "! Dispose of it") {
		t.Errorf("the end of the text is not to be reached:\n%s", got)
	}
}

func TestPlanTextStaysNarrow(t *testing.T) {
	room := testRoom(t)
	for i := range room.Tanks {
		room.Tanks[i].Name = strings.Repeat("long ", 5) + room.Tanks[i].Name
	}
	l := model.NewLedger(room)
	d := newCrewOf(t, room, l)
	for _, name := range []string{room.Tanks[0].Name, room.Tanks[1].Name} {
		d.at(start.Add(-47*time.Hour), &model.Filled{Tank: name})
		d.at(start.Add(-46*time.Hour), &model.Stocked{Tank: name, Batch: strings.Repeat("b", 30), Hatched: model.Hatched{Date: model.DayOf(start.Add(-90*time.Hour), room.Zone)}})
	}
	problem, err := sequence.FromLedger(d.desk.Ledger, start, sequence.Options{})
	if err != nil {
		t.Fatal(err)
	}
	plan, err := sequence.Best(problem)
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range PlanText(d.desk.Ledger, start, problem, plan) {
		if text.Width(line) > 80 {
			t.Errorf("%d cells: %q", text.Width(line), line)
		}
	}
}

func TestKeyTables(t *testing.T) {
	c := newCrew(t, testRoom(t))
	check := func(what string) {
		t.Helper()
		if p := keys.Problems(c.s.Keys(), keys.Everywhere()); p != nil {
			t.Errorf("%s: %q", what, p)
		}
	}
	check("plan")
	c.press("a")
	check("typing")
	c.press("esc", "p")
	check("text")
	c.press("esc", "+", "esc")
	check("leaving")
	c.press("1", "enter")
	check("confirming")
	c.press("enter")
	check("step")
	c.press("-")
	check("menu")
	c.press("esc", "*")
	check("reason")
	c.press("esc", "enter", "enter")
	check("name")
}

func TestProofWords(t *testing.T) {
	for _, c := range []struct {
		name string
		plan sequence.Plan
		want string
	}{
		{"proved, in time", sequence.Plan{Best: true}, "proved the best order; nothing passes due and grace"},
		{"proved, late", sequence.Plan{Best: true, WorstOverrun: 61 * time.Second}, "proved the best order; worst overrun 2 min past due and grace"},
		{"not proved", sequence.Plan{}, "the best order found, not proved best; nothing passes due and grace"},
		{"not proved, late", sequence.Plan{WorstOverrun: time.Minute}, "the best order found, not proved best; worst overrun 1 min"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := proofWords(laid{plan: c.plan}, false); got != c.want {
				t.Errorf("got %q, want %q", got, c.want)
			}
		})
	}
}

// TestALongPlanShowsTheChosenRow: forty tanks do not fit 24 rows.
func TestALongPlanShowsTheChosenRow(t *testing.T) {
	room := testRoom(t)
	room.Tanks = nil
	for i := range 40 {
		room.Tanks = append(room.Tanks, model.Tank{Name: fmt.Sprintf("T%02d", i+1), Litres: 100})
	}
	c := newCrewOf(t, room, model.NewLedger(room))
	hatched := model.Hatched{Date: model.DayOf(start.Add(-200*time.Hour), room.Zone)}
	for i := range 38 {
		c.at(start.Add(-47*time.Hour), &model.Filled{Tank: room.Tanks[i].Name, Celsius: num(28)})
		c.at(start.Add(-46*time.Hour), &model.Stocked{Tank: room.Tanks[i].Name, Batch: "26-05", Hatched: hatched})
	}
	for i := 38; i < 40; i++ {
		c.at(start.Add(-time.Hour), &model.Filled{Tank: room.Tanks[i].Name, Celsius: num(28)})
	}
	c.open()
	for range 24 {
		c.press("down")
	}
	c.says("►25 ", "38 moves planned", "last move done", "LAY OUT sieves", "Enter shows them before anything opens")
	if frame := c.frame(80, 23); !strings.Contains(frame, "\n⋮") {
		t.Errorf("nothing says that rows are hidden:\n%s", frame)
	}
	c.press("enter", "enter")
	c.says("38 moves")
}
