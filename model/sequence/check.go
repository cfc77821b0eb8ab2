package sequence

import (
	"fmt"
	"math"
	"slices"
	"time"
)

// The widest times taken: a step of a month and a due time a century away are
// mistakes, and within them no sum of durations can overflow.
const (
	longestStep = 30 * 24 * time.Hour
	farthestDue = 100 * 365 * 24 * time.Hour
)

// mostParts bounds a split: every part is a siphon and a rinse of its own.
const mostParts = 9

// check refuses a problem that cannot be planned: what is wrong, where, and what
// would be right.
func (p Problem) check() error {
	if p.Now.IsZero() {
		return fmt.Errorf("plan: no time given; give the time the session begins")
	}
	if p.Crew != 1 && p.Crew != 2 {
		return fmt.Errorf("crew %d: give 1 or 2", p.Crew)
	}
	switch p.Order {
	case OldestFirst, YoungestFirst, DueFirst:
	default:
		return fmt.Errorf("order %q: give %s, %s or %s", p.Order, OldestFirst, YoungestFirst, DueFirst)
	}
	if p.Grace < 0 || p.Grace > farthestDue {
		return fmt.Errorf("grace %v: give a time of 0 or more", p.Grace)
	}
	if p.Budget < 0 {
		return fmt.Errorf("budget %d: give 0 or more nodes", p.Budget)
	}
	if err := p.Pace.check(); err != nil {
		return err
	}
	for _, t := range p.Tanks {
		if err := t.check(p.Pace); err != nil {
			return err
		}
	}
	return p.checkSources()
}

func (p Pace) check() error {
	figures := []struct {
		name  string
		value float64
		least string
		ok    bool
	}{
		{"handle minutes", p.HandleMinutes, "0 or more", p.HandleMinutes >= 0},
		{"wash minutes", p.WashMinutes, "0 or more", p.WashMinutes >= 0},
		{"drain litres per minute", p.DrainLPM, "more than 0", p.DrainLPM > 0},
		{"fill litres per minute", p.FillLPM, "more than 0", p.FillLPM > 0},
	}
	for _, f := range figures {
		if !f.ok || math.IsInf(f.value, 0) {
			return fmt.Errorf("pace: %s is %g; give %s", f.name, f.value, f.least)
		}
	}
	return nil
}

func (t Tank) check(pace Pace) error {
	if !(t.Litres > 0) || math.IsInf(t.Litres, 0) {
		return fmt.Errorf("tank %s: a volume of %g litres; give more than 0", t.Name, t.Litres)
	}
	if t.State < Holding || t.State > Out {
		return fmt.Errorf("tank %s: unknown state %d", t.Name, t.State)
	}
	if t.Celsius.Known && (math.IsNaN(t.Celsius.Value) || math.IsInf(t.Celsius.Value, 0)) {
		return fmt.Errorf("tank %s: temperature %g; give a number or leave it unknown", t.Name, t.Celsius.Value)
	}
	slowest := max(t.Litres/pace.DrainLPM+pace.HandleMinutes, t.Litres/pace.FillLPM+pace.WashMinutes)
	if slowest > longestStep.Minutes() {
		return fmt.Errorf("tank %s: one step would take %.0f minutes; check its volume and the room's pace", t.Name, slowest)
	}
	return nil
}

func (p Problem) checkSources() error {
	seen := make([]bool, len(p.Tanks))
	for _, s := range p.Sources {
		if s.Tank < 0 || s.Tank >= len(p.Tanks) {
			return fmt.Errorf("source: there is no tank number %d; give 0 to %d", s.Tank, len(p.Tanks)-1)
		}
		name := p.Tanks[s.Tank].Name
		if seen[s.Tank] {
			return fmt.Errorf("tank %s: named twice as a source; name it once", name)
		}
		seen[s.Tank] = true
		if p.Tanks[s.Tank].State != Holding {
			return fmt.Errorf("tank %s: holds no larvae; leave it out of the sources", name)
		}
		if away := s.Due.Sub(p.Now); away > farthestDue || away < -farthestDue {
			return fmt.Errorf("tank %s: due %s is over a century away; check its due time", name, s.Due.Format(time.RFC3339))
		}
		if !(s.PerLitre >= 0) {
			return fmt.Errorf("tank %s: a density limit of %g per litre; give 0 or more", name, s.PerLitre)
		}
		if s.Larvae.Known && !(s.Larvae.Value >= 0) {
			return fmt.Errorf("tank %s: %g larvae; give 0 or more, or leave it unknown", name, s.Larvae.Value)
		}
		if s.Parts < 0 || s.Parts > mostParts {
			return fmt.Errorf("tank %s: split into %d parts; give 2 to %d, or 0 to move it whole", name, s.Parts, mostParts)
		}
	}
	return p.checkJoins()
}

// checkJoins refuses pairs that cannot be put together.
func (p Problem) checkJoins() error {
	paired := map[int]bool{}
	for _, pair := range p.Joins {
		a, err := p.joinable(pair.A)
		if err != nil {
			return err
		}
		b, err := p.joinable(pair.B)
		if err != nil {
			return err
		}
		nameA, nameB := p.Tanks[pair.A].Name, p.Tanks[pair.B].Name
		switch {
		case pair.A == pair.B:
			return fmt.Errorf("join: %s with itself; name two tanks", nameA)
		case paired[pair.A] || paired[pair.B]:
			return fmt.Errorf("join: %s with %s; a tank is joined with one other only", nameA, nameB)
		case a.AgeDays != b.AgeDays || a.PerLitre != b.PerLitre:
			return fmt.Errorf("join: %s and %s hold larvae of two ages; only those of one batch go together", nameA, nameB)
		}
		paired[pair.A], paired[pair.B] = true, true
	}
	return nil
}

// joinable returns the source of a tank named in a pair.
func (p Problem) joinable(tank int) (Source, error) {
	if tank < 0 || tank >= len(p.Tanks) {
		return Source{}, fmt.Errorf("join: there is no tank number %d; give 0 to %d", tank, len(p.Tanks)-1)
	}
	i := slices.IndexFunc(p.Sources, func(s Source) bool { return s.Tank == tank })
	switch {
	case i < 0:
		return Source{}, fmt.Errorf("join: %s is not one of the tanks to change; add it to them", p.Tanks[tank].Name)
	case p.Sources[i].Parts > 1:
		return Source{}, fmt.Errorf("join: %s is split as well; choose one", p.Tanks[tank].Name)
	}
	return p.Sources[i], nil
}
