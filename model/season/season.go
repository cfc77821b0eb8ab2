package season

import (
	"cmp"
	"fmt"
	"slices"
	"time"

	"drainboard/model"
)

// Season is batches side by side.
type Season struct {
	Batches []Batch // by hatch day, then as first stocked
	// Compared is each habit against each outcome, in the order of Habits and
	// Outcomes.
	Compared []Comparison
}

// Of sets all batches of a ledger side by side as they stand at now. Nothing in
// the ledger may lie after now.
func Of(l *model.Ledger, now time.Time) Season {
	told := endsTold(l)
	var batches []Batch
	for _, b := range l.Batches() {
		batches = append(batches, batchOf(l, b, told, now))
	}
	slices.SortStableFunc(batches, func(a, b Batch) int { return cmp.Compare(a.Day.Sub(b.Day), 0) })
	return beside(batches)
}

func beside(batches []Batch) Season {
	s := Season{Batches: batches}
	for _, h := range Habits() {
		for _, o := range Outcomes() {
			s.Compared = append(s.Compared, compare(batches, h, o))
		}
	}
	return s
}

// Years lists the years in which batches hatched, the latest first.
func (s Season) Years() []int {
	var years []int
	for _, b := range s.Batches {
		years = append(years, b.Day.Year)
	}
	slices.Sort(years)
	years = slices.Compact(years)
	slices.Reverse(years)
	return years
}

// In is the season of the batches that hatched in one year.
func (s Season) In(year int) Season {
	var batches []Batch
	for _, b := range s.Batches {
		if b.Day.Year == year {
			batches = append(batches, b)
		}
	}
	return beside(batches)
}

// Comparison returns one habit held against one outcome.
func (s Season) Comparison(h Habit, o Outcome) Comparison {
	i := slices.IndexFunc(s.Compared, func(c Comparison) bool { return c.Habit == h && c.Outcome == o })
	if i < 0 {
		return Comparison{Habit: h, Outcome: o}
	}
	return s.Compared[i]
}

// Caveat is what has to stand beside the comparisons wherever they are shown.
func (s Season) Caveat() string {
	n := fmt.Sprintf("%d batches", len(s.Batches))
	if len(s.Batches) == 1 {
		n = "1 batch"
	}
	return fmt.Sprintf("This proves nothing: %s, no experiment, and habits change together. "+
		"Of %d comparisons some look strong by chance alone. Take it as a question to try out, not as an answer.",
		n, len(Habits())*len(Outcomes()))
}
