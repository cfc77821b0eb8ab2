package paper

import (
	"cmp"
	"slices"
	"time"

	"drainboard/model"
	"drainboard/model/count"
	"drainboard/model/growth"
)

// TanksAPage is how many tanks of a wall sheet stand on one page.
const TanksAPage = 6

// Sheet is the wall sheet of a room at a moment.
type Sheet struct {
	Room  string
	At    time.Time
	Algae []string    // short names, for the boxes of a feed
	Tanks []SheetTank // by the place where they stand
}

// SheetTank is one tank of a wall sheet.
type SheetTank struct {
	Name   string
	Litres float64
	State  model.State
	Known  bool // false until something was entered of it
	Since  time.Time
	Marks  []string // what stands out, the gravest first

	Celsius    model.Reading
	HasCelsius bool

	// The rest is of the larvae, and zero where the tank holds none.
	Batch     string
	AgeDays   int
	Due       time.Time
	MeshUM    []float64
	Larvae    count.Estimate
	CountedAt time.Time // zero where never counted
	Sample    growth.Sample
	SampleAt  time.Time // zero where never measured
}

// NewSheet gathers the wall sheet of a room as it stands at now: tanks by row
// and column, those without a place after them as room.toml lists them.
func NewSheet(l *model.Ledger, now time.Time) Sheet {
	s := Sheet{Room: l.Room().Name, At: now.In(l.Room().Zone)}
	for _, a := range l.Room().Algae {
		s.Algae = append(s.Algae, a.Name)
	}
	tanks := slices.Clone(l.Tanks())
	slices.SortStableFunc(tanks, func(a, b model.TankNow) int { return byPlace(a.Tank, b.Tank) })
	for _, t := range tanks {
		s.Tanks = append(s.Tanks, sheetTank(l, t, now))
	}
	return s
}

// byPlace orders tanks as a person meets them walking row by row.
func byPlace(a, b model.Tank) int {
	switch placedA, placedB := a.Row > 0, b.Row > 0; {
	case placedA && !placedB:
		return -1
	case !placedA && placedB:
		return 1
	}
	return cmp.Or(cmp.Compare(a.Row, b.Row), cmp.Compare(a.Column, b.Column))
}

func sheetTank(l *model.Ledger, t model.TankNow, now time.Time) SheetTank {
	s := SheetTank{
		Name: t.Tank.Name, Litres: t.Tank.Litres, State: t.State, Known: t.Known, Since: t.Since,
		Marks: l.Marks(t, now),
	}
	s.Celsius, s.HasCelsius = t.LastCelsius()
	if t.Larvae == nil {
		return s
	}
	s.Batch, s.Due = t.Larvae.Batch, l.Due(t)
	s.AgeDays, _ = l.Age(t, now)
	s.MeshUM = l.Room().House.MeshAt(s.AgeDays)
	s.Larvae, s.CountedAt = t.Larvae.Number, t.Larvae.CountedAt
	if sample := t.Larvae.Sample; sample != nil {
		if summary, err := growth.Summarize(sample.UM); err == nil {
			s.Sample, s.SampleAt = summary, sample.At
		}
	}
	return s
}

// Pages cuts the tanks of a sheet into pages.
func (s Sheet) Pages() [][]SheetTank { return slices.Collect(slices.Chunk(s.Tanks, TanksAPage)) }
