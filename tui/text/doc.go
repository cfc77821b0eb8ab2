// Package text measures, cuts, pads and words the text of a terminal frame.
//
// Every length is in cells, the columns of a terminal, never in bytes or
// runes. A "line" is one row without a line break; it may carry ANSI styling,
// which survives every function here. Text from outside (names, notes, file
// contents) goes through [Clean] once, where it enters; after that [Fit] and
// [Frame] make it exactly as wide and as high as asked.
//
// The package knows no colours, no keys and nothing of larvae. All packages
// under tui import it; it imports only charmbracelet/x/ansi.
package text
