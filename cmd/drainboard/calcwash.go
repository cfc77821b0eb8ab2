package main

import (
	"drainboard/model/wash"

	"github.com/spf13/pflag"
)

func sumAcid() sum {
	var litres number
	perLitre, stock := number(10), number(31.45)
	madeUp := false
	return sum{
		name: "acid", short: "Acid and water for a wash, its strength, what neutralises it",
		example: "--litres 20", needs: []string{"litres"},
		flags: func(f *pflag.FlagSet) {
			f.Var(&litres, "litres", "litres of water the acid is added to; with --made-up, of finished solution")
			f.Var(&perLitre, "ml-per-litre", "mL of stock acid per litre")
			f.Var(&stock, "stock-percent", "HCl in the stock, % by weight, from the bottle's label")
			f.BoolVar(&madeUp, "made-up", false, "--litres is the finished solution")
		},
		answer: func() (answer, error) {
			bottle, err := wash.NewStock(stock.x())
			if err != nil {
				return answer{}, err
			}
			m, err := wash.Bath{Litres: litres.x(), MLPerLitre: perLitre.x(), MadeUp: madeUp, Stock: bottle}.Mix()
			return acidAnswer(m, bottle), err
		},
	}
}

func acidAnswer(m wash.Mix, bottle wash.Stock) answer {
	return answer{
		figures: []fig{
			{"acid_ml", "acid", m.AcidML, "mL", 1},
			{"water_litres", "water", m.WaterLitres, "L", 3},
			{"mol_per_litre", "strength", m.MolPerLitre, "mol/L", 4},
			{"percent_by_weight", "HCl by weight", m.PercentByWeight, "%", 3},
			{"ph_about", "pH, about", m.PHAbout, "", 1},
			{"bicarbonate_g", "sodium bicarbonate to neutralise", m.Neutralise.BicarbonateG, "g", 1},
		},
		remarks: []string{
			"Reckoned with stock of " + plain(bottle.Percent) + " % by weight; look at the label of this bottle.",
			"Neutralise in portions and test: a used bath needs less.",
		},
		sources:  []string{"density of the stock: CRC Handbook of Chemistry and Physics, 20 °C", "pH: activity after Davies 1962"},
		cautions: wash.AcidCautions(),
	}
}

func sumBleach() sum {
	var litres, ppm, stock number
	return sum{
		name: "bleach", short: "Bleach for a volume of water, and what takes the chlorine away",
		example: "--litres 400 --ppm 200 --stock-percent 12.5", needs: []string{"litres", "ppm", "stock-percent"},
		flags: func(f *pflag.FlagSet) {
			f.Var(&litres, "litres", "litres of water to treat")
			f.Var(&ppm, "ppm", "available chlorine wanted, mg/L")
			f.Var(&stock, "stock-percent", "the bleach's trade percent: grams of available chlorine in 100 mL")
		},
		answer: func() (answer, error) {
			bottle, err := wash.TradePercent(stock.x())
			if err != nil {
				return answer{}, err
			}
			b, err := wash.Dose{Litres: litres.x(), PPM: ppm.x(), Stock: bottle}.Bleach()
			return bleachAnswer(b), err
		},
	}
}

func bleachAnswer(b wash.Bleach) answer {
	return answer{
		figures: []fig{
			{"bleach_ml", "bleach", b.BleachML, "mL", 1},
			{"thiosulfate_g", "sodium thiosulfate crystals (pentahydrate)", b.ThiosulfateG, "g", 1},
		},
		remarks: []string{
			"The percent is taken as trade percent (by volume). A label in percent by weight holds about a tenth more.",
			"The thiosulfate is for all the chlorine put in; dose against what a test shows, then test again.",
		},
		sources:  []string{"2 S2O3 + Cl2 -> S4O6 + 2 Cl, which is enough at any pH"},
		cautions: wash.BleachCautions(),
	}
}
