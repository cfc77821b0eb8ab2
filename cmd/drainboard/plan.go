package main

import (
	"fmt"
	"strings"
	"time"

	"drainboard/model"
	"drainboard/model/sequence"
	"drainboard/model/wash"
	"drainboard/model/water"
	"drainboard/state"

	"github.com/spf13/cobra"
)

// planning are the flags of plan.
type planning struct {
	asking
	tanks string
	split string
	join  string
	crew  int
	order string
}

// newPlan is the command that plans the next change session.
func newPlan(p *program) *cobra.Command {
	var ask planning
	c := &cobra.Command{
		Use: "plan", Short: "Plan the next change session", Args: noWords,
		Long: "Plan the next change session: the order of moves through the ready tanks, their timetable,\n" +
			"the sieves, the acid and the water. It takes what falls due within the room's window_hours.",
		Example: "  drainboard plan\n  drainboard plan --tanks C1,C5 --crew 1\n  drainboard plan --split C5 --join C2:C3",
	}
	ask.flags(c)
	c.Flags().StringVar(&ask.tanks, "tanks", "", "change exactly these `tanks`, as in C1,C5")
	c.Flags().StringVar(&ask.split, "split", "", "move these `tanks` in equal parts, each into a tank of its own, as in C5,C6:3; 2 parts unless a number is given")
	c.Flags().StringVar(&ask.join, "join", "", "put two `tanks` of one batch together in one, as in C2:C3")
	c.Flags().IntVar(&ask.crew, "crew", 0, "`people` in the session, 1 or 2; default by the room")
	c.Flags().StringVar(&ask.order, "order", "", "`order`: oldest-first, youngest-first or due-first; default by the room")
	c.RunE = doing(func([]string) error {
		o, err := ask.options(c)
		if err != nil {
			return err
		}
		return p.plan(ask.asking, o)
	})
	return c
}

// options checks what was chosen for the session.
func (a planning) options(c *cobra.Command) (sequence.Options, error) {
	o := sequence.Options{Crew: a.crew, Order: a.order}
	if c.Flags().Changed("crew") && a.crew != 1 && a.crew != 2 {
		return o, usagef("--crew %d: give 1 or 2", a.crew)
	}
	if c.Flags().Changed("order") {
		switch a.order {
		case model.OldestFirst, model.YoungestFirst, model.DueFirst:
		default:
			return o, usagef("--order %q: give %s, %s or %s", a.order, model.OldestFirst, model.YoungestFirst, model.DueFirst)
		}
	}
	var err error
	if c.Flags().Changed("split") {
		if o.Split, err = splits(a.split); err != nil {
			return o, err
		}
	}
	if c.Flags().Changed("join") {
		if o.Join, err = pairs(a.join); err != nil {
			return o, err
		}
	}
	if c.Flags().Changed("tanks") {
		for name := range strings.SplitSeq(a.tanks, ",") {
			if name = strings.TrimSpace(name); name == "" {
				return o, usagef("--tanks %q: name tanks as in C1,C5", a.tanks)
			}
			o.Tanks = append(o.Tanks, name)
		}
	}
	return o, nil
}

func (p *program) plan(ask asking, o sequence.Options) error {
	now, err := ask.moment(p)
	if err != nil {
		return err
	}
	return p.reading(func(f *state.Folder) error {
		view, err := viewPlan(f.Ledger().At(now), now, o)
		switch {
		case err != nil:
			return err
		case ask.json:
			return p.printJSON(view)
		}
		return p.print(view.lines())
	})
}

// planView is plan --json.
type planView struct {
	At           string         `json:"at"`
	Order        sequence.Order `json:"order"`
	Crew         int            `json:"crew"`
	Moves        []moveView     `json:"moves"`
	Unmoved      []unmovedView  `json:"unmoved"`
	EmptyAfter   []string       `json:"empty_after"`
	WorstOverrun int            `json:"worst_overrun_minutes"`
	Finish       string         `json:"finish"`
	Best         bool           `json:"best"`
	Wash         washView       `json:"wash"`

	when, finish time.Time
}

// moveView is one move of a plan.
type moveView struct {
	N           int           `json:"n"`
	From        string        `json:"from"`
	To          string        `json:"to"`
	Batch       string        `json:"batch"`
	AgeDays     int           `json:"age_days"`
	MeshUM      *float64      `json:"mesh_um"`
	Due         string        `json:"due"`
	Start       string        `json:"start"`
	End         string        `json:"end"`
	Overrun     int           `json:"overrun_minutes"`
	Difference  *float64      `json:"difference"`
	Temperature water.Verdict `json:"temperature"`
	Why         string        `json:"why"`
	Marks       []string      `json:"marks"`
	Share       *float64      `json:"share,omitempty"` // of the larvae then in From, for one of several parts
	Join        bool          `json:"join,omitempty"`

	start, end time.Time
	whyTo      string
}

type unmovedView struct {
	Tank string `json:"tank"`
	Why  string `json:"why"`
}

// washView is what the session's wash takes: gear bin and emptied tanks.
type washView struct {
	SolutionLitres float64 `json:"solution_litres"`
	AcidML         float64 `json:"acid_ml"`
	WaterLitres    float64 `json:"water_litres"`

	stockPercent float64
}

// viewPlan plans the session at now.
func viewPlan(l *model.Ledger, now time.Time, o sequence.Options) (planView, error) {
	problem, err := sequence.FromLedger(l, now, o)
	if err != nil {
		return planView{}, err
	}
	plan, err := sequence.Best(problem)
	if err != nil {
		return planView{}, err
	}
	zone := l.Room().Zone
	v := planView{
		At: stamp(now, zone), Order: problem.Order, Crew: problem.Crew,
		Moves: []moveView{}, Unmoved: []unmovedView{}, EmptyAfter: []string{},
		WorstOverrun: int(plan.WorstOverrun / time.Minute), Finish: stamp(plan.Finish, zone), Best: plan.Best,
		when: now.In(zone), finish: plan.Finish.In(zone),
	}
	for i, m := range plan.Moves {
		v.Moves = append(v.Moves, viewMove(l, now, problem, i+1, m))
	}
	for _, u := range plan.Unmoved {
		v.Unmoved = append(v.Unmoved, unmovedView{problem.Tanks[u.Tank].Name, u.Why})
	}
	for _, tank := range plan.EmptyAfter {
		v.EmptyAfter = append(v.EmptyAfter, problem.Tanks[tank].Name)
	}
	if v.Wash, err = sessionWash(l, emptied(plan)); err != nil {
		return planView{}, fmt.Errorf("the wash of the room: %w; put it right under [house.wash] in room.toml", err)
	}
	return v, nil
}

func viewMove(l *model.Ledger, now time.Time, problem sequence.Problem, n int, m sequence.Move) moveView {
	room := l.Room()
	from := l.Tanks()[m.From]
	source := problem.Sources[m.Source]
	verdict := verdictOf(room.House.Temperature, m.Difference)
	v := moveView{
		N: n, From: problem.Tanks[m.From].Name, To: problem.Tanks[m.To].Name,
		Batch: from.Larvae.Batch, AgeDays: source.AgeDays,
		Due: stamp(source.Due, room.Zone), Start: stamp(m.Start, room.Zone), End: stamp(m.End, room.Zone),
		Overrun:    int(m.Overrun / time.Minute),
		Difference: known(m.Difference.Value, m.Difference.Known, 2), Temperature: verdict,
		Why: m.Why, Marks: list(l.Marks(from, now)), Share: shareOf(m), Join: m.Join,
		start: m.Start.In(room.Zone), end: m.End.In(room.Zone), whyTo: m.WhyTo,
	}
	if um := room.House.MeshAt(source.AgeDays); len(um) > 0 {
		v.MeshUM = &um[0]
	}
	return v
}

// verdictOf judges a difference of two waters by the house rules.
func verdictOf(rules model.TemperatureRules, difference sequence.Reading) water.Verdict {
	steps := water.Steps{Fine: rules.StepFine, Hold: rules.StepHold}
	if !difference.Known {
		return steps.Compare(nil, nil).Verdict
	}
	same := 0.0
	return steps.Compare(&difference.Value, &same).Verdict
}

// sessionWash is the wash of a session that empties so many tanks, beside those
// that stand dirty when it begins.
func sessionWash(l *model.Ledger, emptied int) (washView, error) {
	mix, err := sessionMix(l, emptied)
	return washView{
		SolutionLitres: round(mix.Total.SolutionLitres, 3),
		AcidML:         round(mix.Total.AcidML, 1),
		WaterLitres:    round(mix.Total.WaterLitres, 3),
		stockPercent:   l.Room().House.Wash.StockPercent,
	}, err
}

func sessionMix(l *model.Ledger, emptied int) (wash.SessionMix, error) {
	if emptied == 0 {
		return wash.SessionMix{}, nil
	}
	for _, t := range l.Tanks() {
		if t.State == model.Dirty {
			emptied++
		}
	}
	rules := l.Room().House.Wash
	stock, err := wash.NewStock(rules.StockPercent)
	if err != nil {
		return wash.SessionMix{}, err
	}
	return wash.Session{
		Emptied: emptied, TankLitres: rules.TankLitres, BinLitres: rules.BinLitres,
		MLPerLitre: rules.MLPerLitre, Stock: stock,
	}.Mix()
}
