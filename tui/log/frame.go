package log

import (
	"drainboard/tui/text"
)

// View draws the screen in exactly h rows of w cells.
func (l *Log) View(w, h int) []string {
	if w < 1 || h < 1 {
		return nil
	}
	l.refresh()
	lines := []string{l.heading(w)}
	if l.slip == nil && l.page == nil && l.pick == nil && (l.seek.typing || l.seek.on()) {
		lines = append(lines, l.searchLine(w))
	}
	left := h - len(lines)
	switch {
	case l.slip != nil:
		lines = append(lines, l.slip.View(l.desk.Theme, w, left, nil)...)
	case l.pick != nil:
		if left > 3 {
			lines = append(lines, " "+l.desk.Theme.Title.Render("Late entry: what was it?"))
		}
		lines = append(lines, l.pick.View(l.desk.Theme, w, h-len(lines))...)
	case l.page != nil:
		lines = append(lines, l.pageView(w, left)...)
	default:
		lines = append(lines, l.listView(w, left)...)
	}
	return text.Frame(lines, w, h)
}

// heading says how many entries there are, or were found, and shows the clock.
func (l *Log) heading(w int) string {
	d := l.desk
	all := text.Whole(len(d.Ledger.Entries()))
	words := " LOG  " + all + " entries"
	if l.seek.on() {
		words = " LOG  " + text.Whole(len(l.seek.hits)) + " of " + all + " entries"
		if !l.seek.done() {
			words += ", searching"
		}
	}
	layout := "Mon 2 Jan 15:04:05"
	if w < 60 {
		layout = "15:04:05"
	}
	return text.Ends(d.Theme.Strong.Render(words), d.Theme.Faint.Render(d.Now.In(d.Ledger.Room().Zone).Format(layout)), w)
}

func (l *Log) searchLine(w int) string {
	return " search: " + l.seek.field.View(l.desk.Theme, max(2, min(mostSearch+1, w-10)), l.seek.typing)
}
