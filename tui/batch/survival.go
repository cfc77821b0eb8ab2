package batch

import (
	"fmt"
	"math"

	"drainboard/model"
	"drainboard/model/count"
	"drainboard/tui/chart"
	"drainboard/tui/text"
)

// survivalChart draws the larvae in the room, or the share that is alive, after
// each stocking, count and loss, with limits; falls larger than chance are marked.
func (s *Batch) survivalChart(b *model.Batch) chart.Scatter {
	series := s.series(b)
	c := chart.Scatter{
		Title: "larvae in the room",
		Names: chart.Names{Points: "after an entry, 95 %", Curve: "between"},
		X:     chart.Axis{Title: "day", Whole: true},
		Y:     chart.Axis{Format: func(x float64) string { return text.Decimal(x, 0) }},
		Empty: "no number of larvae is known yet",
	}
	if s.share {
		c.Title = "per cent alive"
		c.Empty = "no share is known yet"
	}
	end := leastHorizon
	if s.desk.Ledger.Here(b) {
		end = max(end, s.age(b, s.desk.Now))
	}
	for _, step := range series.Steps {
		end = max(end, step.AgeDays)
		if p, ok := s.survivalPoint(step); ok {
			c.Points = append(c.Points, p)
			c.Y.High = max(c.Y.High, p.Y, p.High)
		}
		if step.Count != nil && step.Count.Change != nil && step.Count.Change.Fell {
			c.Marks = append(c.Marks, chart.Mark{X: step.AgeDays, Name: "FELL"})
		}
	}
	c.X.High = math.Ceil(end + 0.5)
	c.Y.High = roundUp(c.Y.High)
	if n := len(c.Points); n > 1 {
		c.Curves = []chart.Curve{{At: between(c.Points), From: c.Points[0].X, To: c.Points[n-1].X}}
	}
	return c
}

// survivalPoint is a step as the chart shows it; moves change nothing it shows.
func (s *Batch) survivalPoint(step model.SurvivalStep) (chart.Point, bool) {
	e := step.Total
	if s.share {
		e, _ = step.Alive.Share.Scale(100) // a plain factor, never refused
	}
	if step.What == model.KindMoved || !e.Value.Known {
		return chart.Point{}, false
	}
	p := chart.Point{X: step.AgeDays, Y: e.Value.X}
	if e.Low.Known && e.High.Known {
		p.Low, p.High = e.Low.X, e.High.X
	}
	return p, true
}

// roundUp is the least of some round numbers that is not below x; 1 where x is not
// above 0.
func roundUp(x float64) float64 {
	if !(x > 0) {
		return 1
	}
	power := math.Pow(10, math.Floor(math.Log10(x)))
	for _, m := range []float64{1, 1.2, 1.5, 2, 2.5, 3, 4, 5, 6, 8} {
		if m*power >= x {
			return m * power
		}
	}
	return 10 * power
}

// survivalWords say how many are alive and what the counts tell of the losses.
func (s *Batch) survivalWords(b *model.Batch, w int) []figure {
	series := s.series(b)
	list := []figure{s.aliveFigure(b, series), lossFigure(series)}
	list = append(list, s.fallFigures(series)...)
	list = append(list, s.aboveFigures(series)...)
	list = append(list, s.moveFigures(series)...)
	list = append(list, s.takenFigures(series)...)
	return append(list, s.stepTable(b, series, w)...)
}

// counts are the steps that are counts.
func counts(series model.SurvivalSeries) []model.SurvivalStep {
	var list []model.SurvivalStep
	for _, step := range series.Steps {
		if step.Count != nil {
			list = append(list, step)
		}
	}
	return list
}

// aliveFigure is the share alive now and what it is a share of.
func (s *Batch) aliveFigure(b *model.Batch, series model.SurvivalSeries) figure {
	out := figure{name: "alive", strong: true}
	last := series.Steps[len(series.Steps)-1] // a batch begins by a stocking
	alive := last.Alive.Share
	switch {
	case alive.Value.Known:
		out.words = share(alive, " %") + " of " + s.startWords(series, alive)
		if last.Alive.Above {
			out.words += ", more than at the start " + s.desk.Theme.Marks.Odd
		}
	case !series.Start.Value.Known:
		out.words = "share not known: the stocking has no number and not every tank was counted yet"
	case !last.Total.Value.Known:
		out.words = "share not known: a tank of it was never counted"
	default:
		out.words = "no share: all were taken out on purpose"
	}
	if !s.desk.Ledger.Here(b) {
		return out
	}
	out.words += "; " + larvaeWords(last.Total) + " in the room"
	if n := len(counts(series)); n == 0 {
		out.words += ", as told at the stocking and never counted" + s.desk.Theme.Marks.Stale
	} else {
		at := counts(series)[n-1].At
		out.words += ", the last count " + text.Duration(s.desk.Now.Sub(at)) + " ago"
		if s.desk.Now.Sub(at) > countLimit {
			out.words += s.desk.Theme.Marks.Stale
		}
		if last.Told {
			out.words += ", a part of them never counted" + s.desk.Theme.Marks.Stale
		}
	}
	return out
}

// startWords name what the share alive is a share of, and whose limits it has.
func (s *Batch) startWords(series model.SurvivalSeries, alive count.Estimate) string {
	start := text.Decimal(series.Start.Value.X, 0)
	if series.FromCount {
		return fmt.Sprintf("the %s of %s, the first time all were counted: the stocking has no number", start, s.date(series.StartAt))
	}
	words := fmt.Sprintf("the %s stocked %s", start, s.date(series.StartAt))
	if alive.Low.X < alive.High.X {
		words += " (limits of the counts; the stocked taken as exact)"
	}
	return words
}

func larvaeWords(e count.Estimate) string {
	if !e.Value.Known {
		return "number not known"
	}
	return estimate(e, 0)
}

// lossFigure is the mean loss a day.
func lossFigure(series model.SurvivalSeries) figure {
	kept, days := series.KeptADay()
	if !kept.Value.Known {
		return figure{name: "loss", words: "a day's loss needs a count a quarter of a day or more after the start"}
	}
	return figure{name: "loss", words: fmt.Sprintf("%s on the mean of the %.1f days up to the last count", loss(kept), days)}
}

// test names the test of two counts and its level.
func test() string {
	return fmt.Sprintf("two Poisson rates, exact (Przyborowski & Wilenski 1940), each tail %s %%", number(100*count.ChangeLevel))
}

// fallFigures name the counts that fell by more than chance allows.
func (s *Batch) fallFigures(series model.SurvivalSeries) []figure {
	var list []figure
	tested := 0
	for _, step := range counts(series) {
		c := step.Count.Change
		if c == nil {
			continue
		}
		tested++
		if c.Fell {
			list = append(list, figure{name: "FELL", strong: true, words: fmt.Sprintf(
				"%s, %s: %s where %s were expected by the count of %s, more than chance allows (p %s)", step.Tank, s.date(step.At),
				text.Decimal(step.Larvae.Value.X, 0), text.Decimal(c.ExpectedLarvae, 0), s.date(step.Count.Since), chance(c.PFell))})
		}
	}
	switch {
	case tested == 0:
		return []figure{{name: "falls", words: "none to judge: that needs two counts of a tank's larvae"}}
	case len(list) == 0:
		return []figure{{name: "falls", words: fmt.Sprintf("none larger than chance in %s against the one before; test: %s", many(tested, "count"), test())}}
	}
	return append(list, figure{words: "test: " + test()})
}

// chance is a probability, the least ones as such.
func chance(p float64) string {
	if p < 0.0001 {
		return "< 0.0001"
	}
	return text.Decimal(p, 4)
}

// aboveFigures name the counts above what was thought to be there.
func (s *Batch) aboveFigures(series model.SurvivalSeries) []figure {
	var list []figure
	for _, step := range counts(series) {
		c := step.Count
		if !c.Above {
			continue
		}
		words := fmt.Sprintf("%s %s, %s: %s counted, %s thought to be there", s.desk.Theme.Marks.Odd, step.Tank, s.date(step.At),
			text.Decimal(step.Larvae.Value.X, 0), text.Decimal(c.Expected.Value.X, 0))
		switch {
		case c.Change == nil:
			words += "; not tested: " + c.Untested
		case c.Change.Rose:
			words += fmt.Sprintf(", more than chance allows (p %s): larvae that cling hid from the count before, or it was low", chance(c.Change.PRose))
		default:
			words += fmt.Sprintf(", within chance (p %s)", chance(c.Change.PRose))
		}
		list = append(list, figure{name: "above", words: words})
	}
	for i := 1; i < len(list); i++ {
		list[i].name = ""
	}
	return list
}
