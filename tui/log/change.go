package log

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/tui/desk"
	"drainboard/tui/factform"
	"drainboard/tui/screen"
	"drainboard/tui/text"
)

// Names and sizes of the rows a form here has beside the fields of its fact. The
// reason is not called why, which some facts have for themselves.
const (
	rowAt     = "at"
	rowBy     = "by"
	rowReason = "reason"

	mostMoment = 30
	mostBy     = 40
	mostReason = 2000
)

// errUnchanged stands beneath a correction that says nothing.
var errUnchanged = errors.New("nothing was changed")

// openSlip opens a form; done enters what it holds.
func (l *Log) openSlip(slip factform.Slip, done func(factform.Form) (tea.Cmd, error)) {
	l.slip, l.done = &slip, done
}

// onSlip takes a key for the open form. What is refused or cannot be saved stays
// as it was typed, with the reason.
func (l *Log) onSlip(key tea.KeyMsg) tea.Cmd {
	slip, step := l.slip.Update(key)
	l.slip = &slip
	switch step {
	case factform.Left:
		l.slip = nil
	case factform.Rejected:
		return screen.Send(screen.Beep{Times: 1})
	case factform.Done:
		cmd, err := l.done(slip.Form)
		if err != nil {
			slip = slip.Refused(err)
			l.slip = &slip
			return screen.Send(screen.Beep{Times: 1})
		}
		l.slip = nil
		return cmd
	}
	return nil
}

// enter makes an entry and says so.
func (l *Log) enter(at time.Time, fact model.Fact) (tea.Cmd, error) {
	saved, err := l.desk.EnterAt(at, fact)
	if err != nil {
		return nil, err
	}
	l.refresh()
	return said(fact, saved), nil
}

func said(fact model.Fact, saved desk.Saved) tea.Cmd {
	words := model.Sentence(fact) + " saved"
	if len(saved.Odd) == 0 {
		return say(text.Clean(words), screen.Saved)
	}
	return tea.Batch(say(text.Clean(words+"; odd: "+strings.Join(saved.Odd, ", ")), screen.Saved), screen.Send(screen.Beep{Times: 2}))
}

// openVoid asks for the reason to make the entry void.
func (l *Log) openVoid() {
	n := l.page.n
	known := map[string]string{"entry": strconv.Itoa(n), "void": "yes", "set": ""}
	slip := factform.Slip{
		Title: fmt.Sprintf("Make entry %d void: %s", n, model.Sentence(l.entry(n).Fact)),
		Form:  factform.New(l.desk.Ledger.Room(), model.KindCorrected, known),
	}
	l.openSlip(slip, func(f factform.Form) (tea.Cmd, error) {
		fact, err := f.Fact()
		if err != nil {
			return nil, err
		}
		return l.enter(l.desk.Now, fact)
	})
}

// openEdit opens the entry as it counts, to correct it.
func (l *Log) openEdit() {
	e, ok := l.now()
	if !ok {
		return
	}
	zone := l.desk.Ledger.Room().Zone
	form := factform.Of(l.desk.Ledger.Room(), e.Fact).
		With(rowAt, "a time of its day as 14:05, or 2026-11-25 14:05", e.At.In(zone).Format("2006-01-02 15:04:05"), mostMoment).
		With(rowBy, "initials", e.By, mostBy).
		With(rowReason, "why it is corrected", "", mostReason)
	slip := factform.Slip{Title: fmt.Sprintf("Correct entry %d: %s", e.N, model.Sentence(e.Fact)), Form: form}
	l.openSlip(slip, func(f factform.Form) (tea.Cmd, error) { return l.correct(e, f) })
}

// correct enters a correction of just the fields that were changed.
func (l *Log) correct(e model.Entry, f factform.Form) (tea.Cmd, error) {
	set, err := f.Changed()
	if err != nil {
		return nil, err
	}
	if f.Touched(rowAt) {
		if set["at"], err = l.sameDay(f.Text(rowAt), e.At); err != nil {
			return nil, err
		}
	}
	if f.Touched(rowBy) {
		set["by"] = f.Text(rowBy)
	}
	switch {
	case len(set) == 0:
		return nil, errUnchanged
	case f.Text(rowReason) == "":
		return nil, &model.FieldError{Field: rowReason, Problem: "is missing; say why it is corrected"}
	}
	return l.enter(l.desk.Now, &model.Corrected{Entry: e.N, Why: f.Text(rowReason), Set: set})
}

// sameDay reads a moment; a time of day alone is of the entry's own day.
func (l *Log) sameDay(typed string, at time.Time) (time.Time, error) {
	zone := l.desk.Ledger.Room().Zone
	if _, err := time.Parse("15:04", typed); err == nil {
		typed = at.In(zone).Format("2006-01-02 ") + typed
	}
	return l.moment(typed)
}

func (l *Log) moment(typed string) (time.Time, error) {
	at, err := factform.Moment(typed, l.desk.Now, l.desk.Ledger.Room().Zone)
	if err != nil {
		return at, &model.FieldError{Field: rowAt, Problem: err.Error()}
	}
	return at, nil
}
