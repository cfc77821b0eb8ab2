package growth

import (
	"fmt"
	"math"
)

// Limits of a shell length, in um, outside which a reading is a slip and is refused.
const (
	// ShortestUM is below any mollusc larva with a shell: scallop eggs, smaller than the first
	// shell, stay on a 25 um sieve (common practice).
	ShortestUM = 20.0
	// LongestUM is above any larva and above a queen conch just settled, about 2 mm.
	LongestUM = 5000.0
)

// LengthError says why a typed shell length cannot be one.
type LengthError struct {
	UM      float64 // as typed, um
	Problem string
}

func (e *LengthError) Error() string {
	return fmt.Sprintf("length %g um: %s: read it again, and check the eyepiece factor", e.UM, e.Problem)
}

// CheckLength refuses a shell length, in um, that no larva can have. A length that is merely
// unlike the others passes; see Odd.
func CheckLength(um float64) error {
	switch {
	case math.IsNaN(um) || math.IsInf(um, 0):
		return &LengthError{um, "not a number"}
	case um <= 0:
		return &LengthError{um, "not above zero"}
	case um < ShortestUM:
		return &LengthError{um, fmt.Sprintf("below %g um, shorter than any larva", ShortestUM)}
	case um > LongestUM:
		return &LengthError{um, fmt.Sprintf("above %g um, longer than any larva", LongestUM)}
	}
	return nil
}

// Calibrate gives the um that one eyepiece division spans, from a stage micrometer of known length
// and the divisions it covered at the same magnification. Each objective needs its own factor.
// Microscopy practice: divide the true length by the divisions read.
func Calibrate(stageUM, divisions float64) (float64, error) {
	if !measurable(stageUM) || stageUM <= 0 {
		return 0, fmt.Errorf("stage length %g um: give a length above zero", stageUM)
	}
	if !measurable(divisions) || divisions <= 0 {
		return 0, fmt.Errorf("eyepiece divisions %g: give a number above zero", divisions)
	}
	factor := stageUM / divisions
	if !measurable(factor) || factor <= 0 {
		return 0, fmt.Errorf("%g um over %g divisions: no microscope has such a factor", stageUM, divisions)
	}
	return factor, nil
}
