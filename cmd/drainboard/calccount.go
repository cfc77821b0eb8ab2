package main

import (
	"drainboard/model/count"

	"github.com/spf13/pflag"
)

// garwood is where the limits of a count come from.
const garwood = "limits: 95 %, exact Poisson, Garwood 1936"

func sumCount() sum {
	var live, dead numbers
	var sample, holding, tank number
	inTank := false
	return sum{
		name: "count", short: "Larvae in a holding volume from subsamples",
		example: "--live 38,42,50 --sample-ml 0.05 --holding-ml 70", needs: []string{"live", "sample-ml", "holding-ml"},
		flags: func(f *pflag.FlagSet) {
			f.Var(&live, "live", "live larvae, one number a subsample, as in 38,42,50")
			f.Var(&sample, "sample-ml", "mL of one subsample")
			f.Var(&holding, "holding-ml", "mL the subsamples were taken from")
			f.Var(&dead, "dead", "empty shells, one number a subsample")
			f.Var(&given{&tank, &inTank}, "tank-litres", "litres of the tank the larvae go into")
		},
		answer: func() (answer, error) {
			s := count.Sample{SampleML: sample.x(), HoldingML: holding.x()}
			var err error
			if s.Live, err = count.Whole("live", live); err != nil {
				return answer{}, err
			}
			if len(dead) > 0 {
				if s.Dead, err = count.Whole("dead", dead); err != nil {
					return answer{}, err
				}
			}
			total, err := count.Total(s)
			if err != nil {
				return answer{}, err
			}
			a := countAnswer(total)
			if inTank {
				per, err := count.PerLitre(total.Total, tank.x())
				a.figures = append(a.figures, fig{"per_litre", "in a tank of " + plain(tank.x()) + " L", exact(per.Value), "larvae per litre", 1})
				return a, err
			}
			return a, nil
		},
	}
}

func countAnswer(n count.Larvae) answer {
	a := answer{
		figures: []fig{
			{"per_ml", "in the holding volume", exact(n.PerML.Value), "larvae per mL", 2},
			{"larvae", "larvae", exact(n.Total.Value), "", 0},
			{"larvae_low", "at least", exact(n.Total.Low), "", 0},
			{"larvae_high", "at most", exact(n.Total.High), "", 0},
			{"dead_percent", "dead", exact(n.DeadPercent.Value), "%", 1},
			{"mixing", "mixing", n.Mixing.String(), "", 0},
		},
		sources: []string{garwood, "mixing: dispersion test against chi-square, 5 %"},
	}
	if n.Mixing.Uneven {
		a.remarks = append(a.remarks, "The subsamples differ more than chance lets them: the limits are too narrow. Mix and count again.")
	}
	if n.Trend.Falling {
		a.remarks = append(a.remarks, "The counts fall from first to last: larvae settle while sampling. Stir between subsamples.")
	}
	return a
}

// exact is a figure that may not be known.
func exact(f count.Figure) *float64 {
	if !f.Known {
		return nil
	}
	return &f.X
}

func sumCells() sum {
	var counts numbers
	var chamber number
	dilution := number(1)
	return sum{
		name: "cells", short: "Microalgae cells per mL from a counting chamber",
		example: "--counts 46,50 --chamber-ml 0.0009", needs: []string{"counts", "chamber-ml"},
		flags: func(f *pflag.FlagSet) {
			f.Var(&counts, "counts", "cells, one number a field, as in 46,50")
			f.Var(&chamber, "chamber-ml", "mL that one count covers")
			f.Var(&dilution, "dilution", "times the sample was diluted")
		},
		answer: func() (answer, error) {
			whole, err := count.Whole("counts", counts)
			if err != nil {
				return answer{}, err
			}
			c, err := count.CellsPerML(whole, chamber.x(), dilution.x())
			if err != nil {
				return answer{}, err
			}
			return cellsAnswer(c), nil
		},
	}
}

func cellsAnswer(c count.Cells) answer {
	a := answer{
		figures: []fig{
			{"cells_per_ml", "cells", exact(c.PerML.Value), "per mL", 0},
			{"low", "at least", exact(c.PerML.Low), "per mL", 0},
			{"high", "at most", exact(c.PerML.High), "per mL", 0},
		},
		remarks: []string{count.BorderRule},
		sources: []string{garwood},
	}
	if c.Mixing.Uneven {
		a.remarks = append(a.remarks, "The fields differ more than chance lets them: clumps, or an uneven fill. Load and count again.")
	}
	return a
}
