package main

import (
	"fmt"
	"strings"

	"drainboard/model/bench"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// newCalc is the command that holds the bench sums.
func newCalc(p *program) *cobra.Command {
	c := &cobra.Command{
		Use: "calc NAME", Short: "The bench sums",
		Long: "The bench sums: figures with their units, the formula's source and the cautions that belong to them.\n" +
			"They need no room.",
		Args: onlyCommands,
	}
	c.RunE = func(*cobra.Command, []string) error {
		return fmt.Errorf("calc: no sum is named; give one of %s", strings.Join(commandNames(c), ", "))
	}
	for _, s := range bench.Sums() {
		c.AddCommand(newSum(p, s))
	}
	return c
}

// newSum is the command of one sum: a flag for each of its inputs.
func newSum(p *program, s bench.Sum) *cobra.Command {
	var ask asking
	c := &cobra.Command{
		Use: s.Name, Short: s.Short, Args: noWords,
		Example: "  drainboard calc " + s.Name + " " + exampleOf(s),
	}
	ask.jsonFlag(c)
	for _, in := range s.Inputs {
		addInput(c.Flags(), in)
	}
	c.Flags().SortFlags = false
	c.RunE = doing(func([]string) error {
		a, problems := s.Run(typed(c.Flags(), s))
		switch {
		case len(problems) > 0:
			return usagef("calc %s: %s", s.Name, inFlags(s, problems[0]))
		case ask.json:
			return p.printJSON(answer(a))
		}
		return p.print(answer(a).lines())
	})
	return c
}

// addInput adds the flag of one input.
func addInput(f *pflag.FlagSet, in bench.Input) {
	if in.Kind == bench.Flag {
		f.Bool(in.Name, false, strings.TrimPrefix(in.What, "yes where "))
		return
	}
	flag := &input{kind: in.Kind, text: in.Default}
	f.Var(flag, in.Name, flag.help(in))
}

// help words an input for the command line, where a form would say it otherwise.
func (n *input) help(in bench.Input) string {
	what, _, _ := strings.Cut(in.What, "; may stay empty")
	if n.lists() {
		what, _, _ = strings.Cut(what, ", as in ")
		return what + ", as in " + n.sample()
	}
	if in.Unit != "" && !strings.Contains(what, in.Unit) && !strings.Contains(what, "litres") {
		what = withUnit(what+",", in.Unit)
	}
	return what
}

// typed collects what was given for the inputs of a sum.
func typed(f *pflag.FlagSet, s bench.Sum) map[string]string {
	texts := map[string]string{}
	f.Visit(func(flag *pflag.Flag) {
		if _, ok := s.Input(flag.Name); ok {
			texts[flag.Name] = flag.Value.String()
		}
	})
	return texts
}

// exampleOf writes flags that work.
func exampleOf(s bench.Sum) string {
	var words []string
	for _, in := range s.Inputs {
		if in.Need {
			words = append(words, "--"+in.Name+" "+in.Example)
		}
	}
	return strings.Join(words, " ")
}

// inFlags names the input that is wrong as the flag it came from.
func inFlags(s bench.Sum, p bench.Problem) string {
	switch {
	case p.Missing:
		return fmt.Sprintf("--%s is missing; as in calc %s %s", p.Field, s.Name, exampleOf(s))
	case p.Field == "":
		return p.Error()
	}
	return "--" + p.Error()
}
