package season

import (
	"fmt"
	"math"

	"drainboard/model/season"
	"drainboard/tui/chart"
	"drainboard/tui/factform"
	"drainboard/tui/text"
)

// Cells of the table of habits: a correlation with its number of batches.
const rhoW = 18

// habitTable is each habit against both outcomes, in at most h rows.
func (s *Season) habitTable(w, h int) []string {
	th, shown := s.desk.Theme, s.shown()
	name := max(8, min(36, w-3-2*(rhoW+1)))
	head := "  " + th.Faint.Render(text.Fit("HABIT", name))
	for i, o := range season.Outcomes() {
		style := th.Faint
		if i == s.outcome {
			style = th.Strong
		}
		head += " " + style.Render(text.Fit(o.Words(), rhoW))
	}
	lines := []string{head}
	habits, room := season.Habits(), max(0, h-1)
	top := max(0, min(s.habit-room/2, len(habits)-room))
	for i := top; i < len(habits) && len(lines) < h; i++ {
		mark, words := " ", text.Fit(habits[i].Words(), name)
		switch {
		case i == s.habit:
			mark, words = th.Focus.Render(th.Marks.Pointer), th.Strong.Render(words)
		case i == top && top > 0, len(lines) == h-1 && i < len(habits)-1:
			mark = th.Faint.Render(th.Marks.More)
		}
		line := mark + " " + words
		for _, o := range season.Outcomes() {
			c := shown.Comparison(habits[i], o)
			cell := text.Fit(rhoWords(c), rhoW)
			if c.Why() != "" {
				cell = th.Faint.Render(cell)
			}
			line += " " + cell
		}
		lines = append(lines, line)
	}
	return text.Frame(lines, w, max(0, min(h, len(habits)+1)))
}

// plot draws the chosen habit against the chosen outcome, a point a batch.
func (s *Season) plot(w, h int) []string {
	habit, o := season.Habits()[s.habit], season.Outcomes()[s.outcome]
	drawn := chart.Scatter{
		Title: o.Words() + ", " + factform.Unit(unitOf(o)),
		X:     chart.Axis{Title: factform.Unit(habit.Unit())},
		Empty: "no batch has both",
	}
	for _, p := range s.shown().Points(habit, o) {
		point := chart.Point{X: p.X, Y: p.Y, Low: p.Y, High: p.Y}
		if p.Low.Known && p.High.Known {
			point.Low, point.High = p.Low.X, p.High.X
		}
		drawn.Points = append(drawn.Points, point)
	}
	if o == season.Survival {
		lostAtFoot(&drawn)
	}
	mode := chart.Block
	if s.desk.Theme.ASCII {
		mode = chart.ASCII
	}
	return drawn.Draw(w, h, mode).Styled(s.charted)
}

// lostAtFoot draws batches of which none is alive at the foot of the plot, so that
// they do not press all others into its top row.
func lostAtFoot(drawn *chart.Scatter) {
	low, high, lost := math.Inf(1), 100., 0
	for _, p := range drawn.Points {
		if p.Y <= 0 {
			lost++
			continue
		}
		low, high = min(low, p.Low), max(high, p.High)
	}
	if lost == 0 || lost == len(drawn.Points) {
		return
	}
	low -= (high - low) / 4
	for i, p := range drawn.Points {
		if p.Y <= 0 {
			drawn.Points[i] = chart.Point{X: p.X, Y: low, Low: low, High: low}
		}
	}
	drawn.Y.Low, drawn.Y.High = low, high
	drawn.Title += fmt.Sprintf("; at the foot: %d all lost", lost)
}

// unitOf is the unit of an outcome as a chart shows it.
func unitOf(o season.Outcome) string {
	if o == season.Speed {
		return "µm a day"
	}
	return o.Unit()
}

func (s *Season) charted(class chart.Class, cells string) string {
	th := s.desk.Theme
	switch class {
	case chart.ClassPoint:
		return th.Plain.Render(cells)
	case chart.ClassTitle:
		return th.Strong.Render(cells)
	}
	return th.Faint.Render(cells)
}

// caveat is what stands beside the comparisons.
func (s *Season) caveat(w int) []string {
	words := s.shown().Caveat() + " +1: more of the habit, more of the outcome, batch by batch in order; -1: less; from " +
		text.Whole(season.FewestBatches) + " batches on."
	var lines []string
	for _, l := range text.Wrap(words, max(1, w-2)) {
		lines = append(lines, " "+l)
	}
	return lines
}
