package water

import (
	"cmp"
	"math"
)

// Cooling is a tank left to come toward the temperature of the room, with
// readings of its own to tell how fast it does. It serves warming alike.
type Cooling struct {
	Start    float64   // temperature at minute 0
	Room     float64   // temperature of the air, taken as steady
	Want     float64   // temperature waited for
	Readings []Reading // of the tank since, at least one
}

// Reading is a temperature some minutes after the start.
type Reading struct{ Minutes, Celsius float64 }

// Wait is how long it takes and how fast it goes.
type Wait struct {
	Minutes     float64 // from minute 0 until Want
	FromLast    float64 // from the last reading until Want; 0 where it has passed it
	PerHour     float64 // degrees Celsius an hour at minute 0: negative cools, positive warms
	PerHourLast float64 // the same at the last reading
	Rate        float64 // k of Newton's law, per minute
}

// Wait applies Newton's law of cooling, T(t) = room + (start - room) e^(-k t).
// k comes from the tank's own readings: exactly from one, and from several by
// least squares on -ln((T - room)/(start - room)) = k t, the start taken as
// true.
//
// Refused: a start at the temperature of the room, a wanted temperature at or
// beyond the room's (it is never reached) or on the far side of the start, no
// reading, and a reading at minute 0 or not between start and room.
func (c Cooling) Wait() (Wait, error) {
	if err := c.check(); err != nil {
		return Wait{}, err
	}
	k := newtonRate(c.Start, c.Room, c.Readings)
	last := c.last()
	w := Wait{
		Minutes:     newtonMinutes(c.Start, c.Room, c.Want, k),
		FromLast:    max(0, newtonMinutes(last.Celsius, c.Room, c.Want, k)),
		PerHour:     -60 * k * (c.Start - c.Room),
		PerHourLast: -60 * k * (last.Celsius - c.Room),
		Rate:        k,
	}
	return w, nil
}

func (c Cooling) last() Reading {
	last := c.Readings[0]
	for _, r := range c.Readings[1:] {
		if r.Minutes >= last.Minutes {
			last = r
		}
	}
	return last
}

func newtonRate(start, room float64, readings []Reading) float64 {
	var ty, tt float64
	for _, r := range readings {
		y := -math.Log((r.Celsius - room) / (start - room))
		ty += r.Minutes * y
		tt += r.Minutes * r.Minutes
	}
	return ty / tt
}

func newtonMinutes(start, room, want, rate float64) float64 {
	if want == start {
		return 0
	}
	return -math.Log((want-room)/(start-room)) / rate
}

func (c Cooling) check() error {
	err := cmp.Or(
		waterTemperature("start", c.Start),
		between("room", c.Room, -50, hottest),
		waterTemperature("want", c.Want),
	)
	if err != nil {
		return err
	}
	if c.Start == c.Room {
		return refuse("start", c.Start, "is the room's own temperature, so waiting changes nothing; blend or heat instead")
	}
	if err := c.checkWant(); err != nil {
		return err
	}
	if len(c.Readings) == 0 {
		return &FieldError{"read", "(none)", "at least one later reading of the tank is needed, as minutes:temperature"}
	}
	for _, r := range c.Readings {
		if err := c.checkReading(r); err != nil {
			return err
		}
	}
	return nil
}

func (c Cooling) checkWant() error {
	switch left := (c.Want - c.Room) / (c.Start - c.Room); {
	case left <= 0:
		return refuse("want", c.Want, "is never reached by waiting: must lie between the start of "+
			plain(c.Start)+" and the room's "+plain(c.Room))
	case left > 1:
		return refuse("want", c.Want, "lies behind: the tank goes from "+plain(c.Start)+" toward the room's "+plain(c.Room))
	}
	return nil
}

func (c Cooling) checkReading(r Reading) error {
	given := plain(r.Minutes) + ":" + plain(r.Celsius)
	if !(r.Minutes > 0 && r.Minutes <= mostHours*60) {
		return &FieldError{"read", given, "the minutes must be more than 0, counted from the start"}
	}
	if left := (r.Celsius - c.Room) / (c.Start - c.Room); !(left > 0 && left < 1) {
		return &FieldError{"read", given, "the temperature must lie between the start of " +
			plain(c.Start) + " and the room's " + plain(c.Room)}
	}
	return nil
}

// RoomFrom tells the temperature a tank is heading for from three readings at
// equal steps of time, where nobody measured the room:
// (T0 T2 - T1^2) / (T0 + T2 - 2 T1). The three must close in on it, each step
// smaller than the one before.
func RoomFrom(first, second, third float64) (float64, error) {
	err := cmp.Or(
		waterTemperature("first", first),
		waterTemperature("second", second),
		waterTemperature("third", third),
	)
	if err != nil {
		return 0, err
	}
	one, two := second-first, third-second
	if one == 0 || !(two/one > 0 && two/one < 1) {
		return 0, refuse("third", third, "the three must go one way, the second step smaller than the first")
	}
	return first + one/(1-two/one), nil
}
