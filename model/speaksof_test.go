package model

import (
	"maps"
	"slices"
	"testing"
)

// Every field that takes a tank counts, whatever kind is added later: the table
// of fields is the oracle.
func TestSpeaksOfFollowsTheFields(t *testing.T) {
	named := 0
	for _, kind := range Kinds() {
		blank, _ := NewFact(kind)
		for i, field := range blank.Fields() {
			if field.Type != TankName && field.Type != Legs {
				continue
			}
			named++
			f, _ := NewFact(kind)
			var value any = "C5"
			if field.Type == Legs {
				value = []Leg{{"C1", "C2"}, {"C4", "C5"}}
			}
			if err := f.Fields()[i].Set(value); err != nil {
				t.Fatal(err)
			}
			if !SpeaksOf(f, "C5") {
				t.Errorf("%s with %s = C5 is said not to speak of C5", kind, field.Name)
			}
			if SpeaksOf(f, "C6") {
				t.Errorf("%s with %s = C5 is said to speak of C6", kind, field.Name)
			}
		}
		if SpeaksOf(blank, "") {
			t.Errorf("an empty %s is said to speak of a tank without a name", kind)
		}
	}
	if named < 15 {
		t.Errorf("%d fields take a tank; the kinds have more", named)
	}
}

func TestCorrectedBy(t *testing.T) {
	l := stocked(t)
	mustEnter(t, l, "2026-11-11T10:00:00-05:00", &Temperature{Tank: "C1", Celsius: 27})
	mustEnter(t, l, "2026-11-11T10:01:00-05:00", &Corrected{Entry: 4, Why: "slip", Set: map[string]any{"celsius": 27.4}})
	mustEnter(t, l, "2026-11-11T10:02:00-05:00", &Corrected{Entry: 4, Why: "slip", Set: map[string]any{"celsius": 27.5}})
	mustEnter(t, l, "2026-11-11T10:03:00-05:00", &Corrected{Entry: 3, Why: "not filled", Void: true})
	mustEnter(t, l, "2026-11-11T10:04:00-05:00", &Corrected{Entry: 7, Why: "it was", Void: true})
	want := map[int][]int{4: {5, 6}, 7: {8}}
	if got := l.CorrectedBy(); !maps.EqualFunc(got, want, slices.Equal) {
		t.Errorf("corrections in force = %v; want %v, the void one left out", got, want)
	}
}
