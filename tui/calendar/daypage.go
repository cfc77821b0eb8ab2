package calendar

import (
	"fmt"
	"strings"

	days "drainboard/model/calendar"
	"drainboard/model/wash"
	"drainboard/tui/text"
)

// acidLine is the caution beside the acid where there is room for one only.
const acidLine = "acid: label and safety data sheet first; goggles, gloves, fresh air; acid into water, never the reverse"

// headline is a day in one line.
func (c *Calendar) headline(d days.Day) string {
	words := fmt.Sprintf("%s: %s, %d min", c.dayName(d.Date), plural(d.Moves(), "move"), minutesOf(d.Work))
	if d.Limit < d.Work || c.now.Limit > 0 {
		words += fmt.Sprintf(" of %d", int(d.Limit.Minutes()))
	}
	return words + fmt.Sprintf(", %s empty", plural(d.Empty, "tank"))
}

// mostDue is how many rows of the summary name what falls due.
const mostDue = 2

// summary is the chosen day beneath the table.
func (c *Calendar) summary(d days.Day, w int) []string {
	th := c.desk.Theme
	lines := c.summaryHead(d, w)
	plainly := func(words string) {
		for _, l := range text.Wrap(words, max(1, w-4)) {
			lines = append(lines, "   "+l)
		}
	}
	due := flow(c.dueItems(d), max(1, w-4))
	if len(due) > mostDue {
		due = append(due[:mostDue-1], text.Truncate(due[mostDue-1]+" "+text.Ellipsis, w-4))
	}
	for _, l := range due {
		lines = append(lines, "   "+l)
	}
	if need := c.needWords(d); need != "" {
		plainly("have " + need)
	}
	if d.Wash.AcidML > 0 {
		lines = append(lines, "   "+th.Faint.Render(text.Truncate(th.Marks.Overdue+" "+acidLine, w-4)))
	}
	plainly(c.careWords(d))
	return lines
}

// summaryHead is the day in one line, with what is wrong behind it, or beneath
// where it does not fit.
func (c *Calendar) summaryHead(d days.Day, w int) []string {
	th := c.desk.Theme
	head := " " + th.Strong.Render(text.Truncate(c.headline(d), w-1))
	full := c.fullSentence(d)
	if full == "" {
		return []string{head}
	}
	badge := th.Hold.Render(" " + th.Marks.Overdue + " " + text.Truncate(full, w-8) + " ")
	if text.Width(head)+1+text.Width(badge) <= w {
		return []string{head + " " + badge}
	}
	return []string{head, "   " + badge}
}

// dueItems are what falls due by the hour, and what stands to be made ready.
func (c *Calendar) dueItems(d days.Day) []string {
	var items []string
	for _, x := range d.Changes {
		one := fmt.Sprintf("%s %s (%s day %d)", c.clock(x.Due, d.Date), text.Clean(x.Tank), text.Clean(x.Batch), x.AgeDays)
		if x.Overdue {
			one += " OVERDUE"
		}
		items = append(items, one)
	}
	if len(items) > 0 {
		items[0] = "due " + items[0]
	}
	for i, name := range names(d.Standing) {
		if i == 0 {
			name = "to make ready " + name
		}
		items = append(items, name)
	}
	return items
}

// flow sets items behind each other, as many as fit a row.
func flow(items []string, w int) []string {
	var lines []string
	line := ""
	for i, item := range items {
		if i < len(items)-1 {
			item += ","
		}
		switch {
		case line == "":
			line = item
		case text.Width(line)+1+text.Width(item) <= w:
			line += " " + item
		default:
			lines, line = append(lines, line), item
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// needWords is what has to be there for the changes of a day.
func (c *Calendar) needWords(d days.Day) string {
	if d.SeaWaterLitres == 0 {
		return ""
	}
	words := text.Decimal(d.SeaWaterLitres, 0) + " L sea water at temperature"
	switch {
	case !d.Wash.Known:
		words += "; acid not known: " + text.Clean(c.now.WashProblem)
	case d.Wash.AcidML > 0:
		words += fmt.Sprintf("; %s mL acid in %s L of wash", text.Decimal(d.Wash.AcidML, 0), text.Decimal(d.Wash.Litres, 0))
	}
	return words
}

// careWords is the food, the looks and the batches of a day.
func (c *Calendar) careWords(d days.Day) string {
	words := fmt.Sprintf("%s; %s and %s due", c.algaeWords(d), plural(d.Looks, "look"), plural(d.Feeds, "feed"))
	if len(d.Ready) > 0 {
		words += "; expected ready: " + strings.Join(names(d.Ready), ", ")
	}
	return words
}

func (c *Calendar) dayTitle() string {
	return "CALENDAR " + c.dayName(c.now.Days[c.chosen].Date)
}

// dayLines is the chosen day in full, and how the days are reckoned.
func (c *Calendar) dayLines(w int) []string {
	d := c.now.Days[c.chosen]
	p := pen{c: c, w: w}
	p.head(c.headline(d))
	if full := c.fullSentence(d); full != "" {
		p.loud(full)
	}
	p.gap()
	for _, x := range d.Changes {
		words := fmt.Sprintf("%s  %s  %s day %d", c.clock(x.Due, d.Date), text.Fit(text.Clean(x.Tank), 8), text.Clean(x.Batch), x.AgeDays)
		if x.Overdue {
			words += "  OVERDUE"
		}
		p.row(words)
	}
	if len(d.Changes) == 0 {
		p.line("no change falls due")
	}
	if len(d.Standing) > 0 {
		p.line("to make ready: " + strings.Join(names(d.Standing), ", "))
	}
	p.gap()
	if need := c.needWords(d); need != "" {
		p.line("have " + need)
	}
	p.line(c.careWords(d))
	if d.Wash.AcidML > 0 {
		p.gap()
		p.head("Acid")
		for _, l := range wash.AcidCautions() {
			p.item(l)
		}
	}
	p.gap()
	c.notes(&p)
	return p.lines
}

// notes say how the days are reckoned.
func (c *Calendar) notes(p *pen) {
	p.head("How the days are reckoned")
	p.item("A change falls due change_hours of elapsed time after the one before; one that is past due is taken as made now. Larvae are named by the tank that holds them today.")
	switch {
	case c.now.Crew < 2:
		p.item("Minutes: one person moves every tank due and makes it ready again; the sum of both.")
	default:
		p.item("Minutes: one moves, one makes ready. With two empty tanks or more it is the shortest order there is, as if a tank were ready whenever the mover is; with one the mover waits for it, so the sum. The plan of the session may take longer.")
	}
	p.item("Sea water fills every tank that is emptied; wash is the gear bin and every tank washed. Algae as in the demand of the feed screen.")
	for _, b := range c.now.Batches {
		words := text.Clean(b.Name) + ": " + text.Clean(b.Why)
		if !b.Last.IsZero() {
			words += "; reckoned with to " + c.dayName(b.Last)
		} else {
			words += "; reckoned with on every day"
		}
		p.item(words)
	}
	for _, gap := range c.now.Gaps {
		p.item(text.Clean(gap))
	}
	if len(c.now.Uncounted) > 0 {
		p.item("Litres are not known of " + strings.Join(names(c.now.Uncounted), ", ") + ": count the culture.")
	}
}
