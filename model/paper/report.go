package paper

import (
	"time"

	"drainboard/model"
	"drainboard/model/count"
	"drainboard/model/growth"
)

// Report is one batch from hatch to a moment. Every figure names the entries it
// comes from.
type Report struct {
	Room  *model.Room
	At    time.Time
	Batch *model.Batch
	// Here is set while any tank holds larvae of the batch. AgeDays is its age at
	// At while it is here, and on the day the last of it left after that; Left is
	// that moment.
	Here    bool
	AgeDays int
	Left    time.Time

	Tanks    []string // that hold it now
	Stocked  count.Estimate
	Standing count.Estimate
	Survival Survival

	Story   []Event
	Lengths []LengthDay
	Growth  Growth
	Warmth  []WarmDay
	Moves   []Move
	Feeds   []FeedDay
	Looks   []Look
	Counts  []Count
	Losses  []Loss
	// Unexplained are those stocked that are neither standing, settled, removed nor
	// given as lost: dead between two counts. Unknown where any of these is.
	Unexplained count.Estimate
	People      []Person
	Changed     []Change
}

// Event is one entry of the story of a batch.
type Event struct {
	N       int
	At      time.Time
	AgeDays int
	By      string
	Fact    model.Fact
}

// Survival is the share of a batch that is alive. Limits are those of the counts
// alone: numbers told are taken as exact.
type Survival struct {
	Now count.Survival
	Gap string // why it is not known; empty where it is
	// Start are the larvae that it is a share of: those stocked, or with FromCount
	// those of the first moment at which the number in every tank was known.
	Start     count.Estimate
	StartAt   time.Time
	FromCount bool
	Steps     []model.SurvivalStep // stockings, counts and losses
}

// Growth is what the lengths say together.
type Growth struct {
	Growth growth.Growth
	Gap    string // why there is no growth; empty where there is
	Ready  growth.Ready
	// ReadyGap says why there is no ready date; empty where there is one.
	ReadyGap string
}

// Person is one that keyed entries of the batch.
type Person struct {
	By      string // empty where no initials were given
	Entries int
}

// NewReport gathers the report of a batch as it stands in a ledger at now.
func NewReport(l *model.Ledger, b *model.Batch, now time.Time) (Report, error) {
	room := l.Room()
	r := Report{
		Room: room, At: now.In(room.Zone), Batch: b, Here: l.Here(b), AgeDays: b.AgeDays(now, room.Zone),
		Standing: l.Standing(b), Stocked: stocked(b),
	}
	if !r.Here && len(b.Losses) > 0 {
		r.Left = b.Losses[len(b.Losses)-1].At
		r.AgeDays = b.AgeDays(r.Left, room.Zone)
	}
	for _, t := range l.BatchTanks(b) {
		r.Tanks = append(r.Tanks, t.Tank.Name)
	}
	r.Survival = survivalOf(l, b)
	r.Growth = growthOf(l, b)
	life, err := liveOf(l, b)
	if err != nil {
		return Report{}, err
	}
	r.Story = life.story
	r.Lengths, r.Warmth, r.Feeds = lengthDays(b, room.Zone), warmDays(b, room), feedDays(b, room.Zone)
	own := life.own(b)
	by := initials(l, own)
	r.Moves, r.Looks, r.Counts = moves(b, by), looks(b, by), counts(b, by)
	r.Losses = losses(b)
	r.Unexplained = unexplained(r)
	r.People = people(l, own)
	r.Changed = changes(l, own, life)
	return r, nil
}

func growthOf(l *model.Ledger, b *model.Batch) Growth {
	var g Growth
	var err error
	if len(b.Samples) == 0 {
		return Growth{Gap: "no shell lengths were entered", ReadyGap: "no shell lengths were entered"}
	}
	if g.Growth, err = l.Growth(b); err != nil {
		return Growth{Gap: err.Error(), ReadyGap: err.Error()}
	}
	if g.Ready, err = l.Ready(b); err != nil {
		g.ReadyGap = err.Error()
	} else if g.Ready.State == growth.Never {
		g.ReadyGap = "they do not grow, or so little that it takes over a year"
	}
	return g
}

// stocked adds up what was put into the room; unknown as soon as one stocking
// has no number.
func stocked(b *model.Batch) count.Estimate {
	sum := count.Exactly(0)
	for _, s := range b.Stocked {
		if s.Larvae == nil {
			return count.Estimate{}
		}
		sum = sum.Plus(count.About(*s.Larvae))
	}
	return sum
}

// survivalOf follows what was alive, entry by entry. Moves change nothing of it and
// are left out.
func survivalOf(l *model.Ledger, b *model.Batch) Survival {
	series := l.SurvivalSeries(b)
	s := Survival{Start: series.Start, StartAt: series.StartAt, FromCount: series.FromCount}
	for _, step := range series.Steps {
		if step.What != model.KindMoved {
			s.Steps = append(s.Steps, step)
		}
	}
	if n := len(s.Steps); n > 0 {
		s.Now = s.Steps[n-1].Alive
	}
	_, err := l.Survival(b)
	switch {
	case s.Now.Share.Value.Known:
	case err != nil:
		s.Gap = err.Error()
	case !s.Start.Value.Known && !stocked(b).Value.Known:
		s.Gap = "a stocking has no number of larvae"
	default:
		s.Gap = "the number in a tank is not known"
	}
	return s
}

// initials are who keyed entries, by n.
func initials(l *model.Ledger, own map[int]bool) map[int]string {
	by := make(map[int]string, len(own))
	for _, e := range l.Events() {
		if own[e.N] {
			by[e.N] = e.By
		}
	}
	return by
}
