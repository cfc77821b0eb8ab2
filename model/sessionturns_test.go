package model

import (
	"strings"
	"testing"
	"time"
)

func TestHeldStandsAfterARestart(t *testing.T) {
	l := opened(t)
	now := at("2026-11-12T09:01:00-05:00")
	toStep(t, l, "to_celsius", now)
	p, _ := l.Session().MoverPrompt(l.Room().Procedure)
	if w := l.Held(p, now); w != nil {
		t.Errorf("held before the destination was read: %s", w.Text)
	}
	answer(t, l, now, "22.9", "")
	again, err := LoadLedger(l.Room(), l.Entries())
	if err != nil {
		t.Fatal(err)
	}
	p, _ = again.Session().MoverPrompt(again.Room().Procedure)
	w := again.Held(p, now)
	if w == nil || w.From != 28 || w.To != 22.9 || !strings.Contains(w.Text, "5.1 °C apart") {
		t.Fatalf("held = %+v; want the same hold over 5.1 °C", w)
	}
	mustEnter(t, again, "2026-11-12T09:02:00-05:00", &Temperature{Tank: "C2", Celsius: 27})
	if w := again.Held(p, now.Add(time.Minute)); w != nil {
		t.Errorf("held after a reading that passes: %s", w.Text)
	}
}

func TestGoingAheadKeepsOneReading(t *testing.T) {
	l := opened(t)
	now := at("2026-11-12T09:01:00-05:00")
	toStep(t, l, "to_celsius", now)
	answer(t, l, now, "22.9", "")
	answer(t, l, now.Add(5*time.Minute), "22.9", "heater is out")
	c2, _ := l.Tank("C2")
	if n := len(c2.Celsius); n != 2 { // that of the filling, and this one
		t.Errorf("%d readings of C2; want 2: going ahead is no new reading", n)
	}
}

func TestAMoveMadeAlreadyIsNotMadeTwice(t *testing.T) {
	l := opened(t)
	now := at("2026-11-12T09:01:00-05:00")
	toStep(t, l, NameTo, now)
	mustEnter(t, l, "2026-11-12T09:01:00-05:00", &Moved{From: "C1", To: "C2"})
	if _, _, err := answer(t, l, now, "C2", ""); err != nil {
		t.Fatalf("the destination of a move made already: %v", err)
	}
	_, reply, err := answer(t, l, now, "", "")
	if err != nil || len(reply.Facts) != 1 || reply.Facts[0].Kind() != KindStep {
		t.Errorf("reply = %+v, %v; want the step alone", reply.Facts, err)
	}
}

func TestWashQueueIsByTheTimeOfEmptying(t *testing.T) {
	l := stocked(t)
	mustEnter(t, l, "2026-11-10T12:00:00-05:00", &Filled{Tank: "C3"})
	mustEnter(t, l, "2026-11-12T09:00:00-05:00", &Moved{From: "C1", To: "C2"})
	mustEnter(t, l, "2026-11-12T09:10:00-05:00", &Ended{Tank: "C2", Why: Discarded})
	mustEnter(t, l, "2026-11-12T09:20:00-05:00", &Washed{Tank: "C1"})
	queue := l.WashQueue()
	if len(queue) != 2 || queue[0].Tank.Tank.Name != "C1" || queue[0].Step.Records != RecordFilled {
		t.Errorf("queue = %+v; want C1 to be filled first: it was emptied first", queue)
	}
}

func TestWashStepsThatAskNoFigure(t *testing.T) {
	l := opened(t)
	c1, _ := l.Tank("C1")
	for what, want := range map[string]Kind{RecordWashed: KindWashed, RecordFilled: KindFilled} {
		f, err := l.AnswerWash(WashPrompt{c1, Step{Ask: AskEnter, Records: what}}, "")
		if err != nil || f.Kind() != want {
			t.Errorf("%s: %v, %v; want a plain %s", what, f, err, want)
		}
	}
}

func TestStepsOfAMoveLeftOutAreNotOpen(t *testing.T) {
	l := opened(t)
	now := at("2026-11-12T09:01:00-05:00")
	toStep(t, l, "bucket", now)
	p, _ := l.Session().MoverPrompt(l.Room().Procedure)
	f, err := l.Defer(p, "no bucket")
	if err != nil {
		t.Fatal(err)
	}
	mustEnter(t, l, "2026-11-12T09:01:00-05:00", f)
	mustEnter(t, l, "2026-11-12T09:01:00-05:00", &StepDone{Session: 4, Move: 1, Name: StepLeftOut, Done: true, Why: "no bucket"})
	if d := l.Session().Deferred(l.Room().Procedure); len(d) != 0 {
		t.Errorf("deferred = %+v; want none, the move is left out", d)
	}
	if err := enter(l, "2026-11-12T09:02:00-05:00", &Closed{Session: 4, Complete: true}); err != nil {
		t.Errorf("closing: %v; the crew decided, nothing is open", err)
	}
}

func TestWhoTookOverInTheSameSecond(t *testing.T) {
	l := opened(t)
	e := Entry{At: l.Session().Last, By: "KT", Fact: &StepDone{Session: 4, Name: "bin", Done: true}}
	if err := l.Check(&e, later); err != nil {
		t.Fatal(err)
	}
	if err := l.Apply(e); err != nil {
		t.Fatal(err)
	}
	if by := l.Session().By; by != "KT" {
		t.Errorf("by = %q; want KT", by)
	}
}

func TestInsteadOf(t *testing.T) {
	l := stocked(t)
	if ways := l.InsteadOf(Leg{"C1", "C2"}, later); len(ways) != 0 {
		t.Errorf("ways = %v; want none: C3 was never entered", ways)
	}
	mustEnter(t, l, "2026-11-10T12:00:00-05:00", &Filled{Tank: "C3", Celsius: num(27)})
	if ways := l.InsteadOf(Leg{"C1", "C2"}, at("2026-11-12T09:00:00-05:00")); len(ways) != 1 || ways[0].Into != "C3" {
		t.Errorf("ways = %v; want C3: 9000 larvae are 100 per litre in its 90 L", ways)
	}
	ways := l.InsteadOf(Leg{"C1", "C3"}, later)
	if len(ways) != 1 || ways[0].Into != "C2" || !strings.Contains(ways[0].Text, "27.5 °C, 0.5 apart, fine") {
		t.Errorf("ways = %v; want C2 with its figures", ways)
	}
}

func TestBlendIsRoundedUpWithoutDust(t *testing.T) {
	l := stocked(t)
	mustEnter(t, l, "2026-11-12T08:00:00-05:00", &Temperature{Supply: "header", Celsius: 28.4})
	// 120 L at 22.9 reach 26.0 by 120 x 3.1 / 2.4 = 155 L of 28.4, or 67.6 L swapped.
	ways := l.WaysOut(Leg{"C1", "C2"}, 28, 22.9, at("2026-11-12T09:00:00-05:00"))
	if len(ways) == 0 || !strings.HasPrefix(ways[0].Text, "swap 68 L of C2 for header water of 28.4 °C (or add 155 L") {
		t.Errorf("ways = %v", ways)
	}
}

func TestAirIsNoWater(t *testing.T) {
	room := smallRoom(t)
	room.Supplies = append(room.Supplies, Supply{"Air"})
	l := NewLedger(room)
	mustEnter(t, l, "2026-11-12T08:00:00-05:00", &Filled{Tank: "C2", Celsius: num(22.9)})
	mustEnter(t, l, "2026-11-12T08:00:00-05:00", &Temperature{Supply: "Air", Celsius: 30})
	for _, w := range l.WaysOut(Leg{"C1", "C2"}, 28, 22.9, at("2026-11-12T09:00:00-05:00")) {
		if strings.Contains(w.Text, "Air water") {
			t.Errorf("way out: %s", w.Text)
		}
	}
}
