package text

import (
	"strings"

	"github.com/charmbracelet/x/ansi"
)

// Ellipsis ends a line that was cut. It is one cell wide.
const Ellipsis = "…"

const reset = "\x1b[0m"

// Width is the number of cells a line takes; escape sequences take none.
func Width(s string) int {
	if plainASCII(s) {
		return len(s)
	}
	return ansi.StringWidth(s)
}

// Truncate cuts a line to at most w cells, the last of them an [Ellipsis]
// where something was cut. Styling around the cut survives.
func Truncate(s string, w int) string {
	switch {
	case w <= 0:
		return ""
	case Width(s) <= w:
		return s
	}
	return ansi.Truncate(s, w, Ellipsis)
}

// Fit makes a line exactly w cells wide: longer ones are cut, shorter ones
// padded with spaces on the right. Line breaks and tabs become spaces, and
// styling left open is closed before the padding.
func Fit(s string, w int) string {
	s, missing := settle(s, w)
	return s + blank(missing)
}

// FitRight is [Fit] with the padding on the left, for figures in a column.
func FitRight(s string, w int) string {
	s, missing := settle(s, w)
	return blank(missing) + s
}

// FitCentre is [Fit] with the padding on both sides, the odd cell on the right.
func FitCentre(s string, w int) string {
	s, missing := settle(s, w)
	return blank(missing/2) + s + blank(missing-missing/2)
}

// Ends makes a line of exactly w cells with left and right at its ends. Where
// both do not fit, left is cut first and right is kept, up to the whole width.
func Ends(left, right string, w int) string {
	if w <= 0 {
		return ""
	}
	right, missing := settle(right, w)
	if missing == 0 {
		return right
	}
	if right == "" {
		return Fit(left, w)
	}
	return Fit(left, missing-1) + " " + right
}

// settle cuts s to at most w cells on one row and tells how many are missing.
func settle(s string, w int) (string, int) {
	if w <= 0 {
		return "", 0
	}
	if plainASCII(s) && len(s) <= w {
		return s, w - len(s)
	}
	s = closeStyle(Truncate(oneRow(s), w))
	return s, max(0, w-Width(s))
}

// oneRow turns what would leave the row into spaces.
func oneRow(s string) string {
	if !strings.ContainsAny(s, "\n\r\t\v\f\b") {
		return s
	}
	return strings.Map(func(r rune) rune {
		if r >= '\b' && r <= '\r' {
			return ' '
		}
		return r
	}, s)
}

// closeStyle appends a reset where the last colour sequence is not one.
func closeStyle(s string) string {
	i := strings.LastIndexByte(s, '\x1b')
	if i < 0 {
		return s
	}
	if rest := s[i:]; strings.HasPrefix(rest, reset) || strings.HasPrefix(rest, "\x1b[m") {
		return s
	}
	return s + reset
}

const blanks = "                                                                                                                                "

// blank is a run of n spaces.
func blank(n int) string {
	switch {
	case n <= 0:
		return ""
	case n <= len(blanks):
		return blanks[:n]
	}
	return strings.Repeat(" ", n)
}
