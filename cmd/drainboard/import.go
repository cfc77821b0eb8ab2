package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"time"

	"drainboard/model"
	"drainboard/state"
	"drainboard/tui/text"

	"github.com/spf13/cobra"
)

// newImport is the command that makes many entries, all or none.
func newImport(p *program) *cobra.Command {
	var (
		ask asking
		by  string
	)
	c := &cobra.Command{
		Use: "import FILE.csv", Short: "Make many entries from a CSV file, all or nothing",
		Long: "Make many entries from a CSV file, all or nothing. The header row names fields, kind among\n" +
			"them, and at and by where the rows have their own. An empty cell is a field left out.\n" +
			"The separator is a comma, or a semicolon where the header has no comma. - reads stdin.\n" +
			"At most 200,000 rows and 64 MB.",
		Args: oneWord("FILE.csv"),
		RunE: doing(func(args []string) error { return p.importFile(args[0], ask, by) }),
	}
	ask.atFlag(c, "when rows without an at happened (RFC 3339) `time`; default now")
	ask.jsonFlag(c)
	c.Flags().StringVar(&by, "by", "", "`initials` for rows without a by")
	return c
}

func (p *program) importFile(name string, ask asking, by string) error {
	at, err := ask.moment(p)
	if err != nil {
		return err
	}
	sheet, err := p.readSheet(name)
	if err != nil {
		return fmt.Errorf("%s: %w; nothing was imported", name, err)
	}
	rows, err := sheet.rows(rowDefaults{at: at, by: by})
	if err != nil {
		return fmt.Errorf("%s: %w; nothing was imported", name, err)
	}
	return p.writing(by, func(f *state.Folder) error {
		if err := p.checkRows(f.Ledger(), rows); err != nil {
			return fmt.Errorf("%s: %w; nothing was imported", name, err)
		}
		odd := oddOf(f.Ledger(), rows)
		if err := f.Append(entriesOf(rows)...); err != nil {
			return fmt.Errorf("import %s: %w", name, err)
		}
		if err := p.saidImported(rows, odd, ask.json); err != nil {
			return fmt.Errorf("%s: its entries are saved, but: %w", name, err)
		}
		return nil
	})
}

// readSheet reads a CSV file, or stdin for -.
func (p *program) readSheet(name string) (sheet, error) {
	if name == "-" {
		return readSheet(p.stdin)
	}
	file, err := os.Open(p.path(name))
	if err != nil {
		var path *os.PathError
		if errors.As(err, &path) {
			err = path.Err
		}
		return sheet{}, fmt.Errorf("cannot be read: %w", err)
	}
	defer file.Close()
	return readSheet(file)
}

// checkRows numbers the rows' entries and says whether the room's story with all
// of them in it can be true. Their order in the file does not matter where they
// have times of their own.
func (p *program) checkRows(l *model.Ledger, rows []row) error {
	now := p.now()
	blank := model.NewLedger(l.Room()) // for what is wrong with a time or initials
	all := append([]model.Entry{}, l.Entries()...)
	first := l.Next()
	for i := range rows {
		e := p.entry(l.Room(), rows[i].at, rows[i].by, rows[i].fact)
		dated := model.Entry{At: e.At, By: e.By, Fact: &model.Noted{Text: "row"}}
		if err := blank.Check(&dated, now); err != nil {
			return fmt.Errorf("line %d: %w", rows[i].line, err)
		}
		e.N = first + i
		rows[i].entry = e
		all = append(all, e)
	}
	_, err := model.LoadLedger(l.Room(), all)
	var impossible *model.ImpossibleError
	if !errors.As(err, &impossible) {
		return err
	}
	if n := impossible.Entry.N; n >= first {
		return fmt.Errorf("line %d: %s: %w", rows[n-first].line, impossible.Entry.Kind(), impossible.Err)
	}
	return fmt.Errorf("entry %d (%s, %s), which is in the room already, would become impossible: %w",
		impossible.Entry.N, impossible.Entry.Kind(), clock(impossible.Entry.At, l.Room().Zone), impossible.Err)
}

// oddRow is what is odd of one row.
type oddRow struct {
	Line int      `json:"line"`
	N    int      `json:"n"`
	Odd  []string `json:"odd"`
}

// oddOf says what is odd of rows, each as the room stands when it happened. It
// folds them into the ledger, and stops at the first row that happened before
// what stands in it already: for those nothing is known to compare with.
func oddOf(l *model.Ledger, rows []row) []oddRow {
	odd := []oddRow{}
	last := time.Time{}
	if events := l.Events(); len(events) > 0 {
		last = events[len(events)-1].At
	}
	for _, r := range rows {
		if r.entry.At.Before(last) {
			return odd
		}
		if words := l.Odd(r.entry); len(words) > 0 {
			odd = append(odd, oddRow{r.line, r.entry.N, words})
		}
		if err := l.Apply(r.entry); err != nil {
			return odd
		}
		last = r.entry.At
	}
	return odd
}

func entriesOf(rows []row) []model.Entry {
	entries := make([]model.Entry, len(rows))
	for i, r := range rows {
		entries[i] = r.entry
	}
	return entries
}

// importedAnswer is what import --json answers.
type importedAnswer struct {
	Entries int      `json:"entries"`
	First   int      `json:"first"`
	Last    int      `json:"last"`
	Odd     []oddRow `json:"odd"`
}

func (p *program) saidImported(rows []row, odd []oddRow, asJSON bool) error {
	first, last := rows[0].entry.N, rows[len(rows)-1].entry.N
	if asJSON {
		return p.printJSON(importedAnswer{len(rows), first, last, odd})
	}
	lines := fmt.Sprintf("saved %s, %d to %d\n", plural(len(rows), "entry"), first, last)
	for _, o := range odd {
		for _, words := range o.Odd {
			lines += text.Clean(fmt.Sprintf("odd: line %d, entry %d: %s", o.Line, o.N, words)) + "\n"
		}
	}
	return p.print(lines)
}

// limited reads no more than a CSV file may hold and one byte, by which more is
// noticed.
func limited(r io.Reader) ([]byte, error) {
	data, err := io.ReadAll(io.LimitReader(r, mostBytes+1))
	if err == nil && len(data) > mostBytes {
		err = fmt.Errorf("is larger than %d MB; cut it into parts", mostBytes>>20)
	}
	return data, err
}
