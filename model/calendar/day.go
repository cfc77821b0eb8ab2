package calendar

import (
	"slices"
	"time"

	"drainboard/model"
	"drainboard/model/feed"
	"drainboard/model/wash"
)

// Day is one day of the calendar.
type Day struct {
	Date    model.Day
	Changes []Change // by the time they fall due
	// Empty is how many tanks are there to move into: those that hold no larvae and
	// are not out of use.
	Empty int
	// Standing are the tanks that stand dirty or washed today and are to be made
	// ready; on the days to come there are none.
	Standing []string
	// Work is how long the crew needs, and Limit how long it has: house.day_minutes,
	// or what there is of the day where that is less.
	Work, Limit time.Duration
	Full        Fullness

	SeaWaterLitres float64 // to have at temperature, for every tank that is filled
	Wash           Wash
	Algae          feed.ByAlga // litres of culture; of those that were counted
	Cells          feed.ByAlga
	Looks, Feeds   int      // that fall due
	Ready          []string // batches expected to be ready on this day

	dirty int // tanks that stand dirty today
}

// Change is one full change of water that falls due.
type Change struct {
	Tank    string // that holds the larvae today
	Batch   string
	AgeDays int
	Due     time.Time // may lie before the calendar begins; it is today's then
	Overdue bool      // past due and grace already
}

// Wash is the acid wash of a day: the gear bin, once where larvae are moved, and
// every tank that is washed. Without Known the room's acid cannot be reckoned with.
type Wash struct {
	Known  bool
	AcidML float64 // of stock
	Litres float64 // of solution, acid in it
}

// Fullness says whether a day's work can be done on it.
type Fullness int

// Fits is a day that is not too full. OverLimit is one that needs more than
// house.day_minutes; NoTime one with more moves than there is time for at all.
const (
	Fits Fullness = iota
	OverLimit
	NoTime
)

// Moves is how many moves of larvae the day asks for.
func (d Day) Moves() int { return len(d.Changes) }

// Tanks are the tanks due, each once.
func (d Day) Tanks() []string {
	var names []string
	for _, c := range d.Changes {
		if !slices.Contains(names, c.Tank) {
			names = append(names, c.Tank)
		}
	}
	return names
}

// OverBy is how much longer the work is than there is time for it, 0 where it fits.
func (d Day) OverBy() time.Duration { return max(0, d.Work-d.Limit) }

// Stuck reports that moves are due and no tank is empty to move into.
func (d Day) Stuck() bool { return len(d.Changes) > 0 && d.Empty == 0 }

// fullness judges so much work on a day that has so much time of which the house
// works no more than the limit.
func fullness(work, limit, there time.Duration) Fullness {
	switch {
	case work > there:
		return NoTime
	case work > limit:
		return OverLimit
	}
	return Fits
}

// washOf is the wash of a day with so many moves, and so many dirty tanks beside.
func washOf(rules model.WashRules, moves, dirty int) (Wash, error) {
	session := wash.Session{Emptied: moves + dirty, TankLitres: rules.TankLitres, MLPerLitre: rules.MLPerLitre}
	if moves > 0 {
		session.BinLitres = rules.BinLitres
	}
	var err error
	if session.Stock, err = wash.NewStock(rules.StockPercent); err != nil {
		return Wash{}, err
	}
	mix, err := session.Mix()
	return Wash{err == nil, mix.Total.AcidML, mix.Total.SolutionLitres}, err
}
