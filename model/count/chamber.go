package count

import "strings"

// BorderRule is how a cell on the edge of a field is counted. Books differ in
// the two sides; what matters is to keep to one choice.
const BorderRule = "Count cells that touch the top or the right edge; leave out those that touch the bottom or the left."

// Chamber is a field of a counting chamber, by name.
type Chamber struct {
	Name string  // short, as typed
	Full string  // in words
	ML   float64 // the volume one field covers, mL
	// The cells per mL in the chamber that it counts best; 0 where no source says.
	BestLow, BestHigh float64
}

// Chambers returns the fields this package knows, in the order to offer them.
//
// Improved Neubauer: nine squares of 1 mm x 1 mm, 0.1 mm deep; the centre one is
// 25 squares of 0.2 mm, each of 16 squares of 0.05 mm; a corner one is 16 squares
// of 0.25 mm. Best range: PLoS ONE 2015, 0135725, table 2. Sixteen-field slide:
// 0.064 mL in all (Barsanti & Gualtieri, Algae, p. 248, eq. 6.4). Sedgewick-Rafter:
// 50 x 20 x 1 mm in 1000 squares (APHA 10200 F, from memory).
// A depth of 0.1 mm keeps larvae out: the Neubauer fields are for algae.
func Chambers() []Chamber {
	const best, most = 200_000, 600_000
	return []Chamber{
		{"neubauer-large", "improved Neubauer, one large square of nine (1 mm)", 1e-4, best, most},
		{"neubauer-all", "improved Neubauer, all nine large squares", 9e-4, best, most},
		{"neubauer-centre", "improved Neubauer, one of the 25 squares in the centre (0.2 mm)", 4e-6, best, most},
		{"neubauer-smallest", "improved Neubauer, one of the 400 smallest squares in the centre (0.05 mm)", 2.5e-7, best, most},
		{"neubauer-corner", "improved Neubauer, one of the 16 squares in a corner (0.25 mm)", 6.25e-6, best, most},
		{"sixteen-field", "slide of 16 fields, one field", 4e-3, 0, 0},
		{"sixteen-all", "slide of 16 fields, the whole grid", 64e-3, 0, 0},
		{"sedgewick-square", "Sedgewick-Rafter cell, one square of 1000", 1e-3, 0, 0},
		{"sedgewick-cell", "Sedgewick-Rafter cell, the whole cell", 1, 0, 0},
	}
}

// ChamberNamed returns the chamber of that name. For a name it does not know it
// lists the ones it does.
func ChamberNamed(name string) (Chamber, error) {
	var names []string
	for _, c := range Chambers() {
		if c.Name == name {
			return c, nil
		}
		names = append(names, c.Name)
	}
	return Chamber{}, wrong("chamber", "%q is not known; give one of %s, or the mL of a field", name, strings.Join(names, ", "))
}
