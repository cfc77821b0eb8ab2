package feed

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func TestPours(t *testing.T) {
	r := Round{
		Tanks: []Feed{
			{Tank: "C2", Litres: ByAlga{"iso": 0.0220121, "chaet": 0.00772}},
			{Tank: "C1", Litres: ByAlga{"iso": 0.2264}},
			{Tank: "C3", Litres: ByAlga{"iso": 0.0224, "chaet": 0.00001}},
			{Tank: "C4", Litres: ByAlga{"iso": 2.3449}},
			{Tank: "C5", Litres: ByAlga{"iso": 0}},
		},
		Draws: []Draw{{Alga: "iso", Unlimited: true}, {Alga: "chaet", Unlimited: true}},
	}
	var got []string
	for _, p := range r.Pours() {
		got = append(got, fmt.Sprint(p.Tank, " ", p.Alga, " ", p.ML, " by ", p.StepML, " ", p.Rough))
	}
	want := []string{
		"C2 iso 22 by 1 false",
		"C2 chaet 7.7 by 0.1 false",
		"C1 iso 230 by 10 false",
		"C3 iso 22 by 1 false", // 22.0 and 22.4 are 44 together
		"C3 chaet 0 by 0.1 true",
		"C4 iso 2300 by 100 false",
	}
	if !slices.Equal(got, want) {
		t.Errorf("got\n%q\nwant\n%q", got, want)
	}
}

func TestPoursOfASum(t *testing.T) {
	r := Round{Draws: []Draw{{Alga: "iso", Have: 0.1}}}
	for i := range 4 {
		r.Tanks = append(r.Tanks, Feed{Tank: fmt.Sprint("C", i+1), Litres: ByAlga{"iso": 0.025}})
	}
	if got := poured(r.Pours()); got != 100 {
		t.Errorf("four pours of 25: got %g", got)
	}
	// 4 x 24.6 = 98.4 rounds to 98: 25, 25, 24, 24.
	for i := range r.Tanks {
		r.Tanks[i].Litres["iso"] = 0.0246
	}
	pours := r.Pours()
	if poured(pours) != 98 || pours[0].ML != 25 || pours[3].ML != 24 {
		t.Errorf("got %+v", pours)
	}
	// 4 x 24.9 = 99.6 would round to 100, and 99.6 is all there is.
	r.Draws[0].Have = 0.0996
	for i := range r.Tanks {
		r.Tanks[i].Litres["iso"] = 0.0249
	}
	if got := poured(r.Pours()); got != 99 {
		t.Errorf("more than there is: got %g", got)
	}
}

// The step that is missing from the sum goes to the largest remainder.
func TestPoursLargestRemainder(t *testing.T) {
	r := Round{
		Tanks: []Feed{{Tank: "C1", Litres: ByAlga{"iso": 0.0242}}, {Tank: "C2", Litres: ByAlga{"iso": 0.0254}}, {Tank: "C3", Litres: ByAlga{"iso": 0.0263}}},
		Draws: []Draw{{Alga: "iso", Unlimited: true}},
	}
	// 24.2 + 25.4 + 26.3 = 75.9, so 76 of whole steps 24 + 25 + 26.
	if p := r.Pours(); p[0].ML != 24 || p[1].ML != 26 || p[2].ML != 26 {
		t.Errorf("got %+v", p)
	}
}

// 8.1 mL are 80.99999999999999 steps of 0.1 to the computer: rounding down must not
// take a step from it.
func TestPoursDownKeepWholeSteps(t *testing.T) {
	whole, up := 0.0081, 0.0299
	r := Round{
		Tanks: []Feed{{Tank: "C1", Litres: ByAlga{"iso": whole}}, {Tank: "C2", Litres: ByAlga{"iso": up}}},
		Draws: []Draw{{Alga: "iso", Have: whole + up}},
	}
	if steps := whole * 1000 / 0.1; steps >= 81 {
		t.Fatalf("%.17g steps are no case of this", steps)
	}
	if p := r.Pours(); p[0].ML != 8.1 || p[1].ML != 29 {
		t.Errorf("got %+v", p)
	}
}

func TestPoursProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tanks, stocks := room(t)
		r, err := RoundFor(tanks, stocks, Diluted)
		if err != nil {
			t.Fatal(err)
		}
		exact, rounded := ByAlga{}, ByAlga{}
		halfSteps := map[string]map[float64]bool{}
		for _, p := range r.Pours() {
			if p.ML < 0 || math.Abs(p.ML-p.ExactML) > p.StepML*(1+1e-6) {
				t.Fatalf("%+v is off by more than its step", p)
			}
			if p.ExactML >= 2 && p.StepML > 0.05*p.ExactML*(1+1e-9) {
				t.Fatalf("%+v: step of more than 5 %%", p)
			}
			exact[p.Alga] += p.ExactML
			rounded[p.Alga] += p.ML
			if halfSteps[p.Alga] == nil {
				halfSteps[p.Alga] = map[float64]bool{}
			}
			halfSteps[p.Alga][p.StepML] = true
		}
		for _, d := range r.Draws {
			slack := 0.0
			for s := range halfSteps[d.Alga] {
				slack += s // half a step, or a whole one where sums are rounded down
			}
			if math.Abs(exact[d.Alga]-d.Given*1000) > 1e-6 {
				t.Fatalf("%s: pours of %g mL, drawn %g L", d.Alga, exact[d.Alga], d.Given)
			}
			if math.Abs(rounded[d.Alga]-exact[d.Alga]) > slack*(1+1e-6) {
				t.Fatalf("%s: rounded to %g of %g mL", d.Alga, rounded[d.Alga], exact[d.Alga])
			}
			if rounded[d.Alga] > d.Have*1000*(1+1e-6) {
				t.Fatalf("%s: poured %g mL of %g L", d.Alga, rounded[d.Alga], d.Have)
			}
		}
	})
}
