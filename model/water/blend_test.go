package water

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestBlendByVolume(t *testing.T) {
	for _, c := range []struct {
		name      string
		blend     Blend
		swap, add float64
	}{
		// All worked by hand from V (have - want) = ....
		{"warm tank, cool supply", Blend{120, 31, 28, 22}, 40, 60},
		{"cold tank, warm supply", Blend{120, 22, 28, 31}, 80, 240},
		{"26 from 20 and 32", Blend{100, 20, 26, 32}, 50, 100},
		{"27.5 from 24 and 40", Blend{100, 24, 27.5, 40}, 21.875, 28},
		{"25 from 18.5 and 31", Blend{500, 18.5, 25, 31}, 260, 541.6666667},
		{"nothing to do", Blend{120, 28, 28, 22}, 0, 0},
		{"nothing to do, all the same", Blend{120, 28, 28, 28}, 0, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := must(c.blend.ByVolume())
			near(t, "swap", got.Swap, c.swap, 1e-7)
			near(t, "add", got.Add, c.add, 1e-6)
			near(t, "reached", got.Reached, c.blend.Want, 1e-9)
		})
	}
}

func TestMixByVolume(t *testing.T) {
	for _, c := range []struct {
		name              string
		litresA, a        float64
		litresB, b        float64
		want, printedWith float64
	}{
		// General chemistry exercises; masses serve as volumes of one water.
		{"270 mL at 25 and 100 mL at 95, chemistry text", 270, 25, 100, 95, 43.92, 0.005},
		{"136 mL at 25 and 75 mL at 82, Oklahoma State problem set", 136, 25, 75, 82, 45.3, 0.05},
		{"42.3 g at 59.7 and 27.5 g at 21.2", 42.3, 59.7, 27.5, 21.2, 44.532, 0.0005},
		{"60 g at 20 and 120 g at 100", 60, 20, 120, 100, 73.333, 0.0005},
	} {
		t.Run(c.name, func(t *testing.T) {
			near(t, "mixed", mixByVolume(c.litresA, c.a, c.litresB, c.b), c.want, c.printedWith)
		})
	}
}

// Density and heat capacity from EOS-80 at salinity 35, worked out apart from
// this code with the heat capacity summed over the range.
func TestMixByHeat(t *testing.T) {
	for _, c := range []struct {
		name            string
		hotLitres, hot  float64
		coldLitres, col float64
		want, volumes   float64
	}{
		{"1:1 of 32 and 20", 1, 32, 1, 20, 25.992, 26.000},
		{"1:3 of 40 and 20", 1, 40, 3, 20, 24.980, 25.000},
		{"1:9 of 60 and 22", 1, 60, 9, 22, 25.754, 25.800},
		{"2:1 of 35 and 18", 2, 35, 1, 18, 29.318, 29.333},
	} {
		t.Run(c.name, func(t *testing.T) {
			near(t, "by heat", mixByHeat(c.hotLitres, sea{35, c.hot}, c.coldLitres, sea{35, c.col}), c.want, 0.0006)
			near(t, "by volume", mixByVolume(c.hotLitres, c.hot, c.coldLitres, c.col), c.volumes, 0.0006)
		})
	}
}

func TestBlendByHeatStaysNearTheShortcut(t *testing.T) {
	b := Blend{Litres: 120, Have: 31, Want: 28, With: 22}
	got := must(b.ByHeat(35, 35))
	near(t, "swap", got.Swap, 40, 0.15)
	near(t, "add", got.Add, 60, 0.3)
	near(t, "reached", got.Reached, 28, 1e-9)
	if got.Swap == 40 {
		t.Error("the heat form gives exactly the shortcut; it should differ a little")
	}
	fresh := must(b.ByHeat(35, 0))
	if fresh.Swap >= got.Swap {
		t.Errorf("fresh water holds more heat, so less of it should do: got %v against %v", fresh.Swap, got.Swap)
	}
}

func drawBlend(t *rapid.T, warmest float64) Blend {
	have := rapid.Float64Range(coldest, warmest).Draw(t, "have")
	with := rapid.Float64Range(coldest, warmest).Draw(t, "with")
	share := rapid.Float64Range(0.01, 0.99).Draw(t, "share")
	if math.Abs(have-with) < 0.01 {
		t.Skip("no difference to work with")
	}
	return Blend{
		Litres: rapid.Float64Range(0.1, 1e4).Draw(t, "litres"),
		Have:   have, Want: have + share*(with-have), With: with,
	}
}

func TestBlendThenMixGivesTheTarget(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawBlend(t, hottest)
		p := must(b.ByVolume())
		if p.Swap <= 0 || p.Swap >= b.Litres || p.Add <= p.Swap {
			t.Fatalf("portions %+v of %v L", p, b.Litres)
		}
		near(t, "after the swap", mixByVolume(b.Litres-p.Swap, b.Have, p.Swap, b.With), b.Want, 1e-8)
		near(t, "after topping up", mixByVolume(b.Litres, b.Have, p.Add, b.With), b.Want, 1e-8)
	})
}

func TestBlendByHeatThenMixGivesTheTarget(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawBlend(t, warmestSea)
		have := sea{rapid.Float64Range(0, 42).Draw(t, "salinity"), b.Have}
		with := sea{rapid.Float64Range(0, 42).Draw(t, "other salinity"), b.With}
		p := must(b.ByHeat(have.salinity, with.salinity))
		near(t, "reached", p.Reached, b.Want, 1e-7)
		near(t, "after topping up", mixByHeat(b.Litres, have, p.Add, with), b.Want, 1e-7)
	})
}

func TestBlendRefuses(t *testing.T) {
	good := Blend{120, 31, 28, 22}
	with := func(change func(*Blend)) Blend { b := good; change(&b); return b }
	for _, c := range []struct {
		name        string
		blend       Blend
		field, says string
	}{
		{"want beyond the other water", Blend{120, 31, 21, 22}, "want", "between the 31 the tank has and the 22"},
		{"want at the other water", Blend{120, 31, 22, 22}, "want", "must lie between"},
		{"want on the far side of the tank", Blend{120, 31, 32, 22}, "want", "must lie between"},
		{"other water as warm as the tank", Blend{120, 31, 28, 31}, "want", "must lie between"},
		{"all the same but the want", Blend{120, 28, 27, 28}, "want", "must lie between"},
		{"no volume", with(func(b *Blend) { b.Litres = 0 }), "litres", "more than 0"},
		{"negative volume", with(func(b *Blend) { b.Litres = -120 }), "litres", "more than 0"},
		{"ice", with(func(b *Blend) { b.With = -30 }), "with", "between -2 and 100"},
		{"a slip of the keys", with(func(b *Blend) { b.Have = 310 }), "have", "between -2 and 100"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := c.blend.ByVolume()
			refused(t, err, c.field, c.says)
			_, err = c.blend.ByHeat(35, 35)
			refused(t, err, c.field, "")
		})
	}
	for _, x := range notNumbers() {
		_, err := with(func(b *Blend) { b.Litres = x }).ByVolume()
		refused(t, err, "litres", "")
		_, err = with(func(b *Blend) { b.Have = x }).ByVolume()
		refused(t, err, "have", "")
		_, err = with(func(b *Blend) { b.Want = x }).ByVolume()
		refused(t, err, "want", "")
		_, err = with(func(b *Blend) { b.With = x }).ByVolume()
		refused(t, err, "with", "")
		_, err = good.ByHeat(x, 35)
		refused(t, err, "salinity", "between 0 and 42")
		_, err = good.ByHeat(35, x)
		refused(t, err, "with-salinity", "between 0 and 42")
	}
}
