package water

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func allMarks() []Hydrometer { return []Hydrometer{Marked60F60F, Marked25C25C, Marked25C60F} }

// Specific gravities from EOS-80, the temperature put straight into the
// formula; worked out apart from this code.
func TestHydrometer(t *testing.T) {
	for _, c := range []struct{ s, f60, c25, mixed, rho25 float64 }{
		{20, 1.01533, 1.01505, 1.01305, 1012.050},
		{25, 1.01917, 1.01881, 1.01681, 1015.806},
		{30, 1.02301, 1.02259, 1.02057, 1019.569},
		{33, 1.02532, 1.02486, 1.02284, 1021.832},
		{35, 1.02686, 1.02637, 1.02435, 1023.343},
		{36, 1.02763, 1.02713, 1.02511, 1024.099},
		{40, 1.03072, 1.03017, 1.02814, 1027.127},
	} {
		near(t, "60F/60F", must(Marked60F60F.Reading(c.s, sixtyF)), c.f60, 5.1e-6)
		near(t, "25C/25C", must(Marked25C25C.Reading(c.s, 25)), c.c25, 5.1e-6)
		near(t, "25C/60F", must(Marked25C60F.Reading(c.s, 25)), c.mixed, 5.1e-6)
		near(t, "density at 25", density68(c.s, 25), c.rho25, 5.1e-4)
		// A fifth digit is 0.013 in salinity.
		near(t, "salinity from 60F/60F", must(Marked60F60F.Salinity(c.f60, sixtyF)), c.s, 0.01)
		near(t, "salinity from 25C/25C", must(Marked25C25C.Salinity(c.c25, 25)), c.s, 0.01)
		near(t, "salinity from 25C/60F", must(Marked25C60F.Salinity(c.mixed, 25)), c.s, 0.01)
	}
}

func TestHydrometerMarksMatter(t *testing.T) {
	one, other := must(Marked25C25C.Salinity(1.0264, 25)), must(Marked25C60F.Salinity(1.0264, 25))
	near(t, "salinity apart", other-one, 2.6, 0.1)
}

func TestHydrometerAwayFromItsTemperature(t *testing.T) {
	// Warm water is lighter: a 60 F hydrometer in 28 degree water reads low, and
	// taking that reading as it stands makes the water out some 4 too fresh.
	reading := must(Marked60F60F.Reading(35, 28))
	near(t, "salinity, corrected", must(Marked60F60F.Salinity(reading, 28)), 35, 1e-9)
	near(t, "salinity, not corrected", must(Marked60F60F.Salinity(reading, sixtyF)), 30.9, 0.1)
	for _, h := range allMarks() {
		at := must(h.SampleCelsius())
		if must(h.Reading(35, at+1)) >= must(h.Reading(35, at)) {
			t.Errorf("%s: a warmer sample must read lower", h)
		}
	}
}

func TestHydrometerThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := rapid.SampledFrom(allMarks()).Draw(t, "marks")
		s := rapid.Float64Range(0, 42).Draw(t, "salinity")
		celsius := rapid.Float64Range(-2, 40).Draw(t, "celsius")
		near(t, "salinity", must(h.Salinity(must(h.Reading(s, celsius)), celsius)), s, 1e-8)
	})
}

func TestHydrometerRefuses(t *testing.T) {
	_, err := Hydrometer("20/4").Salinity(1.025, 20)
	refused(t, err, "hydrometer", "60F/60F, 25C/25C or 25C/60F")
	_, err = Hydrometer("").SampleCelsius()
	refused(t, err, "hydrometer", "marked on its stem")
	_, err = Marked25C25C.Salinity(1.25, 25)
	refused(t, err, "gravity", "between 1.0000 (fresh water) and 1.0317 (salinity 42)")
	_, err = Marked25C25C.Salinity(1025, 25)
	refused(t, err, "gravity", "between 1.0000")
	_, err = Marked25C25C.Salinity(math.NaN(), 25)
	refused(t, err, "gravity", "")
	_, err = Marked25C25C.Salinity(1.025, 78)
	refused(t, err, "celsius", "between -2 and 40")
	_, err = Marked25C25C.Reading(50, 25)
	refused(t, err, "salinity", "between 0 and 42")
}
