package state

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"

	"drainboard/model"
)

// The folders of the journal.
const (
	journalDir    = "journal"
	quarantineDir = "quarantine"
)

// cursor stands behind the last good entry.
type cursor struct {
	file string // its journal file, empty before the first entry
	end  int    // byte offset behind it
	line int    // line at that offset, from 1
	n    int    // its number
	sum  string
}

// place is where an entry stands.
type place struct {
	file string
	line int
}

// journal reads and writes the entries of a room, one file a UTC month. The
// order of entries is that of the file names and, within a file, that of the
// lines. When the clock of the machine goes back over the turn of a month,
// entries go on in the last file, so the order holds whatever the clock says.
type journal struct {
	dir    string // the room
	zone   *time.Location
	at     cursor
	places []place // of entry n at n-1
	disk   disk
	// What a failed append left to be done: bytes to take back, and the name of
	// the journal's folder to make durable.
	broken    *unwritten
	folderDue bool
}

func newJournal(dir string, zone *time.Location) *journal {
	return &journal{dir: dir, zone: zone, at: cursor{line: 1}, disk: realDisk()}
}

func (j *journal) path(file string) string { return filepath.Join(j.dir, journalDir, file) }

// name names a journal file for a message.
func (j *journal) name(file string) string { return fileIn(j.dir, journalDir, file) }

// files lists the journal files in the order of their entries; none where there
// is no journal yet.
func (j *journal) files() ([]string, error) {
	there, err := isFolder(j.dir, journalDir)
	if !there || err != nil {
		return nil, err
	}
	all, err := os.ReadDir(filepath.Join(j.dir, journalDir)) // sorted by name
	if err != nil {
		return nil, err
	}
	var names []string
	for _, f := range all {
		if !isMonthFile(f.Name()) {
			continue
		}
		if !f.Type().IsRegular() {
			return nil, Problem{File: j.name(f.Name()), Text: "is no plain file", Hint: "journal files must stand in the journal itself"}
		}
		names = append(names, f.Name())
	}
	return names, nil
}

// isFolder reports whether a folder within the room is there. Something else of
// its name, a link among them, is refused: what is kept must stand in the room.
func isFolder(dir string, name ...string) (bool, error) {
	info, err := os.Lstat(fileIn(dir, name...))
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return false, nil
	case err != nil:
		return false, err
	case !info.IsDir():
		return false, Problem{File: fileIn(dir, name...), Text: "is no folder", Hint: "it must be a folder within the room"}
	}
	return true, nil
}

// isMonthFile reports whether a name is that of a journal file, as in
// 2026-11.toml.
func isMonthFile(name string) bool {
	month, ok := strings.CutSuffix(name, ".toml")
	if !ok || len(month) != len("2006-01") {
		return false
	}
	_, err := time.Parse("2006-01", month)
	return err == nil
}

// endIn returns the offset behind the last good entry in a file; 0 in a later one.
func (j *journal) endIn(file string) int {
	if file != j.at.file {
		return 0
	}
	return j.at.end
}

// unreadable is an entry whose sum is right and whose words are not known: it
// was kept whole, but by another program than this.
func (j *journal) unreadable(file string, p piece, n int, err error) error {
	line := p.line
	if wrong, ok := errors.AsType[*model.FieldError](err); ok {
		line += lineOfKey(p.text, wrong.Field)
	}
	return &RefusedError{Problem: Problem{
		File: j.name(file), Line: line,
		Text: fmt.Sprintf("entry %d: %v", n, err),
		Hint: "perhaps a later version wrote it; open the room with that one",
	}}
}

// lineOfKey counts the lines before the one on which a key of an entry stands;
// 0 where it does not.
func lineOfKey(text, key string) int {
	key, _, _ = strings.Cut(key, ".")
	for i, row := range strings.Split(text, "\n") {
		if strings.HasPrefix(row, key+" ") {
			return i
		}
	}
	return 0
}

// impossible gives an entry that the ledger refuses its place.
func (j *journal) impossible(err error) error {
	wrong, ok := errors.AsType[*model.ImpossibleError](err)
	if !ok || wrong.Entry.N < 1 || wrong.Entry.N > len(j.places) {
		return Problem{File: fileIn(j.dir, journalDir), Text: err.Error()}
	}
	at := j.places[wrong.Entry.N-1]
	return &RefusedError{Problem: Problem{
		File: j.name(at.file), Line: at.line, Text: wrong.Error(),
		Hint: "was room.toml changed since? what the journal names must stay in it",
	}}
}
