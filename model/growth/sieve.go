package growth

import (
	"cmp"
	"fmt"
	"slices"

	"gonum.org/v1/gonum/stat/distuv"
)

// Held is what one sieve would do with the larvae that were read.
type Held struct {
	MeshUM   float64
	Held, Of int      // readings longer than factor x mesh, and all readings
	Share    float64  // held / of, 0 to 1
	Interval Interval // of the share in the tank: exact binomial, Clopper & Pearson 1934, Biometrika 26:404-413
}

// Lost is the share, 0 to 1, that a move on this sieve would lose.
func (h Held) Lost() float64 { return 1 - h.Share }

// LostInterval is the interval of Lost.
func (h Held) LostInterval() Interval {
	return Interval{Low: 1 - h.Interval.High, High: 1 - h.Interval.Low}
}

// Sieve says which of the readings, um, a sieve of the given opening would hold: those longer than
// factor x mesh. The factor belongs to the room and to what it measures; 1.0 takes the reading for
// the dimension that meets the mesh. A long shell can pass end first, so a factor above 1 is the
// careful side.
func Sieve(um []float64, meshUM, factor float64) (Held, error) {
	if len(um) == 0 {
		return Held{}, ErrNoReadings
	}
	if !measurable(meshUM) || meshUM <= 0 {
		return Held{}, fmt.Errorf("mesh %g um: give an opening above zero", meshUM)
	}
	if !measurable(factor) || factor <= 0 {
		return Held{}, fmt.Errorf("length-to-mesh factor %g: give a number above zero", factor)
	}
	h := Held{MeshUM: meshUM, Of: len(um)}
	for _, x := range um {
		if x > factor*meshUM {
			h.Held++
		}
	}
	h.Share = float64(h.Held) / float64(h.Of)
	h.Interval = binomial(h.Held, h.Of)
	return h, nil
}

// Sieves is Sieve for each mesh, from the finest to the coarsest, each opening once.
func Sieves(um, meshes []float64, factor float64) ([]Held, error) {
	sorted := slices.Clone(meshes)
	slices.Sort(sorted)
	var all []Held
	for _, mesh := range slices.Compact(sorted) {
		h, err := Sieve(um, mesh, factor)
		if err != nil {
			return nil, err
		}
		all = append(all, h)
	}
	return all, nil
}

// Coarsest is the coarsest of the sieves that loses at most the given share (0 to 1) of the
// readings, if one does.
func Coarsest(sieves []Held, mostLost float64) (best Held, found bool) {
	fit := slices.DeleteFunc(slices.Clone(sieves), func(h Held) bool { return !h.within(mostLost) })
	if len(fit) == 0 {
		return Held{}, false
	}
	return slices.MaxFunc(fit, func(a, b Held) int { return cmp.Compare(a.MeshUM, b.MeshUM) }), true
}

// within allows for the rounding of shares: 1 of 20 lost is 5 %.
func (h Held) within(mostLost float64) bool { return h.Lost() <= mostLost+1e-12 }

// binomial is the exact 95 % interval of a share, Clopper & Pearson 1934.
func binomial(hits, n int) Interval {
	k, rest := float64(hits), float64(n-hits)
	i := Interval{Low: 0, High: 1}
	if hits > 0 {
		i.Low = distuv.Beta{Alpha: k, Beta: rest + 1}.Quantile(0.025)
	}
	if hits < n {
		i.High = distuv.Beta{Alpha: k + 1, Beta: rest}.Quantile(0.975)
	}
	return i
}
