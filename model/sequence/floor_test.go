package sequence

import (
	"math/rand/v2"
	"slices"
	"testing"
	"time"
)

var noon = time.Date(2026, 11, 25, 12, 0, 0, 0, time.UTC)

// workshop is a room of two people in which job j moves in move[j] and prepares in
// prepare[j] minutes, with so many ready tanks that fit all.
func workshop(t *testing.T, crew, ready int, move, prepare []int) *room {
	t.Helper()
	p := Problem{Now: noon, Order: DueFirst, Crew: crew, Pace: Pace{DrainLPM: 1, FillLPM: 1}}
	for range ready {
		p.Tanks = append(p.Tanks, Tank{Litres: 1, State: Ready})
	}
	for j := range move {
		p.Tanks = append(p.Tanks, Tank{Litres: 1})
		p.Sources = append(p.Sources, Source{Tank: ready + j, Due: noon})
	}
	r, err := newRoom(p)
	if err != nil {
		t.Fatal(err)
	}
	for j := range move {
		r.jobs[j].move = time.Duration(move[j]) * time.Minute
		r.jobs[j].prepare = time.Duration(prepare[j]) * time.Minute
		r.prepare[r.jobs[j].tank] = r.jobs[j].prepare
	}
	return r
}

func (r *room) end(order []int) time.Duration {
	f := r.open(false)
	for _, j := range order {
		r.move(&f, r.pick(&f, j), j, false)
	}
	return max(f.free, f.tail)
}

// TestJohnsonExample is the worked example of Johnson (1954), five jobs on two
// machines: order 5, 1, 4, 3, 2 ends first, after 47. From memory.
func TestJohnsonExample(t *testing.T) {
	r := workshop(t, 2, 5, []int{4, 4, 30, 6, 2}, []int{5, 1, 4, 30, 3})
	if got, want := r.end([]int{4, 0, 3, 2, 1}), 47*time.Minute; got != want {
		t.Errorf("Johnson's order: got end after %v, want %v", got, want)
	}
	order := []int{0, 1, 2, 3, 4}
	eachOrder(order, 0, func() {
		if got := r.end(order); got < 47*time.Minute {
			t.Errorf("order %v: got end after %v, want none before 47m", order, got)
		}
	})
}

// eachOrder calls f for every order of jobs from place k on.
func eachOrder(jobs []int, k int, f func()) {
	if k == len(jobs) {
		f()
		return
	}
	for i := k; i < len(jobs); i++ {
		jobs[k], jobs[i] = jobs[i], jobs[k]
		eachOrder(jobs, k+1, f)
		jobs[k], jobs[i] = jobs[i], jobs[k]
	}
}

func TestFloorByHand(t *testing.T) {
	min := time.Minute
	tests := []struct {
		name          string
		crew, ready   int
		move, prepare []int
		starts        []time.Duration
		end           time.Duration
	}{
		{"one person, one tank: wash between moves", 1, 1, []int{10, 10, 10}, []int{7, 7, 7}, []time.Duration{0, 17 * min, 34 * min}, 51 * min},
		{"two people, one tank: the mover waits for the washer", 2, 1, []int{10, 10, 10}, []int{7, 7, 7}, []time.Duration{0, 17 * min, 34 * min}, 51 * min},
		{"one person, two tanks: moves first, then washes", 1, 2, []int{10, 10, 10}, []int{7, 7, 7}, []time.Duration{0, 10 * min, 27 * min}, 51 * min},
		{"two people, two tanks: the washer keeps up", 2, 2, []int{10, 10, 10}, []int{7, 7, 7}, []time.Duration{0, 10 * min, 20 * min}, 37 * min},
		{"two people, two tanks: the washer is behind", 2, 2, []int{10, 10, 10, 10}, []int{15, 15, 15, 15}, []time.Duration{0, 10 * min, 25 * min, 40 * min}, 70 * min},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			r := workshop(t, tt.crew, tt.ready, tt.move, tt.prepare)
			f := r.open(false)
			var starts []time.Duration
			for j := range tt.move {
				starts = append(starts, r.move(&f, r.pick(&f, j), j, false))
			}
			if !slices.Equal(starts, tt.starts) {
				t.Errorf("starts: got %v, want %v", starts, tt.starts)
			}
			if got := max(f.free, f.tail); got != tt.end {
				t.Errorf("end: got %v, want %v", got, tt.end)
			}
		})
	}
}

// TestBoundHolds compares the bound with the least worst lateness of all orders,
// from the beginning and after some moves: it is never above, and equal when all
// volumes are.
func TestBoundHolds(t *testing.T) {
	d := rand.New(rand.NewPCG(7, 7))
	exact := 0
	for range 3000 {
		n, equal := 1+d.IntN(5), d.IntN(3) == 0
		move, prepare := make([]int, n), make([]int, n)
		for j := range n {
			// As with real tanks, who takes longer to drain takes longer to fill.
			v := d.IntN(40)
			if equal {
				v = 20
			}
			move[j], prepare[j] = 5+v, 3+v*oneTo(d, 1)/2+v/2
			if equal {
				prepare[j] = 30
			}
		}
		sortTogether(move, prepare)
		r := workshop(t, 1+d.IntN(2), 1+d.IntN(3), move, prepare)
		for j := range r.jobs {
			r.jobs[j].limit = time.Duration(d.IntN(120)-60) * time.Minute
		}
		a := r.sortAlike()
		s := newSearch(r, &a)
		for range d.IntN(n) {
			j := s.firstLeft()
			s.push(s.pick(s.floor(), j), j)
		}
		if s.left == 0 {
			continue
		}
		got, want := s.bound.lateness(s), s.leastLateness()
		if got > want {
			t.Fatalf("got bound %v, want at most %v: crew %d, moves %v, preparations %v", got, want, r.Crew, move, prepare)
		}
		if equal && got != want {
			t.Fatalf("equal volumes: got bound %v, want %v exactly: crew %d", got, want, r.Crew)
		}
		if got == want {
			exact++
		}
	}
	t.Logf("bound exact in %d of 3000 rooms", exact)
}

func oneTo(d *rand.Rand, n int) int { return d.IntN(n + 1) }

// sortTogether makes both lists ascend, as one volume decides both.
func sortTogether(a, b []int) {
	slices.Sort(a)
	slices.Sort(b)
}

func (s *search) firstLeft() int { return slices.Index(s.gone, false) }

// leastLateness tries all orders of the jobs left.
func (s *search) leastLateness() time.Duration {
	var jobs []int
	for j, gone := range s.gone {
		if !gone {
			jobs = append(jobs, j)
		}
	}
	least := anyLate
	eachOrder(jobs, 0, func() {
		var f floor
		f.copyFrom(s.floor())
		worst := -anyLate
		for _, j := range jobs {
			start := s.move(&f, s.pick(&f, j), j, false)
			worst = max(worst, start-s.jobs[j].limit)
		}
		least = min(least, worst)
	})
	return least
}
