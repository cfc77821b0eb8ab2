package state

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"github.com/BurntSushi/toml"

	"drainboard/model"
)

// table reads one table of a TOML file key by key. What is wrong is collected
// by key path; a key that is left out leaves its target as it is, so that
// defaults stay.
type table struct {
	path  string
	keys  map[string]any
	known []string // keys asked for
	wrong *[]*model.FieldError
}

// parseTOML decodes a file into its top table. A syntax error comes back as a
// problem with its line.
func parseTOML(file, text string) (*table, *Problem) {
	keys := map[string]any{}
	if _, err := toml.Decode(text, &keys); err != nil {
		return nil, syntaxProblem(file, err)
	}
	return &table{keys: keys, wrong: new([]*model.FieldError)}, nil
}

func syntaxProblem(file string, err error) *Problem {
	if parse, ok := errors.AsType[toml.ParseError](err); ok {
		text := strings.ReplaceAll(parse.Message, "\n", " ")
		if parse.LastKey != "" {
			text = fmt.Sprintf("%s (near %q)", text, parse.LastKey)
		}
		return &Problem{File: file, Line: max(parse.Position.Line, 1), Text: "not TOML: " + text}
	}
	return &Problem{File: file, Line: 1, Text: "not TOML: " + strings.ReplaceAll(err.Error(), "\n", " ")}
}

func (t *table) complain(key, format string, args ...any) {
	*t.wrong = append(*t.wrong, &model.FieldError{Field: join(t.path, key), Problem: fmt.Sprintf(format, args...)})
}

// get returns the value of a key, and false where it is left out.
func (t *table) get(key string) (any, bool) {
	t.known = append(t.known, key)
	v, ok := t.keys[key]
	return v, ok
}

// need complains of a key that is left out.
func (t *table) need(key, example string) {
	if _, ok := t.keys[key]; !ok {
		t.complain(key, "is missing; write %s = %s", key, example)
	}
}

func (t *table) text(key string, to *string) {
	v, ok := t.get(key)
	if !ok {
		return
	}
	s, ok := v.(string)
	if !ok {
		t.complain(key, "text in quotes is expected, not %s", whatIs(v))
		return
	}
	*to = s
}

func (t *table) number(key string, to *float64) {
	if v, ok := t.get(key); ok {
		if x, ok := t.finite(key, v); ok {
			*to = x
		}
	}
}

// maybe reads a number that may be left out.
func (t *table) maybe(key string, to **float64) {
	if v, ok := t.get(key); ok {
		if x, ok := t.finite(key, v); ok {
			*to = &x
		}
	}
}

func (t *table) finite(key string, v any) (float64, bool) {
	switch x := v.(type) {
	case int64:
		return float64(x), true
	case float64:
		if !math.IsNaN(x) && !math.IsInf(x, 0) {
			return x, true
		}
	}
	t.complain(key, "a number is expected, not %s", whatIs(v))
	return 0, false
}

func (t *table) whole(key string, to *int) {
	v, ok := t.get(key)
	if !ok {
		return
	}
	n, ok := v.(int64)
	if !ok || n < math.MinInt32 || n > math.MaxInt32 {
		t.complain(key, "a whole number is expected, not %s", whatIs(v))
		return
	}
	*to = int(n)
}

func (t *table) flag(key string, to *bool) {
	v, ok := t.get(key)
	if !ok {
		return
	}
	b, ok := v.(bool)
	if !ok {
		t.complain(key, "true or false is expected, not %s", whatIs(v))
		return
	}
	*to = b
}

// band reads a list of a low and a high figure.
func (t *table) band(key string, to *model.Band) {
	var pair []float64
	if !t.numbers(key, &pair) {
		return
	}
	if len(pair) != 2 {
		t.complain(key, "two numbers are expected, low and high, as in [27.0, 29.0]")
		return
	}
	*to = model.Band{Low: pair[0], High: pair[1]}
}

// numbers reports whether the key was there and a list of numbers.
func (t *table) numbers(key string, to *[]float64) bool {
	v, ok := t.get(key)
	if !ok {
		return false
	}
	items, ok := v.([]any)
	if !ok {
		t.complain(key, "a list of numbers is expected, not %s", whatIs(v))
		return false
	}
	xs := make([]float64, len(items))
	for i, item := range items {
		if xs[i], ok = t.finite(key, item); !ok {
			return false
		}
	}
	*to = xs
	return true
}

func (t *table) texts(key string, to *[]string) {
	v, ok := t.get(key)
	if !ok {
		return
	}
	items, ok := v.([]any)
	if !ok {
		t.complain(key, "a list of texts is expected, not %s", whatIs(v))
		return
	}
	*to = nil
	for _, item := range items {
		s, ok := item.(string)
		if !ok {
			t.complain(key, "text in quotes is expected, not %s", whatIs(item))
			return
		}
		*to = append(*to, s)
	}
}

// shares reads a table of numbers.
func (t *table) shares(key string, to *map[string]float64) {
	v, ok := t.get(key)
	if !ok {
		return
	}
	m, ok := v.(map[string]any)
	if !ok {
		t.complain(key, "a table is expected, as in { iso = 1.0 }, not %s", whatIs(v))
		return
	}
	shares := map[string]float64{}
	for name, item := range m {
		if x, ok := t.finite(key+"."+name, item); ok {
			shares[name] = x
		}
	}
	*to = shares
}

// sub returns the table under a key; an empty one where it is left out.
func (t *table) sub(key string) *table {
	inner := &table{path: join(t.path, key), wrong: t.wrong}
	if v, ok := t.get(key); ok {
		m, isTable := v.(map[string]any)
		if !isTable {
			t.complain(key, "a table [%s] is expected, not %s", inner.path, whatIs(v))
		}
		inner.keys = m
	}
	return inner
}

// list returns the tables of an array of tables, and whether it was given.
func (t *table) list(key string) ([]*table, bool) {
	v, ok := t.get(key)
	if !ok {
		return nil, false
	}
	var maps []map[string]any
	switch items := v.(type) {
	case []map[string]any:
		maps = items
	case []any:
		for _, item := range items {
			m, isTable := item.(map[string]any)
			if !isTable {
				t.complain(key, "a list of tables [[%s]] is expected, not a list of %s", join(t.path, key), whatIs(item))
				return nil, true
			}
			maps = append(maps, m)
		}
	default:
		t.complain(key, "a list of tables [[%s]] is expected, not %s", join(t.path, key), whatIs(v))
		return nil, true
	}
	tables := make([]*table, len(maps))
	for i, m := range maps {
		tables[i] = &table{path: fmt.Sprintf("%s[%d]", join(t.path, key), i+1), keys: m, wrong: t.wrong}
	}
	return tables, true
}

// done complains of keys no one asked for.
func (t *table) done() {
	for key := range t.keys {
		if slices.Contains(t.known, key) {
			continue
		}
		if close := nearest(key, t.known); close != "" {
			t.complain(key, "is not known here; did you mean %s?", close)
		} else {
			t.complain(key, "is not known here; known are %s", strings.Join(t.known, ", "))
		}
	}
}

// whatIs describes a value for a refusal.
func whatIs(v any) string {
	switch x := v.(type) {
	case string:
		return fmt.Sprintf("the text %q", x)
	case int64, float64:
		return fmt.Sprintf("the number %v", x)
	case bool:
		return fmt.Sprint(x)
	case time.Time:
		return "a date"
	case []any, []map[string]any:
		return "a list"
	case map[string]any:
		return "a table"
	}
	return fmt.Sprintf("%v", v)
}

// nearest finds the word that differs from key by at most two letters; empty
// where there is none.
func nearest(key string, words []string) string {
	best, least := "", 3
	for _, word := range words {
		if d := editDistance(key, word); d < least && d < len(word)-1 {
			best, least = word, d
		}
	}
	return best
}

// editDistance is the number of letters to insert, delete or replace
// (Levenshtein 1966).
func editDistance(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			cost := diagonal
			if a[i] != b[j] {
				cost++
			}
			diagonal = row[j+1]
			row[j+1] = min(cost, row[j]+1, diagonal+1)
		}
	}
	return row[len(b)]
}
