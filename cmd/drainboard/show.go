package main

import (
	"time"

	"drainboard/model"
	"drainboard/model/growth"
	"drainboard/state"

	"github.com/spf13/cobra"
)

// newShow is the command that shows the room.
func newShow(p *program) *cobra.Command {
	var ask asking
	c := &cobra.Command{
		Use: "show", Short: "Show the room now", Args: noWords,
		RunE: doing(func([]string) error { return p.show(ask) }),
	}
	ask.flags(c)
	return c
}

func (p *program) show(ask asking) error {
	now, err := ask.moment(p)
	if err != nil {
		return err
	}
	return p.reading(func(f *state.Folder) error {
		view := viewRoom(f.Ledger().At(now), now)
		if ask.json {
			return p.printJSON(view)
		}
		return p.print(view.board())
	})
}

// roomView is show --json.
type roomView struct {
	At      string      `json:"at"`
	Room    string      `json:"room"`
	Next    *dueView    `json:"next"`
	Tanks   []tankView  `json:"tanks"`
	Batches []batchView `json:"batches"`

	when time.Time // At, in the room's zone
}

// dueView is the tank whose change falls due first.
type dueView struct {
	Tank       string `json:"tank"`
	Due        string `json:"due"`
	DueMinutes int    `json:"due_minutes"`

	overdue bool
	left    time.Duration
}

// tankView is one tank in show --json; what is not known is null.
type tankView struct {
	Name       string      `json:"name"`
	State      model.State `json:"state"`
	Batch      *string     `json:"batch"`
	AgeDays    *int        `json:"age_days"`
	Since      *string     `json:"since"`
	Due        *string     `json:"due"`
	DueMinutes *int        `json:"due_minutes"`
	Overdue    bool        `json:"overdue"`
	Celsius    *float64    `json:"celsius"`
	Larvae     *float64    `json:"larvae"`
	LarvaeLow  *float64    `json:"larvae_low"`
	LarvaeHigh *float64    `json:"larvae_high"`
	PerLitre   *float64    `json:"per_litre"`
	MeanUM     *float64    `json:"mean_um"`
	MeshUM     []float64   `json:"mesh_um"`
	FedDue     *string     `json:"fed_due"`
	LookDue    *string     `json:"look_due"`
	Marks      []string    `json:"marks"`

	left    time.Duration // until due
	readAgo time.Duration // age of the temperature, where it is past the limit
}

// viewRoom shows a ledger as it stands at now.
func viewRoom(l *model.Ledger, now time.Time) roomView {
	zone := l.Room().Zone
	v := roomView{
		At: stamp(now, zone), Room: l.Room().Name, Batches: batchViews(l, now), Tanks: []tankView{},
		when: now.In(zone),
	}
	if next, ok := l.NextDue(now); ok {
		due := l.Due(next)
		v.Next = &dueView{next.Tank.Name, stamp(due, zone), minutesUntil(due, now), l.Overdue(next, now), due.Sub(now)}
	}
	for _, t := range l.Tanks() {
		v.Tanks = append(v.Tanks, viewTank(l, t, now))
	}
	return v
}

func viewTank(l *model.Ledger, t model.TankNow, now time.Time) tankView {
	zone := l.Room().Zone
	v := tankView{Name: t.Tank.Name, State: t.State, Since: moment(t.Since, zone), Marks: list(l.Marks(t, now))}
	if last, ok := t.LastCelsius(); ok {
		v.Celsius = known(last.Value, true, 3)
		if ago := now.Sub(last.At); ago > l.ReadingLimit() {
			v.readAgo = ago
		}
	}
	if t.Larvae != nil {
		v.addLarvae(l, t, now)
	}
	return v
}

func (v *tankView) addLarvae(l *model.Ledger, t model.TankNow, now time.Time) {
	zone := l.Room().Zone
	age, _ := l.Age(t, now)
	due := l.Due(t)
	minutes := minutesUntil(due, now)
	v.Batch, v.AgeDays, v.MeshUM = &t.Larvae.Batch, &age, list(l.Room().House.MeshAt(age))
	v.Due, v.DueMinutes, v.Overdue, v.left = moment(due, zone), &minutes, l.Overdue(t, now), due.Sub(now)
	v.FedDue, v.LookDue = moment(l.FeedDue(t), zone), moment(l.LookDue(t), zone)
	n := t.Larvae.Number
	v.Larvae = known(n.Value.X, n.Value.Known, 0)
	v.LarvaeLow = known(n.Low.X, n.Low.Known, 0)
	v.LarvaeHigh = known(n.High.X, n.High.Known, 0)
	per, ok := t.PerLitre()
	v.PerLitre = known(per, ok, 1)
	if s := t.Larvae.Sample; s != nil {
		summary, err := growth.Summarize(s.UM)
		v.MeanUM = known(summary.Mean, err == nil, 1)
	}
}
