package main

import (
	"fmt"
	"slices"
	"time"

	"drainboard/model"
	"drainboard/model/season"
	"drainboard/state"

	"github.com/spf13/cobra"
)

// newSeason is the command that sets all batches side by side.
func newSeason(p *program) *cobra.Command {
	var (
		ask  asking
		year int
	)
	c := &cobra.Command{
		Use: "season", Short: "All batches side by side, and the habits that went with better ones",
		Long: "All batches side by side: survival, days until ready, growth, where the larvae went, and how each\n" +
			"batch was kept. Then each habit is held against survival and growth by ranks, which proves nothing:\n" +
			"the batches are few and no experiment was made.",
		Args: noWords,
		RunE: doing(func([]string) error { return p.season(ask, year) }),
	}
	ask.flags(c)
	c.Flags().IntVar(&year, "year", 0, "only batches that hatched in this `year`; default all")
	return c
}

func (p *program) season(ask asking, year int) error {
	now, err := ask.moment(p)
	if err != nil {
		return err
	}
	return p.reading(func(f *state.Folder) error {
		s := season.Of(f.Ledger().At(now), now)
		if years := s.Years(); year != 0 {
			if !slices.Contains(years, year) {
				return fmt.Errorf("season: --year: no batch hatched in %d; batches hatched in %s", year, yearWords(years))
			}
			s = s.In(year)
		}
		view := viewSeason(s, f.Room(), year, now)
		if ask.json {
			return p.printJSON(view)
		}
		return p.print(view.lines(s))
	})
}

// seasonView is season --json; what is not known is null.
type seasonView struct {
	At       string            `json:"at"`
	Room     string            `json:"room"`
	Year     *int              `json:"year"`
	Batches  []seasonBatchView `json:"batches"`
	Compared []seasonHabitView `json:"compared"`
	Caveat   string            `json:"caveat"`
}

// seasonBatchView is one batch. Shares are of 1, days count from the hatch.
type seasonBatchView struct {
	Name    string   `json:"name"`
	Hatched string   `json:"hatched"`
	Here    bool     `json:"here"`
	AgeDays int      `json:"age_days"`
	Stocked *float64 `json:"stocked"`

	Alive         *float64 `json:"survival"`
	AliveLow      *float64 `json:"survival_low"`
	AliveHigh     *float64 `json:"survival_high"`
	AliveDay      *float64 `json:"survival_day"` // age at which it was so
	ADay          *float64 `json:"survival_a_day"`
	ADayLow       *float64 `json:"survival_a_day_low"`
	ADayHigh      *float64 `json:"survival_a_day_high"`
	FromCount     bool     `json:"from_count"`
	PartlyCounted bool     `json:"partly_counted"`

	Ready     season.How `json:"ready"`
	ReadyDay  *float64   `json:"ready_day"`
	ReadyLow  *float64   `json:"ready_day_low"`
	ReadyHigh *float64   `json:"ready_day_high"`
	ReadyFar  bool       `json:"ready_far"`

	UMPerDay     *float64 `json:"um_per_day"`
	UMPerDayLow  *float64 `json:"um_per_day_low"`
	UMPerDayHigh *float64 `json:"um_per_day_high"`
	MeanUM       *float64 `json:"mean_um"`

	Moves  int                       `json:"moves"`
	Losses map[string]seasonLossView `json:"losses"`
	Habits map[string]keptView       `json:"habits"`
}

// seasonLossView is larvae that left for one cause.
type seasonLossView struct {
	Entries int     `json:"entries"`
	Larvae  float64 `json:"larvae"`
	Untold  int     `json:"untold"` // entries without a number
}

// keptView is how a batch was kept, over n moves, numbers, changes or looks.
type keptView struct {
	Value *float64 `json:"value"`
	N     int      `json:"n"`
}

// seasonHabitView is one habit against one outcome.
type seasonHabitView struct {
	Habit   string         `json:"habit"`
	Outcome season.Outcome `json:"outcome"`
	N       int            `json:"n"`
	Rho     *float64       `json:"rho"`
}

// habitKey is a habit in JSON, with its unit.
func habitKey(h season.Habit) string {
	switch h.Unit() {
	case "degrees C":
		return string(h) + "_celsius"
	case "per L":
		return string(h) + "_per_litre"
	}
	return string(h) + "_percent"
}

func viewSeason(s season.Season, room *model.Room, year int, now time.Time) seasonView {
	v := seasonView{At: stamp(now, room.Zone), Room: room.Name, Batches: []seasonBatchView{}, Caveat: s.Caveat()}
	if year != 0 {
		v.Year = &year
	}
	for _, b := range s.Batches {
		v.Batches = append(v.Batches, viewSeasonBatch(b, room))
	}
	for _, c := range s.Compared {
		v.Compared = append(v.Compared, seasonHabitView{habitKey(c.Habit), c.Outcome, c.N, known(c.Rho.X, c.Rho.Known, 3)})
	}
	return v
}

func viewSeasonBatch(b season.Batch, room *model.Room) seasonBatchView {
	v := seasonBatchView{
		Name: b.Name, Hatched: b.Hatched.String(), Here: b.Here, AgeDays: b.AgeDays, Moves: b.Moves,
		Stocked:   known(b.Stocked.X, b.Stocked.Known, 0),
		FromCount: b.Alive.FromCount, PartlyCounted: b.Alive.Told,
		Ready: b.Ready.How, ReadyFar: b.Ready.Far,
		UMPerDay:     known(b.Growth.PerDay.X, b.Growth.PerDay.Known, 2),
		UMPerDayLow:  known(b.Growth.Low.X, b.Growth.Low.Known, 2),
		UMPerDayHigh: known(b.Growth.High.X, b.Growth.High.Known, 2),
		MeanUM:       known(b.Growth.LastUM.X, b.Growth.LastUM.Known, 1),
		Losses:       map[string]seasonLossView{}, Habits: map[string]keptView{},
	}
	if !b.Hatched.Moment.IsZero() {
		v.Hatched = stamp(b.Hatched.Moment, room.Zone)
	}
	share := b.Alive.Share
	v.Alive, v.AliveLow, v.AliveHigh = known(share.Value.X, share.Value.Known, 4), known(share.Low.X, share.Low.Known, 4), known(share.High.X, share.High.Known, 4)
	v.AliveDay = known(b.Alive.AgeDays, share.Value.Known, 2)
	a := b.Alive.ADay
	v.ADay, v.ADayLow, v.ADayHigh = known(a.Value.X, a.Value.Known, 5), known(a.Low.X, a.Low.Known, 5), known(a.High.X, a.High.Known, 5)
	d := b.Ready.Days
	v.ReadyDay, v.ReadyLow, v.ReadyHigh = known(d.Value.X, d.Value.Known, 1), known(d.Low.X, d.Low.Known, 1), known(d.High.X, d.High.Known, 1)
	for name, l := range map[string]season.Loss{
		"settled": b.Losses.Settled, "discarded": b.Losses.Discarded, "lost": b.Losses.Lost, "removed": b.Losses.Removed,
	} {
		v.Losses[name] = seasonLossView{l.Entries, round(l.Larvae, 0), l.Untold}
	}
	for _, h := range season.Habits() {
		m := b.Habit(h)
		v.Habits[habitKey(h)] = keptView{known(m.X, m.Known, 2), m.N}
	}
	return v
}
