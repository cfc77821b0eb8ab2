package state

import (
	"fmt"
	"strings"
)

// lineIndex knows the line, from 1, on which each key path of a TOML file
// stands. Tables of an array are counted from 1, as in tank[2].litres.
type lineIndex map[string]int

// of returns the line of a key path, or of the nearest table around it; 1 where
// there is none.
func (x lineIndex) of(path string) int {
	for path != "" {
		if line, ok := x[path]; ok {
			return line
		}
		cut := strings.LastIndexAny(path, ".[")
		path = path[:max(cut, 0)]
	}
	return 1
}

// indexLines finds the lines of all keys. The text must have passed a TOML
// decoder; of text that would not, it indexes what it can.
func indexLines(text string) lineIndex {
	s := &lineScan{text: text, line: 1, index: lineIndex{}, tables: map[string]int{}}
	for s.skipBlank(); s.at < len(s.text); s.skipBlank() {
		before := s.at
		if s.text[s.at] == '[' {
			s.header()
		} else {
			s.pair(s.table)
		}
		if s.at == before {
			s.at++ // not TOML; go on behind it
		}
	}
	return s.index
}

// lineScan walks over a TOML text.
type lineScan struct {
	text   string
	at     int // byte offset
	line   int
	table  string         // path of the table that keys belong to
	tables map[string]int // how many tables each array has so far
	index  lineIndex
}

func (s *lineScan) note(path string) {
	if _, twice := s.index[path]; !twice {
		s.index[path] = s.line
	}
}

// skip passes over n bytes and counts their lines.
func (s *lineScan) skip(n int) {
	n = min(n, len(s.text)-s.at)
	s.line += strings.Count(s.text[s.at:s.at+n], "\n")
	s.at += n
}

// skipBlank passes over spaces, line breaks, comments and commas.
func (s *lineScan) skipBlank() {
	for s.at < len(s.text) {
		switch s.text[s.at] {
		case ' ', '\t', '\r', '\n', ',':
			s.skip(1)
		case '#':
			s.skipTo("\n")
		default:
			return
		}
	}
}

// skipTo passes over everything before mark, to the end where there is none.
func (s *lineScan) skipTo(mark string) {
	n := strings.Index(s.text[s.at:], mark)
	if n < 0 {
		n = len(s.text) - s.at
	}
	s.skip(n)
}

// header reads [table] and [[array]].
func (s *lineScan) header() {
	array := strings.HasPrefix(s.text[s.at:], "[[")
	for s.at < len(s.text) && s.text[s.at] == '[' {
		s.skip(1)
	}
	parts := s.key()
	path := ""
	for i, part := range parts {
		path = join(path, part)
		if array && i == len(parts)-1 {
			s.note(path)
			s.tables[path]++
		}
		if n := s.tables[path]; n > 0 {
			path = fmt.Sprintf("%s[%d]", path, n)
		}
		s.note(path)
	}
	s.table = path
	s.skipTo("\n")
}

func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

// key reads a key, dotted or quoted, up to the = or ] behind it.
func (s *lineScan) key() []string {
	var parts []string
	for s.at < len(s.text) {
		switch c := s.text[s.at]; {
		case c == ' ' || c == '\t' || c == '.':
			s.skip(1)
		case c == '"' || c == '\'':
			from := s.at + 1
			s.quoted()
			parts = append(parts, s.text[from:max(from, s.at-1)])
		default:
			n := strings.IndexAny(s.text[s.at:], " \t.=]\"'\n#")
			if n <= 0 {
				return parts
			}
			parts = append(parts, s.text[s.at:s.at+n])
			s.skip(n)
		}
	}
	return parts
}

// pair reads key = value and notes it and the keys within the value.
func (s *lineScan) pair(table string) {
	path := table
	for _, part := range s.key() {
		path = join(path, part)
		s.note(path)
	}
	if s.at < len(s.text) && s.text[s.at] == '=' {
		s.skip(1)
	}
	for s.at < len(s.text) && (s.text[s.at] == ' ' || s.text[s.at] == '\t') {
		s.skip(1)
	}
	s.value(path)
}

// value passes over a value and notes the keys of inline tables in it.
func (s *lineScan) value(path string) {
	if s.at >= len(s.text) {
		return
	}
	switch s.text[s.at] {
	case '"', '\'':
		s.quoted()
	case '[':
		s.skip(1)
		for i := 1; s.more(']'); i++ {
			item := fmt.Sprintf("%s[%d]", path, i)
			s.note(item)
			s.value(item)
		}
		s.skip(1)
	case '{':
		s.skip(1)
		for s.more('}') {
			s.pair(path)
		}
		s.skip(1)
	default:
		n := strings.IndexAny(s.text[s.at:], ",]}#\n")
		if n < 0 {
			n = len(s.text) - s.at
		}
		s.skip(max(n, 1))
	}
}

// more passes to the next item of a list or table and reports whether there is
// one before its end.
func (s *lineScan) more(end byte) bool {
	s.skipBlank()
	return s.at < len(s.text) && s.text[s.at] != end
}

// quoted passes over a string in any of the four ways of writing one.
func (s *lineScan) quoted() {
	mark := s.text[s.at : s.at+1]
	if triple := strings.Repeat(mark, 3); strings.HasPrefix(s.text[s.at:], triple) {
		mark = triple
	}
	s.skip(len(mark))
	for s.at < len(s.text) && !strings.HasPrefix(s.text[s.at:], mark) {
		if mark[0] == '"' && s.text[s.at] == '\\' {
			s.skip(1)
		}
		s.skip(1)
	}
	// A string in three marks may end in one or two more of them.
	s.skip(len(mark))
	for len(mark) == 3 && s.at < len(s.text) && s.text[s.at] == mark[0] {
		s.skip(1)
	}
}
