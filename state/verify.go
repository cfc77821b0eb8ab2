package state

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"drainboard/model"
)

// Verify looks over everything a room keeps and lists all that is wrong: in
// room.toml and procedure.toml, in the chain of the journal, and the first entry
// that cannot be true. It changes nothing and takes no lock. The error says that
// the room could not be looked at.
func Verify(dir string) ([]Problem, error) {
	if err := isRoom(dir); err != nil {
		return nil, err
	}
	room, problems, err := readRoom(dir)
	if err != nil {
		return nil, err
	}
	j := newJournal(dir, room.Zone)
	entries, rest, err := j.read()
	wrong, refusing := problemIn(err)
	switch {
	case err != nil && !refusing:
		return nil, err
	case refusing || rest != nil:
		chain, err := j.checkChain(rest)
		if err != nil {
			return nil, err
		}
		if len(chain) == 0 {
			chain = []Problem{wrong}
		}
		problems = append(problems, chain...)
	case len(problems) == 0:
		if _, err := model.LoadLedger(room, entries); err != nil {
			wrong, _ := problemIn(j.impossible(err))
			problems = append(problems, wrong)
		}
	}
	return append(problems, j.strays()...), nil
}

func isRoom(dir string) error {
	if info, err := os.Stat(dir); err == nil && !info.IsDir() {
		return fmt.Errorf("%s is no folder; a room is a folder with a room.toml", dir)
	}
	_, err := os.Stat(filepath.Join(dir, roomFile))
	if errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("%s: %w; drainboard init %s makes one", dir, ErrNoRoom, dir)
	}
	return err
}

// problemIn finds the problem an error is about.
func problemIn(err error) (Problem, bool) {
	if refused, ok := errors.AsType[*RefusedError](err); ok {
		return refused.Problem, true
	}
	return errors.AsType[Problem](err)
}

// checkChain lists every entry that does not follow from the one before it as
// that one stands, or cannot be read. What rest says of the first is said here.
func (j *journal) checkChain(r *rest) ([]Problem, error) {
	files, err := j.files()
	if err != nil {
		return nil, nil // the caller has this problem already
	}
	d := newDecoder(j.zone)
	var problems []Problem
	at := cursor{}
	for _, file := range files {
		text, err := os.ReadFile(j.path(file))
		if err != nil {
			return nil, err
		}
		for _, p := range allPieces(string(text), 0, 1) {
			problem, bad := j.checkPiece(d, file, p, at)
			if bad && r != nil && file == r.file && p.line == r.line {
				problem = r.problem(j)
			}
			if bad {
				problems = append(problems, problem)
			}
			if at.n++; numberOf(p) > 0 {
				at.n = numberOf(p)
			}
			at.sum = p.sum
			if p.sum == "" {
				at.sum = sumOf(at.sum, body(p))
			}
		}
	}
	return problems, nil
}

// checkPiece says what is wrong with one piece behind a cursor.
func (j *journal) checkPiece(d *decoder, file string, p piece, at cursor) (Problem, bool) {
	if p.sum == "" || sumOf(at.sum, p.text) != p.sum {
		return Problem{File: j.name(file), Line: p.line, Text: wrongWith(p, at.n+1)}, true
	}
	e, err := d.entry(p.text)
	if err == nil && e.N != at.n+1 {
		err = wrongKey("n", "entry %d stands where entry %d is expected", e.N, at.n+1)
	}
	if err == nil {
		return Problem{}, false
	}
	problem, _ := problemIn(j.unreadable(file, p, at.n+1, err))
	return problem, true
}

// strays lists files that look like journal files and are none: a copy made by
// hand or by a program that keeps folders alike. Entries in them do not count.
func (j *journal) strays() []Problem {
	all, err := os.ReadDir(filepath.Join(j.dir, journalDir))
	if err != nil {
		return nil
	}
	var problems []Problem
	for _, f := range all {
		if name := f.Name(); strings.HasSuffix(name, ".toml") && !isMonthFile(name) {
			problems = append(problems, Problem{
				File: j.name(name), Text: "is not named as a journal file (2026-11.toml), so it is not read",
				Hint: "move it out of the journal",
			})
		}
	}
	return problems
}
