package sequence_test

import (
	"fmt"
	"slices"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"drainboard/model/sequence"
)

// sharedRoom draws a small room and splits or joins some of its sources, up to so
// many moves in all.
func (d dice) sharedRoom(tanks, moves, crew int, order sequence.Order) sequence.Problem {
	p := d.room(tanks, crew, order)
	for len(p.Sources) > moves {
		p.Sources = p.Sources[1:]
	}
	spare := moves - len(p.Sources)
	free := d.Perm(len(p.Sources))
	if len(free) >= 2 && d.IntN(2) == 0 {
		d.join(&p, free[0], free[1])
		if free = free[2:]; len(free) >= 2 && d.IntN(3) == 0 {
			d.join(&p, free[0], free[1])
			free = free[2:]
		}
	}
	for _, s := range free {
		if k := oneOf(d, 0, 2, 2, 3); k > 1 && k-1 <= spare {
			p.Sources[s].Parts = k
			spare -= k - 1
		}
	}
	return p
}

// join names two sources to be put together, and gives them one age.
func (d dice) join(p *sequence.Problem, a, b int) {
	sa, sb := &p.Sources[a], &p.Sources[b]
	sb.AgeDays, sb.PerLitre = sa.AgeDays, sa.PerLitre
	if d.IntN(2) == 0 {
		sa.Larvae, sb.Larvae = sequence.Known(oneOf(d, 1000, 3000, 6000.0)), sequence.Known(oneOf(d, 500, 2000.0))
		sa.PerLitre = oneOf(d, 20, 40, 100.0)
		sb.PerLitre = sa.PerLitre
	}
	p.Joins = append(p.Joins, sequence.Pair{A: sa.Tank, B: sb.Tank})
}

func describeShared(p sequence.Problem) string {
	out := describe(p)
	for i, s := range p.Sources {
		if s.Parts > 1 {
			out += fmt.Sprintf("  source %d in %d parts\n", i, s.Parts)
		}
	}
	return out + fmt.Sprintf("  joins %v\n", p.Joins)
}

// TestSharedAgainstEveryOrder plans random rooms of up to six moves and compares
// with the best of all orders of all parts, acted out one by one.
func TestSharedAgainstEveryOrder(t *testing.T) {
	t.Logf("seed %d (set with -seed)", *seed)
	for _, crew := range []int{1, 2} {
		for k, order := range []sequence.Order{sequence.OldestFirst, sequence.YoungestFirst, sequence.DueFirst} {
			t.Run(fmt.Sprintf("crew %d %s", crew, order), func(t *testing.T) {
				d := newDice(uint64(2000 + 10*crew + k))
				split, joined, stayed := 0, 0, 0
				for range *rooms {
					p := d.sharedRoom(oneOf(d, 3, 4, 5, 6, 6, 7), oneOf(d, 4, 5, 5, 6), crew, order)
					got := mustBest(t, p)
					sameAsOracle(t, p, got, everySharedOrder(p))
					for _, m := range got.Moves {
						split += min(m.Part, 1)
						if m.Join {
							joined++
						}
					}
					stayed += min(1, len(got.Unmoved))
				}
				t.Logf("%d parts, %d joins, %d rooms with sources that stay", split, joined, stayed)
				if few := *rooms / 20; split < few || joined < few || stayed < few {
					t.Error("the rooms show little")
				}
			})
		}
	}
}

// TestSharedBudgetNeverLies: whatever calls itself best is the best of all orders.
func TestSharedBudgetNeverLies(t *testing.T) {
	d := newDice(2100)
	short := 0
	for range *rooms {
		p := d.sharedRoom(6, 6, 1+d.IntN(2), sequence.OldestFirst)
		p.Budget = 1 + d.IntN(4)
		if got := mustBest(t, p); got.Best {
			sameAsOracle(t, p, got, everySharedOrder(p))
		} else if short++; got.Nodes > p.Budget {
			t.Fatalf("%d nodes opened of %d", got.Nodes, p.Budget)
		}
	}
	if short == 0 {
		t.Error("no room ran out of nodes; the test shows nothing")
	}
}

func drawShared(t *rapid.T) (dice, sequence.Problem) {
	tanks := rapid.IntRange(2, 9).Draw(t, "tanks")
	crew := rapid.IntRange(1, 2).Draw(t, "crew")
	d := newDice(rapid.Uint64().Draw(t, "dice"))
	return d, d.sharedRoom(tanks, tanks+1, crew, sequence.OldestFirst)
}

func TestSharedBestHoldsTogether(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, p := drawShared(t)
		plan, err := sequence.Best(p)
		if err != nil {
			t.Fatal(err)
		}
		sharedHolds(t, p, plan)
		for _, u := range plan.Unmoved {
			if moved(plan, u.Source) > 0 {
				t.Fatalf("source %d is moved in part only\n%s", u.Source, describeShared(p))
			}
		}
	})
}

func TestSharedRetimeHoldsTogether(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, p := drawShared(t)
		var legs []sequence.Leg
		for range d.IntN(15) {
			legs = append(legs, sequence.Leg{From: d.IntN(len(p.Tanks)), To: d.IntN(len(p.Tanks)+1) - 1})
		}
		plan, complaints, err := sequence.Retime(p, legs)
		if err != nil {
			t.Fatal(err)
		}
		if got := len(plan.Moves) + len(complaints); got != len(legs) {
			t.Fatalf("moves and complaints: got %d, want one for each of %d legs", got, len(legs))
		}
		sharedHolds(t, p, plan)
	})
}

// TestSharedRetimeOfBest times the best order once more: the same plan, reasons
// and all, but for the proof.
func TestSharedRetimeOfBest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, p := drawShared(t)
		want, err := sequence.Best(p)
		if err != nil {
			t.Fatal(err)
		}
		want.Best, want.Nodes = false, 0
		listed, byRule := legsOf(want)
		for i := range want.Unmoved {
			want.Unmoved[i].Why = "not in the list"
		}
		for _, legs := range [][]sequence.Leg{listed, byRule} {
			got, complaints, err := sequence.Retime(p, legs)
			if err != nil || complaints != nil {
				t.Fatalf("Retime: %v, %v", complaints, err)
			}
			if diff := cmp.Diff(want, got); diff != "" {
				t.Fatalf("plan (-want +got):\n%s", diff)
			}
		}
	})
}

// TestSharedReasonsAreTrue checks with the oracle that putting the first in rank in
// the place of one brought forward does make the plan worse, proved or not.
func TestSharedReasonsAreTrue(t *testing.T) {
	d := newDice(2200)
	for range *rooms {
		p := d.sharedRoom(4+d.IntN(6), 9, 1+d.IntN(2), sequence.OldestFirst)
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
			if first == m.Source {
				continue
			}
			at := k + slices.Index(order[k:], first)
			swapped := slices.Insert(slices.Delete(slices.Clone(order), at, at+1), k, first)
			if got, ok := actOut(p, swapped); ok && got.worst <= plan.WorstOverrun || m.Why == "as listed" {
				t.Fatalf("move %d: why %q, but source %d could go instead\n%s", k, m.Why, first, describeShared(p))
			}
		}
	}
}

func moved(plan sequence.Plan, source int) int {
	n := 0
	for _, m := range plan.Moves {
		if m.Source == source {
			n++
		}
	}
	return n
}

// sharedHolds checks what must be true of any plan with splits and joins: larvae
// are neither lost nor doubled, and every tank that takes some is empty, prepared
// and large enough, or holds no others than those they are to be put together with.
func sharedHolds(t *rapid.T, p sequence.Problem, plan sequence.Plan) {
	t.Helper()
	checkPeople(t, p, plan)
	checkSums(t, p, plan)
	checkShares(t, p, plan)
	checkDestinations(t, p, plan)
}

func checkShares(t *rapid.T, p sequence.Problem, plan sequence.Plan) {
	t.Helper()
	left := make([]float64, len(p.Sources))
	for s := range left {
		left[s] = 1
	}
	for _, m := range plan.Moves {
		taken := left[m.Source] * m.Share
		left[m.Source] -= taken
		if want := 1 / float64(partsOf(p, m.Source)); taken < want-1e-9 || taken > want+1e-9 {
			t.Fatalf("a part of source %d: got %v of it, want %v", m.Source, taken, want)
		}
		if got, want := m.End.Sub(m.Start), movingPart(p, m.Source); got != want {
			t.Fatalf("move from %d takes %v, want %v", m.From, got, want)
		}
		if (m.Part > 0) != (partsOf(p, m.Source) > 1) || m.Why == "" || m.WhyTo == "" {
			t.Fatalf("move from %d: part %d, why %q, %q", m.From, m.Part, m.Why, m.WhyTo)
		}
	}
	for s, rest := range left {
		stays := slices.ContainsFunc(plan.Unmoved, func(u sequence.Unmoved) bool { return u.Source == s })
		if stays != (rest > 1e-9) {
			t.Fatalf("source %d: %v of it is left, unmoved %v", s, rest, stays)
		}
	}
}

// checkDestinations plays what stands in every tank.
func checkDestinations(t *rapid.T, p sequence.Problem, plan sequence.Plan) {
	t.Helper()
	ready, holds := map[int]time.Time{}, map[int][]int{}
	for i, tank := range p.Tanks {
		if tank.State == sequence.Ready {
			ready[i] = p.Now
		}
	}
	for _, prep := range plan.Preparations {
		ready[prep.Tank] = prep.End
	}
	for _, m := range plan.Moves {
		at, ok := ready[m.To]
		if !ok || m.Start.Before(at) {
			t.Fatalf("move into %d at %v, ready at %v (%v)", m.To, m.Start, at, ok)
		}
		there := holds[m.To]
		switch {
		case m.Join != (len(there) > 0):
			t.Fatalf("move into %d: join %v, but it holds %v", m.To, m.Join, there)
		case m.Join && (len(there) > 1 || there[0] != partner(p, m.Source) || !fitTogether(p, m.Source, there[0], m.To)):
			t.Fatalf("%d joins %v in %d\n%s", m.Source, there, m.To, describeShared(p))
		case !m.Join && !fitsPart(p, m.Source, m.To):
			t.Fatalf("move from %d into %d: does not fit", m.From, m.To)
		}
		holds[m.To] = append(there, m.Source)
	}
	var empty []int
	for i, tank := range p.Tanks {
		at := slices.IndexFunc(p.Sources, func(s sequence.Source) bool { return s.Tank == i })
		full := tank.State == sequence.Holding && (at < 0 || moved(plan, at) < partsOf(p, at))
		if tank.State != sequence.Out && len(holds[i]) == 0 && !full {
			empty = append(empty, i)
		}
	}
	if !slices.Equal(plan.EmptyAfter, empty) {
		t.Fatalf("empty after: got %v, want %v", plan.EmptyAfter, empty)
	}
}

// BenchmarkBestShared plans typical rooms in which one tank is split and, with a
// pair, two are joined as well.
func BenchmarkBestShared(b *testing.B) {
	for _, tanks := range []int{8, 16, 40} {
		for _, volumes := range [][]float64{{120}, {60, 120, 200}} {
			for _, joins := range []int{0, 1} {
				for crew := 1; crew <= 2; crew++ {
					b.Run(fmt.Sprintf("%d/volumes%d/joins%d/crew%d", tanks, len(volumes), joins, crew), func(b *testing.B) {
						d := newDice(uint64(tanks))
						ps := make([]sequence.Problem, 16)
						for i := range ps {
							ps[i] = d.sharedTypical(tanks, volumes, joins, crew)
						}
						proved, nodes, n := 0, 0, 0
						for b.Loop() {
							plan := mustBest(b, ps[n%len(ps)])
							n++
							nodes += plan.Nodes
							if plan.Best {
								proved++
							}
						}
						b.ReportMetric(float64(proved)/float64(n), "proved")
						b.ReportMetric(float64(nodes)/float64(n), "nodes/op")
					})
				}
			}
		}
	}
}

// sharedTypical is a typical room, partly overdue, with two tanks ready.
func (d dice) sharedTypical(tanks int, volumes []float64, joins, crew int) sequence.Problem {
	p := d.typical(tanks, 2, volumes, true, crew)
	p.Sources[0].Parts = 2
	for i := range joins {
		a, b := &p.Sources[1+2*i], &p.Sources[2+2*i]
		b.AgeDays = a.AgeDays
		for _, s := range []*sequence.Source{a, b} {
			s.Larvae, s.PerLitre = sequence.Known(2000), 100
		}
		p.Joins = append(p.Joins, sequence.Pair{A: a.Tank, B: b.Tank})
	}
	return p
}
