package sequence_test

import (
	"flag"
	"fmt"
	"math/rand/v2"
	"testing"
	"time"

	"drainboard/model/sequence"
)

var (
	seed  = flag.Uint64("seed", 20261125, "seed of the random rooms")
	rooms = flag.Int("rooms", 1500, "random rooms to plan by exhaustion, for each crew and order")
)

var noon = time.Date(2026, 11, 25, 12, 0, 0, 0, time.UTC)

// housePace is the pace of a room that sets no rules of its own.
var housePace = sequence.Pace{HandleMinutes: 6, WashMinutes: 8, DrainLPM: 6, FillLPM: 12}

// dice draws rooms.
type dice struct{ *rand.Rand }

func newDice(n uint64) dice { return dice{rand.New(rand.NewPCG(*seed, n))} }

func oneOf[T any](d dice, from ...T) T { return from[d.IntN(len(from))] }

// room draws a small room in which ties abound: few volumes, few due times, few
// ages and few temperatures.
func (d dice) room(tanks int, crew int, order sequence.Order) sequence.Problem {
	p := sequence.Problem{
		Now:   noon,
		Order: order,
		Crew:  crew,
		Grace: oneOf(d, 0, 10*time.Minute, time.Hour),
		Pace: sequence.Pace{
			HandleMinutes: oneOf(d, 0, 6, 7.3),
			WashMinutes:   oneOf(d, 0, 8, 40.0),
			DrainLPM:      oneOf(d, 3, 6, 7.0),
			FillLPM:       oneOf(d, 4, 12, 11.0),
		},
	}
	volumes := oneOf(d, []float64{120}, []float64{60, 120}, []float64{60, 90, 200}, []float64{50, 60, 70, 80, 90, 100})
	dues := oneOf(d, []int{0, 30}, []int{-400, -90, 0, 45}, []int{-30, 0, 20, 40, 60, 80, 500}, []int{500})
	empties := oneOf(d, 0, 1, 1, 1, 1, 2, 2, 2, 3, 4)
	for i, place := range d.Perm(tanks) {
		t := sequence.Tank{Name: fmt.Sprintf("T%d", i), Litres: oneOf(d, volumes...)}
		if d.IntN(3) > 0 {
			t.Celsius = sequence.Known(oneOf(d, 26.2, 27.4, 28.6, 30))
		}
		switch {
		case place < empties:
			t.State = oneOf(d, sequence.Ready, sequence.Ready, sequence.Ready, sequence.Dirty, sequence.Washed)
		case d.IntN(20) == 0:
			t.State = sequence.Out
		}
		t.Since = noon.Add(-time.Duration(oneOf(d, 1, 2, 3)) * time.Hour)
		p.Tanks = append(p.Tanks, t)
		if t.State == sequence.Holding && d.IntN(20) > 0 {
			p.Sources = append(p.Sources, d.source(i, dues))
		}
	}
	d.Shuffle(len(p.Sources), func(i, j int) { p.Sources[i], p.Sources[j] = p.Sources[j], p.Sources[i] })
	return p
}

func (d dice) source(tank int, dues []int) sequence.Source {
	s := sequence.Source{
		Tank:    tank,
		AgeDays: oneOf(d, 2, 9, 17),
		Due:     noon.Add(time.Duration(oneOf(d, dues...)) * time.Minute),
		Suspect: d.IntN(6) == 0,
	}
	if d.IntN(2) == 0 {
		s.Larvae = sequence.Known(oneOf(d, 0, 3000, 6000, 12000.0))
		s.PerLitre = oneOf(d, 0, 40, 100.0)
	}
	return s
}

// describe prints a room for a failing test.
func describe(p sequence.Problem) string {
	out := fmt.Sprintf("crew %d, %s, grace %v, pace %+v\n", p.Crew, p.Order, p.Grace, p.Pace)
	for i, t := range p.Tanks {
		out += fmt.Sprintf("  %d %s %g L state %d since %s celsius %+v\n", i, t.Name, t.Litres, t.State, t.Since.Format("15:04"), t.Celsius)
	}
	for i, s := range p.Sources {
		out += fmt.Sprintf("  source %d: %s age %d due %+.0f min suspect %v larvae %+v limit %g\n",
			i, p.Tanks[s.Tank].Name, s.AgeDays, s.Due.Sub(p.Now).Minutes(), s.Suspect, s.Larvae, s.PerLitre)
	}
	return out
}

func mustBest(t testing.TB, p sequence.Problem) sequence.Plan {
	t.Helper()
	plan, err := sequence.Best(p)
	if err != nil {
		t.Fatalf("Best: %v\n%s", err, describe(p))
	}
	return plan
}
