package model

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"drainboard/model/water"
)

// WayOut is one thing a crew can do about a held move.
type WayOut struct {
	Text string
	Into string // the tank to go into instead; empty for the other ways
}

// WaysOut lists what can be done about two waters that lie too far apart, with
// figures: other sea water swapped in or added, waiting, another ready tank.
func (l *Ledger) WaysOut(leg Leg, from, to float64, now time.Time) []WayOut {
	aim := l.Rules().Aim(from, to)
	ways := l.blends(leg, to, aim)
	if wait, ok := l.waiting(leg, aim, now); ok {
		ways = append(ways, wait)
	}
	return append(ways, l.otherTanks(leg, from)...)
}

// blends offers every water source whose temperature is known and lies beyond
// the temperature aimed at.
func (l *Ledger) blends(leg Leg, to, aim float64) []WayOut {
	t, _ := l.Tank(leg.To)
	var ways []WayOut
	for _, s := range l.room.Supplies {
		now := l.fold.supplies[s.Name]
		if len(now.Celsius) == 0 || isAir(s.Name) {
			continue
		}
		with := now.Celsius[len(now.Celsius)-1].Value
		p, err := water.Blend{Litres: t.Tank.Litres, Have: to, Want: aim, With: with}.ByVolume()
		if err != nil {
			continue
		}
		ways = append(ways, WayOut{Text: fmt.Sprintf("swap %.0f L of %s for %s water of %.1f °C (or add %.0f L if there is room): %.1f °C",
			up(p.Swap), leg.To, s.Name, with, up(p.Add), aim)})
	}
	if len(ways) > 0 || to == aim {
		return ways
	}
	// No source was measured: give the figure for the water people can make.
	with := aim + 2*(aim-to)
	if p, err := (water.Blend{Litres: t.Tank.Litres, Have: to, Want: aim, With: with}).ByVolume(); err == nil {
		ways = append(ways, WayOut{Text: fmt.Sprintf("swap %.0f L of %s for sea water of %.1f °C: %.1f °C", up(p.Swap), leg.To, with, aim)})
	}
	return ways
}

// up rounds litres up to whole ones, binary dust aside.
func up(litres float64) float64 { return math.Ceil(litres - 1e-6) }

// waitReach is how far back readings tell how fast a tank changes.
const waitReach = 12 * time.Hour

// waiting works out from the destination's own readings how long it takes to
// come to the temperature aimed at.
func (l *Ledger) waiting(leg Leg, aim float64, now time.Time) (WayOut, bool) {
	t, _ := l.Tank(leg.To)
	first := slices.IndexFunc(t.Celsius, func(r Reading) bool { return now.Sub(r.At) <= waitReach })
	if first < 0 || len(t.Celsius)-first < 2 {
		return WayOut{}, false
	}
	readings := t.Celsius[first:]
	air, ok := l.air()
	if !ok {
		return l.straightWait(leg, readings, aim)
	}
	c := water.Cooling{Start: readings[0].Value, Room: air, Want: aim}
	for _, r := range readings[1:] {
		if minutes := r.At.Sub(readings[0].At).Minutes(); minutes > 0 {
			c.Readings = append(c.Readings, water.Reading{Minutes: minutes, Celsius: r.Value})
		}
	}
	w, err := c.Wait()
	if err != nil {
		return l.straightWait(leg, readings, aim)
	}
	return WayOut{Text: fmt.Sprintf("wait %.0f min from its last reading, by %d readings of %s and a room of %.1f °C",
		math.Ceil(w.FromLast), len(readings), leg.To, air)}, true
}

// straightWait carries the last two readings on as a straight line, where no
// one measured the air.
func (l *Ledger) straightWait(leg Leg, readings []Reading, aim float64) (WayOut, bool) {
	a, b := readings[len(readings)-2], readings[len(readings)-1]
	minutes := b.At.Sub(a.At).Minutes()
	rate := (b.Value - a.Value) / minutes
	left := (aim - b.Value) / rate
	if minutes < 1 || rate == 0 || left <= 0 || left > 24*60 || math.IsNaN(left) {
		return WayOut{}, false
	}
	return WayOut{Text: fmt.Sprintf("wait about %.0f min, if %s goes on as between its last two readings", math.Ceil(left), leg.To)}, true
}

// air returns the last temperature of the air, where the room has a supply of
// that name to read it from.
func (l *Ledger) air() (float64, bool) {
	for _, supply := range l.room.Supplies {
		if s := l.fold.supplies[supply.Name]; isAir(supply.Name) && len(s.Celsius) > 0 {
			return s.Celsius[len(s.Celsius)-1].Value, true
		}
	}
	return 0, false
}

// isAir reports whether a supply is no water but the air of the room.
func isAir(supply string) bool {
	return strings.EqualFold(supply, "air") || strings.EqualFold(supply, "room")
}

// otherTanks offers ready tanks that are large enough and whose temperature is
// near enough, the nearest first.
func (l *Ledger) otherTanks(leg Leg, from float64) []WayOut {
	source, _ := l.Tank(leg.From)
	type near struct {
		way WayOut
		gap float64
	}
	var found []near
	for _, t := range l.fold.tanks {
		last, ok := t.celsius()
		if t.State != Ready || !ok || t.Tank.Name == leg.To || t.Tank.Litres < source.Tank.Litres {
			continue
		}
		d := l.Rules().Compare(&from, &last.Value)
		if d.Verdict == water.Hold {
			continue
		}
		found = append(found, near{WayOut{
			Text: fmt.Sprintf("go into %s instead: %.1f °C, %.1f apart, %s", t.Tank.Name, last.Value, d.Celsius, d.Verdict),
			Into: t.Tank.Name,
		}, d.Celsius})
	}
	slices.SortStableFunc(found, func(a, b near) int { return cmp.Compare(a.gap, b.gap) })
	ways := make([]WayOut, len(found))
	for i, n := range found {
		ways[i] = n.way
	}
	return ways
}

// InsteadOf lists the ready tanks that a move could go into where its own
// destination is in no state to take larvae: the nearest in temperature first,
// those that were not read last.
func (l *Ledger) InsteadOf(leg Leg, now time.Time) []WayOut {
	source, _ := l.Tank(leg.From)
	var from *float64
	if last, ok := source.celsius(); ok {
		from = &last.Value
	}
	type candidate struct {
		way WayOut
		gap float64
	}
	var found []candidate
	for _, t := range l.fold.tanks {
		if t.State != Ready || t.Tank.Name == leg.To || !l.roomy(source, t, now) {
			continue
		}
		text, gap := fmt.Sprintf("go into %s instead: ready, its temperature is not known", t.Tank.Name), math.Inf(1)
		if last, ok := t.celsius(); ok && from != nil {
			d := l.Rules().Compare(from, &last.Value)
			text = fmt.Sprintf("go into %s instead: %.1f °C, %.1f apart, %s", t.Tank.Name, last.Value, d.Celsius, d.Verdict)
			gap = d.Celsius
		}
		found = append(found, candidate{WayOut{Text: text, Into: t.Tank.Name}, gap})
	}
	slices.SortStableFunc(found, func(a, b candidate) int { return cmp.Compare(a.gap, b.gap) })
	ways := make([]WayOut, len(found))
	for i, c := range found {
		ways[i] = c.way
	}
	return ways
}

// roomy reports whether a tank is as large as the source, or the density limit
// holds in it for larvae whose number is known.
func (l *Ledger) roomy(source, t TankNow, now time.Time) bool {
	if t.Tank.Litres >= source.Tank.Litres {
		return true
	}
	age, known := l.Age(source, now)
	limit := l.room.House.DensityAt(age)
	if !known || limit == 0 || !source.Larvae.Number.Value.Known {
		return false
	}
	return source.Larvae.Number.Value.X/t.Tank.Litres <= limit
}
