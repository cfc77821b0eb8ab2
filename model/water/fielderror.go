package water

import (
	"math"
	"strconv"
)

// FieldError says which number was refused, what was given and what would be
// right. Field is the name of the flag it came from, as in "total-mg-l".
type FieldError struct {
	Field   string
	Given   string
	Problem string
}

// Error reads "ph 81: must be between 4 and 11".
func (e *FieldError) Error() string { return e.Field + " " + e.Given + ": " + e.Problem }

func refuse(field string, given float64, problem string) error {
	return &FieldError{Field: field, Given: plain(given), Problem: problem}
}

func plain(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// between refuses a number outside low to high, NaN among them.
func between(field string, x, low, high float64) error {
	if x >= low && x <= high {
		return nil
	}
	return refuse(field, x, "must be between "+plain(low)+" and "+plain(high))
}

// above refuses a number that is not over zero, or is past high.
func above(field string, x, high float64) error {
	if x > 0 && x <= high {
		return nil
	}
	return refuse(field, x, "must be more than 0 and at most "+plain(high))
}

// Limits of what is taken as a number from a wet room, wide enough for hot
// water from a heater and for a store tank.
const (
	coldest    = -2.0 // degrees Celsius: sea water freezes
	hottest    = 100.0
	mostLitres = 1e6
	mostHours  = 24 * 366.0
)

func waterTemperature(field string, celsius float64) error {
	return between(field, celsius, coldest, hottest)
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
