package main

import (
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"time"

	"drainboard/tui/text"

	"github.com/spf13/cobra"
)

// environment is all that a run takes from outside.
type environment struct {
	args           []string
	stdin          io.Reader
	stdout, stderr io.Writer
	getenv         func(string) string
	dir            string // the current folder
	now            func() time.Time
}

// Exit statuses.
const (
	exitDone    = 0
	exitRefused = 1 // refused or failed
	exitUsage   = 2 // wrong usage
)

// run is one run of the program from its arguments to its exit status. What
// goes wrong is one line on stderr: what, where, what to do.
func run(env environment) int {
	p := &program{environment: env}
	root := newRoot(p)
	args := env.args
	if args == nil {
		args = []string{}
	}
	root.SetArgs(args)
	err := root.Execute()
	if err == nil {
		return exitDone
	}
	fmt.Fprintln(env.stderr, "drainboard: "+text.Clean(err.Error()))
	var refused *refusal
	if errors.As(err, &refused) {
		return exitRefused
	}
	return exitUsage
}

// refusal is what was asked for rightly and could not be done.
type refusal struct{ error }

// Unwrap returns what was refused.
func (r *refusal) Unwrap() error { return r.error }

// usage is what was asked for wrongly.
type usage struct{ error }

// Unwrap returns what is wrong.
func (u *usage) Unwrap() error { return u.error }

func usagef(format string, args ...any) error { return &usage{fmt.Errorf(format, args...)} }

// doing is the body of a command: an error that is not wrong usage is a refusal.
// What cobra finds wrong before the body is reached is usage.
func doing(body func(args []string) error) func(*cobra.Command, []string) error {
	return func(_ *cobra.Command, args []string) error {
		err := body(args)
		var wrong *usage
		if err == nil || errors.As(err, &wrong) {
			return err
		}
		return &refusal{err}
	}
}

// program is one run and what every command of it shares.
type program struct {
	environment
	room string // --room
}

// path is a path as typed, taken from the current folder.
func (p *program) path(typed string) string {
	if filepath.IsAbs(typed) {
		return typed
	}
	return filepath.Join(p.dir, typed)
}

// print writes an answer to stdout in one go.
func (p *program) print(answer string) error {
	if _, err := io.WriteString(p.stdout, answer); err != nil {
		return fmt.Errorf("write the answer: %w", err)
	}
	return nil
}

// note tells of something beside the answer, on stderr.
func (p *program) note(line string) { fmt.Fprintln(p.stderr, "drainboard: "+text.Clean(line)) }
