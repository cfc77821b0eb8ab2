package screen

import (
	"strconv"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/tui/text"
)

// ParseNumber reads a figure as people type it: digits with at most one . or ,
// as the decimal sign. Signs, exponents and anything else are refused.
func ParseNumber(s string) (float64, bool) {
	s = strings.ReplaceAll(strings.TrimSpace(s), ",", ".")
	if strings.Trim(s, "0123456789.") != "" {
		return 0, false
	}
	x, err := strconv.ParseFloat(s, 64)
	return x, err == nil
}

// Column gives the words of a paste that holds more than one, split at white
// space and semicolons, as when a column of a spreadsheet is pasted. It is
// false for any other key, and the words need not be numbers.
func Column(msg tea.KeyMsg) ([]string, bool) {
	if !msg.Paste {
		return nil, false
	}
	words := strings.FieldsFunc(string(msg.Runes), func(r rune) bool {
		return strings.ContainsRune(" \t\r\n;", r)
	})
	for i, w := range words {
		words[i] = text.Clean(w)
	}
	return words, len(words) > 1
}

// SameName says whether a name typed by a person is the given one. Case and
// white space around it do not matter.
func SameName(typed, name string) bool {
	return strings.EqualFold(strings.TrimSpace(text.Clean(typed)), strings.TrimSpace(text.Clean(name)))
}
