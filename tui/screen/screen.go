package screen

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/tui/keys"
)

// Screen is one screen of the program. The root shows one at a time, gives it
// the messages and the room that is left, and keeps a stack of those below.
type Screen interface {
	// Init gives what the screen wants done when it opens, nil for nothing.
	Init() tea.Cmd
	// Update takes a message: a normalised key, a [Tick], or one of the screen's
	// own. Facts are entered by the desk, which has made them durable when it
	// returns; other slow work goes into the command.
	Update(tea.Msg) (Screen, tea.Cmd)
	// View draws the screen in exactly h rows of w cells.
	View(w, h int) []string
	// Keys is what the keys do at this moment.
	Keys() keys.Table
	// Capturing says that text is being typed, so that letters are not commands.
	Capturing() bool
	// Title is the name of the screen, a word or two.
	Title() string
}

// Open asks the root to show a screen by name. Arg is what that screen needs to
// know, for instance a tank's name.
type Open struct {
	Name string
	Arg  any
}

// Back asks the root to close the screen and show the one below.
type Back struct{}

// Quit asks the root to end the program. The root may ask the person first.
type Quit struct{}

// Tick brings the time, about once a second. A screen keeps it and uses no
// other clock.
type Tick struct{ Now time.Time }

// Toast asks the root to show a line for a few seconds.
type Toast struct {
	Text string
	Mood Mood
}

// Mood is how a [Toast] is shown.
type Mood int

// Info is plain, Saved is green and only for what has just become durable,
// Refused is for what was not taken.
const (
	Info Mood = iota
	Saved
	Refused
)

// Beep asks the root to ring the bell a number of times.
type Beep struct{ Times int }

// Send makes the command that delivers a message to the root.
func Send(msg tea.Msg) tea.Cmd {
	return func() tea.Msg { return msg }
}
