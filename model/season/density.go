package season

import (
	"maps"
	"slices"
	"time"

	"drainboard/model"
	"drainboard/model/count"
)

// density is the batch's mean number of larvae per litre, each tank by the time it
// held them, up to the last entry that speaks of them. Between two entries the
// number is taken to stay; time with an unknown number is left out. N is the
// number of stockings and counts that gave one.
func density(room *model.Room, b *model.Batch) Measure {
	c := crowd{room: room, tanks: map[string]crowded{}}
	for _, h := range story(b) {
		c.step(h)
	}
	switch {
	case c.hours > 0:
		return Measure{count.Known(c.sum / c.hours), c.n}
	case c.n > 0:
		return c.justNow()
	}
	return Measure{}
}

// crowd follows the larvae of one batch through tanks.
type crowd struct {
	room  *model.Room
	tanks map[string]crowded
	sum   float64 // larvae per litre times hours
	hours float64
	n     int
}

// crowded is larvae in one tank from a moment on.
type crowded struct {
	larvae count.Figure
	since  time.Time
}

func (c *crowd) step(h happened) {
	for _, name := range c.names() {
		c.spent(name, c.tanks[name], h.at)
	}
	switch x := h.fact.(type) {
	case model.Stocking:
		c.put(x.Tank, numberOf(x.Larvae), x.At)
	case model.CountAt:
		c.put(x.Count.Tank, x.After.Value, x.At)
	case model.MoveAt:
		c.move(x)
	case model.Loss:
		c.lose(x)
	}
}

// names are the tanks in an order, so that the sum is always the same.
func (c *crowd) names() []string { return slices.Sorted(maps.Keys(c.tanks)) }

// spent adds the time a tank held its larvae up to a moment.
func (c *crowd) spent(name string, t crowded, at time.Time) {
	if hours := at.Sub(t.since).Hours(); t.larvae.Known {
		c.sum += c.perLitre(name, t) * hours
		c.hours += hours
	}
	c.tanks[name] = crowded{t.larvae, at}
}

func (c *crowd) perLitre(name string, t crowded) float64 {
	i, _ := c.room.Tank(name)
	return t.larvae.X / c.room.Tanks[i].Litres
}

// put notes a number that was told or counted.
func (c *crowd) put(tank string, larvae count.Figure, at time.Time) {
	if larvae.Known {
		c.n++
	}
	c.tanks[tank] = crowded{larvae, at}
}

func (c *crowd) move(x model.MoveAt) {
	from, share := c.tanks[x.Move.From].larvae, 1.0
	if x.Move.Share != nil {
		share = *x.Move.Share
	}
	coming := count.Figure{X: from.X * share, Known: from.Known}
	if x.Move.All() {
		delete(c.tanks, x.Move.From)
	} else {
		c.tanks[x.Move.From] = crowded{count.Figure{X: from.X * (1 - share), Known: from.Known}, x.At}
	}
	if here, holds := c.tanks[x.Move.To]; holds {
		coming = count.Figure{X: coming.X + here.larvae.X, Known: coming.Known && here.larvae.Known}
	}
	c.tanks[x.Move.To] = crowded{coming, x.At}
}

func (c *crowd) lose(x model.Loss) {
	if x.Ended {
		delete(c.tanks, x.Tank)
		return
	}
	t := c.tanks[x.Tank]
	t.larvae.X = max(0, t.larvae.X-*x.Larvae)
	c.tanks[x.Tank] = t
}

// justNow is the mean of the tanks where no time has passed yet.
func (c *crowd) justNow() Measure {
	var each []float64
	for _, name := range c.names() {
		if t := c.tanks[name]; t.larvae.Known {
			each = append(each, c.perLitre(name, t))
		}
	}
	return Measure{mean(each).Figure, c.n}
}

func numberOf(larvae *float64) count.Figure {
	if larvae == nil {
		return count.Figure{}
	}
	return count.Known(*larvae)
}
