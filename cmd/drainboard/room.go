package main

import (
	"fmt"
	"strings"
	"time"

	"drainboard/model"
	"drainboard/state"

	"github.com/spf13/cobra"
)

// asking are the flags of a command that answers.
type asking struct {
	at   string
	json bool
}

func (a *asking) flags(c *cobra.Command) {
	a.atFlag(c, "answer as of this `time` (RFC 3339) instead of now")
	a.jsonFlag(c)
}

func (a *asking) atFlag(c *cobra.Command, what string) { c.Flags().StringVar(&a.at, "at", "", what) }

func (a *asking) jsonFlag(c *cobra.Command) {
	c.Flags().BoolVar(&a.json, "json", false, "answer as one JSON object")
}

// moment is the time asked about: --at, or now to the second.
func (a *asking) moment(p *program) (time.Time, error) {
	if a.at == "" {
		return p.now().Truncate(time.Second), nil
	}
	t, err := model.ParseMoment(a.at)
	if err != nil {
		return time.Time{}, usagef("--at: %w", err)
	}
	return t, nil
}

// folder names the room's folder.
func (p *program) folder() (string, error) {
	return state.Locate(p.room, p.getenv, p.dir)
}

// reading opens the room to be read and hands it to body.
func (p *program) reading(body func(*state.Folder) error) error {
	return p.open(state.Options{Now: p.now}, body)
}

// writing opens the room as its one writer.
func (p *program) writing(by string, body func(*state.Folder) error) error {
	return p.open(state.Options{Now: p.now, Write: true, Who: by}, body)
}

// open opens the room for body. What the folder has to say of itself goes to
// stderr; where body fails, into the one line that says so.
func (p *program) open(o state.Options, body func(*state.Folder) error) error {
	var notices []string
	err := p.openQuietly(o, func(f *state.Folder) error {
		notices = f.Notices()
		return body(f)
	})
	if err != nil && len(notices) > 0 {
		return fmt.Errorf("%w (%s)", err, strings.Join(notices, "; "))
	}
	for _, n := range notices {
		p.note(n)
	}
	return err
}

// openQuietly opens the room for a body that shows the folder's notices itself.
func (p *program) openQuietly(o state.Options, body func(*state.Folder) error) (err error) {
	dir, err := p.folder()
	if err != nil {
		return err
	}
	f, err := state.Open(dir, o)
	if err != nil {
		return err
	}
	defer func() {
		if closing := f.Close(); err == nil {
			err = closing
		}
	}()
	return body(f)
}
