package sequence_test

import (
	"slices"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"drainboard/model/sequence"
)

func counted(s sequence.Source, larvae, perLitre float64) sequence.Source {
	s.Larvae, s.PerLitre = sequence.Known(larvae), perLitre
	return s
}

func inParts(s sequence.Source, parts int) sequence.Source {
	s.Parts = parts
	return s
}

// line is a move in minutes from the beginning.
type line struct {
	From, To   string
	Start, End int
	Share      float64
	Part       int
	Join       bool
	WhyTo      string
}

func linesOf(p sequence.Problem, plan sequence.Plan) []line {
	var lines []line
	for _, m := range plan.Moves {
		lines = append(lines, line{
			p.Tanks[m.From].Name, p.Tanks[m.To].Name, int(m.Start.Sub(noon).Minutes()), int(m.End.Sub(noon).Minutes()),
			m.Share, m.Part, m.Join, m.WhyTo,
		})
	}
	return lines
}

// TestSplitAndJoin: timetables worked out by hand. A move of 120 L takes 120/6 + 6
// = 26 minutes, half of it 60/6 + 6 = 16, a third 40/6 + 6 = 12 2/3; making a tank of
// 120 L ready takes 8 + 120/12 = 18.
func TestSplitAndJoin(t *testing.T) {
	const holding, ready = sequence.Holding, sequence.Ready
	tests := []struct {
		name    string
		p       sequence.Problem
		joins   []sequence.Pair
		want    []line
		finish  int
		empty   []int
		unmoved []string
	}{
		{
			name: "a half each; the tank is washed when it is empty",
			p: session(2, []sequence.Tank{tank("A", 120, ready), tank("B", 120, ready), tank("C", 120, holding), tank("D", 120, holding)},
				inParts(counted(source(2, 9, 900), 15000, 100), 2), source(3, 3, 900)),
			want: []line{
				{"C", "A", 0, 16, 0.5, 1, false, "first in the room's order"},
				{"C", "B", 16, 32, 1, 2, false, "the only one ready"},
				{"D", "C", 50, 76, 1, 0, false, "the only one ready"},
			},
			finish: 94, empty: []int{3},
		},
		{
			name: "halves go into smaller tanks in which the limit holds",
			p: session(1, []sequence.Tank{tank("A", 60, ready), tank("B", 60, ready), tank("C", 120, holding)},
				inParts(counted(source(2, 9, 900), 9000, 100), 2)),
			want: []line{
				{"C", "A", 0, 16, 0.5, 1, false, "first in the room's order"},
				{"C", "B", 16, 32, 1, 2, false, "the only one ready"},
			},
			finish: 50, empty: []int{2},
		},
		{
			name: "one empty tank is not enough for a split",
			p: session(2, []sequence.Tank{tank("A", 120, ready), tank("C", 120, holding), tank("D", 120, holding)},
				inParts(counted(source(1, 9, 900), 15000, 100), 2), source(2, 3, 900)),
			want:   []line{{"D", "A", 0, 26, 1, 0, false, "the only one ready"}},
			finish: 44, empty: []int{2}, unmoved: []string{"no ready tanks are left for all of its 2 parts"},
		},
		{
			name: "a join needs no tank and frees one",
			p: session(2, []sequence.Tank{tank("A", 120, ready), tank("C", 120, holding), tank("D", 120, holding)},
				counted(source(1, 9, 900), 4000, 100), counted(source(2, 9, 950), 5000, 100)),
			joins: []sequence.Pair{{A: 2, B: 1}},
			want: []line{
				{"C", "A", 0, 26, 1, 0, false, "the only one ready"},
				{"D", "A", 26, 52, 1, 0, true, "to join the larvae of C"},
			},
			finish: 70, empty: []int{1, 2},
		},
		{
			name: "together too dense for any tank, so they go apart",
			p: session(2, []sequence.Tank{tank("A", 120, ready), tank("C", 120, holding), tank("D", 120, holding)},
				counted(source(1, 9, 900), 4000, 60), counted(source(2, 9, 950), 5000, 60)),
			joins: []sequence.Pair{{A: 1, B: 2}},
			want: []line{
				{"C", "A", 0, 26, 1, 0, false, "the only one ready"},
				{"D", "C", 44, 70, 1, 0, false, "the only one ready"},
			},
			finish: 88, empty: []int{2},
		},
		{
			name: "the first goes where there is room for both",
			p: session(2, []sequence.Tank{tank("A", 120, ready), tank("B", 200, ready), tank("C", 120, holding), tank("D", 120, holding)},
				counted(source(2, 9, 900), 6000, 50), counted(source(3, 9, 950), 4000, 50)),
			joins: []sequence.Pair{{A: 2, B: 3}},
			want: []line{
				{"C", "B", 0, 26, 1, 0, false, "only B is large enough"},
				{"D", "B", 26, 52, 1, 0, true, "to join the larvae of C"},
			},
			finish: 70, empty: []int{0, 2, 3},
		},
		{
			name: "uncounted larvae are joined in a tank as large as the two",
			p: session(1, []sequence.Tank{tank("A", 120, ready), tank("B", 240, ready), tank("C", 120, holding), tank("D", 120, holding)},
				source(2, 9, 900), source(3, 9, 950)),
			joins: []sequence.Pair{{A: 2, B: 3}},
			want: []line{
				{"C", "B", 0, 26, 1, 0, false, "only B is large enough"},
				{"D", "B", 26, 52, 1, 0, true, "to join the larvae of C"},
			},
			finish: 88, empty: []int{0, 2, 3},
		},
		{
			name: "the tank freed by a join takes the second half of a split",
			p: session(2, []sequence.Tank{tank("A", 120, ready), tank("C", 120, holding), tank("D", 120, holding), tank("E", 120, holding)},
				counted(source(1, 9, 900), 4000, 100), counted(source(2, 9, 950), 5000, 100),
				inParts(counted(source(3, 17, 900), 15000, 100), 2)),
			joins: []sequence.Pair{{A: 1, B: 2}},
			want: []line{
				{"C", "A", 0, 26, 1, 0, false, "the only one ready"},
				{"E", "C", 44, 60, 0.5, 1, false, "the only one ready"},
				{"D", "A", 60, 86, 1, 0, true, "to join the larvae of C"},
				{"E", "D", 104, 120, 1, 2, false, "the only one ready"},
			},
			finish: 138, empty: []int{3},
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			tt.p.Joins = tt.joins
			plan := mustBest(t, tt.p)
			if diff := cmp.Diff(tt.want, linesOf(tt.p, plan)); diff != "" {
				t.Errorf("moves (-want +got):\n%s", diff)
			}
			var unmoved []string
			for _, u := range plan.Unmoved {
				unmoved = append(unmoved, u.Why)
			}
			if !slices.Equal(unmoved, tt.unmoved) || !slices.Equal(plan.EmptyAfter, tt.empty) || !plan.Best {
				t.Errorf("unmoved %q, empty after %v, best %v; want %q, %v, true", unmoved, plan.EmptyAfter, plan.Best, tt.unmoved, tt.empty)
			}
			if got := int(plan.Finish.Sub(noon).Minutes()); got != tt.finish {
				t.Errorf("finish after %d min; want %d", got, tt.finish)
			}
		})
	}
}

func TestThirds(t *testing.T) {
	p := session(2, []sequence.Tank{tank("A", 120, sequence.Ready), tank("B", 120, sequence.Ready), tank("C", 120, sequence.Ready), tank("D", 120, 0)},
		inParts(source(3, 9, 900), 3))
	plan := mustBest(t, p)
	for i, want := range []float64{1.0 / 3, 0.5, 1} { // of what is left then
		m := plan.Moves[i]
		if m.Share != want || m.Part != i+1 || m.End.Sub(m.Start) != 12*time.Minute+40*time.Second {
			t.Errorf("part %d: got share %v, part %d, %v; want %v and 12m40s", i+1, m.Share, m.Part, m.End.Sub(m.Start), want)
		}
	}
}

func TestRetimeSplitAndJoinComplaints(t *testing.T) {
	tanks := []sequence.Tank{
		0: tank("A", 120, sequence.Ready),
		1: tank("B", 120, sequence.Ready),
		2: tank("C", 120, 0),
		3: tank("D", 120, 0),
		4: tank("E", 120, 0),
		5: tank("F", 60, sequence.Ready),
	}
	pair := func(larvae sequence.Reading, perLitre float64) sequence.Problem {
		c, d := source(2, 9, 900), source(3, 9, 900)
		c.Larvae, c.PerLitre, d.Larvae, d.PerLitre = sequence.Known(8000), perLitre, larvae, perLitre
		p := session(2, tanks, c, d, inParts(counted(source(4, 9, 900), 15000, 100), 2))
		p.Joins = []sequence.Pair{{A: 2, B: 3}}
		return p
	}
	leg := func(from, to int) sequence.Leg { return sequence.Leg{From: from, To: to} }
	tests := []struct {
		name  string
		p     sequence.Problem
		legs  []sequence.Leg
		why   string // of the last leg
		stays string // of E
	}{
		{"a third half", pair(sequence.Known(100), 100), []sequence.Leg{leg(4, 0), leg(4, 1), leg(4, 5)}, "E has been moved already", ""},
		{"both halves in one tank", pair(sequence.Known(100), 100), []sequence.Leg{leg(4, 0), leg(4, 0)}, "A holds the larvae of E by then", "A holds the larvae of E by then"},
		{
			"a half too dense", pair(sequence.Known(100), 100),
			[]sequence.Leg{leg(4, 0), leg(4, 5)},
			"F (60 L) is smaller than E (120 L) and 125.0 larvae per litre would pass the limit of 100",
			"F (60 L) is smaller than E (120 L) and 125.0 larvae per litre would pass the limit of 100",
		},
		{"one half only", pair(sequence.Known(100), 100), []sequence.Leg{leg(4, 0)}, "", "1 of its 2 parts not in the list"},
		{"not at all", pair(sequence.Known(100), 100), []sequence.Leg{leg(2, 0), leg(3, 0)}, "", "not in the list"},
		{
			"too dense together", pair(sequence.Known(6000), 100),
			[]sequence.Leg{leg(3, 0), leg(2, 0)},
			"A (120 L) would hold D and C: 116.7 larvae per litre would pass the limit of 100", "not in the list",
		},
		{
			"not counted", pair(sequence.Reading{}, 100),
			[]sequence.Leg{leg(2, 0), leg(3, 0)},
			"A (120 L) would hold C and D and their larvae have not been counted", "not in the list",
		},
		{
			"no limit", pair(sequence.Known(100), 0),
			[]sequence.Leg{leg(2, 0), leg(3, 0)},
			"A (120 L) would hold C and D and is smaller than the two together", "not in the list",
		},
		{"not named as a pair", pair(sequence.Known(100), 100), []sequence.Leg{leg(2, 0), leg(4, 0)}, "A holds the larvae of C by then", "A holds the larvae of C by then"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			plan, complaints, err := sequence.Retime(tt.p, tt.legs)
			if err != nil {
				t.Fatal(err)
			}
			why := ""
			for _, c := range complaints {
				why += c.Why
			}
			if why != tt.why || len(complaints)+len(plan.Moves) != len(tt.legs) {
				t.Errorf("complaints %+v of %d moves; want %q of the last leg", complaints, len(plan.Moves), tt.why)
			}
			stays := ""
			for _, u := range plan.Unmoved {
				if u.Tank == 4 {
					stays = u.Why
				}
			}
			if stays != tt.stays {
				t.Errorf("E stays: %q; want %q", stays, tt.stays)
			}
		})
	}
}

// TestRetimeJoinChosen: people may part a pair, and join it where the rule would not
// have gone.
func TestRetimeJoinChosen(t *testing.T) {
	p := session(2, []sequence.Tank{tank("A", 120, sequence.Ready), tank("B", 120, sequence.Ready), tank("C", 120, 0), tank("D", 120, 0)},
		counted(source(2, 9, 900), 1000, 100), counted(source(3, 9, 900), 1000, 100))
	p.Joins = []sequence.Pair{{A: 2, B: 3}}
	for _, tt := range []struct {
		name string
		legs []sequence.Leg
		want []line
	}{
		{"apart", []sequence.Leg{{From: 3, To: 0}, {From: 2, To: 1}}, []line{
			{"D", "A", 0, 26, 1, 0, false, "first in the room's order"}, {"C", "B", 26, 52, 1, 0, false, "chosen"},
		}},
		{"in B", []sequence.Leg{{From: 3, To: 1}, {From: 2, To: sequence.ByRule}}, []line{
			{"D", "B", 0, 26, 1, 0, false, "chosen"}, {"C", "B", 26, 52, 1, 0, true, "to join the larvae of D"},
		}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			plan, complaints, err := sequence.Retime(p, tt.legs)
			if err != nil || complaints != nil {
				t.Fatal(complaints, err)
			}
			if diff := cmp.Diff(tt.want, linesOf(p, plan)); diff != "" {
				t.Errorf("moves (-want +got):\n%s", diff)
			}
		})
	}
}

func TestSplitAndJoinRefusals(t *testing.T) {
	tests := []struct {
		name  string
		spoil func(p *sequence.Problem)
		want  string
	}{
		{"too many parts", func(p *sequence.Problem) { p.Sources[0].Parts = 10 }, "tank B: split into 10 parts; give 2 to 9, or 0 to move it whole"},
		{"fewer than none", func(p *sequence.Problem) { p.Sources[0].Parts = -1 }, "tank B: split into -1 parts; give 2 to 9, or 0 to move it whole"},
		{"no such tank", func(p *sequence.Problem) { p.Joins = []sequence.Pair{{A: 1, B: 9}} }, "join: there is no tank number 9; give 0 to 3"},
		{"not to be changed", func(p *sequence.Problem) { p.Joins = []sequence.Pair{{A: 0, B: 1}} }, "join: A is not one of the tanks to change; add it to them"},
		{"itself", func(p *sequence.Problem) { p.Joins = []sequence.Pair{{A: 1, B: 1}} }, "join: B with itself; name two tanks"},
		{"twice", func(p *sequence.Problem) { p.Joins = []sequence.Pair{{A: 1, B: 2}, {A: 2, B: 3}} }, "join: C with D; a tank is joined with one other only"},
		{"two ages", func(p *sequence.Problem) { p.Sources[0].AgeDays = 5; p.Joins = []sequence.Pair{{A: 1, B: 2}} }, "join: B and C hold larvae of two ages; only those of one batch go together"},
		{"split as well", func(p *sequence.Problem) { p.Sources[1].Parts = 2; p.Joins = []sequence.Pair{{A: 1, B: 2}} }, "join: C is split as well; choose one"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			p := session(2, []sequence.Tank{tank("A", 120, sequence.Ready), tank("B", 120, 0), tank("C", 120, 0), tank("D", 120, 0)},
				source(1, 3, 60), source(2, 3, 60), source(3, 3, 60))
			tt.spoil(&p)
			if _, err := sequence.Best(p); err == nil || err.Error() != tt.want {
				t.Errorf("Best: got %v, want %s", err, tt.want)
			}
			if _, _, err := sequence.Retime(p, nil); err == nil || err.Error() != tt.want {
				t.Errorf("Retime: got %v, want %s", err, tt.want)
			}
		})
	}
}
