package demo

import (
	"fmt"
	"math"
	"time"

	"drainboard/model"
)

// feed counts the cultures and pours each tank its ration.
func (p *player) feed(at time.Time) {
	density := map[string]int{"iso": 520, "chaet": 410, "tet": 96}
	for i, alga := range p.ledger.Room().Algae {
		counts := make([]int, 4)
		for k := range counts {
			counts[k] = int(p.tenth(float64(density[alga.Name]), 30))
		}
		p.enter(at.Add(minutes(float64(2*i))), "JS", &model.Cells{Algae: alga.Name, Counts: counts, ChamberML: 1e-4})
	}
	for i, t := range p.ledger.Tanks() {
		age, ok := p.ledger.Age(t, at)
		if !ok {
			continue
		}
		ration, _ := p.ledger.Room().House.RationAt(age)
		litres := map[string]float64{}
		for alga, share := range ration.Share {
			cells := ration.CellsPerML * share * t.Tank.Litres * 1000
			litres[alga] = math.Round(cells/(float64(density[alga])*1e4)) / 1000
		}
		p.enter(at.Add(minutes(10+float64(2*i))), "JS", &model.Fed{Tank: t.Tank.Name, Litres: litres})
	}
}

// looks are at the stereo microscope every day, with lengths every other day.
func (p *player) looks(day int, at time.Time) {
	for i, t := range p.ledger.Tanks() {
		age, ok := p.ledger.Age(t, at)
		if !ok {
			continue
		}
		when := at.Add(minutes(float64(8 * i)))
		p.enter(when, "JS", p.look(t, age))
		if day%2 == 0 {
			p.enter(when.Add(minutes(6)), "JS", &model.Sizes{Tank: t.Tank.Name, UM: p.lengths(t, age)})
		}
	}
}

func (p *player) look(t model.TankNow, age int) *model.Look {
	lobes := 2
	switch {
	case age >= 9:
		lobes = 6
	case age >= 3:
		lobes = 4
	}
	golden, dead := 70+math.Round(25*p.rng.Float64()), math.Round(4*p.rng.Float64())
	look := &model.Look{Tank: t.Tank.Name, Lobes: &lobes, Golden: &golden, Swim: model.SwimGood, Dead: &dead}
	if t.Suspect {
		*look.Golden, *look.Dead, look.Swim = 35, 12, model.SwimPoor
	}
	return look
}

func (p *player) lengths(t model.TankNow, age int) []float64 {
	growth := 25.0
	for _, b := range broods() {
		if b.name == t.Larvae.Batch {
			growth = b.growth
		}
	}
	mean := 298 + growth*float64(age)
	um := make([]float64, 22)
	for i := range um {
		um[i] = math.Round(mean * (1 + 0.045*p.rng.NormFloat64()))
	}
	return um
}

// counts are made every fourth day of a batch, from a jug of two litres.
func (p *player) counts(day int, at time.Time) {
	for i, t := range p.ledger.Tanks() {
		age, ok := p.ledger.Age(t, at)
		if !ok || age == 0 || age%4 != 0 || !t.Larvae.Number.Value.Known {
			continue
		}
		left := t.Larvae.Number.Value.X * math.Exp(-0.036*4)
		live, dead := make([]int, 3), make([]int, 3)
		for k := range live {
			mean := left / 2000 * 10
			live[k] = max(0, int(math.Round(mean+0.8*math.Sqrt(mean)*p.rng.NormFloat64())))
			dead[k] = int(p.rng.ExpFloat64())
		}
		p.enter(at.Add(minutes(float64(5*i))), "JS", &model.Count{
			Tank: t.Tank.Name, Live: live, Dead: dead, SampleML: 10, HoldingML: 2000,
		})
	}
}

// remarks are the few things people write down in words.
func (p *player) remarks(day int, at time.Time) {
	switch day {
	case 2:
		for _, t := range p.ledger.Tanks() {
			if t.State == model.Holding && t.Larvae.Batch == "P-04" {
				p.enter(at, "JS", &model.Suspect{Tank: t.Tank.Name, On: true, Why: "pale gut, many on the bottom"})
				p.enter(at.Add(minutes(1)), "JS", &model.Noted{Tank: t.Tank.Name, Text: "own sieve and bucket, marked red"})
				return
			}
		}
	case 9, 17, 25:
		p.enter(at, "MO", &model.Noted{Text: fmt.Sprintf("header filter changed, flushed %d min", 25+day%3)})
	}
}
