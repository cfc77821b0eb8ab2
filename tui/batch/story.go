package batch

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"drainboard/model"
	"drainboard/model/water"
	"drainboard/tui/text"
)

// storyWords tell the batch's tanks, feeds, water, looks and moves.
func (s *Batch) storyWords(b *model.Batch, w int) []figure {
	list := []figure{s.stockedFigure(b), s.stayFigure(b), s.feedFigure(b), s.waterFigure(b), {plain: true}}
	list = append(list, s.lookTable(b, w)...)
	list = append(list, figure{plain: true})
	return append(list, s.moveTable(b)...)
}

// stockedFigure are the stockings.
func (s *Batch) stockedFigure(b *model.Batch) figure {
	parts := make([]string, len(b.Stocked))
	for i, x := range b.Stocked {
		number := "no number given"
		if x.Larvae != nil {
			number = text.Decimal(*x.Larvae, 0) + " larvae"
		}
		parts[i] = fmt.Sprintf("%s %s, %s", x.Tank, s.moment(x.At), number)
	}
	return figure{name: "stocked", words: strings.Join(parts, "; ")}
}

// stay is the time larvae of a batch were in a tank.
type stay struct {
	tank     string
	from, to time.Time // to is zero while they are there
}

// stays are the tanks a batch went through, in order.
func stays(b *model.Batch) []stay {
	type event struct {
		at time.Time
		n  int
		do func([]stay) []stay
	}
	var events []event
	for _, x := range b.Stocked {
		events = append(events, event{x.At, x.N, func(list []stay) []stay { return append(list, stay{tank: x.Tank, from: x.At}) }})
	}
	for _, x := range b.Moves {
		events = append(events, event{x.At, x.N, func(list []stay) []stay {
			if x.Move.All() {
				leave(list, x.Move.From, x.At)
			}
			if holds(list, x.Move.To) {
				return list
			}
			return append(list, stay{tank: x.Move.To, from: x.At})
		}})
	}
	for _, x := range b.Losses {
		if x.Ended {
			events = append(events, event{x.At, x.N, func(list []stay) []stay { leave(list, x.Tank, x.At); return list }})
		}
	}
	slices.SortFunc(events, func(a, b event) int {
		if c := a.at.Compare(b.at); c != 0 {
			return c
		}
		return a.n - b.n
	})
	var list []stay
	for _, e := range events {
		list = e.do(list)
	}
	return list
}

func holds(list []stay, tank string) bool {
	return slices.ContainsFunc(list, func(x stay) bool { return x.tank == tank && x.to.IsZero() })
}

func leave(list []stay, tank string, at time.Time) {
	for i := range list {
		if list[i].tank == tank && list[i].to.IsZero() {
			list[i].to = at
		}
	}
}

// stayFigure names the tanks with the day they went in and the days they stayed.
func (s *Batch) stayFigure(b *model.Batch) figure {
	var parts []string
	for _, x := range stays(b) {
		to, word := x.to, ""
		if to.IsZero() {
			to, word = s.desk.Now, " so far"
		}
		parts = append(parts, fmt.Sprintf("%s %s (%.1f d%s)", x.tank, s.at(x.from).Format("2 Jan"), to.Sub(x.from).Hours()/24, word))
	}
	return figure{name: "tanks", words: strings.Join(parts, ", ")}
}

// feedFigure sums the feeds up.
func (s *Batch) feedFigure(b *model.Batch) figure {
	if len(b.Feeds) == 0 {
		return figure{name: "feeds", words: "never fed, as far as was entered"}
	}
	litres := map[string]float64{}
	longest, before := time.Duration(0), b.Stocked[0].At
	for _, f := range b.Feeds {
		for alga, x := range f.Fed.Litres {
			litres[alga] += x
		}
		longest, before = max(longest, f.At.Sub(before)), f.At
	}
	var parts []string
	for _, alga := range s.desk.Ledger.Room().Algae {
		if x, ok := litres[alga.Name]; ok {
			parts = append(parts, text.Clean(alga.Name)+" "+text.Decimal(x, 2)+" L")
		}
	}
	words := fmt.Sprintf("%s, in all %s; longest pause %s", many(len(b.Feeds), "feed"), strings.Join(parts, ", "), text.Duration(longest))
	if s.desk.Ledger.Here(b) {
		words += ", the last " + text.Duration(s.desk.Now.Sub(before)) + " ago"
	}
	return figure{name: "feeds", words: words}
}

// waterFigure are the temperatures the larvae had.
func (s *Batch) waterFigure(b *model.Batch) figure {
	if len(b.Heat) == 0 {
		return figure{name: "water", words: "no temperature of its tanks was entered"}
	}
	bearable := s.desk.Ledger.Room().House.Temperature.Bearable
	low, high, outside := b.Heat[0].Value, b.Heat[0].Value, 0
	for _, r := range b.Heat {
		low, high = min(low, r.Value), max(high, r.Value)
		if !bearable.Holds(r.Value) {
			outside++
		}
	}
	words := fmt.Sprintf("%s to %s °C in %s, ", text.Decimal(low, 1), text.Decimal(high, 1), many(len(b.Heat), "reading"))
	if outside == 0 {
		words += "all"
	} else {
		words += fmt.Sprintf("%d NOT", outside)
	}
	return figure{
		name: "water", strong: outside > 0,
		words: words + fmt.Sprintf(" within the bearable %s to %s °C", number(bearable.Low), number(bearable.High)),
	}
}

// lookTable lists the looks, the latest first.
func (s *Batch) lookTable(b *model.Batch, w int) []figure {
	if len(b.Looks) == 0 {
		return []figure{{name: "looks", words: "none yet; m on the board or at a tank opens the microscope"}}
	}
	widths := []int{-3, 16, 8, -5, -8, 5, -6, max(0, w-72)}
	list := []figure{{plain: true, words: row(widths, "day", "looks", "tank", "lobes", "golden", "swim", "dead", "")}}
	for _, x := range slices.Backward(b.Looks) {
		l := x.Look
		lobes := ""
		if l.Lobes != nil {
			lobes = fmt.Sprint(*l.Lobes)
		}
		list = append(list, figure{plain: true, words: row(widths, fmt.Sprint(b.AgeDays(x.At, s.desk.Ledger.Room().Zone)), s.moment(x.At),
			l.Tank, lobes, percentage(l.Golden), l.Swim, percentage(l.Dead), text.Clean(l.Text))})
	}
	return list
}

func percentage(x *float64) string {
	if x == nil {
		return ""
	}
	return text.Decimal(*x, 1) + " %"
}

// moveTable lists the moves, the latest first, with sieve and difference of the
// two waters.
func (s *Batch) moveTable(b *model.Batch) []figure {
	if len(b.Moves) == 0 {
		return []figure{{name: "moves", words: "none yet"}}
	}
	widths := []int{-3, 16, 22, -8, -12, 0}
	list := []figure{{plain: true, words: row(widths, "day", "moves", "", "sieve", "waters °C", "difference")}}
	rules := s.desk.Ledger.Room().House.Temperature
	for _, x := range slices.Backward(b.Moves) {
		m := *x.Move
		sieve := ""
		if m.MeshUM != nil {
			sieve = number(*m.MeshUM) + " µm"
		}
		m.MeshUM = nil
		waters, difference := "", "not known"
		if d := (water.Steps{Fine: rules.StepFine, Hold: rules.StepHold}).Compare(m.FromCelsius, m.ToCelsius); d.Verdict != water.Unknown {
			waters = text.Decimal(*m.FromCelsius, 1) + " " + s.desk.Theme.Marks.Arrow + " " + text.Decimal(*m.ToCelsius, 1)
			difference = text.Decimal(d.Celsius, 1) + " °C " + differenceWord(d.Verdict, rules)
		}
		name := moveWords(&m, s.desk.Theme.Marks.Arrow)
		if m.Join {
			name += ", joined"
		}
		list = append(list, figure{plain: true, words: row(widths, fmt.Sprint(b.AgeDays(x.At, s.desk.Ledger.Room().Zone)), s.moment(x.At),
			name, sieve, waters, difference+because(m.Why))})
	}
	return list
}

// differenceWord is the verdict of the house on two waters.
func differenceWord(v water.Verdict, rules model.TemperatureRules) string {
	switch v {
	case water.Hold:
		return "OVER the " + number(rules.StepHold) + " °C hold"
	case water.Check:
		return "over the " + number(rules.StepFine) + " °C step"
	}
	return "fine"
}

func because(why string) string {
	if why == "" {
		return ""
	}
	return " (" + text.Clean(why) + ")"
}
