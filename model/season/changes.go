package season

import (
	"time"

	"drainboard/model"
)

// changes says which share of the batch's water changes came past due, and which
// past due and grace, in per cent, by the house rules as they are today.
//
// A change is a move into fresh water. Water that stood past its time and was
// never changed, in a tank that was ended or still stands, is a change that came
// late; water that was left in time otherwise is none.
func changes(l *model.Ledger, b *model.Batch, now time.Time) (late, overdue Measure) {
	w := waters{fresh: map[string]time.Time{}}
	for _, h := range story(b) {
		w.step(h)
	}
	for _, since := range w.fresh {
		w.left = append(w.left, now.Sub(since))
	}
	house := l.Room().House
	due := time.Duration(house.ChangeHours * float64(time.Hour))
	grace := due + time.Duration(house.GraceHours*float64(time.Hour))
	return w.past(due, due), w.past(due, grace)
}

// waters follows how long larvae stood in one water.
type waters struct {
	fresh   map[string]time.Time // since when, by tank
	changed []time.Duration
	left    []time.Duration // ended or still standing, without a change
}

func (w *waters) step(h happened) {
	switch x := h.fact.(type) {
	case model.Stocking:
		w.fresh[x.Tank] = x.At
	case model.MoveAt:
		w.changed = append(w.changed, x.At.Sub(w.fresh[x.Move.From]))
		if x.Move.All() {
			delete(w.fresh, x.Move.From)
		}
		if _, holds := w.fresh[x.Move.To]; !holds {
			w.fresh[x.Move.To] = x.At
		}
	case model.Loss:
		if x.Ended {
			w.left = append(w.left, x.At.Sub(w.fresh[x.Tank]))
			delete(w.fresh, x.Tank)
		}
	}
}

// past is the share of changes that came after a limit.
func (w *waters) past(due, limit time.Duration) Measure {
	var stays []float64
	for _, d := range w.changed {
		stays = append(stays, d.Hours())
	}
	for _, d := range w.left {
		if d > due {
			stays = append(stays, d.Hours())
		}
	}
	return share(stays, func(hours float64) bool { return hours > limit.Hours() })
}
