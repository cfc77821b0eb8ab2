package calendar

import (
	"time"

	"drainboard/model"
)

// horizon is the days of a calendar on the clock of the room.
type horizon struct {
	now    time.Time
	zone   *time.Location
	first  model.Day
	starts []time.Time // of each day, and of the one after the last
}

func newHorizon(now time.Time, zone *time.Location, days int) horizon {
	h := horizon{now: now, zone: zone, first: model.DayOf(now, zone), starts: make([]time.Time, days+1)}
	for i := range h.starts {
		h.starts[i] = firstInstant(h.first.Add(i), zone)
	}
	return h
}

// firstInstant is the first moment of a day. Where clocks change at midnight its
// hour 0 may be missing, or be there twice.
func firstInstant(day model.Day, zone *time.Location) time.Time {
	s := day.Start(zone)
	for model.DayOf(s, zone).Sub(day) < 0 {
		s = s.Add(30 * time.Minute)
	}
	for _, back := range []time.Duration{time.Hour, 30 * time.Minute} {
		if earlier := s.Add(-back); model.DayOf(earlier, zone) == day {
			return earlier
		}
	}
	return s
}

// days is how many there are.
func (h horizon) days() int { return len(h.starts) - 1 }

// day is the place of the day on which t falls: 0 for any t before tomorrow.
func (h horizon) day(t time.Time) int { return max(0, model.DayOf(t, h.zone).Sub(h.first)) }

// begin is when work on a day can begin: now, for today.
func (h horizon) begin(d int) time.Time { return laterOf(h.starts[d], h.now) }

// left is the time there is on a day: of today, what is left of it. Days on
// which clocks change are an hour shorter or longer.
func (h horizon) left(d int) time.Duration { return h.starts[d+1].Sub(h.begin(d)) }

// fall counts on each day the moments from, from + every, from + 2 every ... up to
// the last of the days.
func (h horizon) fall(from time.Time, every time.Duration, last int) []int {
	counts := make([]int, h.days())
	from, every = laterOf(from, h.now), max(every, 1)
	before := func(t time.Time) int { // so many lie before t
		if !t.After(from) {
			return 0
		}
		return int((t.Sub(from)-1)/every) + 1
	}
	for d := range counts[:min(len(counts), last+1)] {
		counts[d] = before(h.starts[d+1]) - before(h.starts[d])
	}
	return counts
}

func laterOf(a, b time.Time) time.Time {
	if a.After(b) {
		return a
	}
	return b
}

// hours turns a house rule into elapsed time.
func hours(h float64) time.Duration { return time.Duration(h * float64(time.Hour)) }
