package model

// Procedure is the list of steps of a change session, in order. It is data of
// the room (procedure.toml), so that a room can word it in its own way.
type Procedure []Step

// Step is one prompt of a change session.
type Step struct {
	Name     string   // as kept in the journal
	Lane     Lane     // who does it
	Pause    string   // where a pause point begins, its name
	Ask      Ask      // what is answered
	Records  string   // what the answer writes beside the step: one of the Record words
	Text     string   // at most nine words, verb first
	Why      string   // shown beneath
	Choices  []string // for AskChoice; the first is the one that lets the step pass
	Least    *float64 // for AskNumber: below this the step waits
	Most     *float64 // for AskNumber: above this the step waits
	Unit     string   // for AskNumber
	Critical bool     // an open one lets a session close only as incomplete
	Caution  string   // "acid" shows the cautions for acid beside the step
}

// Lane says who does a step.
type Lane string

// The lanes of a change session.
const (
	LaneSession Lane = "session" // once, before the first move
	LaneMove    Lane = "move"    // the mover, for each move
	LaneWash    Lane = "wash"    // the washer, for each emptied tank
)

// Ask says what a step wants answered.
type Ask string

// The kinds of answers.
const (
	AskTank    Ask = "tank"    // the name of a tank, typed
	AskCelsius Ask = "celsius" // a temperature
	AskNumber  Ask = "number"
	AskChoice  Ask = "choice"
	AskEnter   Ask = "enter" // a plain action, taken by Enter
)

// What a step's answer records beside the step itself.
const (
	RecordNothing     = ""
	RecordFromCelsius = "from_celsius" // a temperature of the source
	RecordToCelsius   = "to_celsius"   // a temperature of the destination
	RecordMesh        = "mesh_um"      // the sieve of the move
	RecordMoved       = "moved"
	RecordWashed      = "washed"
	RecordFilled      = "filled"
)

// NameFrom and NameTo are the steps at which the two tanks of a move are named.
const (
	NameFrom = "source"
	NameTo   = "destination"
)

// Step finds a step by its name.
func (p Procedure) Step(name string) (Step, bool) {
	for _, s := range p {
		if s.Name == name {
			return s, true
		}
	}
	return Step{}, false
}

// In returns the steps of one lane, in order.
func (p Procedure) In(lane Lane) []Step {
	var steps []Step
	for _, s := range p {
		if s.Lane == lane {
			steps = append(steps, s)
		}
	}
	return steps
}

// Sections cuts the steps of the mover's lane at its pause points.
func (p Procedure) Sections() [][]Step {
	var sections [][]Step
	for _, s := range p.In(LaneMove) {
		if s.Pause != "" || len(sections) == 0 {
			sections = append(sections, nil)
		}
		sections[len(sections)-1] = append(sections[len(sections)-1], s)
	}
	return sections
}

// DefaultProcedure returns the steps of a room that words none of its own:
// common practice, no source. Larvae must never dry, so the sieve stands in
// water from before the siphon to after the rinse.
func DefaultProcedure() Procedure {
	full := 75.0
	return Procedure{
		{
			Name: "bin", Lane: LaneSession, Ask: AskEnter, Caution: "acid",
			Text: "Mix gear bin: {bin_acid_ml} mL acid into {bin_water_litres} L",
			Why:  "Sieves, buckets and hoses stand in it between tanks. Acid goes into the water.",
		},
		{
			Name: "sieves", Lane: LaneSession, Ask: AskEnter,
			Text: "Lay out sieves: {sieves} µm",
			Why:  "One for each age in this session; look each over for holes.",
		},
		{
			Name: NameFrom, Lane: LaneMove, Pause: "before the siphon", Ask: AskTank, Critical: true,
			Text: "Type the tank you siphon from",
			Why:  "Read the name off the tank in front of you.",
		},
		{
			Name: "from_celsius", Lane: LaneMove, Ask: AskCelsius, Records: RecordFromCelsius, Critical: true,
			Text: "Read the temperature in {from}",
			Why:  "Above {step_hold} °C of difference the move waits.",
		},
		{
			Name: "to_celsius", Lane: LaneMove, Ask: AskCelsius, Records: RecordToCelsius, Critical: true,
			Text: "Read the temperature in {to}",
			Why:  "Up to {step_fine} °C apart is fine; above {step_hold} °C the move waits.",
		},
		{
			Name: "sieve", Lane: LaneMove, Ask: AskNumber, Records: RecordMesh, Unit: "µm", Critical: true,
			Text: "Type the sieve in your hand: {meshes} µm",
			Why:  "Too coarse and larvae go over the side; too fine and it clogs.",
		},
		{
			Name: "bucket", Lane: LaneMove, Ask: AskNumber, Unit: "% full", Least: &full, Critical: true,
			Text: "Stand sieve in sea water; type % full",
			Why:  "The bucket is at least three-quarters full, so that larvae never dry.",
		},
		{
			Name: "siphon", Lane: LaneMove, Ask: AskEnter,
			Text: "Siphon {from} onto the standing sieve",
			Why:  "Keep the mesh under water to the last of it.",
		},
		{
			Name: NameTo, Lane: LaneMove, Pause: "before the rinse", Ask: AskTank, Critical: true,
			Text: "Type the tank you rinse into",
			Why:  "Read the name off the tank in front of you.",
		},
		{
			Name: "rinse", Lane: LaneMove, Ask: AskEnter, Records: RecordMoved,
			Text: "Rinse larvae from the sieve into {to}",
			Why:  "Gently, from the outside of the mesh, with sea water.",
		},
		{
			Name: "sieve_empty", Lane: LaneMove, Pause: "before the lid", Ask: AskChoice, Critical: true,
			Choices: []string{"sieve empty", "larvae left"},
			Text:    "Look at the sieve: what do you see?",
			Why:     "Larvae left on the mesh dry within minutes; rinse again.",
		},
		{
			Name: "suspension", Lane: LaneMove, Ask: AskChoice, Critical: true,
			Choices: []string{"swimming", "on the bottom"},
			Text:    "Look into {to}: where are the larvae?",
			Why:     "They should hang in the water within a few minutes.",
		},
		{
			Name: "air", Lane: LaneMove, Ask: AskChoice, Critical: true,
			Choices: []string{"gentle roll", "too strong", "no air"},
			Text:    "Set the airlift: what do you see?",
			Why:     "A gentle roll keeps them up without beating them.",
		},
		{
			Name: "fed", Lane: LaneMove, Ask: AskChoice,
			Choices: []string{"fed", "later"},
			Text:    "Feed {to}: what was done?",
			Why:     "Fresh water holds no food.",
		},
		{
			Name: "lid", Lane: LaneMove, Ask: AskEnter,
			Text: "Put the lid on {to}",
			Why:  "Covered tanks stay warm and clean.",
		},
		{
			Name: "wash", Lane: LaneWash, Ask: AskNumber, Records: RecordWashed, Unit: "mL acid", Caution: "acid",
			Text: "Wash and rinse {tank}: {acid_ml} mL; type mL used",
			Why:  "Acid into {water_litres} L of fresh water, brush, then rinse until nothing is left.",
		},
		{
			Name: "fill", Lane: LaneWash, Ask: AskCelsius, Records: RecordFilled,
			Text: "Fill {tank}; read its temperature",
			Why:  "It is the next destination, so bring it to {from_celsius} °C.",
		},
	}
}
