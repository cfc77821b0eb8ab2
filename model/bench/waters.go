package bench

import (
	"drainboard/model/water"
)

// celsius and salinity are asked by several sums.
func celsius() Input {
	return Input{Name: "celsius", Label: "temperature", What: "temperature of the water", Unit: "degrees C", Need: true, Example: "27"}
}

func salinity() Input {
	return Input{Name: "salinity", Label: "salinity", What: "practical salinity, about grams per kilogram", Need: true, Example: "35"}
}

func blend() Sum {
	return Sum{
		Name: "blend", Short: "Other water that brings a tank to a temperature",
		Inputs: []Input{
			{Name: "litres", Label: "tank", What: "litres in the tank", Unit: "L", Need: true, Example: "120"},
			{Name: "have", Label: "it has", What: "its temperature now", Unit: "degrees C", Need: true, Example: "31"},
			{Name: "want", Label: "wanted", What: "the temperature wanted", Unit: "degrees C", Need: true, Example: "28"},
			{Name: "with", Label: "other water", What: "temperature of the other water", Unit: "degrees C", Need: true, Example: "22"},
		},
		Sources: []string{"heat balance by volume; of one salinity it is right to 0.05 °C"},
		work: func(v values) (Answer, error) {
			p, err := water.Blend{
				Litres: v.number("litres"), Have: v.number("have"), Want: v.number("want"), With: v.number("with"),
			}.ByVolume()
			return Answer{
				Figures: []Figure{
					{"swap_litres", "take out and replace", p.Swap, "L", 1},
					{"add_litres", "or top up, taking nothing out", p.Add, "L", 1},
					{"reached", "then the tank has", p.Reached, "degrees C", 1},
				},
				Remarks: []string{"Pour slowly and read again: larvae feel the step, not the sum."},
			}, err
		},
	}
}

func cool() Sum {
	return Sum{
		Name: "cool", Short: "How long a tank takes to come to a temperature by itself",
		Inputs: []Input{
			{Name: "start", Label: "at the start", What: "temperature at minute 0", Unit: "degrees C", Need: true, Example: "31"},
			{Name: "room", Label: "the room's air", What: "temperature of the air, taken as steady", Unit: "degrees C", Need: true, Example: "25"},
			{Name: "want", Label: "waited for", What: "temperature waited for", Unit: "degrees C", Need: true, Example: "28"},
			{Name: "read", Label: "readings", What: "later readings of the tank as minutes:temperature, 30:30.2 60:29.6", Kind: Readings, Need: true, Example: "30:30.2"},
		},
		Sources: []string{"Newton's law of cooling, its rate from the tank's own readings"},
		work: func(v values) (Answer, error) {
			w, err := water.Cooling{
				Start: v.number("start"), Room: v.number("room"), Want: v.number("want"), Readings: v.readings("read"),
			}.Wait()
			return Answer{
				Figures: []Figure{
					{"minutes", "minutes from the start", w.Minutes, "min", 0},
					{"per_hour", "rate of Newton's law", 60 * w.Rate, "per hour", 4},
					{"", "so in an hour, at the start", w.PerHour, "degrees C", 2},
				},
				Remarks: []string{"The air is taken as steady, the lid as it was; read again on the way."},
			}, err
		},
	}
}

func oxygen() Sum {
	return Sum{
		Name: "oxygen", Short: "Oxygen that water holds when full, and a reading in percent of it",
		Inputs: []Input{
			celsius(), salinity(),
			{Name: "mg-l", Label: "oxygen", What: "oxygen measured; may stay empty", Unit: "mg/L", Example: "6.1"},
		},
		Sources: []string{"Benson and Krause 1984"},
		work: func(v values) (Answer, error) {
			full, err := water.FullOxygen(v.number("celsius"), v.number("salinity"))
			if err != nil {
				return Answer{}, err
			}
			percent := Figure{"percent", "of that", nil, "%", 1}
			if v.has("mg-l") {
				if percent.Value, err = water.OxygenPercent(v.number("mg-l"), v.number("celsius"), v.number("salinity")); err != nil {
					return Answer{}, err
				}
			}
			return Answer{Figures: []Figure{{"full_mg_l", "full at one atmosphere", full, "mg/L", 2}, percent}}, nil
		},
	}
}

func ammonia() Sum {
	sea, fresh := "US EPA 1989 (440/5-88-004), sea water, NBS pH", "Emerson, Russo, Lund and Thurston 1975, fresh water, NBS pH"
	return Sum{
		Name: "ammonia", Short: "The poisonous part of total ammonia",
		Inputs: []Input{
			celsius(), salinity(),
			{Name: "ph", Label: "pH", What: "by a meter set with NBS (NIST) buffers", Need: true, Example: "8.1"},
			{Name: "total-mg-l", Label: "total ammonia", What: "total ammonia measured", Unit: "mg/L", Need: true, Example: "0.2"},
		},
		Sources: []string{sea, fresh},
		work: func(v values) (Answer, error) {
			u, err := water.Ammonia{
				Celsius: v.number("celsius"), Salinity: v.number("salinity"), PH: v.number("ph"), TotalMgL: v.number("total-mg-l"),
			}.Unionised()
			source := sea
			if u.Scheme == water.EmersonFresh {
				source = fresh
			}
			return Answer{
				Figures: []Figure{
					{"unionised_percent", "un-ionised", u.Percent, "%", 2},
					{"unionised_mg_l", "un-ionised", u.MgL, "mg/L", 4},
				},
				Remarks: []string{"In the terms of the total: as nitrogen where the kit reads it as nitrogen (1 mg N is 1.216 mg NH3)."},
				Sources: []string{source},
			}, err
		},
	}
}

func density() Sum {
	return Sum{
		Name: "density", Short: "Density and heat capacity of sea water",
		Inputs:  []Input{celsius(), salinity()},
		Sources: []string{"sea water: Millero and Poisson 1981; Millero, Perron and Desnoyers 1973 (EOS-80)"},
		work: func(v values) (Answer, error) {
			weight, err := water.Density(v.number("celsius"), v.number("salinity"))
			if err != nil {
				return Answer{}, err
			}
			heat, err := water.HeatCapacity(v.number("celsius"), v.number("salinity"))
			return Answer{Figures: []Figure{
				{"kg_per_m3", "density", weight, "kg/m3", 3},
				{"heat_j_per_kg_k", "heat capacity", heat, "J/(kg K)", 1},
			}}, err
		},
	}
}
