package factform

import (
	"fmt"
	"strconv"
	"strings"

	"drainboard/model"
	"drainboard/tui/screen"
)

// Most characters of a field.
const (
	mostName   = 40
	mostNumber = 14
	mostText   = 2000
	mostList   = 40_000
)

// fieldOf is what a field of a type is typed into.
func fieldOf(t model.FieldType) screen.Field {
	switch t {
	case model.Number, model.PerAlga:
		return screen.NewField(screen.Number, mostNumber)
	case model.Whole:
		return screen.NewField(screen.Whole, mostNumber)
	case model.TankName, model.Source, model.ShortName, model.AlgaName, model.Word, model.Flag, model.HatchDay:
		return screen.NewField(screen.Name, mostName)
	case model.Numbers, model.Wholes:
		return screen.NewField(screen.Line, mostList)
	}
	return screen.NewField(screen.Line, mostText)
}

// read turns what a person types into what the model reads: a comma before the
// decimals, digits for the words of a list, y and n.
func read(field model.Field, typed string) string {
	switch field.Type {
	case model.Number, model.Whole, model.PerAlga:
		return strings.ReplaceAll(typed, ",", ".")
	case model.Word:
		return wordOf(field.Words, typed)
	case model.Flag:
		return flagOf(typed)
	case model.Numbers, model.Wholes:
		return strings.Join(strings.FieldsFunc(typed, func(r rune) bool { return strings.ContainsRune(" ,;+", r) }), ",")
	}
	return typed
}

// flagOf is a flag typed as a letter, a digit or a word.
func flagOf(typed string) string {
	switch strings.ToLower(typed) {
	case "y", "1":
		return "yes"
	case "n", "0":
		return "no"
	}
	return typed
}

// wordOf is the word of a list by its place from 1, or by its beginning where
// only one begins so.
func wordOf(words []string, typed string) string {
	if n, err := strconv.Atoi(typed); err == nil && n >= 1 && n <= len(words) {
		return words[n-1]
	}
	found := typed
	for _, w := range words {
		if typed != "" && strings.HasPrefix(w, strings.ToLower(typed)) {
			if found != typed {
				return typed
			}
			found = w
		}
	}
	return found
}

// written is a value of the model as a person would type it; of a table by alga
// the number of one alga.
func written(v any, alga string) string {
	switch x := v.(type) {
	case string:
		return x
	case float64:
		return strconv.FormatFloat(x, 'f', -1, 64)
	case int:
		return strconv.Itoa(x)
	case bool:
		if x {
			return "yes"
		}
		return "no"
	case []float64:
		return joined(x, func(f float64) string { return written(f, "") })
	case []int:
		return joined(x, strconv.Itoa)
	case map[string]float64:
		if litres, ok := x[alga]; ok {
			return written(litres, "")
		}
		return ""
	case []model.Leg:
		return joined(x, func(l model.Leg) string { return l.From + ":" + l.To })
	}
	return fmt.Sprint(v)
}

func joined[T any](list []T, word func(T) string) string {
	words := make([]string, len(list))
	for i, x := range list {
		words[i] = word(x)
	}
	return strings.Join(words, ", ")
}
