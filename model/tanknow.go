package model

import (
	"time"

	"drainboard/model/count"
)

// State is what a tank is used for now.
type State string

// The states of a tank.
const (
	Holding    State = "holding" // larvae in it
	Dirty      State = "dirty"   // emptied, not washed yet
	WashedDown State = "washed"  // clean and empty
	Ready      State = "ready"   // full of clean water
	Out        State = "out"     // out of use
)

// TankNow is a tank as the entries leave it.
type TankNow struct {
	Tank  Tank
	Place int // index in Room.Tanks

	// Known is false until the first entry speaks of the tank. Until then it is
	// shown as dirty, the cautious guess, and the first entry is believed.
	Known bool
	State State
	// Since is when the state began; for a holding tank when its water was
	// last fresh.
	Since time.Time
	// Emptied is when its last larvae left or it came back into use; zero where
	// neither was entered.
	Emptied time.Time

	Suspect    bool
	SuspectWhy string

	// Celsius are the readings of the water now in the tank, oldest first.
	Celsius []Reading
	// Tests are the water tests of the water now in the tank, oldest first.
	Tests []WaterTest
	// Left is the last count of food cells left in the water now in the tank.
	Left *CellCount

	// Larvae is nil where the tank holds none.
	Larvae *Larvae
}

// Reading is one measured number and when it was measured.
type Reading struct {
	At    time.Time
	Value float64
	N     int // the entry it stands in
}

// WaterTest is one water entry of a tank.
type WaterTest struct {
	At    time.Time
	N     int
	Water *Water
}

// CellCount is one cells entry.
type CellCount struct {
	At    time.Time
	N     int
	Cells *Cells
}

// Larvae are the animals in one tank. They keep their story when they move.
type Larvae struct {
	Batch     string
	Here      time.Time // when they came into this tank
	Stocked   time.Time // when they came into the room
	Number    count.Estimate
	CountedAt time.Time // of the last count; zero where never counted
	CountN    int
	// Tally is the last count as made, nil where there is none that speaks of
	// just these larvae; Kept is the share of it that should still be there.
	Tally *count.Tally
	Kept  float64
	// Fell is set where the last count fell by more than chance allows.
	Fell   *count.Change
	Fed    time.Time // zero where never
	Looked time.Time // zero where never
	Look   *Look     // the last look; nil where never
	Seen   time.Time // of that look
	Sample *Sample   // the last shell lengths; nil where never
	Before *Sample   // the ones before; nil where never
}

// Sample is shell lengths read at one sitting. Readings keyed one by one are
// one sample as long as no more than SittingGap passes between them.
type Sample struct {
	At   time.Time // of its first reading
	Last time.Time // of its last reading
	Tank string
	UM   []float64
	N    []int // the entries it stands in
	// OneByOne is true where every reading was keyed as an entry of its own.
	OneByOne bool
}

// SittingGap is the longest pause between two readings of one sample.
const SittingGap = 30 * time.Minute

// celsius returns the last temperature of the tank's water.
func (t *TankNow) celsius() (Reading, bool) {
	if len(t.Celsius) == 0 {
		return Reading{}, false
	}
	return t.Celsius[len(t.Celsius)-1], true
}

// LastCelsius returns the last temperature of the water now in the tank.
func (t TankNow) LastCelsius() (Reading, bool) { return t.celsius() }

// Empty reports whether the tank is in use and holds no larvae.
func (t TankNow) Empty() bool { return t.State != Holding && t.State != Out }

// EmptySince is the moment by which emptied tanks queue for the washer: a wash
// does not send a tank to the end of the queue.
func (t TankNow) EmptySince() time.Time {
	if t.Emptied.IsZero() {
		return t.Since
	}
	return t.Emptied
}

// freshWater forgets what was measured in the water that is gone.
func (t *TankNow) freshWater() {
	t.Celsius, t.Tests, t.Left = nil, nil, nil
}

// become puts the tank into a state from a moment on.
func (t *TankNow) become(s State, at time.Time) {
	t.State, t.Since, t.Known = s, at, true
}

// read notes a temperature of the tank's water.
func (t *TankNow) read(at time.Time, celsius float64, n int) {
	t.Celsius = append(t.Celsius, Reading{at, celsius, n})
}
