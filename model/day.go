package model

import (
	"fmt"
	"time"
)

// Day is a date of the civil calendar, without a time of day or a zone.
type Day struct {
	Year  int
	Month time.Month
	Date  int
}

// DayOf returns the calendar day on which the instant t falls in zone loc.
func DayOf(t time.Time, loc *time.Location) Day {
	y, m, d := t.In(loc).Date()
	return Day{y, m, d}
}

// ParseDay reads a date written as 2026-11-25.
func ParseDay(s string) (Day, error) {
	t, err := time.Parse(time.DateOnly, s)
	if err != nil {
		return Day{}, fmt.Errorf("%q: a date is written as 2026-11-25", s)
	}
	return DayOf(t, time.UTC), nil
}

// String writes the day as 2026-11-25.
func (d Day) String() string {
	return fmt.Sprintf("%04d-%02d-%02d", d.Year, d.Month, d.Date)
}

// IsZero reports whether the day was never set.
func (d Day) IsZero() bool { return d == Day{} }

// number counts days on the civil calendar from a fixed origin.
func (d Day) number() int {
	return int(time.Date(d.Year, d.Month, d.Date, 0, 0, 0, 0, time.UTC).Unix() / 86400)
}

// Sub returns the whole calendar days from e to d; it does not depend on
// daylight-saving changes.
func (d Day) Sub(e Day) int { return d.number() - e.number() }

// Add returns the day n calendar days later.
func (d Day) Add(n int) Day {
	return DayOf(time.Date(d.Year, d.Month, d.Date+n, 0, 0, 0, 0, time.UTC), time.UTC)
}

// Start returns the first instant of the day in zone loc.
func (d Day) Start(loc *time.Location) time.Time {
	return time.Date(d.Year, d.Month, d.Date, 0, 0, 0, 0, loc)
}

// Hatched is when a batch hatched: a date, or a moment where it was noted.
type Hatched struct {
	Date   Day
	Moment time.Time // zero where only the date is known
}

// Day returns the hatch date on the calendar of zone loc; it is day 0 of the
// batch.
func (h Hatched) Day(loc *time.Location) Day {
	if h.Moment.IsZero() {
		return h.Date
	}
	return DayOf(h.Moment, loc)
}

// Instant returns the moment of hatching; where only the date is known, the
// start of that day in zone loc.
func (h Hatched) Instant(loc *time.Location) time.Time {
	if h.Moment.IsZero() {
		return h.Date.Start(loc)
	}
	return h.Moment
}

// IsZero reports whether the hatch was never given.
func (h Hatched) IsZero() bool { return h.Date.IsZero() && h.Moment.IsZero() }

// String writes the date, or the moment as RFC 3339.
func (h Hatched) String() string {
	if h.Moment.IsZero() {
		return h.Date.String()
	}
	return h.Moment.Format(time.RFC3339)
}

// ParseHatched reads a date (2026-11-08) or a moment (RFC 3339).
func ParseHatched(s string) (Hatched, error) {
	if d, err := ParseDay(s); err == nil {
		return Hatched{Date: d}, nil
	}
	t, err := time.Parse(time.RFC3339, s)
	if err != nil {
		return Hatched{}, fmt.Errorf("%q: write a date as 2026-11-08 or a moment as 2026-11-08T19:30:00-05:00", s)
	}
	return Hatched{Moment: t}, nil
}
