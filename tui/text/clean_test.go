package text

import (
	"strings"
	"testing"
	"unicode/utf8"
)

func TestClean(t *testing.T) {
	for _, c := range []struct{ name, in, want string }{
		{"plain", "C5 north", "C5 north"},
		{"letters of other scripts stay", "Köln 北 é", "Köln 北 é"},
		{"line breaks and tabs", "a\nb\tc\r\nd", "a b c  d"},
		{"colour", "\x1b[31mred\x1b[0m", "red"},
		{"title sequence", "a\x1b]0;title\x07b", "ab"},
		{"invalid bytes", "a\xeb0", "a0"},
		{"leading combining mark", "\u0301e", "e"},
		{"combining mark inside", "e\u0301a", "e\u0301a"},
		{"halfwidth voiced mark first", "\uff9ea", "a"},
		{"direction override", "a\u202eb", "ab"},
		{"zero width joiner and no-break space mark", "a\u200d\ufeffb", "ab"},
		{"bell and delete", "a\a\x7fb", "ab"},
		{"C1 control", "a\u009b31mb", "a31mb"},
		{"escape uncovered by a dropped character", "a\x1b\u200d[31mb", "a[31mb"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := Clean(c.in); got != c.want {
				t.Errorf("Clean(%q) = %q, want %q", c.in, got, c.want)
			}
		})
	}
}

// FuzzClean holds what every frame relies on: cleaned text between two borders
// is as wide as the text and the borders are.
func FuzzClean(f *testing.F) {
	for _, s := range []string{"", "C5", "\xeb0", "\u0301", "e\u0301", "\x1b[31mx", "👩‍🔬", "🇧🇸", "ൎ", "한\u1161", "⚠️", "a\nb", "\x9b1m", "\u0e33"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		got := Clean(s)
		if !utf8.ValidString(got) {
			t.Errorf("Clean(%q) = %q is not UTF-8", s, got)
		}
		if again := Clean(got); again != got {
			t.Errorf("Clean(%q) = %q, and cleaned again %q", s, got, again)
		}
		if strings.ContainsAny(got, "\x1b\n\r\t") {
			t.Errorf("Clean(%q) = %q leaves the row", s, got)
		}
		if w := Width("│" + got + "│"); w != Width(got)+2 {
			t.Errorf("Clean(%q) = %q joins its borders: %d cells, want %d", s, got, w, Width(got)+2)
		}
		if w := Width(ASCII(got)); w != Width(got) {
			t.Errorf("ASCII(%q) = %q: %d cells, want %d", got, ASCII(got), w, Width(got))
		}
	})
}
