package model

import (
	"time"

	"drainboard/model/count"
	"drainboard/model/feed"
)

// CultureNow is one alga in the algae room as its last cell count leaves it.
type CultureNow struct {
	Alga  Alga
	Count *CellCount    // nil where it was never counted
	Cells count.Cells   // of that count
	Age   time.Duration // since that count
	// Stale is set where the count is older than house.culture_hours. Its figure
	// still serves, and is shown as old.
	Stale bool
	// Problem says why the alga cannot be poured; empty where it can.
	Problem string
}

// PerML returns the cells per mL that were counted, with their limits.
func (f *Cells) PerML() (count.Cells, error) {
	dilution := 1.0
	if f.Dilution != nil {
		dilution = *f.Dilution
	}
	return count.CellsPerML(f.Counts, f.ChamberML, dilution)
}

// Cultures returns every alga of the room with its last cell count.
func (l *Ledger) Cultures(now time.Time) []CultureNow {
	all := make([]CultureNow, len(l.room.Algae))
	for i, a := range l.room.Algae {
		all[i] = l.culture(a, now)
	}
	return all
}

func (l *Ledger) culture(a Alga, now time.Time) CultureNow {
	c := CultureNow{Alga: a, Count: l.Culture(a.Name)}
	if c.Count == nil {
		c.Problem = a.Name + " was never counted and cannot be poured; count its culture"
		return c
	}
	c.Age = max(0, now.Sub(c.Count.At))
	old, err := feed.Stale(map[string]time.Duration{a.Name: c.Age}, hours(l.room.House.Feeding.CultureHours))
	c.Stale = err != nil || len(old) > 0
	if c.Cells, err = c.Count.Cells.PerML(); err != nil {
		c.Problem = a.Name + " cannot be poured: " + err.Error()
	} else if c.Cells.PerML.Value.X <= 0 {
		c.Problem = "no cells were found in the last count of " + a.Name + ": it cannot be poured; count it again"
	}
	return c
}
