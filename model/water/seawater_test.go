package water

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Check values of UNESCO Technical Papers in Marine Science 44 (Fofonoff and
// Millard 1983), p. 19 and p. 22, at one atmosphere. Their temperature is
// IPTS-68. A public copy of the formula has the sign of its 1.6546e-6 term
// wrong, which moves the last two of either group by more than 0.1.
func TestDensityUNESCO44(t *testing.T) {
	for _, c := range []struct{ s, t68, want, printed float64 }{
		{0, 5, 999.96675, 5e-6},
		{0, 25, 997.04796, 5e-6},
		{35, 5, 1027.67547, 5e-6},
		{35, 25, 1023.34306, 5e-6},
		{0, 0, 999.842594, 5e-7},
		{0, 30, 995.65113374, 5e-9},
		{35, 0, 1028.10633141, 5e-9},
		{35, 30, 1021.72863949, 5e-9},
	} {
		near(t, "density", density68(c.s, c.t68), c.want, c.printed)
	}
}

// Heat capacity at one atmosphere after Millero, Perron and Desnoyers 1973, as
// tabled with UNESCO 44; temperature IPTS-68.
func TestHeatCapacityUNESCO44(t *testing.T) {
	for _, c := range []struct{ t68, s25, s35 float64 }{
		{0, 4048.4405, 3986.5331},
		{10, 4041.8277, 3986.3406},
		{20, 4044.8439, 3993.8544},
		{30, 4049.0984, 4000.6838},
		{40, 4051.2245, 4003.4619},
	} {
		near(t, "at salinity 25", capacity68(25, c.t68), c.s25, 2e-4)
		near(t, "at salinity 35", capacity68(35, c.t68), c.s35, 2e-4)
	}
}

// Today's standard, TEOS-10 (IOC, SCOR and IAPSO 2010; density and isobaric
// heat capacity at the surface from its own library, version 3.6.16), beside
// EOS-80 worked out apart from this code. Temperatures are ITS-90.
func TestAgainstTEOS10Table(t *testing.T) {
	for _, c := range []struct{ s, t90, rhoTEOS, rho, cpTEOS, cp float64 }{
		{0, 20, 998.2071, 998.2053, 4184.063, 4181.620},
		{0, 25, 997.0476, 997.0464, 4181.324, 4179.396},
		{20, 25, 1012.0498, 1012.0484, 4073.878, 4072.464},
		{25, 25, 1015.8064, 1015.8039, 4048.472, 4047.147},
		{30, 20, 1020.9580, 1020.9526, 4021.312, 4019.153},
		{30, 25, 1019.5709, 1019.5677, 4023.515, 4022.233},
		{30, 30, 1017.9833, 1017.9830, 4025.601, 4024.721},
		{33, 25, 1021.8335, 1021.8306, 4008.743, 4007.463},
		{35, 20, 1024.7660, 1024.7617, 3996.136, 3993.858},
		{35, 22, 1024.2215, 1024.2178, 3997.305, 3995.459},
		{35, 24, 1023.6442, 1023.6414, 3998.431, 3996.973},
		{35, 25, 1023.3436, 1023.3412, 3998.977, 3997.687},
		{35, 26, 1023.0352, 1023.0333, 3999.511, 3998.366},
		{35, 28, 1022.3955, 1022.3946, 4000.546, 3999.610},
		{35, 30, 1021.7261, 1021.7262, 4001.539, 4000.687},
		{35, 32, 1021.0281, 1021.0288, 4002.496, 4001.586},
		{35, 35, 1019.9298, 1019.9306, 4003.877, 4002.596},
		{36, 25, 1024.0992, 1024.0972, 3994.118, 3992.819},
		{40, 25, 1027.1248, 1027.1256, 3974.836, 3973.481},
	} {
		rho, cp := must(Density(c.t90, c.s)), must(HeatCapacity(c.t90, c.s))
		near(t, "density", rho, c.rho, 5.1e-5)
		near(t, "density against TEOS-10", rho, c.rhoTEOS, 0.0056)
		near(t, "heat capacity", cp, c.cp, 6e-4)
		near(t, "heat capacity against TEOS-10", cp, c.cpTEOS, 3.8)
	}
}

// Three points of the check cast published with TEOS-10, at the surface. Its
// salinity is absolute: practical times 35.16504/35.
func TestAgainstTEOS10CheckCast(t *testing.T) {
	for _, c := range []struct{ absolute, t90, rho, cp float64 }{
		{34.46823643, 27.962, 1021.88661104, 4003.86641439},
		{34.55697798, 27.294, 1022.16934573, 4003.10695547},
		{6.66990434, 10.046, 1004.88170373, 4153.06900991},
	} {
		s := c.absolute * 35 / 35.16504
		near(t, "density", must(Density(c.t90, s)), c.rho, 0.0056)
		near(t, "heat capacity", must(HeatCapacity(c.t90, s)), c.cp, 3.8)
	}
}

func TestSalinityFromDensity(t *testing.T) {
	// IPTS-68 10 degrees, 1022 kg/m3: 28.651148, found by halving elsewhere and
	// printed as 28.65114808 by a public test-suite (its root finder: 1e-5).
	near(t, "salinity", must(SalinityFromDensity(10/1.00024, 1022)), 28.65114355, 1e-7)
	near(t, "salinity", must(SalinityFromDensity(10/1.00024, 1022)), 28.65114808, 1e-5)
}

func TestSalinityDensitySalinity(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.Float64Range(0, 42).Draw(t, "salinity")
		celsius := rapid.Float64Range(-2, 40).Draw(t, "celsius")
		near(t, "salinity", must(SalinityFromDensity(celsius, must(Density(celsius, s)))), s, 1e-9)
	})
}

func TestWarmthIsTheSumOfHeatCapacity(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.Float64Range(0, 42).Draw(t, "salinity")
		celsius := rapid.Float64Range(1, 40).Draw(t, "celsius")
		const steps = 400
		sum := 0.0
		for i := range steps {
			sum += capacity68(s, celsius*(float64(i)+0.5)/steps) * celsius / steps
		}
		near(t, "warmth over sum", warmth68(s, celsius)/sum, 1, 1e-6)
	})
}

func TestSeaRefuses(t *testing.T) {
	for _, f := range []func(celsius, salinity float64) (float64, error){Density, HeatCapacity} {
		for _, x := range append(notNumbers(), -2.1, 40.1, 270, 298.15) {
			_, err := f(x, 35)
			refused(t, err, "celsius", "between -2 and 40")
		}
		for _, x := range append(notNumbers(), -0.1, 42.1, 350) {
			_, err := f(25, x)
			refused(t, err, "salinity", "between 0 and 42")
		}
	}
	_, err := SalinityFromDensity(25, 990)
	refused(t, err, "kg-per-m3", "between 997.05 (fresh water) and 1028.64 (salinity 42)")
	_, err = SalinityFromDensity(25, 1.0264)
	refused(t, err, "kg-per-m3", "between 997.05")
	_, err = SalinityFromDensity(25, math.NaN())
	refused(t, err, "kg-per-m3", "")
	_, err = SalinityFromDensity(math.NaN(), 1022)
	refused(t, err, "celsius", "")
}
