package wash

import "cmp"

// Masses of a mole in grams.
const (
	molChlorine     = 70.906
	molHypochlorite = 74.442
	molThiosulfate  = 158.11
	molPentahydrate = 248.18
)

// Hypochlorite is liquid bleach, held as grams of available chlorine per
// litre, the one figure all labels can be turned into. Make it with
// [TradePercent] or [WeightPercent]: a label's "12.5 %" may mean either, and
// they differ by a tenth. It weakens in store, so an old bottle holds less
// than its label says.
type Hypochlorite struct{ GramsPerLitre float64 }

// strongestBleach is above any liquid bleach on sale; granules are stronger
// but are not measured in millilitres.
const strongestBleach = 25.0

// TradePercent is bleach labelled in trade percent: grams of available
// chlorine in 100 mL.
func TradePercent(percent float64) (Hypochlorite, error) {
	if err := bleachPercent(percent); err != nil {
		return Hypochlorite{}, err
	}
	return Hypochlorite{10 * percent}, nil
}

// WeightPercent is bleach labelled in percent by weight of sodium
// hypochlorite. gravity is its specific gravity, from the same label.
func WeightPercent(percent, gravity float64) (Hypochlorite, error) {
	if err := cmp.Or(bleachPercent(percent), between("gravity", gravity, 1, 1.4)); err != nil {
		return Hypochlorite{}, err
	}
	return Hypochlorite{10 * percent * gravity * molChlorine / molHypochlorite}, nil
}

func bleachPercent(percent float64) error {
	if percent > 0 && percent <= strongestBleach {
		return nil
	}
	return refuse("stock-percent", percent, "must be more than 0 and at most "+plain(strongestBleach)+
		", from the label of liquid bleach (dose granules by their own label)")
}

// TradePercent is the strength in grams of available chlorine per 100 mL.
func (h Hypochlorite) TradePercent() float64 { return h.GramsPerLitre / 10 }

// Dose asks for a volume of water with so much chlorine in it.
type Dose struct {
	Litres float64 // of finished solution
	PPM    float64 // available chlorine wanted, mg/L
	Stock  Hypochlorite
}

// Bleach is what the dose takes and what takes the chlorine away again.
type Bleach struct {
	BleachML     float64
	ChlorineG    float64 // available chlorine in the volume
	ThiosulfateG float64 // crystals (pentahydrate) to neutralise all of it, by Tetrathionate
	AnhydrousG   float64 // the same as thiosulfate without water
}

// Bleach works a dose out. The thiosulfate is for all the chlorine put in;
// less is left after use, so dose against what a test shows. Older hatchery
// practice takes 7.4 g per gram of chlorine (Piper and others 1982, Fish
// Hatchery Management): when in doubt add that and test again.
//
// Refused: a volume or a strength that is not more than 0, more than 10 000
// ppm, and more than the stock itself holds.
func (d Dose) Bleach() (Bleach, error) {
	err := cmp.Or(
		above("litres", d.Litres, mostLitres),
		above("ppm", d.PPM, 1e4),
		above("stock-grams-per-litre", d.Stock.GramsPerLitre, 400),
	)
	if err != nil {
		return Bleach{}, err
	}
	if d.PPM > 1000*d.Stock.GramsPerLitre {
		return Bleach{}, refuse("ppm", d.PPM, "is more than the bleach itself holds; must be at most "+plain(1000*d.Stock.GramsPerLitre))
	}
	grams := d.Litres * d.PPM / 1000
	return Bleach{
		BleachML:     1000 * grams / d.Stock.GramsPerLitre,
		ChlorineG:    grams,
		ThiosulfateG: grams * Tetrathionate.GramsPerGram(),
		AnhydrousG:   grams * float64(Tetrathionate) * molThiosulfate / molChlorine,
	}, nil
}

// Reaction is a way thiosulfate takes up chlorine, as moles of thiosulfate per
// mole of chlorine.
type Reaction float64

// The reactions. Which one runs depends on pH and on how much is there;
// the first needs the most and so is enough in every case.
const (
	Tetrathionate Reaction = 2    // 2 S2O3 + Cl2 -> S4O6 + 2 Cl
	Sulfur        Reaction = 1    // S2O3 + Cl2 + H2O -> S + SO4 + 2 HCl
	Sulfate       Reaction = 0.25 // S2O3 + 4 Cl2 + 5 H2O -> 2 SO4 + 8 Cl + 10 H
)

// GramsPerGram is sodium thiosulfate pentahydrate per gram of chlorine.
func (r Reaction) GramsPerGram() float64 { return float64(r) * molPentahydrate / molChlorine }
