package calendar

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"
	"time"

	"drainboard/model"
	days "drainboard/model/calendar"
	"drainboard/tui/text"
)

// dayWords is a date as people say it, ten cells wide.
func (c *Calendar) dayWords(d model.Day) string {
	return d.Start(c.now.Zone).Format("Mon _2 Jan")
}

// dayName is the same in a sentence.
func (c *Calendar) dayName(d model.Day) string { return d.Start(c.now.Zone).Format("Mon 2 Jan") }

// clock is an hour of the room; with its date where that is not the given day.
func (c *Calendar) clock(t time.Time, on model.Day) string {
	t = t.In(c.now.Zone)
	if model.DayOf(t, c.now.Zone) != on {
		return t.Format("Mon 2 Jan 15:04")
	}
	return t.Format("15:04")
}

// minutesOf is a length of work in whole minutes, never less than it is.
func minutesOf(d time.Duration) int { return int(math.Ceil(d.Minutes())) }

// fullWords says in which way a day is too full, in at most ten cells; empty where
// it is not.
func fullWords(d days.Day) string {
	switch {
	case d.Stuck():
		return "no empty"
	case d.Full == days.NoTime:
		return "no time"
	case d.Full == days.OverLimit:
		return "too full"
	}
	return ""
}

// fullSentence says the same in full.
func (c *Calendar) fullSentence(d days.Day) string {
	over := fmt.Sprintf("by %d min", minutesOf(d.OverBy()))
	switch {
	case d.Stuck():
		return "NO EMPTY TANK to move into: make one ready, or take one into use"
	case d.Full == days.NoTime && d.Date == c.now.Days[0].Date:
		return "MORE MOVES THAN THERE IS TIME FOR before midnight, " + over
	case d.Full == days.NoTime:
		return "MORE MOVES THAN THE DAY HAS TIME FOR, " + over
	case d.Full == days.OverLimit:
		return "TOO FULL " + over
	}
	return ""
}

// plural is a number of things.
func plural(n int, one string) string {
	if n == 1 {
		return "1 " + one
	}
	return text.Whole(n) + " " + one + "s"
}

// litres is a volume with as many decimals as it needs.
func litres(x float64) string {
	if x >= 10 || x == 0 {
		return text.Decimal(x, 0)
	}
	return text.Decimal(x, 2)
}

// algaeWords is the food of a day by alga, as room.toml lists them. What was not
// counted has no litres.
func (c *Calendar) algaeWords(d days.Day) string {
	var words []string
	for _, name := range c.algae(d) {
		words = append(words, text.Clean(name)+" "+c.algaFigure(d, name))
	}
	if len(words) == 0 {
		return "no algae"
	}
	return "algae " + strings.Join(words, ", ")
}

// algae are the algae of a day in the order of room.toml.
func (c *Calendar) algae(d days.Day) []string {
	var names []string
	for _, a := range c.desk.Ledger.Room().Algae {
		if d.Cells[a.Name] > 0 {
			names = append(names, a.Name)
		}
	}
	for _, name := range slices.Sorted(maps.Keys(d.Cells)) {
		if d.Cells[name] > 0 && !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return names
}

func (c *Calendar) algaFigure(d days.Day, name string) string {
	if slices.Contains(c.now.Uncounted, name) {
		return text.Unknown + " L (its culture is not counted)"
	}
	return litres(d.Algae[name]) + " L"
}

// algaeTotal is all litres of a day, with a question mark where some are not known.
func (c *Calendar) algaeTotal(d days.Day) string {
	names := c.algae(d)
	total, known := 0.0, true
	for _, name := range names {
		total += d.Algae[name]
		known = known && !slices.Contains(c.now.Uncounted, name)
	}
	switch {
	case len(names) == 0:
		return "0"
	case known:
		return litres(total)
	case total == 0:
		return text.Unknown
	}
	return litres(total) + text.Unknown
}

// acidFigure is the acid of a day in mL.
func acidFigure(d days.Day) string {
	if !d.Wash.Known && (len(d.Changes) > 0 || len(d.Standing) > 0) {
		return text.Unknown
	}
	return text.Decimal(d.Wash.AcidML, 0)
}

// names lists tanks or batches, cleaned.
func names(list []string) []string {
	out := make([]string, len(list))
	for i, n := range list {
		out[i] = text.Clean(n)
	}
	return out
}

// listed is as many names as fit w cells, and how many more there are.
func listed(list []string, w int) string {
	all := strings.Join(list, " ")
	if text.Width(all) <= w {
		return all
	}
	for n := len(list) - 1; n > 0; n-- {
		if some := fmt.Sprintf("%s +%d", strings.Join(list[:n], " "), len(list)-n); text.Width(some) <= w {
			return some
		}
	}
	return text.Truncate(all, w)
}
