package calendar

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"drainboard/model"
)

func nassau(t testing.TB) *time.Location { return zoneOf(t, "America/Nassau") }

func zoneOf(t testing.TB, name string) *time.Location {
	t.Helper()
	zone, err := time.LoadLocation(name)
	if err != nil {
		t.Fatal(err)
	}
	return zone
}

func moment(t testing.TB, s string) time.Time {
	t.Helper()
	at, err := time.Parse(time.RFC3339, s)
	if err != nil {
		t.Fatal(err)
	}
	return at
}

// room is an invented room with three tanks of 120 L and one of 160 L.
func room(t testing.TB) *model.Ledger {
	t.Helper()
	r := &model.Room{Name: "test", Zone: nassau(t), House: model.DefaultHouse(), Algae: model.DefaultAlgae()}
	for _, name := range []string{"K1", "K2", "K3"} {
		r.Tanks = append(r.Tanks, model.Tank{Name: name, Litres: 120})
	}
	r.Tanks = append(r.Tanks, model.Tank{Name: "L1", Litres: 160})
	return model.NewLedger(r)
}

func stock(t testing.TB, l *model.Ledger, at, tank, batch, hatched string) {
	t.Helper()
	day, err := model.ParseDay(hatched)
	if err != nil {
		t.Fatal(err)
	}
	larvae := 6000.0
	put(t, l, moment(t, at), &model.Stocked{Tank: tank, Batch: batch, Hatched: model.Hatched{Date: day}, Larvae: &larvae})
}

// worked is that room on 25 November at 9:14: K1 due at 10 and looked at and fed
// since, K2 overdue, K3 ready, L1 dirty; iso counted with 5 million cells per mL.
func worked(t testing.TB) (*model.Ledger, time.Time) {
	t.Helper()
	l := room(t)
	put(t, l, moment(t, "2026-11-22T20:00:00-05:00"), &model.Filled{Tank: "K3"})
	stock(t, l, "2026-11-23T01:00:00-05:00", "K2", "P-1", "2026-11-15")
	put(t, l, moment(t, "2026-11-23T08:00:00-05:00"), &model.Service{Tank: "L1", Out: true})
	put(t, l, moment(t, "2026-11-23T09:00:00-05:00"), &model.Service{Tank: "L1"})
	stock(t, l, "2026-11-23T10:00:00-05:00", "K1", "P-2", "2026-11-20")
	put(t, l, moment(t, "2026-11-24T20:00:00-05:00"), &model.Look{Tank: "K1", Swim: model.SwimGood})
	put(t, l, moment(t, "2026-11-24T21:00:00-05:00"), &model.Fed{Tank: "K1", Litres: map[string]float64{"iso": 0.1}})
	put(t, l, moment(t, "2026-11-25T09:00:00-05:00"), &model.Cells{Algae: "iso", Counts: []int{5_000_000}, ChamberML: 1})
	return l, moment(t, "2026-11-25T09:14:00-05:00")
}

func calendar(t testing.TB, l *model.Ledger, now time.Time, days int) Calendar {
	t.Helper()
	c, err := For(l, now, days)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func mins(m float64) time.Duration { return time.Duration(math.Round(m*60_000)) * time.Millisecond }

// By hand: a move of 120 L takes 120/6 + 6 = 26 min, making it ready 120/12 + 8 =
// 18; 160 L take 32.7 and 21.3. With two empty tanks and two people K1 and K2 take
// 26 + 26 and 18 for the last; L1 is ready before the first is emptied. The wash is
// 20 L of bin and 4 a tank at 10 mL a litre. 120 L x 5000 cells per mL of a culture
// of 5 million are 0.12 L a tank and day.
func TestDaysByHand(t *testing.T) {
	l, now := worked(t)
	c := calendar(t, l, now, 4)
	for _, want := range []struct {
		date         string
		tanks        string
		work         float64
		sea, acid, w float64
		looks, feeds int
	}{
		{"2026-11-25", "K2 K1", 70, 400, 320, 32, 2, 2},
		{"2026-11-26", "", 0, 0, 0, 0, 2, 2},
		{"2026-11-27", "K2 K1", 70, 240, 280, 28, 2, 2},
		{"2026-11-28", "", 0, 0, 0, 0, 2, 2},
	} {
		d := c.Days[slices.IndexFunc(c.Days, func(d Day) bool { return d.Date.String() == want.date })]
		if got := strings.Join(d.Tanks(), " "); got != want.tanks || d.Work != mins(want.work) || d.Full != Fits {
			t.Errorf("%s: %q, %v, %v; want %q, %v min", want.date, got, d.Work, d.Full, want.tanks, want.work)
		}
		if d.SeaWaterLitres != want.sea || !d.Wash.Known || d.Wash.AcidML != want.acid || d.Wash.Litres != want.w {
			t.Errorf("%s: %v L sea water, wash %+v; want %v, %v mL in %v L", want.date, d.SeaWaterLitres, d.Wash, want.sea, want.acid, want.w)
		}
		if d.Looks != want.looks || d.Feeds != want.feeds || math.Abs(d.Algae["iso"]-0.24) > 1e-9 {
			t.Errorf("%s: %d looks, %d feeds, %v; want %d, %d and 0.24 L iso", want.date, d.Looks, d.Feeds, d.Algae, want.looks, want.feeds)
		}
	}
	today := c.Days[0]
	if got := fmt.Sprint(today.Standing); got != "[L1]" || today.Empty != 2 {
		t.Errorf("%s stand to be made ready of %d empty; want L1 of 2", got, today.Empty)
	}
	if k2 := today.Changes[0]; !k2.Overdue || k2.AgeDays != 10 || !k2.Due.Equal(moment(t, "2026-11-25T01:00:00-05:00")) || today.Changes[1].Overdue {
		t.Errorf("changes %+v; want K2 overdue since 1 o'clock, of day 10", today.Changes)
	}
	// K2 is changed now at the earliest, and its next change counts from there.
	if next := c.Days[2].Changes[0]; !next.Due.Equal(now.Add(48*time.Hour)) || next.AgeDays != 12 || next.Overdue {
		t.Errorf("K2 falls due again %+v", next)
	}
}

func TestWorkByCrew(t *testing.T) {
	for name, c := range map[string]struct {
		crew, out int
		work      float64
	}{
		"two, two empty tanks": {2, 0, 70},
		"two, one empty tank":  {2, 1, 88}, // 26 + 18 + 26 + 18: the mover waits
		"one person":           {1, 0, 109 + 1.0/3},
	} {
		t.Run(name, func(t *testing.T) {
			l, now := worked(t)
			l.Room().House.Crew = c.crew
			if c.out > 0 {
				put(t, l, now, &model.Service{Tank: "L1", Out: true})
			}
			if got := calendar(t, l, now, 1).Days[0].Work; got != mins(c.work) {
				t.Errorf("%v; want %v min", got, c.work)
			}
		})
	}
}

// A change every 48 h of elapsed time keeps its hour but where the clocks change.
func TestDaysOnWhichClocksChange(t *testing.T) {
	for name, c := range map[string]struct {
		stocked string
		want    []string
		hours   float64 // of the second day
	}{
		// 23:30 on Friday and 48 h are 0:30 on Monday: Sunday has 23 hours.
		"spring": {"2026-03-04T23:30:00-05:00", []string{"2026-03-06", "2026-03-09", "2026-03-11", "2026-03-13"}, 23},
		// 0:15 on Saturday and 48 h are 23:15 on Sunday, which has 25.
		"autumn": {"2026-10-29T00:15:00-04:00", []string{"2026-10-31", "2026-11-01", "2026-11-03", "2026-11-05"}, 25},
	} {
		t.Run(name, func(t *testing.T) {
			l := room(t)
			stock(t, l, c.stocked, "K1", "P-1", c.stocked[:10])
			now := moment(t, c.stocked).Add(40 * time.Hour)
			cal := calendar(t, l, now, 8)
			var got []string
			sunday := -1
			for d, day := range cal.Days {
				if day.Date.Start(cal.Zone).Weekday() == time.Sunday && sunday < 0 {
					sunday = d
				}
				for range day.Changes {
					got = append(got, day.Date.String())
				}
				if day.Looks != 1 && d > 0 && d != sunday && d != sunday+1 {
					t.Errorf("%v: %d looks; want one a day", day.Date, day.Looks)
				}
			}
			if fmt.Sprint(got) != fmt.Sprint(c.want) {
				t.Errorf("changes on %v; want %v", got, c.want)
			}
			if left := cal.horizon.left(sunday); left.Hours() != c.hours || cal.Days[sunday].Limit != left {
				t.Errorf("Sunday has %v, of which %v; want %v h", left, cal.Days[sunday].Limit, c.hours)
			}
		})
	}
}

// In some zones clocks change at midnight, so that hour 0 is missing, or there
// twice.
func TestDaysBeginWhereMidnightIsMissing(t *testing.T) {
	for _, c := range []struct{ zone, day, want string }{
		{"America/Havana", "2026-03-08", "2026-03-08T01:00:00-04:00"},
		{"America/Havana", "2026-11-01", "2026-11-01T00:00:00-04:00"},
		{"Asia/Beirut", "2026-03-29", "2026-03-29T01:00:00+03:00"},
		{"America/Nassau", "2026-03-08", "2026-03-08T00:00:00-05:00"},
		{"UTC", "2026-03-08", "2026-03-08T00:00:00Z"},
	} {
		zone := zoneOf(t, c.zone)
		day, err := model.ParseDay(c.day)
		if err != nil {
			t.Fatal(err)
		}
		if got := firstInstant(day, zone).Format(time.RFC3339); got != c.want {
			t.Errorf("%s in %s begins at %s; want %s", c.day, c.zone, got, c.want)
		}
	}
}

func TestFullDays(t *testing.T) {
	for name, c := range map[string]struct {
		now   string
		limit float64
		full  Fullness
		over  float64
	}{
		"no limit":                {"2026-11-25T09:14:00-05:00", 0, Fits, 0},
		"at the limit":            {"2026-11-25T09:14:00-05:00", 70, Fits, 0},
		"over the limit":          {"2026-11-25T09:14:00-05:00", 60, OverLimit, 10},
		"too late in the evening": {"2026-11-25T23:00:00-05:00", 0, NoTime, 10},
		"both":                    {"2026-11-25T23:20:00-05:00", 60, NoTime, 30},
	} {
		t.Run(name, func(t *testing.T) {
			l, _ := worked(t)
			l.Room().House.DayMinutes = c.limit
			d := calendar(t, l, moment(t, c.now), 1).Days[0]
			if d.Full != c.full || d.OverBy() != mins(c.over) {
				t.Errorf("%v of %v: %v, over by %v; want %v, %v min", d.Work, d.Limit, d.Full, d.OverBy(), c.full, c.over)
			}
		})
	}
}

func TestNoEmptyTank(t *testing.T) {
	l, now := worked(t)
	put(t, l, now, &model.Service{Tank: "L1", Out: true})
	put(t, l, now, &model.Service{Tank: "K3", Out: true})
	c := calendar(t, l, now, 2)
	if !c.Days[0].Stuck() || c.Days[1].Stuck() {
		t.Errorf("%d and %d tanks are empty: stuck %v, %v; want today only, when changes are due", c.Days[0].Empty, c.Days[1].Empty, c.Days[0].Stuck(), c.Days[1].Stuck())
	}
}

// grow enters lengths of a batch that grows 50 um a day from 200 at hatch.
func grow(t testing.TB, l *model.Ledger, tank string, born model.Day, days ...int) {
	t.Helper()
	for _, d := range days {
		mean := 200 + 50*float64(d)
		at := born.Add(d).Start(l.Room().Zone)
		put(t, l, at, &model.Sizes{Tank: tank, UM: []float64{mean - 6, mean - 2, mean + 2, mean + 6}})
	}
}

// The batch reaches 1150 um on day 19, 4 December, and is reckoned with three days
// longer, as in the demand for food. Its tank is empty from the day after.
func TestABatchLeaves(t *testing.T) {
	l := room(t)
	born := model.Day{Year: 2026, Month: time.November, Date: 15}
	stock(t, l, "2026-11-16T22:00:00-05:00", "K2", "P-1", born.String())
	stock(t, l, "2026-11-16T23:00:00-05:00", "K1", "P-2", born.String())
	grow(t, l, "K2", born, 2, 4, 6, 8)
	c := calendar(t, l, moment(t, "2026-11-25T09:14:00-05:00"), 16)
	if got := c.Batches[0]; got.Ready.String() != "2026-12-04" || got.Last.String() != "2026-12-07" || got.Why == "" {
		t.Errorf("%+v; want ready on 4 December, there to the 7th", got)
	}
	if got := c.Batches[1]; !got.Ready.IsZero() || !got.Last.IsZero() || got.Why == "" {
		t.Errorf("%+v; want a batch that stays, and why", got)
	}
	empty := c.Days[0].Empty
	for _, d := range c.Days {
		ready, left := d.Date.String() == "2026-12-04", d.Date.Sub(c.Batches[0].Last) > 0
		if ready != (fmt.Sprint(d.Ready) == "[P-1]") {
			t.Errorf("%v: ready %v", d.Date, d.Ready)
		}
		if slices.Contains(d.Tanks(), "K2") && left || (d.Empty == empty+1) != left {
			t.Errorf("%v: %v due, %d empty; K2's batch leaves after %v", d.Date, d.Tanks(), d.Empty, c.Batches[0].Last)
		}
		if tanks := d.Looks; tanks != map[bool]int{true: 1, false: 2}[left] && d.Date != c.Days[0].Date {
			t.Errorf("%v: %d looks", d.Date, tanks)
		}
	}
}

func TestWhatIsNotKnownIsSaid(t *testing.T) {
	l, now := worked(t)
	l.Room().House.Wash.StockPercent = 0.1
	l.Room().House.Ration[0].FromDay = 8
	c := calendar(t, l, now, 1)
	if c.Days[0].Wash.Known || !strings.Contains(c.WashProblem, "stock-percent") {
		t.Errorf("wash %+v, problem %q; want the strength to be named", c.Days[0].Wash, c.WashProblem)
	}
	if len(c.Gaps) != 1 || !strings.HasPrefix(c.Gaps[0], "K1: ") {
		t.Errorf("gaps %q; want K1, too young for a ration", c.Gaps)
	}
	bare := room(t)
	if c := calendar(t, bare, now, 1); fmt.Sprint(c.Uncounted) != "[iso]" {
		t.Errorf("uncounted %v; want iso", c.Uncounted)
	}
}

func TestForRefuses(t *testing.T) {
	l, now := worked(t)
	for _, days := range []int{-1, 0, MostDays + 1} {
		if _, err := For(l, now, days); err == nil || !strings.Contains(err.Error(), "give 1 to 60") {
			t.Errorf("%d days: %v", days, err)
		}
	}
	l.Room().House.ChangeHours = 0.5
	if _, err := For(l, now, 1); err == nil || !strings.Contains(err.Error(), "house.change_hours: 0.5") {
		t.Errorf("a change every half hour: %v", err)
	}
}

// An empty room has a calendar of its days all the same.
func TestEmptyRoom(t *testing.T) {
	r := &model.Room{Name: "x", Zone: time.UTC, House: model.DefaultHouse()}
	c := calendar(t, model.NewLedger(r), moment(t, "2026-11-25T09:14:00Z"), DefaultDays)
	for _, d := range c.Days {
		if d.Moves() != 0 || d.Work != 0 || d.Full != Fits || d.Stuck() {
			t.Errorf("%v: %+v", d.Date, d)
		}
	}
	if level := c.Level(0); len(level.Early) != 0 || !level.Best || level.Over != 0 {
		t.Errorf("%+v", level)
	}
}
