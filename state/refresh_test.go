package state

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"drainboard/model"
)

// refreshed asks for news and fails the test where that is not as expected.
func refreshed(t *testing.T, f *Folder, changed bool, entries int) {
	t.Helper()
	got, err := f.Refresh()
	if err != nil || got != changed || len(f.Ledger().Entries()) != entries {
		t.Fatalf("refresh: changed %v, %d entries, %v; want %v, %d", got, len(f.Ledger().Entries()), err, changed, entries)
	}
}

func TestAReaderFollowsAWriter(t *testing.T) {
	dir := newRoom(t)
	entries := busyEntries(200)
	reader := openRoom(t, dir, Options{})
	writer := openRoom(t, dir, Options{Write: true})
	refreshed(t, reader, false, 0)
	for i, e := range entries {
		if i == 150 { // over the turn of a month
			for k := range entries[150:] {
				entries[150+k].At = entries[150+k].At.AddDate(0, 1, 0)
			}
			e = entries[150]
		}
		if err := writer.Append(e); err != nil {
			t.Fatal(err)
		}
		if i%3 == 0 {
			refreshed(t, reader, true, i+1)
			refreshed(t, reader, false, i+1)
		}
	}
	refreshed(t, reader, true, 200)
	if !isPrefix(t, reader.Ledger().Entries(), entries) {
		t.Error("what was followed is not what was written")
	}
	if tank, _ := reader.Ledger().Tank("C1"); tank.State == model.Dirty && !tank.Known {
		t.Error("what was followed was not folded in")
	}
	refreshed(t, writer, false, 0) // a writer has nothing to take in
}

// A reader that comes upon a write under way waits for the rest of it.
func TestAWriteUnderWayIsNoNews(t *testing.T) {
	dir, file, _ := kept(t, 4)
	whole := readFile(t, dir, journalDir, file)
	last := strings.LastIndex(whole, entryHead)
	writeFile(t, whole[:last-1], dir, journalDir, file)
	reader := openRoom(t, dir, Options{})
	for cut := last + 1; cut < len(whole)-1; cut += 7 {
		writeFile(t, whole[:cut], dir, journalDir, file)
		refreshed(t, reader, false, 3)
	}
	writeFile(t, whole, dir, journalDir, file)
	refreshed(t, reader, true, 4)
	if len(reader.Notices()) > 0 {
		t.Errorf("notices = %q; want none", reader.Notices())
	}
}

// A writer takes back what it could not flush; a reader that had seen it must
// not keep it.
func TestWhatWasTakenBackIsForgotten(t *testing.T) {
	for name, second := range map[string]string{"shorter": "x", "longer": strings.Repeat("a longer remark ", 9), "as long": "second"} {
		t.Run(name, func(t *testing.T) {
			dir, _, _ := kept(t, 3)
			writer := openRoom(t, dir, Options{Write: true})
			reader := openRoom(t, dir, Options{})
			noted := func(text string) model.Entry {
				return model.Entry{N: 4, At: at("2024-01-06T00:00:00Z"), Fact: &model.Noted{Text: text}}
			}
			writer.journal.disk.sync = func(*os.File) error {
				writer.journal.disk.sync = (*os.File).Sync
				refreshed(t, reader, true, 4)
				return errDevice
			}
			if err := writer.Append(noted("first!")); err == nil {
				t.Fatal("the append succeeded")
			}
			if err := writer.Append(noted(second)); err != nil {
				t.Fatal(err)
			}
			refreshed(t, reader, true, 4)
			if got := reader.Ledger().Entries()[3].Fact.(*model.Noted).Text; got != second {
				t.Errorf("the reader holds %q; want %q", got, second)
			}
		})
	}
}

// Entries that need a tank the reader's room.toml did not have are followed by
// reading the room anew.
func TestAReaderTakesInAChangedRoom(t *testing.T) {
	dir, _, _ := kept(t, 3)
	reader := openRoom(t, dir, Options{})
	writeFile(t, readFile(t, dir, roomFile)+"\n[[tank]]\nname = \"D1\"\nlitres = 60\n", dir, roomFile)
	writer := openRoom(t, dir, Options{Write: true})
	if err := writer.Append(model.Entry{N: 4, At: at("2024-01-06T00:00:00Z"), Fact: &model.Filled{Tank: "D1"}}); err != nil {
		t.Fatal(err)
	}
	refreshed(t, reader, true, 4)
	if _, ok := reader.Room().Tank("D1"); !ok || reader.Ledger().Room() != reader.Room() {
		t.Error("the reader has not taken in the new tank")
	}
}

// Damage met on the way is said as long as it is there, and the reader keeps
// what it had.
func TestDamageMetWhileFollowing(t *testing.T) {
	dir, file, _ := kept(t, 4)
	whole := readFile(t, dir, journalDir, file)
	reader := openRoom(t, dir, Options{})
	writeFile(t, strings.Replace(whole, "9000", "8000", 1), dir, journalDir, file)
	touch(t, dir, file, time.Second)
	for range 2 {
		changed, err := reader.Refresh()
		if changed || err == nil || !strings.Contains(err.Error(), file+":10: entry 2 does not match its sum") {
			t.Fatalf("refresh: %v %v; want the damage named", changed, err)
		}
		if n := len(reader.Ledger().Entries()); n != 4 {
			t.Errorf("the reader is left with %d entries; want the 4 it had", n)
		}
	}
	writeFile(t, whole, dir, journalDir, file)
	touch(t, dir, file, 2*time.Second)
	if _, err := reader.Refresh(); err != nil {
		t.Errorf("after the journal was put back: %v", err)
	}
	if err := os.Remove(filepath.Join(dir, journalDir, file)); err != nil {
		t.Fatal(err)
	}
	if _, err := reader.Refresh(); err == nil || len(reader.Ledger().Entries()) != 4 {
		t.Errorf("a journal that is gone was taken for an empty one: %v", err)
	}
}

// touch sets a file's time, so that a change of the same length shows.
func touch(t *testing.T, dir, file string, ahead time.Duration) {
	t.Helper()
	when := at("2026-11-25T00:00:00Z").Add(ahead)
	if err := os.Chtimes(filepath.Join(dir, journalDir, file), when, when); err != nil {
		t.Fatal(err)
	}
}

func BenchmarkRefreshWithoutNews(b *testing.B) {
	dir := newRoom(b)
	writeJournal(b, dir, busyEntries(20_000))
	f, err := Open(dir, Options{})
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if changed, err := f.Refresh(); changed || err != nil {
			b.Fatal(changed, err)
		}
	}
}
