package model

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"
)

// FieldType says how a field is written and what it may hold.
type FieldType int

// The types of fields.
const (
	Text      FieldType = iota // free text
	TankName                   // a tank of the room
	Source                     // a water source of the room
	ShortName                  // a short name people choose, as of a batch
	AlgaName                   // an alga of the room
	Word                       // one of a few words
	Number                     // a decimal number
	Whole                      // a whole number
	Flag                       // true or false
	HatchDay                   // a date or a moment
	Numbers                    // a list of decimal numbers
	Wholes                     // a list of whole numbers
	PerAlga                    // a table of numbers by alga
	Legs                       // a list of {from, to}
	Changes                    // a table of fields of another entry
)

// Leg is one agreed move of a change session.
type Leg struct{ From, To string }

// Field is one field of a fact: its name, what it may hold and where it is
// kept. The table of a kind's fields is what the disk, the command line and the
// screens all read and write by.
type Field struct {
	Name  string
	Type  FieldType
	Need  bool
	Unit  string   // shown beside the value; empty where there is none
	Words []string // for Word
	Range Range    // for numbers, and for each number of a list

	at any // pointer to the value
}

// Range limits a number. A value outside it cannot be true.
type Range struct {
	Low, High float64
	Above     bool // Low itself is not allowed
}

func (r Range) check(field, unit string, x float64) error {
	low := x < r.Low || r.Above && x == r.Low
	if !low && x <= r.High && !math.IsNaN(x) {
		return nil
	}
	if unit != "" {
		unit = " " + unit
	}
	if r.Above && r.Low == 0 {
		return wrong(field, "%s cannot be true; a number above 0 and up to %s%s is expected", plain(x), plain(r.High), unit)
	}
	return wrong(field, "%s cannot be true; a number from %s to %s%s is expected", plain(x), plain(r.Low), plain(r.High), unit)
}

func plain(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// Set gives the field a value as a journal holds it: string, int64, float64,
// bool, time.Time, Hatched, or lists and tables of these.
func (f Field) Set(v any) error {
	switch p := f.at.(type) {
	case *string:
		s, ok := v.(string)
		if !ok {
			return wrong(f.Name, "text in quotes is expected, not %v", v)
		}
		return f.setText(p, s)
	case *float64, **float64:
		x, ok := toFloat(v)
		if !ok {
			return wrong(f.Name, "a number is expected, not %v", v)
		}
		return f.setNumber(x)
	case *int, **int:
		x, ok := toFloat(v)
		if !ok || x != math.Trunc(x) || math.Abs(x) > 1e15 {
			return wrong(f.Name, "a whole number is expected, not %v", v)
		}
		return f.setNumber(x)
	case *bool:
		b, ok := v.(bool)
		if !ok {
			return wrong(f.Name, "true or false is expected, not %v", v)
		}
		*p = b
		return nil
	case *Hatched:
		return f.setHatched(p, v)
	case *[]float64, *[]int:
		return f.setList(v)
	case *map[string]float64:
		return f.setPerAlga(p, v)
	case *[]Leg:
		return f.setLegs(p, v)
	case *map[string]any:
		m, ok := v.(map[string]any)
		if !ok || len(m) == 0 {
			return wrong(f.Name, "a table of the fields to change is expected")
		}
		*p = m
		return nil
	}
	panic("model: field " + f.Name + " has no keeper")
}

func (f Field) setText(p *string, s string) error {
	if f.Need && strings.TrimSpace(s) == "" {
		return wrong(f.Name, "must not be empty")
	}
	if err := checkText(f.Name, s, f.Type == Text); err != nil {
		return err
	}
	if f.Type == Word && s != "" && !slices.Contains(f.Words, s) {
		return wrong(f.Name, "%q is not one of %s", s, strings.Join(f.Words, ", "))
	}
	*p = s
	return nil
}

func (f Field) setNumber(x float64) error {
	if math.IsInf(x, 0) || math.IsNaN(x) {
		return wrong(f.Name, "a finite number is expected")
	}
	if f.Type == Whole && x != math.Trunc(x) {
		return wrong(f.Name, "a whole number is expected, not %s", plain(x))
	}
	if err := f.Range.check(f.Name, f.Unit, x); err != nil {
		return err
	}
	switch p := f.at.(type) {
	case *float64:
		*p = x
	case **float64:
		*p = &x
	case *int:
		*p = int(x)
	case **int:
		n := int(x)
		*p = &n
	}
	return nil
}

func (f Field) setHatched(p *Hatched, v any) error {
	switch h := v.(type) {
	case Hatched:
		*p = h
	case Day:
		*p = Hatched{Date: h}
	case time.Time:
		*p = Hatched{Moment: h}
	case string:
		parsed, err := ParseHatched(h)
		if err != nil {
			return wrong(f.Name, "%v", err)
		}
		*p = parsed
	default:
		return wrong(f.Name, "a date or a moment is expected, not %v", v)
	}
	return nil
}

func (f Field) setList(v any) error {
	items, ok := v.([]any)
	if !ok {
		switch typed := v.(type) {
		case []float64:
			for _, x := range typed {
				items = append(items, x)
			}
		case []int:
			for _, x := range typed {
				items = append(items, x)
			}
		default:
			return wrong(f.Name, "a list of numbers is expected, not %v", v)
		}
	}
	if len(items) == 0 && f.Need {
		return wrong(f.Name, "the list is empty; at least one number is expected")
	}
	if len(items) > maxList {
		return wrong(f.Name, "%d numbers in one entry; at most %d are taken", len(items), maxList)
	}
	whole := f.Type == Wholes
	xs := make([]float64, len(items))
	for i, item := range items {
		x, ok := toFloat(item)
		if !ok || math.IsNaN(x) || math.IsInf(x, 0) {
			return wrong(f.Name, "item %d: a number is expected, not %v", i+1, item)
		}
		if whole && x != math.Trunc(x) {
			return wrong(f.Name, "item %d: %s is not a whole number", i+1, plain(x))
		}
		if err := f.Range.check(f.Name, f.Unit, x); err != nil {
			return err
		}
		xs[i] = x
	}
	switch p := f.at.(type) {
	case *[]float64:
		*p = xs
	case *[]int:
		*p = make([]int, len(xs))
		for i, x := range xs {
			(*p)[i] = int(x)
		}
	}
	return nil
}

// maxList bounds a list in one entry; maxText the runes of a text.
const (
	maxList = 5000
	maxText = 2000
	maxName = 40
)

func (f Field) setPerAlga(p *map[string]float64, v any) error {
	table := map[string]float64{}
	switch m := v.(type) {
	case map[string]float64:
		maps.Copy(table, m)
	case map[string]any:
		for alga, item := range m {
			x, ok := toFloat(item)
			if !ok {
				return wrong(f.Name, "%s: a number is expected, not %v", alga, item)
			}
			table[alga] = x
		}
	default:
		return wrong(f.Name, "a table by alga is expected, as in iso:0.35, not %v", v)
	}
	if len(table) == 0 && f.Need {
		return wrong(f.Name, "the table is empty; write alga:litres, as in iso:0.35")
	}
	for alga, x := range table {
		if err := f.Range.check(f.Name+"."+alga, f.Unit, x); err != nil {
			return err
		}
	}
	*p = table
	return nil
}

func (f Field) setLegs(p *[]Leg, v any) error {
	var legs []Leg
	switch list := v.(type) {
	case []Leg:
		legs = slices.Clone(list)
	case []map[string]any:
		for _, m := range list {
			leg, err := f.legOf(m)
			if err != nil {
				return err
			}
			legs = append(legs, leg)
		}
	case []any:
		for _, item := range list {
			m, ok := item.(map[string]any)
			if !ok {
				return wrong(f.Name, "each move is written {from, to}, not %v", item)
			}
			leg, err := f.legOf(m)
			if err != nil {
				return err
			}
			legs = append(legs, leg)
		}
	default:
		return wrong(f.Name, "a list of moves is expected, as in C5:C1,C2:C5")
	}
	if len(legs) == 0 || len(legs) > maxLegs {
		return wrong(f.Name, "%d moves; between 1 and %d are expected", len(legs), maxLegs)
	}
	*p = legs
	return nil
}

const maxLegs = 400

func (f Field) legOf(m map[string]any) (Leg, error) {
	from, okFrom := m["from"].(string)
	to, okTo := m["to"].(string)
	if !okFrom || !okTo || len(m) != 2 {
		return Leg{}, wrong(f.Name, "each move has just a from and a to")
	}
	return Leg{from, to}, nil
}

// Value returns what the field holds, and false where an optional field was
// left out.
func (f Field) Value() (any, bool) {
	switch p := f.at.(type) {
	case *string:
		return *p, f.Need || *p != ""
	case *float64:
		return *p, true
	case **float64:
		if *p == nil {
			return nil, false
		}
		return **p, true
	case *int:
		return *p, true
	case **int:
		if *p == nil {
			return nil, false
		}
		return **p, true
	case *bool:
		return *p, f.Need || *p
	case *Hatched:
		return *p, !p.IsZero()
	case *[]float64:
		return *p, f.Need || len(*p) > 0
	case *[]int:
		return *p, f.Need || len(*p) > 0
	case *map[string]float64:
		return *p, f.Need || len(*p) > 0
	case *[]Leg:
		return *p, f.Need || len(*p) > 0
	case *map[string]any:
		return *p, len(*p) > 0
	}
	panic("model: field " + f.Name + " has no keeper")
}

func toFloat(v any) (float64, bool) {
	switch x := v.(type) {
	case float64:
		return x, true
	case int64:
		return float64(x), true
	case int:
		return float64(x), true
	}
	return 0, false
}

// checkText refuses what no person types: broken encoding and control
// characters. Free text may hold line breaks and tabs.
func checkText(field, s string, free bool) error {
	limit := maxName
	if free {
		limit = maxText
	}
	runes := 0
	for _, r := range s {
		runes++
		if r == '\uFFFD' {
			return wrong(field, "holds a broken character; retype it")
		}
		if (r < ' ' || r == 0x7f || r >= 0x80 && r < 0xa0) && (!free || r != '\n' && r != '\t') {
			return wrong(field, "holds a control character (code %d); retype it without", r)
		}
	}
	if runes > limit {
		return wrong(field, "is %d characters long; at most %d are taken", runes, limit)
	}
	return nil
}

// ParseField gives the field a value from the command line, a CSV cell or a
// screen: lists are written 1,2,3, tables iso:0.35,chaet:0.1, moves C5:C1,C2:C5.
func ParseField(f Field, s string) error {
	switch f.Type {
	case Number, Whole:
		x, err := parseNumber(s)
		if err != nil {
			return wrong(f.Name, "%q is not a number", s)
		}
		return f.Set(x)
	case Flag:
		b, ok := map[string]bool{"true": true, "yes": true, "false": false, "no": false}[strings.ToLower(s)]
		if !ok {
			return wrong(f.Name, "%q: true or false is expected", s)
		}
		return f.Set(b)
	case Numbers, Wholes:
		return f.parseList(s)
	case PerAlga:
		return f.parsePerAlga(s)
	case Legs:
		return f.parseLegs(s)
	case Changes:
		return f.parseChanges(s)
	}
	return f.Set(s)
}

// parseNumber reads a decimal written with a point; digits only, no names such
// as "inf".
func parseNumber(s string) (float64, error) {
	s = strings.TrimSpace(s)
	if strings.Trim(s, "0123456789.+-eE") != "" || s == "" {
		return 0, fmt.Errorf("%q is not a number", s)
	}
	return strconv.ParseFloat(s, 64)
}

func (f Field) parseList(s string) error {
	var items []any
	for i, part := range strings.Split(s, ",") {
		x, err := parseNumber(part)
		if err != nil {
			return wrong(f.Name, "item %d: %q is not a number; write a list as 1,2,3", i+1, part)
		}
		items = append(items, x)
	}
	return f.Set(items)
}

func (f Field) parsePerAlga(s string) error {
	table := map[string]float64{}
	for _, part := range strings.Split(s, ",") {
		alga, figure, ok := strings.Cut(part, ":")
		x, err := parseNumber(figure)
		alga = strings.TrimSpace(alga)
		if !ok || err != nil || alga == "" {
			return wrong(f.Name, "%q: write alga:litres, as in iso:0.35,chaet:0.1", part)
		}
		if _, twice := table[alga]; twice {
			return wrong(f.Name, "%s is given twice", alga)
		}
		table[alga] = x
	}
	return f.Set(table)
}

func (f Field) parseLegs(s string) error {
	var legs []Leg
	for _, part := range strings.Split(s, ",") {
		from, to, ok := strings.Cut(strings.ReplaceAll(part, ">", ":"), ":")
		from, to = strings.TrimRight(strings.TrimSpace(from), "-"), strings.TrimSpace(to)
		if !ok || from == "" || to == "" {
			return wrong(f.Name, "%q: write each move as FROM:TO, as in C5:C1,C2:C5", part)
		}
		legs = append(legs, Leg{from, to})
	}
	return f.Set(legs)
}

// parseChanges reads field:value,field:value; a part without a colon goes on
// with the list of the field before it.
func (f Field) parseChanges(s string) error {
	table := map[string]any{}
	last := ""
	for _, part := range strings.Split(s, ",") {
		name, value, ok := strings.Cut(part, ":")
		switch {
		case ok:
			last = strings.TrimSpace(name)
			if _, twice := table[last]; twice {
				return wrong(f.Name, "%s is given twice", last)
			}
			table[last] = value
		case last != "":
			table[last] = table[last].(string) + "," + part
		default:
			return wrong(f.Name, "%q: write field:value, as in celsius:27.4", part)
		}
	}
	return f.Set(table)
}
