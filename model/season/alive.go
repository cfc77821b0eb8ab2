package season

import (
	"math"

	"drainboard/model"
	"drainboard/model/count"
)

// Alive is the share of a batch that was alive when something last spoke of it.
type Alive struct {
	// Share of the larvae at the start that is alive, settled ones among them; what
	// was taken out on purpose counts neither way. Unknown where nothing was
	// counted since the start: a number told at the stocking says nothing of who
	// survived.
	Share count.Estimate
	// ADay is the share that was alive a day later, had each day taken the same: what
	// batches of different ages are set side by side by.
	ADay    count.Estimate
	Days    float64 // from the start to that moment
	AgeDays float64 // of the batch then
	// FromCount is set where a stocking gave no number and the first full count is
	// the start.
	FromCount bool
	// Told is set where larvae in some tank were never counted.
	Told bool
}

// leastDays is the time from which a loss a day says something.
const leastDays = 1

// endsTold lists the entries that end a tank and give a number of their own.
func endsTold(l *model.Ledger) map[int]bool {
	told := map[int]bool{}
	for _, e := range l.Events() {
		if x, ok := e.Fact.(*model.Ended); ok && x.Larvae != nil {
			told[e.N] = true
		}
	}
	return told
}

// aliveOf takes the last step that says something of survival: a count, or an
// end once something was counted, told or lost. What comes after larvae left
// alive or on purpose in an unknown number says nothing more.
func aliveOf(s model.SurvivalSeries, told map[int]bool) Alive {
	var a Alive
	seen := false
	for _, x := range s.Steps {
		ended := x.What == model.KindEnded
		if ended && x.Why != model.Lost && !x.Larvae.Value.Known {
			return a
		}
		seen = seen || x.What == model.KindCount || ended && (told[x.N] || x.Why == model.Lost)
		days := x.At.Sub(s.StartAt).Hours() / 24
		if !seen || !x.Alive.Share.Value.Known || !ended && x.What != model.KindCount || s.FromCount && days <= 0 {
			continue
		}
		a = Alive{
			Share: x.Alive.Share, Days: days, AgeDays: x.AgeDays,
			FromCount: s.FromCount, Told: x.Told,
		}
		if days >= leastDays {
			a.ADay = aDay(x.Alive.Share, days)
		}
	}
	return a
}

// aDay is the share left after one day of a loss that took days.
func aDay(share count.Estimate, days float64) count.Estimate {
	root := func(f count.Figure) count.Figure {
		if !f.Known {
			return f
		}
		return count.Known(math.Pow(f.X, 1/days))
	}
	return count.Estimate{Value: root(share.Value), Low: root(share.Low), High: root(share.High)}
}
