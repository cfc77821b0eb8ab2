package paper

import (
	"time"

	"drainboard/model"
)

// life is what a second fold tells of a batch that the ledger does not keep.
type life struct {
	batch *model.Batch
	zone  *time.Location
	story []Event
	stays map[string][]stay // by tank
}

// stay is a time in which a tank held the batch; until is zero while it does.
type stay struct{ from, until time.Time }

func liveOf(l *model.Ledger, b *model.Batch) (*life, error) {
	f := &life{batch: b, zone: l.Room().Zone, stays: map[string][]stay{}}
	concerns := false
	err := replay(l, onlyWhere,
		func(then *model.Ledger, e model.Entry) { concerns = f.concerns(then, e.Fact) },
		func(_ *model.Ledger, e model.Entry) {
			if concerns {
				f.note(e)
			}
		})
	return f, err
}

// concerns reports whether an entry is of the batch: it names it, or a tank that
// holds it.
func (f *life) concerns(then *model.Ledger, fact model.Fact) bool {
	if x, ok := fact.(*model.Stocked); ok {
		return x.Batch == f.batch.Name
	}
	if x, ok := fact.(*model.Moved); ok {
		return f.holds(then, x.From)
	}
	return f.holds(then, tankOf(fact))
}

func (f *life) holds(then *model.Ledger, tank string) bool {
	t, ok := then.Tank(tank)
	return ok && t.Larvae != nil && t.Larvae.Batch == f.batch.Name
}

// note takes in what came of an entry of the batch.
func (f *life) note(e model.Entry) {
	if told(e.Fact) {
		f.story = append(f.story, Event{e.N, e.At.In(f.zone), f.batch.AgeDays(e.At, f.zone), e.By, e.Fact})
	}
	switch x := e.Fact.(type) {
	case *model.Stocked:
		f.come(x.Tank, e.At)
	case *model.Moved:
		f.come(x.To, e.At)
		if x.All() {
			f.gone(x.From, e.At)
		}
	case *model.Ended:
		f.gone(x.Tank, e.At)
	}
}

// told names what belongs in the story; plain moves and counts have tables of
// their own.
func told(fact model.Fact) bool {
	switch x := fact.(type) {
	case *model.Moved:
		return !x.All() || x.Join
	case *model.Count:
		return false
	}
	return true
}

func (f *life) come(tank string, at time.Time) {
	stays := f.stays[tank]
	if n := len(stays); n > 0 && stays[n-1].until.IsZero() {
		return // joined
	}
	f.stays[tank] = append(stays, stay{from: at})
}

func (f *life) gone(tank string, at time.Time) {
	if stays := f.stays[tank]; len(stays) > 0 {
		stays[len(stays)-1].until = at
	}
}

// held reports whether a tank held the batch at a moment.
func (f *life) held(tank string, at time.Time) bool {
	for _, s := range f.stays[tank] {
		if !at.Before(s.from) && (s.until.IsZero() || !at.After(s.until)) {
			return true
		}
	}
	return false
}

// own are the entries of the batch that count, by n.
func (f *life) own(b *model.Batch) map[int]bool {
	own := map[int]bool{}
	for _, e := range f.story {
		own[e.N] = true
	}
	for _, s := range b.Stocked {
		own[s.N] = true
	}
	for _, s := range b.Samples {
		for _, n := range s.N {
			own[n] = true
		}
	}
	for _, x := range b.Looks {
		own[x.N] = true
	}
	for _, x := range b.Counts {
		own[x.N] = true
	}
	for _, x := range b.Moves {
		own[x.N] = true
	}
	for _, x := range b.Losses {
		own[x.N] = true
	}
	for _, x := range b.Feeds {
		own[x.N] = true
	}
	for _, x := range b.Heat {
		own[x.N] = true
	}
	return own
}

// tankOf is the one tank a fact names; empty where it names none or two.
func tankOf(fact model.Fact) string {
	for _, field := range fact.Fields() {
		if field.Name == "tank" && field.Type == model.TankName {
			v, _ := field.Value()
			name, _ := v.(string)
			return name
		}
	}
	return ""
}
