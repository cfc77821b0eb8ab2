package main

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"drainboard/model"
)

// wording says what a fact holds in one line, as in "C5 27.4 °C".
func wording(fact model.Fact) string {
	var words []string
	for _, f := range fact.Fields() {
		if v, given := f.Value(); given {
			words = append(words, wordingOf(f, v))
		}
	}
	return strings.Join(words, " ")
}

func wordingOf(f model.Field, v any) string {
	if yes, ok := v.(bool); ok {
		if yes {
			return f.Name
		}
		return "not " + f.Name
	}
	value := valueWords(f, v)
	switch f.Name {
	case "tank", "supply", "algae", "celsius", "um", "larvae", "text", "litres", "moves":
		return value
	}
	return label(f.Name) + " " + value
}

// label is a field's name without the unit that stands behind its value.
func label(name string) string {
	for _, unit := range []string{"_um", "_ml", "_litres", "_celsius", "_mg_l"} {
		name = strings.TrimSuffix(name, unit)
	}
	return strings.ReplaceAll(name, "_", " ")
}

func valueWords(f model.Field, v any) string {
	switch x := v.(type) {
	case string:
		if f.Type == model.Text {
			return strconv.Quote(x)
		}
		return x
	case float64:
		return withUnit(plain(x), f.Unit)
	case int:
		if f.Unit == f.Name {
			return strconv.Itoa(x)
		}
		return withUnit(strconv.Itoa(x), f.Unit)
	case []float64:
		return listWords(x, plain, f.Unit)
	case []int:
		return listWords(x, strconv.Itoa, f.Unit)
	case map[string]float64:
		var parts []string
		for _, alga := range slices.Sorted(maps.Keys(x)) {
			parts = append(parts, alga+" "+withUnit(plain(x[alga]), f.Unit))
		}
		return strings.Join(parts, ", ")
	case []model.Leg:
		var parts []string
		for _, leg := range x {
			parts = append(parts, leg.From+" to "+leg.To)
		}
		return strings.Join(parts, ", ")
	case map[string]any:
		var parts []string
		for _, name := range slices.Sorted(maps.Keys(x)) {
			parts = append(parts, fmt.Sprintf("%s = %v", name, x[name]))
		}
		return strings.Join(parts, ", ")
	}
	return fmt.Sprint(v)
}

// mostListed is how many readings of a list are written out.
const mostListed = 8

func listWords[T any](xs []T, word func(T) string, unit string) string {
	var parts []string
	for _, x := range xs[:min(len(xs), mostListed)] {
		parts = append(parts, word(x))
	}
	words := withUnit(strings.Join(parts, ", "), unit)
	if len(xs) > mostListed {
		words += fmt.Sprintf(" ... (%d in all)", len(xs))
	}
	return words
}

// withUnit puts a unit behind a figure, in the sign people write.
func withUnit(figure, unit string) string {
	switch unit {
	case "":
		return figure
	case "degrees C":
		unit = "°C"
	case "um":
		unit = "µm"
	case "per cent":
		unit = "%"
	}
	return figure + " " + unit
}

func plain(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// plural counts things: 1 entry, 2 entries.
func plural(n int, one string) string {
	switch {
	case n == 1:
		return "1 " + one
	case strings.HasSuffix(one, "y"):
		return fmt.Sprintf("%d %sies", n, strings.TrimSuffix(one, "y"))
	}
	return fmt.Sprintf("%d %ss", n, one)
}
