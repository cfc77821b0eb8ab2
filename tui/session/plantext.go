package session

import (
	"fmt"
	"strings"
	"time"

	"drainboard/model"
	"drainboard/model/sequence"
	"drainboard/model/wash"
	"drainboard/tui/text"
)

// planTextWidth is the width of a printed plan, in cells.
const planTextWidth = 80

// PlanText writes a plan as plain lines of at most 80 cells, to be printed before
// the first valve is touched: order, timetable, sieves, acid and water with their
// cautions. The plan is one of the problem, made from the ledger as of now.
func PlanText(l *model.Ledger, now time.Time, problem sequence.Problem, plan sequence.Plan) []string {
	return planText(l, laid{problem: problem, best: plan}.asBest(), now, false)
}

// planText writes a list as people left it.
func planText(l *model.Ledger, t laid, now time.Time, changed bool) []string {
	room := l.Room()
	lines := []string{
		text.Clean("CHANGE SESSION, " + room.Name),
		fmt.Sprintf("%s, %s, crew of %d", now.In(room.Zone).Format("Mon 2 Jan 2006 15:04"), t.problem.Order, t.problem.Crew),
		"",
	}
	lines = append(lines, tableText(l, t)...)
	lines = append(lines, "")
	lines = append(lines, unmovedLines(t)...)
	if len(t.plan.Moves) > 0 {
		lines = append(lines, finishWords(l, t), proofWords(t, changed), sieveLine(planSieves(l, t)), "")
		lines = append(lines, mixLines(room.House.Wash, t.washes())...)
		for _, c := range wash.AcidCautions() {
			lines = append(lines, "! "+c)
		}
	}
	return wrapped(lines, planTextWidth)
}

// tableText is the rows with their reasons beneath.
func tableText(l *model.Ledger, t laid) []string {
	if len(t.rows) == 0 {
		return []string{nothingDue(l, t.problem.Now)}
	}
	rows := tableCells(l, t, " -> ")
	why := make([]string, len(rows))
	for i := range rows {
		if !rows[i].cannot {
			why[i], rows[i].why = rows[i].why, ""
		}
	}
	cols := columnsFor(rows, planTextWidth)
	head := headings()
	head.why = "DONE"
	lines := []string{cols.line(head)}
	for i, r := range rows {
		if r.cannot {
			lines = append(lines, cols.line(r))
			continue
		}
		r.why = "[ ]"
		lines = append(lines, cols.line(r), "     "+why[i])
	}
	return lines
}

// nothingDue says that no tank falls due within the window, and which is next.
func nothingDue(l *model.Ledger, now time.Time) string {
	words := fmt.Sprintf("No tank falls due within %s h.", plain(l.Room().House.WindowHours))
	if next, ok := l.NextDue(now); ok {
		words += " Next: " + text.Clean(next.Tank.Name) + " " + text.Until(l.Due(next).Sub(now), l.Overdue(next, now)) + "."
	}
	return words
}

// wrapped breaks long lines; what follows is set in under its line.
func wrapped(lines []string, w int) []string {
	var out []string
	for _, line := range lines {
		if text.Width(line) <= w {
			out = append(out, strings.TrimRight(line, " "))
			continue
		}
		indent := strings.Repeat(" ", len(line)-len(strings.TrimLeft(line, " ")))
		for i, part := range text.Wrap(line, w-len(indent)-2) {
			if i > 0 {
				part = "  " + part
			}
			out = append(out, indent+part)
		}
	}
	return out
}
