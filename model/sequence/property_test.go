package sequence_test

import (
	"slices"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"drainboard/model/sequence"
)

// drawRoom draws a room of up to so many tanks; rapid shrinks their number.
func drawRoom(t *rapid.T, tanks int) (dice, sequence.Problem) {
	n := rapid.IntRange(1, tanks).Draw(t, "tanks")
	crew := rapid.IntRange(1, 2).Draw(t, "crew")
	order := rapid.SampledFrom([]sequence.Order{sequence.OldestFirst, sequence.YoungestFirst, sequence.DueFirst}).Draw(t, "order")
	d := newDice(rapid.Uint64().Draw(t, "dice"))
	return d, d.room(n, crew, order)
}

func legsOf(plan sequence.Plan) (listed, byRule []sequence.Leg) {
	for _, m := range plan.Moves {
		listed = append(listed, sequence.Leg{From: m.From, To: m.To})
		byRule = append(byRule, sequence.Leg{From: m.From, To: sequence.ByRule})
	}
	return listed, byRule
}

func TestBestHoldsTogether(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, p := drawRoom(t, 14)
		plan, err := sequence.Best(p)
		if err != nil {
			t.Fatal(err)
		}
		holdsTogether(t, p, plan)
	})
}

func TestRetimeHoldsTogether(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, p := drawRoom(t, 12)
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
		holdsTogether(t, p, plan)
	})
}

// TestRetimeOfBest times the best order once more, with its destinations listed
// and with the rule's: the same plan, reasons and all, but for the proof.
func TestRetimeOfBest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, p := drawRoom(t, 12)
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

// TestOrderOfSources hands the sources over in another order: the same plan.
func TestOrderOfSources(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, p := drawRoom(t, 12)
		want, _ := sequence.Best(p)
		p.Sources = slices.Clone(p.Sources)
		d.Shuffle(len(p.Sources), func(i, j int) { p.Sources[i], p.Sources[j] = p.Sources[j], p.Sources[i] })
		got, _ := sequence.Best(p)
		for _, plan := range []*sequence.Plan{&want, &got} {
			for i := range plan.Moves {
				plan.Moves[i].Source = 0
			}
			for i := range plan.Unmoved {
				plan.Unmoved[i].Source = 0
			}
			plan.Nodes = 0
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Fatalf("plan (-want +got):\n%s", diff)
		}
	})
}

// holdsTogether checks what must be true of any plan.
func holdsTogether(t *rapid.T, p sequence.Problem, plan sequence.Plan) {
	t.Helper()
	checkOnce(t, p, plan)
	checkTanks(t, p, plan)
	checkPeople(t, p, plan)
	checkSums(t, p, plan)
}

// checkOnce: every source is moved once or named as unmoved.
func checkOnce(t *rapid.T, p sequence.Problem, plan sequence.Plan) {
	t.Helper()
	times := make([]int, len(p.Sources))
	for _, m := range plan.Moves {
		times[m.Source]++
		if p.Sources[m.Source].Tank != m.From {
			t.Fatalf("move from %d: source %d is tank %d", m.From, m.Source, p.Sources[m.Source].Tank)
		}
		if m.Why == "" || m.WhyTo == "" {
			t.Fatalf("move from %d gives no reason: %q, %q", m.From, m.Why, m.WhyTo)
		}
	}
	for _, u := range plan.Unmoved {
		times[u.Source]++
		if u.Why == "" {
			t.Fatalf("unmoved tank %d gives no reason", u.Tank)
		}
	}
	for s, n := range times {
		if n != 1 {
			t.Fatalf("source %d is named %d times, want once", s, n)
		}
	}
}

// checkTanks: a destination is empty, prepared and large enough when its move
// starts, and is emptied before it is prepared.
func checkTanks(t *rapid.T, p sequence.Problem, plan sequence.Plan) {
	t.Helper()
	ready, emptied, holds := map[int]time.Time{}, map[int]time.Time{}, map[int]bool{}
	for i, tank := range p.Tanks {
		switch tank.State {
		case sequence.Ready:
			ready[i] = p.Now
		case sequence.Dirty, sequence.Washed:
			emptied[i] = p.Now
		case sequence.Holding:
			holds[i] = true
		}
	}
	for _, m := range plan.Moves {
		emptied[m.From] = m.End
	}
	for _, prep := range plan.Preparations {
		from, ok := emptied[prep.Tank]
		if !ok || prep.Start.Before(from) {
			t.Fatalf("tank %d prepared at %v, emptied at %v (%v)", prep.Tank, prep.Start, from, ok)
		}
		if got, want := prep.End.Sub(prep.Start), preparing(p, prep.Tank); got != want {
			t.Fatalf("tank %d prepared in %v, want %v", prep.Tank, got, want)
		}
		if got, want := prep.Wash, p.Tanks[prep.Tank].State != sequence.Washed; got != want {
			t.Fatalf("tank %d washed: got %v, want %v", prep.Tank, got, want)
		}
		ready[prep.Tank] = prep.End
	}
	for _, m := range plan.Moves {
		at, ok := ready[m.To]
		if !ok || m.Start.Before(at) || holds[m.To] {
			t.Fatalf("move into %d at %v: ready at %v (%v), holds %v", m.To, m.Start, at, ok, holds[m.To])
		}
		if !fits(p, m.Source, m.To) {
			t.Fatalf("move from %d into %d: does not fit", m.From, m.To)
		}
		if got, want := m.End.Sub(m.Start), moving(p, m.Source); got != want {
			t.Fatalf("move from %d takes %v, want %v", m.From, got, want)
		}
		holds[m.From], holds[m.To] = false, true
	}
	var empty []int
	for i, tank := range p.Tanks {
		if tank.State != sequence.Out && !holds[i] {
			empty = append(empty, i)
		}
	}
	if !slices.Equal(plan.EmptyAfter, empty) {
		t.Fatalf("empty after: got %v, want %v", plan.EmptyAfter, empty)
	}
}

type spell struct{ start, end time.Time }

// checkPeople: nobody does two things at once, one person alone never stands idle,
// and of two the washer never does while a tank stands emptied.
func checkPeople(t *rapid.T, p sequence.Problem, plan sequence.Plan) {
	t.Helper()
	emptied := map[int]time.Time{}
	var mover, washer []spell
	for _, m := range plan.Moves {
		mover = append(mover, spell{m.Start, m.End})
		emptied[m.From] = m.End
	}
	free := p.Now
	for _, prep := range plan.Preparations {
		washer = append(washer, spell{prep.Start, prep.End})
		from, ok := emptied[prep.Tank]
		if !ok {
			from = p.Now
		}
		if p.Crew == 2 && !prep.Start.Equal(later(free, from)) {
			t.Fatalf("tank %d prepared from %v, want %v", prep.Tank, prep.Start, later(free, from))
		}
		free = prep.End
	}
	if p.Crew == 1 {
		mover, washer = append(mover, washer...), nil
		slices.SortFunc(mover, func(a, b spell) int { return a.start.Compare(b.start) })
		free = p.Now
		for _, s := range mover {
			if !s.start.Equal(free) {
				t.Fatalf("one person idle or doubled: free at %v, next begins %v", free, s.start)
			}
			free = s.end
		}
	}
	for _, lane := range [][]spell{mover, washer} {
		for i := 1; i < len(lane); i++ {
			if lane[i].start.Before(lane[i-1].end) {
				t.Fatalf("begins at %v before ending at %v", lane[i].start, lane[i-1].end)
			}
		}
	}
}

// checkSums: the plan's own totals.
func checkSums(t *rapid.T, p sequence.Problem, plan sequence.Plan) {
	t.Helper()
	worst, last := time.Duration(0), p.Now
	for _, m := range plan.Moves {
		if want := max(0, m.Start.Sub(p.Sources[m.Source].Due.Add(p.Grace))); m.Overrun != want {
			t.Fatalf("move from %d: got overrun %v, want %v", m.From, m.Overrun, want)
		}
		worst, last = max(worst, m.Overrun), m.End
	}
	finish := last
	for _, prep := range plan.Preparations {
		finish = later(finish, prep.End)
	}
	if plan.WorstOverrun != worst || !plan.LastMoveEnd.Equal(last) || !plan.Finish.Equal(finish) {
		t.Fatalf("worst, last move, finish: got %v, %v, %v, want %v, %v, %v",
			plan.WorstOverrun, plan.LastMoveEnd, plan.Finish, worst, last, finish)
	}
}
