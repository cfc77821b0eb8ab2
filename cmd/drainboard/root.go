package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// newRoot builds the commands of one run.
func newRoot(p *program) *cobra.Command {
	var l looks
	root := &cobra.Command{
		Use:   "drainboard",
		Short: "The dashboard of a larval room",
		Long: "The dashboard of a larval room: which tank is next, into which, through which mesh,\n" +
			"is the water right, are they growing, how many are left.\n\n" +
			"Without a command the dashboard starts.",
		SilenceErrors: true, SilenceUsage: true, DisableSuggestions: true,
		Args: onlyCommands,
		RunE: doing(func([]string) error { return p.dashboard(l) }),
	}
	root.PersistentFlags().StringVar(&p.room, "room", "", "the room's `folder`; else DRAINBOARD_ROOM, the current folder, the data folder")
	l.flags(root)
	root.SetIn(p.stdin)
	root.SetOut(p.stdout)
	root.SetErr(p.stderr)
	root.SetFlagErrorFunc(flagProblem)
	root.AddCommand(
		newInit(p), newEnter(p), newImport(p), newShow(p), newPlan(p),
		newVerify(p), newRepair(p), newCalc(p), newDemo(p),
		newCalendar(p),
		newReport(p), newWallSheet(p), newHandover(p),
		newExport(p), newBackup(p), newRestore(p),
		newTemplate(p), newSeason(p),
	)
	root.SetHelpCommand(newHelp())
	addCompletion(root)
	return root
}

// addCompletion adds cobra's completion scripts, and refuses a shell it has none
// for.
func addCompletion(root *cobra.Command) {
	root.InitDefaultCompletionCmd()
	c, _, err := root.Find([]string{"completion"})
	if err != nil {
		return
	}
	c.Args = onlyCommands
	c.RunE = func(*cobra.Command, []string) error {
		return fmt.Errorf("completion: no shell is named; give one of %s", strings.Join(commandNames(c), ", "))
	}
}

// nameOf is a command as it is typed behind the program's name.
func nameOf(c *cobra.Command) string { return strings.TrimPrefix(c.CommandPath(), "drainboard ") }

// seeHelp says where the help on a command is.
func seeHelp(c *cobra.Command) string { return "see " + c.CommandPath() + " --help" }

// flagProblem words what is wrong with a flag.
func flagProblem(c *cobra.Command, err error) error {
	var value *pflag.InvalidValueError
	if errors.As(err, &value) {
		return fmt.Errorf("%s: --%s: %w", nameOf(c), value.GetFlag().Name, value.Unwrap())
	}
	if !c.HasParent() {
		return fmt.Errorf("%w; %s", err, seeHelp(c))
	}
	return fmt.Errorf("%s: %w; %s", nameOf(c), err, seeHelp(c))
}

// onlyCommands refuses a word that is no command.
func onlyCommands(c *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	return fmt.Errorf("unknown command %q; %s takes %s", args[0], nameOf(c), strings.Join(commandNames(c), ", "))
}

func commandNames(c *cobra.Command) []string {
	var names []string
	for _, sub := range c.Commands() {
		if sub.IsAvailableCommand() {
			names = append(names, sub.Name())
		}
	}
	return names
}

// noWords refuses words that a command does not take.
func noWords(c *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	return fmt.Errorf("%s takes no %q; %s", nameOf(c), args[0], seeHelp(c))
}

// oneWord asks for just one word after the command.
func oneWord(what string) cobra.PositionalArgs {
	return func(c *cobra.Command, args []string) error {
		switch len(args) {
		case 1:
			return nil
		case 0:
			return fmt.Errorf("%s: no %s is given; write drainboard %s %s", nameOf(c), what, nameOf(c), what)
		}
		return fmt.Errorf("%s takes one %s, not %d; quote a name that holds spaces", nameOf(c), what, len(args))
	}
}

// newHelp words the help of a command and refuses one that does not exist.
func newHelp() *cobra.Command {
	return &cobra.Command{
		Use:   "help [command]",
		Short: "Help about any command",
		RunE: func(c *cobra.Command, args []string) error {
			found, rest, err := c.Root().Find(args)
			if err != nil || len(rest) > 0 {
				return fmt.Errorf("no help on %q; drainboard takes %s", strings.Join(args, " "), strings.Join(commandNames(c.Root()), ", "))
			}
			found.InitDefaultHelpFlag()
			return found.Help()
		},
	}
}
