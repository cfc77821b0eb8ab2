package season

import (
	"fmt"
	"strings"

	"drainboard/model/count"
	"drainboard/model/season"
	"drainboard/tui/factform"
	"drainboard/tui/text"
)

// figure is a number with so many decimals, or that it is not known.
func figure(f count.Figure, places int) string {
	if !f.Known {
		return text.Unknown
	}
	return text.Decimal(f.X, places)
}

// within is a figure with its limits, as far as they are known.
func within(e count.Estimate, places int) string {
	switch {
	case !e.Value.Known:
		return text.Unknown
	case e.Low.Known && e.High.Known && e.Low.X == e.High.X:
		return figure(e.Value, places) // known without error
	case e.Low.Known && e.High.Known:
		return fmt.Sprintf("%s (%s-%s)", figure(e.Value, places), figure(e.Low, places), figure(e.High, places))
	case e.Low.Known:
		return fmt.Sprintf("%s (%s on)", figure(e.Value, places), figure(e.Low, places))
	case e.High.Known:
		return fmt.Sprintf("%s (to %s)", figure(e.Value, places), figure(e.High, places))
	}
	return figure(e.Value, places)
}

// percent turns a share into per cent.
func percent(e count.Estimate) count.Estimate {
	of := func(f count.Figure) count.Figure { return count.Figure{X: 100 * f.X, Known: f.Known} }
	return count.Estimate{Value: of(e.Value), Low: of(e.Low), High: of(e.High)}
}

// aliveWords is the share alive; a star says that the line beneath tells more.
func aliveWords(a season.Alive) string {
	words := within(percent(a.Share), 0)
	if a.Told || a.FromCount {
		words += "*"
	}
	return words
}

// readyWords is the day of readiness and what it comes from.
func readyWords(r season.Ready) string {
	switch r.How {
	case season.Unsaid:
		return text.Unknown
	case season.Never:
		return "does not grow"
	case season.Gone:
		return "gone before"
	case season.Settled:
		return "settled " + figure(r.Days.Value, 0)
	case season.Expected, season.Reached:
	}
	words := string(r.How) + " " + within(r.Days, 0)
	if r.Far {
		words += "?"
	}
	return words
}

// growthWords is growth a day, with half the width of its interval.
func growthWords(g season.Growth) string {
	if !g.PerDay.Known || !g.High.Known {
		return figure(g.PerDay, 1)
	}
	return figure(g.PerDay, 1) + " ±" + text.Decimal(g.High.X-g.PerDay.X, 1)
}

// lossWords is the number of larvae that left for a cause.
func lossWords(l season.Loss) string {
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

// causes are the losses with a name each.
func causes(l season.Losses) []struct {
	Name string
	Loss season.Loss
} {
	return []struct {
		Name string
		Loss season.Loss
	}{{"settled", l.Settled}, {"discarded", l.Discarded}, {"lost", l.Lost}, {"removed", l.Removed}}
}

// whereWords says where the larvae of a batch went.
func whereWords(b season.Batch) string {
	var parts []string
	for _, c := range causes(b.Losses) {
		if c.Loss.Entries > 0 {
			parts = append(parts, c.Name+" "+lossWords(c.Loss))
		}
	}
	if len(parts) == 0 {
		return "no larvae were entered as gone"
	}
	return strings.Join(parts, ", ")
}

// aliveNote says what the share alive rests on.
func aliveNote(a season.Alive) string {
	if !a.Share.Value.Known {
		return "survival: nothing was counted since the start"
	}
	words := fmt.Sprintf("alive on day %.0f, %.1f days from the start", a.AgeDays, a.Days)
	if a.ADay.Value.Known {
		words += "; a day later " + within(percent(a.ADay), 1) + " %"
	}
	if a.FromCount {
		words += "; * from the first full count, the stocking gave no number"
	}
	if a.Told {
		words += "; * larvae in some tank were never counted"
	}
	return words
}

// measureWords is a habit of one batch with what it is the mean of.
func measureWords(h season.Habit, m season.Measure) string {
	if !m.Known {
		return text.Unknown
	}
	return fmt.Sprintf("%s %s (%d)", figure(m.Figure, places(h)), factform.Unit(h.Unit()), m.N)
}

func places(h season.Habit) int {
	switch h {
	case season.Difference, season.Density:
		return 1
	}
	return 0
}

// rhoWords is a rank correlation with the number of batches behind it.
func rhoWords(c season.Comparison) string {
	if why := c.Why(); why != "" {
		return fmt.Sprintf("%s (n %d)", why, c.N)
	}
	sign := "+"
	if c.Rho.X < 0 {
		sign = "-"
	}
	return fmt.Sprintf("%s%s (n %d)", sign, text.Decimal(max(c.Rho.X, -c.Rho.X), 2), c.N)
}
