package model

import (
	"strings"
	"testing"
	"time"
)

// answers gives every step of the default procedure an answer that passes.
func goodAnswer(p Prompt) string {
	return map[string]string{
		NameFrom: p.Leg.From, NameTo: p.Leg.To, "from_celsius": "28.0", "to_celsius": "27,2",
		"sieve": "105", "bucket": "80", "sieve_empty": "1", "suspension": "1", "air": "1", "fed": "1",
	}[p.Step.Name]
}

// opened is a room with a session of one move, C1 into C2.
func opened(t *testing.T) *Ledger {
	t.Helper()
	l := stocked(t)
	mustEnter(t, l, "2026-11-12T09:00:00-05:00", &Opened{Moves: []Leg{{"C1", "C2"}}})
	return l
}

// answer gives an answer and enters what it leads to.
func answer(t *testing.T, l *Ledger, now time.Time, typed, reason string) (Prompt, Reply, error) {
	t.Helper()
	p, ok := l.Session().MoverPrompt(l.Room().Procedure)
	if !ok {
		t.Fatal("no step is left to answer")
	}
	if typed == "good" {
		typed = goodAnswer(p)
	}
	reply, err := l.Answer(p, typed, reason, now)
	for _, f := range reply.Facts {
		mustEnter(t, l, now.Format(time.RFC3339), f)
	}
	return p, reply, err
}

func TestSessionFromOpenToClosed(t *testing.T) {
	l := opened(t)
	now := at("2026-11-12T09:01:00-05:00")
	var steps []string
	for {
		p, ok := l.Session().MoverPrompt(l.Room().Procedure)
		if !ok {
			break
		}
		if _, _, err := answer(t, l, now, "good", ""); err != nil {
			t.Fatalf("step %s: %v", p.Step.Name, err)
		}
		steps = append(steps, p.Step.Name)
		now = now.Add(time.Minute)
	}
	want := "bin sieves source from_celsius to_celsius sieve bucket siphon destination rinse sieve_empty suspension air fed lid"
	if got := strings.Join(steps, " "); got != want {
		t.Errorf("steps = %s; want %s", got, want)
	}
	move := l.Batches()[0].Moves[0].Move
	if *move.MeshUM != 105 || *move.FromCelsius != 28 || *move.ToCelsius != 27.2 {
		t.Errorf("the move kept sieve %v, temperatures %v and %v; want 105, 28, 27.2", *move.MeshUM, *move.FromCelsius, *move.ToCelsius)
	}
	queue := l.WashQueue()
	if queue[len(queue)-1].Tank.Tank.Name != "C1" {
		t.Errorf("the washer's last tank is %s; want C1, emptied last", queue[len(queue)-1].Tank.Tank.Name)
	}
	for _, typed := range []string{"40", "27.8"} {
		for _, w := range l.WashQueue() {
			if w.Tank.Tank.Name != "C1" {
				continue
			}
			f, err := l.AnswerWash(w, typed)
			if err != nil {
				t.Fatal(err)
			}
			mustEnter(t, l, now.Format(time.RFC3339), f)
		}
	}
	mustEnter(t, l, now.Format(time.RFC3339), &Closed{Session: 4, Complete: true})
	if c1, _ := l.Tank("C1"); c1.State != Ready || l.Session() != nil {
		t.Errorf("C1 is %s, session %v; want ready and none", c1.State, l.Session())
	}
}

func TestWrongTankStops(t *testing.T) {
	l := opened(t)
	now := at("2026-11-12T09:01:00-05:00")
	answer(t, l, now, "", "")
	answer(t, l, now, "", "")
	before := l.Next()
	_, _, err := answer(t, l, now, "C2", "")
	if err == nil || !strings.Contains(err.Error(), "C2") || !strings.Contains(err.Error(), "C1") {
		t.Errorf("refusal = %v; want one that shows both tanks", err)
	}
	if l.Next() != before {
		t.Error("a wrong name was written down")
	}
}

func toStep(t *testing.T, l *Ledger, name string, now time.Time) {
	t.Helper()
	for {
		p, ok := l.Session().MoverPrompt(l.Room().Procedure)
		if !ok {
			t.Fatalf("step %s never came", name)
		}
		if p.Step.Name == name {
			return
		}
		if _, _, err := answer(t, l, now, "good", ""); err != nil {
			t.Fatal(err)
		}
	}
}

func TestHoldKeepsTheReadingAndWaits(t *testing.T) {
	l := opened(t)
	now := at("2026-11-12T09:01:00-05:00")
	toStep(t, l, "to_celsius", now)
	_, reply, err := answer(t, l, now, "22.9", "")
	if err != nil || reply.Wait == nil || !strings.Contains(reply.Wait.Text, "5.1 °C apart") {
		t.Fatalf("reply = %+v, %v; want a hold over 5.1 °C", reply, err)
	}
	if p, _ := l.Session().MoverPrompt(l.Room().Procedure); p.Step.Name != "to_celsius" {
		t.Errorf("the step is %s; want to_celsius still", p.Step.Name)
	}
	if c2, _ := l.Tank("C2"); c2.Celsius[len(c2.Celsius)-1].Value != 22.9 {
		t.Error("the reading that held the move was not kept")
	}
	answer(t, l, now, "22.9", "heater is out, better than staying")
	toStep(t, l, "sieve_empty", now)
	if why := l.Batches()[0].Moves[0].Move.Why; !strings.Contains(why, "heater is out") {
		t.Errorf("why = %q; want the reason given", why)
	}
}

func TestDeferredStepComesBackAtTheNextPausePoint(t *testing.T) {
	l := opened(t)
	now := at("2026-11-12T09:01:00-05:00")
	toStep(t, l, "bucket", now)
	p, _ := l.Session().MoverPrompt(l.Room().Procedure)
	f, err := l.Defer(p, "bucket is in the bin")
	if err != nil {
		t.Fatal(err)
	}
	mustEnter(t, l, "2026-11-12T09:01:00-05:00", f)
	if p, _ := l.Session().MoverPrompt(l.Room().Procedure); p.Step.Name != "siphon" {
		t.Errorf("next step is %s; want siphon", p.Step.Name)
	}
	answer(t, l, now, "", "")
	p, _ = l.Session().MoverPrompt(l.Room().Procedure)
	if p.Step.Name != "bucket" || !p.Again || p.Why != "bucket is in the bin" {
		t.Errorf("at the pause point: %+v; want the bucket again with its reason", p)
	}
	err = enter(l, "2026-11-12T09:02:00-05:00", &Closed{Session: 4, Complete: true})
	if err == nil || !strings.Contains(err.Error(), "bucket") {
		t.Errorf("refusal = %v; a session with an open critical step closes only as incomplete", err)
	}
}

func TestBackToThePausePoint(t *testing.T) {
	l := opened(t)
	now := at("2026-11-12T09:01:00-05:00")
	toStep(t, l, "bucket", now)
	p, _ := l.Session().MoverPrompt(l.Room().Procedure)
	pause, answered := l.Session().PausePoint(l.Room().Procedure, p)
	if pause != "before the siphon" || !answered {
		t.Fatalf("pause point = %q, %v", pause, answered)
	}
	mustEnter(t, l, "2026-11-12T09:40:00-05:00", &StepDone{Session: 4, Move: 1, Name: pause, Why: "away 39 min"})
	if p, _ := l.Session().MoverPrompt(l.Room().Procedure); p.Step.Name != NameFrom {
		t.Errorf("step = %s; want the tank's name again", p.Step.Name)
	}
}

func TestStepTextsAreShort(t *testing.T) {
	for _, s := range DefaultProcedure() {
		if n := len(strings.Fields(s.Text)); n > 9 {
			t.Errorf("%s: %d words in %q; at most nine", s.Name, n, s.Text)
		}
	}
}
