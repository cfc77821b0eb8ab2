package screen

import (
	"slices"
	"strings"
	"unicode"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/tui/text"
	"drainboard/tui/theme"
)

// Kind is what a [Field] takes.
type Kind int

// Number takes digits and one decimal sign, . or ,; Whole takes digits; Name
// and Line take any text, Name without spaces at its start.
const (
	Number Kind = iota
	Whole
	Name
	Line
)

// Outcome is what a part made of a key.
type Outcome int

// Ignored: the key means nothing here, the screen may use it.
// Edited: the text changed or the cursor moved.
// Rejected: the key was refused and nothing changed; ring the bell once.
// Entered: Enter was pressed.
// TakeBack: Backspace was pressed in an empty field, to take back the last.
const (
	Ignored Outcome = iota
	Edited
	Rejected
	Entered
	TakeBack
)

// Field is one line to type into. A number field ignores letters and the signs
// + - * /, so that the screen can use them as commands.
type Field struct {
	kind Kind
	max  int // characters
	text []rune
	at   int // cursor, before this character
}

// NewField makes an empty field for at most max characters.
func NewField(kind Kind, max int) Field {
	return Field{kind: kind, max: max}
}

// With gives the field holding s, cleaned and cut to its length, with the
// cursor at the end.
func (f Field) With(s string) Field {
	f.text = []rune(text.Clean(s))
	f.text = f.text[:min(len(f.text), f.max)]
	f.at = len(f.text)
	return f
}

// Text is what was typed, without spaces around it.
func (f Field) Text() string {
	s := string(f.text)
	for { // without its space an accent may stand first
		t := text.Clean(strings.TrimSpace(s))
		if t == s {
			return s
		}
		s = t
	}
}

// Empty says that nothing has been typed.
func (f Field) Empty() bool { return len(f.text) == 0 }

// Value is the figure typed, false where there is none (yet).
func (f Field) Value() (float64, bool) { return ParseNumber(string(f.text)) }

// Update takes a key.
func (f Field) Update(msg tea.KeyMsg) (Field, Outcome) {
	switch msg.Type {
	case tea.KeyEnter:
		return f, Entered
	case tea.KeyRunes, tea.KeySpace:
		return f.typed(msg)
	case tea.KeyBackspace:
		return f.erase(f.at - 1)
	case tea.KeyDelete:
		return f.erase(f.at)
	case tea.KeyLeft:
		return f.move(f.at - 1)
	case tea.KeyRight:
		return f.move(f.at + 1)
	case tea.KeyHome:
		return f.move(0)
	case tea.KeyEnd:
		return f.move(len(f.text))
	}
	return f, Ignored
}

func (f Field) move(to int) (Field, Outcome) {
	f.at = max(0, min(to, len(f.text)))
	return f, Edited
}

// erase takes one character out; there may be none at i.
func (f Field) erase(i int) (Field, Outcome) {
	switch {
	case f.Empty() && i < 0:
		return f, TakeBack
	case i < 0 || i >= len(f.text):
		return f, Edited
	}
	f.text = []rune(text.Clean(string(slices.Concat(f.text[:i], f.text[i+1:])))) // an accent may have lost its letter
	f.at = min(i, len(f.text))
	return f, Edited
}

func (f Field) typed(msg tea.KeyMsg) (Field, Outcome) {
	switch {
	case msg.Alt:
		return f, Ignored
	case msg.Paste:
		return f.insert(strings.TrimSpace(string(msg.Runes)))
	}
	s := string(msg.Runes)
	if f.numeric() && strings.Trim(s, "0123456789.,") != "" {
		return f, Ignored
	}
	return f.insert(s)
}

func (f Field) numeric() bool { return f.kind == Number || f.kind == Whole }

// insert puts s at the cursor, all of it or nothing.
func (f Field) insert(s string) (Field, Outcome) {
	marks := []rune(s)
	if len(marks) == 0 || !unicode.IsMark(marks[0]) || f.at == 0 { // a mark may follow its letter
		marks = []rune(text.Clean(s))
	}
	if f.kind == Name && f.at == 0 {
		marks = []rune(strings.TrimLeft(string(marks), " "))
	}
	next := slices.Concat(f.text[:f.at], marks, f.text[f.at:])
	if len(marks) == 0 || len(next) > f.max || !f.takes(string(next)) {
		return f, Rejected
	}
	f.text, f.at = next, f.at+len(marks)
	return f, Edited
}

// takes says whether s can stand in the field.
func (f Field) takes(s string) bool {
	switch f.kind {
	case Whole:
		return strings.Trim(s, "0123456789") == ""
	case Number:
		signs := strings.Count(s, ".") + strings.Count(s, ",")
		return signs <= 1 && strings.Trim(s, "0123456789.,") == ""
	}
	return text.Clean(s) == s
}

// View draws the field exactly w cells wide. A focused one shows the cursor,
// and the part of a long text where the cursor is.
func (f Field) View(th theme.Theme, w int, focused bool) string {
	if !focused || w < 2 {
		return text.Fit(string(f.text), w)
	}
	under, after := " ", ""
	if f.at < len(f.text) {
		under, after = string(f.text[f.at]), string(f.text[f.at+1:])
	}
	if th.Depth == theme.None && under == " " {
		under = "_"
	}
	start := f.at
	for used := max(1, text.Width(under)); start > 0; start-- {
		used += text.Width(string(f.text[start-1]))
		if used+min(start-1, 1) > w { // an ellipsis stands before a text cut at its start
			break
		}
	}
	before := string(f.text[start:f.at])
	if start > 0 {
		before = text.Ellipsis + before
	}
	return text.Fit(before+th.Focus.Render(under)+after, w)
}
