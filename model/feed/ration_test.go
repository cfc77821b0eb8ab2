package feed

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// near compares to a relative tolerance, and absolutely around 0.
func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance*math.Max(1, math.Abs(want))) {
		t.Errorf("%s: got %.10g, want %.10g", what, got, want)
	}
}

// threeToOne is the diet of bay scallop F2 2022, days 1 to 9.
func threeToOne() ByAlga { return ByAlga{"iso": 3, "chaet": 1} }

// dayOne to dayFour are its culture densities on days 1 to 3, and 4 to 7.
func dayOne() ByAlga  { return ByAlga{"iso": 5_110_909, "chaet": 4_855_454} }
func dayFour() ByAlga { return ByAlga{"iso": 7_995_151, "chaet": 6_974_848} }

// Bay scallop F2 2022 feeding sheet (NOAA/NEFSC): inputs as recorded, 10 L tank;
// volumes by the plain sum, worked out apart from this code.
func TestRationOfRealSheet(t *testing.T) {
	for _, c := range []struct {
		name           string
		want, there    float64
		culture        ByAlga
		isoML, chaetML float64
	}{
		{"day 1", 15000, 0, dayOne(), 22.012, 7.723},
		{"day 2", 20000, 14080, dayOne(), 8.687, 3.048},
		{"day 2 without the residual", 20000, 0, dayOne(), 29.349, 10.298},
		{"day 4, more there than wanted", 30000, 31454, dayFour(), 0, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			r, err := RationFor(Need{Litres: 10, Want: c.want, There: c.there, Share: threeToOne()}, c.culture, Plain)
			if err != nil {
				t.Fatal(err)
			}
			for alga, want := range map[string]float64{"iso": c.isoML, "chaet": c.chaetML} {
				got, listed := r.Litres[alga]
				if !listed || math.Abs(got*1000-want) > 0.0005 {
					t.Errorf("%s: got %.4f mL, want %.3f", alga, got*1000, want)
				}
			}
			near(t, "total", r.TotalLitres, r.Litres["iso"]+r.Litres["chaet"], 1e-12)
		})
	}
}

// The same sheet, by hand: each alga of a mixed diet is counted by cells. Day 10,
// four algae one to one; 1:1:1:1 of 45,000 - 37,646 = 7,354 cells per mL in 10 L.
func TestRationOfFourAlgae(t *testing.T) {
	culture := ByAlga{"iso": 12_844_141, "chaet": 4_599_393, "mono": 11_427_575, "tet": 2_045_151}
	n := Need{Litres: 10, Want: 45000, There: 37646, Share: ByAlga{"iso": 1, "chaet": 1, "mono": 1, "tet": 1}}
	r, err := RationFor(n, culture, Plain)
	if err != nil {
		t.Fatal(err)
	}
	for alga, density := range culture {
		near(t, alga, r.Litres[alga], 7354*10.0/4/density, 1e-12)
		near(t, alga+" cells", r.Cells[alga], 7354*10_000.0/4, 1e-12)
	}
}

func TestDilutedReachesTheWant(t *testing.T) {
	// 1 L of water without food, 50,000 wanted, culture of 100,000: equal volumes.
	n := Need{Litres: 1, Want: 50_000, Share: ByAlga{"iso": 1}}
	r, err := RationFor(n, ByAlga{"iso": 100_000}, Diluted)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "litres", r.Litres["iso"], 1, 1e-12)
	near(t, "reached", r.Reached, 50_000, 1e-12)

	r, _ = RationFor(n, ByAlga{"iso": 100_000}, Plain)
	near(t, "plain litres", r.Litres["iso"], 0.5, 1e-12)
	near(t, "plain reaches", r.Reached, 50_000/1.5, 1e-12)

	for _, thin := range []float64{50_000, 20_000} {
		_, err = RationFor(n, ByAlga{"iso": thin}, Diluted)
		if err == nil || !strings.HasPrefix(err.Error(), "culture: ") || !strings.HasSuffix(err.Error(), "cannot reach 50000; use denser cultures or want less") {
			t.Errorf("culture of %g: got %v", thin, err)
		}
	}
	if r, err := RationFor(Need{Litres: 1, Want: 50_000, There: 50_000, Share: n.Share}, ByAlga{"iso": 20_000}, Diluted); err != nil || r.TotalLitres != 0 {
		t.Errorf("thin culture but nothing to add: got %+v, %v", r, err)
	}
}

// A tank without food, filled short by the volume poured, is where plain is exact.
func TestPlainIsExactWhenFilledShort(t *testing.T) {
	r, _ := RationFor(Need{Litres: 10, Want: 15000, Share: threeToOne()}, dayOne(), Plain)
	near(t, "cells per mL of 10 L in all", r.Cells.Sum()/10_000, 15000, 1e-12)
	short, _ := RationFor(Need{Litres: 10 - r.TotalLitres, Want: 15000, Share: threeToOne()}, dayOne(), Diluted)
	near(t, "litres", short.TotalLitres, r.TotalLitres, 1e-12)
}

func TestRationRefuses(t *testing.T) {
	for _, c := range []struct {
		name    string
		change  func(*Need)
		culture ByAlga
		want    string
	}{
		{"no water", func(n *Need) { n.Litres = 0 }, dayOne(), "litres: 0 is not possible; give a number above 0"},
		{"negative want", func(n *Need) { n.Want = -1 }, dayOne(), "want: -1 is not possible; give a number of 0 or more"},
		{"NaN there", func(n *Need) { n.There = math.NaN() }, dayOne(), "there: NaN is not possible; give a number of 0 or more"},
		{"endless want", func(n *Need) { n.Want = math.Inf(1) }, dayOne(), "want: +Inf is not possible; give a number of 0 or more"},
		{"no share", func(n *Need) { n.Share = nil }, dayOne(), "share: the shares sum to 0; give at least one alga a share above 0"},
		{"share of 0", func(n *Need) { n.Share = ByAlga{"iso": 0} }, dayOne(), "share: the shares sum to 0; give at least one alga a share above 0"},
		{"negative share", func(n *Need) { n.Share = ByAlga{"iso": 3, "chaet": -1} }, dayOne(), "chaet share: -1 is not possible; give a number of 0 or more"},
		{"unknown alga", func(n *Need) { n.Share = ByAlga{"iso": 3, "tet": 1} }, dayOne(), `culture: no cells per mL known for "tet"; count that culture or leave it out of the share`},
		{"empty culture", func(*Need) {}, ByAlga{"iso": 5e6, "chaet": 0}, "chaet culture: 0 is not possible; give a number above 0"},
	} {
		n := Need{Litres: 10, Want: 20000, There: 14080, Share: threeToOne()}
		c.change(&n)
		for _, mode := range []Mode{Plain, Diluted} {
			if _, err := RationFor(n, c.culture, mode); err == nil || err.Error() != c.want {
				t.Errorf("%s: got %v, want %s", c.name, err, c.want)
			}
		}
	}
	n := Need{Litres: 10, Want: 20000, Share: ByAlga{"iso": 1, "tet": 0}}
	if r, err := RationFor(n, dayOne(), Plain); err != nil || len(r.Litres) != 1 {
		t.Errorf("an alga without a share needs no culture: %+v, %v", r, err)
	}
}

func TestOverBrim(t *testing.T) {
	near(t, "over", OverBrim(119.9, 0.35, 120), 0.25, 1e-9)
	if got := OverBrim(119, 0.35, 120); got != 0 {
		t.Errorf("below the brim: got %g", got)
	}
}

func needs() *rapid.Generator[Need] {
	return rapid.Custom(func(t *rapid.T) Need {
		return Need{
			Litres: rapid.Float64Range(0.1, 1000).Draw(t, "litres"),
			Want:   rapid.Float64Range(0, 100_000).Draw(t, "want"),
			There:  rapid.Float64Range(0, 100_000).Draw(t, "there"),
			Share: ByAlga{
				"iso":   rapid.Float64Range(0.01, 5).Draw(t, "iso"),
				"chaet": rapid.Float64Range(0, 5).Draw(t, "chaet"),
				"tet":   rapid.Float64Range(0, 5).Draw(t, "tet"),
			},
		}
	})
}

func cultures() *rapid.Generator[ByAlga] {
	return rapid.Custom(func(t *rapid.T) ByAlga {
		density := rapid.Float64Range(200_000, 2e7)
		return ByAlga{"iso": density.Draw(t, "iso"), "chaet": density.Draw(t, "chaet"), "tet": density.Draw(t, "tet")}
	})
}

func TestRationProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n, culture := needs().Draw(t, "need"), cultures().Draw(t, "culture")
		for _, mode := range []Mode{Plain, Diluted} {
			r, err := RationFor(n, culture, mode)
			if err != nil {
				t.Fatal(err)
			}
			cells, litres := 0.0, 0.0
			for alga, l := range r.Litres {
				if !(l >= 0) || !(r.Cells[alga] >= 0) {
					t.Fatalf("mode %d: negative %s: %+v", mode, alga, r)
				}
				if math.Abs(r.Cells[alga]-l*1000*culture[alga]) > 1e-9*(1+r.Cells[alga]) {
					t.Fatalf("mode %d: litres of %s do not hold its cells: %+v", mode, alga, r)
				}
				if share := n.Share[alga] / n.Share.Sum(); math.Abs(r.Cells[alga]-share*r.Cells.Sum()) > 1e-9*(1+r.Cells.Sum()) {
					t.Fatalf("mode %d: %s is not its share: %+v", mode, alga, r)
				}
				cells, litres = cells+r.Cells[alga], litres+l
			}
			if math.Abs(litres-r.TotalLitres) > 1e-9*(1+litres) {
				t.Fatalf("mode %d: total %g, sum %g", mode, r.TotalLitres, litres)
			}
			// The tank once mixed, from first principles.
			mixed := (n.There*n.Litres*1000 + cells) / ((n.Litres + litres) * 1000)
			if math.Abs(mixed-r.Reached) > 1e-9*(1+mixed) {
				t.Fatalf("mode %d: reached %g, mixed %g", mode, r.Reached, mixed)
			}
			switch {
			case n.There >= n.Want && cells != 0:
				t.Fatalf("mode %d: fed though %g of %g were there", mode, n.There, n.Want)
			case n.There < n.Want && mode == Diluted && math.Abs(mixed-n.Want) > 1e-9*n.Want:
				t.Fatalf("wanted %g, reached %g", n.Want, mixed)
			case n.There < n.Want && mode == Plain && mixed > n.Want*(1+1e-12):
				t.Fatalf("wanted %g, plain went past to %g", n.Want, mixed)
			}
		}
	})
}
