package state

import (
	"errors"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"testing"
	"time"

	"drainboard/model"
)

var errDevice = errors.New("device: no")

// Each step of an append fails in turn. The entry is refused, nothing of it is
// left, and the next append of the same entry succeeds.
func TestAnAppendThatFailsLeavesNothing(t *testing.T) {
	// fail lets the nth call of a step fail, once.
	cases := map[string]func(d *disk){
		"nothing written": func(d *disk) {
			once := true
			d.write = func(f *os.File, b []byte, at int64) (int, error) {
				if once {
					once = false
					return 0, errDevice
				}
				return f.WriteAt(b, at)
			}
		},
		"half written": func(d *disk) {
			once := true
			d.write = func(f *os.File, b []byte, at int64) (int, error) {
				if once {
					once = false
					n, _ := f.WriteAt(b[:len(b)/2], at)
					return n, errDevice
				}
				return f.WriteAt(b, at)
			}
		},
		"not flushed": func(d *disk) { d.sync = failing(d.sync, 1) },
		"not flushed, nor taken back": func(d *disk) {
			d.sync = failing(d.sync, 1)
			d.truncate = failingCut(d.truncate, 1)
		},
		"not flushed, taking back not flushed": func(d *disk) { d.sync = failing(d.sync, 2) },
		"folder not flushed": func(d *disk) {
			once := true
			d.syncDir = func(path string) error {
				if once {
					once = false
					return errDevice
				}
				return syncDir(path)
			}
		},
	}
	for name, fault := range cases {
		for _, begun := range []int{0, 3} {
			t.Run(name+map[int]string{0: ", first entry", 3: ", fourth entry"}[begun], func(t *testing.T) {
				dir := newRoom(t)
				entries := busyEntries(begun + 2)
				if begun > 0 {
					writeJournal(t, dir, entries[:begun])
				}
				f := openRoom(t, dir, Options{Write: true})
				fault(&f.journal.disk)
				err := f.Append(entries[begun])
				if begun > 0 && name == "folder not flushed" {
					if err != nil { // the file was there, no folder changes
						t.Fatalf("append: %v", err)
					}
					return
				}
				if !errors.Is(err, errDevice) || !strings.HasPrefix(err.Error(), "not saved: ") {
					t.Fatalf("append = %v; want not saved, and why", err)
				}
				if !strings.Contains(name, "nor taken back") {
					along := openRoom(t, dir, Options{})
					if n := len(along.Ledger().Entries()); n != begun || len(along.Notices()) > 0 {
						t.Errorf("after the failure %d entries, notices %q; want %d and none", n, along.Notices(), begun)
					}
				}
				for _, e := range entries[begun:] {
					if err := f.Append(e); err != nil {
						t.Fatalf("the append after it: %v", err)
					}
				}
				f.Close()
				noProblems(t, dir)
				if n := len(openRoom(t, dir, Options{}).Ledger().Entries()); n != begun+2 {
					t.Errorf("%d entries; want %d", n, begun+2)
				}
			})
		}
	}
}

func failing(sync func(*os.File) error, times int) func(*os.File) error {
	return func(f *os.File) error {
		if times > 0 {
			times--
			return errDevice
		}
		return sync(f)
	}
}

func failingCut(cut func(*os.File, int64) error, times int) func(*os.File, int64) error {
	return func(f *os.File, size int64) error {
		if times > 0 {
			times--
			return errDevice
		}
		return cut(f, size)
	}
}

// What is not written back is in the way of every later append, never passed over.
func TestNothingIsAppendedBehindWhatCouldNotBeTakenBack(t *testing.T) {
	dir, _, _ := kept(t, 3)
	f := openRoom(t, dir, Options{Write: true})
	f.journal.disk.sync = failing(f.journal.disk.sync, 1)
	f.journal.disk.truncate = failingCut(f.journal.disk.truncate, 3)
	e := busyEntries(4)[3]
	for i := range 3 {
		if err := f.Append(e); !errors.Is(err, errDevice) {
			t.Errorf("append %d = %v; want it refused", i+1, err)
		}
	}
	if err := f.Append(e); err != nil {
		t.Error(err)
	}
	f.Close()
	noProblems(t, dir)
}

// A program that is closed without another append takes back what it can.
func TestClosingTakesBackWhatFailed(t *testing.T) {
	dir, file, _ := kept(t, 3)
	before := readFile(t, dir, journalDir, file)
	f := openRoom(t, dir, Options{Write: true})
	f.journal.disk.sync = failing(f.journal.disk.sync, 1)
	f.journal.disk.truncate = failingCut(f.journal.disk.truncate, 1)
	if err := f.Append(busyEntries(4)[3]); err == nil {
		t.Fatal("the append succeeded")
	}
	if readFile(t, dir, journalDir, file) == before {
		t.Fatal("there is nothing to take back")
	}
	if err := f.Close(); err != nil {
		t.Error(err)
	}
	if readFile(t, dir, journalDir, file) != before {
		t.Error("what was not saved stands in the journal")
	}
}

// Appends from several goroutines come one after another.
func TestAppendsDoNotMix(t *testing.T) {
	dir := newRoom(t)
	f := openRoom(t, dir, Options{Write: true})
	var group sync.WaitGroup
	for _, e := range busyEntries(20) {
		group.Go(func() {
			for f.Append(e) != nil {
				runtime.Gosched() // not its turn yet
			}
		})
	}
	group.Wait()
	f.Close()
	noProblems(t, dir)
}

// An entry counts as saved only when the device has been told to keep it: every
// write is followed by a flush, and a new file by one of its folder.
func TestEveryWriteIsFlushedBeforeItCounts(t *testing.T) {
	dir := newRoom(t)
	f := openRoom(t, dir, Options{Write: true})
	var calls []string
	real := f.journal.disk
	f.journal.disk = disk{
		write: func(file *os.File, b []byte, at int64) (int, error) {
			calls = append(calls, "write")
			return real.write(file, b, at)
		},
		sync: func(file *os.File) error {
			calls = append(calls, "sync")
			return real.sync(file)
		},
		syncDir: func(path string) error {
			calls = append(calls, "folder "+filepath.Base(path))
			return real.syncDir(path)
		},
		truncate: real.truncate,
	}
	entries := busyEntries(7)
	entries[6].At = entries[6].At.AddDate(0, 1, 0)
	for _, batch := range [][]model.Entry{entries[:1], entries[1:2], entries[2:6], entries[6:]} {
		if err := f.Append(batch...); err != nil {
			t.Fatal(err)
		}
	}
	want := "folder room write sync folder journal write sync write sync write sync folder journal"
	if got := strings.Join(calls, " "); got != want {
		t.Errorf("calls = %s\nwant    %s", got, want)
	}
}

func TestAppendOfNothing(t *testing.T) {
	dir := newRoom(t)
	f := openRoom(t, dir, Options{Write: true})
	if err := f.Append(); err != nil {
		t.Error(err)
	}
	if _, err := os.Stat(filepath.Join(dir, journalDir)); err == nil {
		t.Error("a journal was made of nothing")
	}
}

func TestEntriesOutOfTurnAreNotAppended(t *testing.T) {
	dir, file, entries := kept(t, 4)
	before := readFile(t, dir, journalDir, file)
	more := busyEntries(8)
	f := openRoom(t, dir, Options{Write: true})
	for name, batch := range map[string][]model.Entry{
		"again":       {entries[3]},
		"one too far": {more[5]},
		"a gap":       {more[4], more[6]},
		"one twice":   {more[4], more[4]},
	} {
		if err := f.Append(batch...); err == nil || !strings.HasPrefix(err.Error(), "not saved: entry ") {
			t.Errorf("%s: %v; want it refused", name, err)
		}
	}
	if readFile(t, dir, journalDir, file) != before {
		t.Error("the journal was changed")
	}
}

// What no room could read back is not written, whatever let it pass.
func TestWhatWouldNotReadBackIsNotAppended(t *testing.T) {
	dir, file, _ := kept(t, 3)
	before := readFile(t, dir, journalDir, file)
	f := openRoom(t, dir, Options{Write: true})
	for name, fact := range map[string]model.Fact{
		"impossible reading": &model.Temperature{Tank: "C1", Celsius: 270},
		"empty list":         &model.Sizes{Tank: "C1"},
		"no text":            &model.Noted{},
		"no name":            &model.Filled{},
	} {
		e := model.Entry{N: 4, At: at("2024-01-06T00:00:00Z"), Fact: fact}
		if err := f.Append(e); err == nil || !strings.Contains(err.Error(), "would not read back") {
			t.Errorf("%s: %v; want it refused", name, err)
		}
	}
	if readFile(t, dir, journalDir, file) != before {
		t.Error("the journal was changed")
	}
}

// Another program that writes into the journal without the lock must not be
// written over.
func TestAJournalChangedBeneathIsNotWrittenTo(t *testing.T) {
	for name, change := range map[string]func(string) string{
		"added to":  func(s string) string { return s + "\n# remark\n" },
		"shortened": func(s string) string { return s[:len(s)-5] },
	} {
		t.Run(name, func(t *testing.T) {
			dir, file, _ := kept(t, 3)
			f := openRoom(t, dir, Options{Write: true})
			text := change(readFile(t, dir, journalDir, file))
			writeFile(t, text, dir, journalDir, file)
			if err := f.Append(busyEntries(4)[3]); err == nil || !strings.Contains(err.Error(), "changed by another program") {
				t.Errorf("append = %v; want it refused", err)
			}
			if readFile(t, dir, journalDir, file) != text {
				t.Error("the journal was written to")
			}
		})
	}
}

func TestOfManyEntriesAllOrNone(t *testing.T) {
	dir := newRoom(t)
	f := openRoom(t, dir, Options{Write: true})
	entries := busyEntries(300)
	real := f.journal.disk.write
	f.journal.disk.write = func(file *os.File, b []byte, at int64) (int, error) {
		n, _ := real(file, b[:len(b)-200], at)
		return n, errDevice
	}
	if err := f.Append(entries...); err == nil {
		t.Fatal("a short write counted as whole")
	}
	if n := len(openRoom(t, dir, Options{}).Ledger().Entries()); n != 0 {
		t.Errorf("%d entries were kept; want none", n)
	}
	f.journal.disk.write = real
	if err := f.Append(entries...); err != nil {
		t.Fatal(err)
	}
	if n := len(openRoom(t, dir, Options{}).Ledger().Entries()); n != 300 {
		t.Errorf("%d entries were kept; want all 300", n)
	}
}

// The machine's clock goes back over the turn of a month: entries go on in the
// last file, whose name says nothing of when they were keyed.
func TestTheClockGoesBackOverTheTurnOfAMonth(t *testing.T) {
	dir := newRoom(t)
	f := openRoom(t, dir, Options{Write: true})
	for i, keyed := range []string{
		"2026-11-30T23:00:00Z", "2026-12-01T00:30:00Z", "2026-11-30T00:30:00Z", "2026-11-30T12:00:00Z", "2027-01-01T00:00:00Z",
	} {
		e := model.Entry{N: i + 1, At: at("2026-11-20T08:00:00Z").Add(time.Duration(i) * time.Minute), Keyed: at(keyed), Fact: &model.Noted{Text: "x"}}
		if err := f.Append(e); err != nil {
			t.Fatal(err)
		}
	}
	f.Close()
	noProblems(t, dir)
	got := openRoom(t, dir, Options{}).Ledger().Entries()
	if len(got) != 5 || !got[2].Keyed.Equal(at("2026-11-30T00:30:00Z")) {
		t.Errorf("read back: %v", got)
	}
	for file, want := range map[string]int{"2026-11.toml": 1, "2026-12.toml": 3, "2027-01.toml": 1} {
		if n := len(pieces(t, readFile(t, dir, journalDir, file))); n != want {
			t.Errorf("%s holds %d entries; want %d", file, n, want)
		}
	}
}

// The file is named for the month in UTC in which an entry was keyed, not for
// that in which it happened.
func TestEntriesGoByTheMonthOfKeying(t *testing.T) {
	for name, c := range map[string]struct{ at, keyed, want string }{
		"keyed at once":        {"2026-11-30T18:59:59-05:00", "", "2026-11"},
		"next month in UTC":    {"2026-11-30T19:00:00-05:00", "", "2026-12"},
		"keyed a month later":  {"2026-10-30T19:00:00-05:00", "2026-11-02T09:00:00-05:00", "2026-11"},
		"keyed within seconds": {"2026-11-30T18:59:50-05:00", "2026-11-30T19:00:10-05:00", "2026-12"},
	} {
		t.Run(name, func(t *testing.T) {
			dir := newRoom(t)
			f := openRoom(t, dir, Options{Write: true})
			e := model.Entry{N: 1, At: at(c.at), Fact: &model.Noted{Text: "x"}}
			if c.keyed != "" {
				e.Keyed = at(c.keyed)
			}
			if err := f.Append(e); err != nil {
				t.Fatal(err)
			}
			if files, err := f.journal.files(); err != nil || len(files) != 1 || files[0] != c.want+".toml" {
				t.Errorf("files = %v %v; want %s.toml", files, err, c.want)
			}
		})
	}
}

// BenchmarkAppend measures an entry of the usual size beside the least that any
// program needs to keep as many bytes: one write and one flush.
func BenchmarkAppend(b *testing.B) {
	entry := func(n int) model.Entry {
		return model.Entry{N: n, At: at("2026-11-25T09:14:05-05:00"), By: "KT", Fact: &model.Temperature{Tank: "C1", Celsius: 27.4}}
	}
	b.Run("append", func(b *testing.B) {
		f, err := Open(newRoom(b), Options{Write: true})
		if err != nil {
			b.Fatal(err)
		}
		defer f.Close()
		n := 0
		for b.Loop() {
			n++
			if err := f.Append(entry(n)); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("write and flush alone", func(b *testing.B) {
		f, err := os.Create(filepath.Join(b.TempDir(), "floor"))
		if err != nil {
			b.Fatal(err)
		}
		defer f.Close()
		text := appendEntry(nil, entry(1000), time.UTC)
		text = append(text, sumHead+sumOf("", string(text))+"\"\n\n"...)
		for b.Loop() {
			if _, err := f.Write(text); err != nil {
				b.Fatal(err)
			}
			if err := f.Sync(); err != nil {
				b.Fatal(err)
			}
		}
	})
}
