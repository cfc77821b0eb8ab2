package state

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"time"

	"drainboard/model"
)

// entryHead is the first line of every entry.
const entryHead = "[[entry]]\n"

// keyedGap is by how much the moment of keying may differ from the moment of
// happening before it is written down.
const keyedGap = time.Minute

// appendEntry writes an entry without its sum: one line a key, in the order of
// the kind's fields, times in the room's zone.
func appendEntry(b []byte, e model.Entry, zone *time.Location) []byte {
	b = append(b, entryHead...)
	b = append(b, "n = "...)
	b = strconv.AppendInt(b, int64(e.N), 10)
	b = append(b, "\nat = "...)
	b = appendTime(b, e.At, zone)
	if keyedApart(e) {
		b = append(b, "\nkeyed = "...)
		b = appendTime(b, e.Keyed, zone)
	}
	if e.By != "" {
		b = append(b, "\nby = "...)
		b = appendText(b, e.By)
	}
	b = append(b, "\nkind = "...)
	b = appendText(b, string(e.Kind()))
	for _, field := range e.Fact.Fields() {
		v, given := field.Value()
		if !given {
			continue
		}
		b = append(b, '\n')
		b = appendKey(b, field.Name)
		b = append(b, " = "...)
		b = appendValue(b, v, zone)
	}
	return append(b, '\n')
}

// keyedApart reports whether the moment of keying must be written: it is over a
// minute from the moment of happening, or in another month and so perhaps in
// another file.
func keyedApart(e model.Entry) bool {
	if e.Keyed.IsZero() {
		return false
	}
	return e.Keyed.Sub(e.At).Abs() > keyedGap || monthOf(e.Keyed) != monthOf(e.At)
}

// monthOf is the UTC month, as journal files are named.
func monthOf(t time.Time) string { return t.UTC().Format("2006-01") }

func appendValue(b []byte, v any, zone *time.Location) []byte {
	switch x := v.(type) {
	case string:
		return appendText(b, x)
	case bool:
		return strconv.AppendBool(b, x)
	case int:
		return strconv.AppendInt(b, int64(x), 10)
	case int64:
		return strconv.AppendInt(b, x, 10)
	case float64:
		return appendNumber(b, x)
	case time.Time:
		return appendTime(b, x, zone)
	case model.Day:
		return append(b, x.String()...)
	case model.Hatched:
		if x.Moment.IsZero() {
			return append(b, x.Date.String()...)
		}
		return appendTime(b, x.Moment, zone)
	case []float64:
		return appendList(b, x, appendNumber)
	case []int:
		return appendList(b, x, func(b []byte, n int) []byte { return strconv.AppendInt(b, int64(n), 10) })
	case []string:
		return appendList(b, x, appendText)
	case []any:
		return appendList(b, x, func(b []byte, v any) []byte { return appendValue(b, v, zone) })
	case []map[string]any:
		return appendList(b, x, func(b []byte, m map[string]any) []byte { return appendTable(b, m, zone) })
	case []model.Leg:
		return appendList(b, x, appendLeg)
	case map[string]float64:
		return appendTable(b, x, zone)
	case map[string]any:
		return appendTable(b, x, zone)
	}
	panic(fmt.Sprintf("state: no way to write %T", v))
}

// appendNumber writes the shortest decimal that reads back as x.
func appendNumber(b []byte, x float64) []byte {
	if x == 0 {
		return append(b, '0') // not -0
	}
	if x == math.Trunc(x) && math.Abs(x) >= 1<<53 {
		// A reader that keeps whole numbers apart would take it for one too long.
		return append(strconv.AppendFloat(b, x, 'f', -1, 64), ".0"...)
	}
	return strconv.AppendFloat(b, x, 'f', -1, 64)
}

// appendTime writes whole seconds with the zone's offset; in UTC where the
// offset itself has seconds, which RFC 3339 cannot say.
func appendTime(b []byte, t time.Time, zone *time.Location) []byte {
	t = t.In(zone)
	if _, offset := t.Zone(); offset%60 != 0 {
		t = t.UTC()
	}
	return t.AppendFormat(b, time.RFC3339)
}

// appendText writes a basic string on one line.
func appendText(b []byte, s string) []byte {
	b = append(b, '"')
	for _, r := range s {
		switch {
		case r == '"' || r == '\\':
			b = append(b, '\\', byte(r))
		case r == '\n':
			b = append(b, `\n`...)
		case r == '\t':
			b = append(b, `\t`...)
		case r < ' ' || r >= 0x7f && r < 0xa0:
			b = fmt.Appendf(b, `\u%04X`, r)
		default:
			b = append(b, string(r)...)
		}
	}
	return append(b, '"')
}

// appendKey writes a key, in quotes where it is not a bare one.
func appendKey(b []byte, key string) []byte {
	if !bare(key) {
		return appendText(b, key)
	}
	return append(b, key...)
}

func bare(key string) bool {
	for i := range len(key) {
		c := key[i]
		if !(c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '_' || c == '-') {
			return false
		}
	}
	return key != ""
}

func appendList[T any](b []byte, items []T, each func([]byte, T) []byte) []byte {
	b = append(b, '[')
	for i, item := range items {
		if i > 0 {
			b = append(b, ", "...)
		}
		b = each(b, item)
	}
	return append(b, ']')
}

// appendTable writes an inline table, its keys in order of the alphabet.
func appendTable[V any](b []byte, table map[string]V, zone *time.Location) []byte {
	keys := make([]string, 0, len(table))
	for key := range table {
		keys = append(keys, key)
	}
	slices.Sort(keys)
	b = append(b, '{')
	for i, key := range keys {
		if i > 0 {
			b = append(b, ',')
		}
		b = append(b, ' ')
		b = appendKey(b, key)
		b = append(b, " = "...)
		b = appendValue(b, table[key], zone)
	}
	return append(b, " }"...)
}

func appendLeg(b []byte, leg model.Leg) []byte {
	b = append(b, "{ from = "...)
	b = appendText(b, leg.From)
	b = append(b, ", to = "...)
	b = appendText(b, leg.To)
	return append(b, " }"...)
}
