package sequence

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// TestPartedAgainstHunt plans rooms without splits and joins both ways: they look
// for the same order with different arguments, in rooms too large to try every one.
func TestPartedAgainstHunt(t *testing.T) {
	d := rand.New(rand.NewPCG(21, 21))
	late := 0
	for range 300 {
		r := mixedRoom(t, d, 6+d.IntN(8))
		h, p := newHunt(r), newParted(r)
		want, got := h.best(), p.best()
		if !h.proved || !p.proved {
			t.Fatalf("proved: hunt %v, parted %v", h.proved, p.proved)
		}
		if !slices.Equal(got, want) {
			t.Fatalf("got %v, want %v: %+v", got, want, r.Problem)
		}
		late += b2i(p.limit > 0)
	}
	if late < 100 {
		t.Errorf("only %d rooms with an overrun; the test shows little", late)
	}
}
