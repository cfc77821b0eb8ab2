package sequence_test

import (
	"cmp"
	"fmt"
	"slices"
	"testing"
	"time"

	"drainboard/model/sequence"
)

// TestJackson checks the worst overrun against Jackson (1955): on one machine the
// earliest due date first makes the greatest lateness smallest. With a single
// empty tank moves and preparations alternate and are one machine; a start judged
// against due + grace is an end judged against due + grace + move + preparation.
func TestJackson(t *testing.T) {
	for _, crew := range []int{1, 2} {
		t.Run(fmt.Sprintf("crew %d", crew), func(t *testing.T) {
			d := newDice(uint64(500 + crew))
			for range 40 {
				p := d.oneEmpty(30, crew)
				got := mustBest(t, p)
				if want := jackson(p); got.WorstOverrun != want || !got.Best {
					t.Fatalf("got worst overrun %v (best %v), want %v\n%s", got.WorstOverrun, got.Best, want, describe(p))
				}
			}
		})
	}
}

// oneEmpty draws a room with one ready tank and larvae so few that they fit in any.
func (d dice) oneEmpty(sources, crew int) sequence.Problem {
	p := sequence.Problem{Now: noon, Order: oneOf(d, sequence.OldestFirst, sequence.YoungestFirst), Crew: crew, Grace: time.Hour, Pace: housePace}
	p.Tanks = []sequence.Tank{{Name: "E", Litres: 100, State: sequence.Ready, Since: noon}}
	for i := range sources {
		p.Tanks = append(p.Tanks, sequence.Tank{Name: fmt.Sprintf("T%d", i), Litres: 40 + float64(d.IntN(200))})
		p.Sources = append(p.Sources, sequence.Source{
			Tank: i + 1, AgeDays: d.IntN(20), Due: noon.Add(time.Duration(d.IntN(900)-300) * time.Minute),
			Larvae: sequence.Known(10), PerLitre: 100,
		})
	}
	return p
}

func jackson(p sequence.Problem) time.Duration {
	due := func(s int) time.Time {
		return p.Sources[s].Due.Add(p.Grace + moving(p, s) + preparing(p, p.Sources[s].Tank))
	}
	order := make([]int, len(p.Sources))
	for s := range order {
		order[s] = s
	}
	slices.SortFunc(order, func(a, b int) int { return due(a).Compare(due(b)) })
	worst, now := time.Duration(0), p.Now
	for _, s := range order {
		worst = max(worst, now.Sub(p.Sources[s].Due.Add(p.Grace)))
		now = now.Add(moving(p, s) + preparing(p, p.Sources[s].Tank))
	}
	return worst
}

// TestJohnson checks the end of a session of two against Johnson (1954). While
// there are ready tanks enough the mover never waits, and mover and washer are a
// flow shop of two machines: every order must end as the flow shop's recurrence
// says, and Johnson's order must end first of all.
func TestJohnson(t *testing.T) {
	d := newDice(600)
	for range 40 {
		p := d.manyReady(5)
		least := time.Duration(0)
		for _, order := range permutations(len(p.Sources)) {
			got := finish(t, p, order)
			if want := flowShop(p, order); got != want {
				t.Fatalf("order %v: got end after %v, want %v\n%s", order, got, want, describe(p))
			}
			if least == 0 || got < least {
				least = got
			}
		}
		if got := finish(t, p, johnson(p)); got != least {
			t.Fatalf("Johnson's order %v: got end after %v, want %v\n%s", johnson(p), got, least, describe(p))
		}
	}
}

// manyReady draws a room with a ready tank for every source. The small tanks take
// longer to prepare than to move, the large ones the other way about.
func (d dice) manyReady(n int) sequence.Problem {
	p := sequence.Problem{
		Now: noon, Order: sequence.OldestFirst, Crew: 2,
		Pace: sequence.Pace{HandleMinutes: 1, WashMinutes: 12, DrainLPM: 3, FillLPM: 12},
	}
	for i := range n {
		p.Tanks = append(p.Tanks,
			sequence.Tank{Name: fmt.Sprintf("E%d", i), Litres: 200, State: sequence.Ready, Since: noon},
			sequence.Tank{Name: fmt.Sprintf("T%d", i), Litres: 20 + 5*float64(d.IntN(20))})
		p.Sources = append(p.Sources, sequence.Source{Tank: 2*i + 1, Due: noon})
	}
	return p
}

// finish is how long the crew works when the sources go in this order.
func finish(t *testing.T, p sequence.Problem, order []int) time.Duration {
	t.Helper()
	var legs []sequence.Leg
	for _, s := range order {
		legs = append(legs, sequence.Leg{From: p.Sources[s].Tank, To: sequence.ByRule})
	}
	plan, complaints, err := sequence.Retime(p, legs)
	if err != nil || len(complaints) > 0 {
		t.Fatalf("Retime: %v, %v", err, complaints)
	}
	return plan.Finish.Sub(p.Now)
}

func flowShop(p sequence.Problem, order []int) time.Duration {
	var first, second time.Duration
	for _, s := range order {
		first += moving(p, s)
		second = max(first, second) + preparing(p, p.Sources[s].Tank)
	}
	return second
}

// johnson puts jobs shorter on the first machine first, shortest first, and the
// others last, shortest on the second machine last.
func johnson(p sequence.Problem) []int {
	var early, late []int
	for s := range p.Sources {
		if moving(p, s) < preparing(p, p.Sources[s].Tank) {
			early = append(early, s)
		} else {
			late = append(late, s)
		}
	}
	slices.SortFunc(early, func(a, b int) int { return cmp.Compare(moving(p, a), moving(p, b)) })
	slices.SortFunc(late, func(a, b int) int {
		return cmp.Compare(preparing(p, p.Sources[b].Tank), preparing(p, p.Sources[a].Tank))
	})
	return append(early, late...)
}

func permutations(n int) [][]int {
	if n == 0 {
		return [][]int{nil}
	}
	var out [][]int
	for _, shorter := range permutations(n - 1) {
		for i := range n {
			out = append(out, slices.Insert(slices.Clone(shorter), i, n-1))
		}
	}
	return out
}
