package water

import (
	"cmp"
	"math"
	"strconv"
)

// Hydrometer is how a hydrometer is marked: the temperature the sample should
// have, over that of the pure water it is compared with. The same water reads
// 1.0269 on one and 1.0244 on another, so a reading without it is worth
// little: the difference is 2.6 in salinity.
type Hydrometer string

// The marks in use.
const (
	Marked60F60F Hydrometer = "60F/60F"
	Marked25C25C Hydrometer = "25C/25C"
	Marked25C60F Hydrometer = "25C/60F"
)

const sixtyF = (60.0 - 32) / 1.8 // degrees Celsius

// glass is the cubic expansion of a glass hydrometer per degree, the figure
// customary for correcting readings of petroleum (from memory). Plastic
// expands more: bring the sample to the marked temperature instead.
const glass = 2.3e-5

// marks gives sample and reference temperature in degrees Celsius.
func (h Hydrometer) marks() (sample, reference float64, err error) {
	switch h {
	case Marked60F60F:
		return sixtyF, sixtyF, nil
	case Marked25C25C:
		return 25, 25, nil
	case Marked25C60F:
		return 25, sixtyF, nil
	}
	return 0, 0, &FieldError{"hydrometer", strconv.Quote(string(h)), "must be 60F/60F, 25C/25C or 25C/60F, as marked on its stem"}
}

// SampleCelsius is the temperature the hydrometer is made to be read at.
func (h Hydrometer) SampleCelsius() (float64, error) {
	sample, _, err := h.marks()
	return sample, err
}

// Salinity is the salinity of a sample at the given temperature in which the
// hydrometer reads so much specific gravity. Away from its own temperature
// the reading is corrected for the water (EOS-80, as [Density]) and for the
// glass.
func (h Hydrometer) Salinity(reading, celsius float64) (float64, error) {
	unit, err := h.unit(celsius)
	if err != nil {
		return 0, err
	}
	return salinityAt("gravity", reading, celsius, unit)
}

// Reading is what the hydrometer shows in water of that salinity and
// temperature.
func (h Hydrometer) Reading(salinity, celsius float64) (float64, error) {
	unit, err := h.unit(celsius)
	if err := cmp.Or(err, between("salinity", salinity, 0, saltiest)); err != nil {
		return 0, err
	}
	return density68(salinity, celsius) / unit, nil
}

// unit is the density in kilograms per cubic metre at which the hydrometer
// shows 1 in a sample of that temperature. The temperature goes straight into
// the formula: the step between the two scales is far below what a stem shows.
func (h Hydrometer) unit(celsius float64) (float64, error) {
	sample, reference, err := h.marks()
	if err := cmp.Or(err, between("celsius", celsius, coldest, warmestSea)); err != nil {
		return 0, err
	}
	return density68(0, reference) * (1 - glass*(celsius-sample)), nil
}

// rounded writes a limit for people: densities to two places, gravities to
// four.
func rounded(x, unit float64) string {
	places := 2
	if math.Abs(unit-1) > 1e-9 {
		places = 4
	}
	return strconv.FormatFloat(x, 'f', places, 64)
}
