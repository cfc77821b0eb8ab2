package water

import "math"

// Verdict is what the room's own rules say of a difference of temperature.
type Verdict string

// The verdicts, in the words the screens and the JSON use.
const (
	Fine    Verdict = "fine"    // up to the step nothing is said about
	Check   Verdict = "check"   // over it: look again before the move
	Hold    Verdict = "hold"    // over the holding step: someone decides
	Unknown Verdict = "unknown" // one of the two temperatures is missing
)

// Steps are the room's limits for the difference between two waters, in
// degrees Celsius. They are rules of the house: no published limit for a step
// in temperature for conch veligers is known.
type Steps struct {
	Fine float64 // up to here nothing is said
	Hold float64 // above here the move is held
}

// Difference is how far two waters lie apart.
type Difference struct {
	Celsius float64 // never negative; 0 and meaningless where the verdict is Unknown
	Verdict Verdict
}

// Compare sets the temperatures of two waters against the limits. A missing
// (nil) or impossible reading makes the verdict Unknown, never Fine.
func (s Steps) Compare(from, to *float64) Difference {
	if from == nil || to == nil || !finite(*from) || !finite(*to) {
		return Difference{Verdict: Unknown}
	}
	d := math.Abs(*from - *to)
	return Difference{Celsius: math.Round(d*1e6) / 1e6, Verdict: s.judge(d)}
}

// dust is what binary fractions leave over, so that 32.2 against 30.2 is not
// more than 2.
const dust = 1e-9

// judge is written so that a limit that is no number holds the move.
func (s Steps) judge(difference float64) Verdict {
	switch {
	case !(difference <= s.Hold+dust):
		return Hold
	case !(difference <= s.Fine+dust):
		return Check
	default:
		return Fine
	}
}

// Aim is the temperature nearest to that of the destination at which the
// difference is fine: where blending, waiting or heating should bring it.
func (s Steps) Aim(from, to float64) float64 {
	switch {
	case s.judge(math.Abs(from-to)) == Fine:
		return to
	case to > from:
		return from + s.Fine
	default:
		return from - s.Fine
	}
}
