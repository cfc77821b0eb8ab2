package wash

import "cmp"

// Masses of a mole in grams, and the litres a mole of gas takes at 25 degrees
// Celsius and one atmosphere.
const (
	molBicarbonate = 84.007
	molCarbonate   = 105.988
	molDecahydrate = 286.14
	molLime        = 100.087
	molGasLitres   = 24.465
)

// Neutralise is what an amount of hydrochloric acid needs. The first three are
// each enough alone. They are upper limits: a used bath has spent acid on
// shell and film, so add in portions and test.
//
//	HCl + NaHCO3 -> NaCl + H2O + CO2
//	2 HCl + Na2CO3 -> 2 NaCl + H2O + CO2
type Neutralise struct {
	BicarbonateG float64 // sodium bicarbonate (baking soda)
	CarbonateG   float64 // sodium carbonate, without water (soda ash)
	DecahydrateG float64 // sodium carbonate with its ten waters (washing soda crystals)
	CO2Litres    float64 // gas given off by the bicarbonate, at 25 degrees: ventilate
	LimeG        float64 // calcium carbonate the acid can still dissolve
}

// Spill is what neutralises so many millilitres of undiluted stock.
func Spill(ml float64, stock Stock) (Neutralise, error) {
	if err := cmp.Or(above("ml", ml, 1000*mostLitres), stock.check()); err != nil {
		return Neutralise{}, err
	}
	return neutralise(ml / 1000 * stock.MolPerLitre()), nil
}

func neutralise(mol float64) Neutralise {
	return Neutralise{
		BicarbonateG: mol * molBicarbonate,
		CarbonateG:   mol / 2 * molCarbonate,
		DecahydrateG: mol / 2 * molDecahydrate,
		CO2Litres:    mol * molGasLitres,
		LimeG:        mol / 2 * molLime,
	}
}
