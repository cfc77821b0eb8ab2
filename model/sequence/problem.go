package sequence

import "time"

// Problem is one change session to be planned: the room as it stands at Now and
// the sources whose water is to be changed.
type Problem struct {
	Now     time.Time
	Tanks   []Tank   // in the order of the room
	Sources []Source // in any order; ties are broken by the order of Tanks
	Order   Order
	Crew    int           // people in the session: 1 or 2
	Grace   time.Duration // later than due + grace is overrun
	Pace    Pace
	Joins   []Pair // sources whose larvae go into one tank where both fit; none by default
	Budget  int    // nodes the search may open; 0 means DefaultBudget
}

// DefaultBudget is the number of search nodes [Best] may open when the problem
// names none.
const DefaultBudget = 400_000

// Tank is one tank of the room.
type Tank struct {
	Name   string
	Litres float64
	State  State
	// Since is when a ready tank became ready, or when a dirty or washed one was
	// emptied. A time after Problem.Now counts as Now.
	Since   time.Time
	Celsius Reading // degrees Celsius; used while the tank holds larvae or stands ready
}

// State is what a tank is doing when the session begins.
type State int

// The states of a tank. The zero value is Holding, which is never a destination.
const (
	Holding State = iota // holds larvae
	Dirty                // emptied, neither washed nor filled
	Washed               // washed, not filled
	Ready                // full of clean water
	Out                  // out of use
)

// Reading is a figure that may be unknown; its zero value is unknown.
type Reading struct {
	Value float64
	Known bool
}

// Known returns the reading of a measured value.
func Known(value float64) Reading { return Reading{Value: value, Known: true} }

// Source is a tank whose larvae are to be moved.
type Source struct {
	Tank    int // index in Problem.Tanks
	AgeDays int
	Due     time.Time
	Suspect bool
	Larvae  Reading // live larvae in the tank
	// PerLitre is the density not to exceed at this age, in larvae per litre.
	// 0 means the room names none, and then only size decides whether a tank fits.
	PerLitre float64
	// Parts is in how many equal parts the larvae are moved, each a move of its own
	// into a tank of its own. 0 and 1 mean all at once.
	Parts int
}

// Pair names two tanks whose larvae are of one batch and are to be put together,
// by their indices in Problem.Tanks. Whichever is moved first looks for a tank in
// which both fit; the other then goes into that tank and needs no empty one. Where
// no such tank is empty they go apart.
type Pair struct{ A, B int }

// Order is the house rule by which sources are ranked.
type Order string

// The house orders.
const (
	OldestFirst   Order = "oldest-first"
	YoungestFirst Order = "youngest-first"
	DueFirst      Order = "due-first"
)

// Pace is how fast the crew works.
type Pace struct {
	HandleMinutes float64 // of a move, beside the draining
	WashMinutes   float64 // acid wash and rinse of an emptied tank
	DrainLPM      float64 // litres per minute
	FillLPM       float64 // litres per minute
}

// Leg is one move as people list it. From and To are indices in Problem.Tanks;
// To = ByRule leaves the destination to the rule. A source of several parts has a
// leg for each. A leg into the tank that took the other of a [Pair] joins it.
type Leg struct {
	From, To int
}

// ByRule as Leg.To asks for the destination the rule would choose.
const ByRule = -1
