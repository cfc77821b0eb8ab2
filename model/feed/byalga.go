package feed

import (
	"maps"
	"slices"
)

// ByAlga is one figure for each alga, by the name the room gives it.
type ByAlga map[string]float64

// Names returns the algae in alphabetical order.
func (b ByAlga) Names() []string { return slices.Sorted(maps.Keys(b)) }

// Sum adds the figures up, always in the same order.
func (b ByAlga) Sum() float64 {
	total := 0.0
	for _, name := range b.Names() {
		total += b[name]
	}
	return total
}

// times returns every figure times factor.
func (b ByAlga) times(factor float64) ByAlga {
	scaled := make(ByAlga, len(b))
	for name, x := range b {
		scaled[name] = x * factor
	}
	return scaled
}

// parts returns shares that sum to 1, without the algae whose share is 0. It
// refuses, naming field, negative shares and shares that sum to 0.
func (b ByAlga) parts(field string) (ByAlga, error) {
	for _, name := range b.Names() {
		if err := notNegative(field, b[name]); err != nil {
			return nil, within(name, err)
		}
	}
	total := b.Sum()
	if total < leastMeasure {
		return nil, wrong(field, "the shares sum to 0; give at least one alga a share above 0")
	}
	parts := make(ByAlga, len(b))
	for name, x := range b {
		if x > 0 {
			parts[name] = x / total
		}
	}
	return parts, nil
}
