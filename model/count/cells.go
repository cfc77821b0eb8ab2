package count

// Cells is a density of microalgae cells.
type Cells struct {
	PerML   Estimate // cells per mL of the undiluted water, exact Poisson limits (Garwood)
	Fields  int      // fields counted
	Counted int      // cells seen in all fields
	Mixing  Mixing
}

// CellsPerML returns the cells per mL from the counts of fields of chamberML mL
// each, in a sample diluted so many times (1 is not diluted, 10 is one part in
// ten; below 1 is concentrated). Cells are counted by BorderRule.
//
//	cells counted / (fields * chamber mL) * dilution
//
// It refuses empty or negative counts and a volume or dilution of 0 or less.
func CellsPerML(counts []int, chamberML, dilution float64) (Cells, error) {
	counted, err := sum("counts", counts)
	err = firstError(err, positive("chamber_ml", chamberML), positive("dilution", dilution))
	if err != nil {
		return Cells{}, err
	}
	scale := dilution / (float64(len(counts)) * chamberML)
	return Cells{
		PerML:   pooled(counted, scale),
		Fields:  len(counts),
		Counted: counted,
		Mixing:  dispersion(counts, counted),
	}, nil
}

// Eaten is what went out of the water between two cell counts.
type Eaten struct {
	PerML       Estimate // cells per mL over the whole time
	Percent     Estimate // of the first count, over the whole time
	PerMLPerDay Estimate // cells per mL in 24 h at the same pace
	// Grew is set where more cells were found than had been left: the algae
	// divided, or a count is off. Nothing eaten is then shown as 0.
	Grew bool
}

// EatenBetween returns what was eaten from just after a feed to just before the
// next, hours later:
//
//	(after - before) / after
//
// Limits: the difference in quadrature as in Minus, and the per cent from the
// ratio as in Over. Algae settling out or dividing are not told from grazing.
// It refuses hours of 0 or less, and a first count that is unknown or 0.
func EatenBetween(after, before Estimate, hours float64) (Eaten, error) {
	if err := positive("hours", hours); err != nil {
		return Eaten{}, err
	}
	if !after.Value.Known || after.Value.X <= 0 {
		return Eaten{}, wrong("after", "no cells known after the feed; count the tank, or give the cells per mL wanted")
	}
	gone := after.Minus(before)
	left := before.Over(after)
	return Eaten{
		PerML:       gone,
		Percent:     left.complement().times(100),
		PerMLPerDay: gone.times(24 / hours),
		Grew:        left.Value.Known && left.Value.X > 1,
	}, nil
}

// complement is 1 less a share, never below 0; the limits change places.
func (e Estimate) complement() Estimate {
	rest := func(x ...float64) float64 { return max(0, 1-x[0]) }
	return Estimate{of(rest, e.Value), of(rest, e.High), of(rest, e.Low)}
}

// PerLarvaPerDay returns the cells one larva ate in 24 h, in a tank of so many
// litres with so many larvae. It refuses a volume of 0 or less; where the larvae
// are unknown or none, the result is unknown.
func (e Eaten) PerLarvaPerDay(tankLitres float64, larvae Estimate) (Estimate, error) {
	if err := positive("tank_litres", tankLitres); err != nil {
		return Estimate{}, err
	}
	const mlPerLitre = 1000
	return e.PerMLPerDay.times(tankLitres * mlPerLitre).Over(larvae), nil
}
