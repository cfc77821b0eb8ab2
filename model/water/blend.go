package water

import "cmp"

// Blend asks how much other water brings a tank to a wanted temperature.
type Blend struct {
	Litres float64 // in the tank now
	Have   float64 // its temperature
	Want   float64 // the temperature wanted
	With   float64 // temperature of the other water
}

// Portions are the two ways to blend.
type Portions struct {
	Swap    float64 // litres to take out of the tank and replace by the other water
	Add     float64 // litres to top up with, taking nothing out
	Reached float64 // temperature after the swap, by the same sum
}

// ByVolume works by volumes alone, as if a litre of any water held the same
// heat. For waters of one salinity it is within 0.05 degrees of ByHeat.
//
// Refused: a tank without volume, temperatures of no liquid water, and a
// wanted temperature that does not lie between that of the tank and that of
// the other water. A tank that is already at it needs nothing.
func (b Blend) ByVolume() (Portions, error) {
	if err := b.check(hottest); err != nil {
		return Portions{}, err
	}
	return b.portions(b.Have-b.Want, b.Want-b.With, func(swap float64) float64 {
		return mixByVolume(b.Litres-swap, b.Have, swap, b.With)
	}), nil
}

// ByHeat balances the heat the two waters really hold: density after Millero
// and Poisson 1981, heat capacity after Millero, Perron and Desnoyers 1973,
// taken over the range each water passes through. The small heat of mixing
// two salinities is left out. Beside the refusals of ByVolume it takes no
// temperature above 40 and no salinity above 42, where those formulas end.
func (b Blend) ByHeat(salinityHave, salinityWith float64) (Portions, error) {
	err := cmp.Or(
		between("salinity", salinityHave, 0, saltiest),
		between("with-salinity", salinityWith, 0, saltiest),
		b.check(warmestSea),
	)
	if err != nil {
		return Portions{}, err
	}
	have, with := sea{salinityHave, b.Have}, sea{salinityWith, b.With}
	p := b.portions(have.heatAbove(b.Want), -with.heatAbove(b.Want), func(swap float64) float64 {
		return mixByHeat(b.Litres-swap, have, swap, with)
	})
	return p, nil
}

// portions solves (litres - swap) * given = swap * taken, and
// litres * given = add * taken.
func (b Blend) portions(given, taken float64, reached func(float64) float64) Portions {
	if b.Want == b.Have {
		return Portions{Reached: b.Have}
	}
	swap := b.Litres * given / (given + taken)
	return Portions{Swap: swap, Add: b.Litres * given / taken, Reached: reached(swap)}
}

func (b Blend) check(warmest float64) error {
	err := cmp.Or(
		above("litres", b.Litres, mostLitres),
		between("have", b.Have, coldest, warmest),
		between("want", b.Want, coldest, warmest),
		between("with", b.With, coldest, warmest),
	)
	if err != nil || b.Want == b.Have {
		return err
	}
	if (b.Want-b.Have)*(b.With-b.Want) <= 0 {
		return refuse("want", b.Want, "must lie between the "+plain(b.Have)+
			" the tank has and the "+plain(b.With)+" of the other water")
	}
	return nil
}

// mixByVolume is the temperature of two waters poured together, by volumes.
func mixByVolume(litresA, a, litresB, b float64) float64 {
	return (litresA*a + litresB*b) / (litresA + litresB)
}

// mixByHeat is the same by the heat they hold: the temperature at which what
// one gives up is what the other takes, found by halving.
func mixByHeat(litresA float64, a sea, litresB float64, b sea) float64 {
	low, high := min(a.celsius, b.celsius), max(a.celsius, b.celsius)
	return halve(low, high, func(t float64) bool {
		return litresA*a.heatAbove(t)+litresB*b.heatAbove(t) > 0
	})
}

// halve finds where a condition that holds at low stops holding before high.
func halve(low, high float64, holds func(float64) bool) float64 {
	for range 80 {
		middle := (low + high) / 2
		if holds(middle) {
			low = middle
		} else {
			high = middle
		}
	}
	return (low + high) / 2
}
