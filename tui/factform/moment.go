package factform

import (
	"fmt"
	"strings"
	"time"

	"drainboard/model"
)

// MomentNote says how a moment is typed.
const MomentNote = "14:05 for today or yesterday, or 2026-11-25 14:05, or with a zone as 2026-11-25T14:05:00-05:00"

// Moment reads when something happened: a time of day, which is the last one
// that is not after now; a date and a time of the room's zone; or an instant with
// its own offset (RFC 3339).
func Moment(s string, now time.Time, zone *time.Location) (time.Time, error) {
	s = strings.TrimSpace(s)
	now = now.In(zone)
	if clock, err := time.Parse("15:04", s); err == nil {
		at := time.Date(now.Year(), now.Month(), now.Day(), clock.Hour(), clock.Minute(), 0, 0, zone)
		if at.After(now) {
			at = time.Date(now.Year(), now.Month(), now.Day()-1, clock.Hour(), clock.Minute(), 0, 0, zone)
		}
		return at, nil
	}
	for _, layout := range []string{"2006-01-02 15:04:05", "2006-01-02 15:04"} {
		if at, err := time.ParseInLocation(layout, s, zone); err == nil {
			return at, nil
		}
	}
	if at, err := model.ParseMoment(s); err == nil {
		return at, nil
	}
	return time.Time{}, fmt.Errorf("%q is no moment: write %s", s, MomentNote)
}
