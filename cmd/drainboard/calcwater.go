package main

import (
	"drainboard/model/water"

	"github.com/spf13/pflag"
)

const eos80 = "sea water: Millero and Poisson 1981; Millero, Perron and Desnoyers 1973 (EOS-80)"

func sumBlend() sum {
	var b struct{ litres, have, want, with number }
	return sum{
		name: "blend", short: "Other water that brings a tank to a temperature",
		example: "--litres 120 --have 31 --want 28 --with 22", needs: []string{"litres", "have", "want", "with"},
		flags: func(f *pflag.FlagSet) {
			f.Var(&b.litres, "litres", "litres in the tank")
			f.Var(&b.have, "have", "its temperature, °C")
			f.Var(&b.want, "want", "the temperature wanted, °C")
			f.Var(&b.with, "with", "temperature of the other water, °C")
		},
		answer: func() (answer, error) {
			p, err := water.Blend{Litres: b.litres.x(), Have: b.have.x(), Want: b.want.x(), With: b.with.x()}.ByVolume()
			return answer{
				figures: []fig{
					{"swap_litres", "take out and replace", p.Swap, "L", 1},
					{"add_litres", "or top up, taking nothing out", p.Add, "L", 1},
					{"reached", "then the tank has", p.Reached, "degrees C", 1},
				},
				remarks: []string{"Pour slowly and read again: larvae feel the step, not the sum."},
				sources: []string{"heat balance by volume; of one salinity it is right to 0.05 °C"},
			}, err
		},
	}
}

func sumCool() sum {
	var c struct{ start, room, want number }
	var read readings
	return sum{
		name: "cool", short: "How long a tank takes to come to a temperature by itself",
		example: "--start 31 --room 25 --want 28 --read 30:30.2", needs: []string{"start", "room", "want", "read"},
		flags: func(f *pflag.FlagSet) {
			f.Var(&c.start, "start", "temperature at minute 0, °C")
			f.Var(&c.room, "room", "temperature of the room's air, °C")
			f.Var(&c.want, "want", "temperature waited for, °C")
			f.Var(&read, "read", "a later reading of the tank, as in 30:30.2; may be given again")
		},
		answer: func() (answer, error) {
			w, err := water.Cooling{Start: c.start.x(), Room: c.room.x(), Want: c.want.x(), Readings: read}.Wait()
			return answer{
				figures: []fig{
					{"minutes", "minutes from the start", w.Minutes, "min", 0},
					{"per_hour", "rate of Newton's law", 60 * w.Rate, "per hour", 4},
					{"", "so in an hour, at the start", w.PerHour, "degrees C", 2},
				},
				remarks: []string{"The air is taken as steady, the lid as it was; read again on the way."},
				sources: []string{"Newton's law of cooling, its rate from the tank's own readings"},
			}, err
		},
	}
}

func sumOxygen() sum {
	var celsius, salinity, mgL number
	measured := false
	return sum{
		name: "oxygen", short: "Oxygen that water holds when full, and a reading in percent of it",
		example: "--celsius 27 --salinity 35 --mg-l 6.1", needs: []string{"celsius", "salinity"},
		flags: func(f *pflag.FlagSet) {
			f.Var(&celsius, "celsius", "temperature, °C")
			f.Var(&salinity, "salinity", "salinity")
			f.Var(&given{&mgL, &measured}, "mg-l", "oxygen measured, mg/L")
		},
		answer: func() (answer, error) {
			full, err := water.FullOxygen(celsius.x(), salinity.x())
			if err != nil {
				return answer{}, err
			}
			a := answer{
				figures: []fig{{"full_mg_l", "full at one atmosphere", full, "mg/L", 2}},
				sources: []string{"Benson and Krause 1984"},
			}
			if !measured {
				a.figures = append(a.figures, fig{"percent", "of that", (*float64)(nil), "%", 0})
				return a, nil
			}
			percent, err := water.OxygenPercent(mgL.x(), celsius.x(), salinity.x())
			a.figures = append(a.figures, fig{"percent", "of that", percent, "%", 1})
			return a, err
		},
	}
}

func sumAmmonia() sum {
	var a struct{ celsius, salinity, ph, total number }
	return sum{
		name: "ammonia", short: "The poisonous part of total ammonia",
		example: "--celsius 27 --salinity 35 --ph 8.1 --total-mg-l 0.2", needs: []string{"celsius", "salinity", "ph", "total-mg-l"},
		flags: func(f *pflag.FlagSet) {
			f.Var(&a.celsius, "celsius", "temperature, °C")
			f.Var(&a.salinity, "salinity", "salinity")
			f.Var(&a.ph, "ph", "pH, by a meter set with NBS (NIST) buffers")
			f.Var(&a.total, "total-mg-l", "total ammonia measured, mg/L")
		},
		answer: func() (answer, error) {
			u, err := water.Ammonia{
				Celsius: a.celsius.x(), Salinity: a.salinity.x(), PH: a.ph.x(), TotalMgL: a.total.x(),
			}.Unionised()
			source := "US EPA 1989 (440/5-88-004), sea water, NBS pH"
			if u.Scheme == water.EmersonFresh {
				source = "Emerson, Russo, Lund and Thurston 1975, fresh water, NBS pH"
			}
			return answer{
				figures: []fig{
					{"unionised_percent", "un-ionised", u.Percent, "%", 2},
					{"unionised_mg_l", "un-ionised", u.MgL, "mg/L", 4},
				},
				remarks: []string{"In the terms of the total: as nitrogen where the kit reads it as nitrogen (1 mg N is 1.216 mg NH3)."},
				sources: []string{source},
			}, err
		},
	}
}

func sumDensity() sum {
	var celsius, salinity number
	return sum{
		name: "density", short: "Density and heat capacity of sea water",
		example: "--celsius 25 --salinity 35", needs: []string{"celsius", "salinity"},
		flags: func(f *pflag.FlagSet) {
			f.Var(&celsius, "celsius", "temperature, °C")
			f.Var(&salinity, "salinity", "salinity")
		},
		answer: func() (answer, error) {
			density, err := water.Density(celsius.x(), salinity.x())
			if err != nil {
				return answer{}, err
			}
			heat, err := water.HeatCapacity(celsius.x(), salinity.x())
			return answer{
				figures: []fig{
					{"kg_per_m3", "density", density, "kg/m3", 3},
					{"heat_j_per_kg_k", "heat capacity", heat, "J/(kg K)", 1},
				},
				sources: []string{eos80},
			}, err
		},
	}
}
