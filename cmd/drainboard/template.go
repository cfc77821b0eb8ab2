package main

import (
	"encoding/csv"
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"drainboard/model"
	"drainboard/state"

	"github.com/spf13/cobra"
)

// csvTemplate is a CSV file to fill in: a header, and an example row for each sort
// of entry. The tanks of the examples are in no room, so that a row left in by
// oversight is refused by import and nothing of the file is taken.
type csvTemplate struct {
	name, short, when string
	examples          []example
}

// example is one row of a template.
type example struct {
	kind  model.Kind
	ago   time.Duration
	what  string            // in the help
	cells map[string]string // by field
	age   int               // in days, of the batch that is stocked
}

// newTemplate is the command that writes CSV files to fill in.
func newTemplate(p *program) *cobra.Command {
	c := &cobra.Command{
		Use: "template NAME", Short: "Write a CSV file to fill in and import",
		Long: "Write a CSV file to fill in and import: a header of field names and example rows. They need no room;\n" +
			"in one, the times of the examples have its offset.",
		Args: onlyCommands,
	}
	c.RunE = func(*cobra.Command, []string) error {
		return fmt.Errorf("template: no file is named; give one of %s", strings.Join(commandNames(c), ", "))
	}
	for _, t := range csvTemplates() {
		c.AddCommand(&cobra.Command{
			Use: t.name, Short: t.short, Long: t.help(), Args: noWords,
			Example: fmt.Sprintf("  drainboard template %[1]s > %[1]s.csv\n  drainboard import %[1]s.csv --by KT", t.name),
			RunE:    doing(func([]string) error { return p.template(t) }),
		})
	}
	return c
}

func (p *program) template(t csvTemplate) error {
	zone, err := p.zone()
	if err != nil {
		return fmt.Errorf("template %s: %w", t.name, err)
	}
	lines, err := t.csv(p.now().In(zone))
	if err != nil {
		return fmt.Errorf("template %s: %w", t.name, err)
	}
	return p.print(lines)
}

// zone is that of the room, so that a time written over an example has the room's
// offset; without a room that of this machine.
func (p *program) zone() (*time.Location, error) {
	zone := p.now().Location()
	if _, err := p.folder(); err != nil {
		return zone, nil // none is named, and there is nowhere to look
	}
	err := p.openQuietly(state.Options{Now: p.now}, func(f *state.Folder) error {
		zone = f.Room().Zone
		return nil
	})
	if errors.Is(err, state.ErrNoRoom) && p.room == "" {
		err = nil
	}
	return zone, err
}

func csvTemplates() []csvTemplate {
	return []csvTemplate{inventoryTemplate(), lateTemplate()}
}

// help says what each example row is for.
func (t csvTemplate) help() string {
	lines := t.when + "\n\n" +
		"Every example row speaks of tanks named EXAMPLE-1 and so on, which import refuses: write your own names\n" +
		"over them or delete the row. Times are RFC 3339; empty cells are fields left out. The rows:\n\n"
	for _, e := range t.examples {
		lines += fmt.Sprintf("  %-12s %s\n", e.kind, e.what)
	}
	return strings.TrimRight(lines, "\n")
}

// columns are at, by, kind and every field of the kinds in the examples.
func (t csvTemplate) columns() []string {
	names := []string{"at", "by", "kind"}
	for _, e := range t.examples {
		fact, _ := model.NewFact(e.kind)
		for _, f := range fact.Fields() {
			if !slices.Contains(names, f.Name) {
				names = append(names, f.Name)
			}
		}
	}
	return names
}

// csv writes the header and the examples, dated back from now.
func (t csvTemplate) csv(now time.Time) (string, error) {
	var b strings.Builder
	w := csv.NewWriter(&b)
	columns := t.columns()
	rows := [][]string{columns}
	for _, e := range t.examples {
		rows = append(rows, e.row(columns, now))
	}
	err := w.WriteAll(rows)
	return b.String(), err
}

func (e example) row(columns []string, now time.Time) []string {
	cells := make([]string, len(columns))
	for i, name := range columns {
		switch name {
		case "at":
			cells[i] = now.Add(-e.ago).Truncate(time.Minute).Format(time.RFC3339)
		case "kind":
			cells[i] = string(e.kind)
		case "hatched":
			if e.kind == model.KindStocked {
				cells[i] = now.Add(-e.ago).AddDate(0, 0, -e.age).Format(time.DateOnly)
			}
		default:
			cells[i] = e.cells[name]
		}
	}
	return cells
}
