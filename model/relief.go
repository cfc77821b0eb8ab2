package model

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"drainboard/model/count"
)

// ReliefKind names what is done about a tank that is too dense.
type ReliefKind string

// The kinds of relief.
const (
	// MoveWhole moves all larvae into one tank with room for them at the next change.
	MoveWhole ReliefKind = "whole"
	// SplitEven moves them in equal parts at the next change: what a plan can take in.
	SplitEven ReliefKind = "split"
	// SplitUneven moves them in parts by the volumes of the tanks, where equal parts
	// would be too dense in one of them: by hand, each part with its share.
	SplitUneven ReliefKind = "uneven split"
	// MovePart moves a part now; the rest stays, in water as old as it is.
	MovePart ReliefKind = "part"
	// Cull takes larvae out.
	Cull ReliefKind = "cull"
)

// Relief is one thing that brings a tank under its density limit.
type Relief struct {
	Kind ReliefKind
	Into []string // the tanks the larvae go into, in order; none for a cull
	// Shares are those of the moves: each of the larvae still in the tank then, so
	// the last of a split is 1. A cull has one, of the larvae taken out.
	Shares []float64
	// PerLitre is the density afterwards in each of Into, and for a part or a cull
	// that of the tank itself at the end.
	PerLitre []float64
	Larvae   float64 // taken out by a cull, rounded up
	// Sure is true where the limit holds by the high limit of the estimate too.
	Sure bool
	Text string
}

// mostParts is into how many tanks a relief splits one at most.
const mostParts = 9

// reliefs lists what can be done about a tank that is too dense.
func (l *Ledger) reliefs(t TankNow, limit float64) []Relief {
	n, ready := t.Larvae.Number, l.readyFor(t)
	var all []Relief
	for _, relief := range []func(TankNow, count.Estimate, float64, []TankNow) (Relief, bool){
		moveWhole, splitEven, splitUneven, movePart, cull,
	} {
		if r, ok := relief(t, n, limit, ready); ok {
			all = append(all, r)
		}
	}
	return all
}

// sure reports whether so much room is enough by the high limit too.
func sure(n count.Estimate, room float64) bool { return n.High.Known && n.High.X <= room }

func moveWhole(t TankNow, n count.Estimate, limit float64, ready []TankNow) (Relief, bool) {
	i := slices.IndexFunc(ready, func(to TankNow) bool { return n.Value.X/to.Tank.Litres <= limit })
	if i < 0 {
		return Relief{}, false
	}
	to := ready[i].Tank
	per := n.Value.X / to.Litres
	return Relief{
		Kind: MoveWhole, Into: []string{to.Name}, Shares: []float64{1}, PerLitre: []float64{per}, Sure: sure(n, limit*to.Litres),
		Text: fmt.Sprintf("at the change move all of %s into %s (%s L): %.1f per litre", t.Tank.Name, to.Name, plain(to.Litres), per),
	}, true
}

// splitEven takes the fewest equal parts for which enough tanks stand ready.
func splitEven(t TankNow, n count.Estimate, limit float64, ready []TankNow) (Relief, bool) {
	for parts := 2; parts <= min(mostParts, len(ready)); parts++ {
		part := n.Value.X / float64(parts)
		var fit []TankNow
		for _, to := range ready {
			if part/to.Tank.Litres <= limit {
				fit = append(fit, to)
			}
		}
		if len(fit) < parts {
			continue
		}
		r := Relief{Kind: SplitEven, Sure: true}
		for i, to := range fit[:parts] {
			r.add(to, 1/float64(parts-i), part)
			r.Sure = r.Sure && sure(n, limit*to.Tank.Litres*float64(parts))
		}
		r.Text = fmt.Sprintf("at the change split %s in %d equal parts of %.0f into %s", t.Tank.Name, parts, part, r.list())
		return r, true
	}
	return Relief{}, false
}

// splitUneven makes equal densities in the fewest ready tanks, the largest first.
// It is for where equal parts do not fit.
func splitUneven(t TankNow, n count.Estimate, limit float64, ready []TankNow) (Relief, bool) {
	if _, even := splitEven(t, n, limit, ready); even {
		return Relief{}, false
	}
	largest := slices.Clone(ready)
	slices.SortStableFunc(largest, func(a, b TankNow) int { return cmp.Compare(b.Tank.Litres, a.Tank.Litres) })
	litres := 0.0
	for i, to := range largest[:min(mostParts, len(largest))] {
		litres += to.Tank.Litres
		if i == 0 || n.Value.X/litres > limit {
			continue
		}
		r := Relief{Kind: SplitUneven, Sure: sure(n, limit*litres)}
		left := litres
		for _, to := range largest[:i+1] {
			r.add(to, to.Tank.Litres/left, n.Value.X*to.Tank.Litres/litres)
			left -= to.Tank.Litres
		}
		r.Text = fmt.Sprintf("at the change split %s by hand into %s", t.Tank.Name, r.shared())
		return r, true
	}
	return Relief{}, false
}

// movePart makes equal densities in the tank and one that stands ready.
func movePart(t TankNow, n count.Estimate, limit float64, ready []TankNow) (Relief, bool) {
	for _, to := range ready {
		litres := t.Tank.Litres + to.Tank.Litres
		per := n.Value.X / litres
		if per > limit {
			continue
		}
		share := to.Tank.Litres / litres
		return Relief{
			Kind: MovePart, Into: []string{to.Tank.Name}, Shares: []float64{share}, PerLitre: []float64{per, per}, Sure: sure(n, limit*litres),
			Text: fmt.Sprintf("now move %.0f %% of %s (%.0f larvae) into %s: %.1f per litre in each; the water of %s stays as old as it is",
				100*share, t.Tank.Name, n.Value.X*share, to.Tank.Name, per, t.Tank.Name),
		}, true
	}
	return Relief{}, false
}

func cull(t TankNow, n count.Estimate, limit float64, _ []TankNow) (Relief, bool) {
	room := limit * t.Tank.Litres
	larvae := up(n.Value.X - room)
	share := larvae / n.Value.X
	r := Relief{
		Kind: Cull, Shares: []float64{share}, PerLitre: []float64{(n.Value.X - larvae) / t.Tank.Litres}, Larvae: larvae,
		Text: fmt.Sprintf("cull %.0f of %s (%.0f %%): %.1f per litre", larvae, t.Tank.Name, 100*share, (n.Value.X-larvae)/t.Tank.Litres),
	}
	if n.High.Known && n.High.X > n.Value.X {
		r.Text += fmt.Sprintf("; %.0f to be sure of it", up(n.High.X-room))
	}
	return r, true
}

// add puts one more part, of so many larvae, into a tank.
func (r *Relief) add(to TankNow, share, larvae float64) {
	r.Into = append(r.Into, to.Tank.Name)
	r.Shares = append(r.Shares, share)
	r.PerLitre = append(r.PerLitre, larvae/to.Tank.Litres)
}

// list reads "C1 (62.5 per litre) and C2 (62.5 per litre)".
func (r *Relief) list() string {
	return r.each(func(i int) string { return fmt.Sprintf("%s (%.1f per litre)", r.Into[i], r.PerLitre[i]) })
}

// shared reads "C1 (share 0.67, 83.3 per litre) and D1 (the rest, 83.3 per litre)".
func (r *Relief) shared() string {
	return r.each(func(i int) string {
		share := "the rest"
		if i < len(r.Into)-1 {
			share = "share " + plain(math.Round(1e4*r.Shares[i])/1e4)
		}
		return fmt.Sprintf("%s (%s, %.1f per litre)", r.Into[i], share, r.PerLitre[i])
	})
}

func (r *Relief) each(word func(i int) string) string {
	words := make([]string, len(r.Into))
	for i := range words {
		words[i] = word(i)
	}
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " and " + words[last]
}
