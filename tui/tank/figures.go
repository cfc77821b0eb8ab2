package tank

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"drainboard/model"
	"drainboard/model/count"
	"drainboard/model/growth"
	"drainboard/tui/desk"
	"drainboard/tui/text"
)

// figure is one thing that is known: its name, its words, and what is drawn after
// them.
type figure struct {
	name, words, after string
	strong             bool
}

// figures are what is known of the tank now, the most urgent first.
func figures(d *desk.Desk, t model.TankNow) []figure {
	temperature, heading, outside := waterWords(d, t)
	water := figure{name: "water", words: temperature, after: spark(d, t)}
	waters := []figure{water}
	if heading != "" {
		waters = append(waters, figure{name: "trend", words: heading, strong: outside})
	}
	waters = append(waters, tests(d, t)...)
	if t.Larvae == nil {
		return empty(d, t, waters)
	}
	list := append([]figure{change(d, t)}, waters...)
	list = append(list, larvae(d, t), lengths(d, t), sieve(d, t), fed(d, t), look(d, t))
	if marks := marks(d, t); marks != "" {
		list = append(list, figure{name: "marks", words: marks, strong: true})
	}
	return list
}

// empty is what is known of a tank without larvae.
func empty(d *desk.Desk, t model.TankNow, waters []figure) []figure {
	var list []figure
	if !t.Known {
		list = append(list, figure{name: "state", words: "nothing was entered yet; taken as dirty until then"})
	} else {
		zone := d.Ledger.Room().Zone
		list = append(list, figure{name: "since", words: t.Since.In(zone).Format("Mon 2 Jan 15:04") + ", " + text.Duration(d.Now.Sub(t.Since))})
	}
	if t.State == model.Ready {
		list = append(list, waters...)
	}
	if marks := marks(d, t); marks != "" {
		list = append(list, figure{name: "marks", words: marks, strong: true})
	}
	return list
}

func change(d *desk.Desk, t model.TankNow) figure {
	due, zone := d.Ledger.Due(t), d.Ledger.Room().Zone
	over := d.Ledger.Overdue(t, d.Now)
	words := text.Until(due.Sub(d.Now), over)
	if !over {
		words = "due " + words
	}
	return figure{
		name: "change", strong: !due.After(d.Now),
		words: words + ", " + due.In(zone).Format("Mon 2 Jan 15:04") + "; water " + text.Duration(d.Now.Sub(t.Since)) + " old",
	}
}

// larvae are the number with its limits, its age, and how dense they stand.
func larvae(d *desk.Desk, t model.TankNow) figure {
	f := figure{name: "larvae"}
	n := t.Larvae.Number
	if !n.Value.Known {
		f.words = "never counted" + d.Theme.Marks.Stale
		return f
	}
	f.words = estimate(n)
	if t.Larvae.CountedAt.IsZero() {
		f.words += ", as stocked, never counted" + d.Theme.Marks.Stale
	} else {
		f.words += ", counted " + ago(d, t.Larvae.CountedAt)
	}
	per, _ := t.PerLitre()
	days, _ := d.Ledger.Age(t, d.Now)
	f.words += "; " + text.Decimal(per, 1) + " a litre"
	if limit := d.Ledger.Room().House.DensityAt(days); limit > 0 {
		f.words += ", limit " + text.Decimal(limit, 0)
	}
	f.strong = d.Ledger.TooDense(t, d.Now)
	return f
}

// estimate is a number with the limits it lies between, where they are known.
func estimate(e count.Estimate) string {
	words := text.Decimal(e.Value.X, 0)
	if e.Low.Known && e.High.Known && e.Low.X < e.High.X {
		words += " (" + text.Decimal(e.Low.X, 0) + " to " + text.Decimal(e.High.X, 0) + ")"
	}
	return words
}

func ago(d *desk.Desk, at time.Time) string { return text.Duration(d.Now.Sub(at)) + " ago" }

// lengths are the last shell lengths and the growth since the ones before.
func lengths(d *desk.Desk, t model.TankNow) figure {
	f := figure{name: "lengths", words: "none read yet"}
	if t.Larvae.Sample == nil {
		return f
	}
	sum, err := growth.Summarize(t.Larvae.Sample.UM)
	if err != nil {
		f.words = err.Error()
		return f
	}
	f.words = fmt.Sprintf("mean %s µm, n %d", text.Decimal(sum.Mean, 1), sum.N)
	if sum.HasSpread {
		f.words += ", sd " + text.Decimal(sum.SD, 1)
	}
	f.words += ", " + ago(d, t.Larvae.Sample.Last) + grown(d, t, sum)
	return f
}

// grown is the growth a day since the lengths before, empty where it is not known.
func grown(d *desk.Desk, t model.TankNow, sum growth.Sample) string {
	before := t.Larvae.Before
	if before == nil {
		return ""
	}
	first, err := growth.Summarize(before.UM)
	if err != nil {
		return ""
	}
	born := d.Ledger.Batch(t.Larvae.Batch).Hatched.Instant(d.Ledger.Room().Zone)
	days := func(at time.Time) float64 { return at.Sub(born).Hours() / 24 }
	c, err := growth.Compare(first.Look(days(before.At)), sum.Look(days(t.Larvae.Sample.At)))
	if err != nil || !c.HasRate {
		return ""
	}
	words := fmt.Sprintf("; %+.1f µm a day", c.PerDay)
	if c.HasInterval {
		words += fmt.Sprintf(" (%.1f to %.1f)", c.PerDayInterval.Low, c.PerDayInterval.High)
	}
	return words
}

func sieve(d *desk.Desk, t model.TankNow) figure {
	days, _ := d.Ledger.Age(t, d.Now)
	meshes := d.Ledger.Room().House.MeshAt(days)
	words := make([]string, len(meshes))
	for i, um := range meshes {
		words[i] = strconv.FormatFloat(um, 'f', -1, 64)
	}
	if len(words) == 0 {
		return figure{name: "sieve", words: "the house sets none for the age"}
	}
	return figure{name: "sieve", words: strings.Join(words, " or ") + " µm for the age"}
}

func fed(d *desk.Desk, t model.TankNow) figure {
	words := "never fed here"
	if !t.Larvae.Fed.IsZero() {
		words = "fed " + ago(d, t.Larvae.Fed)
	}
	due := d.Ledger.FeedDue(t)
	return figure{name: "food", words: words + ", next " + text.Until(due.Sub(d.Now), false), strong: d.Now.After(due)}
}

func look(d *desk.Desk, t model.TankNow) figure {
	due := d.Ledger.LookDue(t)
	f := figure{name: "look", words: "never", strong: d.Now.After(due)}
	if l := t.Larvae.Look; l != nil {
		words := strings.TrimPrefix(model.Sentence(l), l.Tank+" looked at, ")
		f.words = text.Clean(words) + ", " + ago(d, t.Larvae.Seen)
	}
	f.words += "; next " + text.Until(due.Sub(d.Now), false)
	return f
}

// tests are the last water test and food count of the water in the tank.
func tests(d *desk.Desk, t model.TankNow) []figure {
	var list []figure
	if n := len(t.Tests); n > 0 {
		last := t.Tests[n-1]
		words := strings.TrimPrefix(model.Sentence(last.Water), last.Water.Tank+" water, ")
		list = append(list, figure{name: "tested", words: words + ", " + ago(d, last.At)})
	}
	if c := t.Left; c != nil {
		if cells, err := cellsPerML(c.Cells); err == nil {
			list = append(list, figure{name: "cells left", words: estimate(cells.PerML) + " a mL, " + ago(d, c.At)})
		}
	}
	return list
}

func cellsPerML(c *model.Cells) (count.Cells, error) {
	dilution := 1.0
	if c.Dilution != nil {
		dilution = *c.Dilution
	}
	return count.CellsPerML(c.Counts, c.ChamberML, dilution)
}

// marks are what stands out, with why the tank is suspect.
func marks(d *desk.Desk, t model.TankNow) string {
	list := d.Ledger.Marks(t, d.Now)
	for i, m := range list {
		if m == "suspect" && t.SuspectWhy != "" {
			list[i] = m + " (" + text.Clean(t.SuspectWhy) + ")"
		}
	}
	return strings.Join(list, ", ")
}
