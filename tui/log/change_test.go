package log

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"drainboard/model"
	"drainboard/tui/desk/desktest"
	"drainboard/tui/screen"
)

// openEntry reads the entry so many rows from the newest.
func openEntry(t *testing.T, l *Log, row int) {
	t.Helper()
	l.View(80, 23)
	for range row {
		typed(t, l, "down")
	}
	typed(t, l, "enter")
	if l.page == nil {
		t.Fatal("no entry is open")
	}
}

func TestVoid(t *testing.T) {
	l, d, k := logOf(t)
	desktest.Enter(t, d, 0, &model.Noted{Text: "a slip"})
	n := d.Ledger.Next() - 1
	openEntry(t, l, 0)
	typed(t, l, "x", "enter")
	if l.slip == nil || !strings.Contains(frame(l), "must not be empty") && !strings.Contains(frame(l), "is missing") {
		t.Fatalf("void without a reason:\n%s", frame(l))
	}
	k.Fail = errors.New("no space left on device")
	typed(t, l, "written twice", "enter")
	if l.slip == nil || !strings.Contains(frame(l), "not saved: no space left") || !strings.Contains(frame(l), "written twice") {
		t.Fatalf("a failing disk:\n%s", frame(l))
	}
	k.Fail = nil
	sent := typed(t, l, "enter")
	if got := model.Sentence(last(d).Fact); got != fmt.Sprintf("entry %d void (written twice)", n) {
		t.Errorf("entered %q", got)
	}
	if toast := sent[0].(screen.Toast); toast.Mood != screen.Saved {
		t.Errorf("sent %v", sent)
	}
	if f := frame(l); !strings.Contains(f, "VOID") {
		t.Errorf("the entry that is read is not void:\n%s", f)
	}
	if sent := typed(t, l, "x"); l.slip != nil || !strings.Contains(sent[0].(screen.Toast).Text, "void already") {
		t.Errorf("a void entry is made void again: %v", sent)
	}
}

func TestEditSetsOnlyWhatWasChanged(t *testing.T) {
	cases := map[string]struct {
		keys []string
		want string // the correction, or words of the refusal
		ok   bool
	}{
		"a field":            {[]string{"down", "down", "backspace", "5", "down", "down", "down", "misread", "enter"}, "celsius = 27.5 (misread)", true},
		"initials":           {[]string{"down", "down", "down", "down", "backspace", "backspace", "MO", "down", "his", "enter"}, "by = MO (his)", true},
		"the moment":         {[]string{"down", "down", "down", eraser(19), "09:00", "down", "down", "earlier", "enter"}, "at = 2026-11-25 09:00:00 -0500 EST (earlier)", true},
		"the supply's":       {[]string{eraser(2), "down", "header", "down", "down", "down", "down", "of the header", "enter"}, "supply = header, tank =  (of the header)", true},
		"nothing":            {[]string{"down", "down", "down", "down", "down", "why", "enter"}, "nothing was changed", false},
		"no reason":          {[]string{"down", "down", "backspace", "5", "down", "down", "down", "enter"}, "say why it is corrected", false},
		"impossible":         {[]string{"down", "down", eraser(4), "270", "down", "down", "down", "x", "enter"}, "cannot be true", false},
		"no moment":          {[]string{"down", "down", "down", "x", "down", "down", "x", "enter"}, "is no moment", false},
		"the future":         {[]string{"down", "down", "down", eraser(19), "2026-11-26 09:00", "down", "down", "x", "enter"}, "after the correction itself", false},
		"a number taken out": {[]string{"down", "down", eraser(4), "down", "down", "down", "x", "enter"}, "make the entry void", false},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			l, d, k := logOf(t)
			desktest.Enter(t, d, 0, &model.Temperature{Tank: "K3", Celsius: 27.4})
			n, before := d.Ledger.Next()-1, len(k.Entries)
			openEntry(t, l, 0)
			typed(t, l, "e")
			typed(t, l, c.keys...)
			switch {
			case c.ok && len(k.Entries) == before:
				t.Errorf("not entered:\n%s", frame(l))
			case c.ok && model.Sentence(last(d).Fact) != fmt.Sprintf("entry %d reads %s", n, c.want):
				t.Errorf("entered %q; want %q", model.Sentence(last(d).Fact), c.want)
			case !c.ok && (len(k.Entries) != before || !strings.Contains(strings.Join(strings.Fields(frame(l)), " "), c.want)):
				t.Errorf("%d entered; want a refusal with %q:\n%s", len(k.Entries)-before, c.want, frame(l))
			}
		})
	}
}

// An entry that others stand on cannot be taken away; the refusal names the first
// of them, and what was typed stays.
func TestRefusalNamesTheLaterEntry(t *testing.T) {
	l, d, k := logOf(t)
	desktest.Enter(t, d, 2*time.Minute, &model.Moved{From: "K3", To: "L2"})
	desktest.Enter(t, d, time.Minute, &model.Fed{Tank: "L2", Litres: map[string]float64{"iso": 0.3}})
	n, before := d.Ledger.Next()-1, len(k.Entries)
	openEntry(t, l, 1)
	typed(t, l, "x", "never done", "enter")
	f := strings.Join(strings.Fields(frame(l)), " ")
	if len(k.Entries) != before || !strings.Contains(f, fmt.Sprintf("entry %d (fed", n)) || !strings.Contains(f, "never done") {
		t.Errorf("the refusal does not name entry %d:\n%s", n, frame(l))
	}
}

func TestACorrectionIsNotEditedButMadeVoid(t *testing.T) {
	l, d, _ := amended(t)
	openEntry(t, l, 0)
	if sent := typed(t, l, "e"); l.slip != nil || !strings.Contains(sent[0].(screen.Toast).Text, "corrected anew") {
		t.Errorf("a correction is edited: %v", sent)
	}
	typed(t, l, "x", "it was right", "enter")
	if d.Ledger.Void()[d.Ledger.Next()-4] {
		t.Error("the entry is void though the correction is")
	}
}

// An entry corrected before is edited from what it reads now.
func TestEditBeginsWithWhatCounts(t *testing.T) {
	l, d, _ := amended(t)
	openEntry(t, l, 3)
	typed(t, l, "e")
	if got := l.slip.Form.Text("celsius"); got != "27.4" {
		t.Errorf("the form begins with %q; want 27.4, as corrected", got)
	}
	typed(t, l, "down", "down", "backspace", "6", "down", "down", "down", "again", "enter")
	if now, _ := l.now(); model.Sentence(now.Fact) != "K3 27.6 °C" || len(l.known.by[d.Ledger.Next()-5]) != 2 {
		t.Errorf("it reads %q", model.Sentence(now.Fact))
	}
}
