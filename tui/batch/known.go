package batch

import (
	"slices"

	"drainboard/model"
	"drainboard/model/growth"
)

// known is what was worked out of the ledger. It is forgotten when an entry was
// made.
type known struct {
	ledger  *model.Ledger
	next    int            // number of the next entry when it was worked out
	order   []*model.Batch // those in the room first, then the ended ones, the latest first
	here    int            // so many of order are in the room
	figures map[string]*figures
}

// figures are those of one batch.
type figures struct {
	looks    []growth.Look // one a day
	looksErr error
	growth   growth.Growth
	growErr  error // looks of one day or none
	ready    growth.Ready
	readyErr error // looks of two days

	series *model.SurvivalSeries // nil until it is asked for
}

// fresh forgets what was worked out before the latest entry.
func (s *Batch) fresh() *known {
	l := s.desk.Ledger
	if s.known.ledger == l && s.known.next == l.Next() {
		return &s.known
	}
	s.known = known{ledger: l, next: l.Next(), figures: map[string]*figures{}}
	var ended []*model.Batch
	for _, b := range l.Batches() {
		if l.Here(b) {
			s.known.order = append(s.known.order, b)
		} else {
			ended = append(ended, b)
		}
	}
	s.known.here = len(s.known.order)
	slices.Reverse(ended)
	s.known.order = append(s.known.order, ended...)
	return &s.known
}

func (s *Batch) order() []*model.Batch { return s.fresh().order }

// place is where the batch stands in the order, -1 where it is not known.
func (s *Batch) place() int {
	return slices.IndexFunc(s.order(), func(b *model.Batch) bool { return b.Name == s.name })
}

// of returns the figures of a batch.
func (s *Batch) of(b *model.Batch) *figures {
	k := s.fresh()
	if f, ok := k.figures[b.Name]; ok {
		return f
	}
	f := &figures{}
	f.looks, f.looksErr = k.ledger.SampleLooks(b)
	f.growth, f.growErr = k.ledger.Growth(b)
	f.ready, f.readyErr = k.ledger.Ready(b)
	k.figures[b.Name] = f
	return f
}

// series is the survival of a batch.
func (s *Batch) series(b *model.Batch) model.SurvivalSeries {
	f := s.of(b)
	if f.series == nil {
		series := s.fresh().ledger.SurvivalSeries(b)
		f.series = &series
	}
	return *f.series
}

// last is the latest look, false where there is none.
func (f *figures) last() (growth.Look, bool) {
	if len(f.looks) == 0 {
		return growth.Look{}, false
	}
	return f.looks[len(f.looks)-1], true
}

// readings is the number of lengths read.
func (f *figures) readings() int {
	n := 0
	for _, l := range f.looks {
		n += l.N
	}
	return n
}
