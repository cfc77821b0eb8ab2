package growth

import (
	"fmt"
)

// Band is the range of mean length that a room expects from an age on, until the next band.
type Band struct {
	FromDay       float64
	LowUM, HighUM float64
}

// Corridor is a room's expected growth: bands in order of age. Before the first band nothing is
// expected. It is the room's own line, no published one.
type Corridor []Band

// Check refuses bands out of order, two bands from one day, and a band that is empty or upside down.
func (c Corridor) Check() error {
	for i, b := range c {
		switch {
		case !measurable(b.FromDay) || b.FromDay < 0:
			return fmt.Errorf("growth band %d: from day %g: give a day from 0 on", i+1, b.FromDay)
		case !measurable(b.LowUM) || !measurable(b.HighUM) || b.LowUM < 0 || b.HighUM <= b.LowUM:
			return fmt.Errorf("growth band %d: %g to %g um: give a low and then a higher length", i+1, b.LowUM, b.HighUM)
		case i > 0 && b.FromDay <= c[i-1].FromDay:
			return fmt.Errorf("growth band %d: from day %g is not after day %g: put the bands in order of age", i+1, b.FromDay, c[i-1].FromDay)
		}
	}
	return nil
}

// At is the band that holds at an age in days, if there is one yet.
func (c Corridor) At(ageDays float64) (band Band, found bool) {
	for _, b := range c {
		if b.FromDay > ageDays {
			break
		}
		band, found = b, true
	}
	return band, found
}

// Position is where a mean length stands in the corridor.
type Position int

const (
	Unjudged Position = iota // no band holds at this age
	Below
	Within
	Above
)

func (p Position) String() string {
	return [...]string{"not judged", "below", "within", "above"}[p]
}

// Place says where a mean length, um, stands at an age in days. The ends of a band are within it.
func (c Corridor) Place(ageDays, meanUM float64) Position {
	band, found := c.At(ageDays)
	switch {
	case !found:
		return Unjudged
	case meanUM < band.LowUM:
		return Below
	case meanUM > band.HighUM:
		return Above
	}
	return Within
}

// RunningBelow counts how many looks in a row, back from the latest, lie below the corridor. Looks
// of one day count as one, pooled.
func (c Corridor) RunningBelow(looks []Look) (int, error) {
	days, err := Pool(looks)
	if err != nil {
		return 0, err
	}
	run := 0
	for i := len(days) - 1; i >= 0 && c.Place(days[i].AgeDays, days[i].MeanUM) == Below; i-- {
		run++
	}
	return run, nil
}

// looksBehind is how many looks below the corridor make a batch behind: one may be a poor sample.
// Common practice, no source.
const looksBehind = 2

// Behind says whether the latest two looks or more lie below the corridor.
func (c Corridor) Behind(looks []Look) (bool, error) {
	run, err := c.RunningBelow(looks)
	return run >= looksBehind, err
}
