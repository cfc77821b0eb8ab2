package batch

import (
	"fmt"
	"math"
	"testing"
	"time"

	"drainboard/model"
	"drainboard/model/growth"
	"drainboard/tui/desk"
	"drainboard/tui/desk/desktest"
)

// published is a day of lengths as a data sheet sums it up.
type published struct {
	age, mean, sd float64
	n             int
}

// bayScallopF1: shell lengths of F1 of 2021 in ambient water, five tanks pooled,
// and F2 of 2022, tank A (US National Marine Fisheries Service, Northeast
// Fisheries Science Center, public data).
var (
	bayScallopF1 = []published{{2, 96.57, 6.14, 147}, {4, 108.07, 8.57, 181}, {6, 122.30, 17.37, 244}, {8, 164.53, 25.44, 490}, {10, 180.18, 29.19, 230}}
	bayScallopF2 = []published{
		{2, 104.90, 4.62, 56},
		{4, 111.18, 6.14, 44},
		{6, 127.49, 10.45, 36},
		{8, 139.28, 16.67, 22},
		{10, 165.42, 28.67, 19},
		{12, 176.73, 27.17, 78},
		{14, 201.13, 8.78, 11},
		{21, 350.64, 46.08, 13},
	}
)

// readings are n lengths of exactly that mean and standard deviation.
func (p published) readings() []float64 {
	pairs := p.n / 2
	off := p.sd * math.Sqrt(float64(p.n-1)/float64(2*pairs))
	um := make([]float64, 0, p.n)
	for range pairs {
		um = append(um, p.mean-off, p.mean+off)
	}
	if p.n%2 == 1 {
		um = append(um, p.mean)
	}
	return um
}

// played is a desk where a batch S of K2, hatched on 2 November, has these days of
// lengths; it is now so many days old.
func played(t testing.TB, readyUM, now float64, days ...published) (*Batch, *desk.Desk) {
	t.Helper()
	d, _ := desktest.Empty(t)
	d.Ledger.Room().House.Growth.ReadyUM = readyUM
	hatched, err := model.ParseHatched("2026-11-02")
	if err != nil {
		t.Fatal(err)
	}
	born := hatched.Instant(d.Ledger.Room().Zone)
	moment := func(age float64) time.Time { return born.Add(time.Duration(age * 24 * float64(time.Hour))) }
	d.Now = moment(now)
	enter := func(age float64, fact model.Fact) {
		t.Helper()
		if _, err := d.EnterAt(moment(age), fact); err != nil {
			t.Fatalf("day %g, %s: %v", age, fact.Kind(), err)
		}
	}
	enter(0.5, &model.Stocked{Tank: "K2", Batch: "S", Hatched: hatched})
	for _, p := range days {
		enter(p.age, &model.Sizes{Tank: "K2", UM: p.readings()})
	}
	return New(d, "S").(*Batch), d
}

// The ready ages are those of R 4.2.2 on the published sums, by Fieller's limits:
// F1 to day 10, 250 um, exponential: 13.348 (11.230 to 18.172); straight: 15.746
// (12.737 to 23.670). F2 tank A, 300 um, straight: 22.479 (18.337 to 30.982).
func TestGrowthOfBayScallopThroughTheLedger(t *testing.T) {
	for _, c := range []struct {
		name           string
		days           []published
		readyUM        float64
		shape          func(growth.Growth) growth.Fit
		age, low, high float64
	}{
		{"F1, exponential", bayScallopF1, 250, func(g growth.Growth) growth.Fit { return g.Exponential }, 13.3481239029, 11.2302826098, 18.1715536737},
		{"F1, straight", bayScallopF1, 250, func(g growth.Growth) growth.Fit { return g.Line }, 15.7457284335, 12.7373650793, 23.6694921040},
		{"F2 tank A, straight", bayScallopF2, 300, func(g growth.Growth) growth.Fit { return g.Line }, 22.4794005280, 18.3370559257, 30.9822989281},
	} {
		t.Run(c.name, func(t *testing.T) {
			s, _ := played(t, c.readyUM, 21, c.days...)
			f := s.of(s.now())
			for i, l := range f.looks {
				if p := c.days[i]; math.Abs(l.AgeDays-p.age)+math.Abs(l.MeanUM-p.mean)+math.Abs(l.SDUM-p.sd) > 1e-6 || l.N != p.n {
					t.Fatalf("look %d = %+v; want %+v", i, l, p)
				}
			}
			r, err := c.shape(f.growth).Ready(c.readyUM)
			if err != nil || math.Abs(r.AgeDays-c.age)+math.Abs(r.Interval.Low-c.low)+math.Abs(r.Interval.High-c.high) > 1e-6 {
				t.Errorf("ready %+v, %v; want day %.4f (%.4f to %.4f)", r, err, c.age, c.low, c.high)
			}
		})
	}
}

// The page says which shape was believed, and its day by the calendar: hatched on
// 2 November, so that day 15.7 is the 17th and 12.7 to 23.7 the 14th to the 25th.
func TestGrowthPageOfBayScallop(t *testing.T) {
	s, _ := played(t, 250, 12, bayScallopF1...)
	b := s.now()
	f := s.of(b)
	l := s.desk.Ledger
	if f.growth.Better != growth.Straight {
		t.Fatalf("better %v (%s); want the straight line, the days being wanted by it", f.growth.Better, f.growth.Why)
	}
	shows(t, frame(s),
		"250 µm on Tue 17 Nov, day 15 (Sat 14 Nov to Wed 25 Nov, 95 %); by 1 292 readings of 5 days",
		"1 292 readings of 5 days; the last day 10.0, Thu 12 Nov: mean 180.2 µm (176.4 to 184.0), n 230, sd 29.2",
		"straight line",
		fmt.Sprintf("%+.1f µm a day", f.growth.Line.Slope))
	if day := l.DayAtAge(b, f.ready.AgeDays); day != (model.Day{Year: 2026, Month: time.November, Date: 17}) {
		t.Errorf("ready on %v; want 17 November", day)
	}
}

func steady(from, perDay, sd float64, ages ...float64) []published {
	var list []published
	for _, age := range ages {
		list = append(list, published{age, from + perDay*age, sd, 20})
	}
	return list
}

func TestReadyInWords(t *testing.T) {
	for _, c := range []struct {
		name  string
		now   float64
		days  []published
		wants []string
	}{
		{"no lengths", 5, nil, []string{"no ready day: lengths of fewer than three days (of 0 so far)"}},
		{"one day", 5, steady(305, 25, 20, 4), []string{"(of 1 so far)", "20 readings of 1 day"}},
		{"two days", 5, steady(305, 25, 20, 2, 4), []string{"(of 2 so far)", "+25.0 µm a day, how sure is not known: that needs lengths of three days", "looks of 2 days are too few to tell a curve"}},
		{"ahead", 14, steady(305, 25, 20, 2, 4, 6, 8, 10, 12, 14), []string{"900 µm on Wed 25 Nov, day 23 (", "95 %); by 140 readings of 7 days\n"}},
		{"far", 8, steady(305, 25, 20, 2, 4, 6, 8), []string{"beyond twice the span of the looks: to plan by, not to rely on"}},
		{"past by now", 30, steady(305, 25, 20, 2, 4, 6, 8, 10, 12, 14), []string{"past by now, with no lengths since Mon 16 Nov: look"}},
		{"reached", 27, steady(305, 25, 20, 6, 12, 18, 26), []string{"900 µm reached by the curve on Wed 25 Nov, day 23 ("}},
		{"never", 14, steady(600, -5, 20, 2, 6, 10, 14), []string{"no ready day: at this rate 900 µm is not reached within a year"}},
		{"no latest day", 9, []published{{0.6, 300, 20, 20}, {4, 420, 20, 20}, {8, 390, 20, 20}}, []string{"; the earliest ", "no latest day: the growth is not sure enough"}},
		{"an exponential", 14, []published{{2, 200, 5, 20}, {5, 260, 5, 20}, {8, 338, 5, 20}, {11, 439.4, 5, 20}, {14, 571.2, 5, 20}}, []string{"exponential fits better", "at the last length, doubling in 7.9 days"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s, _ := played(t, 900, c.now, c.days...)
			shows(t, frame(s), c.wants...)
		})
	}
}

func TestReadyOfAnEndedBatch(t *testing.T) {
	s, d := played(t, 900, 14, steady(305, 25, 20, 2, 4, 6, 8, 10, 12)...)
	desktest.Enter(t, d, 0, &model.Ended{Tank: "K2", Why: model.Lost})
	shows(t, frame(s), "900 µm was not reached in the room; the curve would meet it on Wed 25 Nov, day 23 (")
}

func TestTheDefaultLengthIsNamedAsSuch(t *testing.T) {
	const words = "1 150 µm is the program's default and from memory, not a published figure"
	s, _ := played(t, model.DefaultHouse().Growth.ReadyUM, 5)
	shows(t, frame(s), words)
	own, _ := played(t, 1100, 5)
	hides(t, frame(own), "from memory")
}

func TestCorridorInWords(t *testing.T) {
	for _, c := range []struct {
		name     string
		corridor []model.GrowthBand
		want     string
	}{
		{"none", nil, "the room gives none"},
		{"within", []model.GrowthBand{{FromDay: 0, LowUM: 300, HighUM: 700}}, "the last look is within the house's 300 to 700 µm"},
		{"above", []model.GrowthBand{{FromDay: 0, LowUM: 300, HighUM: 400}}, "the last look is above the house's 300 to 400 µm"},
		{"behind", []model.GrowthBand{{FromDay: 0, LowUM: 700, HighUM: 900}}, "below the house's 700 to 900 µm, and so was the one before: BEHIND"},
		{"later", []model.GrowthBand{{FromDay: 20, LowUM: 700, HighUM: 900}}, "begins after the last look"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s, d := played(t, 900, 9, steady(305, 25, 20, 4, 6, 8)...)
			d.Ledger.Room().House.Corridor = c.corridor
			shows(t, frame(s), c.want)
		})
	}
}

// The chart has a point a day with its interval, the curve and the ready day, each
// the model's own.
func TestGrowthChartIsTheModels(t *testing.T) {
	s, d := played(t, 250, 12, bayScallopF1...)
	b := s.now()
	c := s.growthChart(b)
	looks, err := d.Ledger.SampleLooks(b)
	if err != nil || len(c.Points) != len(looks) {
		t.Fatalf("%d points for %d looks, %v", len(c.Points), len(looks), err)
	}
	for i, l := range looks {
		in, _ := l.MeanInterval()
		if p := c.Points[i]; p.X != l.AgeDays || p.Y != l.MeanUM || p.Low != in.Low || p.High != in.High {
			t.Errorf("point %d = %+v; want %+v within %+v", i, p, l, in)
		}
	}
	g, _ := d.Ledger.Growth(b)
	if got, want := c.Curves[0].At(7), g.Best().At(7); got != want {
		t.Errorf("curve at day 7 = %g; want %g", got, want)
	}
	r, _ := d.Ledger.Ready(b)
	mark := c.Marks[len(c.Marks)-1]
	if mark.X != r.AgeDays || mark.Low != r.Interval.Low || mark.High != r.Interval.High || mark.Name != "Tue 17 Nov" {
		t.Errorf("mark %+v; want that of %+v", mark, r)
	}
	if c.Levels[0].Y != 250 || c.X.High < r.AgeDays {
		t.Errorf("level %v, axis to day %g; want 250 um and the ready day in it", c.Levels, c.X.High)
	}
}

// A ready day beyond three spans is not drawn, nor the curve that far.
func TestGrowthChartLeavesOutWhatIsTooFar(t *testing.T) {
	s, _ := played(t, 900, 5, steady(300, 10, 20, 1, 3, 5)...)
	c := s.growthChart(s.now())
	if len(c.Marks) != 1 || c.Marks[0].Name != "today" {
		t.Errorf("marks %+v; want today alone", c.Marks)
	}
	for _, curve := range c.Curves {
		if curve.To > 13 {
			t.Errorf("curve to day %g; want none beyond 13, three spans from day 1", curve.To)
		}
	}
}

func TestLobesInWords(t *testing.T) {
	s, d := shown(t, "P-03")
	shows(t, frame(s), "6 of the 6 that the house calls ready, in K3 on Tue 24 Nov; first seen: 4 on day 3, 6 on day 11")
	four := 4
	desktest.Enter(t, d, 0, &model.Look{Tank: "K3", Lobes: &four})
	shows(t, frame(s), "4 of the 6 that the house calls ready, in K3 on Wed 25 Nov")
}
