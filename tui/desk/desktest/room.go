package desktest

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"drainboard/model"
	"drainboard/tui/desk"
	"drainboard/tui/theme"
)

// Now is the moment at which every desk of this package stands.
const Now = "2026-11-25T09:14:05-05:00"

// Room is an invented room: tanks K1 to K5 and L1 to L4, two eyepieces.
func Room(t testing.TB) *model.Room {
	t.Helper()
	zone, err := time.LoadLocation("America/Nassau")
	if err != nil {
		t.Fatal(err)
	}
	house := model.DefaultHouse()
	house.Growth.Eyepieces = []model.Magnification{{Name: "4x", UMPer: 9.8}, {Name: "10x", UMPer: 3.92}}
	room := &model.Room{
		Name: "Quay larval room", Zone: zone, House: house, Procedure: model.DefaultProcedure(),
		Supplies: []model.Supply{{Name: "header"}},
		Algae:    []model.Alga{{Name: "iso", Full: "Isochrysis"}, {Name: "chaet", Full: "Chaetoceros"}},
	}
	for _, name := range []string{"K1", "K2", "K3", "K4", "K5"} {
		room.Tanks = append(room.Tanks, model.Tank{Name: name, Litres: 120})
	}
	for _, name := range []string{"L1", "L2", "L3", "L4"} {
		room.Tanks = append(room.Tanks, model.Tank{Name: name, Litres: 160})
	}
	return room
}

// Empty is a desk at which nothing has been entered.
func Empty(t testing.TB) (*desk.Desk, *Keeper) {
	t.Helper()
	now, err := time.Parse(time.RFC3339, Now)
	if err != nil {
		t.Fatal(err)
	}
	k := &Keeper{}
	return &desk.Desk{Ledger: model.NewLedger(Room(t)), Now: now, Theme: theme.Bare(false), By: "KT", Keeper: k}, k
}

// Desk is a desk of the room with weeks of entries. K3 holds batch P-03 of day
// 18 and is due within the hour, K1 holds P-05 of day 4 and is suspect; K4 is
// dirty, L1 washed, L2 ready, L4 out of use; of the others nothing was entered.
func Desk(t testing.TB) (*desk.Desk, *Keeper) {
	t.Helper()
	d, k := Empty(t)
	p := &player{t: t, desk: d, rng: rand.New(rand.NewPCG(3, 5)), until: d.Now}
	p.weeks()
	d.Now = p.until
	return d, k
}

// Enter enters a fact so long before the desk's moment.
func Enter(t testing.TB, d *desk.Desk, ago time.Duration, fact model.Fact) {
	t.Helper()
	if _, err := d.EnterAt(d.Now.Add(-ago), fact); err != nil {
		t.Fatalf("%s: %v", fact.Kind(), err)
	}
}

// player enters weeks of work.
type player struct {
	t     testing.TB
	desk  *desk.Desk
	rng   *rand.Rand
	until time.Time
}

// enter makes an entry so many hours before the end.
func (p *player) enter(hoursAgo float64, by string, fact model.Fact) {
	p.t.Helper()
	p.desk.Now = p.until.Add(-time.Duration(hoursAgo * float64(time.Hour)))
	who := p.desk.By
	p.desk.By = by
	if _, err := p.desk.Enter(fact); err != nil {
		p.t.Fatalf("%.1f h ago, %s: %v", hoursAgo, fact.Kind(), err)
	}
	p.desk.By = who
}

// around is a reading near base, to one decimal.
func (p *player) around(base, spread float64) float64 {
	return math.Round(10*(base+spread*(2*p.rng.Float64()-1))) / 10
}

func (p *player) weeks() {
	larvae, celsius := 9400.0, 27.4
	hatch := func(day string) model.Hatched {
		h, err := model.ParseHatched(day)
		if err != nil {
			p.t.Fatal(err)
		}
		return h
	}
	tanks := [2]string{"K4", "K3"}
	p.enter(16*24+1, "MO", &model.Filled{Tank: tanks[0], Celsius: &celsius})
	p.enter(16*24-0.5, "JS", &model.Stocked{Tank: tanks[0], Batch: "P-03", Hatched: hatch("2026-11-07"), Larvae: &larvae, Origin: "pen 2"})
	for day := 15; day >= 0; day-- {
		hour := float64(24 * day)
		if day == 3 {
			p.youngest(hour, hatch("2026-11-21"))
		}
		if day%2 == 0 && day > 0 {
			p.change(hour, tanks[0], tanks[1])
			tanks[0], tanks[1] = tanks[1], tanks[0]
		}
		if day > 0 {
			p.day(hour, tanks[0], day)
		}
	}
	p.rest()
}

// change moves the larvae over and leaves the tank they came from dirty.
func (p *player) change(hour float64, from, to string) {
	acid, litres, warm, cool, mesh := 40.0, 3.96, p.around(27.9, 0.4), p.around(27.5, 0.4), 150.0
	p.enter(hour+1.5, "MO", &model.Washed{Tank: to, AcidML: &acid, WaterLitres: &litres})
	p.enter(hour+1, "MO", &model.Filled{Tank: to, Celsius: &cool})
	p.enter(hour+0.5, "TR", &model.Moved{From: from, To: to, MeshUM: &mesh, FromCelsius: &warm, ToCelsius: &cool})
}

// day is a day's feed, looks and readings of a tank.
func (p *player) day(hour float64, tank string, day int) {
	p.enter(hour-3, "JS", &model.Fed{Tank: tank, Litres: map[string]float64{"iso": 0.35, "chaet": 0.1}})
	lobes, golden, dead := 4, p.around(80, 10), 2.0
	if day < 8 {
		lobes = 6
	}
	p.enter(hour-5, "JS", &model.Look{Tank: tank, Lobes: &lobes, Golden: &golden, Swim: model.SwimGood, Dead: &dead})
	if day%2 == 1 {
		p.enter(hour-5.1, "JS", &model.Sizes{Tank: tank, UM: p.lengths(298+25*float64(18-day), 22)})
	}
	if day%4 == 1 {
		live := []int{p.live(day), p.live(day), p.live(day)}
		p.enter(hour-6, "JS", &model.Count{Tank: tank, Live: live, SampleML: 10, HoldingML: 2000, Dead: []int{0, 1, 0}})
	}
	p.enter(hour-12, "TR", &model.Temperature{Tank: tank, Celsius: p.around(27.9, 0.4)})
}

func (p *player) live(day int) int {
	return int(p.around(9400*math.Exp(-0.036*float64(16-day))/2000*10, 4))
}

func (p *player) lengths(mean float64, n int) []float64 {
	um := make([]float64, n)
	for i := range um {
		um[i] = math.Round(mean * (1 + 0.045*p.rng.NormFloat64()))
	}
	return um
}

func (p *player) youngest(hour float64, hatched model.Hatched) {
	larvae := 12800.0
	p.enter(hour-1, "MO", &model.Filled{Tank: "K1"})
	p.enter(hour-2, "JS", &model.Stocked{Tank: "K1", Batch: "P-05", Hatched: hatched, Larvae: &larvae})
}

// rest brings the other tanks into their states.
func (p *player) rest() {
	p.enter(30, "MO", &model.Filled{Tank: "L2"})
	p.enter(29, "MO", &model.Washed{Tank: "L1"})
	p.enter(28, "MO", &model.Service{Tank: "L4", Out: true, Why: "standpipe cracked"})
	p.enter(22, "JS", &model.Suspect{Tank: "K1", On: true, Why: "pale gut, many on the bottom"})
	p.enter(21, "JS", &model.Noted{Tank: "K1", Text: "own sieve and bucket, marked red"})
	for i, celsius := range []float64{27.6, 27.4, 27.3, 27.1} {
		p.enter(8-2*float64(i), "KT", &model.Temperature{Tank: "K3", Celsius: celsius})
	}
}
