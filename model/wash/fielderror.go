package wash

import "strconv"

// FieldError says which number was refused, what was given and what would be
// right. Field is the name of the flag it came from, as in "stock-percent".
type FieldError struct {
	Field   string
	Given   string
	Problem string
}

// Error reads "stock-percent 120: must be between 0.5 and 40".
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

const mostLitres = 1e6
