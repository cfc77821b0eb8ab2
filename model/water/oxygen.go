package water

import (
	"cmp"
	"math"
)

const kelvin = 273.15

// FullOxygen is the oxygen in milligrams per litre that water holds when it
// is in balance with moist air at one atmosphere (1013.25 hPa), after Benson
// and Krause 1984 (Limnology and Oceanography 29:620-632). Temperature 0 to
// 40, salinity 0 to 40.
func FullOxygen(celsius, salinity float64) (float64, error) {
	return FullOxygenAt(celsius, salinity, 1)
}

// FullOxygenAt is [FullOxygen] under another pressure of the air, in
// atmospheres, 0.5 to 1.1, corrected for water vapour and for the way oxygen
// departs from an ideal gas.
func FullOxygenAt(celsius, salinity, atmospheres float64) (float64, error) {
	err := cmp.Or(
		between("celsius", celsius, 0, 40),
		between("salinity", salinity, 0, 40),
		between("atmospheres", atmospheres, 0.5, 1.1),
	)
	if err != nil {
		return 0, err
	}
	full := bensonKrause(celsius, salinity)
	if atmospheres == 1 {
		return full, nil
	}
	return full * pressureFactor(celsius, salinity, atmospheres), nil
}

// OxygenPercent is a measured oxygen in milligrams per litre as percent of
// what the water holds when full ([FullOxygen]). It may pass 100.
func OxygenPercent(mgPerL, celsius, salinity float64) (float64, error) {
	full, err := FullOxygen(celsius, salinity)
	if err := cmp.Or(err, between("mg-l", mgPerL, 0, 60)); err != nil {
		return 0, err
	}
	return 100 * mgPerL / full, nil
}

func bensonKrause(celsius, salinity float64) float64 {
	x := 1 / (celsius + kelvin)
	fresh := poly(x, -139.34411, 1.575701e5, -6.642308e7, 1.243800e10, -8.621949e11)
	return math.Exp(fresh - salinity*poly(x, 1.7674e-2, -10.754, 2140.7))
}

// pressureFactor is the part of the full value at one atmosphere that is held
// at another pressure. theta is the departure from an ideal gas; the vapour
// pressure is in atmospheres.
func pressureFactor(celsius, salinity, p float64) float64 {
	theta := poly(celsius, 0.000975, -1.426e-5, 6.436e-8)
	vapour := vapourPressure(celsius, salinity)
	return p * (1 - vapour/p) * (1 - theta*p) / ((1 - vapour) * (1 - theta))
}

func vapourPressure(celsius, salinity float64) float64 {
	t := celsius + kelvin
	return (1 - 0.000537*salinity) * math.Exp(18.1973*(1-373.16/t)+
		3.1813e-7*(1-math.Exp(26.1205*(1-t/373.16)))-
		0.018726*(1-math.Exp(8.03945*(1-373.16/t)))+
		5.02802*math.Log(373.16/t))
}
