package main

import (
	"time"

	"drainboard/model/calendar"
)

// levelView is the proposal in calendar --json: which changes to make early.
type levelView struct {
	Needed      bool        `json:"needed"`    // a day is too full as the changes fall due
	OverDays    int         `json:"over_days"` // too full even so
	OverMinutes int         `json:"over_minutes"`
	Best        bool        `json:"best"`
	Nodes       int         `json:"nodes"`
	EarlyHours  float64     `json:"early_hours"` // by how much a change may be early
	Early       []earlyView `json:"early"`
	Days        []levelDay  `json:"days"`

	before, beforeOver int
}

// earlyView is one change to be made before it falls due.
type earlyView struct {
	Tank         string `json:"tank"`
	Batch        string `json:"batch"`
	Date         string `json:"date"`
	Due          string `json:"due"`
	From         string `json:"from"`
	By           string `json:"by"`
	EarlyMinutes int    `json:"early_minutes"` // at the least

	day, due, from, by time.Time
}

// levelDay is a day when the proposal is followed.
type levelDay struct {
	Date    string `json:"date"`
	Moves   int    `json:"moves"`
	Minutes int    `json:"minutes"`
	Over    bool   `json:"over"`
}

func viewLevel(c *calendar.Calendar) levelView {
	l := c.Level(0)
	v := levelView{
		OverDays: l.Over, OverMinutes: wholeMinutes(l.OverBy), Best: l.Best, Nodes: l.Nodes,
		EarlyHours: round(c.Early.Hours(), 3), Early: []earlyView{}, Days: []levelDay{},
	}
	var over time.Duration
	for _, d := range c.Days {
		over += d.OverBy()
		if d.Full != calendar.Fits {
			v.before++
		}
	}
	v.Needed, v.beforeOver = v.before > 0, wholeMinutes(over)
	for _, e := range l.Early {
		v.Early = append(v.Early, earlyView{
			Tank: e.Tank, Batch: e.Batch, Date: e.Day.String(), Due: stamp(e.Due, c.Zone), From: stamp(e.From, c.Zone), By: stamp(e.By, c.Zone),
			EarlyMinutes: int(e.Ahead() / time.Minute),
			day:          e.Day.Start(c.Zone), due: e.Due.In(c.Zone), from: e.From.In(c.Zone), by: e.By.In(c.Zone),
		})
	}
	for _, d := range l.Days {
		v.Days = append(v.Days, levelDay{d.Date.String(), d.Moves, wholeMinutes(d.Work), d.Full != calendar.Fits})
	}
	return v
}

// spareView is what one more ready tank would save in the next session.
type spareView struct {
	Session string      `json:"session"` // when it is taken to begin
	Moves   int         `json:"moves"`
	Litres  float64     `json:"litres"`
	Saves   bool        `json:"saves"`
	As      outcomeView `json:"as_it_is"`
	More    outcomeView `json:"with_one_more"`

	at time.Time
}

// outcomeView is what a session comes to in its best order.
type outcomeView struct {
	Unmoved      int    `json:"unmoved"`
	WorstOverrun int    `json:"worst_overrun_minutes"`
	Minutes      int    `json:"minutes"`
	Finish       string `json:"finish"`
	Best         bool   `json:"best"`
}

func viewSpare(s calendar.Spare, zone *time.Location) *spareView {
	view := func(o calendar.Outcome) outcomeView {
		return outcomeView{o.Unmoved, int(o.Worst / time.Minute), wholeMinutes(o.Length), stamp(s.At.Add(o.Length), zone), o.Best}
	}
	return &spareView{stamp(s.At, zone), s.Moves, round(s.Litres, 1), s.Saves(), view(s.As), view(s.More), s.At.In(zone)}
}
