package feed

import (
	"math"
	"testing"
)

// Cells eaten in 24 h, from the cells per hour the sources print.
func TestAppetiteOfSources(t *testing.T) {
	for _, c := range []struct {
		name     string
		appetite Appetite
		um, want float64
	}{
		{"Doroudi 2003 at 89 um", PearlOyster2003(), 89, 209},
		{"Doroudi 2003 at 125 um", PearlOyster2003(), 125, 1944},
		{"Doroudi 2003 at 188 um", PearlOyster2003(), 188, 3977},
		{"Raghavan 2011 at 80 um", Paphia2011(), 80, 360},
		{"Raghavan 2011 at 120 um", Paphia2011(), 120, 2208},
		{"Raghavan 2011 at 180 um", Paphia2011(), 180, 4248},
		{"halfway between 80 and 120 um", Paphia2011(), 100, (360.0 + 2208) / 2},
	} {
		got, err := c.appetite.At(c.um)
		if err != nil || math.Abs(got-c.want) > 0.5 {
			t.Errorf("%s: got %.2f, %v, want %g", c.name, got, err, c.want)
		}
	}
}

func TestAppetiteRefuses(t *testing.T) {
	for _, c := range []struct {
		name     string
		appetite Appetite
		um       float64
		want     string
	}{
		{"too large", PearlOyster2003(), 189, "um: 189 is outside 89 to 188 um of Doroudi, Southgate & Lucas 2003; add that size to the table or feed by volume"},
		{"too small", PearlOyster2003(), 60, "um: 60 is outside 89 to 188 um of Doroudi, Southgate & Lucas 2003; add that size to the table or feed by volume"},
		{"NaN", PearlOyster2003(), math.NaN(), "um: NaN is not possible; give a number above 0"},
		{"no table", Appetite{}, 100, "appetite: no sizes; give at least one size and its cells per day"},
		{"upset table", Appetite{Points: []AppetitePoint{{100, 5}, {90, 6}}}, 95, "appetite: 90 um comes after 100; put the sizes in order"},
		{"negative", Appetite{Points: []AppetitePoint{{100, -5}}}, 100, "appetite: -5 is not possible; give a number of 0 or more"},
	} {
		if _, err := c.appetite.At(c.um); err == nil || err.Error() != c.want {
			t.Errorf("%s: got %v, want %s", c.name, err, c.want)
		}
	}
	if got, err := (Appetite{Points: []AppetitePoint{{100, 5}}}).At(100); err != nil || got != 5 {
		t.Errorf("one size: got %g, %v", got, err)
	}
}

func TestWantForLarvae(t *testing.T) {
	// 12,000 larvae of 2,208 cells a day in 120 L: 220.8 cells per mL and day.
	got, err := WantForLarvae(12_000, 2208, 24, 120)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "cells per mL", got, 220.8, 1e-12)
	got, _ = WantForLarvae(12_000, 2208, 12, 120)
	near(t, "half a day", got, 110.4, 1e-12)
	for _, x := range [][4]float64{{-1, 1, 1, 1}, {1, -1, 1, 1}, {1, 1, 0, 1}, {1, 1, 1, 0}, {math.NaN(), 1, 1, 1}} {
		if _, err := WantForLarvae(x[0], x[1], x[2], x[3]); err == nil {
			t.Errorf("%v was taken", x)
		}
	}
}
