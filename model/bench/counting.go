package bench

import (
	"fmt"

	"drainboard/model/count"
)

// garwood is where the limits of a count come from.
const garwood = "limits: 95 %, exact Poisson, Garwood 1936"

func larvae() Sum {
	return Sum{
		Name: "count", Short: "Larvae in a holding volume from subsamples",
		Inputs: []Input{
			{Name: "live", Label: "live", What: "live larvae, one number a subsample, as in 38 42 50", Kind: Counts, Need: true, Example: "38,42,50"},
			{Name: "sample-ml", Label: "subsample", What: "mL of one subsample", Unit: "mL", Need: true, Example: "0.05"},
			{Name: "holding-ml", Label: "taken from", What: "mL the subsamples were taken from", Unit: "mL", Need: true, Example: "70"},
			{Name: "dead", Label: "empty shells", What: "empty shells, one number a subsample; may stay empty", Kind: Counts, Example: "1,0,2"},
			{Name: "tank-litres", Label: "into a tank of", What: "litres of the tank the larvae go into; may stay empty", Unit: "L", Example: "10"},
		},
		Sources: []string{garwood, "mixing: dispersion test against chi-square, 5 %"},
		work: func(v values) (Answer, error) {
			s := count.Sample{SampleML: v.number("sample-ml"), HoldingML: v.number("holding-ml")}
			var err error
			if s.Live, err = count.Whole("live", v.list("live")); err != nil {
				return Answer{}, err
			}
			if v.has("dead") {
				if s.Dead, err = count.Whole("dead", v.list("dead")); err != nil {
					return Answer{}, err
				}
			}
			total, err := count.Total(s)
			if err != nil {
				return Answer{}, err
			}
			a := larvaeAnswer(total)
			if v.has("tank-litres") {
				litres := v.number("tank-litres")
				per, err := count.PerLitre(total.Total, litres)
				a.Figures = append(a.Figures, Figure{"per_litre", "in a tank of " + plain(litres) + " L", known(per.Value), "larvae per litre", 1})
				return a, err
			}
			return a, nil
		},
	}
}

func larvaeAnswer(n count.Larvae) Answer {
	a := Answer{Figures: []Figure{
		{"per_ml", "in the holding volume", known(n.PerML.Value), "larvae per mL", 2},
		{"larvae", "larvae", known(n.Total.Value), "", 0},
		{"larvae_low", "at least", known(n.Total.Low), "", 0},
		{"larvae_high", "at most", known(n.Total.High), "", 0},
		{"dead_percent", "dead", known(n.DeadPercent.Value), "%", 1},
		{"mixing", "mixing", n.Mixing.String(), "", 0},
	}}
	if n.Mixing.Uneven {
		a.Remarks = append(a.Remarks, "The subsamples differ more than chance lets them: the limits are too narrow. Mix and count again.")
	}
	if n.Trend.Falling {
		a.Remarks = append(a.Remarks, "The counts fall from first to last: larvae settle while sampling. Stir between subsamples.")
	}
	return a
}

func cells() Sum {
	return Sum{
		Name: "cells", Short: "Microalgae cells per mL from a counting chamber",
		Inputs: []Input{
			{Name: "counts", Label: "counts", What: "cells, one number a field, as in 46 50", Kind: Counts, Need: true, Example: "46,50"},
			{Name: "chamber-ml", Label: "chamber", What: "mL that one count covers, or a chamber's name as neubauer-all", Unit: "mL", Kind: Volume, Need: true, Example: "0.0009"},
			{Name: "dilution", Label: "diluted", What: "times the sample was diluted; 10 is one part in ten", Unit: "times", Default: "1", Example: "10"},
		},
		Sources: []string{garwood},
		work: func(v values) (Answer, error) {
			whole, err := count.Whole("counts", v.list("counts"))
			if err != nil {
				return Answer{}, err
			}
			c, err := count.CellsPerML(whole, v.number("chamber-ml"), v.number("dilution"))
			if err != nil {
				return Answer{}, err
			}
			return Answer{
				Figures: []Figure{
					{"cells_per_ml", "cells", known(c.PerML.Value), "per mL", 0},
					{"low", "at least", known(c.PerML.Low), "per mL", 0},
					{"high", "at most", known(c.PerML.High), "per mL", 0},
				},
				Remarks: append([]string{count.BorderRule}, CellRemarks(c, v.number("chamber-ml"), v.number("dilution"))...),
			}, nil
		},
	}
}

// CellRemarks says what is wrong with a cell count that is taken all the same:
// fields that differ more than chance lets them, and a chamber filled thinner or
// denser than it counts well. There are none for a good count.
func CellRemarks(c count.Cells, chamberML, dilution float64) []string {
	var remarks []string
	if c.Mixing.Uneven {
		remarks = append(remarks, "The fields differ more than chance lets them: clumps, or an uneven fill. Load and count again.")
	}
	low, high := bestRange(chamberML)
	inside := c.PerML.Value.X / dilution
	switch {
	case high == 0 || inside == 0:
	case inside > high:
		remarks = append(remarks, fmt.Sprintf("%.0f cells per mL in the chamber: above %.0f cells are missed; dilute more.", inside, high))
	case inside < low:
		remarks = append(remarks, fmt.Sprintf("%.0f cells per mL in the chamber: it counts best from %.0f on; dilute less or count more fields.", inside, low))
	}
	return remarks
}

// bestRange is the cells per mL that a chamber counts best, zeros where no source
// says.
func bestRange(ml float64) (low, high float64) {
	for _, c := range count.Chambers() {
		if d := c.ML - ml; d*d < 1e-18*ml*ml {
			return c.BestLow, c.BestHigh
		}
	}
	return 0, 0
}
