package calendar

import "drainboard/tui/text"

// pen writes the lines of a page w cells wide.
type pen struct {
	c     *Calendar
	w     int
	lines []string
}

func (p *pen) gap() { p.lines = append(p.lines, "") }

func (p *pen) head(words string) {
	for _, l := range text.Wrap(words, max(1, p.w-2)) {
		p.lines = append(p.lines, "  "+p.c.desk.Theme.Title.Render(l))
	}
}

// line is a line of text, broken where it is too long.
func (p *pen) line(words string) {
	for _, l := range text.Wrap(words, max(1, p.w-4)) {
		p.lines = append(p.lines, "    "+l)
	}
}

// item is an item of a list.
func (p *pen) item(words string) {
	for i, l := range text.Wrap(words, max(1, p.w-6)) {
		mark := p.c.desk.Theme.Marks.Bullet
		if i > 0 {
			mark = " "
		}
		p.lines = append(p.lines, "    "+mark+" "+l)
	}
}

// row is a line laid out by its columns, which is cut where it is too long.
func (p *pen) row(words string) {
	p.lines = append(p.lines, "    "+text.Truncate(words, max(1, p.w-4)))
}

// loud is what must not be overlooked.
func (p *pen) loud(words string) {
	th := p.c.desk.Theme
	for _, l := range text.Wrap(th.Marks.Overdue+" "+words, max(1, p.w-6)) {
		p.lines = append(p.lines, "    "+th.Hold.Render(" "+l+" "))
	}
}
