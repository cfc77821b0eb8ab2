package state

import (
	"errors"
	"path/filepath"
	"testing"

	"drainboard/model"
)

func TestAFoundedRoomHoldsItsHistory(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "found")
	entries := busyEntries(9)
	for i := range entries {
		entries[i].At = entries[i].At.AddDate(0, i/3, 0)
	}
	text := writeRoom(withDefaults(dir, InitOptions{Zone: "America/Nassau"}))
	if err := Found(dir, text, Options{}, func(*model.Room) ([]model.Entry, error) { return entries, nil }); err != nil {
		t.Fatal(err)
	}
	noProblems(t, dir)
	f := openRoom(t, dir, Options{Write: true})
	if got := f.Ledger().Entries(); len(got) != 9 || !isPrefix(t, got, entries) {
		t.Errorf("%d entries; want the 9 of its history", len(got))
	}
	for _, file := range []string{"2024-01.toml", "2024-02.toml", "2024-03.toml"} {
		if n := len(pieces(t, readFile(t, dir, journalDir, file))); n != 3 {
			t.Errorf("%s holds %d entries; want 3", file, n)
		}
	}
}

func TestFoundSaysWhatWentWrong(t *testing.T) {
	none := func(*model.Room) ([]model.Entry, error) { return nil, nil }
	if err := Found(t.TempDir(), "version = 1\n", Options{}, none); err == nil {
		t.Error("a room without a tank was founded")
	}
	if err := Found(newRoom(t), small, Options{}, none); err == nil {
		t.Error("a room was written over")
	}
	failing := func(*model.Room) ([]model.Entry, error) { return nil, errDevice }
	if err := Found(t.TempDir(), small, Options{}, failing); !errors.Is(err, errDevice) {
		t.Errorf("found = %v; want what its history says", err)
	}
}
