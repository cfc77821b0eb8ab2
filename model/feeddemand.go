package model

import (
	"fmt"
	"time"

	"drainboard/model/feed"
	"drainboard/model/growth"
)

// StayDays is how many days past its ready date a batch is still reckoned with
// in the demand for food. A choice of ours, no source: settling takes days, and
// algae that are over harm less than algae that are missing.
const StayDays = 3

// FeedDemand is what the tanks ask of the algae room in the days to come.
type FeedDemand struct {
	Days []DemandDay
	// Stays says of each batch how long it is reckoned with.
	Stays []Stay
	// Uncounted are the algae whose litres are not known, as their culture has no
	// count to reckon with: their cells stand in the days, their litres do not.
	Uncounted []string
	// Gaps are the tanks that ask for less than they may need, one line each.
	Gaps []string
}

// DemandDay is one day of it.
type DemandDay struct {
	Day    Day
	Tanks  int         // that are to be fed
	Cells  feed.ByAlga // cells
	Litres feed.ByAlga // of cultures as dense as last counted
}

// Stay is how long a batch is reckoned with.
type Stay struct {
	Batch string
	// Last is the last day it is fed: StayDays after its ready date or, where that
	// has passed, after today. Zero where no ready date is known: it stays.
	Last Day
	Why  string // where Last comes from, or why there is none
}

// FeedDemand works out the food of so many days, today the first. Each tank
// stays as it is, gets the whole ration for its age as after a water change, so
// often as house.feed_hours says, and leaves with its batch.
func (l *Ledger) FeedDemand(now time.Time, days int) FeedDemand {
	d := FeedDemand{Days: make([]DemandDay, max(0, days))}
	today := DayOf(now, l.room.Zone)
	for i := range d.Days {
		d.Days[i] = DemandDay{Day: today.Add(i), Cells: feed.ByAlga{}, Litres: feed.ByAlga{}}
	}
	stays := map[string]Stay{}
	for _, b := range l.Batches() {
		if l.Here(b) {
			stays[b.Name] = l.stay(b, today)
			d.Stays = append(d.Stays, stays[b.Name])
		}
	}
	density := d.densities(l.Cultures(now))
	for _, t := range l.Ranked(now) {
		d.addTank(l, t, stays[t.Larvae.Batch], density, now)
	}
	return d
}

// stay says how long a batch is reckoned with.
func (l *Ledger) stay(b *Batch, today Day) Stay {
	ready, err := l.Ready(b)
	switch {
	case err != nil:
		return Stay{Batch: b.Name, Why: "no ready date yet (" + err.Error() + ")"}
	case ready.State == growth.Never:
		return Stay{Batch: b.Name, Why: "no ready date: its lengths do not rise"}
	}
	day := l.DayAtAge(b, ready.AgeDays)
	if day.Sub(today) < 0 {
		return Stay{b.Name, today.Add(StayDays), fmt.Sprintf("ready since %s and still here: %d days from today", day, StayDays)}
	}
	return Stay{b.Name, day.Add(StayDays), fmt.Sprintf("ready %s, and %d days", day, StayDays)}
}

// densities are the cells per mL of every culture. What has no count gets a
// stand-in, so that its cells are known; its litres are dropped.
func (d *FeedDemand) densities(cultures []CultureNow) feed.ByAlga {
	density := feed.ByAlga{}
	for _, c := range cultures {
		density[c.Alga.Name] = c.Cells.PerML.Value.X
		if c.Problem != "" {
			density[c.Alga.Name] = 1
			d.Uncounted = append(d.Uncounted, c.Alga.Name)
		}
	}
	return density
}

// addTank adds what one tank asks for on each day it stays.
func (d *FeedDemand) addTank(l *Ledger, t TankNow, stay Stay, density feed.ByAlga, now time.Time) {
	age, _ := l.Age(t, now)
	var asked [][]feed.TankDay
	var at []int // the day each of them is of
	none := 0
	for i, day := range d.Days {
		if !stay.Last.IsZero() && day.Day.Sub(stay.Last) > 0 {
			break
		}
		if _, ok := l.room.House.RationAt(age + i); !ok {
			none++
			continue
		}
		asked = append(asked, []feed.TankDay{{Tank: t.Tank.Name, AgeDays: age + i, Litres: t.Tank.Litres}})
		at = append(at, i)
	}
	if none > 0 {
		d.Gaps = append(d.Gaps, fmt.Sprintf("%s: %s; on %d of the days nothing is reckoned for it", t.Tank.Name, l.noRation(), none))
	}
	demand, err := feed.Forecast(asked, l.room.House.feedBands(), density)
	if err != nil {
		d.Gaps = append(d.Gaps, fmt.Sprintf("%s is left out: %v", t.Tank.Name, err))
		return
	}
	for i, one := range demand {
		d.Days[at[i]].add(one, 24/l.room.House.FeedHours, d.Uncounted)
	}
}

// feedBands are the rations in the terms of package feed.
func (h House) feedBands() []feed.Band {
	bands := make([]feed.Band, len(h.Ration))
	for i, b := range h.Ration {
		bands[i] = feed.Band{FromDay: b.FromDay, CellsPerML: b.CellsPerML, Share: b.Share}
	}
	return bands
}

// add adds a tank's feeds of the day; so many a day, the litres of what is not
// counted left out.
func (d *DemandDay) add(one feed.DayDemand, feeds float64, uncounted []string) {
	d.Tanks++
	for alga, cells := range one.Cells {
		d.Cells[alga] += cells * feeds
		d.Litres[alga] += one.Litres[alga] * feeds
	}
	for _, alga := range uncounted {
		delete(d.Litres, alga)
	}
}
