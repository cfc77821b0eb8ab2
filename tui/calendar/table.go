package calendar

import (
	"fmt"
	"strings"

	days "drainboard/model/calendar"
	"drainboard/tui/text"
)

// columns are the widths of the table beside those that never change.
type columns struct{ tanks, bar, ready int }

// The widths that never change: the date, the figures.
const (
	dateW  = 10
	movesW = 5
	minW   = 4
	seaW   = 5
	acidW  = 7
	algaeW = 5
	countW = 4
	fixedW = dateW + movesW + minW + seaW + acidW + algaeW + 2*countW + 10 // a space before each but the first
)

// mostTanksW is where the tanks stop to take what a wide screen has: figures are
// read across from the date.
const mostTanksW = 48

// columnsOf shares what a row of w cells has beside the pointer and the figures.
func columnsOf(w int) columns {
	room := w - 2 - fixedW
	c := columns{bar: 10, ready: 5}
	if more := room - c.bar - c.ready - 12; more > 0 {
		c.bar += min(8, more/3)
		c.ready += min(11, more/3)
	}
	c.tanks = max(1, min(mostTanksW, room-c.bar-c.ready))
	return c
}

func (c columns) head() string {
	return strings.Join([]string{
		text.Fit("DAY", dateW), text.Fit("TANKS DUE", c.tanks), text.FitRight("MOVES", movesW), text.FitRight("MIN", minW),
		text.Fit("", c.bar), text.FitRight("SEA L", seaW), text.FitRight("ACID mL", acidW), text.FitRight("ALG L", algaeW),
		text.FitRight("LOOK", countW), text.FitRight("FEED", countW), text.Fit("READY", c.ready),
	}, " ")
}

// row is one day. Where it is too full words and a mark stand in place of the bar.
func (c *Calendar) row(d days.Day, cols columns, chosen bool) string {
	th := c.desk.Theme
	style := th.Plain
	switch {
	case chosen:
		style = th.Strong
	case d.Moves() == 0:
		style = th.Faint
	}
	bar := th.Water.Render(c.bar(d, cols.bar))
	if full := fullWords(d); full != "" {
		bar = th.Hold.Render(text.Fit(th.Marks.Overdue+" "+full, 10)) + strings.Repeat(" ", cols.bar-10)
	}
	before := []string{
		text.Fit(c.dayWords(d.Date), dateW), text.Fit(listed(c.tanksDue(d), cols.tanks), cols.tanks),
		text.FitRight(fmt.Sprint(d.Moves()), movesW), text.FitRight(fmt.Sprint(minutesOf(d.Work)), minW),
	}
	after := []string{
		text.FitRight(text.Decimal(d.SeaWaterLitres, 0), seaW), text.FitRight(acidFigure(d), acidW), text.FitRight(c.algaeTotal(d), algaeW),
		text.FitRight(fmt.Sprint(d.Looks), countW), text.FitRight(fmt.Sprint(d.Feeds), countW),
		text.Fit(listed(names(d.Ready), cols.ready), cols.ready),
	}
	return style.Render(strings.Join(before, " ")) + " " + bar + " " + style.Render(strings.Join(after, " "))
}

// tanksDue are the tanks of a day; behind an overdue one stands the mark.
func (c *Calendar) tanksDue(d days.Day) []string {
	var list []string
	for _, name := range d.Tanks() {
		shown := text.Clean(name)
		for _, x := range d.Changes {
			if x.Tank == name && x.Overdue {
				shown += strings.Repeat(c.desk.Theme.Marks.Overdue, 2)
				break
			}
		}
		list = append(list, shown)
	}
	return list
}

// bar is the work of a day against its limit; without one, against the day with
// the most work.
func (c *Calendar) bar(d days.Day, w int) string {
	full := c.now.Limit
	if full == 0 {
		for _, other := range c.now.Days {
			full = max(full, other.Work)
		}
	}
	if full == 0 {
		return text.Fit("", w)
	}
	share := min(1, float64(d.Work)/float64(full))
	cells := int(share*float64(w) + 0.5)
	if d.Work > 0 {
		cells = max(1, cells)
	}
	return text.Fit(strings.Repeat(c.desk.Theme.Marks.Level[8], cells), w)
}
