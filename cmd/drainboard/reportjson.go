package main

import (
	"time"

	"drainboard/model"
	"drainboard/model/count"
	"drainboard/model/paper"
)

// reportView is report --json. Its first keys are those of a batch in show
// --json; entries are numbers of the journal.
type reportView struct {
	At   string `json:"at"`
	Room string `json:"room"`
	batchView
	Origin       string           `json:"origin"`
	Here         bool             `json:"here"`
	Left         *string          `json:"left"` // when the last larvae left, null while any are here
	Stocked      *float64         `json:"stocked"`
	Larvae       *float64         `json:"larvae"`
	LarvaeLow    *float64         `json:"larvae_low"`
	LarvaeHigh   *float64         `json:"larvae_high"`
	SurvivalLow  *float64         `json:"survival_low"`
	SurvivalHigh *float64         `json:"survival_high"`
	Growth       *growthView      `json:"growth"` // null where the lengths do not tell
	Gaps         []string         `json:"gaps"`   // what is not known, and why
	Story        []eventView      `json:"story"`
	Lengths      []lengthDayView  `json:"lengths"`
	Alive        []aliveView      `json:"alive"` // share of alive_of, after each stocking, count and loss
	AliveOf      *float64         `json:"alive_of"`
	Temperatures []warmDayView    `json:"temperatures"`
	Moves        []reportMoveView `json:"moves"`
	Feeds        []feedDayView    `json:"feeds"`
	Looks        []lookView       `json:"looks"`
	Counts       []countView      `json:"counts"`
	Losses       []lossView       `json:"losses"`
	Missing      *float64         `json:"missing"` // stocked, and neither alive nor accounted for
	MissingLow   *float64         `json:"missing_low"`
	MissingHigh  *float64         `json:"missing_high"`
	People       []personView     `json:"people"`
	Corrections  []changeView     `json:"corrections"`
	House        houseJSON        `json:"house"`
}

type growthView struct {
	Shape        string   `json:"shape"`
	Why          string   `json:"why"`
	Days         int      `json:"days"`
	Readings     int      `json:"readings"`
	UMPerDayLow  *float64 `json:"um_per_day_low"`
	UMPerDayHigh *float64 `json:"um_per_day_high"`
	MissUM       *float64 `json:"miss_um"`
	ReadyUM      float64  `json:"ready_um"`
	Far          bool     `json:"far"` // the ready date lies far beyond the readings
}

type eventView struct {
	N       int    `json:"n"`
	At      string `json:"at"`
	AgeDays int    `json:"age_days"`
	By      string `json:"by"`
	Kind    string `json:"kind"`
	Text    string `json:"text"`
}

type lengthDayView struct {
	Date       string   `json:"date"`
	AgeDays    int      `json:"age_days"`
	Tanks      []string `json:"tanks"`
	N          int      `json:"n"`
	MeanUM     *float64 `json:"mean_um"`
	SDUM       *float64 `json:"sd_um"`
	MeanLowUM  *float64 `json:"mean_low_um"`
	MeanHighUM *float64 `json:"mean_high_um"`
	MinUM      *float64 `json:"min_um"`
	MaxUM      *float64 `json:"max_um"`
	Entries    []int    `json:"entries"`
}

type aliveView struct {
	N       int      `json:"n"`
	At      string   `json:"at"`
	AgeDays int      `json:"age_days"`
	After   string   `json:"after"`
	Share   *float64 `json:"share"`
	Low     *float64 `json:"low"`
	High    *float64 `json:"high"`
}

type warmDayView struct {
	Date     string   `json:"date"`
	AgeDays  int      `json:"age_days"`
	Readings int      `json:"readings"`
	Min      *float64 `json:"min"`
	Mean     *float64 `json:"mean"`
	Max      *float64 `json:"max"`
	Outside  int      `json:"outside"`
	Entries  []int    `json:"entries"`
}

type reportMoveView struct {
	N           int      `json:"n"`
	At          string   `json:"at"`
	By          string   `json:"by"`
	From        string   `json:"from"`
	To          string   `json:"to"`
	MeshUM      *float64 `json:"mesh_um"`
	FromCelsius *float64 `json:"from_celsius"`
	ToCelsius   *float64 `json:"to_celsius"`
	Difference  *float64 `json:"difference"`
	Share       *float64 `json:"share"`
	Join        bool     `json:"join"`
	Why         string   `json:"why"`
}

type feedDayView struct {
	Date    string             `json:"date"`
	AgeDays int                `json:"age_days"`
	Feeds   int                `json:"feeds"`
	Litres  map[string]float64 `json:"litres"`
	Tanks   []string           `json:"tanks"`
	Entries []int              `json:"entries"`
}

type lookView struct {
	N      int      `json:"n"`
	At     string   `json:"at"`
	By     string   `json:"by"`
	Tank   string   `json:"tank"`
	Lobes  *int     `json:"lobes"`
	Golden *float64 `json:"golden"`
	Swim   string   `json:"swim"`
	Dead   *float64 `json:"dead"`
	Text   string   `json:"text"`
}

type countView struct {
	N           int      `json:"n"`
	At          string   `json:"at"`
	By          string   `json:"by"`
	Tank        string   `json:"tank"`
	Subsamples  int      `json:"subsamples"`
	Counted     int      `json:"counted"`
	Larvae      *float64 `json:"larvae"`
	LarvaeLow   *float64 `json:"larvae_low"`
	LarvaeHigh  *float64 `json:"larvae_high"`
	Before      *float64 `json:"before"`
	DeadPercent *float64 `json:"dead_percent"`
	Mixing      string   `json:"mixing"`
}

type lossView struct {
	Why     string   `json:"why"`
	Ended   bool     `json:"ended"`
	Larvae  *float64 `json:"larvae"`
	Unknown int      `json:"unknown"` // entries without a number
	Entries []int    `json:"entries"`
}

type personView struct {
	By      string `json:"by"`
	Entries int    `json:"entries"`
}

type changeView struct {
	Entry int    `json:"entry"`
	Kind  string `json:"kind"`
	Void  bool   `json:"void"`
	By    []int  `json:"by"`
	Why   string `json:"why"`
}

// viewReport shows a report as JSON.
func viewReport(l *model.Ledger, r paper.Report) reportView {
	zone := r.Room.Zone
	v := reportView{
		At: stamp(r.At, zone), Room: r.Room.Name, batchView: viewBatch(l, r.Batch, r.At),
		Origin: r.Batch.Origin, Here: r.Here, Left: moment(r.Left, zone),
		Stocked: known(r.Stocked.Value.X, r.Stocked.Value.Known, 0),
		Growth:  viewGrowth(r), Gaps: []string{}, House: houseOf(r.Room.House),
	}
	v.AgeDays, v.Tanks = r.AgeDays, list(v.Tanks)
	v.AliveOf = figureOf(r.Survival.Start.Value, 0)
	v.Larvae, v.LarvaeLow, v.LarvaeHigh = limits(r.Standing, 0)
	v.Missing, v.MissingLow, v.MissingHigh = limits(r.Unexplained, 0)
	if r.Survival.Gap != "" {
		v.Gaps = append(v.Gaps, "survival: "+r.Survival.Gap)
	}
	if v.Survival != nil {
		_, v.SurvivalLow, v.SurvivalHigh = limits(r.Survival.Now.Share, 3)
	}
	if r.Growth.Gap != "" {
		v.Gaps = append(v.Gaps, "growth: "+r.Growth.Gap)
	}
	if r.Growth.ReadyGap != "" {
		v.Gaps = append(v.Gaps, "ready: "+r.Growth.ReadyGap)
	}
	v.addDays(r)
	v.addLines(r, zone)
	return v
}

// figureOf is a figure that may not be known, null in JSON.
func figureOf(f count.Figure, places int) *float64 { return known(f.X, f.Known, places) }

// limits are the three figures of an estimate.
func limits(e count.Estimate, places int) (value, low, high *float64) {
	return figureOf(e.Value, places), figureOf(e.Low, places), figureOf(e.High, places)
}

func viewGrowth(r paper.Report) *growthView {
	if r.Growth.Gap != "" {
		return nil
	}
	fit := r.Growth.Growth.Best()
	v := &growthView{
		Shape: fit.Shape.String(), Why: r.Growth.Growth.Why, Days: fit.Days, Readings: fit.Readings,
		MissUM: known(fit.MissUM(), true, 1), ReadyUM: r.Room.House.Growth.ReadyUM, Far: r.Growth.ReadyGap == "" && r.Growth.Ready.Far,
	}
	if day, ok := fit.PerDayInterval(fit.LastAgeDay); ok {
		v.UMPerDayLow, v.UMPerDayHigh = known(day.Low, true, 1), known(day.High, true, 1)
	}
	return v
}

// addDays adds what is told day by day.
func (v *reportView) addDays(r paper.Report) {
	v.Lengths = mapped(r.Lengths, func(d paper.LengthDay) lengthDayView {
		s := d.Sample
		return lengthDayView{
			Date: d.Day.String(), AgeDays: d.AgeDays, Tanks: d.Tanks, N: s.N, MeanUM: known(s.Mean, true, 1), SDUM: known(s.SD, s.HasSpread, 2),
			MeanLowUM: known(s.MeanInterval.Low, s.HasSpread, 1), MeanHighUM: known(s.MeanInterval.High, s.HasSpread, 1),
			MinUM: known(s.Min, true, 1), MaxUM: known(s.Max, true, 1), Entries: d.N,
		}
	})
	v.Temperatures = mapped(r.Warmth, func(d paper.WarmDay) warmDayView {
		return warmDayView{
			Date: d.Day.String(), AgeDays: d.AgeDays, Readings: d.Readings, Min: known(d.Min, true, 2), Mean: known(d.Mean, true, 2),
			Max: known(d.Max, true, 2), Outside: d.Outside, Entries: d.N,
		}
	})
	v.Feeds = mapped(r.Feeds, func(d paper.FeedDay) feedDayView {
		litres := map[string]float64{}
		for alga, x := range d.Litres {
			litres[alga] = round(x, 4)
		}
		return feedDayView{Date: d.Day.String(), AgeDays: d.AgeDays, Feeds: d.Feeds, Litres: litres, Tanks: d.Tanks, Entries: d.N}
	})
	v.Losses = mapped(r.Losses, func(x paper.Loss) lossView {
		return lossView{Why: x.Why, Ended: x.Ended, Larvae: known(x.Larvae, x.Unknown < len(x.N), 0), Unknown: x.Unknown, Entries: x.N}
	})
	v.People = mapped(r.People, func(p paper.Person) personView { return personView(p) })
	v.Corrections = mapped(r.Changed, func(c paper.Change) changeView {
		return changeView{Entry: c.Entry, Kind: string(c.Kind), Void: c.Void, By: c.By, Why: c.Why}
	})
}

// addLines adds what is told entry by entry.
func (v *reportView) addLines(r paper.Report, zone *time.Location) {
	v.Story = mapped(r.Story, func(e paper.Event) eventView {
		return eventView{e.N, stamp(e.At, zone), e.AgeDays, e.By, string(e.Fact.Kind()), model.Sentence(e.Fact)}
	})
	v.Alive = mapped(r.Survival.Steps, func(a model.SurvivalStep) aliveView {
		share, low, high := limits(a.Alive.Share, 3)
		return aliveView{a.N, stamp(a.At, zone), r.Batch.AgeDays(a.At, zone), string(a.What), share, low, high}
	})
	v.Moves = mapped(r.Moves, func(m paper.Move) reportMoveView {
		x := m.Moved
		return reportMoveView{
			N: m.N, At: stamp(m.At, zone), By: m.By, From: x.From, To: x.To, MeshUM: x.MeshUM, FromCelsius: x.FromCelsius,
			ToCelsius: x.ToCelsius, Difference: figureOf(m.Difference, 2), Share: x.Share, Join: x.Join, Why: x.Why,
		}
	})
	v.Looks = mapped(r.Looks, func(k paper.Look) lookView {
		x := k.Look
		return lookView{k.N, stamp(k.At, zone), k.By, x.Tank, x.Lobes, x.Golden, x.Swim, x.Dead, x.Text}
	})
	v.Counts = mapped(r.Counts, func(c paper.Count) countView {
		larvae, low, high := limits(c.Total.Total, 0)
		return countView{
			N: c.N, At: stamp(c.At, zone), By: c.By, Tank: c.Count.Tank, Subsamples: c.Total.Subsamples, Counted: c.Total.Counted,
			Larvae: larvae, LarvaeLow: low, LarvaeHigh: high, Before: figureOf(c.Before.Value, 0),
			DeadPercent: figureOf(c.Total.DeadPercent.Value, 2), Mixing: c.Total.Mixing.String(),
		}
	})
}
