package feed

import "math"

// Tank is one tank of a feed round.
type Tank struct {
	Name string
	Need
	CapacityLitres float64 // litres when full; 0 where not known
}

// Culture is one alga as it stands in the algae room.
type Culture struct {
	Name       string
	CellsPerML float64
	Litres     float64 // at hand today
	Unlimited  bool    // the litres are not known: take it that there is enough
	KeepBack   float64 // share of the litres that stays behind as seed, 0 to 1
}

// pourable is the litres of a culture that may be poured.
func (c Culture) pourable() float64 {
	if c.Unlimited {
		return math.Inf(1)
	}
	return c.Litres * (1 - c.KeepBack)
}

// Round is the feed of every tank from the cultures at hand.
type Round struct {
	Tanks []Feed // in the order given
	Draws []Draw // in the order of the cultures given
}

// Feed is what one tank gets in a round.
type Feed struct {
	Tank        string
	Ration      Ration  // the whole ration
	Part        float64 // of it that the tank gets, 1 where nothing is short
	ShortOf     string  // the alga that held it back; empty where nothing did
	Litres      ByAlga  // litres of each culture to pour
	TotalLitres float64
	Reached     float64 // cells per mL once poured and mixed
	OverBrim    float64 // litres the tank would overflow by; 0 where it does not
}

// Draw is what a round takes of one culture, in litres.
type Draw struct {
	Alga      string
	Needed    float64 // for every whole ration
	Have      float64 // that may be poured; meaningless where Unlimited
	Given     float64
	Left      float64 // of Have; meaningless where Unlimited
	Unlimited bool
}

// Short is the litres that are missing for every whole ration.
func (d Draw) Short() float64 {
	if d.Unlimited {
		return 0
	}
	return max(0, d.Needed-d.Have)
}

// RoundFor works out the rations of all tanks and, where a culture does not reach,
// who gets how much: every tank that needs the short culture gets the same part
// of its ration, in its own proportions, and no tank can get more without taking
// from one that has as little or less. What such tanks leave of other cultures
// goes to the rest, or stays over.
//
// It refuses what RationFor refuses, naming the tank, and two tanks or two
// cultures of one name.
func RoundFor(tanks []Tank, cultures []Culture, mode Mode) (Round, error) {
	density, err := densities(cultures)
	if err != nil {
		return Round{}, err
	}
	feeds, err := wholeRations(tanks, density, mode)
	if err != nil {
		return Round{}, err
	}
	want, have := asked(feeds, cultures)
	parts, heldBy := fairParts(want, have)
	for i := range feeds {
		feeds[i].cut(tanks[i], parts[i])
		if heldBy[i] != none {
			feeds[i].ShortOf = cultures[heldBy[i]].Name
		}
	}
	return Round{Tanks: feeds, Draws: draws(feeds, cultures)}, nil
}

// densities returns the cells per mL of each culture once all are checked.
func densities(cultures []Culture) (ByAlga, error) {
	density := make(ByAlga, len(cultures))
	for _, c := range cultures {
		if _, twice := density[c.Name]; twice {
			return nil, wrong("culture", "%q is given twice; give each culture once", c.Name)
		}
		err := firstError(positive("cells_per_ml", c.CellsPerML), notNegative("litres", c.Litres), share("keep_back", c.KeepBack))
		if err != nil {
			return nil, within(c.Name, err)
		}
		density[c.Name] = c.CellsPerML
	}
	return density, nil
}

func wholeRations(tanks []Tank, density ByAlga, mode Mode) ([]Feed, error) {
	seen := make(map[string]bool, len(tanks))
	feeds := make([]Feed, len(tanks))
	for i, tank := range tanks {
		if seen[tank.Name] {
			return nil, wrong("tank", "%q is given twice; give each tank once", tank.Name)
		}
		seen[tank.Name] = true
		ration, err := RationFor(tank.Need, density, mode)
		if err := firstError(err, notNegative("capacity", tank.CapacityLitres)); err != nil {
			return nil, within(tank.Name, err)
		}
		feeds[i] = Feed{Tank: tank.Name, Ration: ration}
	}
	return feeds, nil
}

// asked lays the round out as a table, tanks by cultures.
func asked(feeds []Feed, cultures []Culture) (want [][]float64, have []float64) {
	have = make([]float64, len(cultures))
	for a, c := range cultures {
		have[a] = c.pourable()
	}
	want = make([][]float64, len(feeds))
	for i, f := range feeds {
		want[i] = make([]float64, len(cultures))
		for a, c := range cultures {
			want[i][a] = f.Ration.Litres[c.Name]
		}
	}
	return want, have
}

// cut gives a tank its part of the whole ration.
func (f *Feed) cut(tank Tank, part float64) {
	f.Part = part
	f.Litres = f.Ration.Litres.times(part)
	f.TotalLitres = f.Ration.TotalLitres * part
	f.Reached = tank.reached(f.Ration.Cells.Sum()*part, f.TotalLitres)
	if tank.CapacityLitres > 0 {
		f.OverBrim = OverBrim(tank.Litres, f.TotalLitres, tank.CapacityLitres)
	}
}

func draws(feeds []Feed, cultures []Culture) []Draw {
	all := make([]Draw, len(cultures))
	for a, c := range cultures {
		d := Draw{Alga: c.Name, Unlimited: c.Unlimited}
		for _, f := range feeds {
			d.Needed += f.Ration.Litres[c.Name]
			d.Given += f.Litres[c.Name]
		}
		if !c.Unlimited {
			d.Have = c.pourable()
			d.Left = max(0, d.Have-d.Given)
		}
		all[a] = d
	}
	return all
}
