package water

import (
	"testing"

	"pgregory.net/rapid"
)

func TestDripAfter(t *testing.T) {
	// T = Tin + (T0 - Tin) e^(-Qt/V), and (V T0 + Q t Tin)/(V + Q t).
	got := must(Drip{Litres: 20, LitresPerMinute: 0.5, Have: 24, With: 28}.After(20))
	near(t, "overflow", got.Overflow, 25.5739, 5e-5)
	near(t, "rising", got.Rising, 25.3333, 5e-5)
	got = must(Drip{Litres: 20, LitresPerMinute: 0.5, Have: 24, With: 28}.After(0))
	near(t, "overflow at the start", got.Overflow, 24, 0)
	near(t, "rising at the start", got.Rising, 24, 0)
}

func TestDripUntilIsAfterBackwards(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawBlend(t, hottest)
		d := Drip{Litres: b.Litres, LitresPerMinute: b.Litres / 50, Have: b.Have, With: b.With}
		need := must(d.Until(b.Want))
		near(t, "overflow", must(d.After(need.Overflow)).Overflow, b.Want, 1e-8)
		near(t, "rising", must(d.After(need.Rising)).Rising, b.Want, 1e-8)
	})
}

func TestDripRefuses(t *testing.T) {
	good := Drip{Litres: 20, LitresPerMinute: 0.5, Have: 24, With: 28}
	_, err := good.After(-1)
	refused(t, err, "minutes", "between 0")
	_, err = good.Until(29)
	refused(t, err, "want", "must lie between")
	_, err = Drip{Litres: 20, Have: 24, With: 28}.After(1)
	refused(t, err, "litres-per-minute", "more than 0")
	_, err = Drip{Litres: 20, Have: 24, With: 28}.Until(25)
	refused(t, err, "litres-per-minute", "more than 0")
	_, err = Drip{LitresPerMinute: 1, Have: 24, With: 28}.After(1)
	refused(t, err, "litres", "more than 0")
	for _, x := range notNumbers() {
		_, err = good.After(x)
		refused(t, err, "minutes", "")
		_, err = good.Until(x)
		refused(t, err, "want", "")
	}
	same := Drip{Litres: 20, LitresPerMinute: 0.5, Have: 24, With: 24}
	for _, d := range []Drip{good, same} {
		if got := must(d.Until(24)); got != (Dripped{}) {
			t.Errorf("already there: got %+v", got)
		}
	}
}
