package main

import (
	"drainboard/model/growth"

	"github.com/spf13/pflag"
)

func sumSizes() sum {
	var um numbers
	return sum{
		name: "sizes", short: "What a list of shell lengths comes to",
		example: "--um 98.5,97.9,100.1,101.1", needs: []string{"um"},
		flags: func(f *pflag.FlagSet) { f.Var(&um, "um", "shell lengths in µm, as in 98.5,97.9") },
		answer: func() (answer, error) {
			if err := checkLengths(um); err != nil {
				return answer{}, err
			}
			s, err := growth.Summarize(um)
			if err != nil {
				return answer{}, err
			}
			return sizesAnswer(s), nil
		},
	}
}

func sizesAnswer(s growth.Sample) answer {
	spread := func(x float64) *float64 {
		if !s.HasSpread {
			return nil
		}
		return &x
	}
	return answer{
		figures: []fig{
			{"n", "readings", s.N, "", 0},
			{"mean_um", "mean", s.Mean, "um", 1},
			{"sd_um", "standard deviation", spread(s.SD), "um", 2},
			{"cv_percent", "of the mean", spread(s.CVPercent), "%", 1},
			{"mean_low_um", "mean at least", spread(s.MeanInterval.Low), "um", 1},
			{"mean_high_um", "mean at most", spread(s.MeanInterval.High), "um", 1},
			{"median_um", "median", s.Median, "um", 1},
			{"min_um", "smallest", s.Min, "um", 1},
			{"max_um", "largest", s.Max, "um", 1},
			{"odd", "odd readings", s.Odd, "um", 1},
		},
		sources: []string{"limits of the mean: 95 %, Student's t", "odd: modified z over 3.5, Iglewicz and Hoaglin 1993"},
	}
}

// checkLengths refuses what is no length at all. Unlike an entry, a sum at the
// bench may be of any animal.
func checkLengths(um []float64) error {
	for i, x := range um {
		if x <= 0 {
			return usagef("--um item %d: %s is not a length; give a number above 0", i+1, plain(x))
		}
	}
	return nil
}

func sumMesh() sum {
	var um, mesh numbers
	factor := number(1)
	return sum{
		name: "mesh", short: "What share of the larvae each sieve would hold",
		example: "--um 98.5,97.9,100.1 --mesh 75,105", needs: []string{"um", "mesh"},
		flags: func(f *pflag.FlagSet) {
			f.Var(&um, "um", "shell lengths in µm, as in 98.5,97.9")
			f.Var(&mesh, "mesh", "openings of the sieves in µm, as in 105,150,200")
			f.Var(&factor, "factor", "a larva is held when its reading is longer than factor x mesh")
		},
		answer: func() (answer, error) {
			if err := checkLengths(um); err != nil {
				return answer{}, err
			}
			sieves, err := growth.Sieves(um, mesh, factor.x())
			if err != nil {
				return answer{}, err
			}
			return meshAnswer(sieves), nil
		},
	}
}

func meshAnswer(sieves []growth.Held) answer {
	var held []named
	for _, s := range sieves {
		held = append(held, named{plain(s.MeshUM), 100 * s.Share})
	}
	return answer{
		figures: []fig{{"held_percent", "held by µm", held, "%", 1}},
		remarks: []string{"A long shell can pass end first: a factor above 1 is the careful side."},
		sources: []string{"share of the readings longer than factor x mesh; the factor is the room's own"},
	}
}
