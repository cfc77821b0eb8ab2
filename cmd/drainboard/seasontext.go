package main

import (
	"fmt"
	"strconv"
	"strings"

	"drainboard/model/season"
	"drainboard/tui/text"
)

// lines is the season for people: the batches, how each was kept, and the habits
// held against how they fared.
func (v seasonView) lines(s season.Season) string {
	years := "all years"
	if v.Year != nil {
		years = strconv.Itoa(*v.Year)
	}
	if len(v.Batches) == 0 {
		return text.Clean(v.Room) + ": no batch was stocked yet\n"
	}
	var rows, kept [][]string
	for i, b := range v.Batches {
		rows = append(rows, b.row(s.Batches[i].Day.String()))
		kept = append(kept, b.keptRow())
	}
	return fmt.Sprintf("%s, %s\n\n", text.Clean(v.Room), years) +
		table([]string{"BATCH", "HATCHED", ">STOCKED", "ALIVE %", "READY ON DAY", "µm A DAY", ">SETTLED", ">DISCARDED", ">LOST", ">REMOVED", ">MOVES"}, rows) +
		v.remarks() + "\n" +
		table([]string{"BATCH", ">DIFFERENCE °C", ">OVER FINE %", ">OVER HOLD %", ">PER LITRE", ">LATE %", ">OVERDUE %", ">GOLDEN %"}, kept) + "\n" +
		comparisonTable(s) + "\n" + strings.Join(text.Wrap(v.Caveat, 100), "\n") + "\n"
}

// remarks say what a star in the table stands for.
func (v seasonView) remarks() string {
	for _, b := range v.Batches {
		if b.FromCount || b.PartlyCounted {
			return "* from the first full count, or not every tank was counted\n"
		}
	}
	return ""
}

// span is a figure with its limits: 61 (55 to 68).
func span(x, low, high *float64, scale float64, places int) string {
	of := func(x *float64) string {
		if x == nil {
			return text.Unknown
		}
		return text.Decimal(*x*scale, places)
	}
	switch {
	case x == nil || low == nil && high == nil || low != nil && high != nil && *low == *high:
		return of(x)
	case low == nil:
		return fmt.Sprintf("%s (to %s)", of(x), of(high))
	case high == nil:
		return fmt.Sprintf("%s (%s on)", of(x), of(low))
	}
	return fmt.Sprintf("%s (%s to %s)", of(x), of(low), of(high))
}

func (v seasonBatchView) row(hatched string) []string {
	alive := span(v.Alive, v.AliveLow, v.AliveHigh, 100, 0)
	if v.FromCount || v.PartlyCounted {
		alive += "*"
	}
	row := []string{
		v.Name, hatched, span(v.Stocked, nil, nil, 1, 0), alive, v.readyWords(),
		span(v.UMPerDay, v.UMPerDayLow, v.UMPerDayHigh, 1, 1),
	}
	for _, cause := range []string{"settled", "discarded", "lost", "removed"} {
		row = append(row, v.Losses[cause].words())
	}
	return append(row, strconv.Itoa(v.Moves))
}

func (v seasonBatchView) readyWords() string {
	switch v.Ready {
	case season.Unsaid:
		return text.Unknown
	case season.Never:
		return "does not grow"
	case season.Gone:
		return "gone before"
	case season.Expected, season.Reached, season.Settled:
	}
	words := string(v.Ready) + " " + span(v.ReadyDay, v.ReadyLow, v.ReadyHigh, 1, 0)
	if v.ReadyFar {
		words += ", far ahead"
	}
	return words
}

func (l seasonLossView) words() string {
	switch {
	case l.Entries == 0:
		return "-"
	case l.Untold == l.Entries:
		return text.Unknown
	case l.Untold > 0:
		return text.Decimal(l.Larvae, 0) + "+?"
	}
	return text.Decimal(l.Larvae, 0)
}

func (v seasonBatchView) keptRow() []string {
	row := []string{v.Name}
	for _, h := range season.Habits() {
		m, places := v.Habits[habitKey(h)], 0
		if h == season.Difference || h == season.Density {
			places = 1
		}
		cell := span(m.Value, nil, nil, 1, places)
		if m.Value != nil {
			cell += fmt.Sprintf(" (%d)", m.N)
		}
		row = append(row, cell)
	}
	return row
}

// comparisonTable is each habit against both outcomes.
func comparisonTable(s season.Season) string {
	head := []string{"RANK CORRELATION OF"}
	for _, o := range season.Outcomes() {
		head = append(head, "AGAINST "+strings.ToUpper(o.Words()))
	}
	var rows [][]string
	for _, h := range season.Habits() {
		row := []string{h.Words()}
		for _, o := range season.Outcomes() {
			c := s.Comparison(h, o)
			words := c.Why()
			if words == "" {
				words = fmt.Sprintf("%+.2f", c.Rho.X)
			}
			row = append(row, fmt.Sprintf("%s (n %d)", words, c.N))
		}
		rows = append(rows, row)
	}
	return table(head, rows)
}

func yearWords(years []int) string {
	if len(years) == 0 {
		return "no year yet"
	}
	words := make([]string, len(years))
	for i, y := range years {
		words[i] = strconv.Itoa(y)
	}
	return strings.Join(words, ", ")
}
