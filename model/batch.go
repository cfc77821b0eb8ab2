package model

import (
	"time"

	"drainboard/model/count"
)

// Batch is one hatch and all that was written of it.
type Batch struct {
	Name    string
	Hatched Hatched
	Origin  string

	Stocked []Stocking
	Samples []*Sample
	Looks   []LookAt
	Counts  []CountAt
	Moves   []MoveAt
	Losses  []Loss
	Feeds   []FeedAt
	// Kept is the share left after larvae were taken out on purpose; Settled are
	// those that left the room alive.
	Kept    float64
	Settled count.Estimate
	// Heat are the temperatures of tanks that held the batch, oldest first.
	Heat []TankReading
}

// Stocking is larvae of the batch put into a tank.
type Stocking struct {
	At     time.Time
	N      int
	Tank   string
	Larvae *float64
}

// LookAt is one look at larvae of the batch.
type LookAt struct {
	At   time.Time
	N    int
	Look *Look
}

// CountAt is one count of larvae of the batch.
type CountAt struct {
	At     time.Time
	N      int
	Count  *Count
	Before count.Estimate // what was thought to be in the tank
	After  count.Estimate
}

// MoveAt is one move of larvae of the batch.
type MoveAt struct {
	At   time.Time
	N    int
	Move *Moved
}

// FeedAt is one feed of larvae of the batch.
type FeedAt struct {
	At  time.Time
	N   int
	Fed *Fed
}

// TankReading is a temperature of one tank.
type TankReading struct {
	Reading
	Tank string
}

// Loss is larvae of the batch that left the room or a tank on purpose or not.
type Loss struct {
	At     time.Time
	N      int
	Tank   string
	Why    string
	Larvae *float64 // nil where not known
	Ended  bool     // the whole tank
}

// AgeDays counts whole days by the calendar of zone loc; the hatch date is
// day 0.
func (b *Batch) AgeDays(now time.Time, loc *time.Location) int {
	return DayOf(now, loc).Sub(b.Hatched.Day(loc))
}
