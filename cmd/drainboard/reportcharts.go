package main

import (
	"math"

	"drainboard/model"
	"drainboard/model/growth"
	"drainboard/model/paper"
	"drainboard/tui/chart"
	"drainboard/tui/text"
)

// growthChart draws the lengths of a batch, the curve through them and where it
// reaches the ready length.
func growthChart(r paper.Report) *chart.Scatter {
	ready := r.Room.House.Growth.ReadyUM
	s := &chart.Scatter{
		Title: "shell length", Names: chart.Names{Points: "mean, 95 %"},
		X: chart.Axis{Title: "day", Whole: true}, Y: chart.Axis{Title: "µm"},
		Levels: []chart.Level{{Y: ready, Name: "ready " + text.Decimal(ready, 0)}},
	}
	for _, d := range r.Lengths {
		p := chart.Point{X: d.Age, Y: d.Sample.Mean}
		if d.Sample.HasSpread {
			p.Low, p.High = d.Sample.MeanInterval.Low, d.Sample.MeanInterval.High
		}
		s.Points = append(s.Points, p)
	}
	addCorridor(s, r.Room.House.Corridor)
	if r.Growth.Gap != "" {
		return s
	}
	fit := r.Growth.Growth.Best()
	s.Names.Curve = fit.Shape.String()
	s.Curves = []chart.Curve{{At: fit.At, From: fit.FirstAgeDay, To: fit.LastAgeDay}}
	if g := r.Growth.Ready; r.Growth.ReadyGap == "" && g.State == growth.Ahead && !g.Far {
		s.Names.Forecast = "if it goes on"
		s.Curves = append(s.Curves, chart.Curve{At: fit.At, From: fit.LastAgeDay, To: g.AgeDays, Forecast: true})
		s.Marks = []chart.Mark{readyMark(r, g)}
	}
	return s
}

func readyMark(r paper.Report, g growth.Ready) chart.Mark {
	m := chart.Mark{X: g.AgeDays, Low: g.Interval.Low, High: g.Interval.High, Name: "ready " + dayAtAge(r, g.AgeDays).String()}
	if g.LowOpen {
		m.Low = math.Inf(-1)
	}
	if g.HighOpen {
		m.High = math.Inf(1)
	}
	return m
}

func addCorridor(s *chart.Scatter, bands []model.GrowthBand) {
	for i, b := range bands {
		span := chart.Span{FromX: float64(b.FromDay), ToX: math.Inf(1), Low: b.LowUM, High: b.HighUM}
		if i+1 < len(bands) {
			span.ToX = float64(bands[i+1].FromDay)
		}
		s.Corridor = append(s.Corridor, span)
		s.Names.Corridor = "house corridor"
	}
}

// survivalChart draws what was alive after each count and each loss.
func survivalChart(r paper.Report) *chart.Scatter {
	s := &chart.Scatter{
		Title: "alive", Names: chart.Names{Points: "share alive, 95 %"},
		X: chart.Axis{Title: "day", Whole: true}, Y: chart.Axis{Title: "%", Low: 0, High: 100},
	}
	for _, a := range r.Survival.Steps {
		share := a.Alive.Share
		if !share.Value.Known {
			continue
		}
		p := chart.Point{X: a.AgeDays, Y: 100 * share.Value.X}
		if share.Low.Known && share.High.Known {
			p.Low, p.High = 100*share.Low.X, 100*share.High.X
		}
		s.Points = append(s.Points, p)
		s.Y.High = max(s.Y.High, p.Y, p.High)
	}
	return s
}
