// Package document is what is printed: sections of named figures, tables and
// charts, laid out as plain text for any printer or as one HTML file that needs
// nothing beside itself.
//
// It knows no larvae, no rooms and no disk. Texts from outside may stand in it
// as they are: both forms make them harmless. The command line imports it.
package document

import "drainboard/tui/chart"

// Document is a title and its sections.
type Document struct {
	Title string
	// Under stands beneath the title, one line each.
	Under    []string
	Sections []Section
}

// Section is one part of a document. It shows what it has: figures, table, chart
// and lines, in that order.
type Section struct {
	Title   string
	Figures []Figure
	Table   Table
	Chart   *chart.Scatter
	Lines   []string // sentences
}

// Figure is one figure with its name.
type Figure struct{ Name, Words string }

// Table is rows beneath a head. Column names with a leading > stand at the
// right, as figures do; those with a leading < stand at the left and are not
// broken while others can be.
type Table struct {
	Head []string
	Rows [][]string
}
