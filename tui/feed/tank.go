package feed

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"drainboard/model"
	"drainboard/tui/text"
)

// tankLines are the chosen tank in words.
func (f *Feed) tankLines(t model.TankFeeding, w int) []string {
	th := f.desk.Theme
	first := fmt.Sprintf("%s  batch %s, day %d, %s L", text.Clean(t.Tank.Tank.Name), text.Clean(t.Tank.Larvae.Batch), t.AgeDays, plain(t.Tank.Tank.Litres))
	lines := []string{" " + th.Strong.Render(text.Truncate(first, max(1, w-1)))}
	plainly := func(words string) {
		for _, l := range text.Wrap(words, max(1, w-2)) {
			lines = append(lines, "  "+l)
		}
	}
	if t.HasRation {
		plainly(fmt.Sprintf("wanted: %s cells/mL, %s", cellWords(t.Ration.CellsPerML), f.shareWords(t.Ration.Share)))
	}
	loudly := func(words string) { lines = append(lines, badgeLines(th.Hold, text.Clean(words), w)...) }
	plainly(f.leftWords(t))
	for _, p := range t.Problems {
		loudly(p)
	}
	if !t.InRound {
		return lines
	}
	if e, done := f.round.fed[t.Tank.Tank.Name]; done {
		plainly(fmt.Sprintf("poured: %s, entry %d; so %s cells/mL then", poursWords(t.Pours), e.N, cellWords(t.Feed.Reached)))
		return lines
	}
	plainly(fmt.Sprintf("add %s: pour %s; then %s cells/mL", cellWords(t.ToAdd()), poursOrNothing(t), cellWords(t.Feed.Reached)))
	if t.Feed.ShortOf != "" && t.Feed.Part < 1 {
		loudly(fmt.Sprintf("only %.0f %% of what it lacks: short of %s", 100*t.Part, t.Feed.ShortOf))
	}
	for _, p := range t.Pours {
		if p.Rough {
			plainly(fmt.Sprintf("%s is rounded by more than 5 %%: dilute the culture and pour more", text.Clean(p.Alga)))
		}
	}
	over := fmt.Sprintf("at %s L it overflows by %s: draw that much off first, or fill less", plain(t.Tank.Tank.Litres), litreWords(t.Feed.OverBrim))
	switch {
	case t.Overflows():
		loudly(over)
	case t.Feed.OverBrim > 0:
		plainly(over)
	}
	return lines
}

func poursOrNothing(t model.TankFeeding) string {
	if len(t.Pours) == 0 {
		return "nothing"
	}
	return poursWords(t.Pours)
}

// shareWords is a diet in words, by cells.
func (f *Feed) shareWords(share map[string]float64) string {
	total := 0.0
	for _, x := range share {
		total += max(0, x)
	}
	var words []string
	for _, name := range f.inOrder(share) {
		switch {
		case share[name] >= total:
			return "all " + text.Clean(name)
		case share[name] > 0:
			words = append(words, fmt.Sprintf("%.0f %% %s", 100*share[name]/total, text.Clean(name)))
		}
	}
	return strings.Join(words, ", ")
}

// inOrder are the algae of a table as room.toml lists them, any others behind.
func (f *Feed) inOrder(by map[string]float64) []string {
	var names []string
	for _, a := range f.desk.Ledger.Room().Algae {
		if _, ok := by[a.Name]; ok {
			names = append(names, a.Name)
		}
	}
	for _, name := range slices.Sorted(maps.Keys(by)) {
		if !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return names
}

// leftWords says what is left in a tank, from when, and how sure that is.
func (f *Feed) leftWords(t model.TankFeeding) string {
	switch t.Left.Basis {
	case model.LeftFresh:
		return "left: none, its water is fresh and was not fed yet"
	case model.LeftUnknown:
		return fmt.Sprintf("left: not counted since the feed %s; reckoned as none, r counts it", ago(f.desk.Now.Sub(t.Fed.At)))
	case model.LeftCounted:
	}
	e := t.Left.PerML
	words := fmt.Sprintf("left: %s cells/mL (%s to %s), counted %s", cellWords(e.Value.X), cellWords(e.Low.X), cellWords(e.High.X), ago(f.desk.Now.Sub(t.Left.At)))
	if t.Left.Stale {
		words += f.desk.Theme.Marks.Stale + ", an old count"
	}
	if t.Enough() {
		words += ": enough, add nothing"
	}
	return words
}
