package sequence

import "time"

// Plan is a change session laid out in time.
type Plan struct {
	Moves        []Move        // in the order they are made
	Unmoved      []Unmoved     // in rank order
	Preparations []Preparation // in the order they are begun
	EmptyAfter   []int         // tanks neither holding nor out when all is done, in the order of the room

	WorstOverrun time.Duration // over the moves; 0 when none passes its limit
	LastMoveEnd  time.Time     // Problem.Now when there is no move
	Finish       time.Time     // the last move is made and every emptied tank is ready again

	// Best says that no other order is better by the three aims of Best. It is
	// false when the node budget ran out before that was proved, and always false
	// from Retime, which proves nothing.
	Best  bool
	Nodes int // search nodes opened
}

// Move is one source siphoned over into one destination.
type Move struct {
	Source     int // index in Problem.Sources
	From, To   int // indices in Problem.Tanks
	Start, End time.Time
	Overrun    time.Duration // by how much Start passes due + grace
	Difference Reading       // of the two temperatures, degrees Celsius, never negative
	Share      float64       // of the larvae then in From; 1 when all go, and From is emptied
	Part       int           // of a source moved in parts, counted from 1; 0 for a whole move
	Join       bool          // To holds larvae of this session already
	Why        string        // why this source now
	WhyTo      string        // why this destination
}

// Unmoved is a source that stays where it is.
type Unmoved struct {
	Source int // index in Problem.Sources
	Tank   int // index in Problem.Tanks
	Why    string
}

// Preparation is an emptied tank being made ready again.
type Preparation struct {
	Tank       int // index in Problem.Tanks
	Start, End time.Time
	Wash       bool // false when the tank stood washed and is only filled
}

// Complaint is a listed leg that cannot be made.
type Complaint struct {
	Leg      int // index in the list
	From, To int // as listed
	Why      string
}
