package calendar

import (
	"fmt"
	"time"

	"github.com/charmbracelet/lipgloss"

	days "drainboard/model/calendar"
	"drainboard/tui/text"
)

// fullBefore is how many days are too full as the changes fall due, and by how
// much together.
func (c *Calendar) fullBefore() (n int, over time.Duration) {
	for _, d := range c.now.Days {
		if d.Full != days.Fits {
			n++
		}
		over += d.OverBy()
	}
	return n, over
}

// levelTitle is the proposal in one line.
func (c *Calendar) levelTitle() (string, lipgloss.Style) {
	th, p := c.desk.Theme, c.proposal()
	before, over := c.fullBefore()
	switch {
	case before == 0:
		return "LEVEL nothing: no day is too full", th.Strong
	case p.Over == 0:
		return fmt.Sprintf("LEVEL %s early, and no day is too full", plural(len(p.Early), "change")), th.Strong
	case len(p.Early) == 0:
		return fmt.Sprintf("LEVEL nothing helps: %d min too many", minutesOf(over)), th.Hold
	}
	return fmt.Sprintf("LEVEL not whole: %d min too many instead of %d", minutesOf(p.OverBy), minutesOf(over)), th.Hold
}

// levelLines is the proposal: what to do early, the days then, and what one more
// empty tank would save.
func (c *Calendar) levelLines(w int) []string {
	p := pen{c: c, w: w}
	c.earlyLines(&p)
	c.dayChanges(&p)
	c.spareLines(&p)
	return p.lines
}

func (c *Calendar) earlyLines(p *pen) {
	prop := c.proposal()
	before, over := c.fullBefore()
	p.gap()
	if c.now.Limit == 0 && before == 0 {
		p.line("The room gives no limit to a day's work: house.day_minutes in room.toml is 0. With a limit this page says which changes to make early to keep to it.")
		return
	}
	if before == 0 {
		p.line(fmt.Sprintf("Every day stays within %d min, so every change can wait until it falls due.", minutesOf(c.now.Limit)))
		return
	}
	p.head("What to change early")
	for _, e := range prop.Early {
		p.line(c.earlyWords(e))
	}
	if len(prop.Early) == 0 {
		p.line("nothing: no change put ahead makes the days less full")
	}
	p.gap()
	if prop.Over > 0 {
		words := fmt.Sprintf("%s too full, by %d min in all", plural(before, "day"), minutesOf(over))
		if len(prop.Early) > 0 {
			words = fmt.Sprintf("%s too full even so, by %d min in all; as the changes fall due %s", plural(prop.Over, "day"), minutesOf(prop.OverBy), words)
		}
		p.loud(words + ". Fewer tanks, one more person or more time a day would help.")
	}
	if prop.Best {
		p.item("Proved: no other choice has less work over the limit; of those none has fewer early changes, and of those none fewer hours early.")
	} else {
		p.item(fmt.Sprintf("The best found in %s steps of search, not proved to be the best there is.", text.Whole(prop.Nodes)))
	}
	p.item(fmt.Sprintf("No change later than it falls due, none more than %s before it (house.early_hours, and half of change_hours at most). Each one brings all later changes of its larvae forward.", text.Duration(c.now.Early)))
	p.item("Nothing is entered here: begin the session of that day with these tanks added to its plan.")
}

// earlyWords is one change that is put ahead.
func (c *Calendar) earlyWords(e days.Early) string {
	return fmt.Sprintf("%s (%s): %s from %s, at the latest %s, instead of %s; %s early",
		text.Clean(e.Tank), text.Clean(e.Batch), c.dayName(e.Day), c.clock(e.From, e.Day), c.clock(e.By, e.Day),
		e.Due.In(c.now.Zone).Format("Mon 2 Jan 15:04"), text.Duration(e.Ahead()))
}

// dayChanges are the days on which something is different then.
func (c *Calendar) dayChanges(p *pen) {
	if len(c.proposal().Early) == 0 {
		return
	}
	var rows []string
	for i, then := range c.proposal().Days {
		now := c.now.Days[i]
		if then.Work == now.Work && then.Full == days.Fits && now.Full == days.Fits {
			continue
		}
		arrow := c.desk.Theme.Marks.Arrow
		row := fmt.Sprintf("%s  %3d %s %d moves   %s %s %s min", c.dayWords(then.Date), now.Moves(), arrow, then.Moves,
			c.marked(now.Work, now.Full), arrow, c.marked(then.Work, then.Full))
		rows = append(rows, row)
	}
	if len(rows) == 0 {
		return
	}
	p.gap()
	p.head("The days as the changes fall due, and then; " + c.desk.Theme.Marks.Overdue + " too full")
	for _, row := range rows {
		p.row(row)
	}
}

// marked is how long a day's work is, with a mark where that is too long.
func (c *Calendar) marked(work time.Duration, full days.Fullness) string {
	mark := " "
	if full != days.Fits {
		mark = c.desk.Theme.Marks.Overdue
	}
	return fmt.Sprintf("%4d%s", minutesOf(work), mark)
}

// spareLines say what one more ready tank would save in the next session.
func (c *Calendar) spareLines(p *pen) {
	prop := c.proposal()
	p.gap()
	p.head("One more ready tank")
	switch s := prop.spare; {
	case prop.err != nil:
		p.line("cannot be worked out: " + text.Clean(prop.err.Error()))
	case !prop.hasSpare:
		p.line("no tank holds larvae")
	case !s.Saves():
		p.line(c.sessionWords(s) + ", takes " + text.Duration(s.As.Length) + "; one more ready tank would save nothing in it.")
		c.spareNote(p, s)
	default:
		p.line(c.sessionWords(s) + ", would come to this with one more of " + text.Decimal(s.Litres, 0) + " L:")
		for _, l := range spareFigures(s) {
			p.item(l)
		}
		c.spareNote(p, s)
	}
}

func (c *Calendar) spareNote(p *pen, s days.Spare) {
	if !s.As.Best || !s.More.Best {
		p.item("The orders are the best found, not proved best.")
	}
}

// sessionWords names the session.
func (c *Calendar) sessionWords(s days.Spare) string {
	if s.At.Equal(c.now.At) {
		return fmt.Sprintf("The session of now, with %s", plural(s.Moves, "move"))
	}
	return fmt.Sprintf("The session of %s, with %s", s.At.In(c.now.Zone).Format("Mon 2 Jan 15:04"), plural(s.Moves, "move"))
}

// spareFigures are the figures that differ.
func spareFigures(s days.Spare) []string {
	var out []string
	add := func(what, as, more string) {
		if as != more {
			out = append(out, fmt.Sprintf("%s: %s instead of %s", what, more, as))
		}
	}
	add("tanks that cannot be moved", fmt.Sprint(s.As.Unmoved), fmt.Sprint(s.More.Unmoved))
	add("worst start past due and grace", overrun(s.As.Worst), overrun(s.More.Worst))
	add("length", text.Duration(s.As.Length), text.Duration(s.More.Length))
	return out
}

func overrun(d time.Duration) string {
	if d <= 0 {
		return "none"
	}
	return text.Duration(d)
}
