package sequence

import (
	"fmt"
	"time"

	"drainboard/model"
)

// Options are what people choose for one session; a zero field leaves the
// choice to the house rules.
type Options struct {
	Tanks []string   // change exactly these
	Split []Split    // move these in parts
	Join  []Together // put these together, two by two
	Crew  int
	Order string
}

// FromLedger states the problem of a change session at now: the tanks that fall
// due within the house's window and those to be split or joined, or those named. A
// named tank that the room does not have, or that holds no larvae, is refused, and
// so is a join of two batches or of what is suspect.
func FromLedger(l *model.Ledger, now time.Time, o Options) (Problem, error) {
	house := l.Room().House
	p := Problem{
		Now: now, Order: Order(house.Order), Crew: house.Crew,
		Grace: time.Duration(house.GraceHours * float64(time.Hour)),
		Pace: Pace{
			HandleMinutes: house.Minutes.Handle, WashMinutes: house.Minutes.Wash,
			DrainLPM: house.Litres.Drain, FillLPM: house.Litres.Fill,
		},
	}
	if o.Crew != 0 {
		p.Crew = o.Crew
	}
	if o.Order != "" {
		p.Order = Order(o.Order)
	}
	for _, t := range l.Tanks() {
		p.Tanks = append(p.Tanks, tankOf(t))
	}
	chosen, err := choose(l, now, o.Tanks)
	if err == nil {
		chosen, err = withAsked(l, chosen, o)
	}
	if err != nil {
		return Problem{}, err
	}
	for _, t := range chosen {
		p.Sources = append(p.Sources, SourceOf(l, t, now))
	}
	if err := p.share(l, o); err != nil {
		return Problem{}, err
	}
	return p, nil
}

func tankOf(t model.TankNow) Tank {
	tank := Tank{Name: t.Tank.Name, Litres: t.Tank.Litres, Since: t.Since, State: map[model.State]State{
		model.Holding: Holding, model.Dirty: Dirty, model.WashedDown: Washed, model.Ready: Ready, model.Out: Out,
	}[t.State]}
	if tank.State == Dirty || tank.State == Washed {
		tank.Since = t.EmptySince()
	}
	if last, ok := t.LastCelsius(); ok {
		tank.Celsius = Known(last.Value)
	}
	return tank
}

// SourceOf states a holding tank as a source of a move.
func SourceOf(l *model.Ledger, t model.TankNow, now time.Time) Source {
	age, _ := l.Age(t, now)
	return Source{
		Tank: t.Place, AgeDays: age, Due: l.Due(t), Suspect: t.Suspect,
		Larvae:   Reading{t.Larvae.Number.Value.X, t.Larvae.Number.Value.Known},
		PerLitre: l.Room().House.DensityAt(age),
	}
}

// choose picks the tanks to change: those named, or those in the window.
func choose(l *model.Ledger, now time.Time, names []string) ([]model.TankNow, error) {
	var chosen []model.TankNow
	if len(names) == 0 {
		for _, t := range l.Tanks() {
			if l.InWindow(t, now) {
				chosen = append(chosen, t)
			}
		}
		return chosen, nil
	}
	seen := map[string]bool{}
	for _, name := range names {
		t, err := holding(l, name)
		if err != nil {
			return nil, err
		}
		if seen[t.Tank.Name] {
			return nil, fmt.Errorf("tank %s is named twice", t.Tank.Name)
		}
		seen[t.Tank.Name] = true
		chosen = append(chosen, t)
	}
	return chosen, nil
}
