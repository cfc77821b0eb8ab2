package text

import (
	"strings"

	"github.com/charmbracelet/x/ansi"
)

// twin gives the ASCII character for a one-cell sign that screens use.
func twin(r rune) byte {
	switch r {
	case '…', '≈':
		return '~'
	case '→', '►', '›':
		return '>'
	case '←', '◄', '‹':
		return '<'
	case '↑':
		return '^'
	case '↓', '▾':
		return 'v'
	case '·', '•':
		return '.'
	case '–', '—', '─', '−', '═', '╌':
		return '-'
	case '│', '║', '╎', '¦':
		return '|'
	case '×':
		return 'x'
	case 'µ', 'μ':
		return 'u'
	case '°':
		return '\''
	case '±':
		return '+'
	case '█', '▓', '▒', '▇', '▆', '▅':
		return '#'
	case '▀':
		return '"'
	case '▄', '▃', '▂', '▁':
		return '_'
	case '\u00a0':
		return ' '
	}
	if r >= '┌' && r <= '╬' {
		return '+'
	}
	return '?'
}

// ASCII replaces each character of a line that is not ASCII by a likeness of
// the same width: a known sign by its twin, any other by question marks.
// Escape sequences stay. It is the last pass over a frame for a terminal that
// has no other glyphs; the width of the line does not change.
func ASCII(s string) string {
	if plainASCII(s) {
		return s
	}
	var b strings.Builder
	b.Grow(len(s))
	for i := 0; i < len(s); {
		if s[i] < 0x80 {
			b.WriteByte(s[i])
			i++
			continue
		}
		cluster, w := ansi.FirstGraphemeCluster(s[i:], ansi.GraphemeWidth)
		i += len(cluster)
		for n := range w {
			if r := []rune(cluster); n == 0 && len(r) == 1 {
				b.WriteByte(twin(r[0]))
			} else {
				b.WriteByte('?')
			}
		}
	}
	return b.String()
}
