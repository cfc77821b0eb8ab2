package season

import (
	"time"

	"drainboard/model"
	"drainboard/model/count"
	"drainboard/model/growth"
)

// Batch is what became of one batch and how it was kept.
type Batch struct {
	Name    string
	Hatched model.Hatched
	Day     model.Day // of the hatch, by the calendar of the room
	Here    bool      // larvae of it are in the room
	// AgeDays is its age in whole days; where none are left, its age when the last
	// left.
	AgeDays int

	// Stocked are all larvae put into tanks; unknown as soon as one stocking gave
	// no number.
	Stocked count.Figure
	Alive   Alive
	Ready   Ready
	Growth  Growth
	Losses  Losses
	Moves   int

	habits map[Habit]Measure
}

// Habit returns by how much, or how often, a batch was kept in a way.
func (b Batch) Habit(h Habit) Measure { return b.habits[h] }

// Growth is how fast the mean shell grew.
type Growth struct {
	// PerDay is um a day, the slope of a straight line through the mean lengths of
	// all days on which the batch was read: the same shape for all batches, so that
	// they can be set side by side. Unknown with fewer than two days, without limits
	// with two.
	PerDay count.Figure
	// Low and High are its 95 % interval; either may be below 0.
	Low, High count.Figure
	Days      int // with readings
	LastUM    count.Figure
}

// Losses are larvae that left, by cause.
type Losses struct {
	Settled, Discarded, Lost, Removed Loss
}

// Loss is larvae that left for one cause.
type Loss struct {
	Entries int
	Larvae  float64
	Untold  int // of the entries, those that give no number and of which none was known
}

func batchOf(l *model.Ledger, b *model.Batch, told map[int]bool, now time.Time) Batch {
	zone := l.Room().Zone
	x := Batch{
		Name: b.Name, Hatched: b.Hatched, Day: b.Hatched.Day(zone), Here: l.Here(b),
		AgeDays: b.AgeDays(now, zone), Stocked: stockedOf(b), Alive: aliveOf(l.SurvivalSeries(b), told),
		Growth: growthOf(l, b), Losses: lossesOf(b), Moves: len(b.Moves),
	}
	if n := len(b.Losses); !x.Here && n > 0 {
		x.AgeDays = b.AgeDays(b.Losses[n-1].At, zone)
	}
	x.Ready = readyOf(l, b, x.Here)
	x.habits = habitsOf(l, b, now)
	return x
}

func stockedOf(b *model.Batch) count.Figure {
	sum := 0.0
	for _, s := range b.Stocked {
		if s.Larvae == nil {
			return count.Figure{}
		}
		sum += *s.Larvae
	}
	return count.Known(sum)
}

func growthOf(l *model.Ledger, b *model.Batch) Growth {
	looks, err := l.SampleLooks(b)
	if err != nil || len(looks) == 0 {
		return Growth{}
	}
	g := Growth{Days: len(looks), LastUM: count.Known(looks[len(looks)-1].MeanUM)}
	line, err := growth.FitLine(looks)
	if err != nil {
		return g // lengths of one day
	}
	g.PerDay = count.Known(line.Slope)
	if i, ok := line.SlopeInterval(); ok {
		g.Low, g.High = count.Known(i.Low), count.Known(i.High)
	}
	return g
}

func lossesOf(b *model.Batch) Losses {
	var all Losses
	for _, x := range b.Losses {
		cause := &all.Removed
		switch {
		case !x.Ended:
		case x.Why == model.Settled:
			cause = &all.Settled
		case x.Why == model.Discarded:
			cause = &all.Discarded
		default:
			cause = &all.Lost
		}
		cause.Entries++
		if x.Larvae == nil {
			cause.Untold++
			continue
		}
		cause.Larvae += *x.Larvae
	}
	return all
}
