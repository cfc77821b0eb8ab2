package model

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// maxWords is how many words of a step are read at a glance.
const maxWords = 9

// maxLine bounds the runes of a line beneath a step.
const maxLine = 200

// Check says everything that is wrong with a procedure, each by its key path in
// procedure.toml, as in step[3].text (steps are counted from 1).
func (p Procedure) Check() []*FieldError {
	c := &procedureCheck{steps: p, names: map[string]bool{StepLeftOut: true, StepInto: true}}
	for i, s := range p {
		c.path = fmt.Sprintf("step[%d]", i+1)
		c.wording(s)
		c.kinds(s)
		c.limits(s)
		c.records(s)
	}
	c.whole()
	return c.found
}

// procedureCheck collects what is wrong.
type procedureCheck struct {
	steps Procedure
	path  string          // of the step at hand
	names map[string]bool // names of steps and pauses so far; both are kept in the journal
	found []*FieldError
}

func (c *procedureCheck) add(key, format string, args ...any) {
	path := c.path
	if key != "" {
		path += "." + key
	}
	c.found = append(c.found, wrong(path, format, args...))
}

func (c *procedureCheck) wording(s Step) {
	c.unique("name", s.Name)
	if s.Pause != "" {
		c.unique("pause", s.Pause)
		if s.Lane != LaneMove {
			c.add("pause", "pause points stand in the lane %q only", LaneMove)
		}
	}
	switch n := wordsIn(s.Text); {
	case strings.TrimSpace(s.Text) == "":
		c.add("text", "is empty; say what to do in at most nine words, the verb first")
	case n > maxWords:
		c.add("text", "has %d words; at most nine are read at a glance, the rest belongs in why", n)
	}
	c.oneLine("text", s.Text, maxLine)
	c.oneLine("why", s.Why, maxLine)
	c.oneLine("unit", s.Unit, maxName)
	if s.Unit != "" && s.Ask != AskNumber {
		c.add("unit", "belongs to ask = %q", AskNumber)
	}
}

func (c *procedureCheck) oneLine(key, text string, most int) {
	if !printable(text) || utf8.RuneCountInString(text) > most {
		c.add(key, "is over %d characters long or holds one that cannot be shown; write it on one line", most)
	}
}

func (c *procedureCheck) unique(key, name string) {
	if err := checkText(key, name, false); err != nil || strings.TrimSpace(name) != name || name == "" {
		c.add(key, "%q cannot be kept; 1 to %d plain characters are expected", name, maxName)
		return
	}
	if c.names[name] {
		c.add(key, "%q is taken; every step and pause has a name of its own", name)
	}
	c.names[name] = true
}

// wordsIn counts what a reader reads as words: a sign alone is none.
func wordsIn(text string) int {
	n := 0
	for _, field := range strings.Fields(text) {
		if strings.ContainsFunc(field, func(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) }) {
			n++
		}
	}
	return n
}

func (c *procedureCheck) kinds(s Step) {
	lanes := []string{string(LaneSession), string(LaneMove), string(LaneWash)}
	asks := []string{string(AskTank), string(AskCelsius), string(AskNumber), string(AskChoice), string(AskEnter)}
	c.oneOf("lane", string(s.Lane), lanes)
	c.oneOf("ask", string(s.Ask), asks)
	if s.Caution != "" {
		c.oneOf("caution", s.Caution, []string{"acid"})
	}
}

func (c *procedureCheck) oneOf(key, word string, words []string) {
	if !slices.Contains(words, word) {
		c.add(key, "%q is not one of %s", word, strings.Join(words, ", "))
	}
}

func (c *procedureCheck) limits(s Step) {
	if s.Ask == AskChoice && len(s.Choices) < 2 {
		c.add("choices", "%d given; at least two are expected, the first lets the step pass", len(s.Choices))
	}
	if s.Ask != AskChoice && len(s.Choices) > 0 {
		c.add("choices", "belong to ask = %q", AskChoice)
	}
	for i, choice := range s.Choices {
		if err := checkText("choices", choice, false); err != nil || strings.TrimSpace(choice) == "" || slices.Contains(s.Choices[:i], choice) {
			c.add("choices", "%q is empty, there already, or over %d plain characters long", choice, maxName)
		}
	}
	if s.Ask != AskNumber && (s.Least != nil || s.Most != nil) {
		c.add("", "least and most belong to ask = %q", AskNumber)
	}
	if s.Least != nil && s.Most != nil && *s.Least > *s.Most {
		c.add("least", "%s is above most (%s)", plain(*s.Least), plain(*s.Most))
	}
}

// recorded says which lane and which answers what is recorded belongs to.
var recorded = map[string]struct {
	lane Lane
	asks []Ask
}{
	RecordFromCelsius: {LaneMove, []Ask{AskCelsius}},
	RecordToCelsius:   {LaneMove, []Ask{AskCelsius}},
	RecordMesh:        {LaneMove, []Ask{AskNumber}},
	RecordMoved:       {LaneMove, []Ask{AskEnter}},
	RecordWashed:      {LaneWash, []Ask{AskNumber, AskEnter}},
	RecordFilled:      {LaneWash, []Ask{AskCelsius, AskEnter}},
}

func (c *procedureCheck) records(s Step) {
	if s.Records == RecordNothing {
		return
	}
	rule, known := recorded[s.Records]
	switch {
	case !known:
		c.add("records", "%q is not one of %s", s.Records, strings.Join(sortedKeys(recorded), ", "))
	case rule.lane != s.Lane:
		c.add("records", "%s belongs in the lane %q", s.Records, rule.lane)
	case !slices.Contains(rule.asks, s.Ask):
		c.add("records", "%s is the answer to ask = %q", s.Records, rule.asks[0])
	}
}

// whole says what the procedure as a whole lacks: without these steps a session
// could not write the facts it is for.
func (c *procedureCheck) whole() {
	c.path = "step"
	source := c.place(func(s Step) bool { return s.Name == NameFrom }, "a step named "+NameFrom)
	into := c.place(func(s Step) bool { return s.Name == NameTo }, "a step named "+NameTo)
	moved := c.place(func(s Step) bool { return s.Records == RecordMoved }, "a step that records moved")
	washed := c.place(func(s Step) bool { return s.Records == RecordWashed }, "a step that records washed")
	filled := c.place(func(s Step) bool { return s.Records == RecordFilled }, "a step that records filled")
	for _, i := range []int{source, into} {
		if i >= 0 && (c.steps[i].Ask != AskTank || c.steps[i].Lane != LaneMove) {
			c.path = fmt.Sprintf("step[%d]", i+1)
			c.add("ask", "%s asks for a %q in the lane %q", c.steps[i].Name, AskTank, LaneMove)
		}
	}
	if moved >= 0 && (moved < source || moved < into) {
		c.path = fmt.Sprintf("step[%d]", moved+1)
		c.add("records", "moved comes after the steps %s and %s", NameFrom, NameTo)
	}
	if filled >= 0 && filled < washed {
		c.path = fmt.Sprintf("step[%d]", filled+1)
		c.add("records", "filled comes after washed")
	}
}

// place finds the one step that is meant; none or several are wrong.
func (c *procedureCheck) place(is func(Step) bool, what string) int {
	i := slices.IndexFunc(c.steps, is)
	if i < 0 {
		c.add("", "%s is missing", what)
		return -1
	}
	if more := slices.IndexFunc(c.steps[i+1:], is); more >= 0 {
		c.found = append(c.found, wrong(fmt.Sprintf("step[%d]", i+more+2), "is the second of what there is one of: %s", what))
	}
	return i
}
