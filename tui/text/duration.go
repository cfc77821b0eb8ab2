package text

import (
	"fmt"
	"time"
)

const day = 24 * time.Hour

// Duration words a length of time, cut (not rounded) to what a person in the
// room needs: "40 s", "12 min", "1 h 05 min", "3 d 4 h" from three days on.
// The sign is dropped.
func Duration(d time.Duration) string {
	d = positive(d)
	switch {
	case d < time.Minute:
		return fmt.Sprintf("%d s", d/time.Second)
	case d < time.Hour:
		return fmt.Sprintf("%d min", d/time.Minute)
	case d < 3*day:
		return fmt.Sprintf("%d h %02d min", d/time.Hour, d%time.Hour/time.Minute)
	}
	return fmt.Sprintf("%d d %d h", d/day, d%day/time.Hour)
}

// ShortDuration is [Duration] for narrow places, at most six cells up to 99
// days: "40s", "12min", "1h05", "3d04h". The sign is dropped.
func ShortDuration(d time.Duration) string {
	d = positive(d)
	switch {
	case d < time.Minute:
		return fmt.Sprintf("%ds", d/time.Second)
	case d < time.Hour:
		return fmt.Sprintf("%dmin", d/time.Minute)
	case d < 3*day:
		return fmt.Sprintf("%dh%02d", d/time.Hour, d%time.Hour/time.Minute)
	}
	return fmt.Sprintf("%dd%02dh", d/day, d%day/time.Hour)
}

// Until words the time left to a due moment: "in 3 h 05 min", "now" from one
// minute before to one minute after, "12 min ago" when past, and
// "overdue 1 h 12 min" when past and overdue, that is, past the grace as well.
// The length of an overdue is counted from the due moment.
func Until(left time.Duration, overdue bool) string {
	switch {
	case overdue:
		return "overdue " + Duration(left)
	case positive(left) < time.Minute:
		return "now"
	case left < 0:
		return Duration(left) + " ago"
	}
	return "in " + Duration(left)
}

// ShortUntil is [Until] for narrow places: "in 3h05", "now", "12min ago" and
// "late 1h12".
func ShortUntil(left time.Duration, overdue bool) string {
	switch {
	case overdue:
		return "late " + ShortDuration(left)
	case positive(left) < time.Minute:
		return "now"
	case left < 0:
		return ShortDuration(left) + " ago"
	}
	return "in " + ShortDuration(left)
}

// positive is the length of d. The most negative length has no positive twin
// and becomes the longest.
func positive(d time.Duration) time.Duration {
	return d.Abs()
}
