package wash

import (
	"errors"
	"math"
	"strings"
	"testing"
)

// tester is what testing.T and rapid.T share.
type tester interface {
	Helper()
	Errorf(format string, args ...any)
}

// near fails unless got is within tolerance of want.
func near(t tester, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: got %.9g, want %.9g within %g", what, got, want, tolerance)
	}
}

// must hands on a value that came without an error.
func must[V any](v V, err error) V {
	if err != nil {
		panic(err)
	}
	return v
}

// refused fails unless err names the field and says so much about it.
func refused(t tester, err error, field, says string) {
	t.Helper()
	var f *FieldError
	if !errors.As(err, &f) {
		t.Errorf("got error %v, want a refusal of %s", err, field)
		return
	}
	if f.Field != field || !strings.Contains(f.Problem, says) {
		t.Errorf("got %q, want a refusal of %s that says %q", err, field, says)
	}
	if text := err.Error(); strings.Contains(text, "\n") || !strings.HasPrefix(text, field+" ") {
		t.Errorf("got %q, want one line that starts with the field", text)
	}
}

// notPositive are what no amount can be.
func notPositive() []float64 {
	return []float64{0, -1, math.NaN(), math.Inf(1), math.Inf(-1)}
}

func TestFieldErrorWording(t *testing.T) {
	_, err := Dose{Litres: -4, PPM: 200, Stock: Hypochlorite{125}}.Bleach()
	if got, want := err.Error(), "litres -4: must be more than 0 and at most 1000000"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}
