package count

import (
	"math"
	"strings"
	"testing"
)

// split spreads a total over n fields as evenly as whole numbers allow.
func split(total, n int) []int {
	fields := make([]int, n)
	for i := range fields {
		fields[i] = total / n
		if i < total%n {
			fields[i]++
		}
	}
	return fields
}

// Published chamber sums; where a source gives only totals, how they fell on
// the fields is ours. Limits: Garwood 1936, worked out apart from this code.
func TestCellsPerML(t *testing.T) {
	for _, c := range []struct {
		name            string
		counts          []int
		chamber         string
		dilution        float64
		want, low, high float64
	}{
		{"lab handout: 187 in five small squares", split(187, 5), "neubauer-centre", 1, 9.35e6, 8.0579e6, 1.07904e7},
		{"protocol page: mean 45 a large square, 1:5", split(180, 4), "neubauer-large", 5, 2.25e6, 1.9333e6, 2.6038e6},
		{"Henry's Clinical Diagnosis: 100 in four, 1:200", split(100, 4), "neubauer-large", 200, 5.0e7, 4.0682e7, 6.0813e7},
		{"exam item: 300 in eight, 1:20", split(300, 8), "neubauer-large", 20, 7.5e6, 6.6752e6, 8.3985e6},
		{"slide deck: 6 per 0.004 mm3", []int{6}, "neubauer-centre", 1, 1.5e6, 5.505e5, 3.2649e6},
		{"maths page: 39 in nine", split(39, 9), "neubauer-large", 1, 43333, 30814, 59238},
		{"the same nine as one field", []int{39}, "neubauer-all", 1, 43333, 30814, 59238},
		{"none in nine", split(0, 9), "neubauer-large", 1, 0, 0, 4098.75},
		{"Sedgewick-Rafter: 62 in the whole cell", []int{62}, "sedgewick-cell", 1, 62, 47.54, 79.48},
		{"Sedgewick-Rafter: 124 in 50 squares", split(124, 50), "sedgewick-square", 1, 2480, 2062.7, 2956.9},
	} {
		t.Run(c.name, func(t *testing.T) {
			chamber, err := ChamberNamed(c.chamber)
			if err != nil {
				t.Fatal(err)
			}
			got, err := CellsPerML(c.counts, chamber.ML, c.dilution)
			if err != nil {
				t.Fatal(err)
			}
			near(t, "per mL", got.PerML.Value.X, c.want, 1e-5)
			near(t, "low", got.PerML.Low.X, c.low, 1.2e-4) // the last printed digit
			near(t, "high", got.PerML.High.X, c.high, 1e-4)
		})
	}
}

// Sums that give a volume of their own.
func TestCellsPerMLByVolume(t *testing.T) {
	for _, c := range []struct {
		name                string
		counts              []int
		chamberML, dilution float64
		want                float64
	}{
		// APHA 10200 F (from memory): C*1000/(L*D*W*S), two strips of 50 x 1 x 0.5 mm.
		{"Sedgewick-Rafter strips: 45 in two", []int{23, 22}, 50 * 1 * 0.5 / 1000, 1, 900},
		// APHA field form: 1000 mm2 x 1 mm, 10 mL of concentrate from 100 mL of sample.
		{"concentrated sample", []int{100}, 1, 0.1, 10},
		// Barsanti & Gualtieri, Algae, eq. 6.4: C*1000/64 for the whole grid.
		{"sixteen fields of a 0.064 mL slide", split(480, 16), 64e-3 / 16, 1, 480 * 1000.0 / 64},
		{"two grids of a Neubauer", []int{46, 50}, 0.0009, 1, 48 / 0.0009},
	} {
		got, err := CellsPerML(c.counts, c.chamberML, c.dilution)
		if err != nil {
			t.Fatal(err)
		}
		near(t, c.name, got.PerML.Value.X, c.want, 1e-12)
	}
}

func TestCellsPerMLMixing(t *testing.T) {
	got, _ := CellsPerML([]int{8, 21, 3, 19}, 1e-4, 1)
	if got.Mixing.String() != "uneven" || got.Fields != 4 || got.Counted != 51 {
		t.Errorf("got %+v", got)
	}
}

func TestCellsRefuses(t *testing.T) {
	for _, c := range []struct {
		name                string
		counts              []int
		chamberML, dilution float64
		want                string
	}{
		{"no counts", nil, 1e-4, 1, "counts: no counts; give at least one"},
		{"negative", []int{-2}, 1e-4, 1, "counts: -2 is not a count; give whole numbers of 0 or more"},
		{"no volume", []int{5}, 0, 1, "chamber_ml: 0 is not possible; give a number above 0"},
		{"absurd volume", []int{5}, 1e-320, 1, "chamber_ml: 1e-320 is not possible; give a number above 0"},
		{"no dilution", []int{5}, 1e-4, 0, "dilution: 0 is not possible; give a number above 0"},
		{"NaN dilution", []int{5}, 1e-4, math.NaN(), "dilution: NaN is not possible; give a number above 0"},
	} {
		if _, err := CellsPerML(c.counts, c.chamberML, c.dilution); err == nil || err.Error() != c.want {
			t.Errorf("%s: got %v, want %s", c.name, err, c.want)
		}
	}
}

// Squares and sums of squares of the improved Neubauer and the Sedgewick-Rafter.
func TestChambersAgree(t *testing.T) {
	volume := map[string]float64{}
	for _, c := range Chambers() {
		if volume[c.Name] != 0 || c.ML <= 0 || c.Full == "" {
			t.Errorf("chamber %+v", c)
		}
		volume[c.Name] = c.ML
	}
	for _, c := range []struct {
		part  string
		times float64
		whole string
	}{
		{"neubauer-large", 9, "neubauer-all"},
		{"neubauer-centre", 25, "neubauer-large"},
		{"neubauer-smallest", 16, "neubauer-centre"},
		{"neubauer-corner", 16, "neubauer-large"},
		{"sixteen-field", 16, "sixteen-all"},
		{"sedgewick-square", 1000, "sedgewick-cell"},
	} {
		near(t, c.part, volume[c.part]*c.times/volume[c.whole], 1, 1e-12)
	}
	_, err := ChamberNamed("neubauer")
	if err == nil || !strings.HasPrefix(err.Error(), `chamber: "neubauer" is not known; give one of neubauer-large, `) {
		t.Errorf("got %v", err)
	}
}

// Bay scallop F2 2022 feeding sheet (NOAA/NEFSC): per cent eaten as recorded there,
// where the sheet's own counts give it. Days 6 and 8 do not, and are left out. Where
// no count after the feed exists, the sheet used the cells per mL wanted.
func TestEatenOfRealSheet(t *testing.T) {
	for _, c := range []struct {
		day                  int
		after, before, eaten float64
	}{
		{2, 14757, 14080, 4.588},
		{3, 21556, 20792, 3.544},
		{4, 33374, 31454, 5.753},
		{7, 43389, 39752, 8.382},
		{9, 42283, 38836, 8.152},
		{10, 45000, 37646, 16.342},
		{14, 58798, 44318, 24.627},
		{15, 70000, 61661, 11.913},
		{16, 62000, 47186, 23.894},
		{17, 62000, 41631, 32.853},
	} {
		got, err := EatenBetween(About(c.after), About(c.before), 24)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(got.Percent.Value.X-c.eaten) > 0.001 {
			t.Errorf("day %d: got %.4f %%, want %.3f %%", c.day, got.Percent.Value.X, c.eaten)
		}
		if got.PerML.Low.Known || got.Grew {
			t.Errorf("day %d: got %+v", c.day, got)
		}
	}
}

func TestEaten(t *testing.T) {
	got, err := EatenBetween(Between(20000, 18000, 22000), Between(15000, 14000, 16500), 12)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "per day", got.PerMLPerDay.Value.X, 10000, 1e-12)
	near(t, "low", got.PerML.Low.X, 5000-math.Hypot(2000, 1500), 1e-12)
	if p := got.Percent; !(p.Low.X < 25 && p.Value.X == 25 && p.High.X > 25) {
		t.Errorf("per cent %+v", p)
	}
	each, err := got.PerLarvaPerDay(10, Exactly(50000))
	if err != nil {
		t.Fatal(err)
	}
	near(t, "per larva", each.Value.X, 2000, 1e-12) // 10,000 x 10,000 mL / 50,000

	grew, _ := EatenBetween(Exactly(10000), Exactly(12000), 24)
	if !grew.Grew || grew.PerML.Value.X != 0 || grew.Percent.Value.X != 0 {
		t.Errorf("more than before: got %+v", grew)
	}
	unknown, _ := EatenBetween(Exactly(10000), Estimate{}, 24)
	if unknown.PerML.Value.Known || unknown.Percent.Value.Known || unknown.Grew {
		t.Errorf("not counted: got %+v", unknown)
	}
}

func TestEatenRefuses(t *testing.T) {
	if _, err := EatenBetween(Exactly(5), Exactly(3), 0); err == nil || err.Error() != "hours: 0 is not possible; give a number above 0" {
		t.Errorf("got %v", err)
	}
	if _, err := EatenBetween(Estimate{}, Exactly(3), 24); err == nil || !strings.HasPrefix(err.Error(), "after: no cells known") {
		t.Errorf("got %v", err)
	}
	if _, err := (Eaten{}).PerLarvaPerDay(-1, Exactly(3)); err == nil {
		t.Error("a tank of -1 L was taken")
	}
}
