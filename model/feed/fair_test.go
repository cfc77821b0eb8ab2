package feed

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// anyLitres and wholeLitres are two ways to draw a need or a stock up to most.
func anyLitres(most float64) *rapid.Generator[float64] { return rapid.Float64Range(0, most) }

func wholeLitres(most float64) *rapid.Generator[float64] {
	return rapid.Map(rapid.IntRange(0, int(most)), func(n int) float64 { return float64(n) })
}

// wants draws a table of litres, tanks by cultures, and what there is of each.
func wants(t *rapid.T, tanks, algae int, upTo func(float64) *rapid.Generator[float64]) (want [][]float64, have []float64) {
	litres := upTo(5)
	for range tanks {
		row := make([]float64, algae)
		for a := range row {
			if rapid.Bool().Draw(t, "needs it") {
				row[a] = litres.Draw(t, "litres")
			}
		}
		want = append(want, row)
	}
	for range algae {
		have = append(have, upTo(float64(3*tanks)).Draw(t, "have"))
	}
	return want, have
}

// fits reports whether parts of the rations stay within what there is.
func fits(want [][]float64, have, parts []float64) bool {
	for a := range have {
		used := 0.0
		for tank := range want {
			used += want[tank][a] * parts[tank]
		}
		if used > have[a]*(1+1e-9)+1e-9 {
			return false
		}
	}
	return true
}

// byBisection finds the fairest parts by trial alone: raise all tanks that can
// still rise as far as fits, then fix those that cannot rise by themselves.
func byBisection(want [][]float64, have []float64) []float64 {
	parts, fixed := make([]float64, len(want)), make([]bool, len(want))
	for slices.Contains(fixed, false) {
		low, high := 0.0, 1.0
		for range 60 {
			level := (low + high) / 2
			trial := slices.Clone(parts)
			for i := range trial {
				if !fixed[i] {
					trial[i] = level
				}
			}
			if fits(want, have, trial) {
				low = level
			} else {
				high = level
			}
		}
		for i := range parts {
			if !fixed[i] {
				parts[i] = low
			}
		}
		before := slices.Clone(fixed)
		for i := range parts {
			trial := slices.Clone(parts)
			trial[i] = min(1, parts[i]+1e-6)
			if !before[i] && (low > 1-1e-9 || !fits(want, have, trial)) {
				fixed[i] = true
			}
		}
		if slices.Equal(before, fixed) {
			return nil // a tie closer than the trial step
		}
	}
	return parts
}

func TestFairAgainstBisection(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		// Whole litres keep the parts at which cultures run out well apart from each other.
		want, have := wants(t, rapid.IntRange(1, 6).Draw(t, "tanks"), rapid.IntRange(1, 4).Draw(t, "algae"), wholeLitres)
		got, _ := fairParts(want, have)
		oracle := byBisection(want, have)
		if oracle == nil {
			t.Skip("tie")
		}
		for i := range got {
			if math.Abs(got[i]-oracle[i]) > 1e-4 {
				t.Fatalf("tank %d: got %v, by trial %v", i, got, oracle)
			}
		}
	})
}

// Of all parts on a grid that fit, none is fairer: sorted from the worst off, no
// other list of parts comes out ahead at the first difference.
func TestFairAgainstGrid(t *testing.T) {
	const steps = 20
	random := rand.New(rand.NewPCG(4, 40))
	for round := range 60 {
		want, have := make([][]float64, 3), []float64{random.Float64() * 5, random.Float64() * 5}
		for i := range want {
			want[i] = []float64{random.Float64() * 3, random.Float64() * 3}
			if random.IntN(2) == 0 {
				want[i][random.IntN(2)] = 0
			}
		}
		got, _ := fairParts(want, have)
		if !fits(want, have, got) {
			t.Fatalf("round %d: %v does not fit", round, got)
		}
		best := slices.Sorted(slices.Values(got))
		for x := range steps + 1 {
			for y := range steps + 1 {
				for z := range steps + 1 {
					parts := []float64{float64(x) / steps, float64(y) / steps, float64(z) / steps}
					if fits(want, have, parts) && fairer(slices.Sorted(slices.Values(parts)), best) {
						t.Fatalf("round %d: %v is fairer than %v", round, parts, got)
					}
				}
			}
		}
	}
}

// fairer compares sorted parts from the worst off on.
func fairer(a, b []float64) bool {
	for i := range a {
		if math.Abs(a[i]-b[i]) > 1e-7 {
			return a[i] > b[i]
		}
	}
	return false
}

// A tank below its whole ration is held back by a culture that is used up and of
// which no one has a larger part: what makes a division max-min fair (Bertsekas &
// Gallager 1992, Data Networks, 6.5).
func TestFairBottlenecks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want, have := wants(t, rapid.IntRange(1, 40).Draw(t, "tanks"), rapid.IntRange(1, 5).Draw(t, "algae"), anyLitres)
		parts, heldBy := fairParts(want, have)
		if !fits(want, have, parts) {
			t.Fatalf("more was given than there is: %v of %v", parts, have)
		}
		for tank, part := range parts {
			a := heldBy[tank]
			if a == none {
				if part != 1 {
					t.Fatalf("tank %d: part %g and nothing held it back", tank, part)
				}
				continue
			}
			used := 0.0
			for other := range want {
				used += want[other][a] * parts[other]
				if want[other][a] > 0 && parts[other] > part+1e-9 {
					t.Fatalf("tank %d is held at %g by alga %d, tank %d has %g", tank, part, a, other, parts[other])
				}
			}
			if used < have[a]*(1-1e-9)-1e-9 {
				t.Fatalf("tank %d is held back by alga %d, of which %g of %g is used", tank, a, used, have[a])
			}
		}
	})
}
