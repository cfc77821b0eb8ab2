package session

import (
	"slices"
	"strings"
	"testing"
	"time"

	"drainboard/model"
	"drainboard/tui/screen"
	"drainboard/tui/screen/screentest"
)

// begin opens the session of the best plan and comes to the first tank's name.
func begin(t *testing.T) *crew {
	t.Helper()
	c := newCrew(t, testRoom(t))
	c.press("enter", "enter", "enter", "enter")
	if c.step() != model.NameFrom {
		t.Fatalf("step %q, want the first tank's name", c.step())
	}
	return c
}

// to answers steps well until one of a name comes.
func (c *crew) to(name string) {
	c.t.Helper()
	for range 200 {
		if c.step() == name {
			return
		}
		c.answerWell()
	}
	c.t.Fatalf("step %q never came; at %q:\n%s", name, c.step(), c.frame(80, 23))
}

// answerWell gives the step at hand an answer that passes.
func (c *crew) answerWell() {
	c.t.Helper()
	at := c.screen().now()
	if c.screen().running.ask.kind == blocked { // wash and fill what comes next
		c.press("1", "enter")
		for c.screen().running.washing && c.screen().destinationClosed(c.screen().now()) {
			c.washWell()
		}
		if c.screen().running.washing {
			c.press("+")
		}
		return
	}
	before := c.desk.Ledger.Next()
	c.press(wellAnswer(at.prompt), "enter")
	if c.desk.Ledger.Next() == before {
		c.t.Fatalf("step %q took nothing:\n%s", at.prompt.Step.Name, c.frame(80, 23))
	}
	c.desk.Now = c.desk.Now.Add(time.Minute)
}

func (c *crew) washWell() {
	c.t.Helper()
	at := c.screen().now()
	typed := "28"
	if at.queue[0].Step.Records == model.RecordWashed {
		typed = "40"
	}
	c.press(typed, "enter")
	c.desk.Now = c.desk.Now.Add(time.Minute)
}

func wellAnswer(p model.Prompt) string {
	switch p.Step.Name {
	case model.NameFrom, model.NameTo:
		return asked(p)
	case "from_celsius", "to_celsius":
		return "28,0"
	case "sieve":
		if p.Leg.From == "D1" {
			return "200"
		}
		return "105"
	case "bucket":
		return "80"
	}
	if p.Step.Ask == model.AskChoice {
		return "1"
	}
	return ""
}

// kinds lists the kinds of the entries from n on.
func (c *crew) kinds(from int) string {
	var words []string
	for _, e := range c.desk.Ledger.Entries()[from-1:] {
		words = append(words, string(e.Kind()))
	}
	return strings.Join(words, " ")
}

func (c *crew) says(want ...string) {
	c.t.Helper()
	rows := append(c.s.View(80, 23), screen.Footer(c.s.Keys(), c.desk.Theme, 80))
	frame := screentest.Join(rows)
	small := c.frame(59, 60) // without large letters
	for _, w := range want {
		if strings.Contains(small, w) {
			continue
		}
		if !strings.Contains(frame, w) {
			c.t.Errorf("the frame does not say %q:\n%s", w, frame)
		}
	}
}

func TestAWholeSession(t *testing.T) {
	c := begin(t)
	c.to("")
	c.says("No step is left.", "wash and fill")
	for _, leg := range [][2]string{{"D1", "C3"}, {"C1", "D2"}, {"C2", "C4"}} {
		if to, _ := c.desk.Ledger.Tank(leg[1]); to.State != model.Holding {
			t.Errorf("%s is %s, want it to hold the larvae of %s", leg[1], to.State, leg[0])
		}
	}
	moves := c.desk.Ledger.Batch("26-03").Moves
	if m := moves[len(moves)-1].Move; *m.MeshUM != 200 || *m.FromCelsius != 28 || *m.ToCelsius != 28 {
		t.Errorf("the move kept %v, %v, %v; want what was typed", *m.MeshUM, *m.FromCelsius, *m.ToCelsius)
	}
	c.press("1", "enter")
	for len(c.screen().now().queue) > 0 {
		c.washWell()
	}
	c.says("close the session: complete")
	if len(c.keep.entries) != c.desk.Ledger.Next()-1 {
		t.Errorf("%d entries kept, %d in the ledger", len(c.keep.entries), c.desk.Ledger.Next()-1)
	}
	c.press("1", "enter")
	if c.desk.Ledger.Session() != nil {
		t.Fatal("the session is still open")
	}
	if closed := c.desk.Ledger.Sessions()[0].Closed.Closed; !closed.Complete || closed.Why != "" {
		t.Errorf("closed %+v, want complete", closed)
	}
	c.says("complete: 3 of 3 moves", "D1→C3  moved 09:", "26-03, next due Sat 14 Nov", "everything went as agreed", "EMPTY NOW: C1 (ready), C2 (ready), D1 (ready)")
	c.press("esc")
	if !slices.Contains(c.sent, any(screen.Back{})) {
		t.Error("Esc does not go to the board")
	}
}

func TestWrongTankStops(t *testing.T) {
	c := begin(t)
	before := c.desk.Ledger.Next()
	c.press("c1", "enter")
	c.says("STOP: you typed C1, this step is at D1")
	if c.desk.Ledger.Next() != before {
		t.Error("a wrong name was written down")
	}
	if !slices.Contains(c.sent, any(screen.Beep{Times: 2})) {
		t.Error("no beep")
	}
	c.press("enter")
	c.says("type a number from 1 to 2")
	c.press("1", "enter", "d1", "enter")
	if c.step() != "from_celsius" {
		t.Errorf("step %q, want to go on", c.step())
	}
}

func TestWrongDestinationOffersTheTankTyped(t *testing.T) {
	c := begin(t)
	c.to(model.NameTo)
	c.press("d2", "enter")
	c.says("STOP: you typed D2, this step is at C3", "2  go into D2 instead: 27.0 °C, 1.0 apart, fine")
	c.press("2", "enter")
	at := c.screen().now()
	if at.prompt.Leg.To != "D2" || c.step() != model.NameFrom {
		t.Errorf("step %q into %s, want the water of D2 to be read first", c.step(), at.prompt.Leg.To)
	}
	c.to("sieve_empty")
	if d2, _ := c.desk.Ledger.Tank("D2"); d2.State != model.Holding {
		t.Errorf("D2 is %s", d2.State)
	}
	// The second move was agreed into D2, which holds larvae now.
	c.to(model.NameFrom)
	c.says("HOLD: D2 holds larvae of 26-03", "go into C3 instead")
}

func TestDeferring(t *testing.T) {
	c := begin(t)
	c.press("*")
	c.says("LEAVE OUT the move D1 into C3: why?")
	c.press("esc")
	c.to("bucket")
	c.press("*")
	c.says("PUT OFF bucket: why?")
	c.press("bucket is in the bin", "enter")
	if c.step() != "siphon" {
		t.Fatalf("step %q, want the siphon", c.step())
	}
	c.says("▾ bucket of move 1 put off: bucket is in the bin")
	c.press("enter")
	c.says("asked again; put off before: bucket is in the bin")
	if c.step() != "bucket" {
		t.Fatalf("step %q, want the bucket at the pause point", c.step())
	}
	c.press("*", "1", "enter")
	if c.step() != model.NameTo {
		t.Fatalf("step %q, want to go on", c.step())
	}
	c.to("fed")
	c.press("2", "enter") // "later" puts a step off by itself
	c.says("fed of move 1 put off: later")
}

func TestOpenCriticalStepClosesAsIncompleteOnly(t *testing.T) {
	c := begin(t)
	for c.step() != "" {
		if c.step() != "air" {
			c.answerWell()
			continue
		}
		c.press("*", "pump broke", "enter")
	}
	c.says("air of move 1 put off: pump broke", "It can close as incomplete only", "2  close the session as incomplete")
	for _, choice := range c.screen().running.ask.choices {
		if choice.act == closeComplete {
			t.Error("complete is offered")
		}
	}
	c.press("2", "enter", "4", "enter")
	if closed := c.desk.Ledger.Sessions()[0].Closed.Closed; closed.Complete || closed.Why != "larvae in trouble" {
		t.Errorf("closed %+v", closed)
	}
	c.says("INCOMPLETE: 3 of 3 moves", "air of move 1 put off: pump broke")
}

func TestIncompleteClose(t *testing.T) {
	c := begin(t)
	c.to("sieve")
	c.press("-")
	c.says("BACK: what do you want to do?", "take back the last entry: to celsius of move 1: 28", "back to the pause point before the siphon", "to the board; the session stays open")
	c.press("6", "enter", "no power", "enter")
	if c.desk.Ledger.Session() != nil {
		t.Fatal("the session is open")
	}
	if closed := c.desk.Ledger.Sessions()[0].Closed.Closed; closed.Complete || closed.Why != "no power" {
		t.Errorf("closed %+v", closed)
	}
	c.says("INCOMPLETE: 0 of 3 moves", "closed: no power", "D1→C3  not moved")
}

func TestMenu(t *testing.T) {
	t.Run("take back", func(t *testing.T) {
		c := begin(t)
		c.to("sieve")
		c.press("-", "2", "enter")
		c.says("taken back: to celsius of move 1: 28")
		if c.step() != "to_celsius" {
			t.Errorf("step %q, want the last one again", c.step())
		}
	})
	t.Run("to the pause point", func(t *testing.T) {
		c := begin(t)
		c.to("bucket")
		c.press("esc", "3", "enter")
		if c.step() != model.NameFrom {
			t.Errorf("step %q, want the tank's name", c.step())
		}
	})
	t.Run("to the board", func(t *testing.T) {
		c := begin(t)
		c.to("sieve")
		c.press("20", "esc")
		c.says("to the board; the session stays open, 20 is not entered")
		c.press("5", "enter")
		if !slices.Contains(c.sent, any(screen.Back{})) || c.desk.Ledger.Session() == nil {
			t.Error("the session was not left open for the board")
		}
	})
	t.Run("closing it keeps what was typed", func(t *testing.T) {
		c := begin(t)
		c.to("sieve")
		c.press("20", "esc", "esc", "0", "enter")
		if got, _ := c.desk.Ledger.Session().Answer(1, "sieve"); got != "200" {
			t.Errorf("kept %q, want 200", got)
		}
	})
	t.Run("q asks too", func(t *testing.T) {
		c := begin(t)
		c.to("sieve")
		c.press("q")
		if c.screen().running.ask.kind != menu || slices.Contains(c.sent, any(screen.Quit{})) {
			t.Error("q does not ask")
		}
	})
	t.Run("no leaving out once moved", func(t *testing.T) {
		c := begin(t)
		c.to("sieve_empty")
		c.press("-")
		if strings.Contains(c.frame(80, 23), "leave this move out") {
			t.Error("a move that is made can be left out")
		}
	})
}

func TestAMoveNeverMadeClosesAsIncompleteOnly(t *testing.T) {
	c := begin(t)
	for c.step() != "" {
		if c.step() == "rinse" {
			c.press("*", "1", "enter")
			continue
		}
		if c.step() == model.NameFrom && c.screen().now().prompt.Move > 1 {
			c.press("*", "1", "enter")
			continue
		}
		c.answerWell()
	}
	c.says("D1 into C3 is not moved. It can close as incomplete only")
}

func TestPlainActionsAreTakenTwiceInARow(t *testing.T) {
	room := testRoom(t)
	plain := model.Step{Name: "light", Lane: model.LaneSession, Ask: model.AskEnter, Text: "Switch the lights on", Why: "To see."}
	gloves := plain
	gloves.Name = "gloves"
	room.Procedure = append(model.Procedure{plain, gloves}, room.Procedure...)
	c := newCrew(t, room)
	c.press("enter", "enter", "enter", "enter")
	if c.step() != "bin" {
		t.Fatalf("step %q, want the third", c.step())
	}
	c.press("enter")
	c.says("type 1, then Enter")
	if c.step() != "bin" {
		t.Fatal("a third Enter in a row was taken")
	}
	c.press("1", "enter")
	if c.step() != "sieves" {
		t.Fatalf("step %q, want the fourth", c.step())
	}
	c.press("1", "enter")
	if c.step() != model.NameFrom {
		t.Errorf("step %q, want the first tank's name", c.step())
	}
}

func TestManyStepsPutOffAreCounted(t *testing.T) {
	c := begin(t)
	for range 12 {
		if c.step() == model.NameFrom || c.step() == model.NameTo {
			c.answerWell()
			continue
		}
		c.press("*", "1", "enter")
	}
	c.says("put off: hands full", "more put off")
}
