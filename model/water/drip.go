package water

import (
	"cmp"
	"math"
)

// Drip is a slow inflow of other water into a vessel with animals in it.
type Drip struct {
	Litres          float64 // in the vessel at the start
	LitresPerMinute float64
	Have            float64 // temperature at the start
	With            float64 // temperature of the inflow
}

// Dripped is the temperature of the vessel after some time, in both ways of
// doing it.
type Dripped struct {
	Overflow float64 // the volume stays: what flows in pushes mixed water out
	Rising   float64 // nothing flows out: the level rises
}

// After is the temperature after so many minutes of well-mixed inflow, by
// volumes: exponential approach where it overflows, plain mixing where it
// rises. The room's own warming or cooling is not in it.
func (d Drip) After(minutes float64) (Dripped, error) {
	err := cmp.Or(d.check(), between("minutes", minutes, 0, mostHours*60))
	if err != nil {
		return Dripped{}, err
	}
	in := d.LitresPerMinute * minutes
	return Dripped{
		Overflow: d.With + (d.Have-d.With)*math.Exp(-in/d.Litres),
		Rising:   mixByVolume(d.Litres, d.Have, in, d.With),
	}, nil
}

// Until is the time in minutes after which the wanted temperature is reached,
// in both ways. It must lie between that of the vessel and that of the inflow.
func (d Drip) Until(want float64) (Dripped, error) {
	if err := d.check(); err != nil {
		return Dripped{}, err
	}
	p, err := Blend{Litres: d.Litres, Have: d.Have, Want: want, With: d.With}.ByVolume()
	if err != nil || p.Add == 0 {
		return Dripped{}, err
	}
	return Dripped{
		Overflow: d.Litres / d.LitresPerMinute * math.Log((d.Have-d.With)/(want-d.With)),
		Rising:   p.Add / d.LitresPerMinute,
	}, nil
}

func (d Drip) check() error {
	return cmp.Or(
		above("litres", d.Litres, mostLitres),
		above("litres-per-minute", d.LitresPerMinute, mostLitres),
		waterTemperature("have", d.Have),
		waterTemperature("with", d.With),
	)
}
