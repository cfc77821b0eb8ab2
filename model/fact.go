package model

// Kind names a kind of entry, in the words of the journal and the command line.
type Kind string

// The kinds of entries.
const (
	KindStocked     Kind = "stocked"
	KindMoved       Kind = "moved"
	KindWashed      Kind = "washed"
	KindFilled      Kind = "filled"
	KindTemperature Kind = "temperature"
	KindSizes       Kind = "sizes"
	KindLook        Kind = "look"
	KindCount       Kind = "count"
	KindCells       Kind = "cells"
	KindFed         Kind = "fed"
	KindWater       Kind = "water"
	KindRemoved     Kind = "removed"
	KindEnded       Kind = "ended"
	KindService     Kind = "service"
	KindSuspect     Kind = "suspect"
	KindOpened      Kind = "opened"
	KindStep        Kind = "step"
	KindClosed      Kind = "closed"
	KindCorrected   Kind = "corrected"
	KindNoted       Kind = "noted"
)

// Fact is what an entry says, one type a kind. Fields lists its fields in the
// order in which they are written.
type Fact interface {
	Kind() Kind
	Fields() []Field
}

// Kinds lists every kind in the order of the manual.
func Kinds() []Kind {
	return []Kind{
		KindStocked, KindMoved, KindWashed, KindFilled, KindTemperature, KindSizes, KindLook,
		KindCount, KindCells, KindFed, KindWater, KindRemoved, KindEnded, KindService, KindSuspect,
		KindOpened, KindStep, KindClosed, KindCorrected, KindNoted,
	}
}

// NewFact returns an empty fact of a kind, and false where there is no such kind.
func NewFact(k Kind) (Fact, bool) {
	make, ok := map[Kind]func() Fact{
		KindStocked:     func() Fact { return &Stocked{} },
		KindMoved:       func() Fact { return &Moved{} },
		KindWashed:      func() Fact { return &Washed{} },
		KindFilled:      func() Fact { return &Filled{} },
		KindTemperature: func() Fact { return &Temperature{} },
		KindSizes:       func() Fact { return &Sizes{} },
		KindLook:        func() Fact { return &Look{} },
		KindCount:       func() Fact { return &Count{} },
		KindCells:       func() Fact { return &Cells{} },
		KindFed:         func() Fact { return &Fed{} },
		KindWater:       func() Fact { return &Water{} },
		KindRemoved:     func() Fact { return &Removed{} },
		KindEnded:       func() Fact { return &Ended{} },
		KindService:     func() Fact { return &Service{} },
		KindSuspect:     func() Fact { return &Suspect{} },
		KindOpened:      func() Fact { return &Opened{} },
		KindStep:        func() Fact { return &StepDone{} },
		KindClosed:      func() Fact { return &Closed{} },
		KindCorrected:   func() Fact { return &Corrected{} },
		KindNoted:       func() Fact { return &Noted{} },
	}[k]
	if !ok {
		return nil, false
	}
	return make(), true
}

// Limits beyond which a reading cannot be true. The water of a room for warm
// and temperate species lies far inside them; they catch slips of the keys.
var (
	celsiusRange  = Range{Low: -2, High: 45}
	lengthRange   = Range{Low: 20, High: 5000}
	meshRange     = Range{Low: 5, High: 5000}
	larvaeRange   = Range{Low: 0, High: 1e12, Above: true}
	percentRange  = Range{Low: 0, High: 100}
	countRange    = Range{Low: 0, High: 1e7}
	volumeRange   = Range{Low: 0, High: 1e8, Above: true}
	dilutionRange = Range{Low: 1, High: 1e6}
	shareRange    = Range{Low: 0, High: 1, Above: true}
	entryRange    = Range{Low: 1, High: 1e12}
	moveRange     = Range{Low: 0, High: maxLegs}
)

// need and may build one row of a kind's table of fields.
func need(name string, t FieldType, unit string, r Range, at any) Field {
	return Field{Name: name, Type: t, Need: true, Unit: unit, Range: r, at: at}
}

func may(name string, t FieldType, unit string, r Range, at any) Field {
	return Field{Name: name, Type: t, Unit: unit, Range: r, at: at}
}

func words(f Field, list ...string) Field {
	f.Words = list
	return f
}

var anyRange = Range{}
