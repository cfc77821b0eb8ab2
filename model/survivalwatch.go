package model

import (
	"cmp"
	"math"
	"slices"
	"time"

	"drainboard/model/count"
)

// survivalEvent is one of a batch's stockings, moves, counts and losses.
type survivalEvent struct {
	at   time.Time
	n    int
	fact any // Stocking, MoveAt, CountAt or Loss
}

// survivalEvents are in the order in which things happened; those of one moment
// as they were keyed.
func (b *Batch) survivalEvents() []survivalEvent {
	var all []survivalEvent
	for _, x := range b.Stocked {
		all = append(all, survivalEvent{x.At, x.N, x})
	}
	for _, x := range b.Moves {
		all = append(all, survivalEvent{x.At, x.N, x})
	}
	for _, x := range b.Counts {
		all = append(all, survivalEvent{x.At, x.N, x})
	}
	for _, x := range b.Losses {
		all = append(all, survivalEvent{x.At, x.N, x})
	}
	slices.SortFunc(all, func(x, y survivalEvent) int { return cmp.Or(x.at.Compare(y.at), cmp.Compare(x.n, y.n)) })
	return all
}

// survivalWatch follows the larvae of one batch.
type survivalWatch struct {
	series  SurvivalSeries
	born    time.Time
	sources []heldSource
	tanks   map[string]held // by name; those that hold larvae of the batch
	settled []held
	kept    float64 // share left after what was taken out on purpose

	start   count.Estimate
	unsaid  bool // a stocking had no number
	started bool // with unsaid: start is that of a count
}

func (w *survivalWatch) step(e survivalEvent) {
	s := SurvivalStep{At: e.at, N: e.n, AgeDays: e.at.Sub(w.born).Hours() / 24}
	switch x := e.fact.(type) {
	case Stocking:
		w.stocked(&s, x)
	case MoveAt:
		w.moved(&s, x)
	case CountAt:
		w.counted(&s, x)
	case Loss:
		w.lost(&s, x)
	}
	w.judge(&s)
	w.series.Steps = append(w.series.Steps, s)
}

// all are the tanks that hold larvae of the batch, by name.
func (w *survivalWatch) all() []held {
	names := make([]string, 0, len(w.tanks))
	for name := range w.tanks {
		names = append(names, name)
	}
	slices.Sort(names)
	tanks := make([]held, len(names))
	for i, name := range names {
		tanks[i] = w.tanks[name]
	}
	return tanks
}

// judge adds what is alive after the step.
func (w *survivalWatch) judge(s *SurvivalStep) {
	tanks := w.all()
	s.Total = w.total(tanks...)
	alive, _ := w.numberOf(append(tanks, w.settled...)...)
	_, s.Told = w.numberOf(tanks...)
	if w.unsaid && !w.started && s.Total.Value.Known {
		now, _ := w.numberOf(tanks...)
		w.begin(s, now)
		return
	}
	if w.kept <= 0 || w.unsaid && !w.started {
		return
	}
	// The share kept lies between 0 and 1, so nothing is refused.
	s.Alive, _ = count.Surviving(alive, w.start, w.kept)
}

// begin makes what is in the room now the start, where the stocking had no number.
// Until the next count its limits enter Alive twice, which is the careful side.
func (w *survivalWatch) begin(s *SurvivalStep, now count.Estimate) {
	if now.Value.X <= 0 {
		return
	}
	w.started, w.start, w.kept, w.settled = true, now, 1, nil
	w.series.StartAt, w.series.FromCount = s.At, true
	s.Alive = count.Survival{Share: count.Exactly(1)}
}

func (w *survivalWatch) stocked(s *SurvivalStep, x Stocking) {
	s.What, s.Tank, s.Larvae = KindStocked, x.Tank, estimateOf(x.Larvae)
	h := w.from(s.Larvae, true)
	h.since, h.kept = x.At, 1
	w.tanks[x.Tank] = h
	switch {
	case x.Larvae == nil:
		w.unsaid, w.started, w.start = true, false, count.Estimate{}
		w.series.StartAt, w.series.FromCount = time.Time{}, true
	case w.start.Value.Known:
		w.start = w.start.Plus(count.Exactly(*x.Larvae))
		if w.series.StartAt.IsZero() {
			w.series.StartAt = x.At
		}
	}
}

func (w *survivalWatch) moved(s *SurvivalStep, x MoveAt) {
	from, share := w.tanks[x.Move.From], 1.0
	if x.Move.Share != nil {
		share = *x.Move.Share
	}
	from.addMove(x)
	coming := from.share(share)
	s.What, s.Tank, s.Move, s.Larvae = KindMoved, x.Move.From, x.Move, w.total(coming)
	if x.Move.All() {
		delete(w.tanks, x.Move.From)
	} else {
		w.tanks[x.Move.From] = from.share(1 - share)
	}
	if here, ok := w.tanks[x.Move.To]; ok {
		coming = here.join(coming)
	}
	w.tanks[x.Move.To] = coming
}

func (w *survivalWatch) counted(s *SurvivalStep, x CountAt) {
	before := w.tanks[x.Count.Tank]
	s.What, s.Tank, s.Larvae = KindCount, x.Count.Tank, x.After
	c := &CountStep{Since: before.since, Counted: before.counted, Moves: before.moves}
	c.Days = x.At.Sub(before.since).Hours() / 24
	c.Expected = w.total(before)
	_, c.Told = w.numberOf(before)
	c.Above = c.Expected.Value.Known && x.After.Value.X > c.Expected.Value.X
	c.Fewer = c.Expected.Minus(x.After)
	after := w.from(x.After, false)
	after.since, after.counted, after.kept = x.At, true, 1
	after.tally = c.compare(before, x.Count)
	if expected, _ := w.numberOf(before); c.Days >= leastRateDays {
		c.KeptADay = aDay(x.After.Over(expected), c.Days)
	}
	s.Count = c
	w.tanks[x.Count.Tank] = after
}

// compare tests the count against the one before and returns its own tally.
func (c *CountStep) compare(before held, x *Count) *count.Tally {
	total, err := count.Total(x.Sample())
	if err != nil {
		c.Untested = err.Error() // the field ranges leave no such count
		return nil
	}
	switch {
	case before.joined && before.tally == nil:
		c.Untested = "tanks were put together since the counts before"
	case before.tally == nil:
		c.Untested = "there is no count before it"
	case total.Mixing.Uneven:
		c.Untested = "its subsamples are uneven: mix and count again"
	default:
		if change, err := count.Compare(*before.tally, total.Tally, before.kept); err == nil {
			c.Change = &change
		} else {
			c.Untested = err.Error()
		}
	}
	return &total.Tally
}

func (w *survivalWatch) lost(s *SurvivalStep, x Loss) {
	s.What, s.Tank, s.Why, s.Larvae = KindRemoved, x.Tank, x.Why, estimateOf(x.Larvae)
	h := w.tanks[x.Tank]
	s.Before = w.total(h)
	if !x.Ended {
		w.take(*x.Larvae)
		if kept, err := count.Kept(w.total(h), *x.Larvae); err == nil && kept.Known {
			h.kept *= kept.X
		}
		w.tanks[x.Tank] = w.remove(h, *x.Larvae)
		return
	}
	s.What = KindEnded
	switch {
	case x.Larvae == nil:
	case x.Why == Discarded:
		w.take(*x.Larvae)
	case x.Why == Settled:
		w.settle(s, h, *x.Larvae)
	}
	delete(w.tanks, x.Tank)
}

// settle keeps settled larvae among the living, with the limits of their count
// where no other number was told.
func (w *survivalWatch) settle(s *SurvivalStep, h held, larvae float64) {
	if number := w.total(h); number.Value.Known && math.Abs(number.Value.X-larvae) < 0.5 {
		s.Larvae = number
		w.settled = append(w.settled, h)
		return
	}
	w.settled = append(w.settled, w.from(count.About(larvae), true))
}

// take notes that larvae were taken out on purpose, so that they count neither
// as dead nor as alive.
func (w *survivalWatch) take(larvae float64) {
	if kept, err := count.Kept(w.total(w.all()...), larvae); err == nil && kept.Known {
		w.kept *= kept.X
	}
}
