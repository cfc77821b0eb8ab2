package state

import (
	"errors"
	"fmt"
	"sync"
	"time"

	"github.com/gofrs/flock"

	"drainboard/model"
)

// Options say how a room is opened.
type Options struct {
	Write    bool             // take the room for writing
	FallBack bool             // read along where another program has it, with a notice
	Now      func() time.Time // for the lock and for what is set aside; time.Now where nil
	Who      string           // initials or user name, for the lock
}

func (o Options) now() time.Time {
	if o.Now == nil {
		return time.Now()
	}
	return o.Now()
}

// Folder is an open room. Append and Close may be called from any goroutine;
// Append does not touch the Ledger. Refresh changes what Room and Ledger return,
// so it belongs where these are read.
type Folder struct {
	writing sync.Mutex // held by Append and Close
	dir     string
	options Options
	room    *model.Room
	ledger  *model.Ledger
	journal *journal
	lock    *flock.Flock // nil where reading only
	notices []string
	seen    stamp // of the last journal file when it was read, for Refresh
	failed  error // what Refresh met there
}

// Open reads the room in a folder. It refuses a room.toml or a journal in which
// anything is wrong, by one line that names file and line. An unfinished last
// entry, as a power cut leaves it, is no reason to refuse: it is set aside with
// a notice when the room is opened for writing, and left out with a notice when
// it is read.
//
// ErrNoRoom: the folder holds no room. ErrHeld: another program has it for
// writing and FallBack is not set.
func Open(dir string, o Options) (*Folder, error) {
	if err := isRoom(dir); err != nil {
		return nil, err
	}
	f := &Folder{dir: dir, options: o}
	if o.Write {
		if err := f.take(); err != nil {
			return nil, err
		}
	}
	notice, err := f.load()
	if err != nil {
		_ = f.Close()
		return nil, err
	}
	if notice != "" {
		f.notices = append(f.notices, notice)
	}
	return f, nil
}

// take locks the room; with FallBack, a room that cannot be had is read along.
func (f *Folder) take() error {
	lock, err := takeLock(f.dir, f.options.Who, f.options.now())
	held, isHeld := errors.AsType[ErrHeld](err)
	switch {
	case err == nil:
		f.lock = lock
	case !f.options.FallBack && isHeld:
		return err
	case !f.options.FallBack:
		return fmt.Errorf("take the room for writing: %w", err)
	case isHeld:
		f.notices = append(f.notices, fmt.Sprintf("kept by %s; reading along", held.Holder))
	default:
		f.notices = append(f.notices, fmt.Sprintf("cannot be written to (%v); reading only", err))
	}
	return nil
}

// load reads everything. A Folder that fails to load is left as it was.
func (f *Folder) load() (notice string, err error) {
	room, problems, err := readRoom(f.dir)
	if err != nil {
		return "", err
	}
	if err := refused(problems); err != nil {
		return "", err
	}
	j := newJournal(f.dir, room.Zone)
	seen := j.stamp()
	entries, rest, err := j.read()
	if err != nil {
		return "", err
	}
	if rest != nil && rest.torn && f.lock == nil {
		// Most likely a write was under way; look again.
		var more []model.Entry
		if more, rest, err = j.read(); err != nil {
			return "", err
		}
		entries = append(entries, more...)
	}
	if rest != nil {
		if notice, err = f.settle(j, rest); err != nil {
			return "", err
		}
	}
	ledger, err := model.LoadLedger(room, entries)
	if err != nil {
		return "", j.impossible(err)
	}
	if f.lock != nil {
		if err := j.syncAll(); err != nil {
			return "", err
		}
	}
	f.room, f.ledger, f.journal, f.seen = room, ledger, j, seen
	return notice, nil
}

// settle deals with an unfinished last entry and refuses anything else that is
// not right.
func (f *Folder) settle(j *journal, r *rest) (notice string, err error) {
	switch {
	case !r.torn:
		return "", &RefusedError{Problem: r.problem(j)}
	case f.lock == nil:
		return fmt.Sprintf("%s:%d: entry %d is unfinished and was left out; a write was cut off or is under way", j.name(r.file), r.line, r.n), nil
	}
	kept, err := j.setAside(r, f.options.now())
	if err != nil {
		return "", fmt.Errorf("set the unfinished entry %d aside: %w", r.n, err)
	}
	return fmt.Sprintf("%s:%d: entry %d was unfinished, a write was cut off; it is kept in %s, everything before it is whole",
		j.name(r.file), r.line, r.n, kept[0]), nil
}

// Dir returns the folder as it was given to Open.
func (f *Folder) Dir() string { return f.dir }

// Room returns what room.toml and procedure.toml say. After Refresh it may be
// another one.
func (f *Folder) Room() *model.Room { return f.room }

// Ledger returns the fold of the entries as they were read. After Refresh it may
// be another one.
func (f *Folder) Ledger() *model.Ledger { return f.ledger }

// Notices returns what people should know of how the room was opened.
func (f *Folder) Notices() []string { return f.notices }

// Writable reports whether Append can succeed.
func (f *Folder) Writable() bool { return f.lock != nil }

// Append makes entries durable that Ledger.Check has numbered. When it returns
// nil they are on the device; when it returns an error none of them is kept, and
// a later Append may succeed. It does not fold them into the Ledger: the caller
// applies them then. All entries of one call go into one journal file.
func (f *Folder) Append(entries ...model.Entry) error {
	f.writing.Lock()
	defer f.writing.Unlock()
	if f.lock == nil {
		return fmt.Errorf("not saved: %w", ErrReadOnly)
	}
	return f.journal.append(entries)
}

// Close gives the room free. What a failed Append left is taken back first, if
// the device lets it; else the next opening deals with it.
func (f *Folder) Close() error {
	f.writing.Lock()
	defer f.writing.Unlock()
	if f.lock == nil {
		return nil
	}
	var restoring error
	if f.journal != nil {
		restoring = f.journal.restore()
	}
	unlocking := f.lock.Unlock()
	f.lock = nil
	return errors.Join(restoring, unlocking)
}
