package main

import (
	"fmt"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"drainboard/cmd/drainboard/demo"
	"drainboard/model"
	"drainboard/state"
)

// newDemo shows the dashboard on an invented room in a scratch folder.
func newDemo(p *program) *cobra.Command {
	var l looks
	var keep string
	c := &cobra.Command{
		Use:   "demo",
		Short: "The dashboard on an invented room with weeks of history",
		Long: "The dashboard on an invented room with weeks of history, in a scratch folder that goes\n" +
			"when you leave. --keep DIR makes the room there instead and lets it stand.",
		Args: noWords,
		RunE: doing(func([]string) error { return p.demo(l, keep) }),
	}
	l.flags(c)
	c.Flags().StringVar(&keep, "keep", "", "make the room in this new `folder` and let it stand")
	return c
}

func (p *program) demo(l looks, keep string) error {
	dir := p.path(keep)
	if keep == "" {
		scratch, err := os.MkdirTemp("", "drainboard-demo-")
		if err != nil {
			return err
		}
		defer os.RemoveAll(scratch)
		dir = filepath.Join(scratch, "room")
	}
	now := p.now()
	err := state.Found(dir, demo.RoomTOML, state.Options{Now: p.now}, func(room *model.Room) ([]model.Entry, error) {
		return demo.Play(room, now)
	})
	if err != nil {
		return fmt.Errorf("make the demo room: %w", err)
	}
	p.room = dir
	return p.dashboard(l)
}
