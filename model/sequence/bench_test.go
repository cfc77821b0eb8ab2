package sequence_test

import (
	"fmt"
	"testing"
	"time"

	"drainboard/model/sequence"
)

func BenchmarkBest8(b *testing.B)  { benchmarkBest(b, 8, 1) }
func BenchmarkBest16(b *testing.B) { benchmarkBest(b, 16, 2) }
func BenchmarkBest40(b *testing.B) { benchmarkBest(b, 40, 3) }

// benchmarkBest plans typical rooms of so many tanks. Beside the time it reports
// the share of plans proved best and the nodes opened.
func benchmarkBest(b *testing.B, tanks, empty int) {
	volumes := map[string][]float64{"equal": {120}, "two": {60, 120}, "three": {60, 120, 200}}
	for _, mix := range []string{"equal", "two", "three"} {
		for _, late := range []bool{false, true} {
			for _, crew := range []int{1, 2} {
				name := fmt.Sprintf("%s/calm/crew%d", mix, crew)
				if late {
					name = fmt.Sprintf("%s/overdue/crew%d", mix, crew)
				}
				b.Run(name, func(b *testing.B) {
					d := newDice(uint64(tanks))
					ps := make([]sequence.Problem, 16)
					for i := range ps {
						ps[i] = d.typical(tanks, empty, volumes[mix], late, crew)
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

// typical draws a room as a shift would meet it: some batches of a few tanks each,
// due within half a day, or partly overdue since a day.
func (d dice) typical(tanks, empty int, volumes []float64, late bool, crew int) sequence.Problem {
	p := sequence.Problem{Now: noon, Order: sequence.OldestFirst, Crew: crew, Grace: 6 * time.Hour, Pace: housePace}
	for i := range tanks {
		t := sequence.Tank{Name: fmt.Sprintf("C%d", i+1), Litres: oneOf(d, volumes...), Celsius: sequence.Known(26 + 0.1*float64(d.IntN(30)))}
		if i < empty {
			t.State, t.Since, t.Litres = sequence.Ready, noon.Add(-time.Duration(i)*time.Hour), volumes[len(volumes)-1]
		} else {
			due := d.IntN(12 * 60)
			if late {
				due -= 18 * 60
			}
			batch := i / 3
			p.Sources = append(p.Sources, sequence.Source{
				Tank: i, AgeDays: 2 + batch*5%23, Suspect: d.IntN(20) == 0,
				Due: noon.Add(time.Duration(due) * time.Minute),
			})
		}
		p.Tanks = append(p.Tanks, t)
	}
	return p
}
