package paper

import (
	"fmt"

	"drainboard/model"
)

// replay folds the events of a ledger once more, one by one, and shows each to
// before with the room as it stood then and to after with the room that came of
// it. Events that skip names are left out; they must change no tank. The numbers
// that the room of the replay gives are its own: those of the journal stand in
// the events.
func replay(l *model.Ledger, skip func(model.Kind) bool, before, after func(*model.Ledger, model.Entry)) error {
	then := model.NewLedger(l.Room())
	for _, e := range l.Events() {
		if skip(e.Kind()) {
			continue
		}
		if before != nil {
			before(then, e)
		}
		again := e
		again.N = then.Next()
		if err := then.Apply(again); err != nil {
			return fmt.Errorf("fold entry %d once more: %w", e.N, err)
		}
		if after != nil {
			after(then, e)
		}
	}
	return nil
}

// ofSession names the kinds that speak of a session by the number of its entry.
// A replay leaves them out, since it numbers anew; no tank stands otherwise for
// them.
func ofSession(k model.Kind) bool {
	return k == model.KindOpened || k == model.KindStep || k == model.KindClosed
}

// onlyWhere leaves out what changes neither where larvae are nor how many.
func onlyWhere(k model.Kind) bool {
	switch k {
	case model.KindStocked, model.KindMoved, model.KindRemoved, model.KindEnded, model.KindCount,
		model.KindWashed, model.KindFilled, model.KindService, model.KindSuspect, model.KindNoted, model.KindWater:
		return false
	}
	return true
}
