package water

import (
	"math"
	"testing"
)

// garciaGordon is the other standard fit, Garcia and Gordon 1992 (Limnology
// and Oceanography 37:1307-1312), Benson and Krause column, in micromoles per
// kilogram. t is IPTS-68. Equation 8 of the paper prints an A3 Ts^2 term too
// many; it is not here.
func garciaGordon(t, s float64) float64 {
	return gordonForm(t, s,
		[]float64{5.80871, 3.20291, 4.17887, 5.10006, -9.86643e-2, 3.80369},
		[]float64{-7.01577e-3, -7.70028e-3, -1.13864e-2, -9.51519e-3}, -2.75915e-7)
}

// garciaGordonML is the paper's column in millilitres per litre. The two
// columns must not be mixed.
func garciaGordonML(t, s float64) float64 {
	return gordonForm(t, s,
		[]float64{2.00907, 3.22014, 4.05010, 4.94457, -0.256847, 3.88767},
		[]float64{-6.24523e-3, -7.37614e-3, -1.03410e-2, -8.17083e-3}, -4.88682e-7)
}

func gordonForm(t, s float64, a, b []float64, c float64) float64 {
	ts := math.Log((298.15 - t) / (273.15 + t))
	return math.Exp(poly(ts, a...) + s*poly(ts, b...) + c*s*s)
}

func TestGarciaGordonPublished(t *testing.T) {
	// 0.282015 mol/m3 at 10 degrees and salinity 35, millilitres over 22.3916 (a
	// check value printed in an ocean model's source).
	near(t, "mL/L column", garciaGordonML(10, 35)/22.3916, 0.282015, 5.1e-7)
	near(t, "umol/kg column", garciaGordon(10, 35), 274.6098, 5.1e-5)
	// Check values on the TEOS-10 page of its oxygen function.
	for _, c := range []struct{ s, t90, want float64 }{
		{34.7118, 28.8099, 194.6825431692940},
		{34.8915, 28.4392, 195.6135062814438},
		{35.0256, 22.7862, 214.6559360234014},
		{34.8472, 10.2262, 273.5652832698713},
	} {
		near(t, "TEOS-10 page", garciaGordon(t68(c.t90), c.s), c.want, 1e-10)
	}
}

// milligrams turns micromoles of oxygen per kilogram into mg/L.
func milligrams(micromolPerKg, kgPerM3 float64) float64 { return micromolPerKg * 31.9988e-6 * kgPerM3 }

func TestFullOxygenAgainstGarciaGordon(t *testing.T) {
	for celsius := 0.0; celsius <= 40; celsius++ {
		for s := 0.0; s <= 40; s += 2.5 {
			other := milligrams(garciaGordon(t68(celsius), s), must(Density(celsius, s)))
			tolerance := 0.003
			if celsius >= 15 && celsius <= 35 {
				tolerance = 0.0025
			}
			near(t, "mg/L", must(FullOxygen(celsius, s)), other, tolerance)
		}
	}
}

// Benson and Krause 1984, the table worked out apart from this code.
func TestFullOxygenTable(t *testing.T) {
	salinities := []float64{0, 20, 25, 30, 33, 35, 36, 40}
	for celsius, row := range map[float64][]float64{
		15: {10.084, 8.919, 8.650, 8.389, 8.236, 8.135, 8.085, 7.889},
		20: {9.092, 8.080, 7.846, 7.617, 7.484, 7.396, 7.353, 7.181},
		22: {8.744, 7.784, 7.561, 7.345, 7.218, 7.134, 7.093, 6.930},
		24: {8.418, 7.507, 7.295, 7.089, 6.968, 6.889, 6.850, 6.695},
		25: {8.263, 7.375, 7.168, 6.967, 6.850, 6.772, 6.734, 6.582},
		26: {8.114, 7.247, 7.045, 6.849, 6.734, 6.659, 6.621, 6.473},
		28: {7.828, 7.003, 6.811, 6.624, 6.514, 6.442, 6.406, 6.265},
		30: {7.559, 6.772, 6.589, 6.410, 6.305, 6.237, 6.202, 6.068},
		32: {7.305, 6.554, 6.379, 6.208, 6.108, 6.042, 6.010, 5.881},
		35: {6.949, 6.248, 6.084, 5.924, 5.830, 5.769, 5.738, 5.617},
	} {
		for i, want := range row {
			near(t, "mg/L", must(FullOxygen(celsius, salinities[i])), want, 5.1e-4)
		}
	}
}

// Fresh water at one atmosphere, the published table of EN 25814.
func TestFullOxygenFreshEN25814(t *testing.T) {
	for _, c := range []struct{ t, want, printed float64 }{
		{10, 11.3, 0.051},
		{15, 10.1, 0.051},
		{20, 9.09, 0.0051},
		{22, 8.74, 0.0051},
		{25, 8.26, 0.0051},
		{28, 7.83, 0.0051},
		{30, 7.56, 0.0051},
	} {
		near(t, "mg/L", must(FullOxygen(c.t, 0)), c.want, c.printed)
	}
	// The same standard's straight correction for salt, 25 degrees: 8.26 - 35 *
	// 0.0421 is 0.02 above the true curve.
	near(t, "straight correction", 8.26-35*0.0421, must(FullOxygen(25, 35)), 0.025)
}

// Standard Methods 4500-O (APHA), by chlorinity; salinity is 1.80655 times it.
func TestFullOxygenStandardMethods(t *testing.T) {
	for celsius, row := range map[float64][]float64{
		20: {9.092, 8.621, 8.174, 7.749, 7.346, 6.964},
		25: {8.263, 7.850, 7.457, 7.083, 6.728, 6.390},
		30: {7.559, 7.194, 6.845, 6.513, 6.197, 5.896},
	} {
		for i, want := range row {
			s := 1.80655 * 5 * float64(i)
			near(t, "mg/L", bensonKrause(celsius, s), want, 0.0045)
		}
	}
}

// Pressure correction of Standard Methods, worked out apart from this code.
func TestFullOxygenAt(t *testing.T) {
	for _, c := range []struct{ t, s, p, want float64 }{
		{20, 0, 0.9, 8.1623},
		{25, 35, 0.98, 6.6325},
		{25, 35, 1, 6.7721},
		{25, 35, 1.02, 6.9117},
		{28, 35, 1.01, 6.5085},
		{10, 0, 0.95, 10.7171},
	} {
		near(t, "mg/L", must(FullOxygenAt(c.t, c.s, c.p)), c.want, 5.1e-5)
	}
	near(t, "factor at one atmosphere", pressureFactor(25, 35, 1), 1, 1e-12)
}

// The vapour pressure against the other form of Standard Methods, from memory:
// ln P = 11.8571 - 3840.70/T - 216961/T^2, fresh water.
func TestVapourPressure(t *testing.T) {
	for celsius := 5.0; celsius <= 40; celsius += 5 {
		k := celsius + kelvin
		other := math.Exp(11.8571 - 3840.70/k - 216961/k/k)
		near(t, "vapour pressure over the other form", vapourPressure(celsius, 0)/other, 1, 2e-3)
	}
}

func TestOxygenPercent(t *testing.T) {
	near(t, "percent", must(OxygenPercent(6.1, 27, 35)), 100*6.1/must(FullOxygen(27, 35)), 1e-12)
	near(t, "full", must(OxygenPercent(must(FullOxygen(28, 33)), 28, 33)), 100, 1e-12)
	near(t, "none", must(OxygenPercent(0, 28, 33)), 0, 0)
	if must(OxygenPercent(9, 28, 35)) <= 100 {
		t.Error("water can be over-full")
	}
}

func TestOxygenRefuses(t *testing.T) {
	for _, x := range append(notNumbers(), -1, 41, 300.15) {
		_, err := FullOxygen(x, 35)
		refused(t, err, "celsius", "between 0 and 40")
		_, err = FullOxygen(27, x)
		refused(t, err, "salinity", "between 0 and 40")
		_, err = OxygenPercent(6, x, 35)
		refused(t, err, "celsius", "")
	}
	for _, x := range append(notNumbers(), -0.1, 61, 610) {
		_, err := OxygenPercent(x, 27, 35)
		refused(t, err, "mg-l", "between 0 and 60")
	}
	for _, x := range append(notNumbers(), 0, -1, 760, 1013.25) {
		_, err := FullOxygenAt(27, 35, x)
		refused(t, err, "atmospheres", "between 0.5 and 1.1")
	}
}
