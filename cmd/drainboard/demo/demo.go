// Package demo plays weeks of work in an invented room, so that the dashboard
// has something to show. Every entry goes through Ledger.Check like any other.
// No figure in it is a measurement of anything.
package demo

import (
	_ "embed"
	"math"
	"math/rand/v2"
	"time"

	"drainboard/model"
	"drainboard/model/sequence"
)

// RoomTOML is the room.toml of the invented room.
//
//go:embed room.toml
var RoomTOML string

// weeks of history before the last one is begun.
const daysBack = 36

// brood is one invented batch: when it hatched, in days before now, and where
// it was stocked.
type brood struct {
	name    string
	hatched int // days before now
	tanks   []string
	larvae  float64 // in each tank
	growth  float64 // um a day
	ended   int     // days before now on which it settled; 0 while it is here
}

func broods() []brood {
	return []brood{
		{"P-02", 36, []string{"K1", "K2"}, 9500, 24.5, 8},
		{"P-03", 18, []string{"K3", "K4"}, 9000, 26.5, 0},
		{"P-04", 11, []string{"L1", "L2", "L3"}, 12500, 25.0, 0},
		{"P-05", 4, []string{"K1", "K2", "K5"}, 9800, 27.5, 0},
	}
}

// player plays the room forward in time.
type player struct {
	ledger  *model.Ledger
	rng     *rand.Rand
	now     time.Time
	entries []model.Entry
	err     error
}

// Play returns the entries of the invented room as they stand at now. The same
// now gives the same entries.
func Play(room *model.Room, now time.Time) ([]model.Entry, error) {
	p := &player{
		ledger: model.NewLedger(room), rng: rand.New(rand.NewPCG(7, 11)),
		now: now.Truncate(time.Second),
	}
	for i, t := range room.Tanks {
		warm := p.tenth(27.6, 0.4)
		p.enter(p.session(daysBack).Add(-minutes(float64(120-i))), "MO", &model.Filled{Tank: t.Name, Celsius: &warm})
	}
	for day := daysBack; day >= 0; day-- {
		p.day(day)
	}
	return p.entries, p.err
}

// enter makes one entry at a moment; what lies in the future is left out.
func (p *player) enter(at time.Time, by string, fact model.Fact) {
	if p.err != nil || at.After(p.now) {
		return
	}
	e := model.Entry{At: at.Truncate(time.Second), By: by, Fact: fact}
	if p.err = p.ledger.Check(&e, p.now); p.err != nil {
		return
	}
	if p.err = p.ledger.Apply(e); p.err == nil {
		p.entries = append(p.entries, e)
	}
}

// session is the moment at which the work of a day begins.
func (p *player) session(day int) time.Time {
	return p.now.Add(-time.Duration(day)*24*time.Hour - time.Hour)
}

func minutes(m float64) time.Duration { return time.Duration(m * float64(time.Minute)) }

// day plays one day of the room.
func (p *player) day(day int) {
	start := p.session(day)
	p.supplies(start.Add(-minutes(50)))
	p.temperatures(start.Add(-minutes(40)))
	p.settle(day, start.Add(-minutes(30)))
	p.stock(day, start.Add(-minutes(20)))
	if day == 2 {
		p.early(start.Add(-6 * time.Hour))
	}
	if day > 0 {
		p.change(start)
	}
	p.feed(start.Add(minutes(210)))
	p.looks(day, start.Add(minutes(330)))
	p.counts(day, start.Add(minutes(420)))
	p.temperatures(start.Add(11 * time.Hour))
	p.remarks(day, start.Add(minutes(450)))
}

func (p *player) supplies(at time.Time) {
	for _, s := range []struct {
		name string
		base float64
	}{{"header", 27.6}, {"chilled", 22}, {"air", 26.2}} {
		p.enter(at, "MO", &model.Temperature{Supply: s.name, Celsius: p.tenth(s.base, 0.4)})
	}
	if at.Weekday() == time.Monday {
		salinity, ph := p.tenth(35.6, 0.4), 8.1
		p.enter(at.Add(minutes(3)), "MO", &model.Water{Supply: "header", Salinity: &salinity, PH: &ph})
	}
}

// tenth is a reading around base, to one decimal.
func (p *player) tenth(base, spread float64) float64 {
	return math.Round(10*(base+spread*(2*p.rng.Float64()-1))) / 10
}

func (p *player) temperatures(at time.Time) {
	for i, t := range p.ledger.Tanks() {
		if t.State == model.Holding || t.State == model.Ready {
			p.enter(at.Add(minutes(float64(i))), "TR", &model.Temperature{Tank: t.Tank.Name, Celsius: p.tenth(27.9, 0.7)})
		}
	}
}

// stock puts new batches into tanks that stand ready.
func (p *player) stock(day int, at time.Time) {
	for _, b := range broods() {
		if b.hatched != day {
			continue
		}
		hatched := model.Hatched{Date: model.DayOf(at, p.ledger.Room().Zone)}
		for i, name := range b.tanks {
			larvae := b.larvae + float64(100*i)
			if t, _ := p.ledger.Tank(name); t.State != model.Ready {
				name = p.anyReady()
			}
			if name == "" {
				continue
			}
			p.enter(at.Add(minutes(float64(3*i))), "JS", &model.Stocked{
				Tank: name, Batch: b.name, Hatched: hatched, Larvae: &larvae, Origin: "egg strands, broodstock pen 2",
			})
		}
	}
}

func (p *player) anyReady() string {
	for _, t := range p.ledger.Tanks() {
		if t.State == model.Ready {
			return t.Tank.Name
		}
	}
	return ""
}

// settle takes a batch that is competent out of the room.
func (p *player) settle(day int, at time.Time) {
	for _, b := range broods() {
		if b.ended == 0 || b.ended != day {
			continue
		}
		for _, t := range p.ledger.Tanks() {
			if t.State == model.Holding && t.Larvae.Batch == b.name {
				p.enter(at, "JS", &model.Ended{Tank: t.Tank.Name, Why: model.Settled})
			}
		}
	}
}

// early changes one tank of the youngest batch before the others, so that it is
// the first to be overdue.
func (p *player) early(at time.Time) {
	for _, t := range p.ledger.Tanks() {
		if t.State == model.Holding && t.Larvae.Batch == "P-05" {
			p.changeThese(at, []string{t.Tank.Name})
			return
		}
	}
}

// change plays a change session with all that is due, and makes the tanks ready
// that stand dirty in any case.
func (p *player) change(at time.Time) { p.changeThese(at, nil) }

func (p *player) changeThese(at time.Time, names []string) {
	problem, err := sequence.FromLedger(p.ledger, at, sequence.Options{Tanks: names})
	if err != nil {
		p.err = err
		return
	}
	plan, err := sequence.Best(problem)
	if err != nil {
		p.err = err
		return
	}
	tank := func(i int) string { return problem.Tanks[i].Name }
	session := 0
	if len(plan.Moves) > 0 {
		legs := make([]model.Leg, len(plan.Moves))
		for i, m := range plan.Moves {
			legs[i] = model.Leg{From: tank(m.From), To: tank(m.To)}
		}
		session = p.ledger.Next()
		p.enter(at, "TR", &model.Opened{Moves: legs})
	}
	p.lanes(problem, plan)
	if session > 0 {
		p.enter(plan.Finish.Add(minutes(2)), "TR", &model.Closed{Session: session, Complete: true})
	}
}

// lanes enters the moves and the washing of a plan in the order of time.
func (p *player) lanes(problem sequence.Problem, plan sequence.Plan) {
	moves, prepared := plan.Moves, plan.Preparations
	for len(moves) > 0 || len(prepared) > 0 {
		if len(prepared) == 0 || len(moves) > 0 && !moves[0].End.After(prepared[0].End) {
			p.move(problem, moves[0])
			moves = moves[1:]
			continue
		}
		p.prepare(problem.Tanks[prepared[0].Tank].Name, prepared[0])
		prepared = prepared[1:]
	}
}

func (p *player) move(problem sequence.Problem, m sequence.Move) {
	from, _ := p.ledger.Tank(problem.Tanks[m.From].Name)
	to, _ := p.ledger.Tank(problem.Tanks[m.To].Name)
	warm, cool := p.tenth(27.9, 0.5), p.tenth(27.6, 0.6)
	moved := &model.Moved{From: from.Tank.Name, To: to.Tank.Name, FromCelsius: &warm, ToCelsius: &cool}
	if age, ok := p.ledger.Age(from, m.Start); ok {
		if um := p.ledger.Room().House.MeshAt(age); len(um) > 0 {
			moved.MeshUM = &um[0]
		}
	}
	p.enter(m.End, "TR", moved)
}

func (p *player) prepare(tank string, w sequence.Preparation) {
	if w.Wash {
		acid, litres := 40.0, 3.96
		p.enter(w.Start.Add(w.End.Sub(w.Start)/2), "MO", &model.Washed{Tank: tank, AcidML: &acid, WaterLitres: &litres})
	}
	celsius := p.tenth(27.5, 0.4)
	p.enter(w.End, "MO", &model.Filled{Tank: tank, Celsius: &celsius})
}
