package main

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
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

// String is the default shown in the help; none where it is 0.
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
