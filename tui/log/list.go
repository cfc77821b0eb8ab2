package log

import (
	"strconv"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/tui/text"
)

// list is the pointer in the list of entries.
type list struct {
	chosen int // n of the entry under the pointer; 0 for the newest
	index  int // its row
	height int // rows of the last frame
}

// move takes a key that moves the pointer among so many rows.
func (l *list) move(key tea.KeyMsg, rows int) {
	page := max(1, l.height-1)
	switch key.Type {
	case tea.KeyUp:
		l.index--
	case tea.KeyDown:
		l.index++
	case tea.KeyPgUp:
		l.index -= page
	case tea.KeyPgDown:
		l.index += page
	case tea.KeyHome:
		l.index = 0
	case tea.KeyEnd:
		l.index = rows - 1
	}
	l.index = max(0, min(l.index, rows-1))
}

// listView draws the rows that are seen, in exactly h rows of w cells.
func (l *Log) listView(w, h int) []string {
	l.place()
	l.list.height = max(1, h)
	th := l.desk.Theme
	rows := l.count()
	top := max(0, min(l.list.index-h/2, rows-h))
	lines := make([]string, 0, max(0, h))
	for i := top; i < rows && len(lines) < h; i++ {
		before := "  "
		switch {
		case i == l.list.index:
			before = th.Focus.Render(th.Marks.Pointer) + " "
		case i == top && top > 0, len(lines) == h-1 && i < rows-1:
			before = th.Faint.Render(th.Marks.More) + " "
		}
		lines = append(lines, before+l.row(l.at(i), w-2))
	}
	if rows == 0 {
		lines = append(lines, "  "+l.emptyWords())
	}
	return text.Frame(lines, w, h)
}

func (l *Log) emptyWords() string {
	switch {
	case !l.seek.on():
		return "nothing was entered yet; + makes an entry"
	case l.seek.done():
		return "nothing found; a date is written as 2026-11-20"
	}
	return "searching"
}

// row is one entry in one line of w cells: n, when, who, and what it says; what
// counts no longer or otherwise says so first.
func (l *Log) row(n, w int) string {
	e, d := l.entry(n), l.desk
	zone := d.Ledger.Room().Zone
	digits := max(4, len(strconv.Itoa(len(d.Ledger.Entries()))))
	line := text.FitRight(strconv.Itoa(n), digits) + "  " + moment(e.At.In(zone), d.Now.In(zone)) + "  " + text.Fit(text.Clean(e.By), 3) + " "
	words := text.Clean(inMicrometres(model.Sentence(e.Fact)))
	switch {
	case l.known.void[n]:
		return d.Theme.Faint.Render(text.Fit(line+d.Theme.Marks.Out+" VOID  "+words, w))
	case len(l.known.by[n]) > 0:
		return text.Fit(line+d.Theme.Strong.Render(d.Theme.Marks.Odd+" CORRECTED")+"  "+words, w)
	}
	return text.Fit(line+words, w)
}

func inMicrometres(words string) string {
	if strings.HasSuffix(words, " um") {
		words = strings.TrimSuffix(words, " um") + " µm"
	}
	return strings.ReplaceAll(words, " um,", " µm,")
}

// moment is a date and a time in 16 cells, with the year where it is another.
func moment(at, now time.Time) string {
	if at.Year() != now.Year() {
		return at.Format("2006-01-02 15:04")
	}
	return at.Format("Mon 02 Jan 15:04")
}
