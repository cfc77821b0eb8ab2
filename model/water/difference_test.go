package water

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestCompare(t *testing.T) {
	nan := math.NaN()
	at := func(x float64) *float64 { return &x }
	for _, c := range []struct {
		name     string
		from, to *float64
		want     Difference
	}{
		{"the same water", at(28), at(28), Difference{0, Fine}},
		{"just fine", at(28), at(26), Difference{2, Fine}},
		{"just fine the other way", at(26), at(28), Difference{2, Fine}},
		{"just fine, though 32.2-30.2 is a hair over 2 in binary", at(32.2), at(30.2), Difference{2, Fine}},
		{"a tenth over fine", at(28.1), at(26), Difference{2.1, Check}},
		{"at the holding step", at(31), at(27), Difference{4, Check}},
		{"at the holding step, though 32.2-28.2 is a hair over 4 in binary", at(32.2), at(28.2), Difference{4, Check}},
		{"over the holding step", at(31), at(26.9), Difference{4.1, Hold}},
		{"over the holding step the other way", at(26.9), at(31), Difference{4.1, Hold}},
		{"no reading of the source", nil, at(28), Difference{0, Unknown}},
		{"no reading of the destination", at(28), nil, Difference{0, Unknown}},
		{"no reading at all", nil, nil, Difference{0, Unknown}},
		{"a reading that is no number", at(28), &nan, Difference{0, Unknown}},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := (Steps{Fine: 2, Hold: 4}).Compare(c.from, c.to); got != c.want {
				t.Errorf("got %+v, want %+v", got, c.want)
			}
		})
	}
}

func TestBinaryDustIsReal(t *testing.T) {
	a, b, c := 32.2, 30.2, 28.2
	if a-b <= 2 || a-c <= 4 {
		t.Fatal("no hair over here: the cases in TestCompare prove nothing")
	}
}

func TestLimitsThatAreNoNumbersHold(t *testing.T) {
	a, b := 28.0, 28.0
	got := Steps{Fine: math.NaN(), Hold: math.NaN()}.Compare(&a, &b)
	if got.Verdict != Hold {
		t.Errorf("got %s, want %s", got.Verdict, Hold)
	}
}

func TestCompareIsEven(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := rapid.Float64Range(-2, 40).Draw(t, "a")
		b := rapid.Float64Range(-2, 40).Draw(t, "b")
		fine := rapid.Float64Range(0, 5).Draw(t, "fine")
		s := Steps{Fine: fine, Hold: fine + rapid.Float64Range(0, 5).Draw(t, "more")}
		there, back := s.Compare(&a, &b), s.Compare(&b, &a)
		if there != back || there.Celsius < 0 {
			t.Fatalf("there %+v, back %+v", there, back)
		}
		if aim := s.Aim(a, b); s.Compare(&a, &aim).Verdict != Fine {
			t.Fatalf("aim %v is not fine against %v", aim, a)
		}
	})
}

func TestAim(t *testing.T) {
	s := Steps{Fine: 2, Hold: 4}
	for _, c := range []struct {
		name           string
		from, to, want float64
	}{
		{"already fine", 28, 27, 27},
		{"destination too cold", 30, 22, 28},
		{"destination too warm", 26, 31, 28},
	} {
		t.Run(c.name, func(t *testing.T) { near(t, "aim", s.Aim(c.from, c.to), c.want, 1e-12) })
	}
}
