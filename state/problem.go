package state

import (
	"errors"
	"fmt"
	"path/filepath"
	"sort"

	"drainboard/model"
)

// Errors that callers tell apart.
var (
	// ErrNoRoom is returned where a folder holds no room.toml.
	ErrNoRoom = errors.New("no room.toml here")
	// ErrReadOnly is returned by Append on a room that was opened for reading.
	ErrReadOnly = errors.New("the room is open for reading only")
)

// ErrHeld is returned where another program holds the room for writing.
type ErrHeld struct {
	Dir    string
	Holder string // as in "KT, process 4711 on shop-pc since 2026-11-25 09:14"
}

// Error says who holds the room and what to do.
func (e ErrHeld) Error() string {
	return fmt.Sprintf("%s is kept by %s; close that one, or read along", e.Dir, e.Holder)
}

// Problem is one thing that is wrong with a room on disk.
type Problem struct {
	File string // path, beginning with the room's folder as it was given
	Line int    // from 1; 0 where the file as a whole is meant
	Text string // what is wrong, on one line
	Hint string // what to do; may be empty
}

// Error reads "room/room.toml:14: house.crew: 3: 1 or 2 people are expected".
func (p Problem) Error() string {
	where := p.File
	if p.Line > 0 {
		where = fmt.Sprintf("%s:%d", p.File, p.Line)
	}
	if p.Hint != "" {
		return where + ": " + p.Text + "; " + p.Hint
	}
	return where + ": " + p.Text
}

// RefusedError says why a room cannot be opened: the first problem, and how
// many more there are.
type RefusedError struct {
	Problem
	More int
}

// Error is one line.
func (e *RefusedError) Error() string {
	if e.More == 0 {
		return e.Problem.Error()
	}
	return fmt.Sprintf("%s (and %d more; drainboard verify lists them)", e.Problem.Error(), e.More)
}

// refused makes an error of problems, nil of none.
func refused(problems []Problem) error {
	if len(problems) == 0 {
		return nil
	}
	return &RefusedError{problems[0], len(problems) - 1}
}

// located gives field errors of a TOML file their lines, in the order of the
// file.
func located(file, text string, wrong []*model.FieldError) []Problem {
	lines := indexLines(text)
	problems := make([]Problem, len(wrong))
	for i, w := range wrong {
		problems[i] = Problem{File: file, Line: lines.of(w.Field), Text: w.Error()}
	}
	sort.SliceStable(problems, func(i, j int) bool { return problems[i].Line < problems[j].Line })
	return problems
}

// fileIn names a file of the room for a message.
func fileIn(dir string, name ...string) string {
	return filepath.Join(append([]string{dir}, name...)...)
}
