package batch

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"drainboard/model"
	"drainboard/model/count"
	"drainboard/tui/text"
)

// countLimit is the age from which the last count of a batch carries a question
// mark: that of a week, in which larvae die unseen. Common practice, no source.
const countLimit = 7 * 24 * time.Hour

// moveFigures say what was missing after moves that have a count before and
// after them.
func (s *Batch) moveFigures(series model.SurvivalSeries) []figure {
	var list []figure
	for _, step := range slices.Backward(counts(series)) {
		if c := step.Count; c.Counted && len(c.Moves) > 0 {
			list = append(list, figure{words: s.across(step)})
		}
	}
	if len(list) == 0 {
		return []figure{{name: "moves", words: "none has a count before and after it, so what went over the side is not known"}}
	}
	list[0].name = "moves"
	return append(list, figure{words: "what died between the two counts is among the missing"})
}

// across words the difference of the counts before and after one move or several.
func (s *Batch) across(step model.SurvivalStep) string {
	c := step.Count
	last := c.Moves[len(c.Moves)-1]
	words := moveWords(last.Move, s.desk.Theme.Marks.Arrow) + ", " + s.date(last.At)
	if len(c.Moves) > 1 {
		words = fmt.Sprintf("%d moves, the last %s", len(c.Moves), words)
	}
	words += fmt.Sprintf(": %s before (%s), %s after (%s), ", text.Decimal(c.Expected.Value.X, 0), s.date(c.Since),
		text.Decimal(step.Larvae.Value.X, 0), s.date(step.At))
	if c.Above {
		return words + "none missing"
	}
	fewer, limits, has := strings.Cut(estimate(c.Fewer, 0), " (")
	words += fewer + " missing"
	if has {
		words += " (" + limits
	}
	if len(c.Moves) > 1 {
		words += "; which move, the counts do not tell"
	}
	return words
}

// moveWords name a move and its sieve.
func moveWords(m *model.Moved, arrow string) string {
	words := m.From + " " + arrow + " " + m.To
	if !m.All() {
		words = text.Decimal(100**m.Share, 0) + " % of " + words
	}
	if m.MeshUM != nil {
		words += " over " + number(*m.MeshUM) + " µm"
	}
	return words
}

// takenFigures are what was removed, culled, lost or settled, the latest first.
func (s *Batch) takenFigures(series model.SurvivalSeries) []figure {
	var list []figure
	for _, step := range slices.Backward(series.Steps) {
		number := "number not known"
		if step.Larvae.Value.Known {
			number = estimate(step.Larvae, 0) + " larvae"
		}
		if step.Larvae.Value.Known && step.Before.Value.Known && step.Larvae.Value.X > step.Before.Value.X+0.5 {
			number += fmt.Sprintf(" where %s were thought to be %s", text.Decimal(step.Before.Value.X, 0), s.desk.Theme.Marks.Odd)
		}
		switch step.What {
		case model.KindRemoved:
			list = append(list, figure{words: fmt.Sprintf("%s, %s: removed, %s, %s", step.Tank, s.date(step.At), text.Clean(step.Why), number)})
		case model.KindEnded:
			list = append(list, figure{words: fmt.Sprintf("%s, %s: ended, %s, %s", step.Tank, s.date(step.At), step.Why, number)})
		}
	}
	if len(list) == 0 {
		list = []figure{{words: "nothing was removed, culled, lost or settled"}}
	}
	list[0].name = "taken out"
	return list
}

// wideTable is the width from which the table of steps gives limits and times.
const wideTable = 100

// stepTable lists the stockings, counts and losses, the latest first.
func (s *Batch) stepTable(b *model.Batch, series model.SurvivalSeries, w int) []figure {
	wide := w >= wideTable
	widths := []int{-3, 6, 10, -8, -9, -20, 0}
	if wide {
		widths = []int{-3, 12, 12, -8, -25, -21, 0}
	}
	list := []figure{{plain: true}, {plain: true, words: row(widths, "day", "", "entry", "its own", "in room", "% alive", "loss a day")}}
	for _, step := range slices.Backward(series.Steps) {
		if step.What == model.KindMoved {
			continue
		}
		when, total := s.at(step.At).Format("2 Jan"), estimate(count.Estimate{Value: step.Total.Value}, 0)
		if wide {
			when, total = s.at(step.At).Format("2 Jan 15:04"), estimate(step.Total, 0)
		}
		list = append(list, figure{plain: true, words: row(widths, fmt.Sprint(b.AgeDays(step.At, s.desk.Ledger.Room().Zone)), when, step.Tank+" "+entryWord(step),
			estimate(count.Estimate{Value: step.Larvae.Value}, 0), total+s.told(step), share(step.Alive.Share, ""), s.stepLoss(step, wide))})
	}
	return list
}

// entryWord is a step in a word.
func entryWord(step model.SurvivalStep) string {
	if step.What == model.KindEnded {
		return step.Why
	}
	return string(step.What)
}

// told marks a number that was never counted.
func (s *Batch) told(step model.SurvivalStep) string {
	if step.Told {
		return s.desk.Theme.Marks.Stale
	}
	return ""
}

// stepLoss is the loss a day up to a count, marked where it fell or stands above
// the one before.
func (s *Batch) stepLoss(step model.SurvivalStep, wide bool) string {
	c := step.Count
	if c == nil {
		return ""
	}
	words := ""
	if c.KeptADay.Value.Known {
		words = strings.Replace(loss(c.KeptADay), " a day", "", 1)
		if !wide {
			words, _, _ = strings.Cut(words, " (")
		}
	}
	switch {
	case c.Change != nil && c.Change.Fell:
		return "FELL " + words
	case c.Above:
		return s.desk.Theme.Marks.Odd + " " + words
	}
	return words
}
