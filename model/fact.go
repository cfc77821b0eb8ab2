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
	switch k {
	case KindStocked:
		return &Stocked{}, true
	case KindMoved:
		return &Moved{}, true
	case KindWashed:
		return &Washed{}, true
	case KindFilled:
		return &Filled{}, true
	case KindTemperature:
		return &Temperature{}, true
	case KindSizes:
		return &Sizes{}, true
	case KindLook:
		return &Look{}, true
	case KindCount:
		return &Count{}, true
	case KindCells:
		return &Cells{}, true
	case KindFed:
		return &Fed{}, true
	case KindWater:
		return &Water{}, true
	case KindRemoved:
		return &Removed{}, true
	case KindEnded:
		return &Ended{}, true
	case KindService:
		return &Service{}, true
	case KindSuspect:
		return &Suspect{}, true
	case KindOpened:
		return &Opened{}, true
	case KindStep:
		return &StepDone{}, true
	case KindClosed:
		return &Closed{}, true
	case KindCorrected:
		return &Corrected{}, true
	case KindNoted:
		return &Noted{}, true
	}
	return nil, false
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
