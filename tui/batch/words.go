package batch

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"

	"drainboard/model"
	"drainboard/model/count"
	"drainboard/model/growth"
	"drainboard/tui/text"
)

// figure is one thing that is known: its name and its words. A figure without a
// name goes on with the one above it.
type figure struct {
	name, words string
	strong      bool
	plain       bool // a row of a table: not wrapped, no name
}

// nameW is the width of a figure's name.
const nameW = 10

// lines are figures in as many lines of w cells as their words need.
func (s *Batch) lines(figures []figure, w int) []string {
	var lines []string
	for _, f := range figures {
		lines = append(lines, s.figureLines(f, w)...)
	}
	return lines
}

func (s *Batch) figureLines(f figure, w int) []string {
	th, name := s.desk.Theme, min(nameW, w/3)
	style := th.Plain
	if f.strong {
		style = th.Strong
	}
	if f.plain {
		return []string{" " + style.Render(text.Truncate(text.Clean(f.words), w-1))}
	}
	lines := text.Wrap(glued(f.words), max(1, w-name-2))
	for i, l := range lines {
		l = strings.ReplaceAll(l, glue, " ")
		before := text.Fit("", name)
		if i == 0 {
			before = th.Faint.Render(text.Fit(text.Truncate(f.name, name-1), name))
		}
		lines[i] = " " + before + style.Render(l)
	}
	return lines
}

// glue stands for a space at which no line is broken; no figure or name holds it.
const glue = "\ue000"

// glued keeps the thousands of a number together, and a number with its unit.
func glued(s string) string {
	var b strings.Builder
	for i := range len(s) {
		if s[i] == ' ' && i > 0 && digit(s[i-1]) && clings(s[i+1:]) {
			b.WriteString(glue)
			continue
		}
		b.WriteByte(s[i])
	}
	return b.String()
}

// clings says that a text goes on with thousands or with a unit.
func clings(s string) bool {
	for _, unit := range []string{"%", "µm", "°C"} {
		if strings.HasPrefix(s, unit) {
			return true
		}
	}
	return len(s) >= 3 && digit(s[0]) && digit(s[1]) && digit(s[2]) && (len(s) == 3 || !digit(s[3]))
}

func digit(c byte) bool { return c >= '0' && c <= '9' }

// row is a row of a table, its cells as wide as widths say; a negative width sets
// a cell against its right side, 0 leaves it as it is.
func row(widths []int, cells ...string) string {
	parts := make([]string, len(cells))
	for i, c := range cells {
		switch {
		case widths[i] < 0:
			parts[i] = text.FitRight(c, -widths[i])
		case widths[i] > 0:
			parts[i] = text.Fit(c, widths[i])
		default:
			parts[i] = c
		}
	}
	return strings.TrimRight(strings.Join(parts, "  "), " ")
}

// at is a moment in the room's time zone.
func (s *Batch) at(t time.Time) time.Time { return t.In(s.desk.Ledger.Room().Zone) }

// date is a day of the calendar, with the year where it is another.
func (s *Batch) date(t time.Time) string {
	if t = s.at(t); t.Year() != s.at(s.desk.Now).Year() {
		return t.Format("Mon 2 Jan 2006")
	}
	return t.Format("Mon 2 Jan")
}

// day is date for a day that was worked out.
func (s *Batch) day(d model.Day) string { return s.date(d.Start(s.desk.Ledger.Room().Zone)) }

// dayAt is the day on which the batch is so many days old.
func (s *Batch) dayAt(b *model.Batch, ageDays float64) string {
	return s.day(s.desk.Ledger.DayAtAge(b, ageDays))
}

// dated is dayAt with the age by the calendar.
func (s *Batch) dated(b *model.Batch, ageDays float64) string {
	day := s.desk.Ledger.DayAtAge(b, ageDays)
	return fmt.Sprintf("%s, day %d", s.day(day), day.Sub(b.Hatched.Day(s.desk.Ledger.Room().Zone)))
}

// age is the age of the batch in days at a moment, since the hatch.
func (s *Batch) age(b *model.Batch, t time.Time) float64 {
	return t.Sub(b.Hatched.Instant(s.desk.Ledger.Room().Zone)).Hours() / 24
}

// moment is a date and a time in 16 cells, with the year where it is another.
func (s *Batch) moment(t time.Time) string {
	if t = s.at(t); t.Year() != s.at(s.desk.Now).Year() {
		return t.Format("2006-01-02 15:04")
	}
	return t.Format("Mon 02 Jan 15:04")
}

// estimate is a number with its limits, where they are known.
func estimate(e count.Estimate, places int) string {
	if !e.Value.Known {
		return text.Unknown
	}
	words := text.Decimal(e.Value.X, places)
	if e.Low.Known && e.High.Known && e.Low.X < e.High.X {
		words += " (" + text.Decimal(e.Low.X, places) + " to " + text.Decimal(e.High.X, places) + ")"
	}
	return words
}

// share is a share in per cent with its limits, after the value the unit.
func share(e count.Estimate, unit string) string {
	e, _ = e.Scale(100) // a plain factor, never refused
	value, limits, has := strings.Cut(estimate(e, 1), " (")
	if !has {
		return value + unit
	}
	return value + unit + " (" + limits
}

// loss is what a day takes, in per cent with its limits, of the share it leaves.
func loss(kept count.Estimate) string {
	if !kept.Value.Known {
		return text.Unknown
	}
	of := func(x float64) string { return text.Decimal(100*(1-x), 1) }
	words := of(kept.Value.X) + " % a day"
	if kept.Low.Known && kept.High.Known && kept.Low.X < kept.High.X {
		words += " (" + of(kept.High.X) + " to " + of(kept.Low.X) + ")"
	}
	return words
}

// interval is an interval with its places.
func interval(i growth.Interval, places int) string {
	return text.Decimal(i.Low, places) + " to " + text.Decimal(i.High, places)
}

// number is a figure of the house as a person would type it.
func number(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// micro writes the model's um as screens do.
func micro(s string) string {
	return strings.TrimSpace(strings.ReplaceAll(strings.ReplaceAll(s+" ", " um ", " µm "), " um,", " µm,"))
}

// many is a number and its noun, in the plural where that is due.
func many(n int, noun string) string {
	switch {
	case n == 1:
		return "1 " + noun
	case strings.HasSuffix(noun, "ch"):
		noun += "e"
	}
	return text.Whole(n) + " " + noun + "s"
}

// floorTo and ceilTo are the multiples of step around x.
func floorTo(x, step float64) float64 { return step * math.Floor(x/step) }
func ceilTo(x, step float64) float64  { return step * math.Ceil(x/step) }
