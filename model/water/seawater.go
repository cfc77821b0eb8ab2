package water

import (
	"cmp"
	"math"
)

// Limits of EOS-80 at one atmosphere.
const (
	saltiest   = 42.0
	warmestSea = 40.0
)

// t68 turns a temperature of today's scale (ITS-90) into the one the older
// formulas were fitted on (IPTS-68): 0.00024 of the reading more (Saunders
// 1990).
func t68(celsius float64) float64 { return 1.00024 * celsius }

// Density is the density of sea water at one atmosphere in kilograms per cubic
// metre, after Millero and Poisson 1981 (EOS-80; UNESCO Technical Papers in
// Marine Science 44, 1983). Salinity 0 to 42, temperature -2 to 40.
func Density(celsius, salinity float64) (float64, error) {
	if err := checkSea(celsius, salinity); err != nil {
		return 0, err
	}
	return density68(salinity, t68(celsius)), nil
}

// HeatCapacity is the specific heat of sea water at one atmosphere in joules
// per kilogram and kelvin, after Millero, Perron and Desnoyers 1973 (UNESCO
// Technical Papers in Marine Science 44, 1983), in the limits of [Density].
func HeatCapacity(celsius, salinity float64) (float64, error) {
	if err := checkSea(celsius, salinity); err != nil {
		return 0, err
	}
	return capacity68(salinity, t68(celsius)), nil
}

// SalinityFromDensity is [Density] the other way round: the salinity of water
// that weighs so many kilograms per cubic metre.
func SalinityFromDensity(celsius, kgPerM3 float64) (float64, error) {
	if err := between("celsius", celsius, coldest, warmestSea); err != nil {
		return 0, err
	}
	return salinityAt("kg-per-m3", kgPerM3, t68(celsius), 1)
}

// salinityAt finds the salinity at which the density is given times unit, and
// speaks of the given number in its refusals.
func salinityAt(field string, given, t, unit float64) (float64, error) {
	low, high := density68(0, t)/unit, density68(saltiest, t)/unit
	if !(given >= low && given <= high) {
		return 0, refuse(field, given, "must be between "+rounded(low, unit)+" (fresh water) and "+
			rounded(high, unit)+" (salinity 42) at that temperature")
	}
	return halve(0, saltiest, func(s float64) bool { return density68(s, t)/unit < given }), nil
}

func checkSea(celsius, salinity float64) error {
	return cmp.Or(
		between("celsius", celsius, coldest, warmestSea),
		between("salinity", salinity, 0, saltiest),
	)
}

func density68(s, t float64) float64 {
	fresh := poly(t, 999.842594, 6.793952e-2, -9.095290e-3, 1.001685e-4, -1.120083e-6, 6.536332e-9)
	first := poly(t, 8.24493e-1, -4.0899e-3, 7.6438e-5, -8.2467e-7, 5.3875e-9)
	second := poly(t, -5.72466e-3, 1.0227e-4, -1.6546e-6)
	return fresh + first*s + second*s*math.Sqrt(s) + 4.8314e-4*s*s
}

func capacity68(s, t float64) float64 {
	fresh, first, second := capacityTerms()
	return poly(t, fresh[:]...) + poly(t, first[:]...)*s + poly(t, second[:]...)*s*math.Sqrt(s)
}

// warmth68 is the heat in joules a kilogram takes up from 0 degrees: the
// integral of capacity68 over temperature.
func warmth68(s, t float64) float64 {
	fresh, first, second := capacityTerms()
	return risen(t, fresh[:]) + risen(t, first[:])*s + risen(t, second[:])*s*math.Sqrt(s)
}

func capacityTerms() (fresh [5]float64, first, second [3]float64) {
	return [5]float64{4217.4, -3.720283, 0.1412855, -2.654387e-3, 2.093236e-5},
		[3]float64{-7.643575, 0.1072763, -1.38385e-3},
		[3]float64{0.1770383, -4.07718e-3, 5.148e-5}
}

// poly is c[0] + c[1] x + c[2] x^2 and so on.
func poly(x float64, c ...float64) float64 {
	sum := 0.0
	for i := len(c) - 1; i >= 0; i-- {
		sum = sum*x + c[i]
	}
	return sum
}

// risen is the integral of poly from 0 to x.
func risen(x float64, c []float64) float64 {
	sum := 0.0
	for i := len(c) - 1; i >= 0; i-- {
		sum = sum*x + c[i]/float64(i+1)
	}
	return sum * x
}
