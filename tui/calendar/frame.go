package calendar

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/lipgloss"

	days "drainboard/model/calendar"
	"drainboard/tui/screen"
	"drainboard/tui/text"
)

// Below smallW x smallH the screen is a list of days.
// Below narrowW that list leaves out the number of moves.
const smallW, smallH, narrowW = 76, 15, 46

// leastUnder is how many rows the chosen day keeps beneath the table.
const leastUnder = 6

// View draws the screen in exactly h rows of w cells. The root draws the footer
// beneath it.
func (c *Calendar) View(w, h int) []string {
	if w < 1 || h < 1 {
		return text.Frame(nil, w, h)
	}
	c.sync()
	switch {
	case c.now.err != nil:
		return c.refusedView(w, h)
	case c.phase == day:
		return c.pageView(c.dayTitle(), c.dayLines(w-1), w, h)
	case c.phase == level:
		words, style := c.levelTitle()
		return c.pageStyled(words, style, c.levelLines(w-1), w, h)
	case w < smallW || h < smallH:
		return c.smallView(w, h)
	}
	return c.tableView(w, h)
}

// titleLine is the first row: the answer in words, and the clock.
func (c *Calendar) titleLine(words string, style lipgloss.Style, w int) string {
	d := c.desk
	layout := "Mon 2 Jan 15:04:05"
	if w < 76 {
		layout = "15:04:05"
	}
	clock := d.Theme.Faint.Render(d.Now.In(d.Ledger.Room().Zone).Format(layout))
	if d.ReadOnly != "" {
		clock = d.Theme.Action.Render(" reading along ") + " " + clock
	}
	return text.Ends(style.Render(" "+words+" "), clock, w)
}

// answer says in words whether a day is too full, and which is the first.
func (c *Calendar) answer() (string, lipgloss.Style) {
	full, first := 0, days.Day{}
	for _, d := range c.now.Days {
		if fullWords(d) == "" {
			continue
		}
		if full++; full == 1 {
			first = d
		}
	}
	if full == 0 {
		return fmt.Sprintf("CALENDAR no day of %d is too full", len(c.now.Days)), c.desk.Theme.Strong
	}
	words := fmt.Sprintf("CALENDAR %d of %s too full, the first ", full, plural(len(c.now.Days), "day"))
	return words + c.dayName(first.Date), c.desk.Theme.Hold
}

// rule says what the days are held against.
func (c *Calendar) rule() string {
	limit := "no limit to a day (day_minutes is 0)"
	if c.now.Limit > 0 {
		limit = fmt.Sprintf("limit %d min a day", minutesOf(c.now.Limit))
	}
	return fmt.Sprintf("%s, crew of %d; minutes are a lower estimate", limit, c.now.Crew)
}

// tableView is the days, and the chosen one in words.
func (c *Calendar) tableView(w, h int) []string {
	th := c.desk.Theme
	words, style := c.answer()
	head := []string{c.titleLine(words, style, w), th.Faint.Render(text.Fit(" "+c.rule(), w))}
	cols := columnsOf(w)
	head = append(head, th.Faint.Render(text.Fit("  "+cols.head(), w)))
	under := c.summary(c.now.Days[c.chosen], w)
	room := h - len(head)
	rows := min(len(c.now.Days), max(room-leastUnder, room/2))
	under = under[:min(len(under), room-rows)]
	if room-rows-len(under) > 1 {
		head, under = append([]string{head[0], ""}, head[1:]...), append([]string{""}, under...)
	}
	lines := append(head, c.list(cols).View(th, w, rows)...)
	lines = append(lines, under...)
	notes := pen{c: c, w: w}
	notes.gap()
	c.notes(&notes)
	if h-len(lines) >= len(notes.lines) {
		lines = append(lines, notes.lines...)
	}
	return text.Frame(lines, w, h)
}

// list is the days as rows to choose from.
func (c *Calendar) list(cols columns) screen.List {
	l := screen.List{Chosen: c.chosen}
	for i, d := range c.now.Days {
		l.Items = append(l.Items, c.row(d, cols, i == c.chosen))
	}
	return l
}

// smallView is one row a day.
func (c *Calendar) smallView(w, h int) []string {
	th := c.desk.Theme
	words, style := c.answer()
	if text.Width(words)+12 > w {
		words = strings.Replace(words, "CALENDAR ", "", 1)
	}
	lines := []string{c.titleLine(words, style, w)}
	l := screen.List{Chosen: c.chosen}
	for _, d := range c.now.Days {
		l.Items = append(l.Items, c.smallRow(d, w))
	}
	return text.Frame(append(lines, l.View(th, w, max(0, h-1))...), w, h)
}

// smallRow is a day in few words; that it is too full stands right behind the date.
func (c *Calendar) smallRow(d days.Day, w int) string {
	th := c.desk.Theme
	figures := fmt.Sprintf(" %4d min", minutesOf(d.Work))
	if w >= narrowW {
		figures = " " + text.FitRight(plural(d.Moves(), "move"), 9) + figures
	}
	if full := fullWords(d); full != "" {
		return c.dayWords(d.Date) + " " + th.Hold.Render(th.Marks.Overdue+" "+full) + figures
	}
	return c.dayWords(d.Date) + figures + " " + listed(c.tanksDue(d), max(1, w-13-text.Width(figures)))
}

// refusedView says why there is no calendar.
func (c *Calendar) refusedView(w, h int) []string {
	th := c.desk.Theme
	lines := []string{c.titleLine("CALENDAR cannot be worked out", th.Error, w), ""}
	for _, l := range text.Wrap(c.now.err.Error(), max(1, w-4)) {
		lines = append(lines, "  "+l)
	}
	return text.Frame(lines, w, h)
}

// pageView draws lines to read, under a title.
func (c *Calendar) pageView(title string, lines []string, w, h int) []string {
	return c.pageStyled(title, c.desk.Theme.Strong, lines, w, h)
}

func (c *Calendar) pageStyled(title string, style lipgloss.Style, lines []string, w, h int) []string {
	c.pageH = max(1, h-1)
	c.page.Lines = lines
	return append([]string{c.titleLine(title, style, w)}, c.page.View(c.desk.Theme, w, h-1)...)
}
