package season

import (
	"drainboard/model"
	"drainboard/model/count"
	"drainboard/model/growth"
)

// How says what the day of readiness comes from.
type How string

// The ways in which a batch gets ready, or not.
const (
	Unsaid   How = "unknown"  // too few lengths
	Expected How = "expected" // its growth reaches the ready length later
	Reached  How = "reached"  // its growth had reached it by the last lengths
	Settled  How = "settled"  // larvae of it were ended as settled
	Never    How = "never"    // it does not grow, or so little that it takes over a year
	Gone     How = "gone"     // no larvae are left and the length was not reached
)

// Ready is how many days after the hatch a batch was ready, or should be.
type Ready struct {
	How How
	// Days since the hatch. Of settled larvae it is the day of the first of them;
	// else that of the house's ready length with its 95 % interval, of which an end
	// is unknown where the readings do not bound it.
	Days count.Estimate
	Far  bool // far beyond the readings: a figure to plan by, not to rely on
}

func readyOf(l *model.Ledger, b *model.Batch, here bool) Ready {
	born := b.Hatched.Instant(l.Room().Zone)
	for _, x := range b.Losses {
		if x.Ended && x.Why == model.Settled {
			return Ready{How: Settled, Days: count.About(x.At.Sub(born).Hours() / 24)}
		}
	}
	r, err := l.Ready(b)
	switch {
	case err != nil && here:
		return Ready{How: Unsaid}
	case err != nil:
		return Ready{How: Gone}
	case r.State == growth.Never && here:
		return Ready{How: Never}
	case r.State != growth.Reached && !here:
		return Ready{How: Gone}
	}
	how := Expected
	if r.State == growth.Reached {
		how = Reached
	}
	days := count.About(r.AgeDays)
	if !r.LowOpen {
		days.Low = count.Known(r.Interval.Low)
	}
	if !r.HighOpen {
		days.High = count.Known(r.Interval.High)
	}
	return Ready{How: how, Days: days, Far: r.Far && how == Expected}
}
