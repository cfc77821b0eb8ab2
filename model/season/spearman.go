package season

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"
)

// Spearman is the rank correlation of pairs: 1 where y always rises with x, -1
// where it always falls, near 0 where neither does. Equal values share the mean
// of their ranks, and the correlation is that of the ranks (Spearman 1904, Am. J.
// Psychol. 15:72). It is unknown for fewer than two pairs, for lists of different
// length, where one of the two never changes, and where a value is no number.
func Spearman(x, y []float64) (rho float64, known bool) {
	if len(x) != len(y) || len(x) < 2 || slices.ContainsFunc(slices.Concat(x, y), math.IsNaN) {
		return 0, false
	}
	rx, ry := ranks(x), ranks(y)
	if alike(rx) || alike(ry) {
		return 0, false
	}
	return max(-1, min(1, stat.Correlation(rx, ry, nil))), true
}

// ranks are the places of values from the least, from 1; equal ones share theirs.
func ranks(xs []float64) []float64 {
	order := make([]int, len(xs))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int { return cmp.Compare(xs[a], xs[b]) })
	places := make([]float64, len(xs))
	for i := 0; i < len(order); {
		j := i
		for j < len(order) && xs[order[j]] == xs[order[i]] {
			j++
		}
		for k := i; k < j; k++ {
			places[order[k]] = float64(i+1+j) / 2
		}
		i = j
	}
	return places
}

// alike says that all values are equal.
func alike(xs []float64) bool { return slices.Max(xs) == slices.Min(xs) }
