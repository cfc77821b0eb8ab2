package calendar

import (
	"math/rand/v2"
	"testing"
	"time"
)

// The bound of the days as they fall due is never above the best proposal.
func TestBoundIsNeverAboveTheBest(t *testing.T) {
	zone := nassau(t)
	for seed := range uint64(100) {
		c := draw(rand.New(rand.NewPCG(seed, 11)), zone)
		s := newSearch(&c.Calendar, 1)
		s.run()
		s.project()
		if bound, best := s.bound(), bruteForce(c).best; best.less(bound) {
			t.Errorf("room %d: bound %+v; the best is %+v", seed, bound, best)
		}
	}
}

// With 100 min of tanks that stand dirty and one of 120 L due today, two people
// take 100 + 18 min: the washer does not wait for the move.
func TestBoundWithTanksThatStandDirty(t *testing.T) {
	zone := nassau(t)
	c := draw(rand.New(rand.NewPCG(1, 1)), zone)
	c.Crew, c.standing, c.larvae = 2, []job{{prepare: mins(100)}}, c.larvae[:1]
	c.larvae[0].job, c.larvae[0].due, c.larvae[0].last = job{mins(26), mins(18)}, c.At, 0
	for d := range c.Days {
		c.Days[d].Empty, c.Days[d].Limit = 2, 110*time.Minute
	}
	s := newSearch(&c.Calendar, 100)
	s.run()
	s.project()
	if want := mins(8); s.best.over != want || s.pressed() > want {
		t.Errorf("over by %v, at least %v; want %v", s.best.over, s.pressed(), want)
	}
}
