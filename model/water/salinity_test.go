package water

import (
	"testing"

	"pgregory.net/rapid"
)

// Mass balance with EOS-80 densities, worked out apart from this code.
func TestThin(t *testing.T) {
	for _, c := range []struct {
		name             string
		change           Change
		shortcut, litres float64
	}{
		{"36 to 33", Change{1000, 25, 36, 33}, 90.91, 93.38},
		{"40 to 35", Change{1000, 25, 40, 35}, 142.86, 147.17},
		{"nothing to do", Change{1000, 25, 35, 35}, 0, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := must(c.change.Thin())
			near(t, "shortcut", got.Shortcut, c.shortcut, 0.006)
			near(t, "litres", got.Litres, c.litres, 0.006)
		})
	}
}

func TestStrengthen(t *testing.T) {
	near(t, "30 to 35", must(Change{1000, 25, 30, 35}.Strengthen()), 5.283, 5.1e-4)
	near(t, "nothing to do", must(Change{1000, 25, 35, 35}.Strengthen()), 0, 0)
	near(t, "from fresh", must(Change{100, 25, 0, 35}.Strengthen()), 99.705*35/965, 1e-3)
}

func TestSaltIsKept(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := Change{
			Litres:  rapid.Float64Range(1, 5000).Draw(t, "litres"),
			Celsius: rapid.Float64Range(0, 40).Draw(t, "celsius"),
			From:    rapid.Float64Range(1, 42).Draw(t, "from"),
		}
		mass := c.Litres * must(Density(c.Celsius, c.From)) / 1000

		c.To = c.From * rapid.Float64Range(0.1, 1).Draw(t, "thinned to")
		thinned := mass + must(c.Thin()).Kilograms
		near(t, "salinity after thinning", mass*c.From/thinned, c.To, 1e-9)

		c.To = c.From + (42-c.From)*rapid.Float64Range(0, 1).Draw(t, "raised by")
		salt := must(c.Strengthen())
		near(t, "salinity after salting", 1000*(mass*c.From/1000+salt)/(mass+salt), c.To, 1e-9)
	})
}

func TestBlendSalinity(t *testing.T) {
	for _, c := range []struct {
		name                  string
		want, first, second   float64
		ofFirst, ofSecond, to float64
	}{
		{"33 from 36 and 20", 33, 36, 20, 812.5, 187.5, 1e-9},
		{"the other way round", 33, 20, 36, 187.5, 812.5, 1e-9},
		{"28 from 35 and fresh", 28, 35, 0, 800, 200, 1e-9},
		{"28 from fresh and 35", 28, 0, 35, 200, 800, 1e-9},
		{"one is right already", 36, 36, 20, 1000, 0, 1e-9},
		{"both are right", 35, 35, 35, 1000, 0, 1e-9},
	} {
		t.Run(c.name, func(t *testing.T) {
			first, second, err := BlendSalinity(1000, c.want, c.first, c.second)
			if err != nil {
				t.Fatal(err)
			}
			near(t, "of the first", first, c.ofFirst, c.to)
			near(t, "of the second", second, c.ofSecond, c.to)
		})
	}
}

func TestSalinityRefuses(t *testing.T) {
	_, err := Change{1000, 25, 33, 36}.Thin()
	refused(t, err, "to", "fresh water can only lower it")
	_, err = Change{1000, 25, 33, 0}.Thin()
	refused(t, err, "to", "more than 0")
	_, err = Change{1000, 25, 36, 33}.Strengthen()
	refused(t, err, "to", "salt can only raise it")
	_, err = Change{-1, 25, 36, 33}.Thin()
	refused(t, err, "litres", "more than 0")
	_, err = Change{0, 25, 30, 33}.Strengthen()
	refused(t, err, "litres", "more than 0")
	_, _, err = BlendSalinity(1000, 37, 36, 20)
	refused(t, err, "want", "between 20 and 36")
	_, _, err = BlendSalinity(1000, 34, 35, 35)
	refused(t, err, "want", "between 35 and 35")
	for _, x := range notNumbers() {
		_, err = Change{x, 25, 36, 33}.Thin()
		refused(t, err, "litres", "")
		_, err = Change{1, x, 36, 33}.Thin()
		refused(t, err, "celsius", "")
		_, err = Change{1, 25, x, 33}.Thin()
		refused(t, err, "from", "")
		_, err = Change{1, 25, 36, x}.Thin()
		refused(t, err, "to", "")
		_, _, err = BlendSalinity(1, 33, x, 20)
		refused(t, err, "first", "")
		_, _, err = BlendSalinity(1, 33, 36, x)
		refused(t, err, "second", "")
		_, _, err = BlendSalinity(1, x, 36, 20)
		refused(t, err, "want", "")
	}
}
