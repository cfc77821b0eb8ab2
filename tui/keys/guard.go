package keys

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"
)

// RepeatWindow is how soon the same command key counts as a bounce or as held
// down, not as pressed again.
const RepeatWindow = 150 * time.Millisecond

// Guard swallows repeats of command keys. Digits, decimal signs, correcting and
// moving keys always pass, so fast typing and a held arrow work. The zero value
// is ready.
type Guard struct {
	last string
	at   time.Time
}

// Pass says whether a normalised key pressed at a moment shall be heeded, and
// gives the guard for the next one. While a screen captures text, letters pass
// too. A key held down is heeded once until it is let go for [RepeatWindow].
func (g Guard) Pass(msg tea.KeyMsg, at time.Time, capturing bool) (Guard, bool) {
	if free(msg, capturing) {
		return Guard{}, true
	}
	name := small(msg).String()
	since := at.Sub(g.at)
	repeated := name == g.last && since >= 0 && since < RepeatWindow
	return Guard{last: name, at: at}, !repeated
}

// free says that a key may repeat as fast as it likes.
func free(msg tea.KeyMsg, capturing bool) bool {
	switch msg.Type {
	case tea.KeyRunes:
		if msg.Paste || capturing {
			return true
		}
		for _, r := range msg.Runes {
			if !digit(r) && r != '.' && r != ',' {
				return false
			}
		}
		return true
	case tea.KeySpace:
		return capturing
	case tea.KeyBackspace, tea.KeyDelete, tea.KeyUp, tea.KeyDown, tea.KeyLeft, tea.KeyRight,
		tea.KeyPgUp, tea.KeyPgDown, tea.KeyHome, tea.KeyEnd, tea.KeyTab, tea.KeyShiftTab:
		return true
	}
	return false
}
