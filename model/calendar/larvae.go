package calendar

import (
	"time"

	"drainboard/model"
)

// larvae are what one tank holds today, followed through its changes to come.
type larvae struct {
	tank   string
	batch  string
	litres float64
	job    job
	born   model.Day // hatch day of the batch
	due    time.Time // of the first change; may be past
	late   time.Time // due and grace
	last   int       // place of the last day they are reckoned with
}

// change is a rule by which water is changed: so long after the last time, and at
// most so much earlier.
type change struct{ every, early time.Duration }

// changeBy is the rule of a house. A change is never put ahead by more than half
// of the time between two, so that two of a tank stay apart.
func changeBy(h model.House) change {
	every := hours(h.ChangeHours)
	return change{every, min(hours(h.EarlyHours), every/2)}
}

// follow lists the moments at which larvae are changed: at due, or now where that
// has passed, and then every so often by elapsed time, to the last of their days.
func (c change) follow(h horizon, due time.Time, last int) []time.Time {
	var times []time.Time
	last = min(last, h.days()-1)
	for t := laterOf(due, h.now); h.day(t) <= last; t = t.Add(c.every) {
		times = append(times, t)
	}
	return times
}
