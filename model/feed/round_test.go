package feed

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"
)

// plainTank wants so many litres of a culture of 1e6 cells per mL by a share.
func plainTank(name string, litres float64, share ByAlga) Tank {
	return Tank{Name: name, Need: Need{Litres: 100, Want: litres * 10_000, Share: share}}
}

func stock(name string, litres float64) Culture {
	return Culture{Name: name, CellsPerML: 1e6, Litres: litres}
}

func TestRoundWithEnough(t *testing.T) {
	r, err := RoundFor(
		[]Tank{plainTank("C1", 1, ByAlga{"iso": 1}), plainTank("C2", 2, ByAlga{"iso": 1, "chaet": 1})},
		[]Culture{stock("iso", 2), stock("chaet", 5)}, Plain)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range r.Tanks {
		if f.Part != 1 || f.ShortOf != "" || f.TotalLitres != f.Ration.TotalLitres {
			t.Errorf("%s: got %+v", f.Tank, f)
		}
	}
	iso, chaet := r.Draws[0], r.Draws[1]
	near(t, "iso needed", iso.Needed, 2, 1e-12)
	near(t, "iso left", iso.Left, 0, 1e-12)
	near(t, "chaet left", chaet.Left, 4, 1e-12)
	near(t, "iso short", iso.Short(), 0, 1e-12)
}

// Every tank that needs the short alga gets the same part of its ration.
func TestRoundSharesTheShortAlga(t *testing.T) {
	r, err := RoundFor([]Tank{
		plainTank("C1", 1, ByAlga{"iso": 1}),
		plainTank("C2", 3, ByAlga{"iso": 1}),
		plainTank("C3", 4, ByAlga{"iso": 1, "chaet": 1}),
		plainTank("C4", 2, ByAlga{"chaet": 1}),
		{Name: "C5", Need: Need{Litres: 100, Want: 5000, There: 6000, Share: ByAlga{"iso": 1}}},
	}, []Culture{stock("iso", 3), stock("chaet", 3.5)}, Plain)
	if err != nil {
		t.Fatal(err)
	}
	// 6 L of iso wanted, 3 there: half for C1, C2, C3. C3 then takes 1 of the chaet,
	// and C4 has its whole 2 of the 2.5 left, though 4 were wanted of 3.5.
	for i, want := range []struct {
		part    float64
		shortOf string
		litres  float64
	}{{0.5, "iso", 0.5}, {0.5, "iso", 1.5}, {0.5, "iso", 2}, {1, "", 2}, {1, "", 0}} {
		f := r.Tanks[i]
		if math.Abs(f.Part-want.part) > 1e-12 || f.ShortOf != want.shortOf || math.Abs(f.TotalLitres-want.litres) > 1e-12 {
			t.Errorf("%s: got part %g, short of %q, %g L, want %+v", f.Tank, f.Part, f.ShortOf, f.TotalLitres, want)
		}
	}
	near(t, "iso short", r.Draws[0].Short(), 3, 1e-12)
	near(t, "chaet left", r.Draws[1].Left, 0.5, 1e-12)
	if f := r.Tanks[2]; math.Abs(f.Litres["iso"]-f.Litres["chaet"]) > 1e-12 {
		t.Errorf("C3's diet lost its proportions: %v", f.Litres)
	}
}

func TestRoundWithoutACulture(t *testing.T) {
	r, err := RoundFor([]Tank{plainTank("C1", 1, ByAlga{"iso": 1}), plainTank("C2", 1, ByAlga{"chaet": 1})},
		[]Culture{stock("iso", 0), {Name: "chaet", CellsPerML: 1e6, Unlimited: true}}, Plain)
	if err != nil {
		t.Fatal(err)
	}
	if r.Tanks[0].Part != 0 || r.Tanks[1].Part != 1 || r.Draws[1].Short() != 0 || r.Draws[1].Have != 0 {
		t.Errorf("got %+v", r)
	}
	if len(r.Pours()) != 1 {
		t.Errorf("pours: %+v", r.Pours())
	}
}

func TestRoundKeepsSeedBack(t *testing.T) {
	iso := stock("iso", 4)
	iso.KeepBack = 0.25
	r, _ := RoundFor([]Tank{plainTank("C1", 4, ByAlga{"iso": 1})}, []Culture{iso}, Plain)
	near(t, "part", r.Tanks[0].Part, 0.75, 1e-12)
	near(t, "have", r.Draws[0].Have, 3, 1e-12)
}

func TestRoundWarnsOfTheBrim(t *testing.T) {
	tank := plainTank("C1", 2, ByAlga{"iso": 1})
	tank.CapacityLitres = 101
	r, _ := RoundFor([]Tank{tank}, []Culture{stock("iso", 9)}, Plain)
	near(t, "over", r.Tanks[0].OverBrim, 1, 1e-12)
	tank.CapacityLitres = 0
	r, _ = RoundFor([]Tank{tank}, []Culture{stock("iso", 9)}, Plain)
	if r.Tanks[0].OverBrim != 0 {
		t.Errorf("capacity not known: got %g", r.Tanks[0].OverBrim)
	}
}

func TestRoundDiluted(t *testing.T) {
	tank := plainTank("C1", 2, ByAlga{"iso": 1})
	r, _ := RoundFor([]Tank{tank}, []Culture{stock("iso", 9)}, Diluted)
	near(t, "reached", r.Tanks[0].Reached, tank.Want, 1e-12)
	r, _ = RoundFor([]Tank{tank}, []Culture{stock("iso", 1)}, Diluted)
	near(t, "reached with 1 L", r.Tanks[0].Reached, 1e9/101e3, 1e-12)
}

func TestRoundRefuses(t *testing.T) {
	good := []Tank{plainTank("C1", 1, ByAlga{"iso": 1})}
	stocks := []Culture{stock("iso", 2)}
	for _, c := range []struct {
		name     string
		tanks    []Tank
		cultures []Culture
		want     string
	}{
		{"tank twice", []Tank{good[0], good[0]}, stocks, `tank: "C1" is given twice; give each tank once`},
		{"culture twice", good, []Culture{stocks[0], stocks[0]}, `culture: "iso" is given twice; give each culture once`},
		{"negative litres", good, []Culture{stock("iso", -2)}, "iso litres: -2 is not possible; give a number of 0 or more"},
		{"culture not counted", good, []Culture{{Name: "iso", Litres: 2}}, "iso cells_per_ml: 0 is not possible; give a number above 0"},
		{"per cent kept back", good, []Culture{{Name: "iso", CellsPerML: 1, Litres: 2, KeepBack: 20}}, "iso keep_back: 20 is not possible; give a share from 0 to 1"},
		{"unknown alga", []Tank{plainTank("C1", 1, ByAlga{"tet": 1})}, stocks, `C1 culture: no cells per mL known for "tet"; count that culture or leave it out of the share`},
		{"no share", []Tank{plainTank("C1", 1, nil)}, stocks, "C1 share: the shares sum to 0; give at least one alga a share above 0"},
		{"negative capacity", []Tank{{Name: "C1", Need: good[0].Need, CapacityLitres: -1}}, stocks, "C1 capacity: -1 is not possible; give a number of 0 or more"},
	} {
		if _, err := RoundFor(c.tanks, c.cultures, Plain); err == nil || err.Error() != c.want {
			t.Errorf("%s: got %v, want %s", c.name, err, c.want)
		}
	}
	if r, err := RoundFor(nil, nil, Plain); err != nil || len(r.Tanks) != 0 || len(r.Pours()) != 0 {
		t.Errorf("an empty room: got %+v, %v", r, err)
	}
}

// room draws tanks on up to three algae, and cultures that may not reach.
func room(t *rapid.T) ([]Tank, []Culture) {
	var tanks []Tank
	for i := range rapid.IntRange(0, 12).Draw(t, "tanks") {
		tanks = append(tanks, Tank{Name: fmt.Sprint("C", i+1), Need: needs().Draw(t, "need"), CapacityLitres: 120})
	}
	var stocks []Culture
	density := cultures().Draw(t, "density")
	for _, alga := range density.Names() {
		stocks = append(stocks, Culture{
			Name: alga, CellsPerML: density[alga],
			Litres: rapid.Float64Range(0, 100).Draw(t, "litres"), KeepBack: rapid.Float64Range(0, 0.5).Draw(t, "keep back"),
		})
	}
	return tanks, stocks
}

func TestRoundProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tanks, stocks := room(t)
		r, err := RoundFor(tanks, stocks, Plain)
		if err != nil {
			t.Fatal(err)
		}
		for i, f := range r.Tanks {
			if f.Part < 0 || f.Part > 1 || f.TotalLitres < 0 || f.OverBrim < 0 {
				t.Fatalf("%+v", f)
			}
			if (f.Part < 1) != (f.ShortOf != "") {
				t.Fatalf("part %g, short of %q", f.Part, f.ShortOf)
			}
			if f.Reached > max(tanks[i].Want, tanks[i].There)*(1+1e-9) {
				t.Fatalf("%s reached %g, wanted %g", f.Tank, f.Reached, tanks[i].Want)
			}
		}
		for _, d := range r.Draws {
			given := 0.0
			for _, f := range r.Tanks {
				given += f.Litres[d.Alga]
			}
			if math.Abs(given-d.Given) > 1e-9*(1+given) || d.Given > d.Have*(1+1e-9)+1e-12 || d.Given > d.Needed*(1+1e-9) {
				t.Fatalf("%+v, given %g", d, given)
			}
			if math.Abs(d.Given+d.Left-d.Have) > 1e-9*(1+d.Have) {
				t.Fatalf("given and left do not make up what there was: %+v", d)
			}
		}
	})
}

// A round of 40 tanks on four algae, two of them short, with its pour list.
func BenchmarkRound40(b *testing.B) {
	share := ByAlga{"iso": 3, "chaet": 1, "pav": 2, "tet": 0.5}
	var tanks []Tank
	for i := range 40 {
		tanks = append(tanks, Tank{
			Name: fmt.Sprint("C", i+1), CapacityLitres: 120,
			Need: Need{Litres: 110, Want: 5000 + 500*float64(i), There: 1000, Share: share},
		})
	}
	stocks := []Culture{
		{Name: "iso", CellsPerML: 5.1e6, Litres: 4},
		{Name: "chaet", CellsPerML: 4.8e6, Litres: 40},
		{Name: "pav", CellsPerML: 6e6, Litres: 40},
		{Name: "tet", CellsPerML: 1.2e6, Litres: 1},
	}
	b.ReportAllocs()
	for b.Loop() {
		r, err := RoundFor(tanks, stocks, Diluted)
		if err != nil || len(r.Pours()) != 160 {
			b.Fatal(err, len(r.Pours()))
		}
	}
}
