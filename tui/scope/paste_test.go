package scope

import (
	"errors"
	"slices"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/tui/screen/screentest"
)

func paste(s string) tea.KeyMsg {
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(s), Paste: true}
}

func TestPastedColumn(t *testing.T) {
	s, _, k := scope(t, "K3")
	before := len(k.Entries)
	s.Update(paste("702\n745,5\r\n731;719"))
	if s.ask == nil || len(k.Entries) != before {
		t.Fatalf("a column was taken without a question")
	}
	if !strings.Contains(frame(s), "4 pasted lengths") {
		t.Errorf("the question does not name the figure:\n%s", frame(s))
	}
	typed(t, s, "esc")
	if len(read(s)) != 0 || s.ask != nil {
		t.Errorf("after no: %v", read(s))
	}
	s.Update(paste("702\n745,5\r\n731;719"))
	k.Fail = errors.New("disk gone")
	typed(t, s, "enter")
	if s.ask == nil || !strings.Contains(frame(s), "disk gone") {
		t.Fatalf("a column that was not saved is gone:\n%s", frame(s))
	}
	k.Fail = nil
	typed(t, s, "enter")
	if got := read(s); !slices.Equal(got, []float64{702, 745.5, 731, 719}) || len(k.Entries) != before+1 {
		t.Errorf("read %v in %d entries; want four in one", got, len(k.Entries)-before)
	}
	typed(t, s, "backspace")
	if s.ask == nil || len(read(s)) != 4 {
		t.Fatalf("a column was taken back without a question")
	}
	typed(t, s, "enter")
	if len(read(s)) != 0 {
		t.Errorf("%v is left", read(s))
	}
}

func TestPastedColumnRefusedAsAWhole(t *testing.T) {
	for name, column := range map[string]string{
		"a word":         "702\nlength\n731",
		"too long":       "702\n70000",
		"minus":          "702\n-3",
		"commas":         "702,731,abc",
		"escape letters": "702\n\x1b[31m731\n",
	} {
		t.Run(name, func(t *testing.T) {
			s, _, k := scope(t, "K3")
			before := len(k.Entries)
			_, cmd := s.Update(paste(column))
			if name == "escape letters" { // cleaned, it is a column of numbers
				if s.ask == nil {
					t.Errorf("a coloured column was not taken: %q", s.say.text)
				}
				return
			}
			if s.ask != nil || len(k.Entries) != before || beeps(screentest.Run(cmd)) != 1 {
				t.Errorf("taken, or no beep; it says %q", s.say.text)
			}
			if !strings.Contains(s.say.text, "nothing of the") {
				t.Errorf("it says %q", s.say.text)
			}
		})
	}
}

func TestOnePastedNumberIsTyped(t *testing.T) {
	s, _, _ := scope(t, "K3")
	s.Update(paste(" 702\n"))
	if s.field.Text() != "702" || s.ask != nil {
		t.Errorf("field %q", s.field.Text())
	}
}
