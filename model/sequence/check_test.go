package sequence_test

import (
	"math"
	"testing"
	"time"

	"drainboard/model/sequence"
)

func TestRefusals(t *testing.T) {
	tests := []struct {
		name  string
		spoil func(p *sequence.Problem)
		want  string
	}{
		{"no time", func(p *sequence.Problem) { p.Now = time.Time{} }, "plan: no time given; give the time the session begins"},
		{"crew of three", func(p *sequence.Problem) { p.Crew = 3 }, "crew 3: give 1 or 2"},
		{"no order", func(p *sequence.Problem) { p.Order = "" }, `order "": give oldest-first, youngest-first or due-first`},
		{"grace below 0", func(p *sequence.Problem) { p.Grace = -time.Hour }, "grace -1h0m0s: give a time of 0 or more"},
		{"budget below 0", func(p *sequence.Problem) { p.Budget = -1 }, "budget -1: give 0 or more nodes"},
		{"no drain", func(p *sequence.Problem) { p.Pace.DrainLPM = 0 }, "pace: drain litres per minute is 0; give more than 0"},
		{"handling below 0", func(p *sequence.Problem) { p.Pace.HandleMinutes = -2 }, "pace: handle minutes is -2; give 0 or more"},
		{"wash not a number", func(p *sequence.Problem) { p.Pace.WashMinutes = math.NaN() }, "pace: wash minutes is NaN; give 0 or more"},
		{"no volume", func(p *sequence.Problem) { p.Tanks[0].Litres = 0 }, "tank A: a volume of 0 litres; give more than 0"},
		{"volume not a number", func(p *sequence.Problem) { p.Tanks[0].Litres = math.NaN() }, "tank A: a volume of NaN litres; give more than 0"},
		{"a lake", func(p *sequence.Problem) { p.Tanks[0].Litres = 6e6 }, "tank A: one step would take 1000006 minutes; check its volume and the room's pace"},
		{"unknown state", func(p *sequence.Problem) { p.Tanks[0].State = 9 }, "tank A: unknown state 9"},
		{"temperature not a number", func(p *sequence.Problem) { p.Tanks[0].Celsius = sequence.Known(math.NaN()) }, "tank A: temperature NaN; give a number or leave it unknown"},
		{"no such tank", func(p *sequence.Problem) { p.Sources[0].Tank = 2 }, "source: there is no tank number 2; give 0 to 1"},
		{"named twice", func(p *sequence.Problem) { p.Sources = append(p.Sources, p.Sources[0]) }, "tank B: named twice as a source; name it once"},
		{"source empty", func(p *sequence.Problem) { p.Sources[0].Tank = 0 }, "tank A: holds no larvae; leave it out of the sources"},
		{"no due time", func(p *sequence.Problem) { p.Sources[0].Due = time.Time{} }, "tank B: due 0001-01-01T00:00:00Z is over a century away; check its due time"},
		{"density below 0", func(p *sequence.Problem) { p.Sources[0].PerLitre = -1 }, "tank B: a density limit of -1 per litre; give 0 or more"},
		{"larvae below 0", func(p *sequence.Problem) { p.Sources[0].Larvae = sequence.Known(-5) }, "tank B: -5 larvae; give 0 or more, or leave it unknown"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			p := session(2, []sequence.Tank{tank("A", 120, sequence.Ready), tank("B", 120, sequence.Holding)}, source(1, 3, 60))
			tt.spoil(&p)
			_, err := sequence.Best(p)
			if err == nil || err.Error() != tt.want {
				t.Errorf("Best: got %v, want %s", err, tt.want)
			}
			if _, _, err := sequence.Retime(p, nil); err == nil || err.Error() != tt.want {
				t.Errorf("Retime: got %v, want %s", err, tt.want)
			}
		})
	}
}

func TestNothingToMove(t *testing.T) {
	p := session(1, []sequence.Tank{tank("A", 120, sequence.Dirty), tank("B", 60, sequence.Washed), tank("C", 60, sequence.Out)})
	plan := mustBest(t, p)
	if !plan.Best || len(plan.Moves) != 0 || len(plan.Preparations) != 2 || !plan.LastMoveEnd.Equal(noon) {
		t.Errorf("got %+v, want no move, two preparations, proved", plan)
	}
	// 8 + 120/12 minutes for the dirty tank, 60/12 for the washed one.
	if got, want := plan.Finish.Sub(noon), 23*time.Minute; got != want {
		t.Errorf("finish: got after %v, want %v", got, want)
	}
}

// TestSinceLaterThanNow: tanks ready "in the future" count as ready now, alike.
func TestSinceLaterThanNow(t *testing.T) {
	p := session(2, []sequence.Tank{tank("A", 120, sequence.Ready), tank("B", 120, sequence.Ready), tank("C", 120, sequence.Holding)}, source(2, 3, 60))
	p.Tanks[0].Since, p.Tanks[1].Since = noon.Add(2*time.Hour), noon.Add(time.Hour)
	got := mustBest(t, p).Moves[0]
	if !got.Start.Equal(noon) || got.To != 0 || got.WhyTo != "first in the room's order" {
		t.Errorf("got at %v into %d: %s; want at %v into 0: first in the room's order", got.Start, got.To, got.WhyTo, noon)
	}
}
