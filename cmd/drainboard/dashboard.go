package main

import (
	"drainboard/state"
)

// dashboard starts the dashboard on the room. Where stdout is no terminal it
// prints the board in plain lines instead.
func (p *program) dashboard() error {
	now := p.now()
	return p.reading(func(f *state.Folder) error {
		return p.print(viewRoom(f.Ledger().At(now), now).board())
	})
}
