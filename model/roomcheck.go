package model

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// The most a room may hold.
const (
	MaxTanks = 200
	maxBands = 100
	maxLabel = 16 // runes in the name of a tank, supply or alga
	maxTitle = 60 // runes in the name of the room
)

// Check says everything that is wrong with a room, each by its key path in
// room.toml, as in house.temperature.step_fine or tank[2].litres (tables are
// counted from 1). The procedure is checked by Procedure.Check.
func (r *Room) Check() []*FieldError {
	c := &roomCheck{room: r}
	c.title()
	c.rules()
	c.temperature()
	c.bands()
	c.places()
	c.tanks()
	return c.found
}

// roomCheck collects what is wrong.
type roomCheck struct {
	room  *Room
	found []*FieldError
}

func (c *roomCheck) add(path, format string, args ...any) {
	c.found = append(c.found, wrong(path, format, args...))
}

func (c *roomCheck) number(path string, x float64, r Range, unit string) {
	if problem := r.problem(x, unit); problem != "" {
		c.add(path, "%s", problem)
	}
}

// problem says in what way a setting lies outside the range.
func (r Range) problem(x float64, unit string) string {
	low := x < r.Low || r.Above && x == r.Low
	if !low && x <= r.High && !math.IsNaN(x) {
		return ""
	}
	if unit != "" {
		unit = " " + unit
	}
	from := "from " + plain(r.Low)
	if r.Above {
		from = "above " + plain(r.Low)
	}
	return fmt.Sprintf("%s is out of range; a number %s up to %s%s is expected", plain(x), from, plain(r.High), unit)
}

func (c *roomCheck) title() {
	name := c.room.Name
	switch {
	case strings.TrimSpace(name) == "":
		c.add("name", "is empty; write the room's name, as in \"North larval room\"")
	case utf8.RuneCountInString(name) > maxTitle:
		c.add("name", "is %d characters long; at most %d are taken", utf8.RuneCountInString(name), maxTitle)
	case !printable(name):
		c.add("name", "holds a character that cannot be shown; retype it")
	}
	if c.room.Zone == nil {
		c.add("timezone", "is missing; write an IANA name, as in \"America/Nassau\"")
	}
}

// Ranges of settings. They are wide: they catch slips of the keys and figures
// no room can work with, not unusual rooms.
var (
	hoursRange  = Range{Low: 0, High: 8760, Above: true}
	pauseRange  = Range{Low: 0, High: 8760}
	minuteRange = Range{Low: 0, High: 1440, Above: true}
	flowRange   = Range{Low: 0, High: 10000, Above: true}
	litreRange  = Range{Low: 0, High: 100000, Above: true}
	stockRange  = Range{Low: 0.5, High: 40} // what the table of strengths covers; fuming acid is about 40 per cent
	factorRange = Range{Low: 0, High: 10, Above: true}
)

func (c *roomCheck) rules() {
	h := c.room.House
	for _, x := range []struct {
		path  string
		value float64
		r     Range
		unit  string
	}{
		{"house.change_hours", h.ChangeHours, hoursRange, "hours"},
		{"house.grace_hours", h.GraceHours, pauseRange, "hours"},
		{"house.window_hours", h.WindowHours, pauseRange, "hours"},
		{"house.early_hours", h.EarlyHours, pauseRange, "hours"},
		{"house.look_hours", h.LookHours, hoursRange, "hours"},
		{"house.feed_hours", h.FeedHours, hoursRange, "hours"},
		{"house.day_minutes", h.DayMinutes, Range{Low: 0, High: 1440}, "minutes"},
		{"house.ready_um", h.Growth.ReadyUM, lengthRange, "um"},
		{"house.golden_percent", h.Growth.GoldenShare, percentRange, "per cent"},
		{"house.dead_percent", h.Growth.DeadShare, percentRange, "per cent"},
		{"house.sieve_factor", h.Growth.SieveFactor, factorRange, ""},
		{"house.cull_percent", h.Growth.CullPercent, percentRange, "per cent"},
		{"house.culture_hours", h.Feeding.CultureHours, hoursRange, "hours"},
		{"house.reserve_percent", h.Feeding.ReserveShare, Range{Low: 0, High: 99}, "per cent"},
		{"house.minutes.handle", h.Minutes.Handle, minuteRange, "minutes"},
		{"house.minutes.wash", h.Minutes.Wash, minuteRange, "minutes"},
		{"house.litres_per_minute.drain", h.Litres.Drain, flowRange, "L per minute"},
		{"house.litres_per_minute.fill", h.Litres.Fill, flowRange, "L per minute"},
		{"house.wash.ml_per_litre", h.Wash.MLPerLitre, Range{Low: 0, High: 500, Above: true}, "mL per litre"},
		{"house.wash.tank_litres", h.Wash.TankLitres, litreRange, "L"},
		{"house.wash.bin_litres", h.Wash.BinLitres, litreRange, "L"},
		{"house.wash.stock_percent", h.Wash.StockPercent, stockRange, "per cent by weight"},
	} {
		c.number(x.path, x.value, x.r, x.unit)
	}
	if n := h.Growth.ReadyLobes; n != 2 && n != 4 && n != 6 {
		c.add("house.ready_lobes", "%d: a veliger has 2, 4 or 6", n)
	}
	if h.Crew != 1 && h.Crew != 2 {
		c.add("house.crew", "%d: 1 or 2 people are expected", h.Crew)
	}
	if orders := []string{OldestFirst, YoungestFirst, DueFirst}; !slices.Contains(orders, h.Order) {
		c.add("house.order", "%q is not one of %s", h.Order, strings.Join(orders, ", "))
	}
	c.eyepieces()
}

func (c *roomCheck) eyepieces() {
	var seen []string
	for i, e := range c.room.House.Growth.Eyepieces {
		path := fmt.Sprintf("house.eyepiece[%d]", i+1)
		c.name(path+".name", e.Name, &seen)
		c.number(path+".um_per_division", e.UMPer, Range{Low: 0, High: 1000, Above: true}, "um")
	}
}

func (c *roomCheck) temperature() {
	const path = "house.temperature."
	t := c.room.House.Temperature
	best := c.interval(path+"best", t.Best, celsiusRange, "degrees C")
	bearable := c.interval(path+"bearable", t.Bearable, celsiusRange, "degrees C")
	if best && bearable && (t.Best.Low < t.Bearable.Low || t.Best.High > t.Bearable.High) {
		c.add(path+"best", "%s to %s does not lie within bearable (%s to %s)",
			plain(t.Best.Low), plain(t.Best.High), plain(t.Bearable.Low), plain(t.Bearable.High))
	}
	steps := Range{Low: 0, High: 20}
	c.number(path+"step_fine", t.StepFine, steps, "degrees C")
	c.number(path+"step_hold", t.StepHold, Range{Low: 0, High: 20, Above: true}, "degrees C")
	if t.StepFine > t.StepHold {
		c.add(path+"step_fine", "%s is above step_hold (%s); give at most that", plain(t.StepFine), plain(t.StepHold))
	}
}

// interval reports whether a band is in range and in order.
func (c *roomCheck) interval(path string, b Band, r Range, unit string) bool {
	for _, x := range []float64{b.Low, b.High} {
		if problem := r.problem(x, unit); problem != "" {
			c.add(path, "%s", problem)
			return false
		}
	}
	if b.Low >= b.High {
		c.add(path, "[%s, %s] is not in order; the lower figure comes first", plain(b.Low), plain(b.High))
		return false
	}
	return true
}

func (c *roomCheck) bands() {
	h := c.room.House
	if len(h.Mesh) == 0 {
		c.add("house.mesh", "has no band; give at least one with from_day and um")
	}
	c.days("house.mesh", len(h.Mesh), func(i int) int { return h.Mesh[i].FromDay })
	c.days("house.density", len(h.Density), func(i int) int { return h.Density[i].FromDay })
	c.days("house.ration", len(h.Ration), func(i int) int { return h.Ration[i].FromDay })
	c.days("house.growth", len(h.Corridor), func(i int) int { return h.Corridor[i].FromDay })
	for i, b := range h.Mesh {
		c.meshes(fmt.Sprintf("house.mesh[%d].um", i+1), b.UM)
	}
	for i, b := range h.Density {
		c.number(fmt.Sprintf("house.density[%d].per_litre", i+1), b.PerLitre, Range{Low: 0, High: 1e6, Above: true}, "larvae per litre")
	}
	for i, b := range h.Ration {
		c.ration(fmt.Sprintf("house.ration[%d]", i+1), b)
	}
	for i, b := range h.Corridor {
		c.corridor(fmt.Sprintf("house.growth[%d]", i+1), b)
	}
}

// days says whether bands by age are in order, each from a later day than the
// one before it.
func (c *roomCheck) days(path string, n int, from func(int) int) {
	if n > maxBands {
		c.add(path, "%d bands; at most %d are taken", n, maxBands)
	}
	for i := range n {
		at := fmt.Sprintf("%s[%d].from_day", path, i+1)
		day := from(i)
		if day < 0 || day > 1000 {
			c.add(at, "%d is out of range; a whole day from 0 up to 1000 is expected", day)
		} else if i > 0 && day <= from(i-1) {
			c.add(at, "%d does not come after the day of the band before it (%d); bands go up by age", day, from(i-1))
		}
	}
}

func (c *roomCheck) meshes(path string, um []float64) {
	if len(um) == 0 {
		c.add(path, "is empty; list the sieves that are right at this age, as in [105, 150]")
	}
	for i, x := range um {
		if problem := meshRange.problem(x, "um"); problem != "" {
			c.add(path, "%s", problem)
		} else if slices.Contains(um[:i], x) {
			c.add(path, "names %s twice", plain(x))
		}
	}
}

func (c *roomCheck) ration(path string, b RationBand) {
	c.number(path+".cells_per_ml", b.CellsPerML, Range{Low: 0, High: 1e8, Above: true}, "cells per mL")
	total := 0.0
	for _, alga := range sortedKeys(b.Share) {
		share := b.Share[alga]
		if problem := (Range{Low: 0, High: 1e6}).problem(share, ""); problem != "" {
			c.add(path+".share."+alga, "%s", problem)
			return
		}
		if _, known := c.room.Alga(alga); !known {
			c.add(path+".share."+alga, "is not an alga of this room (%s); [[algae]] names them", c.room.algaNames())
		}
		total += share
	}
	if total <= 0 {
		c.add(path+".share", "adds up to nothing; give each alga its part, as in { iso = 1.0 }")
	}
}

func (c *roomCheck) corridor(path string, b GrowthBand) {
	low := lengthRange.problem(b.LowUM, "um")
	high := lengthRange.problem(b.HighUM, "um")
	switch {
	case low != "":
		c.add(path+".low_um", "%s", low)
	case high != "":
		c.add(path+".high_um", "%s", high)
	case b.LowUM >= b.HighUM:
		c.add(path+".low_um", "%s is not below high_um (%s)", plain(b.LowUM), plain(b.HighUM))
	}
}

// places checks algae and supplies.
func (c *roomCheck) places() {
	var algae, supplies []string
	for i, a := range c.room.Algae {
		path := fmt.Sprintf("algae[%d]", i+1)
		c.name(path+".name", a.Name, &algae)
		if !printable(a.Full) || utf8.RuneCountInString(a.Full) > maxTitle {
			c.add(path+".full", "is too long or holds a character that cannot be shown; at most %d plain characters are taken", maxTitle)
		}
		c.number(path+".pg_per_cell", a.PgPerCell, Range{Low: 0, High: 1e6}, "pg")
	}
	for i, s := range c.room.Supplies {
		c.name(fmt.Sprintf("supply[%d].name", i+1), s.Name, &supplies)
	}
}

func (c *roomCheck) tanks() {
	tanks := c.room.Tanks
	switch {
	case len(tanks) == 0:
		c.add("tank", "the room has no tank; add [[tank]] with a name and litres")
	case len(tanks) > MaxTanks:
		c.add("tank", "%d tanks; at most %d are taken", len(tanks), MaxTanks)
		return
	}
	var names []string
	places := map[[2]int]string{}
	for i, t := range tanks {
		path := fmt.Sprintf("tank[%d]", i+1)
		c.name(path+".name", t.Name, &names)
		c.number(path+".litres", t.Litres, litreRange, "L")
		c.place(path, t, places)
	}
}

// place checks where a tank stands: a row and a column, or neither.
func (c *roomCheck) place(path string, t Tank, taken map[[2]int]string) {
	at := [2]int{t.Row, t.Column}
	for i, key := range []string{".row", ".column"} {
		if at[i] < 0 || at[i] > MaxTanks {
			c.add(path+key, "%d is out of range; a whole number from 1 up to %d is expected", at[i], MaxTanks)
			return
		}
	}
	switch {
	case t.Row == 0 && t.Column == 0:
	case t.Row == 0:
		c.add(path+".column", "stands without a row; give both or neither")
	case t.Column == 0:
		c.add(path+".row", "stands without a column; give both or neither")
	case taken[at] != "":
		c.add(path+".row", "%s stands in row %d, column %d already", taken[at], t.Row, t.Column)
	default:
		taken[at] = t.Name
	}
}

// name checks a short name. Names are typed at the command line, in lists and
// tables, so the marks that part these are not taken.
func (c *roomCheck) name(path, name string, seen *[]string) {
	switch {
	case name == "":
		c.add(path, "is empty; 1 to %d characters are expected", maxLabel)
		return
	case utf8.RuneCountInString(name) > maxLabel:
		c.add(path, "%q is %d characters long; at most %d are taken", name, utf8.RuneCountInString(name), maxLabel)
	case strings.TrimSpace(name) != name:
		c.add(path, "%q begins or ends with a space; write it without", name)
	case !printable(name):
		c.add(path, "%q holds a character that cannot be shown; retype it", name)
	case strings.ContainsAny(name, ",:=>/\\\""):
		c.add(path, "%q holds one of , : = > / \\ \" which part names in lists; write it without", name)
	case strings.HasSuffix(name, "-"):
		c.add(path, "%q ends in a dash, which begins an arrow; write it without", name)
	}
	if slices.ContainsFunc(*seen, func(s string) bool { return strings.EqualFold(s, name) }) {
		c.add(path, "%q is there already; names differ by more than their case", name)
	}
	*seen = append(*seen, name)
}

// printable reports whether every character can be shown on a line.
func printable(s string) bool {
	for _, r := range s {
		if r == utf8.RuneError || !unicode.IsPrint(r) {
			return false
		}
	}
	return true
}

// algaNames lists the algae for a refusal.
func (r *Room) algaNames() string {
	names := make([]string, len(r.Algae))
	for i, a := range r.Algae {
		names[i] = a.Name
	}
	return strings.Join(names, ", ")
}
