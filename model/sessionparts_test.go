package model

import (
	"testing"
	"time"
)

// A tank that is the source of two moves goes over in two equal parts.
func TestSessionMovesATankInParts(t *testing.T) {
	l := stocked(t)
	mustEnter(t, l, "2026-11-10T12:00:00-05:00", &Filled{Tank: "C3", Celsius: num(27.5)})
	mustEnter(t, l, "2026-11-12T09:00:00-05:00", &Opened{Moves: []Leg{{"C1", "C2"}, {"C1", "C3"}}})
	now := at("2026-11-12T09:01:00-05:00")
	for range 100 {
		if _, ok := l.Session().MoverPrompt(l.Room().Procedure); !ok {
			break
		}
		if _, _, err := answer(t, l, now, "good", ""); err != nil {
			t.Fatal(err)
		}
		now = now.Add(time.Minute)
	}
	moves := l.Batches()[0].Moves
	if len(moves) != 2 || moves[0].Move.Share == nil || *moves[0].Move.Share != 0.5 || !moves[1].Move.All() {
		t.Fatalf("moves = %+v; want half, then the rest", moves)
	}
	for _, name := range []string{"C2", "C3"} {
		tank, _ := l.Tank(name)
		if tank.State != Holding || tank.Larvae.Number.Value.X != 4500 {
			t.Errorf("%s is %s with %v; want half of 9000", name, tank.State, tank.Larvae)
		}
	}
	if c1, _ := l.Tank("C1"); c1.State != Dirty {
		t.Errorf("C1 is %s; want emptied", c1.State)
	}
}

// Two tanks of one batch that are agreed to go into the same tank are put together.
func TestSessionJoinsTwoOfOneBatch(t *testing.T) {
	l := stocked(t)
	mustEnter(t, l, "2026-11-10T12:00:00-05:00", &Filled{Tank: "C3", Celsius: num(27.5)})
	mustEnter(t, l, "2026-11-10T13:00:00-05:00", &Stocked{Tank: "C3", Batch: "26-05", Hatched: hatched("2026-11-08"), Larvae: num(1000)})
	mustEnter(t, l, "2026-11-12T09:00:00-05:00", &Opened{Moves: []Leg{{"C1", "C2"}, {"C3", "C2"}}})
	now := at("2026-11-12T09:01:00-05:00")
	for range 100 {
		if _, ok := l.Session().MoverPrompt(l.Room().Procedure); !ok {
			break
		}
		if _, _, err := answer(t, l, now, "good", ""); err != nil {
			t.Fatal(err)
		}
		now = now.Add(time.Minute)
	}
	if c2, _ := l.Tank("C2"); c2.State != Holding || c2.Larvae.Number.Value.X != 10000 {
		t.Errorf("C2 is %s with %v; want 9000 and 1000 together", c2.State, c2.Larvae)
	}
}
