package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strings"

	"drainboard/model/bench"
	"drainboard/tui/text"
)

// answer is what a bench sum comes to, as the command line words it.
type answer bench.Answer

// MarshalJSON writes the figures in their order.
func (a answer) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for _, f := range a.Figures {
		if f.Key == "" {
			continue
		}
		if err := writePair(&b, f.Key, inJSON(f.Value)); err != nil {
			return nil, err
		}
	}
	if len(a.Cautions) > 0 {
		if err := writePair(&b, "cautions", a.Cautions); err != nil {
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

func inJSON(value any) any {
	switch x := value.(type) {
	case float64:
		return significant(x)
	case []float64:
		return list(x)
	case []bench.Amount:
		return byName(x)
	}
	return value
}

// byName is named figures as a JSON object that keeps their order.
type byName []bench.Amount

// MarshalJSON writes {"iso":0.0087,"chaet":0.003}.
func (n byName) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for _, x := range n {
		if err := writePair(&b, x.Name, significant(x.X)); err != nil {
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
	for _, f := range a.Figures {
		for _, row := range rowsOf(f) {
			rows = append(rows, row)
			width = max(width, text.Width(row[0]))
		}
	}
	var b strings.Builder
	for _, row := range rows {
		b.WriteString(text.Fit(row[0], width) + "  " + row[1] + "\n")
	}
	for _, r := range a.Remarks {
		b.WriteString("\n" + r + "\n")
	}
	if len(a.Sources) > 0 {
		b.WriteString("\nsource: " + strings.Join(a.Sources, "; ") + "\n")
	}
	if len(a.Cautions) > 0 {
		b.WriteString("\n" + cautionLines(a.Cautions))
	}
	return b.String()
}

// rowsOf writes a figure, one row for each of its names; none where it is not
// known.
func rowsOf(f bench.Figure) [][2]string {
	switch x := f.Value.(type) {
	case nil:
		return nil
	case float64:
		return [][2]string{{f.What, withUnit(text.Decimal(x, f.Places), f.Unit)}}
	case []float64:
		return [][2]string{{f.What, numberWords(x, f.Unit)}}
	case []bench.Amount:
		var rows [][2]string
		for _, n := range x {
			rows = append(rows, [2]string{f.What + " " + text.Clean(n.Name), withUnit(text.Decimal(n.X, f.Places), f.Unit)})
		}
		return rows
	}
	return [][2]string{{f.What, withUnit(fmt.Sprint(f.Value), f.Unit)}}
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
