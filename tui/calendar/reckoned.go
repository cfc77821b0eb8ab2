package calendar

import (
	"time"

	"drainboard/model"
	days "drainboard/model/calendar"
)

// sessionNodes bounds the search for the order of moves of the next session, with
// the tanks there are and with one more.
const sessionNodes = 20_000

// reckoned is the calendar as it was last worked out. It stands as long as no
// entry is made and the minute lasts.
type reckoned struct {
	days.Calendar
	err error

	ledger *model.Ledger
	next   int
	minute time.Time
}

// levelled is the proposal for that calendar.
type levelled struct {
	days.Level
	spare    days.Spare
	hasSpare bool
	err      error // of the spare tank
}

// sync works the calendar out where the last one does not stand any more.
func (c *Calendar) sync() {
	d, minute := c.desk, c.desk.Now.Truncate(time.Minute)
	if c.now.ledger == d.Ledger && c.now.next == d.Ledger.Next() && c.now.minute.Equal(minute) {
		return
	}
	c.now = reckoned{ledger: d.Ledger, next: d.Ledger.Next(), minute: minute}
	c.now.Calendar, c.now.err = days.For(d.Ledger, d.Now.Truncate(time.Second), days.DefaultDays)
	c.level = nil
	if c.now.err != nil {
		c.phase = table
	}
	c.chosen = max(0, min(c.chosen, len(c.now.Days)-1))
}

// proposal is the proposal for the calendar, worked out when it is first shown.
func (c *Calendar) proposal() *levelled {
	if c.level == nil {
		p := levelled{Level: c.now.Level(0)}
		p.spare, p.hasSpare, p.err = days.OneMore(c.desk.Ledger, c.now.At, sessionNodes)
		c.level = &p
	}
	return c.level
}
