package text

import (
	"strings"
	"unicode"
)

// BigRows is the height of a [Big] line.
const BigRows = 3

// Big writes s three rows high in block characters, for a screen read from
// across a room, or in # " _ for a terminal that has none. It knows A-Z, 0-9
// and . , : - + / % ! ? _ and the space; small letters are written large. Any
// other character makes ok false, and the caller writes the words small.
// The three rows have the same width, see [BigWidth].
func Big(s string, ascii bool) (rows [BigRows]string, ok bool) {
	var b [BigRows]strings.Builder
	for i, r := range []rune(s) {
		g, known := glyph(unicode.ToUpper(r))
		if !known {
			return [BigRows]string{}, false
		}
		for y := range b {
			if i > 0 {
				b[y].WriteByte(' ')
			}
			joinHalves(&b[y], g[2*y], g[2*y+1], ascii)
		}
	}
	for y := range rows {
		rows[y] = b[y].String()
	}
	return rows, true
}

// BigWidth is the number of cells [Big] needs for s, 0 where it cannot write it.
func BigWidth(s string) int {
	w := 0
	for i, r := range []rune(s) {
		g, known := glyph(unicode.ToUpper(r))
		if !known {
			return 0
		}
		if i > 0 {
			w++
		}
		w += len(g[0])
	}
	return w
}

// joinHalves writes two half-rows of a letter as one row of cells.
func joinHalves(b *strings.Builder, top, bottom string, ascii bool) {
	for x := range len(top) {
		full, upper, lower := "█", "▀", "▄"
		if ascii {
			full, upper, lower = "#", `"`, "_"
		}
		switch {
		case top[x] == '#' && bottom[x] == '#':
			b.WriteString(full)
		case top[x] == '#':
			b.WriteString(upper)
		case bottom[x] == '#':
			b.WriteString(lower)
		default:
			b.WriteByte(' ')
		}
	}
}
