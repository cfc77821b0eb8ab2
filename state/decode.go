package state

import (
	"fmt"
	"strings"
	"time"

	"github.com/BurntSushi/toml"

	"drainboard/model"
)

// decoder turns the text of an entry, without its sum, into an entry.
type decoder struct {
	zone   *time.Location
	values values
	table  map[string]any
}

func newDecoder(zone *time.Location) *decoder {
	return &decoder{
		zone:   zone,
		values: values{zone: zone, shared: map[string]string{}},
		table:  map[string]any{},
	}
}

// entry decodes the text of one entry. What is wrong with a key is a
// model.FieldError.
func (d *decoder) entry(text string) (model.Entry, error) {
	clear(d.table)
	if !d.values.entry(text, d.table) {
		table, err := d.library(text)
		if err != nil {
			return model.Entry{}, err
		}
		d.table = table
	}
	return d.build(d.table)
}

// library reads an entry written in whatever way TOML allows.
func (d *decoder) library(text string) (map[string]any, error) {
	var file map[string]any
	if _, err := toml.Decode(text, &file); err != nil {
		return nil, fmt.Errorf("%s", syntaxProblem("", err).Text)
	}
	tables, ok := file["entry"].([]map[string]any)
	if !ok || len(tables) != 1 || len(file) != 1 {
		return nil, fmt.Errorf("one [[entry]] is expected and nothing beside it")
	}
	for key, v := range tables[0] {
		tables[0][key] = d.plain(v)
	}
	return tables[0], nil
}

// plain gives dates the types the model knows.
func (d *decoder) plain(v any) any {
	switch x := v.(type) {
	case time.Time:
		switch x.Location().String() {
		case "date-local":
			return model.Day{Year: x.Year(), Month: x.Month(), Date: x.Day()}
		case "datetime-local", "time-local":
			// Without an offset it is no instant; as text the field refuses it.
			return x.Format("2006-01-02T15:04:05")
		}
		return x.Truncate(time.Second).In(d.zone)
	case map[string]any:
		for key, item := range x {
			x[key] = d.plain(item)
		}
	case []any:
		for i, item := range x {
			x[i] = d.plain(item)
		}
	case []map[string]any:
		for _, item := range x {
			d.plain(item)
		}
	}
	return v
}

// build takes the keys every entry has and leaves the rest to its fact.
func (d *decoder) build(table map[string]any) (model.Entry, error) {
	var e model.Entry
	n, ok := table["n"].(int64)
	if !ok || n < 1 || n > 1e12 {
		return e, wrongKey("n", "the number of the entry is expected")
	}
	e.N = int(n)
	if e.At, ok = table["at"].(time.Time); !ok {
		return e, wrongKey("at", "a moment is expected, as in 2026-11-25T09:14:05-05:00")
	}
	if v, given := table["keyed"]; given {
		if e.Keyed, ok = v.(time.Time); !ok {
			return e, wrongKey("keyed", "a moment is expected, as in 2026-11-25T09:14:05-05:00")
		}
	}
	if v, given := table["by"]; given {
		if e.By, ok = v.(string); !ok {
			return e, wrongKey("by", "text in quotes is expected, not %s", whatIs(v))
		}
	}
	kind, ok := table["kind"].(string)
	if !ok {
		return e, wrongKey("kind", "the kind of the entry is expected, as text in quotes")
	}
	if e.Fact, ok = model.NewFact(model.Kind(kind)); !ok {
		return e, wrongKey("kind", "%q is not known here; known are %s", kind, kinds())
	}
	for _, key := range []string{"n", "at", "keyed", "by", "kind"} {
		delete(table, key)
	}
	return e, model.FillFact(e.Fact, table)
}

func wrongKey(key, format string, args ...any) error {
	return &model.FieldError{Field: key, Problem: fmt.Sprintf(format, args...)}
}

func kinds() string {
	var names []string
	for _, k := range model.Kinds() {
		names = append(names, string(k))
	}
	return strings.Join(names, ", ")
}
