package main

import tea "github.com/charmbracelet/bubbletea"

// quitOnHangup has nothing to do here: Windows sends no such signals, and a
// closed console ends the program, whose entries are all on the disk.
func quitOnHangup(*tea.Program) (stop func()) { return func() {} }
