package tui

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/tui/keys"
	"drainboard/tui/screen"
)

// twice is how soon ctrl+c must follow ctrl+c to leave from anywhere.
const twice = 2 * time.Second

// onKeys hands on each key of a message.
func (a *App) onKeys(msg tea.KeyMsg) tea.Cmd {
	a.pressed = a.options.Clock()
	var cmds []tea.Cmd
	for _, key := range keys.Normalise(msg) {
		var pass bool
		a.guard, pass = a.guard.Pass(key, a.options.Clock(), a.capturing())
		if pass {
			cmds = append(cmds, a.onKey(key))
		}
	}
	return tea.Batch(cmds...)
}

func (a *App) capturing() bool {
	if a.cover != nil {
		return a.cover.capturing()
	}
	return a.top().Capturing()
}

// onKey decides who gets a key: leaving and locking first, then what covers the
// screen, then the keys that work everywhere, then the screen.
func (a *App) onKey(key tea.KeyMsg) tea.Cmd {
	action, _ := everywhere().Match(key)
	switch {
	case action == keys.Stop:
		return a.onStop()
	case action == lock:
		a.locked = !a.locked
		return nil
	case a.locked:
		return nil
	case a.cover != nil:
		return a.cover.update(a, key)
	case a.top().Capturing() && key.String() != "f1":
		return a.toTop(key)
	}
	if _, own := a.top().Keys().Match(key); own {
		return a.toTop(key)
	}
	switch action {
	case keys.Help:
		a.cover = a.newHelp()
		return nil
	case keys.Find:
		a.cover = newFinder("")
		return nil
	case keys.Undo:
		return a.undo()
	}
	return a.toScreen(key)
}

// toScreen hands a key to the screen; one that means nothing there says why, or
// begins a tank's name on the board.
func (a *App) toScreen(key tea.KeyMsg) tea.Cmd {
	table := a.top().Keys()
	if why, off := table.Refused(key); off {
		a.say(screen.Toast{Text: "not now: " + why, Mood: screen.Refused})
		return nil
	}
	if _, known := table.Match(key); !known && len(a.stack) == 1 && key.Type == tea.KeyRunes && !key.Paste {
		a.cover = newFinder(string(key.Runes))
		return nil
	}
	return a.toTop(key)
}

func (a *App) onStop() tea.Cmd {
	now := a.options.Clock()
	if !a.stop.IsZero() && now.Sub(a.stop) <= twice {
		return tea.Quit
	}
	a.stop = now
	a.say(screen.Toast{Text: "press Ctrl+C again to leave; everything entered is saved"})
	return nil
}

// undo takes the last entry back by a correction, after naming it.
func (a *App) undo() tea.Cmd {
	fact, ok := a.desk.Ledger.Undo()
	if !ok {
		a.say(screen.Toast{Text: "there is no entry to undo", Mood: screen.Refused})
		return nil
	}
	e := a.desk.Ledger.Entries()[fact.Entry-1]
	zone := a.desk.Ledger.Room().Zone
	a.cover = newQuestion("Undo entry "+itoa(e.N)+"? "+model.Sentence(e.Fact),
		"Made "+e.At.In(zone).Format("Mon 2 Jan 15:04")+". It stays readable in the log, marked as void.",
		func(a *App) tea.Cmd {
			if _, err := a.desk.Undo(); err != nil {
				a.say(screen.Toast{Text: err.Error(), Mood: screen.Refused})
			} else {
				a.say(screen.Toast{Text: "entry " + itoa(e.N) + " undone", Mood: screen.Saved})
			}
			return a.toTop(screen.Tick{Now: a.desk.Now})
		})
	return nil
}
