package season

import (
	"cmp"
	"slices"
	"time"

	"drainboard/model"
)

// happened is one of a batch's stockings, moves, counts and losses: what puts its
// larvae where they are.
type happened struct {
	at   time.Time
	n    int
	fact any // model.Stocking, model.MoveAt, model.CountAt or model.Loss
}

// story is what happened to a batch, in its order; of one moment as keyed.
func story(b *model.Batch) []happened {
	var all []happened
	for _, x := range b.Stocked {
		all = append(all, happened{x.At, x.N, x})
	}
	for _, x := range b.Moves {
		all = append(all, happened{x.At, x.N, x})
	}
	for _, x := range b.Counts {
		all = append(all, happened{x.At, x.N, x})
	}
	for _, x := range b.Losses {
		all = append(all, happened{x.At, x.N, x})
	}
	slices.SortFunc(all, func(x, y happened) int { return cmp.Or(x.at.Compare(y.at), cmp.Compare(x.n, y.n)) })
	return all
}
