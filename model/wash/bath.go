package wash

import (
	"cmp"
	"math"
)

// Bath asks for a dilute acid wash.
type Bath struct {
	Litres     float64 // of finished solution where MadeUp, else of the water the acid is added to
	MLPerLitre float64 // stock per litre: of the solution where MadeUp, else of the water
	MadeUp     bool
	Stock      Stock
}

// Mix is what goes into a bath and what comes out. 10 mL of stock in a litre
// is 1 percent by volume of the stock, and only some 0.36 percent by weight of
// hydrogen chloride.
type Mix struct {
	AcidML          float64
	WaterLitres     float64
	SolutionLitres  float64
	MolPerLitre     float64
	PercentByWeight float64 // hydrogen chloride
	PHAbout         float64 // to a tenth, and no better than "about"
	Neutralise      Neutralise
}

// water20 is the density of fresh water at 20 degrees Celsius, grams per
// millilitre.
const water20 = 0.9982

// Mix works a bath out. Volumes are taken to add up. Refused: a volume that
// is not more than 0, more than 500 mL of stock per litre (that is no wash),
// and a stock outside the table of [NewStock].
func (b Bath) Mix() (Mix, error) {
	err := cmp.Or(
		above("litres", b.Litres, mostLitres),
		above("ml-per-litre", b.MLPerLitre, 500),
		b.Stock.check(),
	)
	if err != nil {
		return Mix{}, err
	}
	m := Mix{AcidML: b.Litres * b.MLPerLitre}
	acid := m.AcidML / 1000
	m.WaterLitres, m.SolutionLitres = b.Litres, b.Litres+acid
	if b.MadeUp {
		m.WaterLitres, m.SolutionLitres = b.Litres-acid, b.Litres
	}
	m.MolPerLitre = acid * b.Stock.MolPerLitre() / m.SolutionLitres
	m.PercentByWeight = 100 * acid * b.Stock.GramsPerLitre() /
		(1000*m.WaterLitres*water20 + m.AcidML*b.Stock.GramsPerML)
	m.PHAbout = math.Round(10*davies(m.MolPerLitre)) / 10
	m.Neutralise = neutralise(acid * b.Stock.MolPerLitre())
	return m, nil
}

// davies is the pH of a strong acid, its activity after Davies 1962 at 25
// degrees Celsius, with moles per litre for ionic strength.
func davies(molPerLitre float64) float64 {
	root := math.Sqrt(molPerLitre)
	activity := -0.5092 * (root/(1+root) - 0.3*molPerLitre)
	return -math.Log10(molPerLitre) - activity
}

// Session asks for the wash of one change session.
type Session struct {
	Emptied    int     // tanks emptied by the moves
	TankLitres float64 // solution per emptied tank
	BinLitres  float64 // solution in the gear bin, once a session
	MLPerLitre float64 // stock per litre of finished solution
	Stock      Stock
}

// SessionMix is the whole of it and its parts, all made up to their volume.
type SessionMix struct {
	Total   Mix // bin and all tanks
	PerTank Mix
	Bin     Mix
}

// Mix works a session's wash out. A session that empties nothing needs no
// wash, and a part of 0 litres comes out as zeros.
func (s Session) Mix() (SessionMix, error) {
	if err := s.check(); err != nil || s.Emptied == 0 {
		return SessionMix{}, err
	}
	var out SessionMix
	parts := []struct {
		mix    *Mix
		litres float64
	}{
		{&out.Total, s.BinLitres + float64(s.Emptied)*s.TankLitres},
		{&out.PerTank, s.TankLitres},
		{&out.Bin, s.BinLitres},
	}
	for _, p := range parts {
		if p.litres == 0 {
			continue
		}
		mix, err := Bath{Litres: p.litres, MLPerLitre: s.MLPerLitre, MadeUp: true, Stock: s.Stock}.Mix()
		if err != nil {
			return SessionMix{}, err
		}
		*p.mix = mix
	}
	return out, nil
}

func (s Session) check() error {
	return cmp.Or(
		between("emptied", float64(s.Emptied), 0, 1000),
		between("tank-litres", s.TankLitres, 0, 1e3),
		between("bin-litres", s.BinLitres, 0, 1e4),
		above("ml-per-litre", s.MLPerLitre, 500),
		s.Stock.check(),
	)
}
