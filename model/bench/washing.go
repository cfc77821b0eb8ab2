package bench

import (
	"strconv"

	"drainboard/model/wash"
)

func plain(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

func acid() Sum {
	return Sum{
		Name: "acid", Short: "Acid and water for a wash, its strength, what neutralises it",
		Inputs: []Input{
			{Name: "litres", Label: "water", What: "litres of water before the acid; with made up, of the solution", Unit: "L", Need: true, Example: "20"},
			{Name: "ml-per-litre", Label: "acid per litre", What: "mL of stock acid per litre", Unit: "mL", Default: "10", Example: "10"},
			{Name: "stock-percent", Label: "stock, HCl", What: "% by weight, from the bottle's label", Unit: "%", Default: "31.45", Example: "31.45"},
			{Name: "made-up", Label: "made up", What: "yes where the litres are the finished solution", Kind: Flag, Default: "no", Example: "yes"},
		},
		Sources:  []string{"stock density: CRC Handbook, 20 °C", "pH: after Davies 1962"},
		Cautions: wash.AcidCautions(),
		work: func(v values) (Answer, error) {
			bottle, err := wash.NewStock(v.number("stock-percent"))
			if err != nil {
				return Answer{}, err
			}
			m, err := wash.Bath{
				Litres: v.number("litres"), MLPerLitre: v.number("ml-per-litre"), MadeUp: v.flag("made-up"), Stock: bottle,
			}.Mix()
			return Answer{
				Figures: []Figure{
					{"acid_ml", "acid", m.AcidML, "mL", 1},
					{"water_litres", "water", m.WaterLitres, "L", 3},
					{"mol_per_litre", "strength", m.MolPerLitre, "mol/L", 4},
					{"percent_by_weight", "HCl by weight", m.PercentByWeight, "%", 3},
					{"ph_about", "pH, about", m.PHAbout, "", 1},
					{"bicarbonate_g", "sodium bicarbonate to neutralise", m.Neutralise.BicarbonateG, "g", 1},
				},
				Remarks: []string{
					"Reckoned with stock of " + plain(bottle.Percent) + " % by weight; look at the label of this bottle.",
					"Neutralise in portions and test: a used bath needs less.",
				},
			}, err
		},
	}
}

func bleach() Sum {
	return Sum{
		Name: "bleach", Short: "Bleach for a volume of water, and what takes the chlorine away",
		Inputs: []Input{
			{Name: "litres", Label: "water", What: "litres of water to treat", Unit: "L", Need: true, Example: "400"},
			{Name: "ppm", Label: "chlorine wanted", What: "available chlorine, mg/L", Unit: "mg/L", Need: true, Example: "200"},
			{Name: "stock-percent", Label: "bleach", What: "trade percent from the label: grams of available chlorine in 100 mL", Unit: "%", Need: true, Example: "12.5"},
		},
		Sources:  []string{"2 S2O3 + Cl2 -> S4O6 + 2 Cl, which is enough at any pH"},
		Cautions: wash.BleachCautions(),
		work: func(v values) (Answer, error) {
			bottle, err := wash.TradePercent(v.number("stock-percent"))
			if err != nil {
				return Answer{}, err
			}
			b, err := wash.Dose{Litres: v.number("litres"), PPM: v.number("ppm"), Stock: bottle}.Bleach()
			return Answer{
				Figures: []Figure{
					{"bleach_ml", "bleach", b.BleachML, "mL", 1},
					{"thiosulfate_g", "sodium thiosulfate crystals (pentahydrate)", b.ThiosulfateG, "g", 1},
				},
				Remarks: []string{
					"The percent is taken as trade percent (by volume). A label in percent by weight holds about a tenth more.",
					"The thiosulfate is for all the chlorine put in; dose against what a test shows, then test again.",
				},
			}, err
		},
	}
}
