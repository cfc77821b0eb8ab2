package state

import (
	"fmt"
	"math"
	"strings"
	"time"

	"drainboard/model"
)

// writeRoom writes the room.toml of a new room: every key with its default, its
// unit, and where the default comes from.
func writeRoom(o InitOptions) string {
	w := &tomlWriter{}
	w.remark("What this room is. Change what does not fit: every figure under [house] has",
		"this default, so a line that is left out says the same.",
		"",
		"Where a default comes from stands behind it:",
		"  practice  common practice, without a published source",
		"  memory    from memory, to be checked",
		"  start     a starting point, for the room to replace by its own figure",
		"  or the author and year of the source")
	w.blank()
	w.key("version", 1, "of this file's format; leave it as it is")
	w.key("name", o.Name, "")
	if o.Zone == "" {
		w.remark(`timezone = "America/Nassau"   IANA name; without it, the machine's`)
	} else {
		w.key("timezone", o.Zone, "IANA name; without it, the machine's")
	}
	writeHouse(w, model.DefaultHouse())
	writeLists(w, o)
	return w.String()
}

func writeHouse(w *tomlWriter, h model.House) {
	w.head("[house]", "the room's own rules")
	w.key("change_hours", h.ChangeHours, "h, full water change [practice]")
	w.key("grace_hours", h.GraceHours, "h, later than due + grace is overdue [start]")
	w.key("window_hours", h.WindowHours, "h, a session takes what falls due within this [start]")
	w.key("early_hours", h.EarlyHours, "h, a change may be this much early to level the days [start]")
	w.key("look_hours", h.LookHours, "h, between two looks at the microscope [practice]")
	w.key("feed_hours", h.FeedHours, "h, between two feeds [practice]")
	w.key("order", h.Order, `or "youngest-first", "due-first" [practice]`)
	w.key("crew", h.Crew, "people in a change session, 1 or 2 [practice]")
	w.key("day_minutes", h.DayMinutes, "min, the longest session of a day; 0 is no limit [start]")
	w.key("ready_um", h.Growth.ReadyUM, "um, shell length at expected competence [memory]")
	w.key("ready_lobes", h.Growth.ReadyLobes, "lobes at expected competence: 2, 4 or 6 [practice]")
	w.key("golden_percent", h.Growth.GoldenShare, "%, fewer larvae with a golden gut are marked [start]")
	w.key("dead_percent", h.Growth.DeadShare, "%, more dead than this are marked [start]")
	w.key("sieve_factor", h.Growth.SieveFactor, "a larva is held where its length > factor x mesh [start]")
	w.key("cull_percent", h.Growth.CullPercent, "%, the share a sieve may lose [start]")
	w.key("culture_hours", h.Feeding.CultureHours, "h, an algae count is old after this [start]")
	w.key("reserve_percent", h.Feeding.ReserveShare, "%, of a culture kept back as seed [start]")
	writeHouseTables(w, h)
	writeBands(w, h)
}

func writeHouseTables(w *tomlWriter, h model.House) {
	t := h.Temperature
	w.head("[house.temperature]", "degrees Celsius")
	w.key("best", []float64{t.Best.Low, t.Best.High}, "growth is best [practice]")
	w.key("bearable", []float64{t.Bearable.Low, t.Bearable.High}, "they grow [practice]")
	w.key("step_fine", t.StepFine, "difference of two tanks up to which nothing is said [practice]")
	w.key("step_hold", t.StepHold, "above it the move waits until someone decides [practice]")
	w.head("[house.minutes]", "for the timetable, per tank")
	w.key("handle", h.Minutes.Handle, "min, set up, rinse the sieve into the new tank, lid [start]")
	w.key("wash", h.Minutes.Wash, "min [start]")
	w.head("[house.litres_per_minute]", "")
	w.key("drain", h.Litres.Drain, "L/min, siphoning through the sieve [start]")
	w.key("fill", h.Litres.Fill, "L/min [start]")
	w.head("[house.wash]", "dilute muriatic acid; the bottle's label and its safety data sheet come first")
	w.key("ml_per_litre", h.Wash.MLPerLitre, "mL of stock acid per litre of fresh water [practice]")
	w.key("tank_litres", h.Wash.TankLitres, "L of wash solution per emptied tank [start]")
	w.key("bin_litres", h.Wash.BinLitres, "L in the gear bin, once a session [start]")
	w.key("stock_percent", h.Wash.StockPercent, "HCl, % by weight, from the bottle's label [practice]")
}

func writeBands(w *tomlWriter, h model.House) {
	w.blank()
	w.remark("Tables by age: each holds from its day on until the next. The hatch date is day 0.",
		"Giving one [[house.mesh]] puts all default ones out of force; so for the others.")
	for i, b := range h.Mesh {
		w.head("[[house.mesh]]", first(i, "sieves by age, until readings say better"))
		w.key("from_day", b.FromDay, "")
		w.key("um", b.UM, first(i, "um, any of these is acceptable, the first is the default [practice]"))
	}
	for i, b := range h.Density {
		w.head("[[house.density]]", "")
		w.key("from_day", b.FromDay, "")
		w.key("per_litre", b.PerLitre, first(i, "larvae per litre not to exceed [between 20-50, Davis, and 200, Brito-Manzano & Aldana Aranda 2004]"))
	}
	for i, b := range h.Ration {
		w.head("[[house.ration]]", "")
		w.key("from_day", b.FromDay, "")
		w.key("cells_per_ml", b.CellsPerML, first(i, "cells per mL wanted in the tank [low end of 5000-30000, Davis]"))
		w.key("share", b.Share, first(i, "of each alga, by cells"))
	}
	w.blank()
	w.remark("What shell lengths should be by age, um; there is no default:",
		"[[house.growth]]", "from_day = 7", "low_um   = 400", "high_um  = 550", "",
		"What one division of an eyepiece is, um; there is no default:",
		"[[house.eyepiece]]", `name            = "4x"`, "um_per_division = 24.5")
}

// first says something once, at the first of several tables.
func first(i int, remark string) string {
	if i > 0 {
		return ""
	}
	return remark
}

func writeLists(w *tomlWriter, o InitOptions) {
	for i, a := range model.DefaultAlgae() {
		w.head("[[algae]]", first(i, "food algae by their short names"))
		w.key("name", a.Name, "")
		w.key("full", a.Full, "")
		w.key("pg_per_cell", a.PgPerCell, first(i, "pg, weight of a cell, for diets by weight; 0 is not known"))
	}
	// Rows about twice as long as there are of them, as even as they can be.
	rows := max(1, int(math.Round(math.Sqrt(float64(o.Tanks)/2))))
	across := (o.Tanks + rows - 1) / rows
	for i := range o.Tanks {
		w.head("[[tank]]", first(i, "one for each, in the order they should be listed in"))
		w.key("name", fmt.Sprintf("C%d", i+1), "")
		w.key("litres", o.Litres, "")
		w.key("row", i/across+1, first(i, "where it stands"))
		w.key("column", i%across+1, "")
	}
	w.blank()
	w.remark("A water source a temperature can be read from; there is no default:",
		"[[supply]]", `name = "header"`)
}

// tomlWriter writes a commented TOML file.
type tomlWriter struct{ strings.Builder }

func (w *tomlWriter) blank() { w.WriteByte('\n') }

func (w *tomlWriter) remark(lines ...string) {
	for _, line := range lines {
		w.WriteString(strings.TrimRight("# "+line, " ") + "\n")
	}
}

// head begins a table behind a blank line.
func (w *tomlWriter) head(head, remark string) {
	w.blank()
	w.WriteString(commented(head, remark))
}

// key writes one key; whole numbers are written without a point.
func (w *tomlWriter) key(key string, value any, remark string) {
	b := fmt.Appendf(nil, "%s = ", key)
	w.WriteString(commented(string(appendValue(b, value, time.UTC)), remark))
}

// commented sets a remark behind a line, in a column of its own.
func commented(line, remark string) string {
	if remark == "" {
		return line + "\n"
	}
	return fmt.Sprintf("%-27s # %s\n", line, remark)
}
