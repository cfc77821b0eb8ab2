package scope

import (
	"time"

	"drainboard/model"
	"drainboard/model/growth"
)

// figures is what the lengths of a sitting add up to.
type figures struct {
	made   int // number of the next entry when they were made
	sample *model.Sample
	sum    growth.Sample
	err    error // why there is nothing to sum up

	before    *model.Sample // the lengths of an earlier sitting, nil where there are none
	beforeSum growth.Sample
	change    growth.Change
	changeErr error

	age       int
	ageMeshes []float64
	advice    growth.Advice
	adviceErr error
	band      growth.Band // the house corridor at this age
	place     growth.Position
}

// sumUp makes the figures of the last sample.
func (s *Scope) sumUp() {
	l := s.desk.Ledger
	f := figures{made: l.Next(), sample: s.last(), err: growth.ErrNoReadings}
	if f.sample != nil {
		f.sum, f.err = growth.Summarize(f.sample.UM)
	}
	if f.err == nil {
		t, _ := s.now()
		f.age, _ = l.Age(t, f.sample.At)
		f.compare(l, t)
		f.sieve(l.Room().House)
		f.band, _ = l.Corridor().At(f.ageDays(l, t))
		f.place = l.Corridor().Place(f.ageDays(l, t), f.sum.Mean)
	}
	s.figures = f
}

func (f *figures) ageDays(l *model.Ledger, t model.TankNow) float64 { return age(l, t, f.sample.At) }

// age is the age in days of a tank's larvae at a moment.
func age(l *model.Ledger, t model.TankNow, at time.Time) float64 {
	b := l.Batch(t.Larvae.Batch)
	return at.Sub(b.Hatched.Instant(l.Room().Zone)).Hours() / 24
}

// compare holds the sample against the one of an earlier sitting.
func (f *figures) compare(l *model.Ledger, t model.TankNow) {
	f.before = earlier(l, t, f.sample)
	if f.before == nil {
		return
	}
	f.beforeSum, f.changeErr = growth.Summarize(f.before.UM)
	if f.changeErr == nil {
		f.change, f.changeErr = growth.Compare(f.beforeSum.Look(age(l, t, f.before.At)), f.sum.Look(f.ageDays(l, t)))
	}
}

// earlier is the last sample of the same larvae before the sitting of a sample.
// Where one sitting made two samples (a pasted column and single readings), the
// last one of the batch in this tank is taken.
func earlier(l *model.Ledger, t model.TankNow, sample *model.Sample) *model.Sample {
	before := t.Larvae.Before
	if sample == nil || sample != t.Larvae.Sample {
		before = t.Larvae.Sample
	}
	if before == nil || sample == nil || sample.At.Sub(before.Last) > model.SittingGap {
		return before
	}
	all := l.Batch(t.Larvae.Batch).Samples
	for i := len(all) - 1; i >= 0; i-- {
		if all[i].Tank == sample.Tank && sample.At.Sub(all[i].Last) > model.SittingGap {
			return all[i]
		}
	}
	return nil
}

// sieve asks what each sieve of the room would hold.
func (f *figures) sieve(house model.House) {
	f.ageMeshes = house.MeshAt(f.age)
	f.advice, f.adviceErr = growth.Advise(f.sample.UM, house.Sieves(), f.ageMeshes, house.Growth.SieveFactor, house.Growth.CullPercent/100)
}
