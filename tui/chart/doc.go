// Package chart draws small charts in terminal cells: looks with error bars, curves, a corridor, a
// ready date; a histogram of one or two samples; a sparkline.
//
// Each chart is a plain value with a Draw(width, height, mode) method that gives a Grid of exactly
// that many cells, whatever the data hold: nothing, one point, values that are not numbers, a
// single cell of room. What has no place is left out in a fixed order (title, tick labels, axes)
// until only the plot is left. Cells carry a Class besides their text, so that a theme can colour
// them; no class differs from another by colour alone.
//
// It knows no colours, no keys, no tanks and no dates. Screens under tui import it; it imports the
// standard library, the text package for the cleaning of labels, and charmbracelet/x/ansi for
// widths.
package chart
