package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"strconv"
	"time"
	"unicode"
	"unicode/utf16"
)

// printJSON writes one object to stdout. Control and format characters that
// data may hold leave as escapes.
func (p *program) printJSON(v any) error {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(v); err != nil {
		return fmt.Errorf("write the answer as JSON: %w", err)
	}
	return p.print(escapeControls(b.String()))
}

// escapeControls turns the control and format characters that may stand raw in
// JSON into \u escapes; outside of strings there are none but line feeds.
func escapeControls(encoded string) string {
	var b bytes.Buffer
	for _, r := range encoded {
		if r == '\n' || !unicode.IsControl(r) && !unicode.Is(unicode.Cf, r) {
			b.WriteRune(r)
			continue
		}
		for _, unit := range utf16.Encode([]rune{r}) {
			fmt.Fprintf(&b, "\\u%04x", unit)
		}
	}
	return b.String()
}

// known is a figure in JSON, rounded to so many decimals; null where it is not
// known.
func known(x float64, isKnown bool, places int) *float64 {
	if !isKnown || math.IsNaN(x) || math.IsInf(x, 0) {
		return nil
	}
	r := round(x, places)
	return &r
}

// round rounds half away from zero in decimals, and knows no -0.
func round(x float64, places int) float64 {
	scale := math.Pow10(places)
	return math.Round(x*scale)/scale + 0
}

// significant rounds to ten significant digits: what is beyond is the dust of
// binary fractions.
func significant(x float64) float64 {
	r, err := strconv.ParseFloat(strconv.FormatFloat(x, 'g', 10, 64), 64)
	if err != nil {
		return x
	}
	return r + 0
}

// moment is an instant in JSON: RFC 3339 in the room's zone, null where there
// is none.
func moment(t time.Time, zone *time.Location) *string {
	if t.IsZero() {
		return nil
	}
	s := stamp(t, zone)
	return &s
}

func stamp(t time.Time, zone *time.Location) string { return t.In(zone).Format(time.RFC3339) }

// minutesUntil is the time from now to a moment in whole minutes, cut toward
// zero.
func minutesUntil(t, now time.Time) int { return int(t.Sub(now) / time.Minute) }
