package main

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"drainboard/model"
)

// The most an import takes.
const (
	mostBytes = 64 << 20
	mostRows  = 200_000
)

// sheet is a CSV file of entries.
type sheet struct {
	columns []string // field names, from the header row
	cells   [][]string
	lines   []int // of each row in the file, from 1
}

// row is one entry of a sheet.
type row struct {
	line  int
	n     int // its number where it came from; 0 where the file has none
	at    time.Time
	keyed time.Time // zero where the file has none
	by    string
	fact  model.Fact
	entry model.Entry
}

// rowDefaults stand in where a row has no at or by of its own.
type rowDefaults struct {
	at time.Time
	by string
}

// readSheet reads the header and the rows.
func readSheet(r io.Reader) (sheet, error) {
	data, err := limited(r)
	if err != nil {
		return sheet{}, err
	}
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	if i := invalidUTF8(data); i >= 0 {
		line := 1 + bytes.Count(data[:i], []byte("\n"))
		return sheet{}, fmt.Errorf("line %d: holds a byte that is not UTF-8; save the file as CSV UTF-8", line)
	}
	in := csv.NewReader(bytes.NewReader(data))
	in.Comma = separator(data)
	in.FieldsPerRecord = -1
	var s sheet
	if err := s.readHeader(in); err != nil {
		return sheet{}, err
	}
	return s, s.readRows(in)
}

func invalidUTF8(data []byte) int {
	if utf8.Valid(data) {
		return -1
	}
	for i := 0; i < len(data); {
		r, n := utf8.DecodeRune(data[i:])
		if r == utf8.RuneError && n == 1 {
			return i
		}
		i += n
	}
	return -1
}

// separator is a comma, or a semicolon where the header row has semicolons and
// no comma.
func separator(data []byte) rune {
	header, _, _ := bytes.Cut(data, []byte("\n"))
	if bytes.ContainsRune(header, ';') && !bytes.ContainsRune(header, ',') {
		return ';'
	}
	return ','
}

func (s *sheet) readHeader(in *csv.Reader) error {
	header, err := in.Read()
	if errors.Is(err, io.EOF) {
		return errors.New("is empty; a header row of field names is expected, kind among them")
	}
	if err != nil {
		return csvProblem(err)
	}
	for _, name := range header {
		name = strings.TrimSpace(name)
		switch {
		case slices.Contains(s.columns, name):
			return fmt.Errorf("line 1: column %q stands there twice", name)
		case !slices.Contains(columnNames(), name):
			return fmt.Errorf("line 1: column %q is no field of any kind; write names as in the journal: kind, at, by, tank, celsius", name)
		}
		s.columns = append(s.columns, name)
	}
	if !slices.Contains(s.columns, "kind") {
		return errors.New("line 1: no column kind; it says what each row is")
	}
	return nil
}

// columnNames lists what a header may name.
func columnNames() []string {
	names := []string{columnKind, columnAt, columnBy, columnN, columnKeyed, columnAmended}
	for _, k := range model.Kinds() {
		fact, _ := model.NewFact(k)
		for _, f := range fact.Fields() {
			names = append(names, f.Name)
		}
	}
	return names
}

func (s *sheet) readRows(in *csv.Reader) error {
	for {
		cells, err := in.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return csvProblem(err)
		}
		line, _ := in.FieldPos(0)
		if blankRow(cells) {
			continue
		}
		if len(cells) != len(s.columns) {
			return fmt.Errorf("line %d: has %d cells, the header %d; quote a list as \"1,2,3\"", line, len(cells), len(s.columns))
		}
		if len(s.cells) == mostRows {
			return fmt.Errorf("line %d: more than %d rows; cut the file into parts", line, mostRows)
		}
		s.cells, s.lines = append(s.cells, cells), append(s.lines, line)
	}
	if len(s.cells) == 0 {
		return errors.New("holds no rows beneath its header")
	}
	return nil
}

func blankRow(cells []string) bool {
	return !slices.ContainsFunc(cells, func(c string) bool { return strings.TrimSpace(c) != "" })
}

// csvProblem words an error of the CSV reader with its line.
func csvProblem(err error) error {
	var p *csv.ParseError
	if errors.As(err, &p) {
		return fmt.Errorf("line %d: %w", p.Line, p.Err)
	}
	return err
}

// rows reads the rows as facts, in file order.
func (s sheet) rows(d rowDefaults) ([]row, error) {
	rows := make([]row, 0, len(s.cells))
	for i, cells := range s.cells {
		r, err := s.row(cells, d)
		if err != nil {
			return nil, fmt.Errorf("line %d: %w", s.lines[i], err)
		}
		r.line = s.lines[i]
		rows = append(rows, r)
	}
	return rows, nil
}

func (s sheet) row(cells []string, d rowDefaults) (row, error) {
	r := row{at: d.at, by: d.by}
	kind, table := "", map[string]string{}
	for i, cell := range cells {
		cell = unguarded(cell)
		switch name := s.columns[i]; {
		case cell == "":
		case name == columnKind:
			kind = cell
		case name == columnBy:
			r.by = cell
		case name == columnAt, name == columnKeyed, name == columnN:
			if err := r.date(name, cell); err != nil {
				return row{}, fmt.Errorf("%s: %w", name, err)
			}
		case name != columnAmended:
			table[name] = cell
		}
	}
	if r.keyed.IsZero() && slices.Contains(s.columns, columnKeyed) {
		r.keyed = r.at
	}
	fact, ok := model.NewFact(model.Kind(kind))
	if !ok {
		return row{}, fmt.Errorf("kind: %q is none; give one of %s", kind, kindNames())
	}
	if err := fillFromCells(fact, table); err != nil {
		return row{}, fmt.Errorf("%s: %w", kind, err)
	}
	r.fact = fact
	return r, nil
}

// date reads when a row happened, when it was keyed and the number it had.
func (r *row) date(name, cell string) (err error) {
	switch name {
	case columnAt:
		r.at, err = model.ParseMoment(cell)
	case columnKeyed:
		r.keyed, err = model.ParseMoment(cell)
	case columnN:
		if r.n, err = strconv.Atoi(cell); err != nil || r.n < 1 {
			err = fmt.Errorf("%q is no number of an entry; a whole number from 1 is expected", cell)
		}
	}
	return err
}

// fillFromCells gives a fact its fields. What a correction sets may stand there as
// a JSON object, as export writes it.
func fillFromCells(fact model.Fact, table map[string]string) error {
	x, ok := fact.(*model.Corrected)
	object := table["set"]
	if ok && strings.HasPrefix(object, "{") {
		if err := json.Unmarshal([]byte(object), &x.Set); err != nil {
			return fmt.Errorf("set: %q is no JSON object; write it as {\"celsius\":27.4}, or as celsius:27.4", object)
		}
		delete(table, "set")
	}
	return model.ParseFact(fact, table)
}
