// Package screentest helps to test screens: it holds a view to its exact size,
// presses keys by what they do and runs the commands a screen gives back. Only
// tests import it.
package screentest

import (
	"os"
	"reflect"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/tui/keys"
	"drainboard/tui/screen"
	"drainboard/tui/text"
)

// EverySize draws the view at sizes from 20x5 to 220x70 and fails where it is not
// exactly h rows of w cells or a row would break. It takes every width and every
// height, but of their pairs each eleventh (with -short each 53rd), and all of
// them where the variable DRAINBOARD_EVERY_SIZE is set.
func EverySize(t testing.TB, view func(w, h int) []string) {
	t.Helper()
	step := 11
	switch {
	case os.Getenv("DRAINBOARD_EVERY_SIZE") != "":
		step = 1
	case testing.Short():
		step = 53
	}
	const heights = 70 - 5 + 1
	for i := 0; i < (220-20+1)*heights; i += step {
		if w, h := 20+i/heights, 5+i%heights; !exact(t, view(w, h), w, h) {
			return
		}
	}
}

// Exact fails where rows are not exactly h rows of w cells.
func Exact(t testing.TB, rows []string, w, h int) {
	t.Helper()
	exact(t, rows, w, h)
}

func exact(t testing.TB, rows []string, w, h int) bool {
	t.Helper()
	if len(rows) != h {
		t.Errorf("at %dx%d: %d rows", w, h, len(rows))
		return false
	}
	for y, row := range rows {
		if text.Width(row) != w || strings.ContainsAny(row, "\n\r\t") {
			t.Errorf("at %dx%d: row %d is %d cells: %q", w, h, y, text.Width(row), row)
			return false
		}
	}
	return true
}

// Press presses the keys of actions one after the other and gives the screen
// and the messages it sent. It fails where an action is not to be had.
func Press(t testing.TB, s screen.Screen, actions ...keys.Action) (screen.Screen, []tea.Msg) {
	t.Helper()
	var sent []tea.Msg
	for _, a := range actions {
		msg := s.Keys().Press(a)
		if got, _ := s.Keys().Match(msg); got != a {
			t.Fatalf("%s: pressing %s gives %q", s.Title(), a, got)
		}
		var cmd tea.Cmd
		s, cmd = s.Update(msg)
		sent = append(sent, Run(cmd)...)
	}
	return s, sent
}

// Type presses keys by name, or types text letter by letter where a word is no
// key's name: Type(s, "27.4", "enter").
func Type(s screen.Screen, words ...string) (screen.Screen, []tea.Msg) {
	var sent []tea.Msg
	for _, w := range words {
		for _, msg := range keys.Normalise(keys.Msg(w)) {
			var cmd tea.Cmd
			s, cmd = s.Update(msg)
			sent = append(sent, Run(cmd)...)
		}
	}
	return s, sent
}

// Run runs a command and gives its messages, those of batches and sequences one
// by one. A command that waits for a clock makes the test wait.
func Run(cmd tea.Cmd) []tea.Msg {
	if cmd == nil {
		return nil
	}
	msg := cmd()
	if v := reflect.ValueOf(msg); v.Kind() == reflect.Slice && v.Type().Elem() == reflect.TypeFor[tea.Cmd]() {
		var out []tea.Msg
		for i := range v.Len() {
			out = append(out, Run(v.Index(i).Interface().(tea.Cmd))...)
		}
		return out
	}
	if msg == nil {
		return nil
	}
	return []tea.Msg{msg}
}

// Join makes one string of rows without the spaces at their ends, for a golden
// frame.
func Join(rows []string) string {
	var b strings.Builder
	for _, row := range rows {
		b.WriteString(strings.TrimRight(row, " "))
		b.WriteByte('\n')
	}
	return b.String()
}
