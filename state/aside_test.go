package state

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// torn makes a room whose fourth entry is unfinished, and returns the text of
// its journal file and what is unfinished of it.
func torn(t *testing.T) (dir, file, text, tail string) {
	t.Helper()
	dir, file, _ = kept(t, 3)
	tail = "[[entry]]\nn = 4\nat = 2024-01-05T"
	text = readFile(t, dir, journalDir, file) + "\n" + tail
	writeFile(t, text, dir, journalDir, file)
	return dir, file, text, tail
}

// Nothing is cut off before its copy is durable.
func TestSettingAsideThatFailsCutsNothing(t *testing.T) {
	for name, fault := range map[string]func(*disk){
		"copy not written":   func(d *disk) { d.write = func(*os.File, []byte, int64) (int, error) { return 0, errDevice } },
		"copy not flushed":   func(d *disk) { d.sync = func(*os.File) error { return errDevice } },
		"folder not flushed": func(d *disk) { d.syncDir = func(string) error { return errDevice } },
	} {
		t.Run(name, func(t *testing.T) {
			dir, file, text, _ := torn(t)
			j := newJournal(dir, nassau(t))
			_, rest, err := j.read()
			if err != nil || rest == nil || !rest.torn {
				t.Fatalf("rest = %+v, %v; want a torn one", rest, err)
			}
			fault(&j.disk)
			if _, err := j.setAside(rest, later); !errors.Is(err, errDevice) {
				t.Errorf("set aside = %v; want the fault", err)
			}
			if readFile(t, dir, journalDir, file) != text {
				t.Error("the journal was cut")
			}
		})
	}
}

// What was set aside is never written over, even within one second.
func TestWhatWasSetAsideStays(t *testing.T) {
	dir, file, text, tail := torn(t)
	for i := range 3 {
		unfinished := text + strings.Repeat("0", i)
		writeFile(t, unfinished, dir, journalDir, file)
		f, err := Open(dir, Options{Write: true, Now: func() time.Time { return later }})
		if err != nil {
			t.Fatal(err)
		}
		f.Close()
	}
	for i, name := range []string{"2024-01-4-20270601T000000Z", "2024-01-4-20270601T000000Z-2", "2024-01-4-20270601T000000Z-3"} {
		want := tail + strings.Repeat("0", i)
		if got := readFile(t, dir, journalDir, quarantineDir, name+".toml"); got != want {
			t.Errorf("%s holds %q; want %q", name, got, want)
		}
	}
}

func TestATornTailIsVerifiedAndRepaired(t *testing.T) {
	dir, file, text, tail := torn(t)
	problems, err := Verify(dir)
	want := file + ":30: entry 4 is unfinished; a write was cut off; opening the room for writing sets it aside, as does drainboard repair"
	if err != nil || len(problems) != 1 || !strings.HasSuffix(problems[0].Error(), want) {
		t.Errorf("verify: %v %v; want %s", problems, err, want)
	}
	if readFile(t, dir, journalDir, file) != text {
		t.Error("verify changed the journal")
	}
	done, err := Repair(dir, Options{Now: func() time.Time { return later }})
	if err != nil || !done.Changed || done.N != 4 || done.Line != 30 || done.File != filepath.Join(dir, journalDir, file) {
		t.Fatalf("repair: %+v %v", done, err)
	}
	if len(done.Kept) != 1 || readFile(t, done.Kept[0]) != tail || !strings.Contains(done.Text, "the journal ends with entry 3") {
		t.Errorf("repair: %+v; want the tail kept and said", done)
	}
	noProblems(t, dir)
	if readFile(t, dir, journalDir, file) != strings.TrimSuffix(text, "\n"+tail) {
		t.Error("the journal is not as it was before the write that was cut off")
	}
}
