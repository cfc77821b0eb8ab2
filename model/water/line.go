package water

import "math"

// line is a least-squares line through timed readings.
type line struct {
	hours, celsius float64 // the point of the means, which it passes through
	slope          float64
	margin         float64 // 95 % half-width of the slope
}

func (l line) at(hours float64) float64 { return l.celsius + l.slope*(hours-l.hours) }

// readTo is the standard deviation a reading has from being written down to a
// tenth of a degree: that of a uniform distribution 0.1 wide.
const readTo = 0.1 / 3.4641016151377544

// fitLine needs readings at two times at least.
func fitLine(readings []Timed) line {
	n := float64(len(readings))
	var l line
	for _, r := range readings {
		l.hours += r.Hours / n
		l.celsius += r.Celsius / n
	}
	var sxx, sxy float64
	for _, r := range readings {
		dx := r.Hours - l.hours
		sxx += dx * dx
		sxy += dx * (r.Celsius - l.celsius)
	}
	l.slope = sxy / sxx
	if len(readings) > 2 {
		var rest float64
		for _, r := range readings {
			d := r.Celsius - l.at(r.Hours)
			rest += d * d
		}
		s := math.Sqrt(rest / (n - 2))
		l.margin = max(t975(len(readings)-2)*s, 1.96*readTo) / math.Sqrt(sxx)
	}
	return l
}

// t975 is the 97.5 % point of Student's t, to three decimals. Above 30
// degrees of freedom it stays at the value for 30, which is the careful side.
func t975(df int) float64 {
	table := [...]float64{
		12.706, 4.303, 3.182, 2.776, 2.571, 2.447, 2.365, 2.306, 2.262, 2.228,
		2.201, 2.179, 2.160, 2.145, 2.131, 2.120, 2.110, 2.101, 2.093, 2.086,
		2.080, 2.074, 2.069, 2.064, 2.060, 2.056, 2.052, 2.048, 2.045, 2.042,
	}
	return table[min(df, len(table))-1]
}
