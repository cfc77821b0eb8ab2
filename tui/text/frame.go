package text

import (
	"strings"

	"github.com/charmbracelet/x/ansi"
)

// Frame makes lines exactly h rows of exactly w cells. Rows too many are cut
// at the bottom, missing ones are blank. A line holding line breaks counts as
// that many rows. For w or h below 1 there is nothing to show: no rows.
func Frame(lines []string, w, h int) []string {
	if w <= 0 || h <= 0 {
		return nil
	}
	out := make([]string, 0, h)
	for _, line := range lines {
		for row := range strings.SplitSeq(line, "\n") {
			if len(out) == h {
				return out
			}
			out = append(out, Fit(row, w))
		}
	}
	for len(out) < h {
		out = append(out, blank(w))
	}
	return out
}

// Centre is [Frame] with the block of lines in the middle. The lines keep
// their places among each other.
func Centre(lines []string, w, h int) []string {
	if w <= 0 || h <= 0 {
		return nil
	}
	widest := 0
	for _, line := range lines {
		widest = max(widest, Width(line))
	}
	left := blank((w - widest) / 2)
	out := make([]string, max(0, h-len(lines))/2, h+len(lines))
	for _, line := range lines {
		out = append(out, left+line)
	}
	return Frame(out, w, h)
}

// Column is one block of [Beside]: its lines and its width in cells.
type Column struct {
	Lines []string
	W     int
}

// Beside stands columns next to each other, gap cells apart, in h rows. Each
// row is as wide as the columns and gaps together.
func Beside(h, gap int, columns ...Column) []string {
	if h <= 0 {
		return nil
	}
	out := make([]string, h)
	var row strings.Builder
	for y := range out {
		row.Reset()
		for i, c := range columns {
			if i > 0 {
				row.WriteString(blank(gap))
			}
			line := ""
			if y < len(c.Lines) {
				line = c.Lines[y]
			}
			row.WriteString(Fit(line, c.W))
		}
		out[y] = row.String()
	}
	return out
}

// Wrap breaks plain text into lines of at most w cells, at spaces where there
// are any. Line breaks in the text stay. Escape sequences are dropped: style
// the lines afterwards. Empty text is one empty line.
func Wrap(s string, w int) []string {
	if w <= 0 {
		return nil
	}
	var out []string
	for part := range strings.SplitSeq(s, "\n") {
		out = append(out, wrapLine(Clean(part), w)...)
	}
	return out
}

func wrapLine(s string, w int) []string {
	var out []string
	line, used := "", 0
	for word := range strings.FieldsSeq(s) {
		n := Width(word)
		switch {
		case line == "":
			line, used = word, n
		case used+1+n <= w:
			line, used = line+" "+word, used+1+n
		default:
			out = append(out, line)
			line, used = word, n
		}
		for used > w {
			head, tail := split(line, w)
			if head != "" {
				out = append(out, head)
			}
			line, used = tail, Width(tail)
		}
	}
	return append(out, line)
}

// split takes at least one and at most w cells off the front of s. A character
// wider than w is dropped: it can stand on no line.
func split(s string, w int) (head, tail string) {
	head = ansi.Truncate(s, w, "")
	if head != "" {
		return head, s[len(head):]
	}
	cluster, _ := ansi.FirstGraphemeCluster(s, ansi.GraphemeWidth)
	return "", s[len(cluster):]
}
