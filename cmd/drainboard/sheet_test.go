package main

import (
	"errors"
	"fmt"
	"io"
	"strings"
	"testing"
)

func TestSheetsAsProgramsWriteThem(t *testing.T) {
	cases := map[string]struct {
		text  string
		cells [][]string
		lines []int
	}{
		"plain":         {"kind,tank\nwashed,C1\n", [][]string{{"washed", "C1"}}, []int{2}},
		"no last break": {"kind,tank\nwashed,C1", [][]string{{"washed", "C1"}}, []int{2}},
		"byte order":    {"\ufeffkind,tank\nwashed,C1\n", [][]string{{"washed", "C1"}}, []int{2}},
		"carriage":      {"kind,tank\r\nwashed,C1\r\n", [][]string{{"washed", "C1"}}, []int{2}},
		"semicolons":    {"kind;tank;um\nsizes;C1;1,2\n", [][]string{{"sizes", "C1", "1,2"}}, []int{2}},
		"comma wins":    {"kind,text\nnoted,a;b\n", [][]string{{"noted", "a;b"}}, []int{2}},
		"quoted list":   {"kind,um\nsizes,\"1,2\"\n", [][]string{{"sizes", "1,2"}}, []int{2}},
		"blank rows":    {"kind,tank\n\n,\nwashed,C1\n", [][]string{{"washed", "C1"}}, []int{4}},
		"quoted break":  {"kind,text\nnoted,\"a\nb\"\nnoted,c\n", [][]string{{"noted", "a\nb"}, {"noted", "c"}}, []int{2, 4}},
		"spaced header": {" kind , tank \nwashed,C1\n", [][]string{{"washed", "C1"}}, []int{2}},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			s, err := readSheet(strings.NewReader(c.text))
			if err != nil {
				t.Fatal(err)
			}
			if got, want := fmt.Sprint(s.cells, s.lines), fmt.Sprint(c.cells, c.lines); got != want {
				t.Errorf("got %s; want %s", got, want)
			}
		})
	}
}

func TestSheetsThatAreTooLarge(t *testing.T) {
	rows := io.MultiReader(strings.NewReader("kind,text\n"), strings.NewReader(strings.Repeat("noted,x\n", mostRows+1)))
	if _, err := readSheet(rows); err == nil || !strings.Contains(err.Error(), "more than 200000 rows") {
		t.Errorf("%d rows: %v; want a refusal that names the most", mostRows+1, err)
	}
	if _, err := readSheet(endless{}); err == nil || !strings.Contains(err.Error(), "64 MB") {
		t.Errorf("endless: %v; want a refusal that names the most", err)
	}
	if _, err := readSheet(broken{}); !errors.Is(err, io.ErrUnexpectedEOF) {
		t.Errorf("broken: %v; want what the reader met", err)
	}
}

// endless is a file without end.
type endless struct{}

func (endless) Read(b []byte) (int, error) {
	for i := range b {
		b[i] = 'x'
	}
	return len(b), nil
}

// broken is a file that cannot be read to its end.
type broken struct{}

func (broken) Read([]byte) (int, error) { return 0, io.ErrUnexpectedEOF }
