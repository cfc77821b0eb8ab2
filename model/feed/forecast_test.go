package feed

import (
	"testing"
)

// The band of Davis (Global Aquaculture Advocate), 5,000 at hatch to 30,000 near
// competence; where it steps up is invented.
func conchBands() []Band {
	return []Band{
		{0, 5000, ByAlga{"iso": 1}},
		{8, 15000, ByAlga{"iso": 1}},
		{16, 30000, ByAlga{"iso": 3, "chaet": 1}},
	}
}

func TestBandAt(t *testing.T) {
	for _, c := range []struct {
		age  int
		want float64
	}{{0, 5000}, {7, 5000}, {8, 15000}, {15, 15000}, {16, 30000}, {400, 30000}} {
		got, err := BandAt(conchBands(), c.age)
		if err != nil || got.CellsPerML != c.want {
			t.Errorf("day %d: got %+v, %v", c.age, got, err)
		}
	}
	if _, err := BandAt(conchBands(), -1); err == nil || err.Error() != "ration: no band for day -1; add one with from_day -1 or less" {
		t.Errorf("got %v", err)
	}
	if _, err := BandAt(nil, 3); err == nil {
		t.Error("no bands gave a ration")
	}
	upset := []Band{{8, 15000, nil}, {0, 5000, nil}}
	if _, err := BandAt(upset, 9); err == nil || err.Error() != "ration: from_day 0 comes after 8; put the bands in the order of their days" {
		t.Errorf("got %v", err)
	}
}

func TestForecast(t *testing.T) {
	culture := ByAlga{"iso": 5e6, "chaet": 4e6}
	days := [][]TankDay{
		{{Tank: "C1", AgeDays: 7, Litres: 100}, {Tank: "C2", AgeDays: 15, Litres: 120}},
		{{Tank: "C1", AgeDays: 8, Litres: 100}, {Tank: "C2", AgeDays: 16, Litres: 120}},
		{{Tank: "C1", AgeDays: 9, Litres: 100, Left: 0.6}},
		{},
	}
	got, err := Forecast(days, conchBands(), culture)
	if err != nil || len(got) != 4 {
		t.Fatalf("got %+v, %v", got, err)
	}
	// By hand: cells wanted per mL x mL / culture.
	for i, want := range []ByAlga{
		{"iso": (5000*100 + 15000*120) / 5e6},
		{"iso": (15000*100 + 30000*120*0.75) / 5e6, "chaet": 30000 * 120 * 0.25 / 4e6},
		{"iso": 15000 * 0.4 * 100 / 5e6},
		{},
	} {
		if len(got[i].Litres) != len(want) {
			t.Errorf("day %d: got %v, want %v", i+1, got[i].Litres, want)
		}
		for alga := range want {
			near(t, alga, got[i].Litres[alga], want[alga], 1e-12)
			near(t, alga+" cells", got[i].Cells[alga], want[alga]*culture[alga]*1000, 1e-12)
		}
		near(t, "total", got[i].TotalLitres, want.Sum(), 1e-12)
	}
}

func TestForecastRefuses(t *testing.T) {
	for _, c := range []struct {
		tank TankDay
		want string
	}{
		{TankDay{Tank: "C5", AgeDays: 3}, "day 2 C5 litres: 0 is not possible; give a number above 0"},
		{TankDay{Tank: "C5", AgeDays: -3, Litres: 1}, "day 2 C5 ration: no band for day -3; add one with from_day -3 or less"},
		{TankDay{Tank: "C5", AgeDays: 3, Litres: 1, Left: 60}, "day 2 C5 left: 60 is not possible; give a share from 0 to 1"},
		{TankDay{Tank: "C5", AgeDays: 20, Litres: 1}, `day 2 C5 culture: no cells per mL known for "chaet"; count that culture or leave it out of the share`},
	} {
		if _, err := Forecast([][]TankDay{{}, {c.tank}}, conchBands(), ByAlga{"iso": 5e6}); err == nil || err.Error() != c.want {
			t.Errorf("got %v, want %s", err, c.want)
		}
	}
}
