package main

import (
	"fmt"
	"strings"
	"time"

	"drainboard/cmd/drainboard/document"
	"drainboard/model"
	"drainboard/model/paper"
	"drainboard/tui/text"
)

func storySection(r paper.Report, when func(time.Time) string) document.Section {
	s := document.Section{Title: "story", Table: document.Table{Head: []string{">ENTRY", ">DAY", "<WHEN", "BY", "WHAT"}}}
	for _, e := range r.Story {
		s.Table.Rows = append(s.Table.Rows, []string{
			fmt.Sprint(e.N), fmt.Sprint(e.AgeDays), when(e.At), e.By, model.Sentence(e.Fact),
		})
	}
	return s
}

func growthSection(r paper.Report) document.Section {
	s := document.Section{
		Title: "growth, shell length",
		Table: document.Table{Head: []string{">DAY", "<DATE", ">N", ">MEAN µm", ">SD", "95 % OF MEAN", "TANKS", "ENTRIES"}},
	}
	for _, d := range r.Lengths {
		sd, limits := text.Unknown, text.Unknown
		if d.Sample.HasSpread {
			sd = text.Decimal(d.Sample.SD, 1)
			limits = fmt.Sprintf("%s to %s", text.Decimal(d.Sample.MeanInterval.Low, 1), text.Decimal(d.Sample.MeanInterval.High, 1))
		}
		s.Table.Rows = append(s.Table.Rows, []string{
			fmt.Sprint(d.AgeDays), d.Day.String(), fmt.Sprint(d.Sample.N), text.Decimal(d.Sample.Mean, 1), sd, limits,
			strings.Join(d.Tanks, " "), d.N.String(),
		})
	}
	if len(r.Lengths) == 0 {
		s.Lines = []string{"No shell lengths were entered."}
		return s
	}
	s.Chart = growthChart(r)
	s.Lines = growthLines(r)
	return s
}

// growthLines say which curve was laid through the lengths, and how far it can be
// trusted.
func growthLines(r paper.Report) []string {
	if r.Growth.Gap != "" {
		return []string{"Growth is not known: " + r.Growth.Gap + "."}
	}
	fit := r.Growth.Growth.Best()
	lines := []string{
		fmt.Sprintf("Fit: %s, least squares weighted by readings, %s of %s; typical miss %s µm; %s.", fit.Shape,
			plural(fit.Readings, "reading"), dayCount(fit.Days), text.Decimal(fit.MissUM(), 1), strings.ReplaceAll(r.Growth.Growth.Why, " um", " µm")),
		"Growth: " + growthWords(r.Growth) + ".",
		"Ready: " + reportReadyWords(r) + ".",
	}
	return lines
}

func survivalSection(r paper.Report, when func(time.Time) string) document.Section {
	s := document.Section{
		Title: "survival",
		Table: document.Table{Head: []string{">ENTRY", ">DAY", "<WHEN", "AFTER", ">ALIVE", "95 %"}},
	}
	known := false
	for _, a := range r.Survival.Steps {
		alive, limits := text.Unknown, ""
		if e := a.Alive.Share; e.Value.Known {
			known = true
			alive = text.Decimal(100*e.Value.X, 1) + " %"
			if e.Low.Known && e.High.Known && e.Low.X < e.High.X {
				limits = fmt.Sprintf("%s to %s %%", text.Decimal(100*e.Low.X, 1), text.Decimal(100*e.High.X, 1))
			}
		}
		s.Table.Rows = append(s.Table.Rows, []string{
			fmt.Sprint(a.N), fmt.Sprint(r.Batch.AgeDays(a.At, r.Room.Zone)), when(a.At), afterWords(a), alive, limits,
		})
	}
	if known {
		s.Chart = survivalChart(r)
	}
	s.Lines = survivalLines(r)
	return s
}

func afterWords(a model.SurvivalStep) string {
	words := string(a.What) + " " + a.Tank
	if a.Why != "" {
		words += ", " + a.Why
	}
	return words
}

func survivalLines(r paper.Report) []string {
	var lines []string
	if len(r.Counts) == 0 {
		lines = append(lines, "The larvae were never counted.")
	}
	if r.Survival.Gap != "" {
		lines = append(lines, "What is alive is not known: "+r.Survival.Gap+".")
	}
	if !r.Survival.Start.Value.Known {
		return lines
	}
	of := "those stocked"
	if r.Survival.FromCount {
		of = "those there when the number in every tank was first known"
	}
	return append(lines, "ALIVE of "+of+", less what was taken out on purpose; larvae that settled count as alive. "+
		"The limits are those of the counts; numbers told are taken as exact.")
}

func countsSection(r paper.Report, when func(time.Time) string) document.Section {
	s := document.Section{Title: "counts", Table: document.Table{
		Head: []string{">ENTRY", ">DAY", "<WHEN", "TANK", ">SEEN", ">IN", ">LARVAE", ">LOW", ">HIGH", ">DEAD", "MIX", "BY"},
	}}
	for _, c := range r.Counts {
		total, low, high := limits(c.Total.Total, 0)
		dead := text.Unknown
		if c.Total.DeadPercent.Value.Known {
			dead = text.Decimal(c.Total.DeadPercent.Value.X, 1) + " %"
		}
		s.Table.Rows = append(s.Table.Rows, []string{
			fmt.Sprint(c.N), fmt.Sprint(r.Batch.AgeDays(c.At, r.Room.Zone)), when(c.At), c.Count.Tank,
			fmt.Sprint(c.Total.Counted), fmt.Sprint(c.Total.Subsamples), figure(total, 0), figure(low, 0), figure(high, 0),
			dead, c.Total.Mixing.String(), c.By,
		})
	}
	s.Lines = []string{"SEEN live larvae IN so many subsamples; LARVAE in the tank, LOW and HIGH its limits, by chance alone."}
	if len(r.Counts) == 0 {
		s.Lines = []string{"The larvae were never counted."}
	}
	return s
}

func lossesSection(r paper.Report) document.Section {
	s := document.Section{Title: "losses by cause", Table: document.Table{Head: []string{"CAUSE", ">LARVAE", "ENTRIES"}}}
	for _, l := range r.Losses {
		cause := "taken out: " + l.Why
		if l.Ended {
			cause = "left the room: " + l.Why
		}
		larvae := text.Decimal(l.Larvae, 0)
		switch {
		case l.Unknown == len(l.N):
			larvae = text.Unknown
		case l.Unknown > 0:
			larvae = "over " + larvae
		}
		s.Table.Rows = append(s.Table.Rows, []string{cause, larvae, l.N.String()})
	}
	unexplained := larvaeOr(r.Unexplained, text.Unknown)
	s.Table.Rows = append(s.Table.Rows, []string{"missing: stocked, and neither alive nor accounted for", unexplained, ""})
	return s
}

func warmthSection(r paper.Report) document.Section {
	s := document.Section{Title: "temperature, °C", Table: document.Table{
		Head: []string{">DAY", "<DATE", ">READ", ">MIN", ">MEAN", ">MAX", ">OUTSIDE", "ENTRIES"},
	}}
	bearable := r.Room.House.Temperature.Bearable
	s.Lines = []string{fmt.Sprintf("In the tanks that held the batch; MEAN is that of the readings; OUTSIDE are readings outside the bearable %s to %s °C.",
		plain(bearable.Low), plain(bearable.High))}
	for _, d := range r.Warmth {
		outside := "-"
		if d.Outside > 0 {
			outside = fmt.Sprint(d.Outside)
		}
		s.Table.Rows = append(s.Table.Rows, []string{
			fmt.Sprint(d.AgeDays), d.Day.String(), fmt.Sprint(d.Readings), text.Decimal(d.Min, 1), text.Decimal(d.Mean, 1),
			text.Decimal(d.Max, 1), outside, d.N.String(),
		})
	}
	if len(r.Warmth) == 0 {
		s.Lines = []string{"No temperature was entered of a tank that held the batch."}
	}
	return s
}

func movesSection(r paper.Report, when func(time.Time) string) document.Section {
	s := document.Section{Title: "moves", Table: document.Table{
		Head: []string{">ENTRY", ">DAY", "<WHEN", "<MOVE", ">µm", ">FROM °", ">TO °", ">APART", "BY", "WHY"},
	}}
	for _, m := range r.Moves {
		s.Table.Rows = append(s.Table.Rows, []string{
			fmt.Sprint(m.N), fmt.Sprint(r.Batch.AgeDays(m.At, r.Room.Zone)), when(m.At), moveWords(m.Moved), optional(m.Moved.MeshUM), optional(m.Moved.FromCelsius),
			optional(m.Moved.ToCelsius), figure(figureOf(m.Difference, 1), 1), m.By, m.Moved.Why,
		})
	}
	s.Lines = []string{"Over a sieve of so many µm; FROM, TO and how far the two waters lay APART in °C."}
	if len(r.Moves) == 0 {
		s.Lines = []string{"Never moved."}
	}
	return s
}

func moveWords(m *model.Moved) string {
	words := m.From + " -> " + m.To
	if !m.All() {
		words = plain(round(100**m.Share, 1)) + " % of " + words
	}
	if m.Join {
		words += ", joined"
	}
	return words
}

// optional is a figure that was given or not.
func optional(x *float64) string {
	if x == nil {
		return text.Unknown
	}
	return plain(*x)
}

func feedsSection(r paper.Report) document.Section {
	s := document.Section{Title: "feeds", Table: document.Table{
		Head: []string{">DAY", "<DATE", ">FEEDS", "LITRES OF CULTURE", "TANKS", "ENTRIES"},
	}}
	for _, d := range r.Feeds {
		s.Table.Rows = append(s.Table.Rows, []string{
			fmt.Sprint(d.AgeDays), d.Day.String(), fmt.Sprint(d.Feeds), litresWords(d.Litres), strings.Join(d.Tanks, " "), d.N.String(),
		})
	}
	if len(r.Feeds) == 0 {
		s.Lines = []string{"No feed was entered."}
	}
	return s
}

func looksSection(r paper.Report, when func(time.Time) string) document.Section {
	s := document.Section{Title: "looks", Table: document.Table{
		Head: []string{">ENTRY", ">DAY", "<WHEN", "TANK", ">LOBES", ">GOLDEN %", "SWIM", ">DEAD %", "BY", "REMARK"},
	}}
	for _, k := range r.Looks {
		lobes, swim := text.Unknown, k.Look.Swim
		if k.Look.Lobes != nil {
			lobes = fmt.Sprint(*k.Look.Lobes)
		}
		if swim == "" {
			swim = text.Unknown
		}
		s.Table.Rows = append(s.Table.Rows, []string{
			fmt.Sprint(k.N), fmt.Sprint(r.Batch.AgeDays(k.At, r.Room.Zone)), when(k.At), k.Look.Tank, lobes, optional(k.Look.Golden), swim,
			optional(k.Look.Dead), k.By, k.Look.Text,
		})
	}
	if len(r.Looks) == 0 {
		s.Lines = []string{"No look was entered."}
	}
	return s
}

func peopleSection(r paper.Report) document.Section {
	s := document.Section{Title: "people"}
	for _, p := range r.People {
		name := p.By
		if name == "" {
			name = "no initials"
		}
		s.Figures = append(s.Figures, document.Figure{Name: name, Words: plural(p.Entries, "entry")})
	}
	return s
}

func changedSection(r paper.Report) document.Section {
	s := document.Section{Title: "corrections", Table: document.Table{Head: []string{">ENTRY", "KIND", "NOW", ">BY ENTRY", "WHY"}}}
	for _, c := range r.Changed {
		now := "reads otherwise"
		if c.Void {
			now = "void"
		}
		s.Table.Rows = append(s.Table.Rows, []string{fmt.Sprint(c.Entry), string(c.Kind), now, c.By.String(), c.Why})
	}
	if len(r.Changed) == 0 {
		s.Lines = []string{"No entry of the batch was corrected."}
	}
	return s
}
