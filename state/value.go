package state

import (
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"drainboard/model"
)

// values reads the way of writing TOML that appendEntry writes: one key a line,
// basic strings, plain decimals, inline lists and tables. It exists for speed:
// a room opens by reading every entry it ever had. Whatever is written in
// another way it does not take, and the TOML library reads that.
type values struct {
	text   string
	at     int
	zone   *time.Location
	shared map[string]string // texts met before, so that entries do not hold the whole file
}

// entry reads all lines of an entry into table, and reports whether it could.
func (v *values) entry(text string, table map[string]any) bool {
	v.text, v.at = text, 0
	if !v.take(entryHead) || !utf8.ValidString(text) {
		return false
	}
	for v.at < len(v.text) {
		if !v.pair(table) || !v.take("\n") {
			return false
		}
	}
	return true
}

func (v *values) take(s string) bool {
	if !strings.HasPrefix(v.text[v.at:], s) {
		return false
	}
	v.at += len(s)
	return true
}

// pair reads key = value.
func (v *values) pair(table map[string]any) bool {
	key, ok := v.key()
	if !ok || !v.take(" = ") {
		return false
	}
	if _, twice := table[key]; twice {
		return false
	}
	value, ok := v.value()
	table[key] = value
	return ok
}

func (v *values) key() (string, bool) {
	if v.at < len(v.text) && v.text[v.at] == '"' {
		return v.str()
	}
	n := strings.IndexByte(v.text[v.at:], ' ')
	if n < 0 || !bare(v.text[v.at:v.at+n]) {
		return "", false
	}
	key := v.share(v.text[v.at : v.at+n])
	v.at += n
	return key, true
}

func (v *values) value() (any, bool) {
	if v.at >= len(v.text) {
		return nil, false
	}
	switch c := v.text[v.at]; {
	case c == '"':
		return v.str()
	case c == '[':
		return v.list()
	case c == '{':
		return v.table()
	case c == '-' || c >= '0' && c <= '9':
		return v.figure()
	case v.take("true"):
		return true, true
	case v.take("false"):
		return false, true
	}
	return nil, false
}

func (v *values) str() (string, bool) {
	v.at++
	rest := v.text[v.at:]
	for i := range len(rest) {
		switch c := rest[i]; {
		case c == '"':
			v.at += i + 1
			return v.share(rest[:i]), true
		case c == '\\':
			return v.escaped()
		case c < ' ' || c == 0x7f:
			return "", false
		}
	}
	return "", false
}

// escaped reads a string with the escapes that appendText writes.
func (v *values) escaped() (string, bool) {
	var b strings.Builder
	for v.at < len(v.text) {
		c := v.text[v.at]
		v.at++
		switch {
		case c == '"':
			return b.String(), true
		case c < ' ' || c == 0x7f:
			return "", false
		case c != '\\':
			b.WriteByte(c)
		default:
			r, ok := v.escape()
			if !ok {
				return "", false
			}
			b.WriteRune(r)
		}
	}
	return "", false
}

func (v *values) escape() (rune, bool) {
	switch {
	case v.take(`"`):
		return '"', true
	case v.take(`\`):
		return '\\', true
	case v.take("n"):
		return '\n', true
	case v.take("t"):
		return '\t', true
	case v.take("u00") && v.at+2 <= len(v.text):
		r, err := strconv.ParseUint(v.text[v.at:v.at+2], 16, 8)
		v.at += 2
		return rune(r), err == nil
	}
	return 0, false
}

// share returns a string of its own, the same one for the same text.
func (v *values) share(s string) string {
	if len(s) > 40 {
		return strings.Clone(s)
	}
	if have, ok := v.shared[s]; ok {
		return have
	}
	s = strings.Clone(s)
	if len(v.shared) < 1<<14 {
		v.shared[s] = s
	}
	return s
}

func (v *values) list() (any, bool) {
	v.at++
	items := []any{}
	for !v.take("]") {
		if len(items) > 0 && !v.take(", ") {
			return nil, false
		}
		item, ok := v.value()
		if !ok {
			return nil, false
		}
		items = append(items, item)
	}
	return items, true
}

func (v *values) table() (any, bool) {
	v.at++
	table := map[string]any{}
	for !v.take(" }") {
		if len(table) > 0 && !v.take(",") {
			return nil, false
		}
		if !v.take(" ") || !v.pair(table) {
			return nil, false
		}
	}
	return table, true
}

// figure reads a number, a date or a moment.
func (v *values) figure() (any, bool) {
	from := v.at
	for v.at < len(v.text) && strings.IndexByte(",]} \n", v.text[v.at]) < 0 {
		v.at++
	}
	s := v.text[from:v.at]
	if len(s) >= len(time.DateOnly) && s[4] == '-' {
		return v.moment(s)
	}
	whole, decimals, hasPoint := strings.Cut(strings.TrimPrefix(s, "-"), ".")
	if !digits(whole) || len(whole) > 1 && whole[0] == '0' || hasPoint && !digits(decimals) {
		return nil, false
	}
	if !hasPoint {
		n, err := strconv.ParseInt(s, 10, 64)
		return n, err == nil
	}
	x, err := strconv.ParseFloat(s, 64)
	return x, err == nil
}

func digits(s string) bool {
	for i := range len(s) {
		if s[i] < '0' || s[i] > '9' {
			return false
		}
	}
	return s != ""
}

// moment reads a date, or an instant of whole seconds with its offset.
func (v *values) moment(s string) (any, bool) {
	if len(s) == len(time.DateOnly) {
		day, err := model.ParseDay(s)
		return day, err == nil
	}
	if len(s) != len("2006-01-02T15:04:05Z") && len(s) != len("2006-01-02T15:04:05-07:00") {
		return nil, false
	}
	t, err := time.Parse(time.RFC3339, s)
	return t.In(v.zone), err == nil
}
