package model

import (
	"cmp"
	"fmt"
	"slices"
	"time"
)

// Together are two tanks of one batch whose larvae fit in one ready tank under the
// density limit, which frees a tank.
type Together struct {
	A, B     string // the sparser first
	Batch    string
	Into     string
	PerLitre float64 // afterwards
	Cull     float64 // larvae to be taken out first, no more than the house lets a sieve lose; 0 for none
	// Sure is true where the limit holds by the high limit of the estimate too.
	Sure bool
	Text string
}

// Joinable lists pairs of tanks that could be put together at their next change:
// batch by batch, the sparsest first, no tank twice. Tanks that are suspect or were
// never counted are left out.
func (l *Ledger) Joinable(now time.Time) []Together {
	var pairs []Together
	for _, b := range l.Batches() {
		tanks := slices.DeleteFunc(l.BatchTanks(b), func(t TankNow) bool { return t.Suspect || !t.Larvae.Number.Value.Known })
		slices.SortStableFunc(tanks, func(a, b TankNow) int {
			return cmp.Compare(a.Larvae.Number.Value.X, b.Larvae.Number.Value.X)
		})
		for i := 0; i+1 < len(tanks); i += 2 {
			pair, ok := l.together(tanks[i], tanks[i+1], now)
			if !ok {
				break // denser ones do not fit either
			}
			pairs = append(pairs, pair)
		}
	}
	return pairs
}

// together puts two tanks into the first ready one in which the limit holds, or
// holds after the smallest cull that the house allows.
func (l *Ledger) together(a, b TankNow, now time.Time) (Together, bool) {
	limit := l.strictest(a, now)
	n := a.Larvae.Number.Plus(b.Larvae.Number)
	if limit == 0 {
		return Together{}, false
	}
	best, found := Together{}, false
	for _, to := range l.readyFor(a) {
		cull := max(0, up(n.Value.X-limit*to.Tank.Litres))
		if cull > n.Value.X*l.room.House.Growth.CullPercent/100 || found && cull >= best.Cull {
			continue
		}
		found = true
		best = Together{
			A: a.Tank.Name, B: b.Tank.Name, Batch: a.Larvae.Batch, Into: to.Tank.Name,
			PerLitre: (n.Value.X - cull) / to.Tank.Litres, Cull: cull, Sure: sure(n, limit*to.Tank.Litres+cull),
		}
	}
	best.Text = best.words(limit)
	return best, found
}

// words reads "C2 and C3 fit together in C1: 75.0 per litre of 100; one tank is freed".
func (p Together) words(limit float64) string {
	text := fmt.Sprintf("%s and %s fit together in %s: %.1f per litre of %s; one tank is freed", p.A, p.B, p.Into, p.PerLitre, plain(limit))
	if p.Cull > 0 {
		return fmt.Sprintf("cull %.0f, then ", p.Cull) + text
	}
	return text
}
