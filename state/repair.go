package state

import (
	"fmt"
)

// Repaired says what a repair did.
type Repaired struct {
	Changed bool     // false where there was nothing to repair
	File    string   // journal file that was cut
	Line    int      // from which line on
	N       int      // the number of the first entry that was set aside
	Kept    []string // where it is kept now
	Text    string   // all of this in one line
}

// Repair sets aside the torn or damaged tail of a journal: everything from the
// first bad entry on, where no good entry follows it. It is copied into the
// quarantine before it is cut off, and no good entry is touched. Damage with
// good entries behind it is refused, and nothing is changed.
//
// ErrNoRoom, ErrHeld: as with Open.
func Repair(dir string, o Options) (Repaired, error) {
	if err := isRoom(dir); err != nil {
		return Repaired{}, err
	}
	lock, err := takeLock(dir, o.Who, o.now())
	if err != nil {
		return Repaired{}, err
	}
	defer lock.Unlock()
	room, _, err := readRoom(dir)
	if err != nil {
		return Repaired{}, err
	}
	j := newJournal(dir, room.Zone)
	_, rest, err := j.read()
	switch {
	case err != nil:
		return Repaired{}, err
	case rest == nil:
		return Repaired{Text: fmt.Sprintf("nothing to repair: %d entries, chain whole", j.at.n)}, nil
	case rest.middle:
		return Repaired{}, &RefusedError{Problem: rest.problem(j)}
	}
	kept, err := j.setAside(rest, o.now())
	if err != nil {
		return Repaired{}, fmt.Errorf("set the tail aside: %w", err)
	}
	done := Repaired{Changed: true, File: j.name(rest.file), Line: rest.line, N: rest.n, Kept: kept}
	done.Text = fmt.Sprintf("%s:%d: %s; set aside in %s, the journal ends with entry %d",
		done.File, done.Line, rest.text, kept[0], rest.n-1)
	return done, nil
}
