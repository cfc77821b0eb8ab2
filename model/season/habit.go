package season

import (
	"math"
	"time"

	"drainboard/model"
	"drainboard/model/count"
)

// Habit is a way of keeping larvae that the entries tell of.
type Habit string

// The habits.
const (
	Difference Habit = "difference" // mean temperature difference of the two waters at moves, degrees C
	OverFine   Habit = "over_fine"  // share of moves over house.temperature.step_fine, per cent
	OverHold   Habit = "over_hold"  // share of moves over house.temperature.step_hold, per cent
	Density    Habit = "density"    // mean larvae per litre, each tank by the time it held them
	Late       Habit = "late"       // share of changes past due, per cent
	Overdue    Habit = "overdue"    // share of changes past due and grace, per cent
	Golden     Habit = "golden"     // mean of the looks' golden guts, per cent
)

// Habits lists the habits in the order to show them.
func Habits() []Habit { return []Habit{Difference, OverFine, OverHold, Density, Late, Overdue, Golden} }

// Words says what a habit is.
func (h Habit) Words() string {
	switch h {
	case Difference:
		return "difference of the waters at moves"
	case OverFine:
		return "moves over step_fine"
	case OverHold:
		return "moves over step_hold"
	case Density:
		return "larvae per litre"
	case Late:
		return "changes past due"
	case Overdue:
		return "changes past due and grace"
	case Golden:
		return "golden guts"
	}
	return string(h)
}

// Unit is the unit of a habit, as the model writes units.
func (h Habit) Unit() string {
	switch h {
	case Difference:
		return "degrees C"
	case Density:
		return "per L"
	}
	return "per cent"
}

// Measure is a mean, or a share, over so many moves, numbers, changes or looks.
type Measure struct {
	count.Figure
	N int
}

func habitsOf(l *model.Ledger, b *model.Batch, now time.Time) map[Habit]Measure {
	rules := l.Room().House.Temperature
	late, overdue := changes(l, b, now)
	return map[Habit]Measure{
		Difference: mean(differences(b)),
		OverFine:   share(differences(b), func(d float64) bool { return d > rules.StepFine }),
		OverHold:   share(differences(b), func(d float64) bool { return d > rules.StepHold }),
		Density:    density(l.Room(), b),
		Late:       late,
		Overdue:    overdue,
		Golden:     mean(golden(b)),
	}
}

func mean(xs []float64) Measure {
	if len(xs) == 0 {
		return Measure{}
	}
	sum := 0.0
	for _, x := range xs {
		sum += x
	}
	return Measure{count.Known(sum / float64(len(xs))), len(xs)}
}

// share is the share of xs that is so, in per cent.
func share(xs []float64, is func(float64) bool) Measure {
	hits := make([]float64, len(xs))
	for i, x := range xs {
		if is(x) {
			hits[i] = 100
		}
	}
	return mean(hits)
}

// differences are those of the two waters at moves of which both were read,
// degrees C, without a sign. A reading has one decimal or two, so the dust of
// binary fractions is taken off: 28.1 and 26.1 differ by 2, not by a little more.
func differences(b *model.Batch) []float64 {
	var ds []float64
	for _, m := range b.Moves {
		if m.Move.FromCelsius != nil && m.Move.ToCelsius != nil {
			ds = append(ds, math.Round(1e6*math.Abs(*m.Move.FromCelsius-*m.Move.ToCelsius))/1e6)
		}
	}
	return ds
}

func golden(b *model.Batch) []float64 {
	var gs []float64
	for _, x := range b.Looks {
		if x.Look.Golden != nil {
			gs = append(gs, *x.Look.Golden)
		}
	}
	return gs
}
