package state

import (
	"reflect"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"drainboard/model"
)

// drawFact makes any fact, true or not, of the tanks C1 to C4.
func drawFact(t *rapid.T, next int) model.Fact {
	tank := rapid.SampledFrom([]string{"C1", "C2", "C3", "c4"}).Draw(t, "tank")
	other := rapid.SampledFrom([]string{"C1", "C2", "C3", "C4"}).Draw(t, "other")
	text := rapid.StringOfN(rapid.RuneFrom([]rune("ab\"\\ \n\t°é#=[]")), 1, 12, -1).Draw(t, "text")
	celsius := rapid.Float64Range(20, 33).Draw(t, "celsius")
	larvae := float64(rapid.IntRange(1, 1e6).Draw(t, "larvae"))
	entry := rapid.IntRange(1, max(1, next-1)).Draw(t, "entry")
	return rapid.SampledFrom([]model.Fact{
		&model.Filled{Tank: tank, Celsius: &celsius},
		&model.Filled{Tank: tank},
		&model.Stocked{Tank: tank, Batch: "26-05", Hatched: model.Hatched{Date: model.Day{Year: 2026, Month: 11, Date: 1}}, Larvae: &larvae},
		&model.Stocked{Tank: tank, Batch: "26-06", Hatched: model.Hatched{Moment: at("2026-11-02T04:00:00Z")}, Origin: text},
		&model.Moved{From: tank, To: other, ToCelsius: &celsius},
		&model.Moved{From: tank, To: other, Join: true, Share: num(0.25), Why: text},
		&model.Washed{Tank: tank},
		&model.Temperature{Tank: tank, Celsius: celsius},
		&model.Sizes{Tank: tank, UM: []float64{celsius * 10, 300}},
		&model.Look{Tank: tank, Lobes: new(4), Text: text},
		&model.Count{Tank: tank, Live: []int{3, 5}, SampleML: 1, HoldingML: 100},
		&model.Fed{Tank: tank, Litres: map[string]float64{"iso": celsius / 100}},
		&model.Removed{Tank: tank, Larvae: larvae, Why: text},
		&model.Ended{Tank: tank, Why: model.Lost},
		&model.Service{Tank: tank, Out: celsius < 25},
		&model.Suspect{Tank: tank, On: celsius < 25, Why: text},
		&model.Opened{Moves: []model.Leg{{From: tank, To: other}}},
		&model.StepDone{Session: entry, Move: 1, Name: "fed", Why: text},
		&model.Closed{Session: entry, Complete: celsius < 25},
		&model.Corrected{Entry: entry, Why: text, Void: true},
		&model.Corrected{Entry: entry, Why: text, Set: map[string]any{"celsius": celsius}},
		&model.Corrected{Entry: entry, Why: text, Set: map[string]any{"at": at("2026-11-10T00:00:00Z").Add(time.Duration(larvae) * time.Second)}},
		&model.Corrected{Entry: entry, Why: text, Set: map[string]any{"tank": "c2", "why": text}},
		&model.Noted{Text: text, Tank: tank},
	}).Draw(t, "fact")
}

// Whatever is taken and kept, a room that is closed and opened again stands as
// it stood: late entries, corrections, fractions of seconds and all.
func TestARoomOpensAsItWasClosed(t *testing.T) {
	tried, kept := 0, 0
	rapid.Check(t, func(r *rapid.T) {
		dir := newRoom(t)
		f, err := Open(dir, Options{Write: true})
		if err != nil {
			r.Fatal(err)
		}
		defer f.Close()
		moment := at("2026-11-10T00:00:00Z")
		for range rapid.IntRange(1, 40).Draw(r, "entries") {
			moment = moment.Add(time.Duration(rapid.Int64Range(-2e12, 2e13).Draw(r, "gap")))
			tried++
			e := model.Entry{At: moment, Keyed: moment.Add(time.Hour), Fact: drawFact(r, f.Ledger().Next())}
			if f.Ledger().Check(&e, later) != nil {
				continue
			}
			if err := f.Append(e); err != nil {
				r.Fatalf("%s passed Check: %v", e.Kind(), err)
			}
			kept++
			if err := f.Ledger().Apply(e); err != nil {
				r.Fatalf("%s passed Check: %v", e.Kind(), err)
			}
		}
		f.Close()
		again, err := Open(dir, Options{})
		if err != nil {
			r.Fatal(err)
		}
		if diff := diffLedgers(f.Ledger(), again.Ledger()); diff != "" {
			r.Errorf("the room differs (-closed +opened):\n%s", diff)
		}
	})
	if kept < tried/10 {
		t.Errorf("only %d of %d entries could be true; the test tries too little", kept, tried)
	}
	t.Logf("%d of %d entries kept", kept, tried)
}

func diffLedgers(a, b *model.Ledger) string {
	all := cmp.Exporter(func(reflect.Type) bool { return true })
	for _, pair := range [][2]any{
		{a.Entries(), b.Entries()}, {a.Events(), b.Events()}, {a.Tanks(), b.Tanks()}, {a.Batches(), b.Batches()}, {a.Sessions(), b.Sessions()},
	} {
		if diff := cmp.Diff(pair[0], pair[1], byInstant, all); diff != "" {
			return diff
		}
	}
	return ""
}
