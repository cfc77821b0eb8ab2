package feed

import "fmt"

// TankDay is one tank on one day to come.
type TankDay struct {
	Tank    string
	AgeDays int     // of its larvae on that day
	Litres  float64 // water in it
	// Left is the share of the food wanted that is expected to be there still, 0
	// to 1. 0 asks for the whole ration, as after a water change, and is the safe
	// way to plan an algae room.
	Left float64
}

// DayDemand is what the tanks ask of the algae room on one day.
type DayDemand struct {
	Cells       ByAlga
	Litres      ByAlga // of cultures as dense as given
	TotalLitres float64
}

// Forecast returns the demand of each day, in the order given, by the bands of
// ration and cultures of so many cells per mL. One feed a day to the whole of the
// ration, less what is expected to be left; a room that feeds more often lists
// each feed as a day. What the poured volume adds to the water is left out.
//
// It refuses what BandAt and RationFor refuse, naming day (from 1) and tank.
func Forecast(days [][]TankDay, bands []Band, culture ByAlga) ([]DayDemand, error) {
	demand := make([]DayDemand, len(days))
	for i, tanks := range days {
		demand[i] = DayDemand{Cells: ByAlga{}, Litres: ByAlga{}}
		for _, tank := range tanks {
			ration, err := tank.ration(bands, culture)
			if err != nil {
				return nil, within(fmt.Sprintf("day %d %s", i+1, tank.Tank), err)
			}
			demand[i].add(ration)
		}
	}
	return demand, nil
}

func (t TankDay) ration(bands []Band, culture ByAlga) (Ration, error) {
	band, err := BandAt(bands, t.AgeDays)
	if err := firstError(err, share("left", t.Left)); err != nil {
		return Ration{}, err
	}
	need := Need{Litres: t.Litres, Want: band.CellsPerML, There: band.CellsPerML * t.Left, Share: band.Share}
	return RationFor(need, culture, Plain)
}

func (d *DayDemand) add(r Ration) {
	for alga := range r.Cells {
		d.Cells[alga] += r.Cells[alga]
		d.Litres[alga] += r.Litres[alga]
	}
	d.TotalLitres += r.TotalLitres
}
