package main

import (
	"fmt"
	"strings"
	"time"

	"drainboard/model"
	"drainboard/state"
	"drainboard/tui/text"

	"github.com/spf13/cobra"
)

// newEnter is the command that makes one entry.
func newEnter(p *program) *cobra.Command {
	var (
		ask asking
		by  string
	)
	c := &cobra.Command{
		Use:   "enter KIND field=value ...",
		Short: "Make one entry",
		Long: "Make one entry. Lists are written 1,2,3; tables by alga iso:0.35,chaet:0.1;\n" +
			"moves C5:C1,C2:C5; corrections set=celsius:27.4.\n\n" + kindsHelp(),
		Example:           "  drainboard enter temperature tank=C5 celsius=27.4\n  drainboard enter moved from=C5 to=C1 mesh_um=200 --by KT",
		ValidArgsFunction: completeEntry,
		RunE: doing(func(args []string) error {
			fact, err := factFrom(args)
			if err != nil {
				return err
			}
			return p.enter(fact, ask, by)
		}),
	}
	ask.atFlag(c, "when it happened (RFC 3339) `time`; default now")
	ask.jsonFlag(c)
	c.Flags().StringVar(&by, "by", "", "`initials` of who enters it")
	return c
}

// factFrom reads a fact from KIND field=value ...
func factFrom(args []string) (model.Fact, error) {
	if len(args) == 0 {
		return nil, usagef("enter: no kind is given; give one of %s", kindNames())
	}
	fact, ok := model.NewFact(model.Kind(args[0]))
	if !ok {
		return nil, usagef("enter: %q is no kind of entry; give one of %s", args[0], kindNames())
	}
	table := map[string]string{}
	for _, arg := range args[1:] {
		name, value, ok := strings.Cut(arg, "=")
		if !ok {
			return nil, usagef("enter %s: %q: write field=value, as in %s", args[0], arg, fieldsOf(fact))
		}
		if _, twice := table[name]; twice {
			return nil, usagef("enter %s: %s is given twice; write a list as 1,2,3", args[0], name)
		}
		table[name] = value
	}
	if err := parseFact(fact, table); err != nil {
		return nil, err
	}
	return fact, nil
}

// parseFact gives a fact its fields. A field that is missing, unknown or of the
// wrong type is wrong usage; a value that is well written and cannot be true is
// refused.
func parseFact(fact model.Fact, table map[string]string) error {
	err := model.ParseFact(fact, table)
	if err == nil {
		return nil
	}
	err = fmt.Errorf("enter %s: %w; nothing was saved", fact.Kind(), err)
	if malformed(fact, table) {
		return &usage{err}
	}
	return err
}

// enter checks an entry, makes it durable, folds it in and only then says so.
func (p *program) enter(fact model.Fact, ask asking, by string) error {
	at, err := ask.moment(p)
	if err != nil {
		return err
	}
	return p.writing(by, func(f *state.Folder) error {
		e := p.entry(f.Room(), at, by, fact)
		if err := f.Ledger().Check(&e, p.now()); err != nil {
			return fmt.Errorf("enter %s: %w; nothing was saved", fact.Kind(), err)
		}
		odd := f.Ledger().Odd(e)
		if err := f.Append(e); err != nil {
			return fmt.Errorf("enter %s: %w", fact.Kind(), err)
		}
		// It is saved: whatever fails from here on must not look like a refusal of it.
		err := f.Ledger().Apply(e)
		if err == nil {
			err = p.saidSaved(f.Room(), e, odd, ask.json)
		}
		if err != nil {
			return fmt.Errorf("entry %d is saved, but: %w", e.N, err)
		}
		return nil
	})
}

// entry dates a fact: when it happened, and when it was keyed where that is
// over a minute apart.
func (p *program) entry(room *model.Room, at time.Time, by string, fact model.Fact) model.Entry {
	e := model.Entry{At: at.In(room.Zone), By: by, Fact: fact}
	if keyed := p.now().In(room.Zone).Truncate(time.Second); keyed.Sub(at).Abs() > time.Minute {
		e.Keyed = keyed
	}
	return e
}

// savedAnswer is what enter --json answers.
type savedAnswer struct {
	N    int        `json:"n"`
	Kind model.Kind `json:"kind"`
	At   string     `json:"at"`
	Odd  []string   `json:"odd"`
}

func (p *program) saidSaved(room *model.Room, e model.Entry, odd []string, asJSON bool) error {
	if asJSON {
		return p.printJSON(savedAnswer{e.N, e.Kind(), stamp(e.At, room.Zone), list(odd)})
	}
	lines := text.Clean(fmt.Sprintf("saved %d %s %s, %s", e.N, e.Kind(), wording(e.Fact), clock(e.At, room.Zone))) + "\n"
	for _, o := range odd {
		lines += "odd: " + text.Clean(o) + "\n"
	}
	return p.print(lines)
}

// list is a list that is [] in JSON where it is empty, never null.
func list[T any](items []T) []T {
	if items == nil {
		return []T{}
	}
	return items
}

// clock writes a moment for people, in the room's zone.
func clock(t time.Time, zone *time.Location) string { return t.In(zone).Format("2006-01-02 15:04") }
