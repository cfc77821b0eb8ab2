package main

import (
	"strings"

	"drainboard/tui/text"
)

// table lays rows of cells out in columns. Column names with a leading > stand
// at the right, as figures do; the last column is never padded.
func table(head []string, rows [][]string) string {
	right := make([]bool, len(head))
	widths := make([]int, len(head))
	all := [][]string{make([]string, len(head))}
	for i, name := range head {
		all[0][i], right[i] = strings.CutPrefix(name, ">")
	}
	all = append(all, rows...)
	for _, row := range all {
		for i := range row {
			row[i] = text.Clean(row[i])
			widths[i] = max(widths[i], text.Width(row[i]))
		}
	}
	var b strings.Builder
	for _, row := range all {
		var line strings.Builder
		for i, cell := range row {
			if right[i] {
				line.WriteString(text.FitRight(cell, widths[i]))
			} else {
				line.WriteString(text.Fit(cell, widths[i]))
			}
			line.WriteString("  ")
		}
		b.WriteString(strings.TrimRight(line.String(), " ") + "\n")
	}
	return b.String()
}
