package state

import (
	"path/filepath"
	"testing"

	"drainboard/model"
)

// The journal in testdata is what the first version wrote. It must be read, and
// written in the same bytes, by every later one.
func TestTheFormatOnDiskStays(t *testing.T) {
	const file = "2026-11.toml"
	want := readFile(t, roomsDir, "every-kind", journalDir, file)
	entries := openRoom(t, filepath.Join(roomsDir, "every-kind"), Options{}).Ledger().Entries()
	if len(entries) != len(everyKind()) {
		t.Errorf("%d entries; want %d", len(entries), len(everyKind()))
	}
	for name, list := range map[string][]model.Entry{"read": entries, "made": loaded(t, everyKind())} {
		dir := newRoom(t)
		f := openRoom(t, dir, Options{Write: true})
		if err := f.Append(list...); err != nil {
			t.Fatal(err)
		}
		if got := readFile(t, dir, journalDir, file); got != want {
			t.Errorf("%s entries are written as\n%s\nwant\n%s", name, got, want)
		}
	}
	noProblems(t, filepath.Join(roomsDir, "every-kind"))
}
