package sequence_test

import (
	"slices"
	"strings"
	"testing"
	"time"

	"drainboard/model/sequence"
)

// tank and source shorten the tables below.
func tank(name string, litres float64, state sequence.State) sequence.Tank {
	return sequence.Tank{Name: name, Litres: litres, State: state, Since: noon.Add(-time.Hour)}
}

func source(tank, age, dueMinutes int) sequence.Source {
	return sequence.Source{Tank: tank, AgeDays: age, Due: noon.Add(time.Duration(dueMinutes) * time.Minute)}
}

func session(crew int, tanks []sequence.Tank, sources ...sequence.Source) sequence.Problem {
	return sequence.Problem{Now: noon, Tanks: tanks, Sources: sources, Order: sequence.OldestFirst, Crew: crew, Pace: housePace}
}

func suspect(s sequence.Source) sequence.Source {
	s.Suspect = true
	return s
}

func TestReasons(t *testing.T) {
	const holding, ready, dirty = sequence.Holding, sequence.Ready, sequence.Dirty
	equal := []sequence.Tank{tank("C1", 120, ready), tank("C2", 120, holding), tank("C3", 120, holding), tank("C4", 120, holding)}
	tests := []struct {
		name    string
		p       sequence.Problem
		why     []string
		whyTo   []string
		unmoved []string
	}{
		{
			name:  "age decides",
			p:     session(2, equal, source(1, 3, 900), source(2, 17, 900)),
			why:   []string{"oldest", "oldest"},
			whyTo: []string{"the only one ready", "the only one ready"},
		},
		{
			name:  "a suspect goes last, though it is oldest",
			p:     session(2, equal, source(1, 3, 900), suspect(source(2, 17, 900))),
			why:   []string{"oldest not suspect", "suspect, so last"},
			whyTo: []string{"the only one ready", "the only one ready"},
		},
		{
			name:  "a younger one would pass its limit",
			p:     session(2, equal, source(1, 3, 10), source(2, 17, 900)),
			why:   []string{"brought forward: it would pass its limit", "oldest"},
			whyTo: []string{"the only one ready", "the only one ready"},
		},
		{
			name:  "all are late; the worst lateness decides",
			p:     session(2, equal, source(1, 3, -60), source(2, 17, -20)),
			why:   []string{"brought forward: it would be 104 min past its limit", "oldest"},
			whyTo: []string{"the only one ready", "the only one ready"},
		},
		{
			name: "the large ones have to go while a large tank is empty",
			p: session(2, []sequence.Tank{tank("A", 200, ready), tank("B", 60, holding), tank("C", 200, holding)},
				source(1, 17, 900), source(2, 3, 900)),
			why:   []string{"else no tank large enough is left for it", "oldest"},
			whyTo: []string{"the only one ready", "the only one ready"},
		},
		{
			name: "only one is large enough, one fits nowhere",
			p: session(2, []sequence.Tank{tank("A", 60, ready), tank("B", 120, ready), tank("C", 120, holding), tank("D", 300, holding)},
				source(2, 3, 900), source(3, 17, 900)),
			why:     []string{"oldest that can be moved"},
			whyTo:   []string{"only B is large enough"},
			unmoved: []string{"no ready tank is large enough"},
		},
		{
			name: "a large tank must be emptied first",
			p: session(2, []sequence.Tank{tank("A", 60, ready), {Name: "B", Litres: 120}, tank("C", 120, holding)},
				sequence.Source{Tank: 1, AgeDays: 3, Due: noon.Add(time.Hour), Larvae: sequence.Known(600), PerLitre: 100}, source(2, 17, 900)),
			why:   []string{"no tank is large enough yet for C", "oldest"},
			whyTo: []string{"the only one ready", "the only one ready"},
		},
		{
			name:    "nothing is empty",
			p:       session(2, equal[1:], source(0, 3, 900)),
			unmoved: []string{"no tank is empty"},
		},
		{
			name:  "a dirty tank counts as empty",
			p:     session(1, []sequence.Tank{tank("A", 120, dirty), tank("B", 120, holding)}, source(1, 3, 900)),
			why:   []string{"oldest"},
			whyTo: []string{"the only one ready"},
		},
		{
			name: "the nearer temperature",
			p: session(2, []sequence.Tank{
				{Name: "A", Litres: 120, State: ready, Since: noon.Add(-2 * time.Hour), Celsius: sequence.Known(25)},
				{Name: "B", Litres: 120, State: ready, Since: noon.Add(-time.Hour), Celsius: sequence.Known(27)},
				{Name: "C", Litres: 120, Celsius: sequence.Known(27.5)},
			}, source(2, 3, 900)),
			why: []string{"oldest"}, whyTo: []string{"smallest difference"},
		},
		{
			name: "equal differences: ready longest",
			p: session(2, []sequence.Tank{
				{Name: "A", Litres: 120, State: ready, Since: noon.Add(-time.Hour), Celsius: sequence.Known(26.2)},
				{Name: "B", Litres: 120, State: ready, Since: noon.Add(-2 * time.Hour), Celsius: sequence.Known(28.6)},
				{Name: "C", Litres: 120, Celsius: sequence.Known(27.4)},
			}, source(2, 3, 900)),
			why: []string{"oldest"}, whyTo: []string{"ready longest"},
		},
		{
			name: "nothing known, ready alike: the room's order",
			p: session(2, []sequence.Tank{tank("A", 120, ready), tank("B", 120, ready), tank("C", 120, holding)},
				source(2, 3, 900)),
			why: []string{"oldest"}, whyTo: []string{"first in the room's order"},
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			plan := mustBest(t, tt.p)
			var why, whyTo, unmoved []string
			for _, m := range plan.Moves {
				why, whyTo = append(why, m.Why), append(whyTo, m.WhyTo)
			}
			for _, u := range plan.Unmoved {
				unmoved = append(unmoved, u.Why)
			}
			if !slices.Equal(why, tt.why) || !slices.Equal(whyTo, tt.whyTo) || !slices.Equal(unmoved, tt.unmoved) {
				t.Errorf("got  %q\n     %q\n     %q\nwant %q\n     %q\n     %q", why, whyTo, unmoved, tt.why, tt.whyTo, tt.unmoved)
			}
		})
	}
}

// TestReasonsAreTrue checks, with the oracle's own timetable, that a source said to
// be first in rank is, and that putting the first in rank in the place of one
// brought forward does make the plan worse. Plans that ran out of nodes as well.
func TestReasonsAreTrue(t *testing.T) {
	d := newDice(700)
	for range 4000 {
		p := d.room(4+d.IntN(7), 1+d.IntN(2), oneOf(d, sequence.OldestFirst, sequence.YoungestFirst, sequence.DueFirst))
		p.Budget = oneOf(d, 0, 1, 5)
		plan := mustBest(t, p)
		var order []int
		for _, m := range plan.Moves {
			order = append(order, m.Source)
		}
		for k, m := range plan.Moves {
			first := order[k]
			for _, s := range order[k:] {
				if ranksBefore(p, s, first) {
					first = s
				}
			}
			ranked := strings.HasPrefix(m.Why, "oldest") || strings.HasPrefix(m.Why, "youngest") ||
				strings.HasPrefix(m.Why, "due first") || m.Why == "suspect, so last"
			if ranked != (first == m.Source) {
				t.Fatalf("move %d: why %q, first in rank is source %d\n%s", k, m.Why, first, describe(p))
			}
			if !ranked && !worseWith(p, order, k, first, plan.WorstOverrun) {
				t.Fatalf("move %d: why %q, but source %d could go instead\n%s", k, m.Why, first, describe(p))
			}
		}
	}
}

// worseWith says whether the order fails or is later when first goes at place k.
func worseWith(p sequence.Problem, order []int, k, first int, worst time.Duration) bool {
	swapped := slices.DeleteFunc(slices.Clone(order), func(s int) bool { return s == first })
	got, ok := play(p, slices.Insert(swapped, k, first))
	return !ok || got.worst > worst
}
