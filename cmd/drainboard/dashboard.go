package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/term"
	"github.com/spf13/cobra"

	"drainboard/model"
	"drainboard/state"
	"drainboard/tui"
	_ "drainboard/tui/darkbg" // before bubbletea asks the terminal for its background
	"drainboard/tui/desk"
	"drainboard/tui/keys"
	"drainboard/tui/theme"
)

// looks are the flags of the dashboard.
type looks struct {
	theme, color string
	ascii, mute  bool
	by           string
}

func (l *looks) flags(c *cobra.Command) {
	c.Flags().StringVar(&l.theme, "theme", "auto", "ground of the terminal: auto, dark or light")
	c.Flags().StringVar(&l.color, "color", "auto", "colours: auto, always or never")
	c.Flags().BoolVar(&l.ascii, "ascii", false, "marks and frames in plain ASCII")
	c.Flags().BoolVar(&l.mute, "mute", false, "never ring the bell")
	c.Flags().StringVar(&l.by, "by", "", "initials of who keys")
}

// dashboard starts the dashboard on the room. Where there is no terminal to draw
// on it prints the board in plain lines instead.
func (p *program) dashboard(l looks) error {
	options := theme.Options{Theme: l.theme, Color: l.color, ASCII: l.ascii, Env: p.getenv}
	if err := options.Check(); err != nil {
		return &usage{err}
	}
	in, out, ok := p.terminal()
	if !ok || options.Plain() {
		now := p.now()
		return p.reading(func(f *state.Folder) error {
			return p.print(viewRoom(f.Ledger().At(now), now).board())
		})
	}
	open := state.Options{Now: p.now, Write: true, FallBack: true, Who: l.by}
	return p.open(open, func(f *state.Folder) error {
		return p.draw(f, in, out, l, theme.New(options))
	})
}

// terminal returns the terminal to read from and draw on, and false where one of
// them is none.
func (p *program) terminal() (in, out *os.File, ok bool) {
	in, okIn := p.stdin.(*os.File)
	out, okOut := p.stdout.(*os.File)
	return in, out, okIn && okOut && term.IsTerminal(in.Fd()) && term.IsTerminal(out.Fd())
}

// frames is how often a second the screen may be painted. More would wake an
// idle program more often; fewer would let a key wait for its paint.
const frames = 40

// draw runs the interface till the person leaves it.
func (p *program) draw(f *state.Folder, in, out *os.File, l looks, th theme.Theme) error {
	d := &desk.Desk{Ledger: f.Ledger(), Now: p.now(), Theme: th, By: l.by, Keeper: f}
	o := tui.Options{Clock: p.now, Notices: f.Notices()}
	if !f.Writable() {
		d.ReadOnly = "another program keeps this room; here it is only read"
		o.Follow = func() (*model.Ledger, error) {
			_, err := f.Refresh()
			return f.Ledger(), err
		}
	}
	if !l.mute {
		o.Bell = func(times int) { _, _ = out.WriteString(strings.Repeat("\a", times)) }
	}
	screen := tea.NewProgram(tui.New(d, o), tea.WithAltScreen(), tea.WithInput(keys.Input(in)), tea.WithOutput(out), tea.WithFPS(frames))
	stop := quitOnHangup(screen)
	defer stop()
	_, err := screen.Run()
	switch {
	case err == nil:
		return nil
	case errors.Is(err, tea.ErrInterrupted):
		return fmt.Errorf("stopped; every entry is saved in %s", filepath.Join(f.Dir(), "journal"))
	}
	return fmt.Errorf("the screen stopped: %w; every entry is saved in %s", err, filepath.Join(f.Dir(), "journal"))
}
