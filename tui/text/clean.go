package text

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"
)

// Clean makes text from outside safe to stand in a frame: valid UTF-8, no
// escape sequences, line breaks and tabs turned into spaces, control and
// format characters dropped, and nothing at either end that would melt into
// the character beside it (a combining mark at the start would join a border
// and make its row one cell shorter).
//
// Clean(Clean(s)) == Clean(s).
func Clean(s string) string {
	if plainASCII(s) {
		return s
	}
	for range 4 { // dropping a character can uncover a new sequence or joint
		cleaned := cleanOnce(s)
		if cleaned == s {
			return s
		}
		s = cleaned
	}
	return strings.Map(printableASCII, s)
}

// plainASCII says that s holds only printable ASCII, so each byte is one cell.
func plainASCII(s string) bool {
	for i := range len(s) {
		if s[i] < ' ' || s[i] > '~' {
			return false
		}
	}
	return true
}

func printableASCII(r rune) rune {
	if r < ' ' || r > '~' {
		return -1
	}
	return r
}

func cleanOnce(s string) string {
	s = strings.ToValidUTF8(s, "")
	s = ansi.Strip(s)
	s = strings.ToValidUTF8(s, "")
	s = strings.Map(visible, s)
	return trimJoints(s)
}

// visible maps white space other than the space to a space and drops what
// has no shape of its own.
func visible(r rune) rune {
	switch {
	case r == '\n', r == '\t', r == '\r', r == '\u2028', r == '\u2029':
		return ' '
	case unicode.IsControl(r), unicode.Is(unicode.Cf, r), r == utf8.RuneError:
		return -1
	}
	return r
}

// trimJoints drops what would join the character before or after the text.
func trimJoints(s string) string {
	for s != "" && joins("x", s) {
		_, n := utf8.DecodeRuneInString(s)
		s = s[n:]
	}
	for s != "" {
		r, n := utf8.DecodeLastRuneInString(s)
		if !joins(string(r), "x") {
			break
		}
		s = s[:len(s)-n]
	}
	return s
}

// joins says whether the first character of b melts into the one before it.
func joins(a, b string) bool {
	r, _ := utf8.DecodeRuneInString(b)
	if unicode.IsMark(r) {
		return true
	}
	cluster, _ := ansi.FirstGraphemeCluster(a+string(r), ansi.GraphemeWidth)
	return len(cluster) > len(a)
}
