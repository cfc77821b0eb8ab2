package main

import (
	"math"
	"slices"
	"time"

	"drainboard/model"
	"drainboard/model/calendar"
	"drainboard/state"

	"github.com/spf13/cobra"
)

// newCalendar is the command that looks some days ahead.
func newCalendar(p *program) *cobra.Command {
	var ask asking
	var days int
	c := &cobra.Command{
		Use: "calendar", Short: "The days to come: tanks due, minutes, water, acid, algae", Args: noWords,
		Long: "The days to come, today the first: the tanks that fall due, the minutes they take the crew,\n" +
			"the sea water, acid and algae they ask for; which changes to make a little early so that no day\n" +
			"is too full, and what one more ready tank would save.",
		Example: "  drainboard calendar\n  drainboard calendar --days 7 --json",
	}
	ask.flags(c)
	c.Flags().IntVar(&days, "days", calendar.DefaultDays, "`days` to look ahead, 1 to 60")
	c.RunE = doing(func([]string) error {
		if days < 1 || days > calendar.MostDays {
			return usagef("--days %d: give 1 to %d", days, calendar.MostDays)
		}
		return p.calendar(ask, days)
	})
	return c
}

func (p *program) calendar(ask asking, days int) error {
	now, err := ask.moment(p)
	if err != nil {
		return err
	}
	return p.reading(func(f *state.Folder) error {
		view, err := viewCalendar(f.Ledger().At(now), now, days)
		switch {
		case err != nil:
			return err
		case ask.json:
			return p.printJSON(view)
		}
		return p.print(view.lines())
	})
}

// calendarView is calendar --json.
type calendarView struct {
	At           string          `json:"at"`
	Room         string          `json:"room"`
	Crew         int             `json:"crew"`
	LimitMinutes *int            `json:"limit_minutes"` // null where the room gives none
	Days         []calendarDay   `json:"days"`
	Batches      []calendarBatch `json:"batches"`
	Uncounted    []string        `json:"uncounted"`
	Gaps         []string        `json:"gaps"`
	WashProblem  *string         `json:"wash_problem"`
	Level        levelView       `json:"level"`
	OneMoreTank  *spareView      `json:"one_more_tank"`

	when time.Time
}

// calendarDay is one day; what is not known is null.
type calendarDay struct {
	Date            string              `json:"date"`
	Tanks           []string            `json:"tanks"`
	Moves           int                 `json:"moves"`
	Minutes         int                 `json:"minutes"` // a lower estimate, rounded up
	LimitMinutes    int                 `json:"limit_minutes"`
	Over            bool                `json:"over"`
	OverMinutes     int                 `json:"over_minutes"`
	Fullness        string              `json:"fullness"` // fits, too full, or no time
	EmptyTanks      int                 `json:"empty_tanks"`
	MakeReady       []string            `json:"make_ready"`
	SeaWaterLitres  float64             `json:"sea_water_litres"`
	AcidML          *float64            `json:"acid_ml"`
	WashLitres      *float64            `json:"wash_litres"`
	AlgaeLitres     map[string]*float64 `json:"algae_litres"`
	Looks           int                 `json:"looks"`
	Feeds           int                 `json:"feeds"`
	Ready           []string            `json:"ready"`
	Changes         []dueChange         `json:"changes"`
	when            time.Time
	stuck, anything bool
}

// dueChange is one change that falls due.
type dueChange struct {
	Tank    string `json:"tank"`
	Batch   string `json:"batch"`
	AgeDays int    `json:"age_days"`
	Due     string `json:"due"`
	Overdue bool   `json:"overdue"`
}

// calendarBatch is how long a batch is reckoned with.
type calendarBatch struct {
	Name      string  `json:"name"`
	ReadyDate *string `json:"ready_date"`
	LastDate  *string `json:"last_date"`
	Why       string  `json:"why"`
}

// viewCalendar works the days out, the proposal and the spare tank.
func viewCalendar(l *model.Ledger, now time.Time, days int) (calendarView, error) {
	c, err := calendar.For(l, now, days)
	if err != nil {
		return calendarView{}, err
	}
	v := calendarView{
		At: stamp(now, c.Zone), Room: l.Room().Name, Crew: c.Crew, Days: []calendarDay{}, Batches: []calendarBatch{},
		Uncounted: list(c.Uncounted), Gaps: list(c.Gaps), when: now.In(c.Zone),
	}
	if c.Limit > 0 {
		limit := int(c.Limit / time.Minute)
		v.LimitMinutes = &limit
	}
	if c.WashProblem != "" {
		v.WashProblem = &c.WashProblem
	}
	for _, d := range c.Days {
		v.Days = append(v.Days, viewDay(&c, d))
	}
	for _, b := range c.Batches {
		v.Batches = append(v.Batches, calendarBatch{b.Name, dateOf(b.Ready), dateOf(b.Last), b.Why})
	}
	v.Level = viewLevel(&c)
	spare, ok, err := calendar.OneMore(l, now, 0)
	if ok {
		v.OneMoreTank = viewSpare(spare, c.Zone)
	}
	return v, err
}

func viewDay(c *calendar.Calendar, d calendar.Day) calendarDay {
	v := calendarDay{
		Date: d.Date.String(), Tanks: list(d.Tanks()), Moves: d.Moves(), Minutes: wholeMinutes(d.Work), LimitMinutes: int(d.Limit / time.Minute),
		Over: d.Full != calendar.Fits, OverMinutes: wholeMinutes(d.OverBy()), Fullness: fullness(d.Full),
		EmptyTanks: d.Empty, MakeReady: list(d.Standing), SeaWaterLitres: round(d.SeaWaterLitres, 1),
		AlgaeLitres: map[string]*float64{}, Looks: d.Looks, Feeds: d.Feeds, Ready: list(d.Ready), Changes: []dueChange{},
		when: d.Date.Start(c.Zone), stuck: d.Stuck(), anything: len(d.Changes) > 0 || len(d.Standing) > 0,
	}
	reckoned := d.Wash.Known || !v.anything
	v.AcidML, v.WashLitres = known(d.Wash.AcidML, reckoned, 1), known(d.Wash.Litres, reckoned, 3)
	for alga, cells := range d.Cells {
		if cells > 0 {
			v.AlgaeLitres[alga] = known(d.Algae[alga], !slices.Contains(c.Uncounted, alga), 4)
		}
	}
	for _, x := range d.Changes {
		v.Changes = append(v.Changes, dueChange{x.Tank, x.Batch, x.AgeDays, stamp(x.Due, c.Zone), x.Overdue})
	}
	return v
}

// wholeMinutes is a length of work in minutes, never less than it is.
func wholeMinutes(d time.Duration) int { return int(math.Ceil(d.Minutes())) }

func fullness(f calendar.Fullness) string {
	switch f {
	case calendar.OverLimit:
		return "too full"
	case calendar.NoTime:
		return "no time"
	}
	return "fits"
}

func dateOf(d model.Day) *string {
	if d.IsZero() {
		return nil
	}
	s := d.String()
	return &s
}
