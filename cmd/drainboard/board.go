package main

import (
	"fmt"
	"strings"
	"time"

	"drainboard/model"
	"drainboard/tui/text"
)

// board is the room in plain text lines, what comes next first.
func (v roomView) board() string {
	var b strings.Builder
	b.WriteString(v.nextLine() + "\n")
	fmt.Fprintf(&b, "%s, %s\n\n", text.Clean(v.Room), v.when.Format("Mon 2 Jan 2006 15:04"))
	var rows [][]string
	for _, t := range v.Tanks {
		rows = append(rows, t.row())
	}
	b.WriteString(table([]string{"TANK", "STATE", "BATCH", ">AGE", "DUE", ">°C", ">LARVAE", ">PER L", ">MEAN µm", "MESH µm", "MARKS"}, rows))
	if len(v.Batches) == 0 {
		return b.String()
	}
	rows = nil
	for _, batch := range v.Batches {
		rows = append(rows, batch.row())
	}
	b.WriteString("\n" + table([]string{"BATCH", "HATCHED", ">AGE", "TANKS", ">ALIVE", ">MEAN µm", ">µm A DAY", "READY"}, rows))
	return b.String()
}

// nextLine answers in words which tank is next.
func (v roomView) nextLine() string {
	if v.Next == nil {
		return "NEXT nothing: no tank holds larvae"
	}
	return text.Clean(fmt.Sprintf("NEXT %s, %s", v.Next.Tank, dueWords(v.Next.left, v.Next.overdue)))
}

// dueWords words a due moment: "due in 3 h 05 min", "due now", "due 12 min ago",
// "overdue 1 h 12 min".
func dueWords(left time.Duration, overdue bool) string {
	if overdue {
		return text.Until(left, true)
	}
	return "due " + text.Until(left, false)
}

func (t tankView) row() []string {
	row := []string{t.Name, string(t.State), "", "", "", t.celsiusWords(), "", "", "", "", strings.Join(t.Marks, ", ")}
	if t.Batch == nil {
		return row
	}
	row[2], row[3], row[4] = *t.Batch, fmt.Sprintf("%d d", *t.AgeDays), text.Until(t.left, t.Overdue)
	row[6], row[7], row[8] = figure(t.Larvae, 0), figure(t.PerLitre, 1), figure(t.MeanUM, 0)
	row[9] = meshWords(t.MeshUM)
	return row
}

// celsiusWords is the last temperature; an old one is followed by its age and a
// question mark.
func (t tankView) celsiusWords() string {
	switch {
	case t.Celsius == nil && t.State == model.Holding:
		return text.Unknown
	case t.Celsius == nil:
		return ""
	case t.readAgo > 0:
		return fmt.Sprintf("%s (%s)?", plain(*t.Celsius), text.Duration(t.readAgo))
	}
	return plain(*t.Celsius)
}

func (v batchView) row() []string {
	alive := text.Unknown
	if v.Survival != nil {
		alive = text.Decimal(100*(*v.Survival), 0) + " %"
	}
	return []string{
		v.Name, v.Hatched, fmt.Sprintf("%d d", v.AgeDays), strings.Join(v.Tanks, " "), alive,
		figure(v.MeanUM, 0), figure(v.UMPerDay, 1), v.readyWords(),
	}
}

func (v batchView) readyWords() string {
	switch {
	case v.ReadyDate == nil:
		return text.Unknown
	case v.ReadyLow == nil && v.ReadyHigh == nil:
		return *v.ReadyDate
	}
	return fmt.Sprintf("%s (%s to %s)", *v.ReadyDate, orUnknown(v.ReadyLow), orUnknown(v.ReadyHigh))
}

func orUnknown(s *string) string {
	if s == nil {
		return text.Unknown
	}
	return *s
}

// figure writes a number that may not be known.
func figure(x *float64, places int) string {
	if x == nil {
		return text.Unknown
	}
	return text.Decimal(*x, places)
}

func meshWords(um []float64) string {
	words := make([]string, len(um))
	for i, m := range um {
		words[i] = plain(m)
	}
	return strings.Join(words, " or ")
}
