package model

import (
	"math"
	"time"

	"drainboard/model/count"
)

// SurvivalSeries is what the entries say, one after the other, of how many of a
// batch are alive.
type SurvivalSeries struct {
	Steps []SurvivalStep // in the order in which things happened
	// Start are the larvae that Alive is a share of, StartAt their moment. They
	// are those stocked, or, with FromCount, where a stocking has no number,
	// those of the first moment at which the number in every tank was known.
	Start     count.Estimate
	StartAt   time.Time
	FromCount bool
}

// SurvivalStep is one entry that says or changes how many of a batch are where.
type SurvivalStep struct {
	At      time.Time
	N       int
	AgeDays float64 // since the hatch
	What    Kind    // stocked, moved, count, removed or ended
	Tank    string  // of a move, the tank they left
	Why     string  // of removed and ended

	// Larvae are those the entry speaks of: stocked, moved, counted, removed or
	// ended. Unknown where no one knows.
	Larvae count.Estimate
	// Before are those thought to be in the tank before, of removed and ended.
	Before count.Estimate
	// Total are those of the batch in the room after it. What was split from one
	// count or put together again keeps that count's limits; a part that was told
	// and never counted has none, and then Total has none.
	Total count.Estimate
	// Alive is the share of Start that is alive after it, settled larvae among
	// them. What was taken out on purpose counts neither as dead nor as alive.
	// Its limits are those of the counts alone: numbers told are taken as exact.
	Alive count.Survival
	// Told is set where a part of Total was told and never counted.
	Told bool

	Count *CountStep // nil but for a count
	Move  *Moved     // nil but for a move
}

// CountStep sets a count beside what was thought to be in the tank.
type CountStep struct {
	Since    time.Time      // of the count before, or of the stocking; of the earlier where tanks were put together
	Counted  bool           // Since is that of a count
	Days     float64        // from Since to the count
	Expected count.Estimate // by the count before, less what was knowingly taken or moved
	Told     bool           // a part of Expected was told and never counted
	Moves    []MoveAt       // that these larvae made since, or that others were taken from them by

	// Change is the test of count.Compare against the count before; nil where there
	// was none, and then Untested says why.
	Change   *count.Change
	Untested string

	// Above is set where more were counted than were thought to be there.
	Above bool
	// Fewer is Expected less the count, 0 where more were counted.
	Fewer count.Estimate
	// KeptADay is the share of the larvae that was alive a day later, had each day
	// taken the same; unknown within leastRateDays.
	KeptADay count.Estimate
}

// leastRateDays is the time in days between two counts from which a loss a day
// says something.
const leastRateDays = 0.25

// SurvivalSeries follows a batch through its stockings, moves, counts, removals
// and ends. Values are those of Standing and Survival at each moment; limits are
// carried by source, as Total says.
func (l *Ledger) SurvivalSeries(b *Batch) SurvivalSeries {
	w := &survivalWatch{
		tanks: map[string]held{}, kept: 1, start: count.Exactly(0),
		born: b.Hatched.Instant(l.room.Zone),
	}
	for _, e := range b.survivalEvents() {
		w.step(e)
	}
	w.series.Start = w.start
	return w.series
}

// KeptADay is the share of the larvae that was alive a day later, had each day
// from the start to the last count or end taken the same. Unknown where nothing
// was counted since, or all of the batch is dead.
func (s SurvivalSeries) KeptADay() (kept count.Estimate, days float64) {
	for i := len(s.Steps) - 1; i >= 0; i-- {
		step := s.Steps[i]
		days = step.At.Sub(s.StartAt).Hours() / 24
		if step.What == KindCount && step.Alive.Share.Value.Known && days >= leastRateDays {
			return aDay(step.Alive.Share, days), days
		}
	}
	return count.Estimate{}, 0
}

// aDay is the share that is left after a day of a loss that took days.
func aDay(share count.Estimate, days float64) count.Estimate {
	root := func(f count.Figure) count.Figure {
		if !f.Known {
			return count.Figure{}
		}
		return count.Known(math.Pow(f.X, 1/days))
	}
	return count.Estimate{Value: root(share.Value), Low: root(share.Low), High: root(share.High)}
}
