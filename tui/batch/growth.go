package batch

import (
	"math"

	"drainboard/model"
	"drainboard/model/growth"
	"drainboard/tui/chart"
)

// growthChart draws the length by age: each day's mean, the curve of the better
// shape, the house corridor, the ready length and the day it is reached.
func (s *Batch) growthChart(b *model.Batch) chart.Scatter {
	f := s.of(b)
	house := s.desk.Ledger.Room().House.Growth
	c := chart.Scatter{
		Title: "shell length, µm", X: chart.Axis{Title: "day", Whole: true},
		Names:    chart.Names{Points: "a day's mean, 95 %"},
		Points:   points(f.looks),
		Corridor: corridor(s.desk.Ledger.Corridor()),
		Empty:    "no lengths yet",
	}
	if house.ReadyUM > 0 {
		c.Levels = []chart.Level{{Y: house.ReadyUM, Name: "ready " + number(house.ReadyUM)}}
	}
	if len(c.Corridor) > 0 {
		c.Names.Corridor = "house"
	}
	c.X.High = s.horizon(b, f)
	if f.growErr == nil {
		c.Names.Curve = f.growth.Better.String()
		c.Curves = curves(f, c.X.High)
		if len(c.Curves) > 1 {
			c.Names.Forecast = "forecast"
		}
	}
	c.Marks = s.growthMarks(b, f)
	c.Y = lengthAxis(c)
	return c
}

// lengthAxis is the range of lengths that a chart shows, in whole hundreds of um.
func lengthAxis(c chart.Scatter) chart.Axis {
	low, high := math.Inf(1), math.Inf(-1)
	take := func(um ...float64) {
		for _, x := range um {
			low, high = min(low, x), max(high, x)
		}
	}
	for _, p := range c.Points {
		take(p.Y)
		if p.Low < p.High {
			take(p.Low, p.High)
		}
	}
	for _, l := range c.Levels {
		take(l.Y)
	}
	for _, b := range c.Corridor {
		if b.FromX <= c.X.High {
			take(b.Low, b.High)
		}
	}
	if low > high {
		return chart.Axis{}
	}
	if len(c.Points) == 0 {
		low = 0
	}
	return chart.Axis{Low: floorTo(low, 100), High: ceilTo(high+1, 100)}
}

// points are the means of days with their intervals.
func points(looks []growth.Look) []chart.Point {
	list := make([]chart.Point, len(looks))
	for i, l := range looks {
		list[i] = chart.Point{X: l.AgeDays, Y: l.MeanUM}
		if in, known := l.MeanInterval(); known {
			list[i].Low, list[i].High = in.Low, in.High
		}
	}
	return list
}

// corridor turns the bands of the house into ranges, each up to the next.
func corridor(bands growth.Corridor) []chart.Span {
	spans := make([]chart.Span, len(bands))
	for i, b := range bands {
		spans[i] = chart.Span{FromX: b.FromDay, ToX: math.Inf(1), Low: b.LowUM, High: b.HighUM}
		if i > 0 {
			spans[i-1].ToX = b.FromDay
		}
	}
	return spans
}

// leastHorizon is the least number of days an axis of ages shows.
const leastHorizon = 8.0

// horizon is the last age that the chart shows: today or the last look, and the
// ready day with its interval where it is drawn.
func (s *Batch) horizon(b *model.Batch, f *figures) float64 {
	end := leastHorizon
	if s.desk.Ledger.Here(b) {
		end = max(end, s.age(b, s.desk.Now))
	}
	if last, ok := f.last(); ok {
		end = max(end, last.AgeDays)
	}
	if r, ok := f.drawnReady(); ok {
		end = max(end, r.AgeDays)
		if !r.HighOpen {
			end = max(end, min(r.Interval.High, 1.25*r.AgeDays))
		}
	}
	return math.Ceil(end + 0.5)
}

// mostSpans is how many times the span of the looks a ready day may lie from the
// first of them to be drawn; beyond it stands in words alone.
const mostSpans = 3

// drawnReady is the ready age where it can stand in the chart.
func (f *figures) drawnReady() (growth.Ready, bool) {
	if f.readyErr != nil || f.ready.State == growth.Never {
		return growth.Ready{}, false
	}
	fit := f.growth.Best()
	far := fit.FirstAgeDay + mostSpans*(fit.LastAgeDay-fit.FirstAgeDay)
	return f.ready, f.ready.AgeDays <= far
}

// curves are the fit through the looks and, with looks of three days or more, its
// forecast, as far as a ready day is drawn.
func curves(f *figures, end float64) []chart.Curve {
	fit := f.growth.Best()
	list := []chart.Curve{{At: fit.At, From: fit.FirstAgeDay, To: fit.LastAgeDay}}
	end = min(end, fit.FirstAgeDay+mostSpans*(fit.LastAgeDay-fit.FirstAgeDay))
	if !fit.HasIntervals || end <= fit.LastAgeDay {
		return list
	}
	return append(list, chart.Curve{At: fit.At, From: fit.LastAgeDay, To: end, Forecast: true})
}

// growthMarks are today and the ready day.
func (s *Batch) growthMarks(b *model.Batch, f *figures) []chart.Mark {
	var marks []chart.Mark
	if s.desk.Ledger.Here(b) {
		marks = append(marks, chart.Mark{X: s.age(b, s.desk.Now), Name: "today"})
	}
	r, ok := f.drawnReady()
	if !ok {
		return marks
	}
	m := chart.Mark{X: r.AgeDays, Low: r.Interval.Low, High: r.Interval.High, Name: s.dayAt(b, r.AgeDays)}
	if r.Far {
		m.Name += " " + s.desk.Theme.Marks.Stale
	}
	if r.LowOpen {
		m.Low = math.Inf(-1)
	}
	if r.HighOpen {
		m.High = math.Inf(1)
	}
	return append(marks, m)
}
