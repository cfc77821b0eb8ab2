// Package darkbg keeps bubbletea v1 from asking the terminal for its background
// colour. bubbletea's own init does that, and waits five seconds on a terminal
// that answers nothing.
//
// It is imported for its init alone, by the program and by every test binary
// that imports bubbletea and may run on a terminal:
//
//	import _ "drainboard/tui/darkbg"
//
// Go initialises packages in the order of their import paths, as far as their
// imports allow (Go specification, "Program initialization"). This path sorts
// before "github.com/", and the package imports only lipgloss, so lipgloss is
// told an answer before bubbletea asks for one. The answer itself does not
// matter: package theme decides between dark and light and has a renderer of
// its own.
package darkbg

import "github.com/charmbracelet/lipgloss"

func init() {
	lipgloss.SetHasDarkBackground(true)
}
