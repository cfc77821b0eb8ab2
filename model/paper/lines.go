package paper

import (
	"math"
	"slices"
	"time"

	"drainboard/model"
	"drainboard/model/count"
)

// Move is one move of larvae of the batch.
type Move struct {
	N     int
	At    time.Time
	By    string
	Moved *model.Moved
	// Difference is how far the two waters lay apart, degrees Celsius; unknown
	// where one of them was not read.
	Difference count.Figure
}

func moves(b *model.Batch, by map[int]string) []Move {
	list := make([]Move, 0, len(b.Moves))
	for _, x := range b.Moves {
		m := Move{N: x.N, At: x.At, By: by[x.N], Moved: x.Move}
		if x.Move.FromCelsius != nil && x.Move.ToCelsius != nil {
			m.Difference = count.Known(math.Abs(*x.Move.FromCelsius - *x.Move.ToCelsius))
		}
		list = append(list, m)
	}
	return list
}

// Look is one look at the batch under the stereo microscope.
type Look struct {
	model.LookAt
	By string
}

func looks(b *model.Batch, by map[int]string) []Look {
	list := make([]Look, 0, len(b.Looks))
	for _, x := range b.Looks {
		list = append(list, Look{x, by[x.N]})
	}
	return list
}

// Count is one count of larvae of the batch, with what it comes to.
type Count struct {
	model.CountAt
	By    string
	Total count.Larvae
}

func counts(b *model.Batch, by map[int]string) []Count {
	list := make([]Count, 0, len(b.Counts))
	for _, x := range b.Counts {
		// A count that is in the ledger can be worked out.
		total, _ := count.Total(x.Count.Sample())
		list = append(list, Count{x, by[x.N], total})
	}
	return list
}

// Loss is all that left the batch for one reason.
type Loss struct {
	Why     string
	Ended   bool // the larvae of whole tanks; else taken out of tanks that went on
	Larvae  float64
	Unknown int // entries without a number
	N       Numbers
}

// losses adds up by reason, in the order in which the reasons first came up.
func losses(b *model.Batch) []Loss {
	var list []Loss
	for _, x := range b.Losses {
		i := slices.IndexFunc(list, func(l Loss) bool { return l.Why == x.Why && l.Ended == x.Ended })
		if i < 0 {
			i = len(list)
			list = append(list, Loss{Why: x.Why, Ended: x.Ended})
		}
		list[i].N = append(list[i].N, x.N)
		if x.Larvae == nil {
			list[i].Unknown++
			continue
		}
		list[i].Larvae += *x.Larvae
	}
	return list
}

// unexplained is what is missing between those stocked and those standing, less
// all that is known to have left.
func unexplained(r Report) count.Estimate {
	start, standing := r.Stocked.Value, r.Standing
	if !start.Known || !standing.Value.Known {
		return count.Estimate{}
	}
	left := start.X
	for _, l := range r.Losses {
		if l.Unknown > 0 {
			return count.Estimate{}
		}
		left -= l.Larvae
	}
	missing := func(alive count.Figure) count.Figure {
		if !alive.Known {
			return count.Figure{}
		}
		return count.Known(max(0, left-alive.X))
	}
	return count.Estimate{Value: missing(standing.Value), Low: missing(standing.High), High: missing(standing.Low)}
}

// people counts entries by initials, those with the most first.
func people(l *model.Ledger, own map[int]bool) []Person {
	var list []Person
	for _, e := range l.Events() {
		if !own[e.N] {
			continue
		}
		i := slices.IndexFunc(list, func(p Person) bool { return p.By == e.By })
		if i < 0 {
			i = len(list)
			list = append(list, Person{By: e.By})
		}
		list[i].Entries++
	}
	slices.SortStableFunc(list, func(a, b Person) int { return b.Entries - a.Entries })
	return list
}

// Change is an entry of the batch that no longer reads as it was keyed.
type Change struct {
	Entry int
	Kind  model.Kind
	Void  bool
	By    Numbers // the corrections in force
	Why   string  // of the latest
}

// changes lists what was corrected of a batch, entries that are void among them.
func changes(l *model.Ledger, own map[int]bool, f *life) []Change {
	void := l.Void()
	var list []Change
	entries := l.Entries()
	for n, by := range l.CorrectedBy() {
		e := entries[n-1]
		if !own[n] && !(void[n] && f.wasOf(e)) {
			continue
		}
		c := Change{Entry: n, Kind: e.Kind(), Void: void[n], By: by}
		if last, ok := entries[by[len(by)-1]-1].Fact.(*model.Corrected); ok {
			c.Why = last.Why
		}
		list = append(list, c)
	}
	slices.SortFunc(list, func(a, b Change) int { return a.Entry - b.Entry })
	return list
}

// wasOf reports whether an entry, as it was keyed, was of the batch.
func (f *life) wasOf(e model.Entry) bool {
	switch x := e.Fact.(type) {
	case *model.Stocked:
		return x.Batch == f.batch.Name
	case *model.Moved:
		return f.held(x.From, e.At)
	}
	return f.held(tankOf(e.Fact), e.At)
}
