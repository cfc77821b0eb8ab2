package paper

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"

	"drainboard/model"
)

func TestNumbers(t *testing.T) {
	for want, n := range map[string]Numbers{
		"": nil, "7": {7}, "7, 8": {8, 7}, "7-9": {9, 7, 8}, "1, 3-5, 9": {3, 4, 5, 9, 1}, "4": {4, 4},
	} {
		if got := n.String(); got != want {
			t.Errorf("%v = %q; want %q", []int(n), got, want)
		}
	}
}

// story is a room in which entries are made one after the other.
type story struct {
	t testing.TB
	l *model.Ledger
}

func newStory(t testing.TB) *story {
	t.Helper()
	zone, err := time.LoadLocation("America/Nassau")
	if err != nil {
		t.Fatal(err)
	}
	room := &model.Room{
		Name: "Room", Zone: zone, House: model.DefaultHouse(), Algae: model.DefaultAlgae(), Procedure: model.DefaultProcedure(),
		Supplies: []model.Supply{{Name: "cold"}},
	}
	for i, place := range [][2]int{{2, 1}, {1, 2}, {1, 1}, {0, 0}, {2, 2}} {
		room.Tanks = append(room.Tanks, model.Tank{Name: fmt.Sprintf("C%d", i+1), Litres: 120, Row: place[0], Column: place[1]})
	}
	return &story{t, model.NewLedger(room)}
}

// at makes an entry; it returns its number. when is of November 2026, UTC.
func (s *story) at(when, by string, fact model.Fact) int {
	s.t.Helper()
	return s.late(when, when, by, fact)
}

// late makes an entry that was keyed later than it happened.
func (s *story) late(when, keyed, by string, fact model.Fact) int {
	s.t.Helper()
	e := model.Entry{At: moment(when), By: by, Fact: fact}
	if keyed != when {
		e.Keyed = moment(keyed)
	}
	if err := s.l.Check(&e, moment("30T00:00")); err != nil {
		s.t.Fatalf("%s %s: %v", when, fact.Kind(), err)
	}
	if err := s.l.Apply(e); err != nil {
		s.t.Fatal(err)
	}
	return e.N
}

func moment(s string) time.Time {
	t, err := time.Parse(time.RFC3339, "2026-11-"+s+":00Z")
	if err != nil {
		panic(err)
	}
	return t
}

func num(x float64) *float64 { return &x }

// stocked begins a story with larvae of batch A in C1.
func stockedStory(t testing.TB) *story {
	s := newStory(t)
	s.at("02T08:00", "MO", &model.Filled{Tank: "C1"})
	s.at("02T08:01", "MO", &model.Filled{Tank: "C2"})
	s.at("02T08:02", "MO", &model.Filled{Tank: "C3"})
	s.at("02T09:00", "JS", &model.Stocked{Tank: "C1", Batch: "A", Hatched: hatched("2026-11-01"), Larvae: num(9000)})
	return s
}

func hatched(day string) model.Hatched {
	h, err := model.ParseHatched(day)
	if err != nil {
		panic(err)
	}
	return h
}

func (s *story) report(batch, now string) Report {
	s.t.Helper()
	l := s.l.At(moment(now))
	r, err := NewReport(l, l.Batch(batch), moment(now))
	if err != nil {
		s.t.Fatal(err)
	}
	return r
}

func TestTheSheetGoesByPlace(t *testing.T) {
	s := stockedStory(t)
	sheet := NewSheet(s.l, moment("03T00:00"))
	var names []string
	for _, tank := range sheet.Tanks {
		names = append(names, tank.Name)
	}
	if got := strings.Join(names, " "); got != "C3 C2 C1 C5 C4" {
		t.Errorf("tanks stand as %s; want by row and column, those without a place last: C3 C2 C1 C5 C4", got)
	}
	c1 := sheet.Tanks[2]
	if c1.Batch != "A" || c1.AgeDays != 1 || !c1.Due.Equal(moment("04T09:00")) || c1.Larvae.Value.X != 9000 || c1.HasCelsius {
		t.Errorf("C1 = %+v", c1)
	}
	if sheet.Tanks[4].Known {
		t.Error("nothing was entered of C4")
	}
}

func TestPages(t *testing.T) {
	for tanks, want := range map[int]int{0: 0, 1: 1, 6: 1, 7: 2, 12: 2, 13: 3} {
		if got := len(Sheet{Tanks: make([]SheetTank, tanks)}.Pages()); got != want {
			t.Errorf("%d tanks on %d pages; want %d", tanks, got, want)
		}
	}
}

func TestLengthsDayByDay(t *testing.T) {
	s := stockedStory(t)
	a := s.at("03T19:00", "JS", &model.Sizes{Tank: "C1", UM: []float64{300, 310}})
	s.at("04T09:00", "JS", &model.Moved{From: "C1", To: "C2", Share: num(0.5)})
	b := s.at("03T19:40", "JS", &model.Sizes{Tank: "C1", UM: []float64{320}})
	// 04:30 UTC is still the day before in the room.
	c := s.at("04T04:30", "JS", &model.Sizes{Tank: "C1", UM: []float64{330}})
	d := s.at("05T15:00", "JS", &model.Sizes{Tank: "C2", UM: []float64{360}})
	r := s.report("A", "06T00:00")
	if len(r.Lengths) != 2 {
		t.Fatalf("%d days; want 2", len(r.Lengths))
	}
	first, second := r.Lengths[0], r.Lengths[1]
	if first.Day.String() != "2026-11-03" || first.Sample.N != 4 || first.Sample.Mean != 315 || first.N.String() != (Numbers{a, b, c}).String() || first.AgeDays != 2 {
		t.Errorf("first day = %+v", first)
	}
	// Age is the mean over the readings: two at 19:00, one at 19:40, one at 04:30 a day later, all UTC; hatched at 04:00 UTC, 1 November.
	if want := (2*63.0 + 63 + 40.0/60 + 72.5) / 4 / 24; math.Abs(first.Age-want) > 1e-9 {
		t.Errorf("age = %v; want %v", first.Age, want)
	}
	if second.Sample.HasSpread || second.N.String() != fmt.Sprint(d) || !slices.Equal(second.Tanks, []string{"C2"}) {
		t.Errorf("second day = %+v", second)
	}
	if r.Growth.Gap != "" || r.Growth.ReadyGap == "" {
		t.Errorf("two days give growth and no ready date; got %q and %q", r.Growth.Gap, r.Growth.ReadyGap)
	}
}

func TestTemperaturesAndFeedsDayByDay(t *testing.T) {
	s := stockedStory(t)
	var n Numbers
	for i, c := range []float64{27, 28, 32} {
		n = append(n, s.at(fmt.Sprintf("03T%02d:00", 12+i), "TR", &model.Temperature{Tank: "C1", Celsius: c}))
	}
	s.at("03T12:00", "TR", &model.Temperature{Tank: "C2", Celsius: 20}) // holds none of it
	f1 := s.at("03T16:00", "TR", &model.Fed{Tank: "C1", Litres: map[string]float64{"iso": 0.2}})
	f2 := s.at("03T20:00", "TR", &model.Fed{Tank: "C1", Litres: map[string]float64{"iso": 0.15}})
	r := s.report("A", "04T00:00")
	if len(r.Warmth) != 1 {
		t.Fatalf("%d days of temperatures; want 1", len(r.Warmth))
	}
	if d := r.Warmth[0]; d.Readings != 3 || d.Min != 27 || d.Mean != 29 || d.Max != 32 || d.Outside != 1 || d.N.String() != n.String() {
		t.Errorf("day = %+v", d)
	}
	if d := r.Feeds[0]; len(r.Feeds) != 1 || d.Feeds != 2 || math.Abs(d.Litres["iso"]-0.35) > 1e-12 || d.N.String() != (Numbers{f1, f2}).String() {
		t.Errorf("feeds = %+v", r.Feeds)
	}
}

func TestLossesAndWhatIsMissing(t *testing.T) {
	s := stockedStory(t)
	a := s.at("03T10:00", "JS", &model.Removed{Tank: "C1", Larvae: 100, Why: "sample"})
	b := s.at("04T10:00", "JS", &model.Removed{Tank: "C1", Larvae: 150, Why: "sample"})
	s.at("04T11:00", "JS", &model.Moved{From: "C1", To: "C2", Share: num(0.5)})
	s.at("05T10:00", "JS", &model.Count{Tank: "C1", Live: []int{40, 40}, SampleML: 1, HoldingML: 100})
	s.at("05T10:30", "JS", &model.Count{Tank: "C2", Live: []int{30, 30}, SampleML: 1, HoldingML: 100})
	e := s.at("06T10:00", "JS", &model.Ended{Tank: "C2", Why: model.Settled})
	r := s.report("A", "07T00:00")
	if len(r.Losses) != 2 {
		t.Fatalf("losses = %+v; want two causes", r.Losses)
	}
	if l := r.Losses[0]; l.Why != "sample" || l.Larvae != 250 || l.Ended || l.N.String() != (Numbers{a, b}).String() {
		t.Errorf("samples = %+v", l)
	}
	if l := r.Losses[1]; l.Why != model.Settled || l.Larvae != 3000 || !l.Ended || l.N.String() != fmt.Sprint(e) {
		t.Errorf("settled = %+v", l)
	}
	// 9000 stocked - 250 sampled - 3000 settled - 4000 standing
	if m := r.Unexplained; !m.Value.Known || m.Value.X != 1750 || !(m.Low.X < 1750 && 1750 < m.High.X) {
		t.Errorf("missing = %+v; want 1750 within its limits", m)
	}
	if len(r.Survival.Steps) == 0 || !r.Survival.Now.Share.Value.Known {
		t.Errorf("survival = %+v", r.Survival)
	}
	want, err := s.l.Survival(s.l.Batch("A"))
	if err != nil || math.Abs(want.Share.Value.X-r.Survival.Now.Share.Value.X) > 1e-12 {
		t.Errorf("survival %v; the ledger has %v, %v", r.Survival.Now.Share.Value.X, want.Share.Value.X, err)
	}
}

func TestWhatIsNotKnownIsSaid(t *testing.T) {
	s := newStory(t)
	s.at("02T08:00", "", &model.Filled{Tank: "C1"})
	s.at("02T09:00", "", &model.Stocked{Tank: "C1", Batch: "A", Hatched: hatched("2026-11-01")})
	r := s.report("A", "03T00:00")
	if r.Stocked.Value.Known || r.Unexplained.Value.Known || r.Survival.Now.Share.Value.Known {
		t.Errorf("numbers out of nothing: %+v, %+v, %+v", r.Stocked, r.Unexplained, r.Survival.Now)
	}
	for name, gap := range map[string]string{"survival": r.Survival.Gap, "growth": r.Growth.Gap, "ready": r.Growth.ReadyGap} {
		if gap == "" {
			t.Errorf("%s: no reason is given", name)
		}
	}
	if len(r.People) != 1 || r.People[0] != (Person{"", 1}) {
		t.Errorf("people = %+v", r.People)
	}
}

// TestTheStoryFollowsTheLarvae: what is entered of a tank is told of the batch it
// held then, and of no other.
func TestTheStoryFollowsTheLarvae(t *testing.T) {
	s := stockedStory(t)
	s.at("02T10:00", "JS", &model.Stocked{Tank: "C3", Batch: "B", Hatched: hatched("2026-11-02"), Larvae: num(5000)})
	inA := s.at("03T10:00", "JS", &model.Noted{Tank: "C1", Text: "of A"})
	s.at("03T11:00", "JS", &model.Noted{Tank: "C3", Text: "of B"})
	s.at("03T11:30", "JS", &model.Noted{Text: "of the room"})
	s.at("04T09:00", "JS", &model.Moved{From: "C1", To: "C2"})
	s.at("04T10:00", "JS", &model.Noted{Tank: "C1", Text: "an empty tank"})
	movedA := s.at("04T11:00", "JS", &model.Suspect{Tank: "C2", On: true, Why: "ciliates"})
	end := s.at("05T09:00", "JS", &model.Ended{Tank: "C2", Why: model.Lost})
	r := s.report("A", "09T12:00")
	var got []int
	for _, e := range r.Story {
		got = append(got, e.N)
	}
	if want := []int{4, inA, movedA, end}; !slices.Equal(got, want) {
		t.Errorf("story = %v; want %v", got, want)
	}
	if r.Here || r.AgeDays != 4 || !r.Left.Equal(moment("05T09:00")) {
		t.Errorf("here %v, age %d, left %v; want gone on day 4", r.Here, r.AgeDays, r.Left)
	}
	if earlier := s.report("A", "03T12:00"); !earlier.Here || len(earlier.Story) != 2 {
		t.Errorf("two days before: here %v, %d of the story", earlier.Here, len(earlier.Story))
	}
}

func TestCorrectionsOfABatchAreNamed(t *testing.T) {
	s := stockedStory(t)
	slip := s.at("03T10:00", "JS", &model.Temperature{Tank: "C1", Celsius: 37})
	twice := s.at("03T11:00", "JS", &model.Removed{Tank: "C1", Larvae: 10, Why: "sample"})
	other := s.at("03T12:00", "JS", &model.Temperature{Tank: "C2", Celsius: 37})
	a := s.at("04T10:00", "MO", &model.Corrected{Entry: slip, Why: "digit", Set: map[string]any{"celsius": 27.0}})
	b := s.at("04T10:01", "MO", &model.Corrected{Entry: twice, Why: "was not", Void: true})
	s.at("04T10:02", "MO", &model.Corrected{Entry: other, Why: "digit", Set: map[string]any{"celsius": 27.0}})
	r := s.report("A", "05T00:00")
	want := []Change{
		{Entry: slip, Kind: model.KindTemperature, By: Numbers{a}, Why: "digit"},
		{Entry: twice, Kind: model.KindRemoved, Void: true, By: Numbers{b}, Why: "was not"},
	}
	if len(r.Changed) != 2 || fmt.Sprint(r.Changed) != fmt.Sprint(want) {
		t.Errorf("changed = %+v; want %+v", r.Changed, want)
	}
	if len(r.Losses) != 0 || r.Warmth[0].Max != 27 {
		t.Errorf("a void entry counts: %+v, %+v", r.Losses, r.Warmth)
	}
}

func TestTheHandover(t *testing.T) {
	s := stockedStory(t)
	s.at("03T10:00", "TR", &model.Temperature{Tank: "C1", Celsius: 33}) // odd, and before
	s.at("05T07:00", "TR", &model.Temperature{Supply: "cold", Celsius: 18})
	odd := s.at("05T08:00", "TR", &model.Temperature{Tank: "C1", Celsius: 24})
	open := s.at("05T09:00", "TR", &model.Opened{Moves: []model.Leg{{From: "C1", To: "C2"}, {From: "C1", To: "C3"}, {From: "C3", To: "C1"}}})
	ahead := s.at("05T09:05", "TR", &model.StepDone{Session: open, Move: 1, Name: "to-celsius", Done: true, Why: "28.5; went ahead: no time"})
	s.at("05T09:10", "TR", &model.Moved{From: "C1", To: "C2", Why: "no time"})
	later := s.at("05T09:11", "TR", &model.StepDone{Session: open, Move: 1, Name: "lid", Why: "no lid"})
	out := s.at("05T09:12", "TR", &model.StepDone{Session: open, Move: 2, Name: model.StepLeftOut, Done: true, Why: "pump"})
	into := s.at("05T09:13", "TR", &model.StepDone{Session: open, Move: 3, Name: model.StepInto, Done: true, Why: "C5"})
	why := s.at("05T09:14", "TR", &model.Moved{From: "C2", To: "C3", Why: "tank leaks"})
	s.at("05T09:20", "MO", &model.Noted{Text: "seen: overdue", Tank: "C3"})
	note := s.at("05T09:21", "MO", &model.Noted{Text: "called the owner"})
	kept := s.late("03T11:00", "05T09:30", "MO", &model.Noted{Text: "late", Tank: "C1"})
	fix := s.at("05T09:40", "MO", &model.Corrected{Entry: odd, Why: "slip", Set: map[string]any{"celsius": 24.5}})

	h, err := NewHandover(s.l, moment("05T00:00"), moment("05T12:00"))
	if err != nil {
		t.Fatal(err)
	}
	got := []string{}
	for _, d := range h.Deviations {
		got = append(got, fmt.Sprintf("%s %d", d.Kind, d.N))
	}
	want := []string{
		fmt.Sprintf("odd %d", odd), fmt.Sprintf("went ahead %d", ahead), fmt.Sprintf("put off %d", later), fmt.Sprintf("left out %d", out),
		fmt.Sprintf("other tank %d", into), fmt.Sprintf("moved, why %d", why), fmt.Sprintf("corrected %d", fix),
	}
	if !slices.Equal(got, want) {
		t.Errorf("deviations\n got %v\nwant %v", got, want)
	}
	if d := h.Deviations[1]; d.Why != "28.5: no time" || d.Leg != (model.Leg{From: "C1", To: "C2"}) {
		t.Errorf("went ahead = %+v", d)
	}
	if len(h.Notes) != 1 || h.Notes[0].N != note {
		t.Errorf("notes = %+v; want the one that acknowledges no alarm", h.Notes)
	}
	if h.KeyedLate.String() != fmt.Sprint(kept) {
		t.Errorf("keyed late = %v; want %d", h.KeyedLate, kept)
	}
	if h.Session == nil || h.Moving != 1 || len(h.Deferred) != 1 || h.Deferred[0].N != later {
		t.Errorf("open: session %v, %d moves, put off %+v", h.Session, h.Moving, h.Deferred)
	}
	if strings.Join(h.Dirty, " ") != "C1 C2 C4 C5" {
		t.Errorf("dirty = %v", h.Dirty)
	}
	if len(h.Next) == 0 || !slices.IsSortedFunc(h.Next, func(a, b Task) int { return a.Due.Compare(b.Due) }) {
		t.Errorf("next = %+v", h.Next)
	}
	for _, task := range h.Next {
		if task.Due.After(moment("06T12:00")) {
			t.Errorf("%+v falls due later than a day", task)
		}
	}
}

func TestAQuietHandover(t *testing.T) {
	h, err := NewHandover(newStory(t).l, moment("05T00:00"), moment("05T12:00"))
	if err != nil || len(h.Done)+len(h.Deviations)+len(h.Notes)+len(h.Next)+len(h.Alarms) != 0 || h.Session != nil {
		t.Errorf("handover of nothing = %+v, %v", h, err)
	}
}

// TestAReplayStandsAsTheLedgerDoes: sessions left out and numbers new, the room is
// the same after every story.
func TestAReplayStandsAsTheLedgerDoes(t *testing.T) {
	for seed := range uint64(20) {
		s := stockedStory(t)
		rng := rand.New(rand.NewPCG(seed, 1))
		now := moment("03T00:00")
		for range 60 {
			now = now.Add(time.Duration(1+rng.IntN(90)) * time.Minute)
			s.any(rng, now)
		}
		var last *model.Ledger
		if err := replay(s.l, ofSession, nil, func(then *model.Ledger, _ model.Entry) { last = then }); err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		for i, want := range s.l.Tanks() {
			got := last.Tanks()[i]
			if got.State != want.State || !got.Since.Equal(want.Since) || got.Suspect != want.Suspect || (got.Larvae == nil) != (want.Larvae == nil) {
				t.Errorf("seed %d: %s = %+v; want %+v", seed, want.Tank.Name, got, want)
			}
			if got.Larvae != nil && got.Larvae.Number != want.Larvae.Number {
				t.Errorf("seed %d: %s holds %+v; want %+v", seed, want.Tank.Name, got.Larvae.Number, want.Larvae.Number)
			}
		}
	}
}

// any tries an entry drawn by chance; one that cannot be true is left.
func (s *story) any(rng *rand.Rand, at time.Time) {
	tank := func() string { return s.l.Room().Tanks[rng.IntN(5)].Name }
	facts := []model.Fact{
		&model.Moved{From: tank(), To: tank()}, &model.Moved{From: tank(), To: tank(), Share: num(0.5), Join: true},
		&model.Washed{Tank: tank()}, &model.Filled{Tank: tank()}, &model.Temperature{Tank: tank(), Celsius: 27},
		&model.Count{Tank: tank(), Live: []int{30 + rng.IntN(20)}, SampleML: 1, HoldingML: 100},
		&model.Removed{Tank: tank(), Larvae: 50, Why: "sample"}, &model.Suspect{Tank: tank(), On: rng.IntN(2) == 0},
		&model.Opened{Moves: []model.Leg{{From: "C1", To: "C2"}}},
		&model.Service{Tank: tank(), Out: rng.IntN(2) == 0},
	}
	if open := s.l.Session(); open != nil {
		facts = append(facts, &model.Closed{Session: open.N})
	}
	e := model.Entry{At: at, Fact: facts[rng.IntN(len(facts))]}
	if s.l.Check(&e, at) == nil {
		if err := s.l.Apply(e); err != nil {
			s.t.Fatal(err)
		}
	}
}
