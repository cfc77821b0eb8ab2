package model

import "drainboard/model/count"

// put folds in an entry that allows has let pass.
func (f *fold) put(e Entry) {
	switch x := e.Fact.(type) {
	case *Stocked:
		f.putStocked(e, x)
	case *Moved:
		f.putMoved(e, x)
	case *Washed:
		t := f.tank(x.Tank)
		t.become(WashedDown, e.At)
		t.freshWater()
		t.Suspect, t.SuspectWhy = false, ""
	case *Filled:
		f.putFilled(e, x)
	case *Temperature:
		f.putTemperature(e, x.Tank, x.Supply, x.Celsius)
	case *Sizes:
		f.putSizes(e, x)
	case *Look:
		f.putLook(e, x)
	case *Count:
		f.putCount(e, x)
	case *Cells:
		f.putCells(e, x)
	case *Fed:
		l := f.tank(x.Tank).Larvae
		l.Fed = e.At
		b := f.batch(l.Batch)
		b.Feeds = append(b.Feeds, FeedAt{e.At, e.N, x})
	case *Water:
		f.putWater(e, x)
	case *Removed:
		f.putRemoved(e, x)
	case *Ended:
		f.putEnded(e, x)
	case *Service:
		f.putService(e, x)
	case *Suspect:
		t := f.tank(x.Tank)
		t.Suspect, t.SuspectWhy = x.On, ""
		if x.On {
			t.SuspectWhy = x.Why
		}
	case *Opened:
		f.sessions = append(f.sessions, &SessionNow{
			N: e.N, Opened: e.At, Last: e.At, By: e.By, Legs: x.Moves, Moved: make([]int, len(x.Moves)),
		})
	case *StepDone:
		f.putStep(e, x)
	case *Noted:
		f.putNoted(e, x)
	case *Closed:
		f.openSession().Closed = &ClosedAt{e.At, e.N, x}
	}
	if s := f.openSession(); s != nil && !e.At.Before(s.Last) {
		s.Last = e.At
		if e.By != "" {
			s.By = e.By
		}
	}
}

func (f *fold) putStocked(e Entry, x *Stocked) {
	b := f.batch(x.Batch)
	if b == nil {
		b = &Batch{Name: x.Batch, Hatched: x.Hatched, Origin: x.Origin, Kept: 1, Settled: count.Exactly(0)}
		f.batches = append(f.batches, b)
	}
	if b.Origin == "" {
		b.Origin = x.Origin
	}
	b.Stocked = append(b.Stocked, Stocking{e.At, e.N, x.Tank, x.Larvae})
	t := f.tank(x.Tank)
	t.become(Holding, e.At)
	t.Larvae = &Larvae{Batch: x.Batch, Here: e.At, Stocked: e.At, Number: estimateOf(x.Larvae)}
}

func (f *fold) putMoved(e Entry, x *Moved) {
	from, to := f.tank(x.From), f.tank(x.To)
	b := f.batch(from.Larvae.Batch)
	b.Moves = append(b.Moves, MoveAt{e.At, e.N, x})
	if x.FromCelsius != nil {
		f.putTemperature(e, x.From, "", *x.FromCelsius)
	}
	if x.ToCelsius != nil {
		f.putTemperature(e, x.To, "", *x.ToCelsius)
	}
	share := 1.0
	if x.Share != nil {
		share = *x.Share
	}
	coming := *from.Larvae
	coming.share(share)
	coming.Here = e.At
	if to.State == Holding {
		to.Larvae = joined(to.Larvae, &coming)
	} else {
		to.become(Holding, e.At)
		to.Larvae = &coming
	}
	// What is wrong with larvae goes with them.
	if from.Suspect {
		to.Suspect, to.SuspectWhy = true, from.SuspectWhy
	}
	if x.All() {
		from.empty(e)
	} else {
		from.Larvae.share(1 - share)
	}
	f.tickMove(e, x)
}

// empty leaves a tank dirty, its water and larvae gone.
func (t *TankNow) empty(e Entry) {
	t.become(Dirty, e.At)
	t.Emptied = e.At
	t.freshWater()
	t.Larvae = nil
}

// tickMove notes the agreed move of the open session that this one does.
func (f *fold) tickMove(e Entry, x *Moved) {
	s := f.openSession()
	if s == nil {
		return
	}
	if i := s.legOf(x); i >= 0 {
		s.Moved[i] = e.N
	}
}

// joined are the larvae of one batch put together: the numbers add up, the
// story is that of those already in the tank.
func joined(here, coming *Larvae) *Larvae {
	both := *here
	both.Number = here.Number.Plus(coming.Number)
	both.Tally, both.Fell = nil, nil
	if coming.CountedAt.Before(both.CountedAt) {
		both.CountedAt, both.CountN = coming.CountedAt, coming.CountN
	}
	if coming.Stocked.Before(both.Stocked) {
		both.Stocked = coming.Stocked
	}
	if both.Sample == nil {
		both.Sample, both.Before = coming.Sample, coming.Before
	}
	if both.Look == nil {
		both.Look, both.Looked = coming.Look, coming.Looked
	}
	return &both
}

func (f *fold) putFilled(e Entry, x *Filled) {
	t := f.tank(x.Tank)
	t.become(Ready, e.At)
	t.freshWater()
	if x.Celsius != nil {
		t.read(e.At, *x.Celsius, e.N)
	}
}

func (f *fold) putTemperature(e Entry, tank, supply string, celsius float64) {
	if supply != "" {
		s := f.supplies[supply]
		s.Celsius = append(s.Celsius, Reading{e.At, celsius, e.N})
		return
	}
	t := f.tank(tank)
	t.read(e.At, celsius, e.N)
	if t.Larvae != nil {
		b := f.batch(t.Larvae.Batch)
		b.Heat = append(b.Heat, TankReading{Reading{e.At, celsius, e.N}, t.Tank.Name})
	}
}

func (f *fold) putSizes(e Entry, x *Sizes) {
	l := f.tank(x.Tank).Larvae
	l.Looked = e.At
	one := len(x.UM) == 1
	if s := l.Sample; s != nil && one && s.OneByOne && s.Tank == x.Tank && e.At.Sub(s.Last) <= SittingGap {
		s.UM = append(s.UM, x.UM[0])
		s.N = append(s.N, e.N)
		s.Last = e.At
		return
	}
	l.Before = l.Sample
	l.Sample = &Sample{At: e.At, Last: e.At, Tank: x.Tank, UM: append([]float64(nil), x.UM...), N: []int{e.N}, OneByOne: one}
	b := f.batch(l.Batch)
	b.Samples = append(b.Samples, l.Sample)
}

func (f *fold) putLook(e Entry, x *Look) {
	l := f.tank(x.Tank).Larvae
	l.Looked, l.Seen, l.Look = e.At, e.At, x
	b := f.batch(l.Batch)
	b.Looks = append(b.Looks, LookAt{e.At, e.N, x})
}

func (f *fold) putCount(e Entry, x *Count) {
	l := f.tank(x.Tank).Larvae
	before := l.Number
	l.Number = counted(x)
	l.compare(x)
	l.CountedAt, l.CountN = e.At, e.N
	b := f.batch(l.Batch)
	b.Counts = append(b.Counts, CountAt{e.At, e.N, x, before, l.Number})
}

func (f *fold) putCells(e Entry, x *Cells) {
	c := &CellCount{e.At, e.N, x}
	if x.Tank != "" {
		f.tank(x.Tank).Left = c
		return
	}
	f.cultures[x.Algae] = c
}

func (f *fold) putWater(e Entry, x *Water) {
	test := WaterTest{e.At, e.N, x}
	if x.Supply != "" {
		s := f.supplies[x.Supply]
		s.Tests = append(s.Tests, test)
		return
	}
	t := f.tank(x.Tank)
	t.Tests = append(t.Tests, test)
}

func (f *fold) putRemoved(e Entry, x *Removed) {
	l := f.tank(x.Tank).Larvae
	b := f.batch(l.Batch)
	f.take(b, x.Larvae)
	if kept, err := count.Kept(l.Number, x.Larvae); err == nil && kept.Known {
		l.Kept *= kept.X
	}
	l.Number = l.Number.Minus(count.Exactly(x.Larvae))
	b.Losses = append(b.Losses, Loss{e.At, e.N, x.Tank, x.Why, &x.Larvae, false})
}

func (f *fold) putEnded(e Entry, x *Ended) {
	t := f.tank(x.Tank)
	larvae := x.Larvae
	if n := t.Larvae.Number.Value; larvae == nil && n.Known {
		larvae = &n.X
	}
	b := f.batch(t.Larvae.Batch)
	switch {
	case larvae == nil:
	case x.Why == Discarded:
		f.take(b, *larvae)
	case x.Why == Settled:
		b.Settled = b.Settled.Plus(count.About(*larvae))
	}
	b.Losses = append(b.Losses, Loss{e.At, e.N, x.Tank, x.Why, larvae, true})
	t.empty(e)
}

func (f *fold) putService(e Entry, x *Service) {
	t := f.tank(x.Tank)
	if x.Out {
		t.become(Out, e.At)
	} else {
		t.become(Dirty, e.At)
		t.Emptied = e.At
	}
	t.freshWater()
}

func (f *fold) putStep(e Entry, x *StepDone) {
	s := f.openSession()
	at, _ := s.firstOpen(f.room.Procedure)
	s.Steps = append(s.Steps, StepRecord{e.At, e.N, e.By, x, at.Stage})
}
