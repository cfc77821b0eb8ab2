package model

import (
	"fmt"
	"testing"
	"time"
)

// What Apply takes over from Check is the same as what it would fold itself, and
// only for the very entry that was checked.
func TestApplyTakesOverOnlyWhatWasChecked(t *testing.T) {
	late := func(celsius float64) Entry {
		return Entry{At: at("2026-11-10T12:00:00-05:00"), Fact: &Temperature{Tank: "C1", Celsius: celsius}}
	}
	l := stocked(t)
	mustEnter(t, l, "2026-11-12T10:00:00-05:00", &Moved{From: "C1", To: "C2"})
	first, second := late(27), late(29)
	for _, e := range []*Entry{&first, &second} {
		if err := l.Check(e, later); err != nil {
			t.Fatal(err)
		}
	}
	if err := l.Apply(first); err != nil { // not the one checked last
		t.Fatal(err)
	}
	if got := l.Batches()[0].Heat[0].Value; got != 27 {
		t.Errorf("the reading is %v; want the 27 that was applied", got)
	}
	if err := l.Check(&second, later); err != nil {
		t.Fatal(err)
	}
	if err := l.Apply(second); err != nil {
		t.Fatal(err)
	}
	again, err := LoadLedger(l.Room(), l.Entries())
	if err != nil {
		t.Fatal(err)
	}
	if got, want := fmt.Sprint(l.Batches()[0].Heat), fmt.Sprint(again.Batches()[0].Heat); got != want {
		t.Errorf("readings %s; folded anew %s", got, want)
	}
	if l.checked != nil {
		t.Error("the ledger that was checked is still held")
	}
}

// BenchmarkTakeBack voids the last of 100,000 entries, as a microscopist does who
// mistyped.
func BenchmarkTakeBack(b *testing.B) {
	l := NewLedger(smallRoom(b))
	start := at("2020-11-10T09:00:00-05:00")
	add := func(minute int, f Fact) {
		e := Entry{At: start.Add(time.Duration(minute) * time.Minute), Fact: f}
		if err := l.Check(&e, later); err != nil {
			b.Fatal(err)
		}
		if err := l.Apply(e); err != nil {
			b.Fatal(err)
		}
	}
	add(0, &Stocked{Tank: "C1", Batch: "x", Hatched: hatched("2020-11-08")})
	for i := 1; i < 100_000; i++ {
		if i%3 == 0 {
			add(i, &Sizes{Tank: "C1", UM: []float64{500}})
		} else {
			add(i, &Noted{Text: "remark"})
		}
	}
	for b.Loop() {
		add(200_000, &Sizes{Tank: "C1", UM: []float64{500}})
		add(200_000, &Corrected{Entry: l.Next() - 1, Why: "slip", Void: true})
	}
}
