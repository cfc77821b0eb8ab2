package bench

import (
	"drainboard/model/growth"
	"drainboard/model/water"
)

func saltiness() Sum {
	return Sum{
		Name: "salinity", Short: "Fresh water or salts that bring sea water to a salinity",
		Inputs: []Input{
			{Name: "litres", Label: "sea water", What: "litres to be changed", Unit: "L", Need: true, Example: "1000"},
			{Name: "from", Label: "salinity now", What: "practical salinity it has", Need: true, Example: "36"},
			{Name: "to", Label: "wanted", What: "practical salinity wanted", Need: true, Example: "33"},
			{Name: "celsius", Label: "temperature", What: "temperature of the water", Unit: "degrees C", Default: "25", Example: "25"},
		},
		Sources: []string{"mass balance: the salt stays; density: Millero and Poisson 1981 (EOS-80)"},
		work: func(v values) (Answer, error) {
			c := water.Change{Litres: v.number("litres"), Celsius: v.number("celsius"), From: v.number("from"), To: v.number("to")}
			if c.To > c.From {
				kilograms, err := c.Strengthen()
				return Answer{
					Figures: []Figure{{"salts_kg", "dry sea salts", kilograms, "kg", 2}},
					Remarks: []string{"A bought mix holds water, so more of it is needed: go by its label, and measure."},
				}, err
			}
			fresh, err := c.Thin()
			return Answer{
				Figures: []Figure{
					{"fresh_litres", "fresh water to add", fresh.Litres, "L", 1},
					{"fresh_kg", "the same by weight", fresh.Kilograms, "kg", 1},
					{"by_volume_litres", "by volumes alone (short)", fresh.Shortcut, "L", 1},
				},
			}, err
		},
	}
}

func hydrometer() Sum {
	return Sum{
		Name: "hydrometer", Short: "Salinity from a hydrometer, by the temperatures it is marked with",
		Inputs: []Input{
			{Name: "gravity", Label: "reading", What: "specific gravity read, as in 1.0244", Need: true, Example: "1.0244"},
			celsius(),
		},
		Sources: []string{"density: Millero and Poisson 1981 (EOS-80); glass expands by 2.3e-5 per degree (from memory)"},
		work: func(v values) (Answer, error) {
			var a Answer
			for _, mark := range []struct {
				key  string
				mark water.Hydrometer
			}{
				{"salinity_60f_60f", water.Marked60F60F},
				{"salinity_25c_25c", water.Marked25C25C},
				{"salinity_25c_60f", water.Marked25C60F},
			} {
				s, err := mark.mark.Salinity(v.number("gravity"), v.number("celsius"))
				if err != nil {
					return Answer{}, err
				}
				a.Figures = append(a.Figures, Figure{mark.key, "marked " + string(mark.mark), s, "", 1})
			}
			a.Remarks = []string{"Take the line of the two temperatures marked on the stem: they differ by up to 2.6 in salinity."}
			return a, nil
		},
	}
}

func eyepiece() Sum {
	return Sum{
		Name: "eyepiece", Short: "Micrometres an eyepiece division spans, from a stage micrometer",
		Inputs: []Input{
			{Name: "stage-um", Label: "stage length", What: "length on the stage micrometer", Unit: "um", Need: true, Example: "1000"},
			{Name: "divisions", Label: "divisions", What: "eyepiece divisions it covered at this magnification", Need: true, Example: "40"},
		},
		Sources: []string{"microscopy practice: the true length over the divisions read"},
		work: func(v values) (Answer, error) {
			for _, name := range []string{"stage-um", "divisions"} {
				if x := v.number(name); !(x > 0 && x <= 1e6) {
					return Answer{}, Problem{Field: name, Problem: plain(x) + ": must be more than 0"}
				}
			}
			factor, err := growth.Calibrate(v.number("stage-um"), v.number("divisions"))
			return Answer{
				Figures: []Figure{{"um_per_division", "one division", factor, "um", 3}},
				Remarks: []string{
					"Keep it in room.toml, once for each magnification:",
					"[[house.eyepiece]]  name = \"4x\"  um_per_division = " + plain(factor),
				},
			}, err
		},
	}
}
