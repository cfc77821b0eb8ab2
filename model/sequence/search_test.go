package sequence

import (
	"fmt"
	"math/rand/v2"
	"testing"
	"time"
)

// mixedRoom draws a room of two or three volumes with several empty tanks, so that
// searches come back to the same tanks at different times.
func mixedRoom(t *testing.T, d *rand.Rand, sources int) *room {
	t.Helper()
	volumes := []float64{60, 90, 200}[d.IntN(2):]
	p := Problem{
		Now: noon, Order: OldestFirst, Crew: 1 + d.IntN(2),
		Pace: Pace{HandleMinutes: 6, WashMinutes: float64(5 * d.IntN(8)), DrainLPM: 6, FillLPM: float64(3 + d.IntN(10))},
	}
	for i := range 2 + d.IntN(2) {
		p.Tanks = append(p.Tanks, Tank{
			Name: fmt.Sprintf("E%d", i), Litres: volumes[d.IntN(len(volumes))],
			State: []State{Ready, Ready, Dirty}[d.IntN(3)], Celsius: Known(26 + float64(d.IntN(3))),
		})
	}
	for i := range sources {
		p.Sources = append(p.Sources, Source{Tank: len(p.Tanks), AgeDays: i, Due: noon.Add(time.Duration(d.IntN(400)) * time.Minute)})
		p.Tanks = append(p.Tanks, Tank{Name: fmt.Sprintf("T%d", i), Litres: volumes[d.IntN(len(volumes))], Celsius: Known(26 + float64(d.IntN(2)))})
	}
	r, err := newRoom(p)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// TestCompleteAgainstPlainSearch compares the search with one that remembers
// nothing and bounds nothing, at limits close to the least lateness, where all
// the pruning is at work.
func TestCompleteAgainstPlainSearch(t *testing.T) {
	d := rand.New(rand.NewPCG(8, 8))
	found, remembered := map[verdict]int{}, 0
	for range 400 {
		r := mixedRoom(t, d, 8)
		a := r.sortAlike()
		s := newSearch(r, &a)
		if s.left == 0 {
			continue
		}
		s.limit = s.bound.lateness(s)
		for range 12 {
			s.forget()
			s.nodes, s.stop = 0, 1_000_000
			want := no
			if s.plain() {
				want = yes
			}
			got := s.complete()
			s.back(0)
			if got != want {
				t.Fatalf("limit %v: got verdict %d, want %d: %+v", s.limit, got, want, r.Problem)
			}
			found[got]++
			remembered += len(s.failed)
			s.limit += time.Duration(1+d.IntN(10)) * time.Minute
		}
	}
	if found[yes] < 100 || found[no] < 100 || remembered < 1000 {
		t.Errorf("got verdicts %v and %d states remembered; the test shows little", found, remembered)
	}
}

// plain says whether the moves begun can be completed, by trying every job.
func (s *search) plain() bool {
	if s.left == 0 {
		return true
	}
	for j := range s.jobs {
		if s.gone[j] {
			continue
		}
		i := s.pick(s.floor(), j)
		if i < 0 || s.floor().start(i)-s.jobs[j].limit > s.limit {
			continue
		}
		s.push(i, j)
		ok := s.plain()
		s.back(len(s.path) - 1)
		if ok {
			return true
		}
	}
	return false
}

// TestKnown: what failed is known again when nothing is earlier, and only with the
// same jobs moved and the same tanks empty.
func TestKnown(t *testing.T) {
	p := Problem{Now: noon, Order: OldestFirst, Crew: 2, Pace: Pace{DrainLPM: 1, FillLPM: 1}}
	for _, celsius := range []float64{26, 28} {
		p.Tanks = append(p.Tanks, Tank{Litres: 120, State: Ready, Celsius: Known(celsius)})
	}
	p.Tanks = append(p.Tanks, Tank{Litres: 60, State: Ready}, Tank{Litres: 60, State: Dirty})
	for i, litres := range []float64{60, 120, 60} {
		p.Sources = append(p.Sources, Source{Tank: len(p.Tanks), AgeDays: i, Due: noon})
		p.Tanks = append(p.Tanks, Tank{Litres: litres, Celsius: Known(26 + float64(i))})
	}
	hour := time.Hour
	base := func() floor {
		return floor{free: 2 * hour, tail: 5 * hour, standing: 2, slots: []slot{{tank: 0}, {tank: 2}, {3, 3 * hour}, {4, 4 * hour}}}
	}
	tests := []struct {
		name   string
		change func(s *search, f *floor)
		want   bool
	}{
		{"the same", func(*search, *floor) {}, true},
		{"all later", func(_ *search, f *floor) { f.free, f.tail, f.slots[3].ready = 3*hour, 6*hour, 5*hour }, true},
		{"mover free earlier", func(_ *search, f *floor) { f.free = hour }, false},
		{"all emptied ready earlier", func(_ *search, f *floor) { f.tail = 4 * hour }, false},
		{"one tank ready earlier", func(_ *search, f *floor) { f.slots[2].ready = 2 * hour }, false},
		{"ready earlier, but before the mover is free", func(_ *search, f *floor) { f.slots[0].ready = -hour }, true},
		{"another tank of that size, at another temperature", func(_ *search, f *floor) { f.slots[0].tank = 1 }, false},
		{"another volume", func(_ *search, f *floor) { f.slots[3].tank = 5 }, false},
		{"another of that volume, filled in the session", func(_ *search, f *floor) { f.slots[3].tank = 6 }, true},
		{"another job moved", func(s *search, _ *floor) { s.giveBack(0); s.take(2) }, false},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			r, err := newRoom(p)
			if err != nil {
				t.Fatal(err)
			}
			a := r.sortAlike()
			s := newSearch(r, &a)
			s.take(0)
			s.floors[0] = base()
			s.learn()
			tt.change(s, s.floor())
			if got := s.known(); got != tt.want {
				t.Errorf("known: got %v, want %v", got, tt.want)
			}
		})
	}
}
