package model

import (
	"cmp"
	"slices"
	"time"
)

// hours turns a house rule into elapsed time.
func hours(h float64) time.Duration { return time.Duration(h * float64(time.Hour)) }

// Due returns when a holding tank's water is to be changed: change_hours of
// elapsed time after it was last fresh, whatever the clocks do.
func (l *Ledger) Due(t TankNow) time.Time { return t.Since.Add(hours(l.room.House.ChangeHours)) }

// Late returns when a change becomes overdue: past due and grace.
func (l *Ledger) Late(t TankNow) time.Time { return l.Due(t).Add(hours(l.room.House.GraceHours)) }

// Overdue reports whether a tank's change is overdue.
func (l *Ledger) Overdue(t TankNow, now time.Time) bool {
	return t.State == Holding && now.After(l.Late(t))
}

// InWindow reports whether a session at this moment takes the tank.
func (l *Ledger) InWindow(t TankNow, now time.Time) bool {
	return t.State == Holding && !l.Due(t).After(now.Add(hours(l.room.House.WindowHours)))
}

// FeedDue returns when the larvae of a tank are to be fed next; since the
// stocking where they never were.
func (l *Ledger) FeedDue(t TankNow) time.Time {
	return laterOf(t.Larvae.Fed, t.Larvae.Stocked).Add(hours(l.room.House.FeedHours))
}

// LookDue returns when the larvae of a tank are to be looked at next; since the
// stocking where they never were.
func (l *Ledger) LookDue(t TankNow) time.Time {
	return laterOf(t.Larvae.Looked, t.Larvae.Stocked).Add(hours(l.room.House.LookHours))
}

func laterOf(a, b time.Time) time.Time {
	if a.After(b) {
		return a
	}
	return b
}

// Age returns the age in days of the larvae in a tank, and false where it holds
// none.
func (l *Ledger) Age(t TankNow, now time.Time) (int, bool) {
	if t.Larvae == nil {
		return 0, false
	}
	return l.Batch(t.Larvae.Batch).AgeDays(now, l.room.Zone), true
}

// Next returns the holding tank whose change falls due first, and false where
// no tank holds larvae. Of tanks due together the first in rank is next.
func (l *Ledger) NextDue(now time.Time) (TankNow, bool) {
	holding := l.Ranked(now)
	if len(holding) == 0 {
		return TankNow{}, false
	}
	return slices.MinFunc(holding, func(a, b TankNow) int { return l.Due(a).Compare(l.Due(b)) }), true
}

// Ranked lists the holding tanks by rank: suspect tanks last; then by the house
// order; then by due time; then as room.toml lists them.
func (l *Ledger) Ranked(now time.Time) []TankNow {
	var holding []TankNow
	for _, t := range l.fold.tanks {
		if t.State == Holding {
			holding = append(holding, t)
		}
	}
	slices.SortStableFunc(holding, func(a, b TankNow) int {
		return cmp.Or(lastIf(a.Suspect, b.Suspect), l.byOrder(a, b, now), l.Due(a).Compare(l.Due(b)))
	})
	return holding
}

func lastIf(a, b bool) int {
	switch {
	case a == b:
		return 0
	case a:
		return 1
	}
	return -1
}

func (l *Ledger) byOrder(a, b TankNow, now time.Time) int {
	ageA, _ := l.Age(a, now)
	ageB, _ := l.Age(b, now)
	switch l.room.House.Order {
	case YoungestFirst:
		return cmp.Compare(ageA, ageB)
	case DueFirst:
		return 0
	}
	return cmp.Compare(ageB, ageA)
}

// ReadingLimit is the age from which a figure is shown with its age and a
// question mark.
func (l *Ledger) ReadingLimit() time.Duration { return hours(l.room.House.LookHours) }
