package state

import (
	"fmt"
	"sort"
	"strings"
	"testing"
)

// Each line that holds a key ends in a remark with its path.
const lined = `version = 1 #version
"quoted" = 2 #quoted
'literal' = 3 #literal
dotted.key . more = 4 #dotted.key.more
text = "a # b = [" #text
escaped = "a \" b" #escaped
other = 'a " # b' #other
list = [1, #list
  2, # two
  [3, "]"], #list[3]
] # end
inline = { a = 1, "b c" = { d = [1] } } #inline.b c.d
long = """ #long
house = 1
"quoted" "" \""" [tank]
""""
after = 5 #after
longer = ''' #longer
after = 6
'''
date = 2026-11-25T09:14:05-05:00 #date

[ house ] #house
crew = 2 #house.crew
wash.acid = 3 #house.wash.acid
[house.temperature] #house.temperature
best = [
  27.0, #house.temperature.best[1]
  29.0,
]

[[house.mesh]] #house.mesh[1]
from_day = 0 #house.mesh[1].from_day
[[house.mesh]] #house.mesh[2]
um = [
  { a = 1 }, #house.mesh[2].um[1].a
  { b = 2 }, #house.mesh[2].um[2].b
]

[[tank]] #tank[1]
name = "C1" #tank[1].name
	litres=120 #tank[1].litres
[tank.place] #tank[1].place
row = 1 #tank[1].place.row
[[tank]] #tank[2]
name = "C2" #tank[2].name
[tank.place] #tank[2].place
row = 2 #tank[2].place.row
[[tank.probe]] #tank[2].probe[1]
id = 1 #tank[2].probe[1].id
[[tank.probe]] #tank[2].probe[2]
id = 2 #tank[2].probe[2].id`

func TestLinesOfKeys(t *testing.T) {
	for _, ends := range []string{"\n", "\r\n"} {
		lines := indexLines(strings.ReplaceAll(lined, "\n", ends))
		tried := 0
		for i, line := range strings.Split(lined, "\n") {
			_, path, marked := strings.Cut(line[strings.LastIndex(line, " ")+1:], "#")
			if strings.HasSuffix(line, "#inline.b c.d") {
				path = "inline.b c.d"
			}
			if !marked || path == "" {
				continue
			}
			tried++
			if got := lines.of(path); got != i+1 || lines[path] == 0 {
				t.Errorf("%s is on line %d; want %d", path, got, i+1)
			}
		}
		if tried != 36 {
			t.Errorf("%d paths were tried; want 36", tried)
		}
	}
}

func TestLinesOfKeysThatAreNotThere(t *testing.T) {
	lines := indexLines(lined)
	for path, near := range map[string]string{
		"tank[2].litres":       "tank[2]",
		"tank[2].place.column": "tank[2].place",
		"house.mesh[1].um":     "house.mesh[1]",
		"house.order":          "house",
		"house.mesh[9].um":     "house.mesh",
		"list[2].x":            "list[2]",
	} {
		if got, want := lines.of(path), lines[near]; got != want || want == 0 {
			t.Errorf("%s is looked for on line %d; want %d, that of %s", path, got, want, near)
		}
	}
	for _, path := range []string{"", "nothing", "nothing.at[3].all"} {
		if got := lines.of(path); got != 1 {
			t.Errorf("%q is looked for on line %d; want the first", path, got)
		}
	}
}

// FuzzLines holds the finder against the TOML library: of every text the library
// takes, each key it read has a line, and the key stands on that line.
func FuzzLines(f *testing.F) {
	f.Add(lined)
	f.Add(writeRoom(withDefaults("x", InitOptions{})))
	f.Fuzz(func(t *testing.T, text string) {
		lines := indexLines(text) // must end, and not fail
		top, syntax := parseTOML("x", text)
		if syntax != nil || strings.ContainsAny(text, `"'\`) {
			return // keys may be written by escapes
		}
		rows := strings.Split(text, "\n")
		for _, path := range keyPaths("", top.keys) {
			line, known := lines[path]
			if !known || line > len(rows) {
				t.Fatalf("no line for %q in %q", path, text)
			}
			key := path[strings.LastIndex(path, ".")+1:]
			if !strings.Contains(rows[line-1], key) {
				t.Errorf("%q is said to stand on line %d, %q, of %q", path, line, rows[line-1], text)
			}
		}
	})
}

// keyPaths lists the paths of all keys of tables.
func keyPaths(path string, v any) []string {
	var paths []string
	switch x := v.(type) {
	case map[string]any:
		for key, inner := range x {
			paths = append(paths, join(path, key))
			paths = append(paths, keyPaths(join(path, key), inner)...)
		}
	case []map[string]any:
		for i, inner := range x {
			paths = append(paths, keyPaths(fmt.Sprintf("%s[%d]", path, i+1), inner)...)
		}
	case []any:
		for i, inner := range x {
			paths = append(paths, keyPaths(fmt.Sprintf("%s[%d]", path, i+1), inner)...)
		}
	}
	sort.Strings(paths)
	return paths
}
