package log

import (
	"fmt"
	"testing"
	"time"

	"drainboard/model"
	"drainboard/tui/desk"
	"drainboard/tui/desk/desktest"
	"drainboard/tui/screen/screentest"
)

// many is a log of n entries, put into the ledger as a journal would be.
func many(t testing.TB, n int) (*Log, *desk.Desk, *desktest.Keeper) {
	t.Helper()
	d, k := desktest.Empty(t)
	entries := make([]model.Entry, n)
	for i := range entries {
		entries[i] = model.Entry{
			N: i + 1, At: d.Now.Add(time.Duration(i-n) * time.Minute), By: "KT",
			Fact: &model.Noted{Tank: []string{"K1", "K3"}[i%2], Text: fmt.Sprint("remark ", i)},
		}
	}
	for i := 2; i < n; i += 500 {
		entries[i].Fact = &model.Corrected{Entry: i, Why: "twice", Void: true}
	}
	ledger, err := model.LoadLedger(d.Ledger.Room(), entries)
	if err != nil {
		t.Fatal(err)
	}
	d.Ledger = ledger
	return New(d, "").(*Log), d, k
}

// BenchmarkView is a frame of a log of 100,000 entries, in the list and in a
// search.
func BenchmarkView(b *testing.B) {
	for _, words := range []string{"", "k3 remark"} {
		b.Run("search="+words, func(b *testing.B) {
			l, _, _ := many(b, 100_000)
			if words != "" {
				typed(b, l, "s", words)
			}
			b.ReportAllocs()
			for b.Loop() {
				l.View(120, 39)
			}
		})
	}
}

// BenchmarkKey is the worst key: a letter of a search that finds nothing, with
// the frame after it.
func BenchmarkKey(b *testing.B) {
	l, _, _ := many(b, 100_000)
	typed(b, l, "s", "zz")
	for b.Loop() {
		screentest.Type(l, "z")
		screentest.Type(l, "backspace")
		l.View(120, 39)
	}
}

// BenchmarkRefresh is what the first frame after a new entry costs more.
func BenchmarkRefresh(b *testing.B) {
	l, _, _ := many(b, 100_000)
	for b.Loop() {
		l.known.made = 0
		l.refresh()
	}
}
