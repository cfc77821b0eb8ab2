package tank

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/tui/desk"
	"drainboard/tui/text"
)

// story is what was entered of the tank, the newest first. It is gathered anew
// when an entry was made.
type story struct {
	ledger *model.Ledger
	made   int // number of the next entry when it was gathered
	events []model.Entry

	top, height int // first line shown, lines of the last frame
}

// gather takes in the events that speak of a tank.
func (s *story) gather(d *desk.Desk, tank string) {
	if s.ledger == d.Ledger && s.made == d.Ledger.Next() {
		return
	}
	s.ledger, s.made, s.events = d.Ledger, d.Ledger.Next(), nil
	all := d.Ledger.Events()
	for i := len(all) - 1; i >= 0; i-- {
		if model.SpeaksOf(all[i].Fact, tank) {
			s.events = append(s.events, all[i])
		}
	}
}

func (s *story) scroll(key tea.KeyMsg) {
	page := max(1, s.height-1)
	switch key.Type {
	case tea.KeyUp:
		s.top--
	case tea.KeyDown:
		s.top++
	case tea.KeyPgUp:
		s.top -= page
	case tea.KeyPgDown:
		s.top += page
	case tea.KeyHome:
		s.top = 0
	case tea.KeyEnd:
		s.top = len(s.events)
	}
	s.clamp()
}

func (s *story) clamp() { s.top = max(0, min(s.top, len(s.events)-s.height)) }

// view draws the lines that are seen, in exactly h rows of w cells.
func (s *story) view(d *desk.Desk, w, h int) []string {
	s.height = max(1, h)
	s.clamp()
	lines := make([]string, 0, h)
	if len(s.events) == 0 {
		lines = append(lines, "  nothing was entered of this tank yet")
	}
	for i := s.top; i < len(s.events) && len(lines) < h; i++ {
		more := " "
		if len(lines) == 0 && i > 0 || len(lines) == h-1 && i < len(s.events)-1 {
			more = d.Theme.Faint.Render(d.Theme.Marks.More)
		}
		lines = append(lines, s.line(d, i, w-1)+more)
	}
	return text.Frame(lines, w, h)
}

func (s *story) line(d *desk.Desk, i, w int) string {
	e := s.events[i]
	zone := d.Ledger.Room().Zone
	when := d.Theme.Faint.Render(moment(e.At.In(zone), d.Now.In(zone)))
	return text.Fit(" "+when+"  "+text.Fit(text.Clean(e.By), 3)+" "+text.Clean(model.Sentence(e.Fact)), w)
}

// moment is a date and a time in 16 cells, with the year where it is another.
func moment(at, now time.Time) string {
	if at.Year() != now.Year() {
		return at.Format("2006-01-02 15:04")
	}
	return at.Format("Mon 02 Jan 15:04")
}
