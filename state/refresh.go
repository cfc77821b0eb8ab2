package state

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"time"
)

// stamp tells whether the journal may have changed.
type stamp struct {
	file string // the last journal file
	size int64
	at   time.Time
}

func (j *journal) stamp() stamp {
	files, err := j.files()
	if err != nil || len(files) == 0 {
		return stamp{}
	}
	last := files[len(files)-1]
	info, err := os.Stat(j.path(last))
	if err != nil {
		return stamp{}
	}
	return stamp{last, info.Size(), info.ModTime()}
}

// syncAll makes durable what is read: a program that was killed may have left
// entries that were written and not yet flushed.
func (j *journal) syncAll() error {
	if j.at.file == "" {
		return nil
	}
	f, err := os.OpenFile(j.path(j.at.file), os.O_RDWR, 0)
	if err != nil {
		return err
	}
	defer f.Close()
	if err := j.disk.sync(f); err != nil {
		return fmt.Errorf("flush the journal: %w", err)
	}
	for _, dir := range []string{filepath.Join(j.dir, journalDir), j.dir} {
		if err := j.disk.syncDir(dir); err != nil {
			return fmt.Errorf("flush the journal: %w", err)
		}
	}
	return nil
}

// Refresh takes in what another program has appended since, and reports whether
// there was anything. It costs two look-ups on the disk when there is not. After
// a change the caller asks for Room and Ledger again. A room that is open for
// writing has nothing to take in. On an error the Folder stays as it was, and
// the error comes back until the journal changes.
//
// It changes the Ledger, so it is called where the Ledger is read.
func (f *Folder) Refresh() (changed bool, err error) {
	if f.lock != nil {
		return false, nil
	}
	now := f.journal.stamp()
	if now == f.seen {
		return false, f.failed
	}
	changed, f.failed = f.follow()
	f.seen = now
	return changed && f.failed == nil, f.failed
}

// follow reads on from the cursor; where what is there does not follow from what
// was read, everything is read anew.
func (f *Folder) follow() (bool, error) {
	if last := f.journal.at.file; last != "" {
		// A file may shrink when a writer takes back what failed; it never goes.
		if _, err := os.Stat(f.journal.path(last)); errors.Is(err, fs.ErrNotExist) {
			return false, Problem{File: f.journal.name(last), Text: "is gone", Hint: "restore it from a backup; what is shown was read before"}
		}
	}
	before, places := f.journal.at, len(f.journal.places)
	entries, rest, err := f.journal.read()
	if err != nil || rest != nil && !rest.torn || rest == nil && len(entries) == 0 {
		f.journal.at, f.journal.places = before, f.journal.places[:places]
		return f.reload()
	}
	for _, e := range entries {
		// The writer has checked it, but perhaps by another room.toml.
		if e.N != f.ledger.Next() || f.ledger.Check(&e, e.At) != nil || f.ledger.Apply(e) != nil {
			return f.reload()
		}
	}
	return len(entries) > 0, nil
}

func (f *Folder) reload() (bool, error) {
	// An unfinished entry may be under way; it is no news.
	_, err := f.load()
	return true, err
}
