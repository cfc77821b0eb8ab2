package keys

import tea "github.com/charmbracelet/bubbletea"

// Normalise turns one key message of bubbletea into one message for each key
// that was pressed, in the forms the tables know:
//
//   - keys that arrived in one read ("uuu") come one by one;
//   - ctrl+j, which some number pads send for their Enter, is enter, and
//     ctrl+h, which some terminals send for it, is backspace;
//   - alt+digit is the digit, alt+enter enter and alt+esc esc: Escape followed
//     at once by another key looks like a chord;
//   - full-width digits of an input method are digits.
//
// Pasted text stays one message with Paste set, and so never runs a command.
func Normalise(msg tea.KeyMsg) []tea.KeyMsg {
	if msg.Paste {
		return []tea.KeyMsg{msg}
	}
	switch msg.Type {
	case tea.KeyCtrlJ:
		return []tea.KeyMsg{{Type: tea.KeyEnter}}
	case tea.KeyCtrlH:
		return []tea.KeyMsg{{Type: tea.KeyBackspace}}
	case tea.KeyEnter, tea.KeyEsc:
		return []tea.KeyMsg{{Type: msg.Type}}
	case tea.KeyRunes:
		return single(msg)
	}
	return []tea.KeyMsg{msg}
}

func single(msg tea.KeyMsg) []tea.KeyMsg {
	out := make([]tea.KeyMsg, 0, len(msg.Runes))
	for _, r := range msg.Runes {
		if r >= '０' && r <= '９' {
			r += '0' - '０'
		}
		alt := msg.Alt && !digit(r)
		out = append(out, tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}, Alt: alt})
	}
	return out
}

func digit(r rune) bool { return r >= '0' && r <= '9' }

// Msg makes the message of a key by the name bubbletea prints for it: "enter",
// "pgup", "f1", "ctrl+c", "u". A name it does not know is typed as text.
func Msg(name string) tea.KeyMsg {
	if name == " " {
		return tea.KeyMsg{Type: tea.KeySpace, Runes: []rune{' '}}
	}
	for t := tea.KeyF20; t <= tea.KeyBackspace; t++ {
		if t != tea.KeyRunes && t.String() == name {
			return tea.KeyMsg{Type: t}
		}
	}
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(name)}
}
