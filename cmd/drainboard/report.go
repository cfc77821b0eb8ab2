package main

import (
	"bytes"
	"fmt"
	"strings"

	"drainboard/cmd/drainboard/document"
	"drainboard/model"
	"drainboard/model/paper"
	"drainboard/state"

	"github.com/spf13/cobra"
)

// newReport is the command that reports one batch.
func newReport(p *program) *cobra.Command {
	var (
		ask  asking
		html string
	)
	c := &cobra.Command{
		Use: "report BATCH", Short: "One batch from hatch to today",
		Long: "One batch from hatch to today: growth, survival, temperatures, moves, feeds, looks, counts and\n" +
			"losses, each figure with the numbers of the entries it comes from. Text of 80 columns, or with\n" +
			"--html one file that needs nothing beside itself (- for stdout). An earlier paper of drainboard\n" +
			"is written over, any other file is not.",
		Args: oneWord("BATCH"),
		RunE: doing(func(args []string) error {
			if ask.json && html != "" {
				return usagef("report: --json and --html ask for two answers; give one")
			}
			return p.report(args[0], ask, html)
		}),
	}
	ask.flags(c)
	c.Flags().StringVar(&html, "html", "", "write an HTML `file`")
	return c
}

func (p *program) report(name string, ask asking, html string) error {
	now, err := ask.moment(p)
	if err != nil {
		return err
	}
	return p.reading(func(f *state.Folder) error {
		l := f.Ledger().At(now)
		b, err := batchNamed(l, name)
		if err != nil {
			return err
		}
		r, err := paper.NewReport(l, b, now)
		if err != nil {
			return fmt.Errorf("report %s: %w", b.Name, err)
		}
		switch {
		case ask.json:
			return p.printJSON(viewReport(l, r))
		case html != "":
			return p.writeHTML(html, reportDocument(r))
		}
		return p.print(reportDocument(r).Text())
	})
}

// batchNamed finds a batch, whatever the case of its letters where that leaves no
// doubt.
func batchNamed(l *model.Ledger, name string) (*model.Batch, error) {
	if b := l.Batch(name); b != nil {
		return b, nil
	}
	var names []string
	var alike []*model.Batch
	for _, b := range l.Batches() {
		names = append(names, b.Name)
		if strings.EqualFold(b.Name, strings.TrimSpace(name)) {
			alike = append(alike, b)
		}
	}
	switch {
	case len(alike) == 1:
		return alike[0], nil
	case len(names) == 0:
		return nil, fmt.Errorf("report: no batch %q; no batch was stocked yet", name)
	}
	return nil, fmt.Errorf("report: no batch %q; there are %s", name, strings.Join(names, ", "))
}

// writeHTML writes a document to a file, or to stdout for -.
func (p *program) writeHTML(name string, d document.Document) error {
	var b bytes.Buffer
	if err := d.HTML(&b); err != nil {
		return fmt.Errorf("write %s: %w", name, err)
	}
	if name == "-" {
		return p.print(b.String())
	}
	if err := replacePaper(p.path(name), b.Bytes()); err != nil {
		return fmt.Errorf("write %s: %w", name, err)
	}
	return p.print("wrote " + name + "\n")
}
