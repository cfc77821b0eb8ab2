package feed

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Weight of one cell over that of Isochrysis galbana, from both tables.
func TestEquivalents(t *testing.T) {
	for _, c := range []struct {
		table Weights
		alga  string
		want  float64
	}{
		{Laing1991(), "Pavlova lutheri", 1.0},
		{Laing1991(), "Tetraselmis suecica", 9.3},
		{Laing1991(), "Chaetoceros calcitrans", 0.33},
		{Laing1991(), "Chaetoceros gracilis", 1.40},
		{Laing1991(), "Thalassiosira pseudonana", 1.02},
		{Laing1991(), "Skeletonema costatum", 1.35},
		{Laing1991(), "Phaeodactylum tricornutum", 1.07},
		{Laing1991(), "Dunaliella tertiolecta", 3.95},
		{Brown1991(), "Pavlova lutheri", 3.4},
		{Brown1991(), "Chaetoceros gracilis", 2.5},
	} {
		got, err := c.table.Equivalent(c.alga, "Isochrysis galbana")
		if err != nil || math.Abs(got-c.want) > 0.06 {
			t.Errorf("%s, %s: got %.3f, %v, want %g", c.table.Source, c.alga, got, err, c.want)
		}
	}
}

// The rule that 100 Isochrysis, 250 Chaetoceros calcitrans and 10 Tetraselmis
// suecica per uL feed alike (MAFF 68, FAO 361; from memory): 1.9 to 2.4, 1.75 and
// 2.0 ug per mL in Laing 1991.
func TestRuleOfThumbByWeight(t *testing.T) {
	for _, c := range []struct {
		alga       string
		cellsPerML float64
		low, high  float64
	}{
		{"Isochrysis galbana", 100_000, 1.9, 2.4},
		{"Chaetoceros calcitrans", 250_000, 1.75 - 1e-9, 1.75 + 1e-9},
		{"Tetraselmis suecica", 10_000, 2.0 - 1e-9, 2.0 + 1e-9},
	} {
		got, err := Laing1991().UgPerML(c.alga, c.cellsPerML)
		if err != nil || got < c.low || got > c.high {
			t.Errorf("%s: got %g ug per mL, %v, want %g to %g", c.alga, got, err, c.low, c.high)
		}
	}
}

// A million Isochrysis is about 0.02 mg (FAO 471, second hand).
func TestMillionIsochrysis(t *testing.T) {
	got, _ := Laing1991().UgPerML("Isochrysis galbana", 1e6)
	if math.Round(got/10)*10 != 20 {
		t.Errorf("got %g ug", got)
	}
}

func TestCellShare(t *testing.T) {
	named, err := Laing1991().Named(map[string]string{"iso": "T-Iso", "tet": "Tetraselmis suecica"})
	if err != nil || named.Source != "Laing 1991" || named.Basis != "organic weight" {
		t.Fatalf("got %+v, %v", named, err)
	}
	got, err := named.CellShare(ByAlga{"iso": 1, "tet": 1})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "iso", got["iso"], 200/(200+21.5), 1e-12)
	near(t, "sum", got.Sum(), 1, 1e-12)

	if _, err := named.CellShare(ByAlga{"chaet": 1}); err == nil || err.Error() != `weight: "chaet" is not in the table Laing 1991; add it or use another table` {
		t.Errorf("got %v", err)
	}
	if _, err := Laing1991().Named(map[string]string{"x": "Pavlova salina"}); err == nil {
		t.Error("a species the table does not have was taken")
	}
	if _, err := named.CellShare(ByAlga{"iso": 0}); err == nil {
		t.Error("shares of 0 were taken")
	}
	house := Weights{Source: "house", PgPerCell: ByAlga{"iso": 0}}
	if _, err := house.CellShare(ByAlga{"iso": 1}); err == nil || err.Error() != "iso weight: 0 is not possible; give a number above 0" {
		t.Errorf("got %v", err)
	}
	if _, err := house.Equivalent("iso", "iso"); err == nil {
		t.Error("a weight of 0 was taken")
	}
	if _, err := named.Equivalent("iso", "chaet"); err == nil {
		t.Error("an alga the table does not have was weighed")
	}
	if _, err := named.UgPerML("iso", -1); err == nil {
		t.Error("-1 cells were weighed")
	}
}

// Split by cells, the weights come out in the shares asked for.
func TestCellShareTurnsBack(t *testing.T) {
	table := Brown1991()
	rapid.Check(t, func(t *rapid.T) {
		byWeight := ByAlga{}
		for _, species := range table.PgPerCell.Names() {
			if rapid.Bool().Draw(t, species) {
				byWeight[species] = rapid.Float64Range(0.01, 10).Draw(t, "share")
			}
		}
		if len(byWeight) == 0 {
			t.Skip("no diet")
		}
		cells, err := table.CellShare(byWeight)
		if err != nil {
			t.Fatal(err)
		}
		weight := ByAlga{}
		for alga, share := range cells {
			weight[alga] = share * table.PgPerCell[alga]
		}
		for alga, share := range byWeight {
			if math.Abs(weight[alga]/weight.Sum()-share/byWeight.Sum()) > 1e-12 {
				t.Fatalf("%s: %g of the weight, want %g", alga, weight[alga]/weight.Sum(), share/byWeight.Sum())
			}
		}
	})
}
