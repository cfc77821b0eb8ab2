package model

import (
	"fmt"

	"drainboard/model/count"
	"drainboard/model/growth"
)

// BatchTanks lists the tanks that hold a batch, in the order of room.toml.
func (l *Ledger) BatchTanks(b *Batch) []TankNow {
	var tanks []TankNow
	for _, t := range l.fold.tanks {
		if t.Larvae != nil && t.Larvae.Batch == b.Name {
			tanks = append(tanks, t)
		}
	}
	return tanks
}

// Here reports whether any tank still holds larvae of the batch.
func (l *Ledger) Here(b *Batch) bool { return len(l.BatchTanks(b)) > 0 }

// Standing returns the larvae of a batch thought to be alive in the room;
// unknown as soon as the number in one of its tanks is.
func (l *Ledger) Standing(b *Batch) count.Estimate { return l.fold.standing(b.Name) }

// Survival returns the share of the stocked larvae that is alive, settled ones
// among them. What was taken out on purpose counts neither as dead nor as alive.
// It is unknown where a stocking or a tank was never counted.
func (l *Ledger) Survival(b *Batch) (count.Survival, error) {
	start := count.Exactly(0)
	for _, s := range b.Stocked {
		start = start.Plus(estimateOf(s.Larvae))
	}
	if b.Kept <= 0 {
		return count.Survival{}, fmt.Errorf("all larvae of batch %s were taken out on purpose", b.Name)
	}
	return count.Surviving(l.Standing(b).Plus(b.Settled), start, b.Kept)
}

// Growth lays a line and an exponential through a batch's lengths by age.
func (l *Ledger) Growth(b *Batch) (growth.Growth, error) {
	looks, err := l.SampleLooks(b)
	if err != nil {
		return growth.Growth{}, err
	}
	return growth.Grow(looks)
}

// Ready says at which age a batch reaches the length the house calls ready.
func (l *Ledger) Ready(b *Batch) (growth.Ready, error) {
	g, err := l.Growth(b)
	if err != nil {
		return growth.Ready{}, err
	}
	return g.Best().Ready(l.room.House.Growth.ReadyUM)
}

// DayAtAge returns the day on which a batch is so many days old.
func (l *Ledger) DayAtAge(b *Batch, ageDays float64) Day {
	born := b.Hatched.Instant(l.room.Zone)
	return DayOf(born.Add(hours(24*ageDays)), l.room.Zone)
}
