package water

import "cmp"

// Change asks what brings a volume of water from one salinity to another.
type Change struct {
	Litres   float64
	Celsius  float64
	From, To float64 // salinities
}

// FreshWater is the fresh water that thins a volume of sea water.
type FreshWater struct {
	Shortcut  float64 // litres, by volumes alone: about 3 % too little
	Kilograms float64 // by mass, exact
	Litres    float64 // the same in litres at the temperature of the water
}

// Thin is the fresh water to add to lower the salinity. By mass it is
// m (S1/S2 - 1): salt stays, water is added. To must be above 0 and not above
// From; where they are equal nothing is needed.
func (c Change) Thin() (FreshWater, error) {
	if err := c.check(); err != nil {
		return FreshWater{}, err
	}
	if !(c.To > 0 && c.To <= c.From) {
		return FreshWater{}, refuse("to", c.To, "fresh water can only lower it: must be more than 0 and at most "+plain(c.From))
	}
	share := c.From/c.To - 1
	kilograms := c.kilograms() * share
	return FreshWater{
		Shortcut:  c.Litres * share,
		Kilograms: kilograms,
		Litres:    kilograms / density68(0, t68(c.Celsius)) * 1000,
	}, nil
}

// Strengthen is the dry sea salts in kilograms that raise the salinity:
// m (S2 - S1)/(1000 - S2). The figure is for salts without water in them; a
// bought mix holds some, so more of it is needed: go by its label and measure.
func (c Change) Strengthen() (float64, error) {
	if err := c.check(); err != nil {
		return 0, err
	}
	if c.To < c.From {
		return 0, refuse("to", c.To, "salt can only raise it: must be at least "+plain(c.From))
	}
	return c.kilograms() * (c.To - c.From) / (1000 - c.To), nil
}

func (c Change) kilograms() float64 { return c.Litres * density68(c.From, t68(c.Celsius)) / 1000 }

func (c Change) check() error {
	return cmp.Or(
		above("litres", c.Litres, mostLitres),
		between("celsius", c.Celsius, coldest, warmestSea),
		between("from", c.From, 0, saltiest),
		between("to", c.To, 0, saltiest),
	)
}

// BlendSalinity shares a volume out between two waters of different salinity
// so that together they have the wanted one, by volumes: litres of the first
// and of the second. The wanted salinity must lie between theirs, ends
// included.
func BlendSalinity(litres, want, first, second float64) (ofFirst, ofSecond float64, err error) {
	err = cmp.Or(
		above("litres", litres, mostLitres),
		between("first", first, 0, saltiest),
		between("second", second, 0, saltiest),
		between("want", want, min(first, second), max(first, second)),
	)
	if err != nil {
		return 0, 0, err
	}
	if first == second {
		return litres, 0, nil
	}
	ofFirst = litres * (want - second) / (first - second)
	return ofFirst, litres - ofFirst, nil
}
