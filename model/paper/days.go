package paper

import (
	"math"
	"slices"
	"time"

	"drainboard/model"
	"drainboard/model/growth"
)

// LengthDay is the shell lengths of one calendar day, all tanks of the batch
// together.
type LengthDay struct {
	Day     model.Day
	AgeDays int
	Age     float64 // days since hatch, the mean over the readings
	Tanks   []string
	Sample  growth.Sample
	N       Numbers
}

func lengthDays(b *model.Batch, zone *time.Location) []LengthDay {
	var days []LengthDay
	var um []float64
	born := b.Hatched.Instant(zone)
	close := func() {
		if len(days) == 0 {
			return
		}
		last := &days[len(days)-1]
		last.Age /= float64(len(um))
		// Samples are never empty, and the fields' ranges leave none that are not numbers.
		last.Sample, _ = growth.Summarize(um)
	}
	for _, s := range sortedBy(b.Samples, func(s *model.Sample) time.Time { return s.At }) {
		day := model.DayOf(s.At, zone)
		if len(days) == 0 || days[len(days)-1].Day != day {
			close()
			um = nil
			days = append(days, LengthDay{Day: day, AgeDays: b.AgeDays(s.At, zone)})
		}
		last := &days[len(days)-1]
		um = append(um, s.UM...)
		last.Age += float64(len(s.UM)) * s.At.Sub(born).Hours() / 24
		last.N = append(last.N, s.N...)
		last.Tanks = with(last.Tanks, s.Tank)
	}
	close()
	return days
}

// WarmDay is the temperatures of one calendar day in all tanks that held the
// batch.
type WarmDay struct {
	Day            model.Day
	AgeDays        int
	Readings       int
	Min, Mean, Max float64 // the mean is over the readings, not over the hours
	Outside        int     // readings outside the bearable band
	N              Numbers
}

func warmDays(b *model.Batch, room *model.Room) []WarmDay {
	var days []WarmDay
	for _, x := range sortedBy(b.Heat, func(x model.TankReading) time.Time { return x.At }) {
		day := model.DayOf(x.At, room.Zone)
		if len(days) == 0 || days[len(days)-1].Day != day {
			days = append(days, WarmDay{Day: day, AgeDays: b.AgeDays(x.At, room.Zone), Min: math.Inf(1), Max: math.Inf(-1)})
		}
		last := &days[len(days)-1]
		last.Min, last.Max = min(last.Min, x.Value), max(last.Max, x.Value)
		last.Mean = (last.Mean*float64(last.Readings) + x.Value) / float64(last.Readings+1)
		last.Readings++
		last.N = append(last.N, x.N)
		if !room.House.Temperature.Bearable.Holds(x.Value) {
			last.Outside++
		}
	}
	return days
}

// FeedDay is what was poured in on one calendar day.
type FeedDay struct {
	Day     model.Day
	AgeDays int
	Feeds   int
	Tanks   []string
	Litres  map[string]float64 // of culture, by alga
	N       Numbers
}

func feedDays(b *model.Batch, zone *time.Location) []FeedDay {
	var days []FeedDay
	for _, x := range sortedBy(b.Feeds, func(x model.FeedAt) time.Time { return x.At }) {
		day := model.DayOf(x.At, zone)
		if len(days) == 0 || days[len(days)-1].Day != day {
			days = append(days, FeedDay{Day: day, AgeDays: b.AgeDays(x.At, zone), Litres: map[string]float64{}})
		}
		last := &days[len(days)-1]
		last.Feeds++
		last.Tanks = with(last.Tanks, x.Fed.Tank)
		last.N = append(last.N, x.N)
		for alga, litres := range x.Fed.Litres {
			last.Litres[alga] += litres
		}
	}
	return days
}

func sortedBy[T any](items []T, at func(T) time.Time) []T {
	sorted := slices.Clone(items)
	slices.SortStableFunc(sorted, func(a, b T) int { return at(a).Compare(at(b)) })
	return sorted
}

func with(names []string, name string) []string {
	if slices.Contains(names, name) {
		return names
	}
	return append(names, name)
}
