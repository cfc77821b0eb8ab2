package feed

// Appetite is how many cells a larva eats at a size: the other way to a ration,
// by larvae instead of by volume.
type Appetite struct {
	Source string // who measured it, or "house"
	Animal string
	Alga   string
	Points []AppetitePoint // in the order of size
}

// AppetitePoint is one size of an Appetite.
type AppetitePoint struct {
	UM          float64 // shell length, um
	CellsPerDay float64 // cells one larva eats in 24 h
}

// PearlOyster2003 returns the appetite of pearl oyster larvae for Pavlova salina
// (Doroudi, Southgate & Lucas 2003, Aquacult. Nutr. 9:11-16).
func PearlOyster2003() Appetite {
	return Appetite{
		Source: "Doroudi, Southgate & Lucas 2003", Animal: "pearl oyster", Alga: "Pavlova salina",
		Points: []AppetitePoint{{89, perDay(8.7)}, {125, perDay(81.0)}, {188, perDay(165.7)}},
	}
}

// Paphia2011 returns the appetite of Paphia clam larvae for Nannochloropsis, a
// very small cell (Raghavan 2011, Aquacult. Nutr.).
func Paphia2011() Appetite {
	return Appetite{
		Source: "Raghavan 2011", Animal: "Paphia clam", Alga: "Nannochloropsis",
		Points: []AppetitePoint{{80, perDay(15)}, {120, perDay(92)}, {180, perDay(177)}},
	}
}

// perDay turns cells per hour, as the sources print them, into cells per day.
func perDay(perHour float64) float64 { return perHour * 24 }

// At returns the cells one larva of so many um eats in 24 h, on straight lines
// between the points. It refuses a size outside the points, as nothing is known
// there, and a table that is empty or out of order.
func (a Appetite) At(um float64) (float64, error) {
	if err := firstError(positive("um", um), a.check()); err != nil {
		return 0, err
	}
	first, last := a.Points[0], a.Points[len(a.Points)-1]
	if um < first.UM || um > last.UM {
		return 0, wrong("um", "%s is outside %s to %s um of %s; add that size to the table or feed by volume",
			plain(um), plain(first.UM), plain(last.UM), a.Source)
	}
	upper := 0
	for a.Points[upper].UM < um {
		upper++
	}
	if upper == 0 {
		return first.CellsPerDay, nil
	}
	return between(a.Points[upper-1], a.Points[upper], um), nil
}

func between(low, high AppetitePoint, um float64) float64 {
	way := (um - low.UM) / (high.UM - low.UM)
	return low.CellsPerDay*(1-way) + high.CellsPerDay*way
}

func (a Appetite) check() error {
	if len(a.Points) == 0 {
		return wrong("appetite", "no sizes; give at least one size and its cells per day")
	}
	for i, p := range a.Points {
		if err := firstError(positive("appetite", p.UM), notNegative("appetite", p.CellsPerDay)); err != nil {
			return err
		}
		if i > 0 && p.UM <= a.Points[i-1].UM {
			return wrong("appetite", "%s um comes after %s; put the sizes in order", plain(p.UM), plain(a.Points[i-1].UM))
		}
	}
	return nil
}

// WantForLarvae returns the cells per mL to want in a tank of so many litres so
// that so many larvae, each eating cellsPerDay, have food for so many hours. It
// is what they eat and no more: larvae clear thin water slowly, so a room adds a
// floor of its own. It refuses a volume or hours of 0 or less, and negative
// larvae or cells.
func WantForLarvae(larvae, cellsPerDay, hours, litres float64) (float64, error) {
	err := firstError(
		notNegative("larvae", larvae), notNegative("cells_per_day", cellsPerDay),
		positive("hours", hours), positive("litres", litres),
	)
	if err != nil {
		return 0, err
	}
	return larvae * cellsPerDay * hours / 24 / (litres * mlPerLitre), nil
}
