package inventory

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"drainboard/model"
	"drainboard/tui/factform"
	"drainboard/tui/screen"
)

// What can be typed, for the line below the table.
const (
	whenNote  = "14:05 or 1405 for today or yesterday, y 14:05 yesterday, 23 14:05 the 23rd, 2026-11-23 14:05, or hours ago as 26"
	hatchNote = "the age in days as 17, or a date as 11-08 or 2026-11-08; stays empty where the batch is known"
)

// Most hours ago, and most days of age, that a bare number can mean: beyond it is
// more likely a time or a date without its signs.
const (
	mostHours = 240
	mostDays  = 60
)

// when reads a moment in the past as people type it.
func when(s string, now time.Time, zone *time.Location) (time.Time, error) {
	s = strings.ToLower(strings.TrimSpace(s))
	now = now.In(zone)
	at, err := moment(s, now, zone)
	if err == nil && at.After(now) {
		return time.Time{}, fmt.Errorf("%s lies in the future", at.In(zone).Format("2006-01-02 15:04"))
	}
	return at, err
}

func moment(s string, now time.Time, zone *time.Location) (time.Time, error) {
	today := model.DayOf(now, zone)
	if hour, minute, ok := clock(s); ok {
		return lastOf(today, hour, minute, now, zone), nil
	}
	if x, ok := screen.ParseNumber(s); ok {
		if x > mostHours {
			return time.Time{}, fmt.Errorf("%s hours ago is long: write 4 digits for a time as 0905, or the date and the time", s)
		}
		return now.Add(-time.Duration(x * float64(time.Hour))).Truncate(time.Minute), nil
	}
	if day, rest := named(s, today); rest != s {
		if hour, minute, ok := clock(rest); ok {
			return on(day, hour, minute, zone), nil
		}
	}
	day, rest, _ := strings.Cut(s, " ")
	if hour, minute, ok := clock(strings.TrimSpace(rest)); ok {
		if d, ok := dayOf(day, today); ok {
			return on(d, hour, minute, zone), nil
		}
	}
	at, err := factform.Moment(strings.ToUpper(s), now, zone)
	if err != nil {
		return time.Time{}, fmt.Errorf("%q is no moment; write one as 14:05, 2026-11-23 14:05 or 26", s)
	}
	return at, nil
}

// clock reads 14:05, 9:05 or 0905.
func clock(s string) (hour, minute int, ok bool) {
	h, m, colon := strings.Cut(s, ":")
	if !colon && len(s) == 4 {
		h, m = s[:2], s[2:]
	}
	if len(m) != 2 || len(h) < 1 || len(h) > 2 || strings.Trim(h+m, "0123456789") != "" {
		return 0, 0, false
	}
	hour, _ = strconv.Atoi(h)
	minute, _ = strconv.Atoi(m)
	return hour, minute, hour < 24 && minute < 60
}

// named takes a word for a day off the front: y or yesterday, t or today.
func named(s string, today model.Day) (day model.Day, rest string) {
	for _, w := range []struct {
		word string
		back int
	}{{"yesterday", 1}, {"today", 0}, {"y", 1}, {"t", 0}} {
		if after, ok := strings.CutPrefix(s, w.word); ok {
			return today.Add(-w.back), strings.TrimSpace(after)
		}
		if before, ok := strings.CutSuffix(s, w.word); ok {
			return today.Add(-w.back), strings.TrimSpace(before)
		}
	}
	return today, s
}

// dayOf reads a date, a date without its year, or a day of the month, of which the
// last is meant that is not after today.
func dayOf(s string, today model.Day) (model.Day, bool) {
	if d, err := model.ParseDay(s); err == nil {
		return d, true
	}
	parts := strings.Split(s, "-")
	for _, p := range parts {
		if len(p) < 1 || len(p) > 2 || strings.Trim(p, "0123456789") != "" {
			return model.Day{}, false
		}
	}
	if len(parts) > 2 {
		return model.Day{}, false
	}
	date, _ := strconv.Atoi(parts[len(parts)-1])
	month := 0
	if len(parts) == 2 {
		if month, _ = strconv.Atoi(parts[0]); month == 0 {
			return model.Day{}, false
		}
	}
	for back := range 366 {
		d := today.Add(-back)
		if d.Date == date && (month == 0 || int(d.Month) == month) {
			return d, true
		}
	}
	return model.Day{}, false
}

func on(d model.Day, hour, minute int, zone *time.Location) time.Time {
	return time.Date(d.Year, d.Month, d.Date, hour, minute, 0, 0, zone)
}

// lastOf is the last time of day that is not after now.
func lastOf(today model.Day, hour, minute int, now time.Time, zone *time.Location) time.Time {
	at := on(today, hour, minute, zone)
	if at.After(now) {
		return on(today.Add(-1), hour, minute, zone)
	}
	return at
}

// hatchDay reads the day of a hatch: an age in days, or a date.
func hatchDay(s string, now time.Time, zone *time.Location) (model.Hatched, error) {
	today := model.DayOf(now, zone)
	s = strings.TrimSpace(s)
	if age, err := strconv.Atoi(s); err == nil && strings.Trim(s, "0123456789") == "" {
		if age > mostDays {
			return model.Hatched{}, fmt.Errorf("%d days is old for larvae: write the date as 2026-11-08", age)
		}
		return model.Hatched{Date: today.Add(-age)}, nil
	}
	h, err := model.ParseHatched(s)
	if d, ok := dayOf(s, today); ok && strings.Contains(s, "-") {
		h, err = model.Hatched{Date: d}, nil
	}
	switch {
	case err != nil:
		return model.Hatched{}, fmt.Errorf("%q is no hatch; write a date as 2026-11-08 or the age in days", s)
	case h.Day(zone).Sub(today) > 0 || h.Moment.After(now):
		return model.Hatched{}, fmt.Errorf("%s lies in the future", h)
	}
	return h, nil
}
