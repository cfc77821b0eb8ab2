package main

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"time"

	"drainboard/cmd/drainboard/document"
	"drainboard/model"
	"drainboard/model/count"
	"drainboard/model/growth"
	"drainboard/model/paper"
	"drainboard/tui/text"
)

// reportDocument words the report of a batch.
func reportDocument(r paper.Report) document.Document {
	when := whenOf(r)
	d := document.Document{
		Title: fmt.Sprintf("Batch %s, %s", r.Batch.Name, r.Room.Name),
		Under: []string{
			"Report of " + r.At.Format("Mon 2 Jan 2006 15:04 MST") + ".",
			"ENTRY, ENTRIES and [ ] are numbers of the journal. Ranges are 95 % intervals.",
		},
	}
	d.Sections = append(d.Sections,
		document.Section{Title: "now", Figures: nowFigures(r)},
		storySection(r, when),
		growthSection(r),
		survivalSection(r, when),
		countsSection(r, when),
		lossesSection(r),
		warmthSection(r),
		movesSection(r, when),
		feedsSection(r),
		looksSection(r, when),
		peopleSection(r),
		changedSection(r),
		document.Section{Title: "house rules in force", Figures: ruleFigures(r.Room.House), Lines: []string{"As room.toml reads now."}},
	)
	return d
}

// whenOf writes moments of a report: without the year as long as that leaves no
// doubt.
func whenOf(r paper.Report) func(time.Time) string {
	form := "2 Jan 15:04"
	if born := r.Batch.Hatched.Instant(r.Room.Zone); r.At.Sub(born) > 300*24*time.Hour {
		form = "2006-01-02 15:04"
	}
	return func(t time.Time) string { return t.In(r.Room.Zone).Format(form) }
}

// nowFigures are the figures a reader looks for first.
func nowFigures(r paper.Report) []document.Figure {
	hatched := r.Batch.Hatched.Day(r.Room.Zone).String()
	if !r.Batch.Hatched.Moment.IsZero() {
		hatched = clock(r.Batch.Hatched.Moment, r.Room.Zone)
	}
	if r.Batch.Origin != "" {
		hatched += ", " + r.Batch.Origin
	}
	figures := []document.Figure{{Name: "hatched", Words: hatched}}
	if r.Here {
		figures = append(figures, document.Figure{Name: "age", Words: fmt.Sprintf("day %d, in %s", r.AgeDays, strings.Join(r.Tanks, ", "))})
	} else {
		figures = append(figures, document.Figure{Name: "age", Words: fmt.Sprintf("day %d when the last left, %s", r.AgeDays, clock(r.Left, r.Room.Zone))})
	}
	return append(figures,
		document.Figure{Name: "stocked", Words: larvaeOr(r.Stocked, "not known: a stocking has no number")},
		document.Figure{Name: "larvae", Words: standingWords(r)},
		document.Figure{Name: "alive", Words: aliveWords(r)},
		document.Figure{Name: "length", Words: lengthWords(r)},
		document.Figure{Name: "growth", Words: growthWords(r.Growth)},
		document.Figure{Name: "ready", Words: reportReadyWords(r)},
	)
}

func standingWords(r paper.Report) string {
	switch {
	case !r.Here:
		return "none in the room"
	case len(r.Counts) == 0 && r.Standing.Value.Known:
		return larvaeOr(r.Standing, "") + ", as stocked; never counted"
	case len(r.Counts) == 0:
		return "not known: never counted"
	}
	last := r.Counts[len(r.Counts)-1]
	return fmt.Sprintf("%s; last counted on day %d [%d]", larvaeOr(r.Standing, "not known in all tanks"),
		r.Batch.AgeDays(last.At, r.Room.Zone), last.N)
}

func aliveWords(r paper.Report) string {
	if r.Survival.Gap != "" {
		return "not known: " + r.Survival.Gap
	}
	words := percentWords(r.Survival.Now.Share)
	if r.Survival.FromCount {
		words += ", of those there on " + model.DayOf(r.Survival.StartAt, r.Room.Zone).String()
	}
	if r.Survival.Now.Above {
		words += ", more than there were: count again"
	}
	return words
}

// percentWords is a share with its limits in per cent.
func percentWords(share count.Estimate) string {
	if !share.Value.Known {
		return text.Unknown
	}
	words := text.Decimal(100*share.Value.X, 0) + " %"
	if share.Low.Known && share.High.Known {
		words += fmt.Sprintf(" (%s to %s %%)", text.Decimal(100*share.Low.X, 0), text.Decimal(100*share.High.X, 0))
	}
	return words
}

// larvaeOr is a number of larvae with its limits, or what is said where it is
// not known.
func larvaeOr(e count.Estimate, unknown string) string {
	if !e.Value.Known {
		return unknown
	}
	words := text.Decimal(e.Value.X, 0)
	if e.Low.Known && e.High.Known && e.Low.X < e.High.X {
		words += fmt.Sprintf(" (%s to %s)", text.Decimal(e.Low.X, 0), text.Decimal(e.High.X, 0))
	}
	return words
}

func lengthWords(r paper.Report) string {
	if len(r.Lengths) == 0 {
		return "not known: " + r.Growth.Gap
	}
	d := r.Lengths[len(r.Lengths)-1]
	return fmt.Sprintf("%s µm, mean of %d on day %d%s [%s]", text.Decimal(d.Sample.Mean, 0), d.Sample.N, d.AgeDays,
		meanRange(d.Sample), d.N)
}

func meanRange(s growth.Sample) string {
	if !s.HasSpread {
		return ""
	}
	return fmt.Sprintf(" (%s to %s)", text.Decimal(s.MeanInterval.Low, 0), text.Decimal(s.MeanInterval.High, 0))
}

func growthWords(g paper.Growth) string {
	if g.Gap != "" {
		return "not known: " + g.Gap
	}
	fit := g.Growth.Best()
	words := text.Decimal(fit.PerDay(fit.LastAgeDay), 1) + " µm a day"
	if range95, ok := fit.PerDayInterval(fit.LastAgeDay); ok {
		words += fmt.Sprintf(" (%s to %s)", text.Decimal(range95.Low, 1), text.Decimal(range95.High, 1))
	}
	return words + fmt.Sprintf(", %s through lengths of %s", fit.Shape, dayCount(fit.Days))
}

func reportReadyWords(r paper.Report) string {
	want := text.Decimal(r.Room.House.Growth.ReadyUM, 0) + " µm"
	if r.Growth.ReadyGap != "" {
		return "not known: " + r.Growth.ReadyGap
	}
	ready := r.Growth.Ready
	words := fmt.Sprintf("%s (%s to %s), mean length %s", dayWords(r, ready.AgeDays, false), dayWords(r, ready.Interval.Low, ready.LowOpen),
		dayWords(r, ready.Interval.High, ready.HighOpen), want)
	if ready.State == growth.Reached {
		words += ", reached"
	}
	if ready.Far {
		words += "; far beyond the readings: to plan by, not to rely on"
	}
	return words
}

// dayCount counts days: 1 day, 2 days.
func dayCount(n int) string {
	if n == 1 {
		return "1 day"
	}
	return fmt.Sprintf("%d days", n)
}

func dayWords(r paper.Report, age float64, open bool) string {
	if open {
		return "open"
	}
	return dayAtAge(r, age).String()
}

func dayAtAge(r paper.Report, age float64) model.Day {
	born := r.Batch.Hatched.Instant(r.Room.Zone)
	return model.DayOf(born.Add(time.Duration(24*age*float64(time.Hour))), r.Room.Zone)
}

// litresWords lists litres by alga: "iso 0.35 L, chaet 0.1 L".
func litresWords(litres map[string]float64) string {
	var parts []string
	for _, alga := range slices.Sorted(maps.Keys(litres)) {
		parts = append(parts, fmt.Sprintf("%s %s L", alga, plain(round(litres[alga], 3))))
	}
	return strings.Join(parts, ", ")
}
