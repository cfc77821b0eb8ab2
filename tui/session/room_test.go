package session

import (
	"errors"
	"testing"
	"time"

	"drainboard/model"
	"drainboard/tui/desk"
	"drainboard/tui/screen"
	"drainboard/tui/screen/screentest"
	"drainboard/tui/theme"
)

// start is the morning of the session.
var start = moment("2026-11-12T09:00:00-05:00")

func moment(s string) time.Time {
	t, err := time.Parse(time.RFC3339, s)
	if err != nil {
		panic(err)
	}
	return t
}

func num(x float64) *float64 { return &x }

func testRoom(t testing.TB) *model.Room {
	t.Helper()
	zone, err := time.LoadLocation("America/Nassau")
	if err != nil {
		t.Fatal(err)
	}
	return &model.Room{
		Name: "Test room", Zone: zone, House: model.DefaultHouse(), Procedure: model.DefaultProcedure(),
		Tanks: []model.Tank{
			{Name: "C1", Litres: 120},
			{Name: "C2", Litres: 120},
			{Name: "C3", Litres: 120},
			{Name: "C4", Litres: 120},
			{Name: "D1", Litres: 200},
			{Name: "D2", Litres: 200},
		},
		Supplies: []model.Supply{{Name: "header"}, {Name: "chilled"}, {Name: "air"}},
		Algae:    model.DefaultAlgae(),
	}
}

// keeper keeps entries in memory, or refuses them.
type keeper struct {
	entries []model.Entry
	fail    error
	after   int // entries taken before it fails
}

func (k *keeper) Append(entries ...model.Entry) error {
	if k.fail != nil && k.after <= 0 {
		return k.fail
	}
	k.after -= len(entries)
	k.entries = append(k.entries, entries...)
	return nil
}

var errFull = errors.New("write journal: no space left on device")

// crew drives the screen through its keys.
type crew struct {
	t    testing.TB
	desk *desk.Desk
	keep *keeper
	s    screen.Screen
	sent []any
}

// newCrew is a room with three tanks due, one ready and one large ready tank:
// C1 and C2 of a young batch, D1 of an old one; C3 ready, D2 ready, C4 dirty.
func newCrew(t testing.TB, room *model.Room) *crew {
	t.Helper()
	c := newCrewOf(t, room, model.NewLedger(room))
	day := start.Add(-46 * time.Hour)
	for _, f := range []model.Fact{
		&model.Filled{Tank: "C1", Celsius: num(28)}, &model.Filled{Tank: "C2", Celsius: num(28.2)},
		&model.Filled{Tank: "D1", Celsius: num(27.6)}, &model.Filled{Tank: "C4", Celsius: num(28)},
	} {
		c.at(day.Add(-time.Hour), f)
	}
	young, old := day.Add(-48*time.Hour), day.Add(-15*24*time.Hour)
	c.at(day, &model.Stocked{Tank: "C1", Batch: "26-05", Hatched: model.Hatched{Date: model.DayOf(young, room.Zone)}, Larvae: num(9000)})
	c.at(day.Add(time.Minute), &model.Stocked{Tank: "C2", Batch: "26-05", Hatched: model.Hatched{Date: model.DayOf(young, room.Zone)}, Larvae: num(8800)})
	c.at(day.Add(2*time.Minute), &model.Stocked{Tank: "D1", Batch: "26-03", Hatched: model.Hatched{Date: model.DayOf(old, room.Zone)}, Larvae: num(7000)})
	c.at(day.Add(3*time.Minute), &model.Stocked{Tank: "C4", Batch: "26-05", Hatched: model.Hatched{Date: model.DayOf(young, room.Zone)}, Larvae: num(100)})
	c.at(day.Add(4*time.Minute), &model.Ended{Tank: "C4", Why: model.Discarded})
	c.at(start.Add(-30*time.Minute), &model.Filled{Tank: "C3", Celsius: num(27.5)})
	c.at(start.Add(-20*time.Minute), &model.Filled{Tank: "D2", Celsius: num(27)})
	for tank, celsius := range map[string]float64{"C1": 28, "C2": 28.1, "D1": 27.9} {
		c.at(start.Add(-10*time.Minute), &model.Temperature{Tank: tank, Celsius: celsius})
	}
	c.at(start.Add(-9*time.Minute), &model.Temperature{Supply: "header", Celsius: 28.4})
	c.open()
	return c
}

// newCrewOf is a crew in a room as it stands.
func newCrewOf(t testing.TB, room *model.Room, l *model.Ledger) *crew {
	t.Helper()
	k := &keeper{entries: l.Entries()}
	return &crew{t: t, keep: k, desk: &desk.Desk{Ledger: l, Now: start, Theme: theme.Bare(false), Keeper: k}}
}

// at enters a fact of the past.
func (c *crew) at(when time.Time, f model.Fact) {
	c.t.Helper()
	if _, err := c.desk.EnterAt(when, f); err != nil {
		c.t.Fatalf("%s: %v", f.Kind(), err)
	}
}

// open opens the screen.
func (c *crew) open() {
	c.s = New(c.desk)
	c.sent = nil
	for _, m := range screentest.Run(c.s.Init()) {
		c.sent = append(c.sent, m)
	}
}

// restart is the program killed and started again on what the keeper has.
func (c *crew) restart(by string) {
	c.t.Helper()
	l, err := model.LoadLedger(c.desk.Ledger.Room(), c.keep.entries)
	if err != nil {
		c.t.Fatal(err)
	}
	c.desk = &desk.Desk{Ledger: l, Now: c.desk.Now, Theme: c.desk.Theme, By: by, Keeper: c.keep}
	c.open()
}

// press presses keys by name or types words, a minute apart where they are whole
// answers.
func (c *crew) press(words ...string) {
	c.t.Helper()
	for _, w := range words {
		s, sent := screentest.Type(c.s, w)
		c.s = s
		for _, m := range sent {
			c.sent = append(c.sent, m)
		}
	}
}

// pass lets time go by, with ticks as the root sends them.
func (c *crew) pass(d time.Duration) {
	for ; d > 0; d -= time.Minute {
		c.desk.Now = c.desk.Now.Add(min(d, time.Minute))
		c.s, _ = c.s.Update(screen.Tick{Now: c.desk.Now})
	}
}

func (c *crew) frame(w, h int) string { return screentest.Join(c.s.View(w, h)) }

func (c *crew) screen() *Session { return c.s.(*Session) }

// step is the name of the mover's step, empty where none is left.
func (c *crew) step() string {
	at := c.screen().now()
	if at.session == nil || !at.open {
		return ""
	}
	return at.prompt.Step.Name
}
