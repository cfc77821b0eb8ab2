package model

import (
	"encoding/json"
	"fmt"
	"testing"
	"time"

	"pgregory.net/rapid"
)

// drawFact draws one fact of almost any kind, most of them possible.
func drawFact(t *rapid.T, l *Ledger) Fact {
	tank := func(label string) string { return rapid.SampledFrom([]string{"C1", "C2", "C3"}).Draw(t, label) }
	switch rapid.IntRange(0, 13).Draw(t, "kind") {
	case 0:
		return &Filled{Tank: tank("tank"), Celsius: num(27.5)}
	case 1:
		return &Washed{Tank: tank("tank")}
	case 2:
		return &Stocked{Tank: tank("tank"), Batch: rapid.SampledFrom([]string{"a", "b"}).Draw(t, "batch"), Hatched: hatched("2026-11-08"), Larvae: num(1000)}
	case 3, 4:
		m := &Moved{From: tank("from"), To: tank("to"), Join: rapid.Bool().Draw(t, "join")}
		if rapid.Bool().Draw(t, "split") {
			m.Share = num(0.25)
		}
		return m
	case 5:
		return &Temperature{Tank: tank("tank"), Celsius: float64(rapid.IntRange(20, 300).Draw(t, "celsius"))}
	case 6:
		return &Sizes{Tank: tank("tank"), UM: []float64{300}}
	case 7:
		return &Count{Tank: tank("tank"), Live: []int{3, 4}, SampleML: 1, HoldingML: 100}
	case 8:
		return &Removed{Tank: tank("tank"), Larvae: 10, Why: "sample"}
	case 9:
		return &Ended{Tank: tank("tank"), Why: Lost}
	case 10:
		return &Service{Tank: tank("tank"), Out: rapid.Bool().Draw(t, "out")}
	case 11:
		return &Opened{Moves: []Leg{{tank("from"), tank("to")}}}
	case 12:
		session := 1
		if s := l.Session(); s != nil {
			session = s.N
		}
		return &Closed{Session: session, Complete: rapid.Bool().Draw(t, "complete")}
	}
	n := rapid.IntRange(1, l.Next()).Draw(t, "entry")
	if rapid.Bool().Draw(t, "void") {
		return &Corrected{Entry: n, Why: "slip", Void: true}
	}
	return &Corrected{Entry: n, Why: "slip", Set: map[string]any{"celsius": 26.5}}
}

// picture is everything the fold holds, for comparison.
func picture(t *rapid.T, l *Ledger) string {
	b, err := json.Marshal([]any{l.fold.tanks, l.fold.batches, l.fold.sessions, l.fold.supplies, l.fold.cultures, l.fold.last})
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// Whatever is entered, late or corrected, the ledger that grew entry by entry
// is the one that folds the whole history from scratch; and what was refused
// left no trace.
func TestGrownLedgerIsTheReplayedOne(t *testing.T) {
	room := smallRoom(t)
	rapid.Check(t, func(t *rapid.T) {
		l := NewLedger(room)
		start := at("2026-11-10T09:00:00-05:00")
		for i := range rapid.IntRange(1, 25).Draw(t, "entries") {
			when := start.Add(time.Duration(i)*time.Hour - time.Duration(rapid.IntRange(0, 3).Draw(t, "late"))*time.Hour*2)
			before := picture(t, l)
			e := Entry{At: when, Fact: drawFact(t, l)}
			if err := l.Check(&e, later); err != nil {
				if got := picture(t, l); got != before {
					t.Fatalf("refused entry changed the room:\n%s\n%s", before, got)
				}
				continue
			}
			if err := l.Apply(e); err != nil {
				t.Fatalf("Check let entry %d pass, Apply refused: %v", e.N, err)
			}
			replayed, err := LoadLedger(room, l.Entries())
			if err != nil {
				t.Fatalf("the history does not load: %v", err)
			}
			if got, want := picture(t, l), picture(t, replayed); got != want {
				t.Fatalf("after entry %d (%s)\n grown    %s\n replayed %s", e.N, e.Kind(), got, want)
			}
		}
	})
}

// Every kind keeps its fields through a copy, and the table of fields of each
// kind is sound.
func TestFieldsOfEveryKind(t *testing.T) {
	for _, k := range Kinds() {
		t.Run(string(k), func(t *testing.T) {
			f, ok := NewFact(k)
			if !ok || f.Kind() != k {
				t.Fatalf("NewFact(%s) = %v, %v", k, f, ok)
			}
			seen := map[string]bool{}
			for _, field := range f.Fields() {
				if seen[field.Name] {
					t.Errorf("field %s stands twice", field.Name)
				}
				seen[field.Name] = true
			}
			if got, want := fmt.Sprintf("%+v", CopyFact(f)), fmt.Sprintf("%+v", f); got != want {
				t.Errorf("copy = %s; want %s", got, want)
			}
		})
	}
}
