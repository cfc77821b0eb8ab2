package feed

import (
	"maps"
	"slices"
	"time"
)

// Stale returns, in alphabetical order, the cultures whose last cell count is
// older than limit: a growing or failing culture is by then another one. ages
// holds the time since each count. It refuses a limit of 0 or less, and a count
// that was not made yet.
func Stale(ages map[string]time.Duration, limit time.Duration) ([]string, error) {
	if limit <= 0 {
		return nil, wrong("culture_hours", "%s is not possible; give hours above 0", plain(limit.Hours()))
	}
	var old []string
	for _, alga := range slices.Sorted(maps.Keys(ages)) {
		if ages[alga] < 0 {
			return nil, wrong(alga, "its count lies in the future; look at the clock or the time typed")
		}
		if ages[alga] > limit {
			old = append(old, alga)
		}
	}
	return old, nil
}
