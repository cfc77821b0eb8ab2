package model

import (
	"math"
	"time"

	"drainboard/model/count"
)

// heldSource is a number that larvae in the room go back to: a count, or a
// number told at a stocking.
type heldSource struct {
	number count.Estimate
	told   bool
}

// heldPart is the share of a source's larvae that is in a tank.
type heldPart struct {
	source int // index in survivalWatch.sources
	share  float64
}

// held are the larvae of a batch in one tank. Their number is kept as shares of
// the counts it comes from, so that what is split and put together again has
// the limits of its count, neither wider nor narrower.
type held struct {
	parts   []heldPart
	taken   float64 // removed since, larvae
	unknown bool    // stocked without a number, or joined by such

	since   time.Time // of the last count, or of the stocking
	counted bool      // since is that of a count
	joined  bool      // put together since
	moves   []MoveAt  // made since
	tally   *count.Tally
	kept    float64 // share of the tally that should still be there
}

// share returns the larvae of which a part goes another way.
func (h held) share(part float64) held {
	parts := make([]heldPart, len(h.parts))
	for i, p := range h.parts {
		parts[i] = heldPart{p.source, p.share * part}
	}
	h.parts, h.taken, h.kept = parts, h.taken*part, h.kept*part
	return h
}

// join returns the larvae of two tanks put together.
func (h held) join(coming held) held {
	both := held{
		parts: append(append([]heldPart(nil), h.parts...), coming.parts...),
		taken: h.taken + coming.taken, unknown: h.unknown || coming.unknown,
		since: h.since, counted: h.counted && coming.counted, joined: true,
		moves: append([]MoveAt(nil), h.moves...),
	}
	if coming.since.Before(both.since) {
		both.since = coming.since
	}
	for _, m := range coming.moves {
		both.addMove(m)
	}
	return both
}

// addMove notes a move once.
func (h *held) addMove(m MoveAt) {
	for _, have := range h.moves {
		if have.N == m.N {
			return
		}
	}
	h.moves = append(h.moves[:len(h.moves):len(h.moves)], m)
}

// numberOf adds up larvae of several tanks; unknown as soon as one is. Numbers
// told have no limits of their own: they are taken as exact, and told says that
// there are any.
func (w *survivalWatch) numberOf(tanks ...held) (number count.Estimate, told bool) {
	shares := map[int]float64{}
	taken := 0.0
	for _, h := range tanks {
		if h.unknown {
			return count.Estimate{}, false
		}
		taken += h.taken
		for _, p := range h.parts {
			shares[p.source] += p.share
		}
	}
	value, down, up := -taken, 0.0, 0.0
	for i := range w.sources { // in order, so that the sum is always the same
		share, ok := shares[i]
		if !ok {
			continue
		}
		s := w.sources[i]
		value += share * s.number.Value.X
		if s.told {
			told = true
			continue
		}
		down = math.Hypot(down, share*(s.number.Value.X-s.number.Low.X))
		up = math.Hypot(up, share*(s.number.High.X-s.number.Value.X))
	}
	return count.Between(max(0, value), max(0, value-down), max(0, value+up)), told
}

// total is numberOf without the limits that a told number does not have.
func (w *survivalWatch) total(tanks ...held) count.Estimate {
	number, told := w.numberOf(tanks...)
	if told {
		return count.Estimate{Value: number.Value}
	}
	return number
}

// from returns larvae known by a number of their own.
func (w *survivalWatch) from(number count.Estimate, told bool) held {
	if !number.Value.Known {
		return held{unknown: true}
	}
	w.sources = append(w.sources, heldSource{number, told})
	return held{parts: []heldPart{{len(w.sources) - 1, 1}}}
}

// remove takes larvae out of a tank. Where more are removed than were thought to
// be there, none are left, but for what the limits leave.
func (w *survivalWatch) remove(h held, larvae float64) held {
	before, told := w.numberOf(h)
	if before.Value.Known && before.Value.X < larvae {
		none := w.from(count.Between(0, 0, max(0, before.High.X-larvae)), told)
		h.parts, h.taken = none.parts, 0
		return h
	}
	h.taken += larvae
	return h
}
