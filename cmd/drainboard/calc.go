package main

import (
	"errors"
	"fmt"
	"strings"

	"drainboard/model/count"
	"drainboard/model/feed"
	"drainboard/model/wash"
	"drainboard/model/water"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// sum is one of the bench sums: its flags and what it answers.
type sum struct {
	name, short string
	example     string   // flags that work, as shown in a refusal
	needs       []string // flags that must be given
	flags       func(*pflag.FlagSet)
	answer      func() (answer, error)
}

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
	for _, s := range []sum{
		sumAcid(), sumBleach(), sumBlend(), sumCool(), sumCount(), sumCells(),
		sumFeed(), sumSizes(), sumMesh(), sumOxygen(), sumAmmonia(), sumDensity(),
	} {
		c.AddCommand(newSum(p, s))
	}
	return c
}

func newSum(p *program, s sum) *cobra.Command {
	var ask asking
	c := &cobra.Command{
		Use: s.name, Short: s.short, Args: noWords,
		Example: "  drainboard calc " + s.name + " " + s.example,
	}
	ask.jsonFlag(c)
	s.flags(c.Flags())
	c.Flags().SortFlags = false
	c.RunE = doing(func([]string) error {
		for _, flag := range s.needs {
			if !c.Flags().Changed(flag) {
				return usagef("calc %s: --%s is missing; as in calc %s %s", s.name, flag, s.name, s.example)
			}
		}
		a, err := s.answer()
		switch {
		case err != nil:
			return usagef("calc %s: %w", s.name, inFlags(err))
		case ask.json:
			return p.printJSON(a)
		}
		return p.print(a.lines())
	})
	return c
}

// inFlags names the field of an error as the flag it came from.
func inFlags(err error) error {
	var (
		byWater *water.FieldError
		byWash  *wash.FieldError
		byCount *count.FieldError
		byFeed  *feed.FieldError
	)
	switch {
	case errors.As(err, &byWater), errors.As(err, &byWash):
		return fmt.Errorf("--%w", err)
	case errors.As(err, &byCount):
		return fmt.Errorf("--%s %s", strings.ReplaceAll(byCount.Field, "_", "-"), byCount.Problem)
	case errors.As(err, &byFeed):
		return fmt.Errorf("--%s: %s", strings.ReplaceAll(byFeed.Field, "_", "-"), byFeed.Problem)
	}
	return err
}
