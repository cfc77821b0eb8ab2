package main

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"slices"
	"strings"

	"drainboard/model"
	"drainboard/model/growth"

	"github.com/spf13/cobra"
)

// lengthColumn says which column of a foreign file holds shell lengths.
type lengthColumn struct {
	kind, tank, column string
	perPixel           umPerPixel
}

// umPerPixel is the um that one pixel spans, 0 where the column holds um.
type umPerPixel struct{ number }

// Set reads the number; a pixel that spans nothing is refused.
func (u *umPerPixel) Set(s string) error {
	if err := u.number.Set(s); err != nil {
		return err
	}
	if x := u.x(); x <= 0 || x > 1000 {
		return fmt.Errorf("%s: give more than 0 and at most 1000", plain(x))
	}
	return nil
}

func (c *lengthColumn) flags(cmd *cobra.Command) {
	cmd.Flags().StringVar(&c.kind, "kind", "", "sizes: take one `kind` of entry from a file of another program")
	cmd.Flags().StringVar(&c.tank, "tank", "", "`tank` the lengths are of")
	cmd.Flags().StringVar(&c.column, "column", "", "`name` of the column that holds lengths, in um or pixels")
	cmd.Flags().Var(&c.perPixel, "um-per-pixel", "um that one pixel spans, where the column holds pixels")
}

// asked reports whether any flag of a single column was given.
func (c *lengthColumn) asked() bool {
	return c.kind != "" || c.tank != "" || c.column != "" || c.perPixel.x() != 0
}

// check refuses flags that do not go together.
func (c *lengthColumn) check() error {
	switch {
	case c.kind != string(model.KindSizes):
		return usagef("import: --kind %q: one column can be taken as sizes; write --kind sizes --tank C5 --column Length", c.kind)
	case c.tank == "" || c.column == "":
		return usagef("import: --kind sizes needs --tank and --column; write --tank C5 --column Length")
	}
	return nil
}

// importLengths makes one entry of a column of lengths.
func (p *program) importLengths(name string, c lengthColumn, ask asking, by string) error {
	if err := c.check(); err != nil {
		return err
	}
	um, err := p.readLengths(name, c)
	if err != nil {
		return fmt.Errorf("%s: %w; nothing was imported", name, err)
	}
	fact := &model.Sizes{Tank: c.tank, UM: um}
	if x := c.perPixel.x(); x > 0 {
		fact.UMPerDivision = &x
	}
	return p.enter(fact, ask, by)
}

func (p *program) readLengths(name string, c lengthColumn) ([]float64, error) {
	if name == "-" {
		return lengthsIn(p.stdin, c)
	}
	file, err := os.Open(p.path(name))
	if err != nil {
		return nil, fmt.Errorf("cannot be read: %w", plainly(err))
	}
	defer file.Close()
	return lengthsIn(file, c)
}

// lengthsIn reads a column of lengths, um. Blank cells are passed over; a text, or
// a length that no larva has, is refused by its line.
func lengthsIn(r io.Reader, c lengthColumn) ([]float64, error) {
	data, err := limited(r)
	if err != nil {
		return nil, err
	}
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	in := csv.NewReader(bytes.NewReader(data))
	in.Comma, in.FieldsPerRecord, in.LazyQuotes = foreignSeparator(data), -1, true
	column, err := findColumn(in, c.column)
	if err != nil {
		return nil, err
	}
	var um []float64
	for {
		cells, err := in.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, csvProblem(err)
		}
		line, _ := in.FieldPos(0)
		if column >= len(cells) || strings.TrimSpace(cells[column]) == "" {
			continue
		}
		x, err := lengthOf(cells[column], in.Comma, c.perPixel.x())
		if err != nil {
			return nil, fmt.Errorf("line %d: %s: %w", line, c.column, err)
		}
		um = append(um, x)
	}
	if len(um) == 0 {
		return nil, fmt.Errorf("column %q holds no length", c.column)
	}
	return um, nil
}

// foreignSeparator is what parts the cells of the header row: a tab, a semicolon
// or a comma.
func foreignSeparator(data []byte) rune {
	header, _, _ := bytes.Cut(data, []byte("\n"))
	for _, sep := range "\t;" {
		if bytes.ContainsRune(header, sep) {
			return sep
		}
	}
	return ','
}

// findColumn finds a column by its name, whatever the case of its letters where
// that leaves no doubt.
func findColumn(in *csv.Reader, name string) (int, error) {
	header, err := in.Read()
	if errors.Is(err, io.EOF) {
		return 0, errors.New("is empty; a header row is expected")
	}
	if err != nil {
		return 0, csvProblem(err)
	}
	var names []string
	for i, h := range header {
		header[i] = strings.TrimSpace(h)
		if header[i] != "" {
			names = append(names, header[i])
		}
	}
	for _, same := range []func(string) bool{
		func(h string) bool { return h == strings.TrimSpace(name) },
		func(h string) bool { return strings.EqualFold(h, strings.TrimSpace(name)) },
	} {
		i := slices.IndexFunc(header, same)
		switch {
		case i < 0:
			continue
		case slices.IndexFunc(header[i+1:], same) >= 0:
			return 0, fmt.Errorf("line 1: column %q stands there twice", name)
		}
		return i, nil
	}
	return 0, fmt.Errorf("line 1: no column %q; there are %s", name, strings.Join(names, ", "))
}

// lengthOf reads one length, um. Where cells are not parted by commas, a comma is
// a decimal sign.
func lengthOf(cell string, sep rune, perPixel float64) (float64, error) {
	cell = strings.TrimSpace(cell)
	typed := cell
	if sep != ',' {
		typed = strings.Replace(cell, ",", ".", 1)
	}
	x, err := parseNumber(typed)
	if err != nil {
		return 0, fmt.Errorf("%q is not a number", cell)
	}
	if perPixel > 0 {
		x = math.Round(1000*x*perPixel) / 1000 // nanometres are beyond any microscope
	}
	return x, growth.CheckLength(x)
}
