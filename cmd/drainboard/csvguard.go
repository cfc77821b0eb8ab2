package main

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// A spreadsheet takes a cell that begins with one of = + - @, a tab or a line
// break for a formula and runs it. So export puts a ' before such a text, and
// import takes just that one off again. The same ' keeps white space at the ends
// of a text, which import else leaves off.

// guarded is a text as export writes it.
func guarded(s string) string {
	if dangerous(strings.TrimLeft(s, "'")) {
		return "'" + s
	}
	return s
}

// unguarded is a text as import reads it: guarded is undone, any other text loses
// the white space around it.
func unguarded(cell string) string {
	if rest, ok := strings.CutPrefix(cell, "'"); ok && dangerous(strings.TrimLeft(rest, "'")) {
		return rest
	}
	return strings.TrimSpace(cell)
}

// dangerous reports whether a text runs in a spreadsheet or does not come through
// whole without a guard.
func dangerous(s string) bool {
	if s == "" {
		return false
	}
	first, _ := utf8.DecodeRuneInString(s)
	last, _ := utf8.DecodeLastRuneInString(s)
	return strings.ContainsRune("=+-@", first) || unicode.IsSpace(first) || unicode.IsSpace(last)
}
