package feed

import (
	"cmp"
	"math"
	"slices"
)

// Pour is one line of a pour list: so much of a culture into a tank.
type Pour struct {
	Tank    string
	Alga    string
	ExactML float64
	ML      float64 // rounded to what a person can measure
	StepML  float64 // the step it is rounded to
	// Rough is set where rounding moved the pour by more than 5 %: dilute the
	// culture and pour more of it.
	Rough bool
}

// steps are the steps pours are rounded to: the step in mL and the pour from
// which it is used. From 2 mL on a step is no more than 5 % of the pour: a 10 mL
// pipette, a 100 mL cylinder, a 1 L cylinder and a jug (common practice, no source).
func steps() []step {
	return []step{{100, 2000}, {10, 200}, {1, 20}, {0.1, 0}}
}

type step struct{ ml, from float64 }

// of returns n steps in mL; tenths are divided so that they print as tenths.
func (s step) of(n float64) float64 {
	if s.ml < 1 {
		return n / math.Round(1/s.ml)
	}
	return n * s.ml
}

// Pours returns the pour list of a round, tank by tank, pours of nothing left out.
//
// Rounding keeps the sums: of each culture, the pours that share a step are rounded
// together by largest remainder, so that each is off by less than one step and
// their sum by at most half a step. Where that would pour more than there is,
// the sums are rounded down.
func (r Round) Pours() []Pour {
	var pours []Pour
	for _, draw := range r.Draws {
		pours = append(pours, r.poursOf(draw)...)
	}
	order := make(map[string]int, len(r.Tanks))
	for i, f := range r.Tanks {
		order[f.Tank] = i
	}
	slices.SortStableFunc(pours, func(a, b Pour) int { return cmp.Compare(order[a.Tank], order[b.Tank]) })
	return pours
}

// poursOf rounds the pours of one culture.
func (r Round) poursOf(draw Draw) []Pour {
	var pours []Pour
	for _, f := range r.Tanks {
		if ml := f.Litres[draw.Alga] * mlPerLitre; ml > 0 {
			pours = append(pours, Pour{Tank: f.Tank, Alga: draw.Alga, ExactML: ml})
		}
	}
	roundPours(pours, math.Round)
	if !draw.Unlimited && poured(pours) > draw.Have*mlPerLitre*(1+hair) {
		roundPours(pours, wholeSteps)
	}
	return pours
}

func poured(pours []Pour) float64 {
	total := 0.0
	for _, p := range pours {
		total += p.ML
	}
	return total
}

// roundPours rounds pours of one culture, step by step; whole rounds a sum.
func roundPours(pours []Pour, whole func(float64) float64) {
	most := math.Inf(1)
	for _, s := range steps() {
		var alike []*Pour
		for i := range pours {
			if p := &pours[i]; p.ExactML >= s.from && p.ExactML < most {
				alike = append(alike, p)
			}
		}
		roundTogether(alike, s, whole)
		most = s.from
	}
}

// roundTogether gives each pour its whole steps, and the steps still missing from
// the sum to those with the largest remainder, the first of equals first.
func roundTogether(pours []*Pour, s step, whole func(float64) float64) {
	sum, given := 0.0, 0.0
	for _, p := range pours {
		sum += p.ExactML / s.ml
		given += wholeSteps(p.ExactML / s.ml)
	}
	byRemainder := slices.Clone(pours)
	slices.SortStableFunc(byRemainder, func(a, b *Pour) int {
		return cmp.Compare(remainder(b.ExactML/s.ml), remainder(a.ExactML/s.ml))
	})
	missing := int(whole(sum) - given)
	for i, p := range byRemainder {
		n := wholeSteps(p.ExactML / s.ml)
		if i < missing {
			n++
		}
		p.StepML, p.ML = s.ml, s.of(n)
		p.Rough = math.Abs(p.ML-p.ExactML) > 0.05*p.ExactML
	}
}

// hair is the part of a step that is rounding in the computer, not in the jug.
const hair = 1e-9

// wholeSteps is how many whole steps there are in x.
func wholeSteps(x float64) float64 { return math.Floor(x + hair) }

func remainder(x float64) float64 { return x - wholeSteps(x) }
