package model

import (
	"slices"
	"sort"
	"strings"
	"time"
)

// Entry is one fact in the journal.
type Entry struct {
	N     int       // counts from 1 without gaps
	At    time.Time // when it happened
	Keyed time.Time // when it was typed; zero where that is At
	By    string    // initials; empty where not given
	Fact  Fact
}

// Kind returns the kind of the entry's fact.
func (e Entry) Kind() Kind { return e.Fact.Kind() }

// TypedAt returns the moment at which the entry was keyed.
func (e Entry) TypedAt() time.Time {
	if e.Keyed.IsZero() {
		return e.At
	}
	return e.Keyed
}

// FillFact gives a fact its fields from a table as a journal holds it. Unknown
// names, missing fields and values of the wrong type or beyond what can be
// true are refused by a FieldError.
func FillFact(f Fact, table map[string]any) error {
	return fill(f, table, Field.Set)
}

// ParseFact gives a fact its fields from texts, as typed on the command line or
// held by a CSV file.
func ParseFact(f Fact, table map[string]string) error {
	return fill(f, table, ParseField)
}

func fill[V any](f Fact, table map[string]V, set func(Field, V) error) error {
	fields := f.Fields()
	for _, name := range sortedKeys(table) {
		if !slices.ContainsFunc(fields, func(x Field) bool { return x.Name == name }) {
			return wrong(name, "%s has no such field; it takes %s", f.Kind(), fieldNames(fields))
		}
	}
	for _, field := range fields {
		v, given := table[field.Name]
		if !given && field.Need {
			return wrong(field.Name, "is missing; %s needs it", f.Kind())
		}
		if !given {
			continue
		}
		if err := set(field, v); err != nil {
			return err
		}
	}
	return nil
}

func sortedKeys[V any](table map[string]V) []string {
	names := make([]string, 0, len(table))
	for name := range table {
		names = append(names, name)
	}
	sort.Strings(names)
	return names
}

func fieldNames(fields []Field) string {
	names := make([]string, len(fields))
	for i, f := range fields {
		names[i] = f.Name
	}
	return strings.Join(names, ", ")
}

// CopyFact returns a fact that shares nothing with f but its lists, which no
// one changes.
func CopyFact(f Fact) Fact {
	twin, _ := NewFact(f.Kind())
	to := twin.Fields()
	for i, field := range f.Fields() {
		if v, ok := field.Value(); ok {
			// The value was taken once, so it is taken again.
			_ = to[i].Set(v)
		}
	}
	return twin
}

// checkFact says whether a fact can be true in a room, whatever stands where,
// and writes names of tanks, sources and algae as the room does.
func checkFact(room *Room, f Fact) error {
	for _, field := range f.Fields() {
		if err := checkField(room, field); err != nil {
			return err
		}
	}
	if sound, ok := f.(interface{ sound() error }); ok {
		return sound.sound()
	}
	return nil
}

func checkField(room *Room, field Field) error {
	v, given := field.Value()
	if !given {
		return nil
	}
	if err := field.Set(v); err != nil {
		return err
	}
	switch field.Type {
	case TankName:
		i, ok := room.Tank(v.(string))
		if !ok {
			return wrong(field.Name, "%q is not a tank of this room (%s)", v, room.tankNames())
		}
		return field.Set(room.Tanks[i].Name)
	case Source:
		i, ok := room.Supply(v.(string))
		if !ok {
			return wrong(field.Name, "%q is not a supply of this room; room.toml names them under [[supply]]", v)
		}
		return field.Set(room.Supplies[i].Name)
	case AlgaName:
		i, ok := room.Alga(v.(string))
		if !ok {
			return wrong(field.Name, "%q is not an alga of this room; room.toml names them under [[algae]]", v)
		}
		return field.Set(room.Algae[i].Name)
	case PerAlga:
		return checkAlgae(room, field, v.(map[string]float64))
	case Legs:
		return checkLegs(room, field, v.([]Leg))
	}
	return nil
}

func checkAlgae(room *Room, field Field, table map[string]float64) error {
	named := make(map[string]float64, len(table))
	total := 0.0
	for alga, x := range table {
		i, ok := room.Alga(alga)
		if !ok {
			return wrong(field.Name, "%q is not an alga of this room; room.toml names them under [[algae]]", alga)
		}
		named[room.Algae[i].Name] = x
		total += x
	}
	if total <= 0 {
		return wrong(field.Name, "adds up to nothing; an amount above 0 is expected")
	}
	return field.Set(named)
}

func checkLegs(room *Room, field Field, legs []Leg) error {
	named := make([]Leg, len(legs))
	for i, leg := range legs {
		from, okFrom := room.Tank(leg.From)
		to, okTo := room.Tank(leg.To)
		switch {
		case !okFrom:
			return wrong(field.Name, "move %d: %q is not a tank of this room (%s)", i+1, leg.From, room.tankNames())
		case !okTo:
			return wrong(field.Name, "move %d: %q is not a tank of this room (%s)", i+1, leg.To, room.tankNames())
		case from == to:
			return wrong(field.Name, "move %d goes from %s into itself", i+1, room.Tanks[from].Name)
		}
		named[i] = Leg{room.Tanks[from].Name, room.Tanks[to].Name}
	}
	return field.Set(named)
}

// oneOf refuses a fact that names both or neither of two places.
func oneOf(nameA, a, nameB, b string) error {
	switch {
	case a == "" && b == "":
		return wrong(nameA, "name a %s or a %s", nameA, nameB)
	case a != "" && b != "":
		return wrong(nameA, "name a %s or a %s, not both", nameA, nameB)
	}
	return nil
}

func (f *Moved) sound() error {
	if strings.EqualFold(f.From, f.To) {
		return wrong("to", "%s cannot be moved into itself", f.From)
	}
	return nil
}

func (f *Temperature) sound() error { return oneOf("tank", f.Tank, "supply", f.Supply) }

func (f *Cells) sound() error { return oneOf("algae", f.Algae, "tank", f.Tank) }

func (f *Water) sound() error {
	if f.Salinity == nil && f.PH == nil && f.OxygenMgL == nil && f.AmmoniaMgL == nil {
		return wrong("salinity", "give at least one of salinity, ph, oxygen_mg_l, ammonia_mg_l")
	}
	return oneOf("tank", f.Tank, "supply", f.Supply)
}

func (f *Look) sound() error {
	if f.Lobes != nil && *f.Lobes%2 != 0 {
		return wrong("lobes", "%d: a veliger has 2, 4 or 6", *f.Lobes)
	}
	if f.Lobes == nil && f.Golden == nil && f.Swim == "" && f.Dead == nil && f.Text == "" {
		return wrong("lobes", "give at least one of lobes, golden, swim, dead, text")
	}
	return nil
}

func (f *Count) sound() error {
	if f.Dead != nil && len(f.Dead) != len(f.Live) {
		return wrong("dead", "%d numbers for %d subsamples; give one a subsample", len(f.Dead), len(f.Live))
	}
	if f.SampleML > f.HoldingML {
		return wrong("sample_ml", "%s mL cannot come out of a holding volume of %s mL", plain(f.SampleML), plain(f.HoldingML))
	}
	return nil
}

func (f *Corrected) sound() error {
	if f.Void == (len(f.Set) > 0) {
		return wrong("void", "give either void = true or the fields to set")
	}
	return nil
}
