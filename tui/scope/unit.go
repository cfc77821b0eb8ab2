package scope

import (
	"math"
	"strconv"
	"time"

	"drainboard/model"
	"drainboard/tui/desk"
	"drainboard/tui/text"
)

// unit is what lengths are typed in: micrometres, or divisions of an eyepiece.
type unit struct {
	name  string  // of the eyepiece; empty for micrometres
	umPer float64 // um of one division; 0 for micrometres
}

// um is a typed value in micrometres, to the hundredth, which keeps a tenth of a
// division.
func (u unit) um(typed float64) float64 {
	if u.umPer == 0 {
		return typed
	}
	return math.Round(100*typed*u.umPer) / 100
}

// typed is a length as it would be typed in the unit.
func (u unit) typed(um float64) float64 {
	if u.umPer == 0 {
		return um
	}
	return math.Round(100*um/u.umPer) / 100
}

// short is the unit beside a figure.
func (u unit) short() string {
	if u.umPer == 0 {
		return "µm"
	}
	return "div"
}

// words is the unit with its factor.
func (u unit) words() string {
	if u.umPer == 0 {
		return "in µm"
	}
	return text.Clean(u.name) + " eyepiece, " + figure(u.umPer) + " µm a division"
}

// factor is the unit as an entry keeps it.
func (u unit) factor() *float64 {
	if u.umPer == 0 {
		return nil
	}
	return &u.umPer
}

// after is the unit that follows among micrometres and the house's eyepieces.
func (u unit) after(house model.House) unit {
	eyepieces := house.Growth.Eyepieces
	for i, e := range eyepieces {
		if u.umPer == e.UMPer && i+1 < len(eyepieces) {
			return unit{eyepieces[i+1].Name, eyepieces[i+1].UMPer}
		}
		if u.umPer == e.UMPer {
			return unit{}
		}
	}
	if u.umPer == 0 && len(eyepieces) > 0 {
		return unit{eyepieces[0].Name, eyepieces[0].UMPer}
	}
	return unit{}
}

// today is how far back the unit of earlier readings is taken up, and among how
// many entries it is looked for.
const (
	today        = 12 * time.Hour
	lastOfTheDay = 2000
)

// lastUnit is the unit of the last lengths of the day, of whatever tank: one
// eyepiece serves a row of tanks, and after a restart the same one goes on.
func lastUnit(d *desk.Desk) unit {
	entries := d.Ledger.Entries()
	for i := len(entries) - 1; i >= max(0, len(entries)-lastOfTheDay); i-- {
		if d.Now.Sub(entries[i].At) > today {
			break
		}
		if f, ok := entries[i].Fact.(*model.Sizes); ok {
			return unitOf(d.Ledger.Room().House, f)
		}
	}
	return unit{}
}

// unitOf is the unit lengths were typed in.
func unitOf(house model.House, f *model.Sizes) unit {
	if f.UMPerDivision == nil {
		return unit{}
	}
	for _, e := range house.Growth.Eyepieces {
		if e.UMPer == *f.UMPerDivision {
			return unit{e.Name, e.UMPer}
		}
	}
	return unit{"earlier", *f.UMPerDivision}
}

// figure writes a number with the decimals it has.
func figure(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }
