package bench

import (
	"errors"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"drainboard/model/count"
	"drainboard/model/water"
)

// values are the texts of a sum once they are read.
type values map[string]any

func (v values) has(name string) bool { _, ok := v[name]; return ok }

func (v values) number(name string) float64 { x, _ := v[name].(float64); return x }

func (v values) list(name string) []float64 { x, _ := v[name].([]float64); return x }

func (v values) table(name string) []Amount { x, _ := v[name].([]Amount); return x }

func (v values) readings(name string) []water.Reading { x, _ := v[name].([]water.Reading); return x }

func (v values) flag(name string) bool { x, _ := v[name].(bool); return x }

// byName is a table as the sums take it.
func byName(table []Amount) map[string]float64 {
	m := make(map[string]float64, len(table))
	for _, a := range table {
		m[a.Name] = a.X
	}
	return m
}

func sortedNames(m map[string]string) []string { return slices.Sorted(maps.Keys(m)) }

// read reads a text that is not empty.
func (k Kind) read(text string) (any, error) {
	switch k {
	case Numbers:
		return readList(text, true)
	case Counts:
		return readList(text, false)
	case ByName:
		return readTable(text)
	case Readings:
		return readReadings(text)
	case Flag:
		return readFlag(text)
	case Volume:
		return ReadVolume(text)
	case Number:
	}
	return readNumber(text)
}

// readNumber reads digits with at most one . or , as the decimal sign. Words such
// as "inf" and numbers no computer holds are refused.
func readNumber(text string) (float64, error) {
	digits := strings.TrimPrefix(text, "-")
	plain := strings.Replace(text, ",", ".", 1)
	x, err := strconv.ParseFloat(plain, 64)
	switch {
	case strings.Trim(digits, "0123456789.,") != "" || errors.Is(err, strconv.ErrSyntax):
		return 0, fmt.Errorf("%q is not a number; write it as 27.4", text)
	case err != nil:
		return 0, fmt.Errorf("%s is beyond any number", text)
	}
	return x, nil
}

// readList reads numbers with spaces, commas or semicolons between. A comma is a
// decimal sign only within a number that something else keeps apart from the next,
// and never in counts, which have no decimals.
func readList(text string, decimals bool) ([]float64, error) {
	var list []float64
	for _, w := range listWords(text, decimals) {
		if w == "" {
			return nil, fmt.Errorf("item %d: a number is missing", len(list)+1)
		}
		x, err := readNumber(w)
		if err != nil {
			return nil, fmt.Errorf("item %d: %w", len(list)+1, err)
		}
		list = append(list, x)
	}
	return list, nil
}

// listWords splits a list into the texts of its numbers.
func listWords(text string, decimals bool) []string {
	parts := strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(" \t;+", r) })
	var words []string
	for _, p := range parts {
		p = strings.Trim(p, ",")
		if commas := strings.Count(p, ","); decimals && len(parts) > 1 && commas == 1 && !strings.Contains(p, ".") {
			words = append(words, p)
		} else if p != "" {
			words = append(words, strings.Split(p, ",")...)
		}
	}
	if len(words) == 0 {
		return []string{""}
	}
	return words
}

// pairs splits a text like "iso:3, chaet 2:0,5" at its colons. A comma before
// nothing but digits is a decimal sign; a word without a colon begins a name.
func pairs(text string) [][2]string {
	var list [][2]string
	name := ""
	for len(text) > 0 {
		end := strings.IndexAny(text, " \t,;")
		word, sign := text, ""
		if end >= 0 {
			word, sign, text = text[:end], text[end:end+1], text[end+1:]
		} else {
			text = ""
		}
		left, right, ok := strings.Cut(word, ":")
		switch {
		case ok:
			list = append(list, [2]string{strings.TrimSpace(name + left), right})
			name = ""
		case word != "":
			name += word + " "
		}
		if digits := leadingDigits(text); sign == "," && ok && digits != "" {
			list[len(list)-1][1] += "." + digits
			text = text[len(digits):]
		}
	}
	if name != "" {
		list = append(list, [2]string{strings.TrimSpace(name), ""})
	}
	return list
}

// leadingDigits are the digits a text begins with, where a separator or the end
// comes after them.
func leadingDigits(text string) string {
	digits := text[:len(text)-len(strings.TrimLeft(text, "0123456789"))]
	if rest := text[len(digits):]; rest != "" && !strings.ContainsAny(rest[:1], " \t,;") {
		return ""
	}
	return digits
}

func readTable(text string) ([]Amount, error) {
	var table []Amount
	for _, p := range pairs(text) {
		if p[0] == "" || p[1] == "" {
			return nil, fmt.Errorf("%q: write name:number, as in iso:3 chaet:1", strings.Join(p[:], ":"))
		}
		x, err := readNumber(p[1])
		if err != nil {
			return nil, fmt.Errorf("%s: %w", p[0], err)
		}
		if slices.ContainsFunc(table, func(a Amount) bool { return a.Name == p[0] }) {
			return nil, fmt.Errorf("%s is given twice", p[0])
		}
		table = append(table, Amount{p[0], x})
	}
	return table, nil
}

func readReadings(text string) ([]water.Reading, error) {
	var list []water.Reading
	for _, p := range pairs(text) {
		minutes, errM := readNumber(p[0])
		celsius, errC := readNumber(p[1])
		if errM != nil || errC != nil {
			return nil, fmt.Errorf("%q: write minutes:temperature, as in 30:30.2", strings.Join(p[:], ":"))
		}
		list = append(list, water.Reading{Minutes: minutes, Celsius: celsius})
	}
	return list, nil
}

func readFlag(text string) (bool, error) {
	switch strings.ToLower(text) {
	case "y", "yes", "true", "1":
		return true, nil
	case "n", "no", "false", "0":
		return false, nil
	}
	return false, fmt.Errorf("%q: write yes or no", text)
}

// ReadCounts reads a list of counts as a person types it: whole numbers of 0 or
// more with spaces, commas, semicolons or + between.
func ReadCounts(text string) ([]int, error) {
	list, err := readList(text, false)
	if err != nil {
		return nil, err
	}
	counts, err := count.Whole("counts", list)
	var field *count.FieldError
	if errors.As(err, &field) {
		return nil, errors.New(field.Problem)
	}
	return counts, err
}

// ReadVolume reads the mL that one count covers, or takes them from a chamber's
// name or a beginning of it that no other has.
func ReadVolume(text string) (float64, error) {
	if strings.Trim(text, "0123456789.,") == "" {
		return readNumber(text)
	}
	found := ChambersBegun(text)
	if len(found) == 1 {
		return found[0].ML, nil
	}
	c, err := count.ChamberNamed(strings.ToLower(text))
	if err != nil && len(found) > 1 {
		names := make([]string, len(found))
		for i, c := range found {
			names[i] = c.Name
		}
		return 0, fmt.Errorf("%q may be %s", text, strings.Join(names, " or "))
	}
	var field *count.FieldError
	if errors.As(err, &field) {
		return 0, errors.New(field.Problem)
	}
	return c.ML, err
}

// ChambersBegun lists the fields of counting chambers whose name begins with a
// text, whatever the case of its letters.
func ChambersBegun(text string) []count.Chamber {
	var found []count.Chamber
	for _, c := range count.Chambers() {
		if strings.HasPrefix(c.Name, strings.ToLower(text)) {
			found = append(found, c)
		}
	}
	return found
}
