package model

import (
	"strings"
	"testing"
	"time"
)

// smallRoom has three tanks, a header and two algae.
func smallRoom(t testing.TB) *Room {
	t.Helper()
	zone, err := time.LoadLocation("America/Nassau")
	if err != nil {
		t.Fatal(err)
	}
	return &Room{
		Name: "Test room", Zone: zone, House: DefaultHouse(), Procedure: DefaultProcedure(),
		Tanks:    []Tank{{Name: "C1", Litres: 120}, {Name: "C2", Litres: 120}, {Name: "C3", Litres: 90}},
		Supplies: []Supply{{"header"}},
		Algae:    []Alga{{Name: "iso", Full: "Isochrysis"}, {Name: "chaet", Full: "Chaetoceros"}},
	}
}

func at(s string) time.Time {
	t, err := time.Parse(time.RFC3339, s)
	if err != nil {
		panic(err)
	}
	return t
}

var later = at("2027-01-01T00:00:00Z")

// enter checks and applies a fact.
func enter(l *Ledger, when string, f Fact) error {
	e := Entry{At: at(when), Fact: f}
	if err := l.Check(&e, later); err != nil {
		return err
	}
	return l.Apply(e)
}

func mustEnter(t testing.TB, l *Ledger, when string, f Fact) {
	t.Helper()
	if err := enter(l, when, f); err != nil {
		t.Fatalf("%s %s: %v", when, f.Kind(), err)
	}
}

func num(x float64) *float64 { return &x }

func hatched(s string) Hatched {
	h, err := ParseHatched(s)
	if err != nil {
		panic(err)
	}
	return h
}

func stocked(t testing.TB) *Ledger {
	t.Helper()
	l := NewLedger(smallRoom(t))
	mustEnter(t, l, "2026-11-10T09:00:00-05:00", &Filled{Tank: "C1", Celsius: num(28)})
	mustEnter(t, l, "2026-11-10T10:00:00-05:00", &Stocked{Tank: "C1", Batch: "26-05", Hatched: hatched("2026-11-08"), Larvae: num(9000)})
	mustEnter(t, l, "2026-11-10T11:00:00-05:00", &Filled{Tank: "C2", Celsius: num(27.5)})
	return l
}

func TestMoveEmptiesOneTankAndFreshensTheOther(t *testing.T) {
	l := stocked(t)
	mustEnter(t, l, "2026-11-12T10:00:00-05:00", &Moved{From: "c1", To: "c2"})
	from, _ := l.Tank("C1")
	to, _ := l.Tank("C2")
	if from.State != Dirty || to.State != Holding {
		t.Errorf("states = %s, %s; want dirty, holding", from.State, to.State)
	}
	if !to.Since.Equal(at("2026-11-12T10:00:00-05:00")) {
		t.Errorf("since = %v; want the moment of the move", to.Since)
	}
	if to.Larvae.Number.Value.X != 9000 {
		t.Errorf("larvae = %v; want the 9000 that moved", to.Larvae.Number)
	}
}

func TestRefusals(t *testing.T) {
	cases := map[string]struct {
		when string
		fact Fact
		want string
	}{
		"move from an empty tank": {"2026-11-11T10:00:00-05:00", &Moved{From: "C2", To: "C3"}, "no larvae"},
		"stock a full tank":       {"2026-11-11T10:00:00-05:00", &Stocked{Tank: "C1", Batch: "x", Hatched: hatched("2026-11-08")}, "only a ready tank"},
		"move before the stocking": {
			"2026-11-10T09:30:00-05:00", &Moved{From: "C1", To: "C2"}, "no larvae",
		},
		"a reading of 270":   {"2026-11-11T10:00:00-05:00", &Temperature{Tank: "C1", Celsius: 270}, "270"},
		"unknown tank":       {"2026-11-11T10:00:00-05:00", &Temperature{Tank: "C9", Celsius: 27}, "C9"},
		"future":             {"2027-11-11T10:00:00-05:00", &Temperature{Tank: "C1", Celsius: 27}, "future"},
		"odd lobes":          {"2026-11-11T10:00:00-05:00", &Look{Tank: "C1", Lobes: ptr(3)}, "2, 4 or 6"},
		"hatch after stock":  {"2026-11-11T10:00:00-05:00", &Stocked{Tank: "C2", Batch: "y", Hatched: hatched("2026-11-12")}, "after the stocking"},
		"other hatch date":   {"2026-11-11T10:00:00-05:00", &Stocked{Tank: "C2", Batch: "26-05", Hatched: hatched("2026-11-07")}, "2026-11-08"},
		"wash with larvae":   {"2026-11-11T10:00:00-05:00", &Washed{Tank: "C1"}, "holds larvae"},
		"step, no session":   {"2026-11-11T10:00:00-05:00", &StepDone{Session: 1, Name: "x"}, "no session"},
		"correct the future": {"2026-11-11T10:00:00-05:00", &Corrected{Entry: 9, Why: "x", Void: true}, "no entry 9"},
		"correct an entry others stand on": {
			"2026-11-11T10:00:00-05:00", &Corrected{Entry: 1, Why: "x", Set: map[string]any{"celsius": 270.0}}, "270",
		},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			l := stocked(t)
			err := enter(l, c.when, c.fact)
			if err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("refusal = %v; want one that says %q", err, c.want)
			}
			if l.Next() != 4 {
				t.Errorf("the refused entry was kept")
			}
		})
	}
}

func ptr[T any](x T) *T { return &x }

func TestLateEntryThatBreaksALaterOneNamesIt(t *testing.T) {
	l := stocked(t)
	mustEnter(t, l, "2026-11-12T10:00:00-05:00", &Moved{From: "C1", To: "C2"})
	err := enter(l, "2026-11-11T10:00:00-05:00", &Ended{Tank: "C1", Why: Lost})
	if err == nil || !strings.Contains(err.Error(), "entry 4 (moved") {
		t.Errorf("refusal = %v; want one that names entry 4", err)
	}
}

func TestVoidReplaysTheRoom(t *testing.T) {
	l := stocked(t)
	mustEnter(t, l, "2026-11-12T10:00:00-05:00", &Moved{From: "C1", To: "C2"})
	mustEnter(t, l, "2026-11-12T10:05:00-05:00", &Corrected{Entry: 4, Why: "wrong tank", Void: true})
	from, _ := l.Tank("C1")
	if from.State != Holding {
		t.Errorf("C1 is %s; want holding again", from.State)
	}
	mustEnter(t, l, "2026-11-12T10:06:00-05:00", &Corrected{Entry: 5, Why: "it was right", Void: true})
	from, _ = l.Tank("C1")
	if from.State != Dirty {
		t.Errorf("C1 is %s; want dirty, the correction being void", from.State)
	}
}

// Due times go by elapsed hours, ages by the calendar, across both changes of
// the clocks (IANA: Nassau 2026-03-08 and 2026-11-01).
func TestDueAndAgeAcrossClockChanges(t *testing.T) {
	cases := map[string]struct{ since, due, hatch string }{
		"spring": {"2026-03-07T09:00:00-05:00", "2026-03-09T10:00:00-04:00", "2026-03-07"},
		"autumn": {"2026-10-31T09:00:00-04:00", "2026-11-02T08:00:00-05:00", "2026-10-31"},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			l := NewLedger(smallRoom(t))
			mustEnter(t, l, c.since, &Stocked{Tank: "C1", Batch: "b", Hatched: hatched(c.hatch)})
			tank, _ := l.Tank("C1")
			if got := l.clock(l.Due(tank)); got != c.due {
				t.Errorf("due = %s; want %s", got, c.due)
			}
			if age, _ := l.Age(tank, at(c.due)); age != 2 {
				t.Errorf("age = %d; want 2", age)
			}
		})
	}
}
