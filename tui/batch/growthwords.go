package batch

import (
	"fmt"
	"strings"

	"drainboard/model"
	"drainboard/model/growth"
	"drainboard/tui/text"
)

// growthWords say how a batch grows, from how much that is known, and when it
// should be ready.
func (s *Batch) growthWords(b *model.Batch) []figure {
	f := s.of(b)
	list := []figure{s.readyFigure(b, f)}
	if f.growErr == nil {
		list = append(list, rateFigure(f))
	}
	list = append(list, s.lengthsFigure(b, f), s.lobesFigure(b))
	if words := sinceBefore(f); words != "" {
		list = append(list, figure{name: "last step", words: words})
	}
	if f.growErr == nil {
		list = append(list, figure{name: "curve", words: micro(f.growth.Why)})
	}
	list = append(list, s.corridorFigure(f))
	if usual := model.DefaultHouse().Growth.ReadyUM; s.desk.Ledger.Room().House.Growth.ReadyUM == usual {
		list = append(list, figure{name: "rule", words: fmt.Sprintf(
			"%s µm is the program's default and from memory, not a published figure: set ready_um in room.toml by your own larvae", um(usual))})
	}
	return list
}

func um(x float64) string { return text.Decimal(x, 0) }

// lengthsFigure is how much was read, and the latest mean.
func (s *Batch) lengthsFigure(b *model.Batch, f *figures) figure {
	out := figure{name: "lengths"}
	last, ok := f.last()
	switch {
	case f.looksErr != nil:
		out.words = f.looksErr.Error()
		return out
	case !ok:
		out.words = "none of " + text.Clean(b.Name) + " were read yet; m on the board or at a tank opens the microscope"
		return out
	}
	out.words = fmt.Sprintf("%s of %s; the last day %.1f, %s: mean %s µm",
		many(f.readings(), "reading"), many(len(f.looks), "day"), last.AgeDays, s.dayAt(b, last.AgeDays), text.Decimal(last.MeanUM, 1))
	if in, known := last.MeanInterval(); known {
		out.words += " (" + interval(in, 1) + ")"
	}
	out.words += fmt.Sprintf(", n %d", last.N)
	if last.SDUM > 0 {
		out.words += ", sd " + text.Decimal(last.SDUM, 1)
	}
	return out
}

// rateFigure is the growth a day by the better shape.
func rateFigure(f *figures) figure {
	fit := f.growth.Best()
	words := fmt.Sprintf("%+.1f µm a day", fit.PerDay(fit.LastAgeDay))
	if in, known := fit.PerDayInterval(fit.LastAgeDay); known {
		words += " (" + interval(in, 1) + ")"
	} else {
		words += ", how sure is not known: that needs lengths of three days"
	}
	if fit.Shape == growth.Exponential {
		words += " at the last length"
		if days, ok := fit.DoublingDays(); ok {
			words += fmt.Sprintf(", doubling in %.1f days", days)
		}
	}
	return figure{name: "growth", words: words}
}

// sinceBefore is the growth between the last two days of lengths, empty where
// there are none.
func sinceBefore(f *figures) string {
	if len(f.looks) < 2 {
		return ""
	}
	c, err := growth.Compare(f.looks[len(f.looks)-2], f.looks[len(f.looks)-1])
	if err != nil || !c.HasRate {
		return ""
	}
	words := fmt.Sprintf("%+.1f µm a day in %.1f days", c.PerDay, c.Days)
	if c.HasInterval {
		words += " (" + interval(c.PerDayInterval, 1) + ")"
		if !c.Sure() {
			words += ", no more than chance explains"
		}
	}
	return words
}

// readyFigure is the day on which the batch should be ready, and how sure it is.
func (s *Batch) readyFigure(b *model.Batch, f *figures) figure {
	length := um(s.desk.Ledger.Room().House.Growth.ReadyUM) + " µm"
	out := figure{name: "ready", strong: true}
	switch {
	case f.growErr != nil || f.readyErr != nil:
		out.words = fmt.Sprintf("no ready day: lengths of fewer than three days (of %d so far)", len(f.looks))
		return out
	case f.ready.State == growth.Never:
		out.words = fmt.Sprintf("no ready day: at this rate %s is not reached within a year", length)
	case f.ready.State == growth.Reached:
		out.words = fmt.Sprintf("%s reached by the curve on %s", length, s.dated(b, f.ready.AgeDays))
	case !s.desk.Ledger.Here(b):
		out.words = fmt.Sprintf("%s was not reached in the room; the curve would meet it on %s", length, s.dated(b, f.ready.AgeDays))
	default:
		out.words = fmt.Sprintf("%s on %s", length, s.dated(b, f.ready.AgeDays))
	}
	if f.ready.State != growth.Never {
		out.words += s.limits(b, f.ready)
	}
	out.words += fmt.Sprintf("; by %s of %s", many(f.ready.Readings, "reading"), many(f.ready.Days, "day"))
	if f.ready.State == growth.Ahead {
		out.words += s.caution(b, f)
	}
	return out
}

// limits are the days between which the curve may reach the length.
func (s *Batch) limits(b *model.Batch, r growth.Ready) string {
	low, high := s.dayAt(b, r.Interval.Low), s.dayAt(b, r.Interval.High)
	switch {
	case r.LowOpen && r.HighOpen:
		return "; neither an earliest nor a latest day, the growth is not sure enough"
	case r.LowOpen:
		return fmt.Sprintf("; no earliest day, the latest %s", high)
	case r.HighOpen:
		return fmt.Sprintf("; the earliest %s, no latest day: the growth is not sure enough", low)
	}
	return fmt.Sprintf(" (%s to %s, 95 %%)", low, high)
}

// caution says what else is to be known of a ready day that is a forecast.
func (s *Batch) caution(b *model.Batch, f *figures) string {
	words := ""
	if f.ready.Far {
		words += "; beyond twice the span of the looks: to plan by, not to rely on"
	}
	last, _ := f.last()
	if now := s.age(b, s.desk.Now); s.desk.Ledger.Here(b) && now > f.ready.AgeDays {
		words += fmt.Sprintf("; past by now, with no lengths since %s: look", s.dayAt(b, last.AgeDays))
	}
	return words
}

// corridorFigure is where the last look stands in the house corridor.
func (s *Batch) corridorFigure(f *figures) figure {
	out := figure{name: "corridor"}
	c := s.desk.Ledger.Corridor()
	last, ok := f.last()
	switch {
	case len(c) == 0:
		out.words = "the room gives none; [[house.growth]] in room.toml draws it"
		return out
	case !ok:
		out.words = "nothing to hold against it yet"
		return out
	}
	band, found := c.At(last.AgeDays)
	if !found {
		out.words = "begins after the last look"
		return out
	}
	place := c.Place(last.AgeDays, last.MeanUM)
	out.words = fmt.Sprintf("the last look is %s the house's %s to %s µm", place, um(band.LowUM), um(band.HighUM))
	if behind, err := c.Behind(f.looks); err == nil && behind {
		out.words += ", and so was the one before: BEHIND"
		out.strong = true
	}
	return out
}

// lobesFigure holds the lobes seen against the house's at the ready age.
func (s *Batch) lobesFigure(b *model.Batch) figure {
	want := s.desk.Ledger.Room().House.Growth.ReadyLobes
	since := map[int]model.LookAt{} // first look at which so many were seen
	var last *model.LookAt
	for i, l := range b.Looks {
		if l.Look.Lobes == nil {
			continue
		}
		last = &b.Looks[i]
		if _, seen := since[*l.Look.Lobes]; !seen {
			since[*l.Look.Lobes] = l
		}
	}
	if last == nil {
		return figure{name: "lobes", words: fmt.Sprintf("none were noted yet; the house calls %d ready", want)}
	}
	words := fmt.Sprintf("%d of the %d that the house calls ready, in %s on %s", *last.Look.Lobes, want, last.Look.Tank, s.date(last.At))
	var firsts []string
	for _, n := range []int{2, 4, 6} {
		if l, ok := since[n]; ok {
			firsts = append(firsts, fmt.Sprintf("%d on day %d", n, b.AgeDays(l.At, s.desk.Ledger.Room().Zone)))
		}
	}
	return figure{name: "lobes", words: words + "; first seen: " + strings.Join(firsts, ", ")}
}
