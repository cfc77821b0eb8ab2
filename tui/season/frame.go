package season

import (
	"fmt"

	"drainboard/model/season"
	"drainboard/tui/text"
)

// View draws the screen in exactly h rows of w cells.
func (s *Season) View(w, h int) []string {
	if w < 1 || h < 1 {
		return nil
	}
	lines := []string{s.titleLine(w)}
	switch {
	case len(s.shown().Batches) == 0:
		lines = append(lines, "", " no batch was stocked yet")
	case s.page == habitPage:
		lines = append(lines, s.habitView(w, h-1)...)
	default:
		lines = append(lines, s.batchView(w, h-1)...)
	}
	return text.Frame(lines, w, h)
}

// titleLine says which batches are shown, and the clock.
func (s *Season) titleLine(w int) string {
	d := s.desk
	what := map[page]string{batchPage: "batches", habitPage: "habits"}[s.page]
	years := "all years"
	if s.year != 0 {
		years = fmt.Sprint(s.year)
	}
	n := len(s.shown().Batches)
	words := fmt.Sprintf(" SEASON %s, %s: %d batches", what, years, n)
	if n == 1 {
		words = fmt.Sprintf(" SEASON %s, %s: 1 batch", what, years)
	}
	layout := "Mon 2 Jan 15:04:05"
	if w < 60 {
		layout = "15:04:05"
	}
	return text.Ends(d.Theme.Title.Render(words), d.Theme.Faint.Render(d.Now.In(d.Ledger.Room().Zone).Format(layout)), w)
}

// airyH is the height from which there is air between the parts.
const airyH = 18

// batchView is the table and, beneath, the batch under the pointer.
func (s *Season) batchView(w, h int) []string {
	var lines []string
	if h >= airyH {
		lines = append(lines, "")
	}
	details := s.details(w)
	rows := len(s.shown().Batches) + 1
	room := h - len(lines)
	if over := rows + 1 + len(details) - room; over > 0 {
		// The table keeps at least half of the room, and five rows of it.
		rows = max(rows-over, min(rows, max(6, room/2)))
	}
	lines = append(lines, s.table(w, min(rows, room))...)
	return append(append(lines, ""), details...)
}

// habitView is the table of habits, what has to stand beside it, and the plot.
func (s *Season) habitView(w, h int) []string {
	var lines []string
	if h >= airyH {
		lines = append(lines, "")
	}
	caveat := s.caveat(w)
	table := len(season.Habits()) + 1
	room := h - len(lines)
	if room < table+len(caveat) {
		// Rather fewer habits than figures without what they are worth.
		caveat = caveat[:min(len(caveat), max(0, room-2))]
		table = max(0, room-len(caveat))
	}
	lines = append(append(lines, s.habitTable(w, table)...), caveat...)
	if left := h - len(lines); left >= 5 {
		if left >= 8 {
			lines = append(lines, "")
			left--
		}
		lines = append(lines, s.plot(w-1, left)...)
	}
	return lines
}
