package main

import (
	"fmt"
	"strings"

	"drainboard/model/wash"
	"drainboard/tui/text"
)

// lines is the plan for people.
func (v planView) lines() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s, %s, crew of %d\n", v.when.Format("Mon 2 Jan 2006 15:04"), v.Order, v.Crew)
	if len(v.Moves) == 0 && len(v.Unmoved) == 0 {
		b.WriteString("\nNothing falls due within the room's window.\n")
		return b.String()
	}
	if len(v.Moves) > 0 {
		var rows [][]string
		for _, m := range v.Moves {
			rows = append(rows, m.row())
		}
		b.WriteString("\n" + table([]string{">", "START", "END", "MOVE", "BATCH", ">AGE", "SIEVE", "WATERS", "WHY", "MARKS"}, rows) + "\n")
	}
	for _, u := range v.Unmoved {
		fmt.Fprintf(&b, "not moved: %s, %s\n", text.Clean(u.Tank), text.Clean(u.Why))
	}
	b.WriteString(v.after())
	return b.String()
}

func (m moveView) row() []string {
	sieve := text.Unknown
	if m.MeshUM != nil {
		sieve = plain(*m.MeshUM) + " µm"
	}
	why := m.Why
	if m.Overrun > 0 {
		why += fmt.Sprintf("; %d min past its limit", m.Overrun)
	}
	return []string{
		fmt.Sprint(m.N), m.start.Format("15:04"), m.end.Format("15:04"), m.tanks(),
		m.Batch, fmt.Sprintf("%d d", m.AgeDays), sieve, m.waters(), why, strings.Join(m.Marks, ", "),
	}
}

// waters words the difference of the two waters.
func (m moveView) waters() string {
	if m.Difference == nil {
		return "unknown: read both"
	}
	return fmt.Sprintf("%s °C, %s", plain(*m.Difference), m.Temperature)
}

// after is what stands when all is done, and what the wash takes.
func (v planView) after() string {
	var b strings.Builder
	empty := "none"
	if len(v.EmptyAfter) > 0 {
		empty = strings.Join(v.EmptyAfter, ", ")
	}
	fmt.Fprintf(&b, "empty after: %s\n", text.Clean(empty))
	fmt.Fprintf(&b, "finish: %s\n", v.finish.Format("15:04 Mon 2 Jan"))
	if v.WorstOverrun > 0 {
		fmt.Fprintf(&b, "worst overrun: %d min past due and grace\n", v.WorstOverrun)
	}
	if v.Best {
		b.WriteString("order: proved best\n")
	} else {
		b.WriteString("order: the best found, not proved best\n")
	}
	if v.Wash.SolutionLitres == 0 {
		return b.String()
	}
	fmt.Fprintf(&b, "\nwash: %s mL acid of %s %% into %s L fresh water, %s L in all, gear bin and tanks\n",
		plain(v.Wash.AcidML), plain(v.Wash.stockPercent), plain(v.Wash.WaterLitres), plain(v.Wash.SolutionLitres))
	b.WriteString(cautionLines(wash.AcidCautions()))
	return b.String()
}

// cautionLines sets cautions out as a list.
func cautionLines(cautions []string) string {
	var b strings.Builder
	for _, c := range cautions {
		b.WriteString("  ! " + c + "\n")
	}
	return b.String()
}
