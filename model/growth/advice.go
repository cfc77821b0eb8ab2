package growth

import (
	"fmt"
	"slices"
	"strings"
)

// Verdict says how the readings agree with the mesh that the age asks for.
type Verdict int

const (
	MeshAgrees  Verdict = iota // a mesh for the age holds enough, and none coarser would
	MeshFiner                  // no mesh for the age holds enough: take a finer one
	MeshCoarser                // a mesh coarser than the age's would still hold enough
	MeshNone                   // no sieve of the room holds enough
)

func (v Verdict) String() string {
	return [...]string{"agrees with the age", "finer than the age asks", "coarser than the age asks", "no sieve holds enough"}[v]
}

// Advice is the sieve that the readings allow, beside the one that the age asks for.
type Advice struct {
	Verdict Verdict
	Sieves  []Held // every sieve looked at, finest first
	// Use is the sieve to move on by the readings: among the age's own meshes where one will do. For
	// MeshNone it is the finest sieve, which loses least. For MeshCoarser it stays the age's mesh:
	// a finer sieve loses no larva.
	Use   Held
	Words string // the verdict with its figures, one line
}

// Advise compares the meshes that the age asks for, um, the first being the default, with the
// readings, um. sieves are the openings the room has; mostLost is the share, 0 to 1, that a move may
// lose.
func Advise(um, sieves, ageMeshes []float64, factor, mostLost float64) (Advice, error) {
	if len(ageMeshes) == 0 {
		return Advice{}, fmt.Errorf("no mesh for this age: give the room's mesh by age")
	}
	if !(mostLost >= 0 && mostLost < 1) {
		return Advice{}, fmt.Errorf("share that may be lost %g: give one from 0 to below 1", mostLost)
	}
	all, err := Sieves(um, slices.Concat(sieves, ageMeshes), factor)
	if err != nil {
		return Advice{}, err
	}
	a := Advice{Sieves: all}
	a.decide(ageMeshes, mostLost)
	return a, nil
}

func (a *Advice) decide(ageMeshes []float64, mostLost float64) {
	ofAge := slices.DeleteFunc(slices.Clone(a.Sieves), func(h Held) bool { return !slices.Contains(ageMeshes, h.MeshUM) })
	first := a.held(ageMeshes[0])
	best, found := Coarsest(a.Sieves, mostLost)
	bestOfAge, foundOfAge := Coarsest(ofAge, mostLost)
	switch {
	case !found:
		a.Verdict, a.Use = MeshNone, a.Sieves[0]
		a.Words = fmt.Sprintf("no sieve holds enough: the finest, %g um, would lose %s", a.Use.MeshUM, a.Use.losing())
	case !foundOfAge:
		a.Verdict, a.Use = MeshFiner, best
		a.Words = fmt.Sprintf("the age asks for %s um, the readings for %g um: %g um would lose %s",
			listed(ageMeshes), best.MeshUM, ofAge[0].MeshUM, ofAge[0].losing())
	case !first.within(mostLost):
		a.Verdict, a.Use = MeshAgrees, bestOfAge
		a.Words = fmt.Sprintf("use %g um, not %g um, which would lose %s", a.Use.MeshUM, first.MeshUM, first.losing())
	case best.MeshUM > slices.Max(ageMeshes):
		a.Verdict, a.Use = MeshCoarser, first
		a.Words = fmt.Sprintf("%g um would lose %s; the readings would allow %g um", first.MeshUM, first.losing(), best.MeshUM)
	default:
		a.Verdict, a.Use = MeshAgrees, first
		a.Words = fmt.Sprintf("%g um would lose %s", first.MeshUM, first.losing())
	}
}

func (a *Advice) held(meshUM float64) Held {
	return a.Sieves[slices.IndexFunc(a.Sieves, func(h Held) bool { return h.MeshUM == meshUM })]
}

// losing puts a loss and how sure it is into words.
func (h Held) losing() string {
	lost, sure := h.Of-h.Held, h.LostInterval()
	if lost == 0 {
		return fmt.Sprintf("none of %d read (surely under %.0f %%)", h.Of, 100*sure.High)
	}
	return fmt.Sprintf("%d of %d read, %.0f %% (%.0f to %.0f %%)", lost, h.Of, 100*h.Lost(), 100*sure.Low, 100*sure.High)
}

func listed(meshes []float64) string {
	words := make([]string, len(meshes))
	for i, m := range meshes {
		words[i] = fmt.Sprintf("%g", m)
	}
	return strings.Join(words, " or ")
}
