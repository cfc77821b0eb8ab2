package main

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"drainboard/model/wash"
	"drainboard/tui/text"
)

// lines is the calendar for people.
func (v calendarView) lines() string {
	var b strings.Builder
	b.WriteString(v.answer() + "\n")
	limit := "no limit to a day (house.day_minutes is 0)"
	if v.LimitMinutes != nil {
		limit = fmt.Sprintf("limit %d min a day", *v.LimitMinutes)
	}
	fmt.Fprintf(&b, "%s, %s; %s, crew of %d\n\n", text.Clean(v.Room), v.when.Format("Mon 2 Jan 2006 15:04"), limit, v.Crew)
	var rows [][]string
	for _, d := range v.Days {
		rows = append(rows, d.row())
	}
	b.WriteString(table([]string{"DAY", ">MOVES", ">MIN", "", ">SEA L", ">ACID mL", ">WASH L", "ALGAE L", ">LOOKS", ">FEEDS", "READY", "TANKS DUE"}, rows))
	b.WriteString(v.notes())
	b.WriteString("\n" + v.Level.lines(v.LimitMinutes != nil))
	b.WriteString("\n" + v.OneMoreTank.line())
	if slices.ContainsFunc(v.Days, func(d calendarDay) bool { return d.AcidML != nil && *d.AcidML > 0 }) {
		b.WriteString("\nacid:\n" + cautionLines(wash.AcidCautions()))
	}
	return b.String()
}

// answer says in words whether a day is too full.
func (v calendarView) answer() string {
	full := 0
	first := ""
	for _, d := range v.Days {
		if d.mark() == "" {
			continue
		}
		if full++; full == 1 {
			first = d.when.Format("Mon 2 Jan")
		}
	}
	if full == 0 {
		return fmt.Sprintf("CALENDAR no day of %d is too full", len(v.Days))
	}
	return fmt.Sprintf("CALENDAR %d of %s too full, the first %s", full, daysWord(len(v.Days)), first)
}

func (d calendarDay) row() []string {
	return []string{
		d.when.Format("Mon _2 Jan"), fmt.Sprint(d.Moves), fmt.Sprint(d.Minutes), d.mark(), text.Decimal(d.SeaWaterLitres, 0),
		figure(d.AcidML, 0), figure(d.WashLitres, 0), d.algae(), fmt.Sprint(d.Looks), fmt.Sprint(d.Feeds),
		strings.Join(d.Ready, " "), d.tanks(),
	}
}

// mark says in words that a day is too full, and by how much.
func (d calendarDay) mark() string {
	switch {
	case d.stuck:
		return "! no empty tank"
	case d.Over:
		return fmt.Sprintf("! %s by %d", d.Fullness, d.OverMinutes)
	}
	return ""
}

func (d calendarDay) algae() string {
	var words []string
	for _, alga := range slices.Sorted(maps.Keys(d.AlgaeLitres)) {
		words = append(words, alga+" "+figure(d.AlgaeLitres[alga], 2))
	}
	return strings.Join(words, " ")
}

// tanks are the tanks due; behind an overdue one that is said.
func (d calendarDay) tanks() string {
	words := slices.Clone(d.Tanks)
	for i, tank := range words {
		if slices.ContainsFunc(d.Changes, func(x dueChange) bool { return x.Tank == tank && x.Overdue }) {
			words[i] += " (overdue)"
		}
	}
	if len(d.MakeReady) > 0 {
		words = append(words, "; to make ready: "+strings.Join(d.MakeReady, ", "))
	}
	return strings.ReplaceAll(strings.Join(words, ", "), ", ; ", "; ")
}

func daysWord(n int) string {
	if n == 1 {
		return "1 day"
	}
	return fmt.Sprintf("%d days", n)
}

// notes say what the days rest on.
func (v calendarView) notes() string {
	var b strings.Builder
	b.WriteString("\nminutes are a lower estimate; larvae are named by the tank that holds them today\n")
	for _, batch := range v.Batches {
		stays := "reckoned with on every day"
		if batch.LastDate != nil {
			stays = "reckoned with to " + *batch.LastDate
		}
		fmt.Fprintf(&b, "batch %s: %s; %s\n", text.Clean(batch.Name), text.Clean(batch.Why), stays)
	}
	for _, gap := range v.Gaps {
		b.WriteString(text.Clean(gap) + "\n")
	}
	if len(v.Uncounted) > 0 {
		fmt.Fprintf(&b, "litres not known of %s: count the culture\n", text.Clean(strings.Join(v.Uncounted, ", ")))
	}
	if v.WashProblem != nil {
		fmt.Fprintf(&b, "acid not known: %s\n", text.Clean(*v.WashProblem))
	}
	return b.String()
}

// lines is the proposal for people.
func (v levelView) lines(limited bool) string {
	var b strings.Builder
	switch {
	case !v.Needed && !limited:
		return "level: no limit is given, so nothing is to be made early\n"
	case !v.Needed:
		return "level: no day is too full, so nothing is to be made early\n"
	case len(v.Early) == 0:
		fmt.Fprintf(&b, "level: nothing helps; %s too full, by %d min in all\n", daysWord(v.before), v.beforeOver)
	case v.OverDays > 0:
		fmt.Fprintf(&b, "level: %s early; %s too full even so, by %d min in all instead of %d\n",
			plural(len(v.Early), "change"), daysWord(v.OverDays), v.OverMinutes, v.beforeOver)
	default:
		fmt.Fprintf(&b, "level: %s early, and no day is too full\n", plural(len(v.Early), "change"))
	}
	for _, e := range v.Early {
		fmt.Fprintf(&b, "  %s (%s): %s from %s, at the latest %s, instead of %s\n", text.Clean(e.Tank), text.Clean(e.Batch),
			e.day.Format("Mon 2 Jan"), e.from.Format("15:04"), e.by.Format("15:04"), e.due.Format("Mon 2 Jan 15:04"))
	}
	if v.Best {
		b.WriteString("  proved best: least over the limit, then fewest changes early, then fewest hours\n")
	} else {
		fmt.Fprintf(&b, "  the best found in %d steps, not proved best\n", v.Nodes)
	}
	return b.String()
}

// line says what one more ready tank would save.
func (s *spareView) line() string {
	if s == nil {
		return "one more ready tank: no tank holds larvae\n"
	}
	when := s.at.Format("Mon 2 Jan 15:04")
	if !s.Saves {
		return fmt.Sprintf("one more ready tank: saves nothing in the session of %s\n", when)
	}
	line := fmt.Sprintf("one more ready tank of %s L: the session of %s takes %d min instead of %d",
		text.Decimal(s.Litres, 0), when, s.More.Minutes, s.As.Minutes)
	if s.More.WorstOverrun < s.As.WorstOverrun {
		line += fmt.Sprintf(", its worst overrun is %d min instead of %d", s.More.WorstOverrun, s.As.WorstOverrun)
	}
	if s.More.Unmoved < s.As.Unmoved {
		line += fmt.Sprintf(", %d unmoved instead of %d", s.More.Unmoved, s.As.Unmoved)
	}
	return line + "\n"
}
