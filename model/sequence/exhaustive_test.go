package sequence_test

import (
	"fmt"
	"slices"
	"testing"

	"drainboard/model/sequence"
)

// TestBestAgainstEveryOrder plans random rooms of up to seven tanks and compares
// with the best of all orders, played out one by one.
func TestBestAgainstEveryOrder(t *testing.T) {
	t.Logf("seed %d (set with -seed)", *seed)
	for _, crew := range []int{1, 2} {
		for k, order := range []sequence.Order{sequence.OldestFirst, sequence.YoungestFirst, sequence.DueFirst} {
			t.Run(fmt.Sprintf("crew %d %s", crew, order), func(t *testing.T) {
				d := newDice(uint64(10*crew + k))
				for range *rooms {
					tanks := oneOf(d, 1, 2, 3, 4, 5, 5, 6, 6)
					if d.IntN(20) == 0 {
						tanks = 7
					}
					p := d.room(tanks, crew, order)
					sameAsOracle(t, p, mustBest(t, p), everyOrder(p))
				}
			})
		}
	}
}

// sameAsOracle compares order, destinations and times.
func sameAsOracle(t *testing.T, p sequence.Problem, got sequence.Plan, want played) {
	t.Helper()
	var order, to []int
	for _, m := range got.Moves {
		order, to = append(order, m.Source), append(to, m.To)
	}
	if !slices.Equal(order, want.order) || !slices.Equal(to, want.to) {
		t.Fatalf("moves: got %v into %v, want %v into %v (worst %v, want %v)\n%s",
			order, to, want.order, want.to, got.WorstOverrun, want.worst, describe(p))
	}
	for i, m := range got.Moves {
		if !m.Start.Equal(want.starts[i]) || !m.End.Equal(want.ends[i]) {
			t.Fatalf("move %d: got %v to %v, want %v to %v\n%s", i, m.Start, m.End, want.starts[i], want.ends[i], describe(p))
		}
	}
	if got.WorstOverrun != want.worst || !got.Finish.Equal(want.finish) {
		t.Fatalf("worst, finish: got %v, %v, want %v, %v\n%s", got.WorstOverrun, got.Finish, want.worst, want.finish, describe(p))
	}
	if !got.Best {
		t.Fatalf("not proved best\n%s", describe(p))
	}
}
