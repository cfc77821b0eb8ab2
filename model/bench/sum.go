package bench

import (
	"fmt"
	"strings"
)

// Sum is one of the bench sums.
type Sum struct {
	Name  string // as the command line has it: "acid"
	Short string // what it answers, one line
	// Inputs in the order to ask for them.
	Inputs []Input
	// Sources are where the formula is published, one line each.
	Sources []string
	// Cautions belong beside every figure of the sum, and beside none at all.
	Cautions []string

	work func(values) (Answer, error)
}

// Input is one figure, or list of figures, that a sum takes.
type Input struct {
	Name    string // as the flag is called, without dashes: "ml-per-litre"
	Label   string // as a form has it, a few words
	What    string // what to type, one line
	Unit    string // "degrees C" and "um" in letters; empty where there is none
	Kind    Kind
	Need    bool   // nothing can be worked out without it
	Default string // taken where nothing is typed; empty for none
	Example string // a text that works
}

// Kind is what an Input takes.
type Kind int

// The kinds of inputs.
const (
	Number   Kind = iota // one number: 27.4
	Numbers              // a list of numbers: 98.5 97.9
	Counts               // a list of whole numbers: 46 50
	ByName               // numbers by name: iso:3 chaet:1
	Readings             // temperatures after minutes: 30:30.2 60:29.6
	Flag                 // yes or no
	Volume               // mL, or the name of a field of a counting chamber
)

// Sums returns every sum in the order to offer them.
func Sums() []Sum {
	return []Sum{
		acid(), bleach(), blend(), cool(), larvae(), cells(),
		food(), sizes(), mesh(), eyepiece(), oxygen(), ammonia(), density(), saltiness(), hydrometer(),
	}
}

// Named returns the sum of that name. For a name it does not know it lists the
// ones it does.
func Named(name string) (Sum, error) {
	var names []string
	for _, s := range Sums() {
		if s.Name == name {
			return s, nil
		}
		names = append(names, s.Name)
	}
	return Sum{}, fmt.Errorf("there is no sum %q; give one of %s", name, strings.Join(names, ", "))
}

// Run works the sum out from texts by the names of its inputs. An input that is
// not in the map takes its Default; one whose text is empty is taken as missing
// where it is needed or has a default, and as not given otherwise.
//
// Where there are problems, the answer holds no figures: sources and cautions
// stand all the same. Every text that cannot be read is named, and beside them
// whatever is missing; the sum's own refusal comes once all can be read.
func (s Sum) Run(typed map[string]string) (Answer, []Problem) {
	blank := Answer{Sources: s.Sources, Cautions: s.Cautions}
	given, problems := s.read(typed)
	if len(problems) > 0 {
		return blank, problems
	}
	a, err := s.work(given)
	if err != nil {
		return blank, []Problem{s.problem(err)}
	}
	if a.Sources == nil {
		a.Sources = s.Sources
	}
	a.Cautions = s.Cautions
	return a, nil
}

// read reads every text.
func (s Sum) read(typed map[string]string) (values, []Problem) {
	given, problems := values{}, s.unknown(typed)
	for _, in := range s.Inputs {
		text, said := typed[in.Name]
		if !said {
			text = in.Default
		}
		if text = strings.TrimSpace(text); text == "" {
			if in.Need || in.Default != "" {
				problems = append(problems, Problem{Field: in.Name, Problem: "is missing; as in " + in.Example, Missing: true})
			}
			continue
		}
		v, err := in.Kind.read(text)
		if err != nil {
			problems = append(problems, Problem{Field: in.Name, Problem: err.Error()})
			continue
		}
		given[in.Name] = v
	}
	return given, problems
}

// unknown names texts for inputs the sum does not have.
func (s Sum) unknown(typed map[string]string) []Problem {
	var problems []Problem
	for _, name := range sortedNames(typed) {
		if _, known := s.Input(name); !known {
			problems = append(problems, Problem{Field: name, Problem: "is nothing that " + s.Name + " takes"})
		}
	}
	return problems
}

// Input returns the input of that name.
func (s Sum) Input(name string) (Input, bool) {
	for _, in := range s.Inputs {
		if in.Name == name {
			return in, true
		}
	}
	return Input{}, false
}

// Example returns texts that work, by the names of the inputs that are needed.
func (s Sum) Example() map[string]string {
	texts := map[string]string{}
	for _, in := range s.Inputs {
		if in.Need {
			texts[in.Name] = in.Example
		}
	}
	return texts
}
