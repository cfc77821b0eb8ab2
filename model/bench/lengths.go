package bench

import (
	"fmt"

	"drainboard/model/growth"
)

func lengths() Input {
	return Input{Name: "um", Label: "lengths", What: "shell lengths, as in 98.5 97.9 100.1", Unit: "um", Kind: Numbers, Need: true, Example: "98.5,97.9,100.1"}
}

// checkLengths refuses what is no length at all. Unlike an entry, a sum at the
// bench may be of any animal.
func checkLengths(field string, um []float64) error {
	for i, x := range um {
		if x <= 0 || x > 1e9 {
			return Problem{Field: field, Problem: fmt.Sprintf("item %d: %s cannot be; give a number above 0", i+1, plain(x))}
		}
	}
	return nil
}

func sizes() Sum {
	return Sum{
		Name: "sizes", Short: "What a list of shell lengths comes to",
		Inputs:  []Input{lengths()},
		Sources: []string{"limits of the mean: 95 %, Student's t", "odd: modified z over 3.5, Iglewicz and Hoaglin 1993"},
		work: func(v values) (Answer, error) {
			if err := checkLengths("um", v.list("um")); err != nil {
				return Answer{}, err
			}
			s, err := growth.Summarize(v.list("um"))
			return sizesAnswer(s), err
		},
	}
}

func sizesAnswer(s growth.Sample) Answer {
	spread := func(x float64) any {
		if !s.HasSpread {
			return nil
		}
		return x
	}
	return Answer{Figures: []Figure{
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
	}}
}

func mesh() Sum {
	return Sum{
		Name: "mesh", Short: "What share of the larvae each sieve would hold",
		Inputs: []Input{
			lengths(),
			{Name: "mesh", Label: "sieves", What: "openings of the sieves, as in 105 150 200", Unit: "um", Kind: Numbers, Need: true, Example: "75,105"},
			{Name: "factor", Label: "factor", What: "a larva is held when its reading is longer than factor x mesh", Default: "1", Example: "1.2"},
		},
		Sources: []string{"share of the readings longer than factor x mesh; the factor is the room's own"},
		work: func(v values) (Answer, error) {
			factor := v.number("factor")
			if factor <= 0 || factor > 1e6 {
				return Answer{}, Problem{Field: "factor", Given: plain(factor), Problem: "must be more than 0"}
			}
			for _, field := range []string{"um", "mesh"} {
				if err := checkLengths(field, v.list(field)); err != nil {
					return Answer{}, err
				}
			}
			sieves, err := growth.Sieves(v.list("um"), v.list("mesh"), factor)
			if err != nil {
				return Answer{}, err
			}
			return meshAnswer(sieves), nil
		},
	}
}

func meshAnswer(sieves []growth.Held) Answer {
	held := make([]Amount, len(sieves))
	for i, s := range sieves {
		held[i] = Amount{plain(s.MeshUM), 100 * s.Share}
	}
	return Answer{
		Figures: []Figure{{"held_percent", "held by µm", held, "%", 1}},
		Remarks: []string{"A long shell can pass end first: a factor above 1 is the careful side."},
	}
}
