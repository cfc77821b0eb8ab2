package water

import (
	"cmp"
	"math"
	"slices"
)

// Timed is a reading at a time in hours, counted from any fixed moment.
type Timed struct{ Hours, Celsius float64 }

// Band is a range of temperature; both ends are inside it.
type Band struct{ Low, High float64 }

// Heading is where readings are going with respect to a band.
type Heading string

// The headings.
const (
	Inside  Heading = "inside"  // staying, as far as the readings tell
	TooCold Heading = "cold"    // going out, or already out, at the low end
	TooWarm Heading = "warm"    // the same at the high end
	Untold  Heading = "unknown" // too little to tell
)

// Trust is how far a trend can be relied on.
type Trust string

// The degrees of trust.
const (
	NoTrend Trust = "none" // fewer than two readings, or less than a minute between them
	Few     Trust = "few"  // two readings: a line, but nothing tells how good it is
	Flat    Trust = "flat" // the slope cannot be told from none
	Far     Trust = "far"  // the end of the band lies further ahead than the readings reach back, twice over
	Read    Trust = "read" // the last reading itself is outside the band; no line is needed
	Fair    Trust = "fair" // three readings or more, and a slope clear of their own scatter
)

// Trend is the straight line through timed readings and what it says.
type Trend struct {
	Readings int
	PerHour  float64 // slope, degrees Celsius an hour
	Margin   float64 // 95 % half-width of the slope; 0 where there are fewer than three readings
	Heading  Heading
	Hours    float64 // from the last reading until the line leaves the band; 0 if it is out, or Heading is Inside
	Trust    Trust
}

// NewTrend fits the line by least squares and asks where it leaves the band.
// The margin of the slope is Student's t times its standard error, and never
// less than what a thermometer read to a tenth of a degree leaves open.
// Whether the last reading is outside is told from that reading alone.
func NewTrend(band Band, readings []Timed) (Trend, error) {
	if err := checkTrend(band, readings); err != nil {
		return Trend{}, err
	}
	t := Trend{Readings: len(readings), Heading: Untold, Trust: NoTrend}
	if len(readings) == 0 {
		return t, nil
	}
	sorted := slices.Clone(readings)
	slices.SortStableFunc(sorted, func(a, b Timed) int { return cmp.Compare(a.Hours, b.Hours) })
	last := sorted[len(sorted)-1]
	if span := last.Hours - sorted[0].Hours; span >= 1.0/60 {
		l := fitLine(sorted)
		t.PerHour, t.Margin = l.slope, l.margin
		t.ask(band, l.at(last.Hours), span)
	}
	if side := band.side(last.Celsius); side != Inside {
		t.Heading, t.Hours, t.Trust = side, 0, Read
	}
	return t, nil
}

// ask reads heading, hours and trust off a line that stands at now.
func (t *Trend) ask(band Band, now, span float64) {
	if t.PerHour == 0 || t.Readings > 2 && math.Abs(t.PerHour) <= t.Margin {
		t.Heading, t.Trust = Inside, Flat
		return
	}
	edge := band.Low
	t.Heading = TooCold
	if t.PerHour > 0 {
		edge, t.Heading = band.High, TooWarm
	}
	t.Hours = max(0, (edge-now)/t.PerHour)
	switch {
	case t.Readings == 2:
		t.Trust = Few
	case t.Hours > 2*span:
		t.Trust = Far
	default:
		t.Trust = Fair
	}
}

func (b Band) side(celsius float64) Heading {
	switch {
	case celsius < b.Low:
		return TooCold
	case celsius > b.High:
		return TooWarm
	default:
		return Inside
	}
}

func checkTrend(band Band, readings []Timed) error {
	if !(band.Low < band.High) {
		return &FieldError{"bearable", plain(band.Low) + " to " + plain(band.High), "the first must be below the second"}
	}
	for _, r := range readings {
		if !finite(r.Hours) {
			return refuse("hours", r.Hours, "must be a number")
		}
		if err := waterTemperature("celsius", r.Celsius); err != nil {
			return err
		}
	}
	return nil
}
