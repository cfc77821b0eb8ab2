package model

import (
	"fmt"
	"time"

	"drainboard/model/growth"
)

// Marks says in a few words each what stands out of a tank, the gravest first.
func (l *Ledger) Marks(t TankNow, now time.Time) []string {
	var marks []string
	add := func(when bool, mark string) {
		if when {
			marks = append(marks, mark)
		}
	}
	add(l.Overdue(t, now), "overdue")
	add(t.Suspect, "suspect")
	if last, ok := t.celsius(); ok && t.State == Holding {
		add(last.Value > l.room.House.Temperature.Bearable.High, "too warm")
		add(last.Value < l.room.House.Temperature.Bearable.Low, "too cold")
		add(now.Sub(last.At) > l.ReadingLimit(), "old temperature")
	}
	if t.State != Holding {
		return marks
	}
	add(l.TooDense(t, now), "too dense")
	add(now.After(l.LookDue(t)), "late look")
	add(now.After(l.FeedDue(t)), "late feed")
	return marks
}

// PerLitre returns the larvae per litre of a tank, and false where their number
// is not known.
func (t TankNow) PerLitre() (float64, bool) {
	if t.Larvae == nil || !t.Larvae.Number.Value.Known {
		return 0, false
	}
	return t.Larvae.Number.Value.X / t.Tank.Litres, true
}

// TooDense reports whether a tank is known to hold more larvae per litre than
// the house allows at their age.
func (l *Ledger) TooDense(t TankNow, now time.Time) bool {
	per, known := t.PerLitre()
	age, _ := l.Age(t, now)
	limit := l.room.House.DensityAt(age)
	return known && limit > 0 && per > limit
}

// Odd says what is odd of an entry that can be true: it is taken, and marked.
// It is asked before the entry is applied.
func (l *Ledger) Odd(e Entry) []string {
	switch x := e.Fact.(type) {
	case *Temperature:
		return l.oddCelsius(x.Tank, x.Celsius, e.At)
	case *Filled:
		if x.Celsius != nil {
			return l.oddCelsius("", *x.Celsius, e.At)
		}
	case *Count:
		return l.oddCount(x)
	case *Removed:
		return l.oddRemoved(x)
	case *Sizes:
		return l.oddSizes(x)
	case *Moved:
		return l.oddMove(x, e.At)
	}
	return nil
}

func (l *Ledger) oddCelsius(tank string, celsius float64, at time.Time) []string {
	var odd []string
	rules := l.room.House.Temperature
	if !rules.Bearable.Holds(celsius) {
		odd = append(odd, fmt.Sprintf("%s °C lies outside the bearable %s to %s °C",
			plain(celsius), plain(rules.Bearable.Low), plain(rules.Bearable.High)))
	}
	t, ok := l.Tank(tank)
	if last, read := t.celsius(); ok && read && at.Sub(last.At) < 24*time.Hour {
		if step := celsius - last.Value; step > rules.StepHold || step < -rules.StepHold {
			odd = append(odd, fmt.Sprintf("%+.1f °C since the last reading of %s", step, tank))
		}
	}
	return odd
}

func (l *Ledger) oddCount(x *Count) []string {
	t, _ := l.Tank(x.Tank)
	now := counted(x).Value
	if t.Larvae == nil || !t.Larvae.Number.Value.Known || !now.Known || now.X <= t.Larvae.Number.Value.X {
		return nil
	}
	return []string{fmt.Sprintf("%.0f larvae are more than the %.0f thought to be there", now.X, t.Larvae.Number.Value.X)}
}

func (l *Ledger) oddRemoved(x *Removed) []string {
	t, _ := l.Tank(x.Tank)
	if t.Larvae == nil || !t.Larvae.Number.Value.Known || x.Larvae <= t.Larvae.Number.Value.X {
		return nil
	}
	return []string{fmt.Sprintf("%.0f larvae are more than the %.0f thought to be there", x.Larvae, t.Larvae.Number.Value.X)}
}

func (l *Ledger) oddSizes(x *Sizes) []string {
	var odd []string
	seen := []float64(nil)
	if t, _ := l.Tank(x.Tank); len(x.UM) == 1 && t.Larvae != nil && t.Larvae.Sample != nil {
		seen = t.Larvae.Sample.UM
	}
	for i, um := range x.UM {
		others := append(append(append([]float64(nil), seen...), x.UM[:i]...), x.UM[i+1:]...)
		if growth.Odd(others, um) {
			odd = append(odd, fmt.Sprintf("%s um stands far from the others", plain(um)))
		}
	}
	return odd
}

func (l *Ledger) oddMove(x *Moved, at time.Time) []string {
	var odd []string
	if x.FromCelsius != nil && x.ToCelsius != nil {
		if d := *x.FromCelsius - *x.ToCelsius; d > l.room.House.Temperature.StepHold || d < -l.room.House.Temperature.StepHold {
			odd = append(odd, fmt.Sprintf("the waters differ by %.1f °C", max(d, -d)))
		}
	}
	t, _ := l.Tank(x.From)
	if age, ok := l.Age(t, at); ok && x.MeshUM != nil && !l.SieveFits(age, *x.MeshUM) {
		odd = append(odd, fmt.Sprintf("a %s um sieve is not one for day %d", plain(*x.MeshUM), age))
	}
	return odd
}

// SieveFits reports whether a mesh is one of those the house takes at an age.
func (l *Ledger) SieveFits(age int, um float64) bool {
	meshes := l.room.House.MeshAt(age)
	for _, m := range meshes {
		if m == um {
			return true
		}
	}
	return len(meshes) == 0
}
