package tank

import (
	"fmt"
	"time"

	"drainboard/model"
	"drainboard/model/water"
	"drainboard/tui/chart"
	"drainboard/tui/desk"
	"drainboard/tui/text"
)

// waterWords are the last temperature with its age, and where it is heading.
func waterWords(d *desk.Desk, t model.TankNow) (figure, heading string, outside bool) {
	last, ok := t.LastCelsius()
	if !ok {
		return "no temperature of this water" + d.Theme.Marks.Stale, "", false
	}
	age := d.Now.Sub(last.At)
	figure = text.Decimal(last.Value, 1) + " °C"
	if age > d.Ledger.ReadingLimit() {
		figure += d.Theme.Marks.Stale
	}
	outside = !d.Ledger.Room().House.Temperature.Bearable.Holds(last.Value)
	return figure + ", " + text.Duration(age) + " ago", headingWords(d, t), outside
}

// headingWords say where the temperatures of this water are going.
func headingWords(d *desk.Desk, t model.TankNow) string {
	bearable := d.Ledger.Room().House.Temperature.Bearable
	timed := make([]water.Timed, len(t.Celsius))
	for i, r := range t.Celsius {
		timed[i] = water.Timed{Hours: r.At.Sub(t.Celsius[0].At).Hours(), Celsius: r.Value}
	}
	trend, err := water.NewTrend(water.Band{Low: bearable.Low, High: bearable.High}, timed)
	if err != nil {
		return err.Error()
	}
	way := "rising"
	if trend.PerHour < 0 {
		way = "falling"
	}
	pace := fmt.Sprintf("%s %.1f °C an hour", way, max(trend.PerHour, -trend.PerHour))
	if pace == way+" 0.0 °C an hour" {
		pace = way + " less than 0.1 °C an hour"
	}
	switch trend.Trust {
	case water.NoTrend:
		return "no trend yet"
	case water.Flat:
		return fmt.Sprintf("steady, as far as %d readings tell", trend.Readings)
	case water.Read:
		return "OUTSIDE " + band(bearable) + " °C"
	}
	edge := bearable.High
	if trend.Heading == water.TooCold {
		edge = bearable.Low
	}
	left := time.Duration(trend.Hours*float64(time.Hour)) - d.Now.Sub(t.Celsius[len(t.Celsius)-1].At)
	words := pace + ", " + text.Decimal(edge, 1) + " °C "
	switch {
	case left <= 0:
		words += "reached by now, read again"
	case trend.Hours > 48:
		return pace + ", no edge within two days"
	default:
		words += text.Until(left, false)
	}
	switch trend.Trust {
	case water.Few:
		words += " by two readings only"
	case water.Far:
		words += ", far ahead of the readings"
	}
	return words
}

func band(b model.Band) string { return text.Decimal(b.Low, 1) + " to " + text.Decimal(b.High, 1) }

// mostSpark is the most cells the temperatures take.
const mostSpark = 24

// spark is the temperatures of this water at a glance, oldest first.
func spark(d *desk.Desk, t model.TankNow) string {
	if len(t.Celsius) < 2 {
		return ""
	}
	values := make([]float64, len(t.Celsius))
	for i, r := range t.Celsius {
		values[i] = r.Value
	}
	mode := chart.Block
	if d.Theme.ASCII {
		mode = chart.ASCII
	}
	drawn := chart.Sparkline{Values: values}.Draw(min(len(values), mostSpark), 1, mode)
	return drawn.Styled(func(_ chart.Class, cells string) string { return d.Theme.Water.Render(cells) })[0]
}
