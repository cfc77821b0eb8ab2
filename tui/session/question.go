package session

import (
	"fmt"
	"strconv"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/tui/screen"
	"drainboard/tui/text"
)

// act is what a numbered choice does.
type act int

const (
	goOn            act = iota // close the question
	readAgain                  // ask the step again
	goInto                     // the move goes into another tank
	leaveOut                   // the move is left out, with a reason
	goAhead                    // the step passes in spite of it, with a reason
	putOff                     // the step is deferred, with a reason
	toWasher                   // go to the washer's lane
	takeBack                   // the last entry is undone
	toPause                    // back to the pause point
	toBoard                    // leave the screen, the session stays open
	closeComplete              // the session ends
	closeIncomplete            // it ends with something open, with a reason
	keepFigure                 // an unlikely figure of the washer is right
)

// choice is one line of a question.
type choice struct {
	text string
	act  act
	arg  string // the tank to go into, the figure to keep
}

// kind says where a question comes from.
type kind int

const (
	none    kind = iota
	held         // the waters lie too far apart, or another answer lets the step wait
	blocked      // the destination cannot take larvae
	ending       // no step is left
	stopped      // a wrong tank was typed
	menu         // asked for by the crew
	doubted      // the washer's figure is unlike the plan
)

// automatic says that the ledger alone brings the question up.
func (k kind) automatic() bool { return k == held || k == blocked || k == ending }

// question is numbered choices, picked by their number and Enter.
type question struct {
	kind    kind
	head    string // what is wrong, or what is asked
	loud    bool   // the head is a hold or a stop
	big     string // the head in a few words, for large letters
	choices []choice
	field   screen.Field
	at      int // the ledger's next entry when it was asked
}

func ask(k kind, head string, loud bool, at int, choices ...choice) question {
	return question{kind: k, head: text.Clean(head), loud: loud, choices: choices, field: screen.NewField(screen.Whole, 2), at: at}
}

// picked is the choice whose number was typed, and what is wrong where none is.
func (q question) picked() (choice, error) {
	n, err := strconv.Atoi(q.field.Text())
	if err != nil || n < 1 || n > len(q.choices) {
		return choice{}, fmt.Errorf("type a number from 1 to %d, then Enter", len(q.choices))
	}
	return q.choices[n-1], nil
}

// choiceLines draws the choices.
func (s *Session) choiceLines(q question, w int) []string {
	var lines []string
	for i, c := range q.choices {
		for k, part := range text.Wrap(c.text, max(1, w-5)) {
			number := fmt.Sprintf("%3d  ", i+1)
			if k > 0 {
				number = "     "
			}
			lines = append(lines, s.desk.Theme.Key.Render(number)+part)
		}
	}
	return lines
}

// fieldLine draws a field with a pointer before it and a hint after it.
func (s *Session) fieldLine(f screen.Field, hint string, w int, focused bool) string {
	th := s.desk.Theme
	switch {
	case !focused && f.Empty():
		return th.Faint.Render(text.Truncate("  + to answer here", w))
	case !focused:
		return "  " + f.View(th, max(0, w-2), false)
	}
	room := max(8, min(24, w-4-text.Width(hint)))
	return th.Strong.Render(th.Marks.Pointer) + " " + f.View(th, min(room, max(0, w-2)), true) + " " + th.Faint.Render(text.Truncate(hint, max(0, w-room-3)))
}

// reason is the words asked for where the crew decides otherwise.
type reason struct {
	act    act
	arg    string
	head   string
	list   []string
	field  screen.Field
	active bool
}

func askReason(a act, arg, head string) reason {
	return reason{act: a, arg: arg, head: text.Clean(head), list: reasonsFor(a), field: screen.NewField(screen.Line, 120), active: true}
}

// reasonLines draws the list of reasons.
func (s *Session) reasonLines(r reason, w int) []string {
	var lines []string
	for i, words := range r.list {
		lines = append(lines, s.desk.Theme.Key.Render(fmt.Sprintf("%3d  ", i+1))+text.Truncate(words, max(1, w-5)))
	}
	return lines
}

// reasonField draws the field of a reason, as wide as there is room.
func (s *Session) reasonField(r reason, w int) string {
	th := s.desk.Theme
	return th.Strong.Render(th.Marks.Pointer) + " " + r.field.View(th, max(0, w-2), true)
}

// beep rings the bell for what was not taken.
func beep(times int) tea.Cmd { return screen.Send(screen.Beep{Times: times}) }
