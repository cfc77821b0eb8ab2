package state

import (
	"os"
	"path/filepath"
	"strings"
	"time"

	"drainboard/model"
)

// The files of a room.
const (
	roomFile      = "room.toml"
	procedureFile = "procedure.toml"
	formatVersion = 1
)

// readRoom reads room.toml and procedure.toml. The problems are everything that
// is wrong with the two; the error says that one could not be read at all.
func readRoom(dir string) (*model.Room, []Problem, error) {
	text, err := os.ReadFile(filepath.Join(dir, roomFile))
	if err != nil {
		return nil, nil, err
	}
	room, problems := decodeRoom(fileIn(dir, roomFile), string(text), folderName(dir))
	steps, err := os.ReadFile(filepath.Join(dir, procedureFile))
	switch {
	case os.IsNotExist(err):
		room.Procedure = model.DefaultProcedure()
	case err != nil:
		return nil, nil, err
	default:
		procedure, more := decodeProcedure(fileIn(dir, procedureFile), string(steps))
		room.Procedure = procedure
		problems = append(problems, more...)
	}
	return room, problems, nil
}

// folderName is the name of a room that gives none.
func folderName(dir string) string {
	if whole, err := filepath.Abs(dir); err == nil {
		dir = whole
	}
	return filepath.Base(dir)
}

// decodeRoom reads the text of room.toml over the defaults and says everything
// that is wrong with it.
func decodeRoom(file, text, name string) (*model.Room, []Problem) {
	room := &model.Room{Name: name, Zone: time.Local, House: model.DefaultHouse(), Algae: model.DefaultAlgae()}
	top, syntax := parseTOML(file, text)
	if syntax != nil {
		return room, []Problem{*syntax}
	}
	if later := readVersion(file, text, top); later != nil {
		return room, []Problem{*later}
	}
	top.text("name", &room.Name)
	readZone(top, room)
	readHouse(top.sub("house"), &room.House)
	readAlgae(top, room)
	readTanks(top, room)
	readSupplies(top, room)
	top.done()
	return room, located(file, text, merge(*top.wrong, room.Check()))
}

// merge adds what Check found to what decoding found, but for keys of which
// decoding has complained already.
func merge(decoded, checked []*model.FieldError) []*model.FieldError {
	all := decoded
	for _, c := range checked {
		if !complainedOf(decoded, c.Field) {
			all = append(all, c)
		}
	}
	return all
}

func complainedOf(list []*model.FieldError, path string) bool {
	for _, d := range list {
		rest, within := strings.CutPrefix(path, d.Field)
		if within && (rest == "" || rest[0] == '.' || rest[0] == '[') {
			return true
		}
		rest, around := strings.CutPrefix(d.Field, path)
		if around && rest != "" && (rest[0] == '.' || rest[0] == '[') {
			return true
		}
	}
	return false
}

// readVersion returns a problem for a file of a later version, of which nothing
// more can be said.
func readVersion(file, text string, top *table) *Problem {
	top.need("version", "1")
	version := formatVersion
	top.whole("version", &version)
	switch {
	case version > formatVersion:
		return &Problem{
			File: file, Line: indexLines(text).of("version"),
			Text: "version: written by a later version of drainboard; this one reads version 1",
			Hint: "open the room with the later one",
		}
	case version < formatVersion:
		top.complain("version", "%d was never written; 1 is expected", version)
	}
	return nil
}

func readZone(top *table, room *model.Room) {
	name := ""
	top.text("timezone", &name)
	if _, given := top.keys["timezone"]; !given || complainedOf(*top.wrong, "timezone") {
		return
	}
	zone, err := time.LoadLocation(name)
	if err != nil || name == "" || name == "Local" {
		top.complain("timezone", "%q is not a time zone; write an IANA name, as in \"America/Nassau\"", name)
		return
	}
	room.Zone = zone
}

func readHouse(t *table, h *model.House) {
	t.number("change_hours", &h.ChangeHours)
	t.number("grace_hours", &h.GraceHours)
	t.number("window_hours", &h.WindowHours)
	t.number("early_hours", &h.EarlyHours)
	t.number("look_hours", &h.LookHours)
	t.number("feed_hours", &h.FeedHours)
	t.text("order", &h.Order)
	t.whole("crew", &h.Crew)
	t.number("day_minutes", &h.DayMinutes)
	t.number("ready_um", &h.Growth.ReadyUM)
	t.whole("ready_lobes", &h.Growth.ReadyLobes)
	t.number("golden_percent", &h.Growth.GoldenShare)
	t.number("dead_percent", &h.Growth.DeadShare)
	t.number("sieve_factor", &h.Growth.SieveFactor)
	t.number("cull_percent", &h.Growth.CullPercent)
	t.number("culture_hours", &h.Feeding.CultureHours)
	t.number("reserve_percent", &h.Feeding.ReserveShare)
	readHouseTables(t, h)
	readBands(t, h)
	t.done()
}

func readHouseTables(t *table, h *model.House) {
	degrees := t.sub("temperature")
	degrees.band("best", &h.Temperature.Best)
	degrees.band("bearable", &h.Temperature.Bearable)
	degrees.number("step_fine", &h.Temperature.StepFine)
	degrees.number("step_hold", &h.Temperature.StepHold)
	degrees.done()
	minutes := t.sub("minutes")
	minutes.number("handle", &h.Minutes.Handle)
	minutes.number("wash", &h.Minutes.Wash)
	minutes.done()
	flow := t.sub("litres_per_minute")
	flow.number("drain", &h.Litres.Drain)
	flow.number("fill", &h.Litres.Fill)
	flow.done()
	wash := t.sub("wash")
	wash.number("ml_per_litre", &h.Wash.MLPerLitre)
	wash.number("tank_litres", &h.Wash.TankLitres)
	wash.number("bin_litres", &h.Wash.BinLitres)
	wash.number("stock_percent", &h.Wash.StockPercent)
	wash.done()
}

// readBands reads the tables by age. Bands that a room gives stand in place of
// all default bands.
func readBands(t *table, h *model.House) {
	h.Mesh = bands(t, "mesh", h.Mesh, func(t *table, b *model.MeshBand) {
		t.need("um", "[105, 150]")
		t.numbers("um", &b.UM)
		fromDay(t, &b.FromDay)
	})
	h.Density = bands(t, "density", h.Density, func(t *table, b *model.DensityBand) {
		t.need("per_litre", "100")
		t.number("per_litre", &b.PerLitre)
		fromDay(t, &b.FromDay)
	})
	h.Ration = bands(t, "ration", h.Ration, func(t *table, b *model.RationBand) {
		t.need("cells_per_ml", "5000")
		t.need("share", "{ iso = 1.0 }")
		t.number("cells_per_ml", &b.CellsPerML)
		t.shares("share", &b.Share)
		fromDay(t, &b.FromDay)
	})
	h.Corridor = bands(t, "growth", h.Corridor, func(t *table, b *model.GrowthBand) {
		t.need("low_um", "600")
		t.need("high_um", "800")
		t.number("low_um", &b.LowUM)
		t.number("high_um", &b.HighUM)
		fromDay(t, &b.FromDay)
	})
	h.Growth.Eyepieces = bands(t, "eyepiece", h.Growth.Eyepieces, func(t *table, m *model.Magnification) {
		t.need("name", "\"4x\"")
		t.need("um_per_division", "24.5")
		t.text("name", &m.Name)
		t.number("um_per_division", &m.UMPer)
	})
}

func fromDay(t *table, to *int) {
	t.need("from_day", "0")
	t.whole("from_day", to)
}

// bands reads an array of tables, each by read; where the room gives none, the
// defaults stand.
func bands[B any](t *table, key string, defaults []B, read func(*table, *B)) []B {
	tables, given := t.list(key)
	if !given {
		return defaults
	}
	list := make([]B, len(tables))
	for i, each := range tables {
		read(each, &list[i])
		each.done()
	}
	return list
}

// readAlgae reads [[algae]]. The default ration is of an alga the room may not
// have; without it there is no default ration.
func readAlgae(top *table, room *model.Room) {
	room.Algae = bands(top, "algae", room.Algae, func(t *table, a *model.Alga) {
		t.need("name", "\"iso\"")
		t.text("name", &a.Name)
		a.Full = a.Name
		t.text("full", &a.Full)
		t.number("pg_per_cell", &a.PgPerCell)
	})
	house, _ := top.keys["house"].(map[string]any)
	if _, given := house["ration"]; given {
		return
	}
	for _, band := range room.House.Ration {
		for alga := range band.Share {
			if _, known := room.Alga(alga); !known {
				room.House.Ration = nil
				return
			}
		}
	}
}

func readTanks(top *table, room *model.Room) {
	room.Tanks = bands(top, "tank", nil, func(t *table, tank *model.Tank) {
		t.need("name", "\"C1\"")
		t.need("litres", "120")
		t.text("name", &tank.Name)
		t.number("litres", &tank.Litres)
		t.whole("row", &tank.Row)
		t.whole("column", &tank.Column)
	})
}

func readSupplies(top *table, room *model.Room) {
	room.Supplies = bands(top, "supply", nil, func(t *table, s *model.Supply) {
		t.need("name", "\"header\"")
		t.text("name", &s.Name)
	})
}
