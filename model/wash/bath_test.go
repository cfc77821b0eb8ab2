package wash

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestBathVolumes(t *testing.T) {
	stock := must(NewStock(31.45))
	added := must(Bath{Litres: 20, MLPerLitre: 10, Stock: stock}.Mix())
	near(t, "acid, added to", added.AcidML, 200, 1e-9)
	near(t, "water, added to", added.WaterLitres, 20, 0)
	near(t, "solution, added to", added.SolutionLitres, 20.2, 1e-9)
	made := must(Bath{Litres: 20, MLPerLitre: 10, MadeUp: true, Stock: stock}.Mix())
	near(t, "acid, made up", made.AcidML, 200, 1e-9)
	near(t, "water, made up", made.WaterLitres, 19.8, 1e-9)
	near(t, "solution, made up", made.SolutionLitres, 20, 0)
	near(t, "made up over added to", made.MolPerLitre/added.MolPerLitre, 1.01, 1e-9)
	if made.Neutralise != added.Neutralise {
		t.Error("the same acid needs the same to neutralise, whatever the water")
	}
}

// The bath of 10 mL of stock per litre, by degrees Baumé; worked out apart from
// this code.
func TestBathStrength(t *testing.T) {
	for _, c := range []struct{ degrees, made, added, percent, ideal, davies float64 }{
		{18, 0.0873, 0.0865, 0.315, 1.06, 1.17},
		{20, 0.09996, 0.0990, 0.361, 1.00, 1.11},
		{22, 0.1137, 0.1126, 0.411, 0.95, 1.06},
	} {
		stock := must(StockFromBaume(c.degrees))
		made := must(Bath{Litres: 1, MLPerLitre: 10, MadeUp: true, Stock: stock}.Mix())
		added := must(Bath{Litres: 1, MLPerLitre: 10, Stock: stock}.Mix())
		near(t, "mol/L made up", made.MolPerLitre, c.made, 6e-5)
		near(t, "mol/L added", added.MolPerLitre, c.added, 6e-5)
		near(t, "percent by weight", added.PercentByWeight, c.percent, 6e-4)
		near(t, "ideal pH", -math.Log10(added.MolPerLitre), c.ideal, 0.0051)
		near(t, "pH", davies(added.MolPerLitre), c.davies, 0.0051)
		near(t, "pH shown", added.PHAbout, c.davies, 0.05+0.0051)
	}
	// pH 1.10 from the tabled mean activity 0.796 at 0.1 mol/kg (Hamer and Wu
	// 1972, as remembered from the CRC Handbook).
	near(t, "pH against Hamer and Wu", davies(0.1), -math.Log10(0.1*0.796), 0.015)
	if got := must(Bath{Litres: 20, MLPerLitre: 10, Stock: must(NewStock(31.45))}.Mix()).PHAbout; got != 1.1 {
		t.Errorf("pH shown for the house bath: got %v, want 1.1", got)
	}
	// A tenth of the volume in stock, the strong bath against lime: 1.00 mol/L
	// (common practice, no source).
	strong := must(Bath{Litres: 1, MLPerLitre: 100, MadeUp: true, Stock: must(StockFromBaume(20))}.Mix())
	near(t, "mol/L of the strong bath", strong.MolPerLitre, 1.00, 0.005)
}

func TestBathIsNotOnePercentAcid(t *testing.T) {
	got := must(Bath{Litres: 1, MLPerLitre: 10, Stock: must(NewStock(31.45))}.Mix()).PercentByWeight
	near(t, "percent by weight", got, 0.360, 6e-4)
}

func TestBathKeepsTheAcid(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := Bath{
			Litres:     rapid.Float64Range(0.01, 1e4).Draw(t, "litres"),
			MLPerLitre: rapid.Float64Range(0.01, 500).Draw(t, "ml per litre"),
			MadeUp:     rapid.Bool().Draw(t, "made up"),
			Stock:      must(NewStock(rapid.Float64Range(0.5, 40).Draw(t, "percent"))),
		}
		m := must(b.Mix())
		near(t, "volumes add up", (m.WaterLitres+m.AcidML/1000)/m.SolutionLitres, 1, 1e-12)
		mol := m.AcidML / 1000 * b.Stock.MolPerLitre()
		near(t, "moles kept", m.MolPerLitre*m.SolutionLitres/mol, 1, 1e-12)
		near(t, "bicarbonate, one for one", m.Neutralise.BicarbonateG/84.007/mol, 1, 1e-12)
		near(t, "carbonate, one for two", m.Neutralise.CarbonateG/105.988/mol, 0.5, 1e-12)
		if m.PercentByWeight <= 0 || m.PercentByWeight >= b.Stock.Percent {
			t.Fatalf("a bath of %v %% from stock of %v %%", m.PercentByWeight, b.Stock.Percent)
		}
	})
}

func TestBathRefuses(t *testing.T) {
	stock := must(NewStock(31.45))
	for _, x := range append(notPositive(), 1e7) {
		_, err := Bath{Litres: x, MLPerLitre: 10, Stock: stock}.Mix()
		refused(t, err, "litres", "more than 0")
	}
	for _, x := range append(notPositive(), 501) {
		_, err := Bath{Litres: 20, MLPerLitre: x, Stock: stock}.Mix()
		refused(t, err, "ml-per-litre", "more than 0 and at most 500")
	}
	_, err := Bath{Litres: 20, MLPerLitre: 10}.Mix()
	refused(t, err, "stock-percent", "between 0.5 and 40")
	_, err = Bath{Litres: 20, MLPerLitre: 10, Stock: Stock{31.45, 0}}.Mix()
	refused(t, err, "stock-density", "between")
}

func TestSession(t *testing.T) {
	house := Session{Emptied: 4, TankLitres: 4, BinLitres: 20, MLPerLitre: 10, Stock: must(NewStock(31.45))}
	for _, c := range []struct {
		name                  string
		session               Session
		solution, acid, water float64
	}{
		{"four tanks", house, 36, 360, 35.64},
		{"one tank", Session{1, 4, 20, 10, house.Stock}, 24, 240, 23.76},
		{"no tank, no session", Session{0, 4, 20, 10, house.Stock}, 0, 0, 0},
		{"no bin", Session{3, 4, 0, 10, house.Stock}, 12, 120, 11.88},
		{"tanks not washed", Session{3, 0, 20, 10, house.Stock}, 20, 200, 19.8},
		{"nothing at all", Session{3, 0, 0, 10, house.Stock}, 0, 0, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := must(c.session.Mix())
			near(t, "solution", got.Total.SolutionLitres, c.solution, 1e-9)
			near(t, "acid", got.Total.AcidML, c.acid, 1e-9)
			near(t, "water", got.Total.WaterLitres, c.water, 1e-9)
			near(t, "parts", float64(c.session.Emptied)*got.PerTank.AcidML+got.Bin.AcidML, c.acid, 1e-9)
		})
	}
	got := must(house.Mix())
	near(t, "acid per tank", got.PerTank.AcidML, 40, 1e-9)
	near(t, "water per tank", got.PerTank.WaterLitres, 3.96, 1e-9)
	near(t, "acid in the bin", got.Bin.AcidML, 200, 1e-9)
	near(t, "water in the bin", got.Bin.WaterLitres, 19.8, 1e-9)
}

func TestSessionRefuses(t *testing.T) {
	good := Session{Emptied: 4, TankLitres: 4, BinLitres: 20, MLPerLitre: 10, Stock: must(NewStock(31.45))}
	for field, change := range map[string]func(*Session, float64){
		"emptied":       func(s *Session, _ float64) { s.Emptied = -1 },
		"tank-litres":   func(s *Session, x float64) { s.TankLitres = x },
		"bin-litres":    func(s *Session, x float64) { s.BinLitres = x },
		"ml-per-litre":  func(s *Session, x float64) { s.MLPerLitre = x },
		"stock-percent": func(s *Session, x float64) { s.Stock.Percent = x },
	} {
		for _, x := range []float64{-1, math.NaN(), math.Inf(1), math.Inf(-1)} {
			bad := good
			change(&bad, x)
			_, err := bad.Mix()
			refused(t, err, field, "must be")
		}
	}
	huge := good
	huge.Emptied, huge.TankLitres, huge.BinLitres = 1000, 1000, 10000
	_, err := huge.Mix()
	refused(t, err, "litres", "at most 1000000")
}
