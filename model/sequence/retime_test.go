package sequence_test

import (
	"testing"
	"time"

	"drainboard/model/sequence"
)

func TestRetimeComplaints(t *testing.T) {
	const holding, ready = sequence.Holding, sequence.Ready
	tanks := []sequence.Tank{
		0: tank("A", 120, ready),
		1: tank("B", 120, holding),
		2: tank("C", 120, holding),
		3: tank("D", 60, ready),
		4: tank("E", 120, sequence.Out),
		5: tank("F", 120, holding), // not to be changed
		6: tank("G", 300, holding),
	}
	counted := source(2, 9, 900)
	counted.Larvae, counted.PerLitre = sequence.Known(12000), 100
	uncounted := source(1, 9, 900)
	uncounted.PerLitre = 100
	p := session(2, tanks, uncounted, counted, source(6, 9, 900))
	leg := func(from, to int) sequence.Leg { return sequence.Leg{From: from, To: to} }
	tests := []struct {
		name  string
		legs  []sequence.Leg
		at    int // the leg complained of
		why   string
		moves int
	}{
		{"no such source", []sequence.Leg{leg(9, 0), leg(1, 0)}, 0, "there is no tank number 9", 1},
		{"no such destination", []sequence.Leg{leg(1, 7), leg(2, 0)}, 0, "there is no tank number 7", 1},
		{"not a source", []sequence.Leg{leg(5, 0), leg(1, 0)}, 0, "F is not one of the tanks to change", 1},
		{"moved twice", []sequence.Leg{leg(1, 0), leg(1, 2), leg(2, 1)}, 1, "B has been moved already", 2},
		{"into itself", []sequence.Leg{leg(1, 1), leg(2, 0)}, 0, "B cannot be moved into itself", 1},
		{"out of use", []sequence.Leg{leg(1, 4), leg(2, 0)}, 0, "E is out of use", 1},
		{"filled before", []sequence.Leg{leg(1, 0), leg(2, 0)}, 1, "A holds the larvae of B by then", 1},
		{"emptied only later", []sequence.Leg{leg(1, 2), leg(2, 0)}, 0, "C still holds larvae then", 1},
		{
			"too small, density would not hold",
			[]sequence.Leg{leg(2, 3), leg(1, 0)},
			0,
			"D (60 L) is smaller than C (120 L) and 200.0 larvae per litre would pass the limit of 100", 1,
		},
		{
			"too small, not counted",
			[]sequence.Leg{leg(1, 3), leg(2, 0)},
			0,
			"D (60 L) is smaller than B (120 L) and its larvae have not been counted", 1,
		},
		{"too small, no limit", []sequence.Leg{leg(6, 0), leg(1, 0)}, 0, "A (120 L) is smaller than G (300 L)", 1},
		{"no tank by the rule", []sequence.Leg{leg(6, sequence.ByRule), leg(1, 0)}, 0, "no ready tank is large enough", 1},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			plan, complaints, err := sequence.Retime(p, tt.legs)
			if err != nil {
				t.Fatal(err)
			}
			want := sequence.Complaint{Leg: tt.at, From: tt.legs[tt.at].From, To: tt.legs[tt.at].To, Why: tt.why}
			if len(complaints) != 1 || complaints[0] != want {
				t.Errorf("complaints: got %+v, want %+v", complaints, want)
			}
			if len(plan.Moves) != tt.moves {
				t.Errorf("moves: got %d, want %d", len(plan.Moves), tt.moves)
			}
		})
	}
}

// TestRetimeChosen lists an order and a destination the rule would not take: the
// mover waits for the tank chosen, and what is left out is named.
func TestRetimeChosen(t *testing.T) {
	tanks := []sequence.Tank{tank("A", 120, sequence.Ready), tank("B", 120, sequence.Ready), tank("C", 120, 0), tank("D", 120, 0), tank("E", 120, 0)}
	p := session(2, tanks, source(2, 17, 900), source(3, 9, 900), source(4, 3, 900))
	plan, complaints, err := sequence.Retime(p, []sequence.Leg{{From: 3, To: 1}, {From: 2, To: 3}})
	if err != nil || complaints != nil {
		t.Fatal(complaints, err)
	}
	// A move takes 120/6 + 6 = 26 minutes, making ready 8 + 120/12 = 18.
	starts := []time.Duration{0, 44 * time.Minute}
	for i, m := range plan.Moves {
		if got := m.Start.Sub(noon); got != starts[i] || m.WhyTo != "chosen" {
			t.Errorf("move %d: got start after %v (%s), want %v (chosen)", i, got, m.WhyTo, starts[i])
		}
	}
	if got, want := plan.Moves[0].Why, "as listed"; got != want {
		t.Errorf("why: got %q, want %q", got, want)
	}
	if len(plan.Unmoved) != 1 || plan.Unmoved[0] != (sequence.Unmoved{Source: 2, Tank: 4, Why: "not in the list"}) {
		t.Errorf("unmoved: got %+v, want E, not in the list", plan.Unmoved)
	}
	if plan.Best {
		t.Error("Best: got true, want false, as nothing was proved")
	}
}
