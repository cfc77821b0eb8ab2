package feed

import (
	"errors"
	"fmt"
	"math"
	"strconv"
)

// FieldError says which field is wrong and what would be right.
type FieldError struct {
	Field   string // the name as on disk and on the command line
	Problem string // what is wrong and what would be right, in one line
}

// Error reads "field: problem".
func (e *FieldError) Error() string { return e.Field + ": " + e.Problem }

func wrong(field, format string, args ...any) error {
	return &FieldError{field, fmt.Sprintf(format, args...)}
}

// within puts the name of a tank, culture or day before the field of an error.
func within(name string, err error) error {
	var field *FieldError
	if errors.As(err, &field) {
		return &FieldError{name + " " + field.Field, field.Problem}
	}
	return err
}

// No measure of a larval room, whatever its unit, lies outside these; within
// them no sum of this package leaves the range of a float64.
const (
	leastMeasure = 1e-12
	mostMeasure  = 1e15
)

// positive refuses a measure that is not a sensible number above 0.
func positive(field string, x float64) error {
	if !(x >= leastMeasure && x <= mostMeasure) {
		return wrong(field, "%s is not possible; give a number above 0", plain(x))
	}
	return nil
}

// notNegative refuses a figure that is not a sensible number of 0 or more.
func notNegative(field string, x float64) error {
	if !(x >= 0 && x <= mostMeasure) {
		return wrong(field, "%s is not possible; give a number of 0 or more", plain(x))
	}
	return nil
}

// share refuses what is not a part of a whole, 0 to 1.
func share(field string, x float64) error {
	if !(x >= 0 && x <= 1) {
		return wrong(field, "%s is not possible; give a share from 0 to 1", plain(x))
	}
	return nil
}

// firstError returns the first error there is.
func firstError(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

// plain writes a number the way a person types it, and a monstrous one short.
func plain(x float64) string {
	if math.Abs(x) >= 1e21 || (x != 0 && math.Abs(x) < 1e-9) {
		return strconv.FormatFloat(x, 'g', -1, 64)
	}
	return strconv.FormatFloat(x, 'f', -1, 64)
}
