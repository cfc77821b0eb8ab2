package wash

import (
	"testing"

	"pgregory.net/rapid"
)

// What 10 mL of stock (a litre of the house bath, made up) needs, by degrees
// Baumé; worked out apart from this code.
func TestNeutralise(t *testing.T) {
	for _, c := range []struct{ degrees, bicarbonate, carbonate, decahydrate, gas, lime float64 }{
		{18, 7.337, 4.629, 12.50, 2.14, 4.37},
		{20, 8.397, 5.297, 14.30, 2.45, 5.00},
		{22, 9.554, 6.027, 16.27, 2.78, 5.69},
	} {
		got := must(Spill(10, must(StockFromBaume(c.degrees))))
		near(t, "bicarbonate", got.BicarbonateG, c.bicarbonate, 6e-4)
		near(t, "carbonate", got.CarbonateG, c.carbonate, 6e-4)
		near(t, "decahydrate", got.DecahydrateG, c.decahydrate, 6e-3)
		near(t, "gas", got.CO2Litres, c.gas, 6e-3)
		near(t, "lime", got.LimeG, c.lime, 6e-3)
	}
}

func TestNeutraliseABathAndASpill(t *testing.T) {
	stock := must(StockFromBaume(20))
	bath := must(Bath{Litres: 100, MLPerLitre: 10, MadeUp: true, Stock: stock}.Mix()).Neutralise
	near(t, "bicarbonate for 100 L", bath.BicarbonateG, 839.7, 0.06)
	near(t, "carbonate for 100 L", bath.CarbonateG, 529.7, 0.06)
	near(t, "gas from 100 L", bath.CO2Litres, 245, 0.6)
	spill := must(Spill(1000, stock))
	near(t, "bicarbonate for a litre spilled", spill.BicarbonateG, 840, 0.6)
	near(t, "carbonate for a litre spilled", spill.CarbonateG, 530, 0.6)
	if bath != spill {
		t.Errorf("the same acid: bath %+v, spill %+v", bath, spill)
	}
}

func TestSpillGrowsInStep(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		stock := must(NewStock(rapid.Float64Range(0.5, 40).Draw(t, "percent")))
		ml := rapid.Float64Range(0.1, 1e5).Draw(t, "ml")
		one, two := must(Spill(ml, stock)), must(Spill(2*ml, stock))
		near(t, "twice the spill", two.BicarbonateG/one.BicarbonateG, 2, 1e-12)
		near(t, "gas by moles", one.CO2Litres/24.465, one.BicarbonateG/84.007, 1e-9*one.CO2Litres)
	})
}

func TestSpillRefuses(t *testing.T) {
	stock := must(NewStock(31.45))
	for _, x := range notPositive() {
		_, err := Spill(x, stock)
		refused(t, err, "ml", "more than 0")
	}
	_, err := Spill(10, Stock{})
	refused(t, err, "stock-percent", "between 0.5 and 40")
}
