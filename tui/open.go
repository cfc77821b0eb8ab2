package tui

import (
	tea "github.com/charmbracelet/bubbletea"

	"drainboard/tui/batch"
	"drainboard/tui/bench"
	"drainboard/tui/calendar"
	"drainboard/tui/feed"
	"drainboard/tui/house"
	"drainboard/tui/inventory"
	"drainboard/tui/log"
	"drainboard/tui/scope"
	"drainboard/tui/screen"
	"drainboard/tui/session"
	"drainboard/tui/tank"
)

// open shows a screen by name.
func (a *App) open(o screen.Open) tea.Cmd {
	arg, _ := o.Arg.(string)
	next := a.make(o.Name, arg)
	if next == nil {
		a.say(screen.Toast{Text: "there is no screen " + o.Name, Mood: screen.Refused})
		return nil
	}
	a.stack = append(a.stack, next)
	return next.Init()
}

// make builds a screen by name, nil where there is none.
func (a *App) make(name, arg string) screen.Screen {
	switch name {
	case "session":
		return session.New(a.desk)
	case "feed":
		return feed.New(a.desk, arg)
	case "bench":
		return bench.New(a.desk, arg)
	case "batch":
		return batch.New(a.desk, arg)
	case "inventory":
		return inventory.New(a.desk)
	case "calendar":
		return calendar.New(a.desk)
	case "house":
		return house.New(a.desk)
	case "tank":
		return tank.New(a.desk, arg)
	case "log":
		return log.New(a.desk, arg)
	case "scope":
		return scope.New(a.desk, arg)
	}
	return nil
}
