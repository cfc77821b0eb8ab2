package sequence_test

import (
	"fmt"
	"time"

	"drainboard/model/sequence"
)

func ExampleBest() {
	nine := time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC)
	p := sequence.Problem{
		Now: nine,
		Tanks: []sequence.Tank{
			{Name: "C1", Litres: 120, State: sequence.Ready, Since: nine.Add(-time.Hour)},
			{Name: "C2", Litres: 120},
			{Name: "C3", Litres: 120},
			{Name: "C4", Litres: 120},
		},
		Sources: []sequence.Source{
			{Tank: 1, AgeDays: 4, Due: nine.Add(time.Hour)},
			{Tank: 2, AgeDays: 17, Due: nine.Add(2 * time.Hour)},
			{Tank: 3, AgeDays: 11, Due: nine.Add(-4 * time.Hour)},
		},
		Order: sequence.OldestFirst,
		Crew:  2,
		Grace: 4*time.Hour + 30*time.Minute,
		Pace:  sequence.Pace{HandleMinutes: 6, WashMinutes: 8, DrainLPM: 6, FillLPM: 12},
	}
	plan, err := sequence.Best(p)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, m := range plan.Moves {
		fmt.Println(m.Start.Format("15:04"), p.Tanks[m.From].Name, "into", p.Tanks[m.To].Name+":", m.Why)
	}
	fmt.Println(plan.Finish.Format("15:04"), "all ready again, proved best:", plan.Best)
	// Output:
	// 09:00 C4 into C1: brought forward: it would pass its limit
	// 09:44 C3 into C4: oldest
	// 10:28 C2 into C3: oldest
	// 11:12 all ready again, proved best: true
}
