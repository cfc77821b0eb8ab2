package bench

import "drainboard/model/count"

// Answer is what a sum comes to.
type Answer struct {
	Figures  []Figure
	Remarks  []string // how to take the figures, one line each
	Sources  []string
	Cautions []string
}

// Figure is one figure of an answer.
type Figure struct {
	Key  string // with its unit, as JSON has it: "acid_ml"; empty for people alone
	What string // what it is, in words
	// Value is a float64, an int, a string, a []float64 or a []Amount; nil where it
	// is not known.
	Value  any
	Unit   string // "degrees C" and "um" in letters
	Places int    // decimals worth showing
}

// Amount is a figure that goes by a name, as the litres of one alga.
type Amount struct {
	Name string
	X    float64
}

// known is the value of a figure that may not be known.
func known(f count.Figure) any {
	if !f.Known {
		return nil
	}
	return f.X
}
