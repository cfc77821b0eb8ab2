package wash

import "cmp"

// molHCl is the mass of a mole of hydrogen chloride in grams.
const molHCl = 36.461

// Stock is hydrochloric (muriatic) acid as it comes in the bottle. Shop acid
// is sold from about 14 to 37 percent, so the strength is read off the label,
// never guessed.
type Stock struct {
	Percent    float64 // hydrogen chloride, percent by weight
	GramsPerML float64 // density
}

// strengths are percent by weight and grams per millilitre at 20 degrees
// Celsius: CRC Handbook of Chemistry and Physics, "Concentrative Properties of
// Aqueous Solutions", hydrochloric acid.
func strengths() []Stock {
	return []Stock{
		{0.5, 1.0007},
		{1, 1.0031},
		{2, 1.0081},
		{4, 1.0179},
		{6, 1.0278},
		{8, 1.0377},
		{10, 1.0476},
		{12, 1.0576},
		{14, 1.0676},
		{16, 1.0777},
		{18, 1.0878},
		{20, 1.0980},
		{22, 1.1083},
		{24, 1.1185},
		{26, 1.1288},
		{28, 1.1391},
		{30, 1.1492},
		{32, 1.1594},
		{34, 1.1693},
		{36, 1.1791},
		{38, 1.1886},
		{40, 1.1977},
	}
}

// NewStock is acid of a strength in percent by weight, 0.5 to 40, with the
// density it has at 20 degrees Celsius (CRC table, straight between its rows).
func NewStock(percent float64) (Stock, error) {
	table := strengths()
	weakest, strongest := table[0], table[len(table)-1]
	if !(percent >= weakest.Percent && percent <= strongest.Percent) {
		return Stock{}, refuse("stock-percent", percent, "must be between "+plain(weakest.Percent)+" and "+
			plain(strongest.Percent)+", percent by weight from the bottle's label")
	}
	return Stock{percent, interpolate(table, percent)}, nil
}

// interpolate needs a percent inside the table.
func interpolate(table []Stock, percent float64) float64 {
	i := 1
	for table[i].Percent < percent {
		i++
	}
	a, b := table[i-1], table[i]
	return a.GramsPerML + (b.GramsPerML-a.GramsPerML)*(percent-a.Percent)/(b.Percent-a.Percent)
}

// water60F is the density of water at 60 degrees Fahrenheit, grams per
// millilitre, to which the Baumé scale refers.
const water60F = 0.99901

// Baume is the specific gravity, 60 F over 60 F, of a liquid heavier than
// water: 145/(145 - degrees).
func Baume(degrees float64) (float64, error) {
	if err := between("baume", degrees, 0, 70); err != nil {
		return 0, err
	}
	return 145 / (145 - degrees), nil
}

// StockFromBaume is acid sold by degrees Baumé, 18 to 22: 18 is 27.92 percent,
// 20 is 31.45, 22 is 35.21 (the first and the last after Ferguson's table, as
// remembered; the middle one as data sheets of 20 degree acid print it), and
// straight between them. Its density is that at 60 F.
func StockFromBaume(degrees float64) (Stock, error) {
	gravity, err := Baume(degrees)
	if err := cmp.Or(between("baume", degrees, 18, 22), err); err != nil {
		return Stock{}, err
	}
	percent := 31.45 + (degrees-20)*(31.45-27.92)/2
	if degrees > 20 {
		percent = 31.45 + (degrees-20)*(35.21-31.45)/2
	}
	return Stock{percent, gravity * water60F}, nil
}

// GramsPerLitre is the hydrogen chloride in a litre of the stock.
func (s Stock) GramsPerLitre() float64 { return 10 * s.Percent * s.GramsPerML }

// MolPerLitre is the same in moles.
func (s Stock) MolPerLitre() float64 { return s.GramsPerLitre() / molHCl }

func (s Stock) check() error {
	return cmp.Or(
		between("stock-percent", s.Percent, 0.5, 40),
		between("stock-density", s.GramsPerML, 0.99, 1.21),
	)
}
