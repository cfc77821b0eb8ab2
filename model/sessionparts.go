package model

import "math"

// Share returns the share of the larvae then in its tank that a move (from 1) of
// the session takes. The agreed moves hold no shares: a tank that is the source of
// several is moved in equal parts, so of k moves still to be made the next takes
// 1/k of what is left, and the last takes all. Moves left out count no longer.
func (s *SessionNow) Share(move int) float64 {
	from, parts := s.Legs[move-1].From, 0
	for i, leg := range s.Legs {
		_, out := s.LeftOut(i + 1)
		if leg.From == from && (i == move-1 || s.Moved[i] == 0 && !out) {
			parts++
		}
	}
	return 1 / float64(parts)
}

// legOf returns the agreed move (from 0) that a move made does, -1 where it does
// none. Of several from its tank it is the one into the same tank, else the first
// that was not left out, else the first.
func (s *SessionNow) legOf(x *Moved) int {
	best, rank := -1, 0
	for i, leg := range s.Legs {
		if s.Moved[i] != 0 || leg.From != x.From {
			continue
		}
		_, out := s.LeftOut(i + 1)
		this := 1
		switch {
		case !out && s.Leg(i+1).To == x.To:
			this = 3
		case !out:
			this = 2
		}
		if this > rank {
			best, rank = i, this
		}
	}
	return best
}

// Joins reports whether a move (from 1) of the open session is agreed to go to
// larvae already moved: another move of the session went into the same tank, its
// water is that of this session, and the two are of one batch.
func (l *Ledger) Joins(move int) bool {
	s := l.Session()
	if s == nil || move < 1 || move > len(s.Legs) {
		return false
	}
	leg := s.Leg(move)
	from, to := l.fold.tank(leg.From), l.fold.tank(leg.To)
	if from == nil || to == nil || from.State != Holding || to.State != Holding ||
		to.Since.Before(s.Opened) || from.Larvae.Batch != to.Larvae.Batch {
		return false
	}
	for i := range s.Legs {
		if i != move-1 && s.Moved[i] != 0 && s.Leg(i+1).To == leg.To && s.Legs[i].From != leg.From {
			return true
		}
	}
	return false
}

// sharing gives a move what the session's list says of it beside its tanks: its
// share, to four decimals, and whether it joins others.
func (l *Ledger) sharing(m *Moved, move int) {
	if share := l.Session().Share(move); share < 1 {
		share = math.Round(share*1e4) / 1e4
		m.Share = &share
	}
	m.Join = l.Joins(move)
}
