package calendar

import (
	"math/rand/v2"
	"testing"
	"time"

	"drainboard/model/sequence"
)

// Johnson 1954 has no table of ours to check against; the rule is held against
// every order of up to five jobs.
func TestSessionAgainstEveryOrder(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 4))
	for range 500 {
		c := crew{1 + r.IntN(2), r.IntN(4)}
		jobs := make([]job, r.IntN(6))
		for i := range jobs {
			jobs[i] = job{time.Duration(r.IntN(9)), time.Duration(r.IntN(9))}
		}
		if got, want := c.session(inOrder(jobs)), shortest(c.serial(), jobs, 0, 0); got != want {
			t.Fatalf("%+v, %v: %v; want %v", c, jobs, got, want)
		}
	}
}

// The work of today is never more than the best order of moves takes, and just
// that where one empty tank serves tanks of one size.
func TestWorkIsALowerEstimateOfThePlan(t *testing.T) {
	for tanks := 3; tanks <= 12; tanks++ {
		for people := 1; people <= 2; people++ {
			l, now := benchRoom(t, tanks)
			l.Room().House.Crew, l.Room().House.WindowHours = people, 16 // up to midnight, and not beyond
			d := calendar(t, l, now, 1).Days[0]
			p, err := sequence.FromLedger(l, now, sequence.Options{Tanks: d.Tanks()})
			if err != nil {
				t.Fatal(err)
			}
			plan, err := sequence.Best(p)
			if err != nil {
				t.Fatal(err)
			}
			length := plan.Finish.Sub(now)
			if len(plan.Unmoved) == 0 && d.Work > length || people == 1 && d.Work != length {
				t.Errorf("%d tanks, crew of %d: %v; the plan takes %v, %d unmoved", tanks, people, d.Work, length, len(plan.Unmoved))
			}
		}
	}
}

// The minutes of a move and of making ready are those of the order of moves.
func TestJobsAreThoseOfThePlan(t *testing.T) {
	l, now := worked(t)
	p, err := sequence.FromLedger(l, now, sequence.Options{})
	if err != nil {
		t.Fatal(err)
	}
	plan, err := sequence.Best(p)
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range plan.Moves {
		if got, want := jobOf(l.Room().House, p.Tanks[m.From].Litres).move, m.End.Sub(m.Start); got != want {
			t.Errorf("a move out of %s: %v; want %v", p.Tanks[m.From].Name, got, want)
		}
	}
	if len(plan.Preparations) != 3 {
		t.Errorf("%d tanks are made ready; want K1, K2 and L1", len(plan.Preparations))
	}
	for _, x := range plan.Preparations {
		if got, want := standing(l.Room().House, p.Tanks[x.Tank].Litres, !x.Wash).prepare, x.End.Sub(x.Start); got != want {
			t.Errorf("making %s ready: %v; want %v", p.Tanks[x.Tank].Name, got, want)
		}
	}
}
