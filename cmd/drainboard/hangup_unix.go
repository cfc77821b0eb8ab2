//go:build !windows

package main

import (
	"os"
	"os/signal"
	"syscall"

	tea "github.com/charmbracelet/bubbletea"
)

// quitOnHangup ends the interface in good order when the window is closed or
// somebody asks it to stop; bubbletea sees to SIGINT and SIGTERM itself.
func quitOnHangup(screen *tea.Program) (stop func()) {
	signals := make(chan os.Signal, 1)
	signal.Notify(signals, syscall.SIGHUP, syscall.SIGQUIT)
	done := make(chan struct{})
	go func() {
		select {
		case <-signals:
			screen.Quit()
		case <-done:
		}
	}()
	return func() {
		signal.Stop(signals)
		close(done)
	}
}
