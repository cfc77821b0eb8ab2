package model

import "drainboard/model/count"

// estimateOf takes a number as it was written, without limits.
func estimateOf(larvae *float64) count.Estimate {
	if larvae == nil {
		return count.Estimate{}
	}
	return count.About(*larvae)
}

// counted is what a count says of the whole tank.
func counted(x *Count) count.Estimate {
	total, err := count.Total(x.Sample())
	if err != nil {
		return count.Estimate{} // the field ranges leave no such count
	}
	return total.Total
}

// scaled is the share of an estimate that goes another way.
func scaled(e count.Estimate, share float64) count.Estimate {
	part, err := e.Scale(max(0, share))
	if err != nil {
		return count.Estimate{}
	}
	return part
}

// share leaves a part of the larvae where another part goes elsewhere.
func (l *Larvae) share(part float64) {
	l.Number = scaled(l.Number, part)
	l.Kept *= part
}

// compare holds a new count against the one before it.
func (l *Larvae) compare(x *Count) {
	l.Fell = nil
	total, err := count.Total(x.Sample())
	if err != nil {
		return
	}
	if l.Tally != nil && !total.Mixing.Uneven {
		change, err := count.Compare(*l.Tally, total.Tally, l.Kept)
		if err == nil && change.Fell {
			l.Fell = &change
		}
	}
	l.Tally, l.Kept = &total.Tally, 1
}

// standing adds up what is thought to be alive of a batch in all its tanks;
// unknown as soon as one tank is.
func (f *fold) standing(batch string) count.Estimate {
	sum := count.Exactly(0)
	for i := range f.tanks {
		if l := f.tanks[i].Larvae; l != nil && l.Batch == batch {
			sum = sum.Plus(l.Number)
		}
	}
	return sum
}

// take notes that larvae were taken out of a batch on purpose, so that they
// count neither as dead nor as alive.
func (f *fold) take(b *Batch, larvae float64) {
	kept, err := count.Kept(f.standing(b.Name), larvae)
	if err == nil && kept.Known {
		b.Kept *= kept.X
	}
}
