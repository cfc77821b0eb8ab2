package session

import (
	"strings"
	"testing"
	"time"

	"drainboard/model"
	"drainboard/tui/screen"
)

func TestHeldMove(t *testing.T) {
	hold := func(t *testing.T) *crew {
		c := begin(t)
		c.to("to_celsius")
		c.press("22,9", "enter")
		c.says("HOLD: D1 is 28.0 °C, C3 22.9 °C, 5.1 °C apart", "read again in C3", "swap 68 L of C3 for header water of 28.4 °C", "go into D2 instead", "leave this move out", "go ahead, with a reason")
		if c.step() != "to_celsius" {
			t.Fatalf("step %q, want the move to wait", c.step())
		}
		return c
	}
	t.Run("read again", func(t *testing.T) {
		c := hold(t)
		c.press("1", "enter", "27.1", "enter")
		c.says("0.9 °C apart: fine")
		if c.step() != "sieve" {
			t.Errorf("step %q, want the sieve", c.step())
		}
	})
	t.Run("read again and still too far", func(t *testing.T) {
		c := hold(t)
		c.desk.Now = c.desk.Now.Add(10 * time.Minute)
		c.press("1", "enter", "23,4", "enter")
		c.says("C3 23.4 °C, 4.6 °C apart", "wait ")
	})
	t.Run("water swapped", func(t *testing.T) {
		c := hold(t)
		c.press("2", "enter")
		if c.step() != "to_celsius" || c.screen().running.ask.kind != none {
			t.Errorf("step %q, want the tank to be read again", c.step())
		}
	})
	t.Run("another tank", func(t *testing.T) {
		c := hold(t)
		n := c.desk.Ledger.Next()
		c.press("3", "enter")
		if got := c.kinds(n); got != "step step" {
			t.Errorf("wrote %s, want the tank and the pause point", got)
		}
		into := c.desk.Ledger.Entries()[n-1].Fact.(*model.StepDone)
		if into.Name != model.StepInto || into.Why != "D2" || !into.Done {
			t.Errorf("wrote %+v", into)
		}
		if c.step() != model.NameFrom {
			t.Errorf("step %q, want the pause point before the siphon", c.step())
		}
		c.to("sieve_empty")
		if d2, _ := c.desk.Ledger.Tank("D2"); d2.Larvae == nil || d2.Larvae.Batch != "26-03" {
			t.Error("the larvae did not come into D2")
		}
	})
	t.Run("left out", func(t *testing.T) {
		c := hold(t)
		c.press("4", "enter", "1", "enter")
		if why, out := c.desk.Ledger.Session().LeftOut(1); !out || why != "larvae look weak" {
			t.Errorf("left out %v, %q", out, why)
		}
		if at := c.screen().now(); at.prompt.Move != 2 {
			t.Errorf("move %d, want the second", at.prompt.Move)
		}
		c.says("xD1→C3 left out")
	})
	t.Run("gone ahead", func(t *testing.T) {
		c := hold(t)
		n := c.desk.Ledger.Next()
		c.press("5", "enter", "chiller broke", "enter")
		if got := c.kinds(n); got != "step" {
			t.Errorf("wrote %s, want the step alone: the reading is kept already", got)
		}
		c.to("sieve_empty")
		moves := c.desk.Ledger.Batch("26-03").Moves
		if m := moves[len(moves)-1].Move; m.Why != "chiller broke" || *m.ToCelsius != 22.9 {
			t.Errorf("the move kept %q, %v", m.Why, *m.ToCelsius)
		}
	})
	t.Run("going ahead wants a reason", func(t *testing.T) {
		c := hold(t)
		n := c.desk.Ledger.Next()
		c.press("5", "enter", "enter")
		c.says("give a reason")
		c.press("-")
		if c.desk.Ledger.Next() != n || c.screen().running.ask.kind != held {
			t.Error("the hold is gone without a reason")
		}
	})
	t.Run("stands after a kill", func(t *testing.T) {
		c := hold(t)
		c.restart("")
		c.says("HOLD: D1 is 28.0 °C, C3 22.9 °C, 5.1 °C apart")
		c.press("5", "enter", "2", "enter")
		if c.step() != "sieve" {
			t.Errorf("step %q, want the sieve", c.step())
		}
		if got, _ := c.desk.Ledger.Session().Answer(1, "to_celsius"); got != "22.9; went ahead: heater or chiller is out" {
			t.Errorf("kept %q", got)
		}
	})
	t.Run("the reading that holds is entered", func(t *testing.T) {
		c := hold(t)
		c.press("-")
		if strings.Contains(c.frame(80, 23), "is not entered") {
			t.Error("the way back says that the reading was not entered")
		}
	})
	t.Run("gone by an undo", func(t *testing.T) {
		c := hold(t)
		if _, err := c.desk.Undo(); err != nil {
			t.Fatal(err)
		}
		c.s.Update(screen.Tick{Now: c.desk.Now})
		if c.screen().running.ask.kind != none {
			t.Error("the hold stands on a reading that was taken back")
		}
	})
}

func TestOtherAnswersThatWait(t *testing.T) {
	for _, c := range []struct{ name, step, typed, hold, answer string }{
		{"sieve too fine", "sieve", "105", "HOLD: day 17 goes on 200 or 250 µm, you typed 105", "105; went ahead: larvae cannot wait"},
		{"bucket half empty", "bucket", "50", "HOLD: at least 75 % full is wanted, you typed 50", "50; went ahead: larvae cannot wait"},
		{"larvae on the sieve", "sieve_empty", "2", `HOLD: "larvae left"`, "larvae left; went ahead: larvae cannot wait"},
	} {
		t.Run(c.name, func(t *testing.T) {
			crew := begin(t)
			crew.to(c.step)
			n := crew.desk.Ledger.Next()
			crew.press(c.typed, "enter")
			crew.says(c.hold, "look again")
			if crew.desk.Ledger.Next() != n {
				t.Error("an answer that waits was written down")
			}
			crew.press("1", "enter")
			if crew.step() != c.step || crew.screen().running.ask.kind != none {
				t.Fatalf("looking again leads to %q", crew.step())
			}
			crew.press(c.typed, "enter")
			choices := crew.screen().running.ask.choices
			crew.press(string(rune('0'+len(choices))), "enter", "2", "enter")
			if got, _ := crew.desk.Ledger.Session().Answer(1, c.step); got != c.answer {
				t.Errorf("kept %q, want %q", got, c.answer)
			}
		})
	}
}

func TestDestinationThatIsNotReady(t *testing.T) {
	c := begin(t)
	c.to("lid")
	c.answerWell()
	c.to("lid")
	c.answerWell() // the third move goes into C4, which is dirty
	c.says("HOLD: C4 is dirty; larvae go into a ready tank", "1  wash and fill C4 first", "leave this move out")
	c.press("c2", "enter")
	if c.step() != model.NameFrom {
		t.Error("the siphon can begin with no tank to go into")
	}
	c.restart("")
	c.says("HOLD: C4 is dirty")
	c.press("1", "enter", "40", "enter", "28", "enter")
	if c.screen().running.ask.kind != none || c.screen().running.washing {
		t.Error("C4 is ready, the hold stands")
	}
	c.press("c2", "enter")
	if c.step() != "from_celsius" {
		t.Errorf("step %q, want to go on", c.step())
	}
}
