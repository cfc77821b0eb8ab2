package water

import "cmp"

// sea is a water of one salinity at one temperature.
type sea struct{ salinity, celsius float64 }

// heatAbove is the heat in kilojoules that a litre of this water, measured at
// its own temperature, gives up on its way to another temperature; negative
// where it takes heat up.
func (w sea) heatAbove(celsius float64) float64 {
	warm, cool := t68(w.celsius), t68(celsius)
	return density68(w.salinity, warm) * (warmth68(w.salinity, warm) - warmth68(w.salinity, cool)) / 1e6
}

// Heating asks what it takes to warm a tank with a heater.
type Heating struct {
	Litres    float64
	Salinity  float64
	From, To  float64 // degrees Celsius
	Kilowatts float64 // of the heater
}

// Warming is what it takes, with nothing lost to the room.
type Warming struct {
	Megajoules    float64
	KilowattHours float64
	Minutes       float64 // with the heater always on
}

// Warming works out heat and time from density and heat capacity (EOS-80, as
// [Density]). Losses to the room are not in it, so the true time is longer.
func (h Heating) Warming() (Warming, error) {
	err := cmp.Or(
		above("litres", h.Litres, mostLitres),
		between("salinity", h.Salinity, 0, saltiest),
		between("from", h.From, coldest, warmestSea),
		between("to", h.To, coldest, warmestSea),
		above("kilowatts", h.Kilowatts, 1e4),
	)
	if err != nil {
		return Warming{}, err
	}
	if h.To < h.From {
		return Warming{}, refuse("to", h.To, "a heater cannot cool; must be at least the "+plain(h.From)+" it starts from")
	}
	megajoules := -h.Litres * sea{h.Salinity, h.From}.heatAbove(h.To) / 1000
	return Warming{
		Megajoules:    megajoules,
		KilowattHours: megajoules / 3.6,
		Minutes:       megajoules * 1000 / h.Kilowatts / 60,
	}, nil
}
