package main

import (
	"bytes"
	"fmt"

	"drainboard/model/paper"
	"drainboard/state"

	"github.com/spf13/cobra"
)

// newWallSheet is the command that writes the sheet for the wall.
func newWallSheet(p *program) *cobra.Command {
	var (
		ask  asking
		html bool
	)
	c := &cobra.Command{
		Use: "sheet", Short: "The wall sheet, for a printer", Args: noWords,
		Long: "The wall sheet: the tanks by place with their last figures and boxes to write in by hand, six to\n" +
			"a page, and the next change session. Plain text of 80 columns and 60 lines a page, a form feed\n" +
			"between pages; with --html a page for the browser's printer.",
		RunE: doing(func([]string) error { return p.wallSheet(ask, html) }),
	}
	ask.atFlag(c, "the room at this `time` (RFC 3339) instead of now")
	c.Flags().BoolVar(&html, "html", false, "write HTML to stdout")
	return c
}

func (p *program) wallSheet(ask asking, html bool) error {
	now, err := ask.moment(p)
	if err != nil {
		return err
	}
	return p.reading(func(f *state.Folder) error {
		l := f.Ledger().At(now)
		plan, err := planPaper(l, now)
		if err != nil {
			return fmt.Errorf("sheet: %w", err)
		}
		s := paper.NewSheet(l, now)
		if !html {
			return p.print(sheetText(s, plan))
		}
		var b bytes.Buffer
		if err := sheetHTML(&b, s, plan); err != nil {
			return fmt.Errorf("sheet: %w", err)
		}
		return p.print(b.String())
	})
}
