package main

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"drainboard/model/water"
)

// parseNumber reads a decimal number written with digits and a point. Words such
// as "inf" and numbers no computer holds are refused.
func parseNumber(s string) (float64, error) {
	s = strings.TrimSpace(s)
	if s == "" {
		return 0, errors.New("a number is missing")
	}
	if !isNumber(s) {
		return 0, fmt.Errorf("%q is not a number; write it as 27.4", s)
	}
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		return 0, fmt.Errorf("%s is beyond any number", s)
	}
	return x, nil
}

// number is a flag that takes one decimal number.
type number float64

func (n *number) String() string {
	if *n == 0 {
		return ""
	}
	return plain(float64(*n))
}

// Set reads the number.
func (n *number) Set(s string) error {
	x, err := parseNumber(s)
	*n = number(x)
	return err
}

// Type is the word shown in the help.
func (*number) Type() string { return "number" }

func (n *number) x() float64 { return float64(*n) }

// numbers is a flag that takes a list of numbers, 1,2,3.
type numbers []float64

func (n *numbers) String() string { return "" }

// Set reads the list; a flag given again goes on with it.
func (n *numbers) Set(s string) error {
	if strings.TrimSpace(s) == "" {
		return errors.New("the list is empty; write it as 1,2,3")
	}
	for part := range strings.SplitSeq(s, ",") {
		x, err := parseNumber(part)
		if err != nil {
			return fmt.Errorf("item %d: %w", len(*n)+1, err)
		}
		*n = append(*n, x)
	}
	return nil
}

// Type is the word shown in the help.
func (*numbers) Type() string { return "list" }

// shares is a flag that takes a table of numbers by name, iso:3,chaet:1.
type shares []named

func (n *shares) String() string { return "" }

// Set reads the table; a flag given again goes on with it.
func (n *shares) Set(s string) error {
	for part := range strings.SplitSeq(s, ",") {
		name, value, ok := strings.Cut(part, ":")
		name = strings.TrimSpace(name)
		if !ok || name == "" {
			return fmt.Errorf("%q: write name:number, as in iso:3,chaet:1", part)
		}
		x, err := parseNumber(value)
		if err != nil {
			return fmt.Errorf("%s: %w", name, err)
		}
		for _, have := range *n {
			if have.name == name {
				return fmt.Errorf("%s is given twice", name)
			}
		}
		*n = append(*n, named{name, x})
	}
	return nil
}

// Type is the word shown in the help.
func (*shares) Type() string { return "name:number,..." }

func (n shares) table() map[string]float64 {
	t := map[string]float64{}
	for _, x := range n {
		t[x.name] = x.x
	}
	return t
}

// readings is a flag that takes temperatures after minutes, 30:30.2, and may be
// given again.
type readings []water.Reading

func (r *readings) String() string { return "" }

// Set reads one reading, or several with commas between them.
func (r *readings) Set(s string) error {
	for part := range strings.SplitSeq(s, ",") {
		minutes, celsius, ok := strings.Cut(part, ":")
		if !ok {
			return fmt.Errorf("%q: write minutes:temperature, as in 30:30.2", part)
		}
		m, errM := parseNumber(minutes)
		c, errC := parseNumber(celsius)
		if err := errors.Join(errM, errC); err != nil {
			return fmt.Errorf("%q: write minutes:temperature, as in 30:30.2", part)
		}
		*r = append(*r, water.Reading{Minutes: m, Celsius: c})
	}
	return nil
}

// Type is the word shown in the help.
func (*readings) Type() string { return "min:temp" }

// given is a number flag that remembers that it was given.
type given struct {
	*number
	was *bool
}

// Set reads the number.
func (g *given) Set(s string) error {
	*g.was = true
	return g.number.Set(s)
}
