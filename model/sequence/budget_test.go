package sequence_test

import (
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"drainboard/model/sequence"
)

// hardRoom is two dozen tanks of many volumes, all overdue, with three empty ones.
func hardRoom(volumes ...float64) sequence.Problem {
	return newDice(24).typical(24, 3, volumes, true, 2)
}

// TestBudget gives a hard room more and more nodes. Until the proof is done the
// plan says that it is not; what it finds moves as many and never gets worse
// than what no search at all would find.
func TestBudget(t *testing.T) {
	p := hardRoom(60, 90, 120, 150, 200)
	full := mustBest(t, p)
	if !full.Best || full.Nodes < 1000 {
		t.Fatalf("ample nodes: got best %v with %d nodes, want true with over 1000", full.Best, full.Nodes)
	}
	for _, budget := range []int{1, 10, 100, 500} {
		p.Budget = budget
		got := mustBest(t, p)
		if got.Best {
			t.Errorf("%d nodes: got best true, want false", budget)
		}
		if got.Nodes > budget {
			t.Errorf("%d nodes: got %d opened", budget, got.Nodes)
		}
		if len(got.Moves) != len(full.Moves) || got.WorstOverrun < full.WorstOverrun {
			t.Errorf("%d nodes: got %d moves, worst %v; want %d moves, no better than %v",
				budget, len(got.Moves), got.WorstOverrun, len(full.Moves), full.WorstOverrun)
		}
		if diff := cmp.Diff(got, mustBest(t, p)); diff != "" {
			t.Errorf("%d nodes, planned twice (-first +second):\n%s", budget, diff)
		}
	}
}

// TestDefaultBudget: where every tank has its own volume the default runs out.
func TestDefaultBudget(t *testing.T) {
	var volumes []float64
	for v := range 60 {
		volumes = append(volumes, 60+3*float64(v))
	}
	got := mustBest(t, hardRoom(volumes...))
	if got.Best || got.Nodes > sequence.DefaultBudget {
		t.Errorf("got best %v with %d nodes, want false with at most %d", got.Best, got.Nodes, sequence.DefaultBudget)
	}
}

// TestBudgetNeverLies plans small rooms with hardly any nodes: whatever calls
// itself best is the best of all orders.
func TestBudgetNeverLies(t *testing.T) {
	d := newDice(800)
	short := 0
	for range 3000 {
		p := d.room(6, 1+d.IntN(2), sequence.OldestFirst)
		p.Budget = 1 + d.IntN(4)
		got := mustBest(t, p)
		if got.Best {
			sameAsOracle(t, p, got, everyOrder(p))
		} else {
			short++
		}
	}
	if short == 0 {
		t.Error("no room ran out of nodes; the test shows nothing")
	}
}

// TestEqualVolumesNeedNoSearch: with equal volumes bound and likely orders settle
// nearly everything, at any size.
func TestEqualVolumesNeedNoSearch(t *testing.T) {
	for _, tanks := range []int{8, 16, 40, 100} {
		d := newDice(uint64(900 + tanks))
		for range 20 {
			p := d.typical(tanks, 1+d.IntN(3), []float64{120}, d.IntN(2) == 0, 1+d.IntN(2))
			if got := mustBest(t, p); !got.Best || got.Nodes > 3*tanks {
				t.Errorf("%d tanks: got best %v with %d nodes, want true with at most %d", tanks, got.Best, got.Nodes, 3*tanks)
			}
		}
	}
}

// TestRankInTimeNeedsNoSearch: where all go in rank order and in time, that is best
// at once.
func TestRankInTimeNeedsNoSearch(t *testing.T) {
	p := newDice(40).typical(40, 2, []float64{120}, false, 2)
	p.Grace = 100 * time.Hour
	got := mustBest(t, p)
	if !got.Best || got.Nodes != 0 || got.WorstOverrun != 0 {
		t.Errorf("got best %v, %d nodes, worst %v; want true, 0 and 0", got.Best, got.Nodes, got.WorstOverrun)
	}
	for i := 1; i < len(got.Moves); i++ {
		if ranksBefore(p, got.Moves[i].Source, got.Moves[i-1].Source) {
			t.Errorf("move %d ranks before move %d", i, i-1)
		}
	}
}
