package feed

// Weights is what one cell of each alga weighs. 1 pg per cell is 1 ug per million
// cells. Published tables disagree, some by a factor of three or more, so a room
// picks one, or keeps its own, and every screen that uses one names its Source.
type Weights struct {
	Source    string // the table, or "house"
	Basis     string // what was weighed
	PgPerCell ByAlga // by species in the published tables
}

// Laing1991 returns organic weights (Laing 1991, MAFF Laboratory Leaflet 67; from
// memory). Its one range of 19 to 24 for Isochrysis galbana, T-Iso and Pavlova
// lutheri stands here as its middle, 21.5.
func Laing1991() Weights {
	return Weights{
		Source: "Laing 1991", Basis: "organic weight",
		PgPerCell: ByAlga{
			"Isochrysis galbana":        21.5,
			"T-Iso":                     21.5,
			"Pavlova lutheri":           21.5,
			"Tetraselmis suecica":       200,
			"Chaetoceros calcitrans":    7,
			"Chaetoceros gracilis":      30,
			"Thalassiosira pseudonana":  22,
			"Skeletonema costatum":      29,
			"Phaeodactylum tricornutum": 23,
			"Dunaliella tertiolecta":    85,
		},
	}
}

// Brown1991 returns dry weights (Brown 1991, as printed in FAO Fisheries Technical
// Paper 361; from memory).
func Brown1991() Weights {
	return Weights{
		Source: "Brown 1991", Basis: "dry weight",
		PgPerCell: ByAlga{
			"Isochrysis galbana":       30.5,
			"T-Iso":                    29.7,
			"Pavlova lutheri":          102.3,
			"Pavlova salina":           93.1,
			"Tetraselmis chui":         269.0,
			"Tetraselmis suecica":      168.2,
			"Chaetoceros calcitrans":   11.3,
			"Chaetoceros gracilis":     74.8,
			"Thalassiosira pseudonana": 28.4,
			"Skeletonema costatum":     52.2,
			"Dunaliella tertiolecta":   99.9,
			"Nannochloropsis oculata":  6.1,
		},
	}
}

// Named returns the table under the names a room gives its algae: names holds the
// species of each. It refuses a species the table does not have.
func (w Weights) Named(names map[string]string) (Weights, error) {
	named := Weights{Source: w.Source, Basis: w.Basis, PgPerCell: ByAlga{}}
	for alga, species := range names {
		pg, err := w.of(species)
		if err != nil {
			return Weights{}, err
		}
		named.PgPerCell[alga] = pg
	}
	return named, nil
}

// CellShare turns shares by weight into shares by cells, which sum to 1. It
// refuses shares as RationFor does, and an alga the table does not have.
func (w Weights) CellShare(byWeight ByAlga) (ByAlga, error) {
	parts, err := byWeight.parts("share")
	if err != nil {
		return nil, err
	}
	for _, alga := range parts.Names() {
		pg, err := w.of(alga)
		if err != nil {
			return nil, err
		}
		parts[alga] /= pg
	}
	return parts.parts("share")
}

// Equivalent returns how many cells of other weigh as much as one cell of alga.
func (w Weights) Equivalent(alga, other string) (float64, error) {
	one, err := w.of(alga)
	if err != nil {
		return 0, err
	}
	two, err := w.of(other)
	if err != nil {
		return 0, err
	}
	return one / two, nil
}

// UgPerML returns the weight of so many cells per mL of an alga, ug per mL.
func (w Weights) UgPerML(alga string, cellsPerML float64) (float64, error) {
	pg, err := w.of(alga)
	if err := firstError(err, notNegative("cells_per_ml", cellsPerML)); err != nil {
		return 0, err
	}
	const pgPerUg = 1e6
	return cellsPerML * pg / pgPerUg, nil
}

func (w Weights) of(alga string) (float64, error) {
	pg, known := w.PgPerCell[alga]
	if !known {
		return 0, wrong("weight", "%q is not in the table %s; add it or use another table", alga, w.Source)
	}
	if err := positive("weight", pg); err != nil {
		return 0, within(alga, err)
	}
	return pg, nil
}
