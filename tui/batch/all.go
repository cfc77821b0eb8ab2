package batch

import (
	"fmt"
	"math"
	"strings"

	"drainboard/model"
	"drainboard/model/growth"
	"drainboard/tui/chart"
	"drainboard/tui/text"
)

// mostLetters is how many batches the chart of all batches tells apart.
const mostLetters = 26

// several is the letter of a cell that more than one batch shares.
const several = "+"

// letter stands for a batch in the chart of all batches, by its place in the
// order.
func letter(place int) string { return string(rune('a' + place)) }

// lettered are the batches that the chart of all batches shows.
func (s *Batch) lettered() []*model.Batch {
	order := s.order()
	return order[:min(len(order), mostLetters)]
}

// allChart draws the lengths of all batches by age, each by its letter, that of
// the batch shown last and with its intervals and a line.
func (s *Batch) allChart(b *model.Batch, w, h int) chart.Grid {
	base := s.allBase(b)
	drawn := base.Draw(w, h, s.mode())
	batches := s.lettered()
	for i := range batches {
		if batches[i] != b {
			s.letters(drawn, base, batches[i], letter(i), chart.ClassLabel)
		}
	}
	if i := s.place(); i >= 0 && i < mostLetters {
		s.letters(drawn, base, b, strings.ToUpper(letter(i)), chart.ClassPoint)
	}
	return drawn
}

// allBase is the chart without any point but those of the batch shown.
func (s *Batch) allBase(b *model.Batch) chart.Scatter {
	ready := s.desk.Ledger.Room().House.Growth.ReadyUM
	c := chart.Scatter{
		Title: "shell length of all batches, µm", X: chart.Axis{Title: "day", Whole: true, High: leastHorizon},
		Corridor: corridor(s.desk.Ledger.Corridor()), Empty: "no lengths yet",
	}
	if ready > 0 {
		c.Levels = []chart.Level{{Y: ready, Name: "ready " + number(ready)}}
	}
	for _, other := range s.lettered() {
		c.Points = append(c.Points, points(s.of(other).looks)...)
	}
	for _, p := range c.Points {
		c.X.High = max(c.X.High, p.X)
	}
	c.X.High = math.Ceil(c.X.High + 0.5)
	c.Y = lengthAxis(c)
	c.Points = points(s.of(b).looks)
	if n := len(c.Points); n > 1 {
		c.Curves = []chart.Curve{{At: between(c.Points), From: c.Points[0].X, To: c.Points[n-1].X}}
	}
	return c
}

// between joins points by straight lines.
func between(points []chart.Point) func(float64) float64 {
	return func(x float64) float64 {
		for i := 1; i < len(points); i++ {
			a, b := points[i-1], points[i]
			if x <= b.X && a.X < b.X {
				return a.Y + (b.Y-a.Y)*max(0, (x-a.X)/(b.X-a.X))
			}
		}
		return points[len(points)-1].Y
	}
}

// letters puts a batch's letter where its points stand: the places are those of a
// chart of its points alone with the same axes.
func (s *Batch) letters(drawn chart.Grid, base chart.Scatter, b *model.Batch, letter string, class chart.Class) {
	if len(drawn) == 0 {
		return
	}
	alone := base
	alone.Curves, alone.Levels, alone.Corridor, alone.Empty = nil, nil, nil, ""
	alone.Points = points(s.of(b).looks)
	for y, row := range alone.Draw(len(drawn[0]), len(drawn), s.mode()) {
		for x, cell := range row {
			if cell.Class != chart.ClassPoint {
				continue
			}
			put := letter // no tick has its label within the plot
			if have := drawn[y][x]; have.Class == chart.ClassLabel || have.Text == several {
				put = several
			}
			drawn[y][x] = chart.Cell{Text: put, Class: class}
		}
	}
}

// allWords name the batches of the chart, their letters and how each grows.
func (s *Batch) allWords(w int) []figure {
	widths := []int{1, 1, 9, 14, -8, 14, 0}
	if w >= wideTable {
		widths = []int{1, 1, 12, 18, -8, 28, 0}
	}
	var list []figure
	for i, b := range s.lettered() {
		list = append(list, s.allRow(b, letter(i), widths, w >= wideTable))
	}
	note := several + ": more than one batch in that place. The batch marked " + s.desk.Theme.Marks.Pointer + " has a large letter, its intervals and a line."
	if left := len(s.order()) - mostLetters; left > 0 {
		if b := s.now(); s.place() >= mostLetters {
			list = append(list, s.allRow(b, " ", widths, w >= wideTable))
		}
		note += fmt.Sprintf(" %s that ended earlier have no letter; p goes to the earliest of them.", many(left, "batch"))
	}
	return append(list, figure{plain: true}, figure{name: "signs", words: note})
}

// allRow is the row of one batch.
func (s *Batch) allRow(b *model.Batch, letter string, widths []int, wide bool) figure {
	f := s.of(b)
	mark, chosen := " ", b.Name == s.name
	if chosen {
		mark, letter = s.desk.Theme.Marks.Pointer, strings.ToUpper(letter)
	}
	mean, rate := "", "no lengths yet"
	if last, ok := f.last(); ok {
		mean, rate = um(last.MeanUM)+" µm", fmt.Sprintf("day %.1f", last.AgeDays)
	}
	if f.growErr == nil {
		fit := f.growth.Best()
		rate = fmt.Sprintf("%+.1f µm/d", fit.PerDay(fit.LastAgeDay))
		if in, known := fit.PerDayInterval(fit.LastAgeDay); known && wide {
			rate += " (" + interval(in, 1) + ")"
		}
	}
	return figure{plain: true, strong: chosen, words: row(widths, mark, letter, text.Clean(b.Name), s.whereShort(b), mean, rate, s.readyShort(b, f))}
}

// whereShort is the age and the tanks, or the day of the end.
func (s *Batch) whereShort(b *model.Batch) string {
	zone := s.desk.Ledger.Room().Zone
	tanks := s.desk.Ledger.BatchTanks(b)
	if len(tanks) == 0 {
		end, _ := ended(b)
		return fmt.Sprintf("ended day %d", b.AgeDays(end.At, zone))
	}
	words := fmt.Sprintf("day %d in %s", b.AgeDays(s.desk.Now, zone), text.Clean(tanks[0].Tank.Name))
	if len(tanks) > 1 {
		words += fmt.Sprintf(" +%d", len(tanks)-1)
	}
	return words
}

// readyShort is the ready day in a few words.
func (s *Batch) readyShort(b *model.Batch, f *figures) string {
	if f.growErr != nil || f.readyErr != nil {
		return "no ready day yet"
	}
	day := s.dayAt(b, f.ready.AgeDays)
	switch {
	case f.ready.State == growth.Reached:
		return "reached " + day
	case f.ready.Far:
		return "ready " + day + " " + s.desk.Theme.Marks.Stale
	case f.ready.State == growth.Ahead:
		return "ready " + day
	}
	return "not at this rate"
}
