package main

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
	"time"

	"drainboard/model"
	"drainboard/model/paper"
)

// Columns of an export beside the fields of the kinds.
const (
	columnN       = "n"
	columnAt      = "at"
	columnKeyed   = "keyed"
	columnBy      = "by"
	columnKind    = "kind"
	columnAmended = "amended" // for readers; import passes over it
)

// entriesCSV writes the entries of a kind as CSV (RFC 4180), or all of them for
// no kind: as they were keyed, in the order of their numbers.
func entriesCSV(l *model.Ledger, kind model.Kind) ([]byte, error) {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	w.UseCRLF = true
	fields := exportFields(kind)
	amended := amendments(l)
	if err := w.Write(append([]string{columnN, columnAt, columnKeyed, columnBy, columnKind, columnAmended}, fields...)); err != nil {
		return nil, err
	}
	for _, e := range l.Entries() {
		if kind != "" && e.Kind() != kind {
			continue
		}
		row, err := entryRow(e, l.Room().Zone, fields, amended[e.N])
		if err != nil {
			return nil, fmt.Errorf("entry %d: %w", e.N, err)
		}
		if err := w.Write(row); err != nil {
			return nil, err
		}
	}
	w.Flush()
	return b.Bytes(), w.Error()
}

// exportFields lists the fields of a kind, or of all kinds, each once.
func exportFields(kind model.Kind) []string {
	kinds := []model.Kind{kind}
	if kind == "" {
		kinds = model.Kinds()
	}
	var names []string
	for _, k := range kinds {
		fact, _ := model.NewFact(k)
		for _, f := range fact.Fields() {
			if !slices.Contains(names, f.Name) {
				names = append(names, f.Name)
			}
		}
	}
	return names
}

// amendments words what was corrected, by n.
func amendments(l *model.Ledger) map[int]string {
	void := l.Void()
	words := map[int]string{}
	for n, by := range l.CorrectedBy() {
		words[n] = "set by " + paper.Numbers(by).String()
		if void[n] {
			words[n] = "void by " + paper.Numbers(by).String()
		}
	}
	return words
}

func entryRow(e model.Entry, zone *time.Location, fields []string, amended string) ([]string, error) {
	row := make([]string, 6, 6+len(fields))
	row[0], row[1], row[3], row[4], row[5] = strconv.Itoa(e.N), stamp(e.At, zone), guarded(e.By), string(e.Kind()), amended
	if !e.Keyed.IsZero() {
		row[2] = stamp(e.Keyed, zone)
	}
	cells := map[string]string{}
	for _, f := range e.Fact.Fields() {
		v, given := f.Value()
		if !given {
			continue
		}
		cell, err := cellOf(v, zone)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", f.Name, err)
		}
		cells[f.Name] = cell
	}
	for _, name := range fields {
		row = append(row, cells[name])
	}
	return row, nil
}

// cellOf writes a value as import reads it: lists as 1,2,3, tables as iso:0.35,
// moves as C5:C1, the fields of a correction as one JSON object. Numbers are as
// exact as they are kept.
func cellOf(v any, zone *time.Location) (string, error) {
	switch x := v.(type) {
	case string:
		return guarded(x), nil
	case float64:
		return plain(x), nil
	case int:
		return strconv.Itoa(x), nil
	case bool:
		return strconv.FormatBool(x), nil
	case model.Hatched:
		return hatchedCell(x, zone), nil
	case []float64:
		return strings.Join(mapped(x, plain), ","), nil
	case []int:
		return strings.Join(mapped(x, strconv.Itoa), ","), nil
	case map[string]float64:
		var parts []string
		for _, alga := range slices.Sorted(maps.Keys(x)) {
			parts = append(parts, alga+":"+plain(x[alga]))
		}
		return guarded(strings.Join(parts, ",")), nil
	case []model.Leg:
		return guarded(strings.Join(mapped(x, func(l model.Leg) string { return l.From + ":" + l.To }), ",")), nil
	case map[string]any:
		return changesCell(x, zone)
	}
	return "", fmt.Errorf("no way to write %T", v)
}

func hatchedCell(h model.Hatched, zone *time.Location) string {
	if h.Moment.IsZero() {
		return h.Date.String()
	}
	return stamp(h.Moment, zone)
}

// changesCell writes the fields a correction sets. JSON keeps texts with commas
// and colons apart from lists and tables.
func changesCell(set map[string]any, zone *time.Location) (string, error) {
	encoded, err := json.Marshal(inJSONForm(set, zone))
	return string(encoded), err
}

// inJSONForm turns what a correction may hold into what JSON can.
func inJSONForm(v any, zone *time.Location) any {
	switch x := v.(type) {
	case time.Time:
		return stamp(x, zone)
	case model.Day:
		return x.String()
	case model.Hatched:
		return hatchedCell(x, zone)
	case []model.Leg:
		return mapped(x, func(l model.Leg) map[string]string { return map[string]string{"from": l.From, "to": l.To} })
	case map[string]any:
		turned := map[string]any{}
		for name, value := range x {
			turned[name] = inJSONForm(value, zone)
		}
		return turned
	}
	return v
}
