package main

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"os"
	"slices"
	"strconv"
	"strings"
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
		one lengthColumn
	)
	c := &cobra.Command{
		Use: "import FILE.csv", Short: "Make many entries from a CSV file, all or nothing",
		Long: "Make many entries from a CSV file, all or nothing. The header row names fields, kind among\n" +
			"them, and at, by and keyed where the rows have their own. An empty cell is a field left out.\n" +
			"The separator is a comma, or a semicolon where the header has no comma. - reads stdin.\n" +
			"At most 200,000 rows and 64 MB.\n\n" +
			"A column n holds the numbers that the entries had where they come from: they are taken in that\n" +
			"order, and what names an entry of the file (a correction, a step of a session) names it still.\n" +
			"In an empty room the numbers stay. A ' before a text that a spreadsheet would run, or before\n" +
			"white space, is taken off; a column amended is passed over.\n\n" +
			"With --kind sizes --tank C5 --column NAME one column of shell lengths, as image analysis writes\n" +
			"it, becomes one entry; the other columns are passed over.",
		Example: "  drainboard import entries.csv\n  drainboard import shells.csv --kind sizes --tank C5 --column Length --um-per-pixel 0.65",
		Args:    oneWord("FILE.csv"),
		RunE: doing(func(args []string) error {
			if one.asked() {
				return p.importLengths(args[0], one, ask, by)
			}
			return p.importFile(args[0], ask, by)
		}),
	}
	one.flags(c)
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

// ordered puts rows that have numbers into the order of these, and lets what
// names an entry of the file name the number it gets. first is the number that
// the first row gets.
func ordered(rows []row, first int) error {
	numbered := slices.ContainsFunc(rows, func(r row) bool { return r.n > 0 })
	if !numbered {
		return nil
	}
	slices.SortStableFunc(rows, func(a, b row) int { return cmp.Compare(a.n, b.n) })
	now := make(map[int]int, len(rows))
	for i, r := range rows {
		if r.n == 0 {
			return fmt.Errorf("line %d: n: is missing; give every row its number, or none", r.line)
		}
		if _, twice := now[r.n]; twice {
			return fmt.Errorf("line %d: n: %d stands there twice", r.line, r.n)
		}
		now[r.n] = first + i
	}
	for _, r := range rows {
		if err := renumber(r.fact, now); err != nil {
			return fmt.Errorf("line %d: %s: %w", r.line, r.fact.Kind(), err)
		}
	}
	return nil
}

// renumber lets a fact name entries by the numbers they get.
func renumber(fact model.Fact, now map[int]int) error {
	turn := func(field string, n *int) error {
		to, known := now[*n]
		if !known {
			return fmt.Errorf("%s: entry %d is not in this file; import the file with all entries, or leave out the column n", field, *n)
		}
		*n = to
		return nil
	}
	switch x := fact.(type) {
	case *model.StepDone:
		return turn("session", &x.Session)
	case *model.Closed:
		return turn("session", &x.Session)
	case *model.Corrected:
		for _, field := range []string{"entry", "session"} {
			n, set := wholeIn(x.Set[field])
			if !set {
				continue
			}
			if err := turn("set."+field, &n); err != nil {
				return err
			}
			x.Set[field] = float64(n)
		}
		return turn("entry", &x.Entry)
	}
	return nil
}

// wholeIn is a whole number as a correction holds it: typed, or read from JSON.
func wholeIn(v any) (int, bool) {
	switch x := v.(type) {
	case string:
		n, err := strconv.Atoi(strings.TrimSpace(x))
		return n, err == nil
	case float64:
		return int(x), x == float64(int(x))
	}
	return 0, false
}

// checkRows numbers the rows' entries and says whether the room's story with all
// of them in it can be true. Their order in the file does not matter where they
// have times of their own.
func (p *program) checkRows(l *model.Ledger, rows []row) error {
	now := p.now()
	blank := model.NewLedger(l.Room()) // for what is wrong with a time or initials
	all := append([]model.Entry{}, l.Entries()...)
	first := l.Next()
	if err := ordered(rows, first); err != nil {
		return err
	}
	for i := range rows {
		e := p.entry(l.Room(), rows[i].at, rows[i].by, rows[i].fact)
		if err := rows[i].keyedIn(&e, now); err != nil {
			return fmt.Errorf("line %d: keyed: %w", rows[i].line, err)
		}
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

// keyedIn gives an entry the moment of keying that the file has for it.
func (r row) keyedIn(e *model.Entry, now time.Time) error {
	switch {
	case r.keyed.IsZero():
		return nil
	case r.keyed.After(now):
		return fmt.Errorf("%s lies in the future", stamp(r.keyed, e.At.Location()))
	}
	e.Keyed = r.keyed.In(e.At.Location())
	if e.Keyed.Equal(e.At) {
		e.Keyed = time.Time{}
	}
	return nil
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
