package main

import (
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/cmd/drainboard/demo"
	"drainboard/model"
	"drainboard/state"
	"drainboard/tui"
	"drainboard/tui/desk"
	"drainboard/tui/theme"
)

// BenchmarkFrame draws the board of the demo room after each half second, as an
// idle program does twice a second.
func BenchmarkFrame(b *testing.B) {
	now := time.Date(2026, 11, 25, 14, 0, 0, 0, time.UTC)
	dir := b.TempDir()
	err := state.Found(dir+"/room", demo.RoomTOML, state.Options{Now: func() time.Time { return now }}, func(room *model.Room) ([]model.Entry, error) {
		return demo.Play(room, now)
	})
	if err != nil {
		b.Fatal(err)
	}
	f, err := state.Open(dir+"/room", state.Options{})
	if err != nil {
		b.Fatal(err)
	}
	d := &desk.Desk{Ledger: f.Ledger(), Now: now, Theme: theme.Build(true, theme.TrueColor, false)}
	app := tui.New(d, tui.Options{Clock: func() time.Time { return now }})
	app.Update(tea.WindowSizeMsg{Width: 120, Height: 40})
	for b.Loop() {
		d.Now = d.Now.Add(time.Second / 2)
		app.View()
	}
}
