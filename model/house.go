package model

// House holds the room's own rules. Every figure is the room's to change in
// room.toml; DefaultHouse says where each default comes from.
type House struct {
	ChangeHours float64 // full water change, hours after the last
	GraceHours  float64 // hours past due after which a change is overdue
	WindowHours float64 // a session takes what falls due within this, hours
	EarlyHours  float64 // a change may be put ahead of its due time by this to level days, hours
	LookHours   float64 // between two microscope looks, hours
	FeedHours   float64 // between two feeds, hours
	Order       string  // one of the Order words
	Crew        int     // people in a change session: 1 or 2
	DayMinutes  float64 // longest change session of a day, minutes; 0 for no limit

	Temperature TemperatureRules
	Minutes     MinuteRules
	Litres      FlowRules
	Wash        WashRules
	Growth      GrowthRules
	Feeding     FeedRules

	Mesh     []MeshBand
	Density  []DensityBand
	Ration   []RationBand
	Corridor []GrowthBand // [[house.growth]]; empty until the room gives one
}

// The words of house.order.
const (
	OldestFirst   = "oldest-first"
	YoungestFirst = "youngest-first"
	DueFirst      = "due-first"
)

// Band is a closed interval, low to high.
type Band struct{ Low, High float64 }

// Holds reports whether x lies in the band.
func (b Band) Holds(x float64) bool { return x >= b.Low && x <= b.High }

// TemperatureRules are in degrees Celsius.
type TemperatureRules struct {
	Best     Band
	Bearable Band
	StepFine float64 // difference of two tanks up to which nothing is said
	StepHold float64 // difference above which a move waits for a decision
}

// MinuteRules are the minutes of handling and washing one tank.
type MinuteRules struct{ Handle, Wash float64 }

// FlowRules are litres per minute when draining and filling.
type FlowRules struct{ Drain, Fill float64 }

// WashRules describe the acid wash.
type WashRules struct {
	MLPerLitre   float64 // mL of stock acid per litre
	TankLitres   float64 // litres of wash solution per emptied tank
	BinLitres    float64 // litres in the gear bin, once a session
	StockPercent float64 // HCl in the stock, per cent by weight, from the label
}

// GrowthRules are what the microscope figures are held against.
type GrowthRules struct {
	ReadyUM     float64 // shell length at expected competence, um
	ReadyLobes  int     // velar lobes at expected competence
	GoldenShare float64 // per cent of larvae with golden gut below which the room is warned
	DeadShare   float64 // per cent dead above which the room is warned
	SieveFactor float64 // a larva is held when its reading > factor x mesh
	CullPercent float64 // share a sieve may lose, per cent
	Eyepieces   []Magnification
}

// Magnification is one calibration of the eyepiece: micrometres per division.
type Magnification struct {
	Name  string
	UMPer float64
}

// FeedRules are what the algae figures are held against.
type FeedRules struct {
	CultureHours float64 // a culture's cell count is stale after this, hours
	ReserveShare float64 // share of a culture kept back as seed, per cent
}

// MeshBand lists acceptable sieves from an age on; the first is the default.
type MeshBand struct {
	FromDay int
	UM      []float64
}

// DensityBand is the number of larvae per litre not to exceed from an age on.
type DensityBand struct {
	FromDay  int
	PerLitre float64
}

// RationBand is the food wanted in the tank from an age on.
type RationBand struct {
	FromDay    int
	CellsPerML float64
	Share      map[string]float64 // by alga, by cells
}

// GrowthBand is the house corridor of shell length at an age, um.
type GrowthBand struct {
	FromDay int
	LowUM   float64
	HighUM  float64
}

// DefaultHouse returns the rules of a room that gives none.
//
// Common practice, no source: a change every 48 h, a step of 2 to 4 degrees C,
// 10 mL of acid per litre, sieves of 105 or 150 um for young veligers, 200 to
// 250 um around two weeks and 300 um for the oldest, best growth at 27 to 29
// degrees C and growth from 25 to about 31.5. Density: Brito-Manzano & Aldana
// Aranda 2004 reared at 200 per litre and Davis (Global Aquaculture Advocate)
// at 20 to 50; 100 lies between. Ration: Davis, 5,000 to 30,000 Isochrysis
// per mL, the low end. Competent length 1,150 um: from memory. Minutes, flows
// and the alarm shares are starting points for a room to replace by its own.
func DefaultHouse() House {
	return House{
		ChangeHours: 48, GraceHours: 6, WindowHours: 12, EarlyHours: 12, LookHours: 24, FeedHours: 24,
		Order: OldestFirst, Crew: 2,
		Temperature: TemperatureRules{Best: Band{27, 29}, Bearable: Band{25, 31.5}, StepFine: 2, StepHold: 4},
		Minutes:     MinuteRules{Handle: 6, Wash: 8},
		Litres:      FlowRules{Drain: 6, Fill: 12},
		Wash:        WashRules{MLPerLitre: 10, TankLitres: 4, BinLitres: 20, StockPercent: 31.45},
		Growth: GrowthRules{
			ReadyUM: 1150, ReadyLobes: 6, GoldenShare: 50, DeadShare: 15, SieveFactor: 1, CullPercent: 5,
		},
		Feeding: FeedRules{CultureHours: 48, ReserveShare: 0},
		Mesh: []MeshBand{
			{0, []float64{105, 150}},
			{12, []float64{200, 250}},
			{18, []float64{300}},
		},
		Density: []DensityBand{{0, 100}},
		Ration:  []RationBand{{0, 5000, map[string]float64{"iso": 1}}},
	}
}

// DefaultAlgae returns the algae of a room that names none.
func DefaultAlgae() []Alga { return []Alga{{Name: "iso", Full: "Isochrysis"}} }

// MeshAt returns the acceptable sieves (um) at an age in days, the default
// first; nil before the first band.
func (h House) MeshAt(age int) []float64 {
	var um []float64
	for _, b := range h.Mesh {
		if age >= b.FromDay {
			um = b.UM
		}
	}
	return um
}

// DensityAt returns the larvae per litre not to exceed at an age; 0 where the
// room gives no limit.
func (h House) DensityAt(age int) float64 {
	limit := 0.0
	for _, b := range h.Density {
		if age >= b.FromDay {
			limit = b.PerLitre
		}
	}
	return limit
}

// RationAt returns the ration at an age, and false before the first band.
func (h House) RationAt(age int) (RationBand, bool) {
	var ration RationBand
	found := false
	for _, b := range h.Ration {
		if age >= b.FromDay {
			ration, found = b, true
		}
	}
	return ration, found
}

// CorridorAt returns the house corridor of shell length at an age, and false
// where the room gives none.
func (h House) CorridorAt(age int) (GrowthBand, bool) {
	var band GrowthBand
	found := false
	for _, b := range h.Corridor {
		if age >= b.FromDay {
			band, found = b, true
		}
	}
	return band, found
}

// Sieves returns every mesh the house rules name, ascending, um.
func (h House) Sieves() []float64 {
	var all []float64
	for _, b := range h.Mesh {
		for _, um := range b.UM {
			all = insertSorted(all, um)
		}
	}
	return all
}

// insertSorted adds x to an ascending list unless it is there.
func insertSorted(xs []float64, x float64) []float64 {
	for i, have := range xs {
		switch {
		case have == x:
			return xs
		case have > x:
			return append(xs[:i], append([]float64{x}, xs[i:]...)...)
		}
	}
	return append(xs, x)
}
