package session

import (
	"testing"

	"drainboard/model"
)

func TestWasherLane(t *testing.T) {
	c := begin(t)
	c.says("WASHER, + goes there", "Wash and rinse C4: 40 mL; type mL used", "acid into water; never with bleach")
	c.press("d", "+")
	c.says("MOVER, + goes there", "Water first, then the acid, slowly", "chlorine gas")
	if c.s.Capturing() {
		t.Error("letters are text in the washer's lane")
	}
	n := c.desk.Ledger.Next()
	c.press("400", "enter")
	c.says("400 mL typed, 40 mL planned for C4")
	if c.desk.Ledger.Next() != n {
		t.Fatal("an unlikely figure was written unasked")
	}
	c.press("1", "enter", "backspace", "enter")
	c.says("Fill C4; read its temperature", "bring it to 28.1 °C")
	c.press("2", "tab")
	if got := c.screen().running.mover.Text(); got != "d" {
		t.Errorf("the mover's name is %q, want the d typed before", got)
	}
	c.press("tab", "8", "enter")
	c4, _ := c.desk.Ledger.Tank("C4")
	if last, _ := c4.LastCelsius(); c4.State != model.Ready || last.Value != 28 {
		t.Errorf("C4 is %s at %v, want ready at 28", c4.State, last.Value)
	}
	if c.screen().running.washing {
		t.Error("nothing is left to wash, the keys stay with the washer")
	}
	c.press("1", "enter")
	if c.screen().running.ask.kind != none {
		t.Errorf("the mover's lane asks %+v", c.screen().running.ask)
	}
}

func TestWasherTurnsToAnotherTank(t *testing.T) {
	c := begin(t)
	c.to("lid")
	c.press("+", "*")
	c.says("Wash and rinse D1", "then C4 (dirty)", "* next tank")
	c.press("40", "enter")
	c.says("Fill D1")
	c.press("28", "enter")
	if d1, _ := c.desk.Ledger.Tank("D1"); d1.State != model.Ready {
		t.Errorf("D1 is %s", d1.State)
	}
	c.says("Wash and rinse C4")
}

func TestUnlikelyAcidCanBeRight(t *testing.T) {
	c := begin(t)
	c.press("+", "70", "enter", "2", "enter")
	c4, _ := c.desk.Ledger.Tank("C4")
	if c4.State != model.WashedDown {
		t.Errorf("C4 is %s, want washed", c4.State)
	}
}
