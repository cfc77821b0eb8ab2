package main

import (
	"fmt"
	"strings"

	"drainboard/model/bench"
)

// input is the flag of one input of a sum. It takes what the command line takes
// as a number or a list, and hands the sum a text of that.
type input struct {
	kind bench.Kind
	text string
	was  bool // given before
}

// String is the text for the sum; before one is given, the default.
func (n *input) String() string { return n.text }

// Type is the word shown in the help.
func (n *input) Type() string {
	switch n.kind {
	case bench.Numbers, bench.Counts:
		return "list"
	case bench.ByName:
		return "name:number,..."
	case bench.Readings:
		return "min:temp"
	}
	return "number"
}

// Set reads the text. A list that is given again goes on.
func (n *input) Set(s string) error {
	text, err := n.read(s)
	if err != nil {
		return err
	}
	if n.was && n.lists() {
		text = n.text + n.between() + text
	}
	n.text, n.was = text, true
	return nil
}

func (n *input) lists() bool {
	switch n.kind {
	case bench.Numbers, bench.Counts, bench.ByName, bench.Readings:
		return true
	}
	return false
}

// between parts items so that no comma can pass for a decimal sign.
func (n *input) between() string {
	if n.kind == bench.ByName || n.kind == bench.Readings {
		return " "
	}
	return ","
}

func (n *input) read(s string) (string, error) {
	if n.lists() {
		return n.readList(s)
	}
	x, err := parseNumber(s)
	if err != nil && n.kind == bench.Volume && strings.TrimSpace(s) != "" {
		return s, nil // it may be the name of a counting chamber
	}
	return plain(x), err
}

func (n *input) readList(s string) (string, error) {
	if strings.TrimSpace(s) == "" {
		return "", fmt.Errorf("the list is empty; write it as %s", n.sample())
	}
	var words []string
	for part := range strings.SplitSeq(s, ",") {
		items := strings.Fields(part)
		if len(items) == 0 {
			items = []string{""} // two commas with nothing between
		}
		for _, item := range items {
			word, err := n.readItem(item)
			if err != nil {
				return "", fmt.Errorf("item %d: %w", len(words)+1, err)
			}
			words = append(words, word)
		}
	}
	return strings.Join(words, n.between()), nil
}

func (n *input) readItem(s string) (string, error) {
	if n.between() == "," {
		x, err := parseNumber(s)
		return plain(x), err
	}
	name, value, ok := strings.Cut(s, ":")
	if !ok || name == "" || strings.Contains(name, ";") {
		return "", fmt.Errorf("%q: write it as %s", s, n.sample())
	}
	x, err := parseNumber(value)
	return name + ":" + plain(x), err
}

func (n *input) sample() string {
	switch n.kind {
	case bench.ByName:
		return "iso:3,chaet:1"
	case bench.Readings:
		return "30:30.2"
	}
	return "1,2,3"
}
