package session

import (
	"strings"
	"testing"
	"time"

	"drainboard/model"
	"drainboard/tui/screen"
	"drainboard/tui/screen/screentest"
)

func TestResume(t *testing.T) {
	for _, c := range []struct {
		name, step, by string // by is who opens the screen again; JS keyed so far
		away           time.Duration
		note, back     string // back is the pause point gone back to
	}{
		{"at once", "bucket", "JS", 0, "", ""},
		{"after a minute", "bucket", "JS", time.Minute, "", ""},
		{"after ten minutes", "bucket", "JS", 10 * time.Minute, "away 10 min", ""},
		{"just under half an hour", "bucket", "JS", 30*time.Minute - time.Second, "away 29 min", ""},
		{"after half an hour", "bucket", "JS", 30 * time.Minute, "away 30 min", "before the siphon"},
		{"after a night", "bucket", "JS", 14 * time.Hour, "away 14 h 00 min", "before the siphon"},
		{"another person at once", "bucket", "KT", 0, "KT goes on for JS", "before the siphon"},
		{"another person later", "bucket", "KT", 42 * time.Minute, "away 42 min, KT goes on for JS", "before the siphon"},
		{"no one says who", "bucket", "", 0, "", ""},
		{"nothing answered since the pause point", model.NameFrom, "JS", time.Hour, "away 1 h 00 min", ""},
		{"before the first move", "sieves", "KT", time.Hour, "away 1 h 00 min, KT goes on for JS", ""},
		{"in the section before the rinse", "rinse", "JS", time.Hour, "away 1 h 00 min", "before the rinse"},
		{"in the section before the lid", "air", "JS", time.Hour, "away 1 h 00 min", "before the lid"},
		{"at the end", "", "JS", time.Hour, "away 1 h 00 min", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			crew := newCrew(t, testRoom(t))
			crew.desk.By = "JS"
			crew.press("enter", "enter")
			crew.to(c.step)
			session := crew.desk.Ledger.Session()
			got := resume(session, crew.desk.Ledger.Room().Procedure, c.by, c.away)
			back := ""
			if got.Back != nil {
				back = got.Back.Name
				if got.Back.Done || got.Back.Why != c.note || got.Back.Session != session.N {
					t.Errorf("record %+v", got.Back)
				}
			}
			if got.Note != c.note || back != c.back {
				t.Errorf("got %q, back to %q; want %q, %q", got.Note, back, c.note, c.back)
			}
		})
	}
}

func TestKilledAtEveryStep(t *testing.T) {
	c := begin(t)
	steps := 0
	for c.step() != "" {
		step, place := c.step(), c.screen().running.moverPlace
		n := c.desk.Ledger.Next()
		c.restart("")
		if c.step() != step || c.screen().running.moverPlace != place || c.desk.Ledger.Next() != n {
			t.Fatalf("killed at %q, came back at %q with %d entries instead of %d", step, c.step(), c.desk.Ledger.Next()-1, n-1)
		}
		c.answerWell()
		steps++
	}
	if steps < 39 {
		t.Errorf("%d steps; three moves have thirteen each", steps)
	}
}

func TestKilledAndAwayForLong(t *testing.T) {
	c := begin(t)
	c.to("bucket")
	c.desk.Now = c.desk.Now.Add(42 * time.Minute)
	n := c.desk.Ledger.Next()
	c.restart("")
	if c.step() != model.NameFrom {
		t.Fatalf("step %q, want the pause point", c.step())
	}
	c.says("away 43 min: back to the pause point before the siphon")
	back := c.desk.Ledger.Entries()[n-1].Fact.(*model.StepDone)
	if back.Name != "before the siphon" || back.Done || back.Why != "away 43 min" || c.desk.Ledger.Next() != n+1 {
		t.Errorf("wrote %+v", back)
	}
	c.restart("")
	if c.desk.Ledger.Next() != n+1 {
		t.Error("coming back twice writes twice")
	}
	c.to("rinse")
	if c.desk.Ledger.Next() < n+7 {
		t.Error("the section was not asked again")
	}
}

func TestAShortAbsenceIsSaidAndGoesWithTheNextAnswer(t *testing.T) {
	c := begin(t)
	c.to("bucket")
	c.desk.Now = c.desk.Now.Add(9 * time.Minute)
	c.restart("")
	c.says("away 10 min; every answer is kept")
	c.press("80", "enter")
	if strings.Contains(c.frame(80, 23), "away") {
		t.Error("it is said for ever")
	}
}

// TestALongSiphonIsNoAbsence: the screen is open and the clock runs.
func TestALongSiphonIsNoAbsence(t *testing.T) {
	c := begin(t)
	c.to("siphon")
	n := c.desk.Ledger.Next()
	c.pass(70 * time.Minute)
	if c.step() != "siphon" || c.desk.Ledger.Next() != n {
		t.Errorf("step %q after a long siphon", c.step())
	}
}

// TestClosedLid: the program stands still with the machine and wakes up.
func TestClosedLid(t *testing.T) {
	c := begin(t)
	c.to("bucket")
	c.press("8")
	c.desk.Now = c.desk.Now.Add(12 * time.Minute)
	c.s, _ = c.s.Update(screen.Tick{Now: c.desk.Now})
	c.says("away 12 min; every answer is kept")
	if got := c.screen().running.mover.Text(); got != "8" {
		t.Errorf("typed %q, want what was typed before", got)
	}
	c.desk.Now = c.desk.Now.Add(31 * time.Minute)
	c.press("0", "enter")
	if c.step() != model.NameFrom {
		t.Errorf("step %q, want the pause point: the key came before the tick", c.step())
	}
}

func TestComingBackReadOnlyWritesNothing(t *testing.T) {
	c := begin(t)
	c.to("bucket")
	c.desk.Now = c.desk.Now.Add(time.Hour)
	c.desk.ReadOnly = "another program keeps the journal"
	n := c.desk.Ledger.Next()
	c.open()
	if c.desk.Ledger.Next() != n || c.step() != "bucket" {
		t.Error("reading along wrote an entry")
	}
	c.says("away 1 h 01 min")
}

// TestFromTheNumberPadAlone opens, works and closes a session with nothing but
// digits, the point, Enter and + - *.
func TestFromTheNumberPadAlone(t *testing.T) {
	c := newCrew(t, testRoom(t))
	press := func(words ...string) {
		t.Helper()
		for _, w := range words {
			if w != "enter" && strings.Trim(w, "0123456789.+-*") != "" {
				t.Fatalf("%q is not on a number pad", w)
			}
			c.press(w)
		}
	}
	pad := func(name string) string { // a tank as the pad types it
		if d := digitsOf(name); d != "1" && d != "2" {
			return d
		}
		i, _ := c.desk.Ledger.Room().Tank(name)
		return "." + string(rune('1'+i))
	}
	press("3", "-", "3", ".", "*", pad("C1"), "enter", "enter", "enter")
	for range 400 {
		if c.desk.Ledger.Session() == nil {
			break
		}
		at := c.screen().now()
		r := &c.screen().running
		switch {
		case r.ask.kind == ending && len(pendingWash(c.desk.Ledger, at.session)) == 0:
			press("1", "enter")
		case r.asking():
			press("1", "enter")
		case r.washing && at.queue[0].Step.Records == model.RecordWashed:
			press("40", "enter")
		case r.washing:
			press("28", "enter")
		case at.prompt.Step.Ask == model.AskTank:
			press(pad(asked(at.prompt)), "enter")
		case at.prompt.Step.Name == "air" && !at.prompt.Again:
			press("*", "4", "enter")
		default:
			press(strings.ReplaceAll(wellAnswer(at.prompt), ",", "."), "enter")
		}
		c.desk.Now = c.desk.Now.Add(30 * time.Second)
	}
	if c.desk.Ledger.Session() != nil {
		t.Fatalf("the session is not closed:\n%s", c.frame(80, 23))
	}
	if closed := c.desk.Ledger.Sessions()[0].Closed.Closed; !closed.Complete {
		t.Errorf("closed %+v, want complete", closed)
	}
	press("enter")
	if got := c.sent[len(c.sent)-1]; got != any(screen.Back{}) {
		t.Errorf("sent %v, want back to the board", got)
	}
}

// TestMinusInATanksName: - goes back in an empty field and is a letter in a name
// that has one.
func TestMinusInATanksName(t *testing.T) {
	room := testRoom(t)
	room.Tanks[4].Name = "D-1"
	c := newCrewOf(t, room, model.NewLedger(room))
	c.at(start.Add(-47*time.Hour), &model.Filled{Tank: "D-1", Celsius: num(28)})
	c.at(start.Add(-46*time.Hour), &model.Stocked{Tank: "D-1", Batch: "26-03", Hatched: model.Hatched{Date: model.DayOf(start.Add(-300*time.Hour), room.Zone)}})
	c.at(start.Add(-time.Hour), &model.Filled{Tank: "D2", Celsius: num(28)})
	c.open()
	c.press("enter", "enter", "enter", "enter", "-")
	if c.screen().running.ask.kind != menu {
		t.Fatal("- does not go back in an empty field")
	}
	c.press("-", "d", "-", "1", "enter")
	if c.step() != "from_celsius" {
		t.Errorf("step %q, want D-1 to be taken:\n%s", c.step(), c.frame(80, 23))
	}
}

func TestInitOnAPlanSendsNothing(t *testing.T) {
	c := newCrew(t, testRoom(t))
	if got := screentest.Run(c.s.Init()); got != nil {
		t.Errorf("sent %v", got)
	}
}
