package growth

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// Look is what one look under the microscope says of a batch or a tank.
type Look struct {
	AgeDays float64 // since hatch
	MeanUM  float64 // mean shell length, um
	SDUM    float64 // standard deviation of the readings, um; 0 where it is not known
	N       int     // readings
}

// dayApart is how far apart, in days, two looks must lie to count as looks of different days.
const dayApart = 0.5

// oldest bounds the ages that are accepted, in days: far beyond any larval life.
const oldest = 1e4

// mostReadings bounds the readings of a look, so that sums of them cannot overflow.
const mostReadings = 1_000_000_000

func (l Look) check() error {
	problem := ""
	switch {
	case math.IsNaN(l.AgeDays) || math.Abs(l.AgeDays) > oldest:
		problem = "the age is not a number of days"
	case !measurable(l.MeanUM) || l.MeanUM <= 0:
		problem = "the mean is not a length"
	case !measurable(l.SDUM) || l.SDUM < 0:
		problem = "the standard deviation is not one"
	case l.N < 1:
		problem = "it has no readings"
	case l.N > mostReadings:
		problem = "nobody measures so many"
	default:
		return nil
	}
	return fmt.Errorf("look at day %g (mean %g um, sd %g, n %d): %s", l.AgeDays, l.MeanUM, l.SDUM, l.N, problem)
}

// checked refuses the first look that cannot be one and gives the rest in order of age.
func checked(looks []Look) ([]Look, error) {
	for _, l := range looks {
		if err := l.check(); err != nil {
			return nil, err
		}
	}
	sorted := slices.Clone(looks)
	slices.SortStableFunc(sorted, func(a, b Look) int { return cmp.Compare(a.AgeDays, b.AgeDays) })
	return sorted, nil
}

// byDay groups looks in order of age: a group holds what lies within half a day of its first.
func byDay(sorted []Look) [][]Look {
	var days [][]Look
	for _, l := range sorted {
		last := len(days) - 1
		if last >= 0 && l.AgeDays-days[last][0].AgeDays < dayApart {
			days[last] = append(days[last], l)
			continue
		}
		days = append(days, []Look{l})
	}
	return days
}

// Pool joins the looks of several tanks into one look a day, as if all readings of that day had
// been one sample. Looks within half a day of one another are of one day. The result is in order of
// age. A look whose standard deviation is not known adds only its mean.
func Pool(looks []Look) ([]Look, error) {
	sorted, err := checked(looks)
	if err != nil {
		return nil, err
	}
	var pooled []Look
	for _, day := range byDay(sorted) {
		pooled = append(pooled, poolDay(day))
	}
	return pooled, nil
}

func poolDay(day []Look) Look {
	if len(day) == 1 {
		return day[0]
	}
	var all Look
	for _, l := range day {
		all.N += l.N
	}
	total := float64(all.N)
	for _, l := range day {
		share := float64(l.N) / total
		all.AgeDays += share * l.AgeDays
		all.MeanUM += share * l.MeanUM
	}
	squares := 0.0
	for _, l := range day {
		off := l.MeanUM - all.MeanUM
		squares += float64(l.N-1)*l.SDUM*l.SDUM + float64(l.N)*off*off
	}
	if all.N > 1 {
		all.SDUM = math.Sqrt(squares / (total - 1))
	}
	return all
}
