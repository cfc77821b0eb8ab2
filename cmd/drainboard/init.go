package main

import (
	"fmt"

	"drainboard/state"
	"drainboard/tui/text"

	"github.com/spf13/cobra"
)

// newInit is the command that writes a new room.
func newInit(p *program) *cobra.Command {
	o := state.InitOptions{Tanks: 4}
	litres := number(120)
	c := &cobra.Command{
		Use: "init DIR", Short: "Write a commented room.toml to begin with",
		RunE: doing(func(args []string) error {
			if len(args) == 0 && p.room != "" {
				args = []string{p.room}
			}
			if len(args) != 1 {
				return usagef("init: name one folder; write drainboard init DIR")
			}
			o.Litres = litres.x()
			switch {
			case o.Tanks < 1:
				return usagef("init: --tanks %d: give 1 or more", o.Tanks)
			case o.Litres <= 0:
				return usagef("init: --litres %s: give more than 0", plain(o.Litres))
			}
			return p.init(args[0], o)
		}),
	}
	c.Flags().StringVar(&o.Name, "name", "", "the room's `name`; the folder's where left out")
	c.Flags().IntVar(&o.Tanks, "tanks", o.Tanks, "`number` of tanks")
	c.Flags().Var(&litres, "litres", "litres of each tank")
	return c
}

func (p *program) init(dir string, o state.InitOptions) error {
	if err := state.Init(p.path(dir), o); err != nil {
		return fmt.Errorf("init: %w", err)
	}
	return p.print(text.Clean(fmt.Sprintf("wrote %s/room.toml with %s of %s L; look it over, then enter what stands ready",
		dir, plural(o.Tanks, "tank"), plain(o.Litres))) + "\n")
}
