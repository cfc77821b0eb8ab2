package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strings"

	"drainboard/tui/text"
)

// answer is what a bench sum comes to.
type answer struct {
	figures  []fig
	sources  []string // of the formulas
	remarks  []string // how to take the figures
	cautions []string
}

// fig is one figure of an answer: its key in JSON, and its name, unit and
// decimals for people. Without a key it is for people alone.
type fig struct {
	key    string
	what   string
	value  any // float64, *float64, int, string, []float64 or []named
	unit   string
	places int
}

// named is a figure that goes by a name, as the litres of one alga.
type named struct {
	name string
	x    float64
}

// MarshalJSON writes the figures in their order.
func (a answer) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for _, f := range a.figures {
		if f.key == "" {
			continue
		}
		if err := writePair(&b, f.key, f.json()); err != nil {
			return nil, err
		}
	}
	if len(a.cautions) > 0 {
		if err := writePair(&b, "cautions", a.cautions); err != nil {
			return nil, err
		}
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

// writePair goes on with an object that was begun.
func writePair(b *bytes.Buffer, key string, value any) error {
	if b.Len() > 1 {
		b.WriteByte(',')
	}
	name, err := json.Marshal(key)
	if err != nil {
		return err
	}
	encoded, err := json.Marshal(value)
	if err != nil {
		return err
	}
	b.Write(name)
	b.WriteByte(':')
	b.Write(encoded)
	return nil
}

func (f fig) json() any {
	switch x := f.value.(type) {
	case float64:
		return significant(x)
	case *float64:
		if x == nil {
			return nil
		}
		return significant(*x)
	case []float64:
		return list(x)
	case []named:
		return byName(x)
	}
	return f.value
}

// byName is named figures as a JSON object that keeps their order.
type byName []named

// MarshalJSON writes {"iso":0.0087,"chaet":0.003}.
func (n byName) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for _, x := range n {
		if err := writePair(&b, x.name, significant(x.x)); err != nil {
			return nil, err
		}
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

// lines is the answer for people: what, how much, of which unit.
func (a answer) lines() string {
	var rows [][2]string
	width := 0
	for _, f := range a.figures {
		for _, row := range f.rows() {
			rows = append(rows, row)
			width = max(width, text.Width(row[0]))
		}
	}
	var b strings.Builder
	for _, row := range rows {
		b.WriteString(text.Fit(row[0], width) + "  " + row[1] + "\n")
	}
	for _, r := range a.remarks {
		b.WriteString("\n" + r + "\n")
	}
	if len(a.sources) > 0 {
		b.WriteString("\nsource: " + strings.Join(a.sources, "; ") + "\n")
	}
	if len(a.cautions) > 0 {
		b.WriteString("\n" + cautionLines(a.cautions))
	}
	return b.String()
}

func (f fig) rows() [][2]string {
	switch x := f.value.(type) {
	case float64:
		return [][2]string{{f.what, withUnit(text.Decimal(x, f.places), f.unit)}}
	case *float64:
		if x == nil {
			return nil
		}
		return [][2]string{{f.what, withUnit(text.Decimal(*x, f.places), f.unit)}}
	case []float64:
		return [][2]string{{f.what, numberWords(x, f.unit)}}
	case []named:
		var rows [][2]string
		for _, n := range x {
			rows = append(rows, [2]string{f.what + " " + text.Clean(n.name), withUnit(text.Decimal(n.x, f.places), f.unit)})
		}
		return rows
	}
	return [][2]string{{f.what, withUnit(fmt.Sprint(f.value), f.unit)}}
}

func numberWords(xs []float64, unit string) string {
	if len(xs) == 0 {
		return "none"
	}
	words := make([]string, len(xs))
	for i, x := range xs {
		words[i] = plain(x)
	}
	return withUnit(strings.Join(words, ", "), unit)
}
