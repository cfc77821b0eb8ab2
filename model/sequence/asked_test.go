package sequence_test

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"drainboard/model"
	"drainboard/model/sequence"
)

// askedRoom has six tanks of 120 L: C1 holds 18000 larvae of batch 26-05, C2 and C3
// 4000 each of it, C4 some of 26-06; C5 and C6 are ready. Nothing is due before
// the day after tomorrow.
func askedRoom(t *testing.T) *model.Ledger {
	t.Helper()
	room := &model.Room{Name: "Test room", Zone: time.UTC, House: model.DefaultHouse(), Procedure: model.DefaultProcedure()}
	for i := range 6 {
		room.Tanks = append(room.Tanks, model.Tank{Name: fmt.Sprintf("C%d", i+1), Litres: 120})
	}
	l := model.NewLedger(room)
	for _, tank := range room.Tanks {
		enter(t, l, &model.Filled{Tank: tank.Name})
	}
	hatched, err := model.ParseHatched("2026-11-20")
	if err != nil {
		t.Fatal(err)
	}
	for i, larvae := range []float64{18000, 4000, 4000} {
		enter(t, l, &model.Stocked{Tank: room.Tanks[i].Name, Batch: "26-05", Hatched: hatched, Larvae: &larvae})
	}
	enter(t, l, &model.Stocked{Tank: "C4", Batch: "26-06", Hatched: hatched})
	return l
}

func enter(t *testing.T, l *model.Ledger, f model.Fact) {
	t.Helper()
	e := model.Entry{At: noon.Add(-time.Hour), Fact: f}
	if err := l.Check(&e, noon); err != nil {
		t.Fatal(err)
	}
	if err := l.Apply(e); err != nil {
		t.Fatal(err)
	}
}

func TestAsked(t *testing.T) {
	split := func(tank string, parts int) []sequence.Split { return []sequence.Split{{Tank: tank, Parts: parts}} }
	join := func(a, b string) []sequence.Together { return []sequence.Together{{A: a, B: b}} }
	tests := []struct {
		name string
		o    sequence.Options
		want string // the moves of the best plan, or the refusal
	}{
		{"nothing asked, nothing due", sequence.Options{}, ""},
		{"a split adds its tank", sequence.Options{Split: split("c1", 0)}, "C1 into C5 (0.5), C1 into C6"},
		{"so does a join", sequence.Options{Join: join("C2", " c3")}, "C2 into C5, C3 into C5 joined"},
		{
			"both, and others named",
			sequence.Options{Tanks: []string{"C1", "C2", "C3", "C4"}, Split: split("C1", 2), Join: join("C2", "C3")},
			"C1 into C5 (0.5), C1 into C6, C2 into C1, C3 into C1 joined, C4 into C2",
		},
		{"more parts than tanks", sequence.Options{Split: split("C1", 3)}, ""},
		{"not among those named", sequence.Options{Tanks: []string{"C2"}, Split: split("C1", 2)}, "tank C1 is to be split or joined but not to be changed; name it among the tanks"},
		{"no such tank", sequence.Options{Split: split("D1", 2)}, `tank "D1" is not one of this room`},
		{"holds nothing", sequence.Options{Join: join("C2", "C5")}, "tank C5 holds no larvae to change; it is ready"},
		{"one part", sequence.Options{Split: split("C1", 1)}, "tank C1: split into 1 parts; give 2 to 9"},
		{"ten parts", sequence.Options{Split: split("C1", 10)}, "tank C1: split into 10 parts; give 2 to 9, or 0 to move it whole"},
		{"split twice", sequence.Options{Split: append(split("C1", 2), split("c1", 2)...)}, "tank C1 is split twice; name it once, with the number of parts"},
		{"split and joined", sequence.Options{Split: split("C2", 2), Join: join("C2", "C3")}, "join: C2 is split as well; choose one"},
		{"two batches", sequence.Options{Join: join("C2", "C4")}, "C2 holds batch 26-05 and C4 batch 26-06; only larvae of one batch go into one tank"},
		{"itself", sequence.Options{Join: join("C2", "C2")}, "join: C2 with itself; name two tanks"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			p, err := sequence.FromLedger(askedRoom(t), noon, tt.o)
			var plan sequence.Plan
			if err == nil {
				plan, err = sequence.Best(p)
			}
			got := strings.Join(moveWords(p, plan), ", ")
			if err != nil {
				got = err.Error()
			}
			if got != tt.want {
				t.Errorf("got  %s\nwant %s", got, tt.want)
			}
		})
	}
}

func moveWords(p sequence.Problem, plan sequence.Plan) []string {
	var words []string
	for _, m := range plan.Moves {
		w := p.Tanks[m.From].Name + " into " + p.Tanks[m.To].Name
		if m.Share < 1 {
			w += fmt.Sprintf(" (%g)", m.Share)
		}
		if m.Join {
			w += " joined"
		}
		words = append(words, w)
	}
	return words
}

func TestSuspectIsNotJoined(t *testing.T) {
	l := askedRoom(t)
	enter(t, l, &model.Suspect{Tank: "C3", On: true})
	_, err := sequence.FromLedger(l, noon, sequence.Options{Join: []sequence.Together{{A: "C3", B: "C2"}}})
	if err == nil || err.Error() != "tank C3 is suspect; its larvae are not put together with others" {
		t.Errorf("got %v", err)
	}
}

// TestPlanTakesProposalsIn: a split and a join as the ledger proposes them, planned
// and made, leave no tank too dense and one tank more than without the join.
func TestPlanTakesProposalsIn(t *testing.T) {
	l := askedRoom(t)
	var o sequence.Options
	for _, c := range l.Crowding(noon) {
		for _, r := range c.Reliefs {
			if r.Kind == model.SplitEven {
				o.Split = append(o.Split, sequence.Split{Tank: c.Tank, Parts: len(r.Into)})
			}
		}
	}
	for _, pair := range l.Joinable(noon) {
		if pair.A == "C2" || pair.A == "C3" {
			o.Join = append(o.Join, sequence.Together{A: pair.A, B: pair.B})
		}
	}
	if len(o.Split) != 1 || len(o.Join) != 1 {
		t.Fatalf("proposals: %+v; want a split of C1 and a join of C2 and C3", o)
	}
	p, err := sequence.FromLedger(l, noon, o)
	if err != nil {
		t.Fatal(err)
	}
	plan := mustBest(t, p)
	if len(plan.Unmoved) != 0 || !plan.Best || len(plan.EmptyAfter) != 2 {
		t.Fatalf("plan: %+v; want all moved and two tanks empty", plan)
	}
	perLitre := map[int]float64{}
	left := map[int]float64{}
	for _, m := range plan.Moves {
		s := p.Sources[m.Source]
		if _, begun := left[m.Source]; !begun {
			left[m.Source] = s.Larvae.Value
		}
		taken := left[m.Source] * m.Share
		left[m.Source] -= taken
		perLitre[m.To] += taken / p.Tanks[m.To].Litres
	}
	total := 0.0
	for tank, per := range perLitre {
		total += per * p.Tanks[tank].Litres
		if per > 100 {
			t.Errorf("%s holds %.1f per litre afterwards", p.Tanks[tank].Name, per)
		}
	}
	if math.Abs(total-26000) > 1e-6 {
		t.Errorf("%.1f larvae afterwards; want 26000", total)
	}
}
