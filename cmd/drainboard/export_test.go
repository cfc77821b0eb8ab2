package main

import (
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// returns exports what a room exported into an empty room with the same
// room.toml, and holds the two against each other: what they show, every entry as
// written, and their exports byte by byte.
func returns(t *testing.T, room, dir string) {
	t.Helper()
	again := filepath.Join(t.TempDir(), "again")
	copyFile(t, filepath.Join(room, "room.toml"), filepath.Join(again, "room.toml"))
	mustSay(t, again, "import", filepath.Join(dir, allEntriesFile))
	shown, shownAgain := mustSay(t, room, "show", "--json").stdout, mustSay(t, again, "show", "--json").stdout
	if shown != shownAgain {
		t.Errorf("show differs at line %d", firstDifference(shown, shownAgain))
	}
	out := filepath.Join(t.TempDir(), "out")
	mustSay(t, again, "export", out)
	files, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		want, err := os.ReadFile(filepath.Join(dir, f.Name()))
		if err != nil {
			t.Fatal(err)
		}
		got, err := os.ReadFile(filepath.Join(out, f.Name()))
		if err != nil || string(got) != string(want) {
			t.Errorf("%s differs at line %d (%v)", f.Name(), firstDifference(string(got), string(want)), err)
		}
	}
	if got := mustSay(t, again, "verify").stdout; !strings.HasSuffix(got, "chain whole\n") {
		t.Errorf("verify: %s", got)
	}
}

func TestAnExportComesBackWhole(t *testing.T) {
	rooms := map[string]func(testing.TB) string{
		"papers": paperRoom,
		"every kind": func(t testing.TB) string {
			room := filepath.Join(t.TempDir(), "room")
			if err := os.CopyFS(room, os.DirFS("../../testdata/rooms/every-kind")); err != nil {
				t.Fatal(err)
			}
			return room
		},
		"white space and quotes": func(t testing.TB) string {
			room := paperRoom(t)
			for _, words := range []string{"  in front", "behind\n", "'quoted", "''=twice", "' ", "a \"b\", c\nd", "=1", "+1", "-1", "@a", "\tt", ",", "é\u00a0"} {
				mustSay(t.(*testing.T), room, "enter", "noted", "text="+words, "--by", "=J")
			}
			mustSay(t.(*testing.T), room, "enter", "corrected", "entry=48", "why=a, b: c", `set=text:  x: y, by "=1"`)
			mustSay(t.(*testing.T), room, "enter", "corrected", "entry=48", "why=-", `set=by:KT,at:2026-11-24T08:00:00-05:00`)
			mustSay(t.(*testing.T), room, "enter", "corrected", "entry=46", "why=lengths", `set=um:700,710,720`)
			return room
		},
	}
	for name, make := range rooms {
		t.Run(name, func(t *testing.T) {
			room := make(t)
			dir := filepath.Join(t.TempDir(), "out")
			mustSay(t, room, "export", dir)
			returns(t, room, dir)
		})
	}
}

func TestExportFiles(t *testing.T) {
	room := paperRoom(t)
	dir := filepath.Join(t.TempDir(), "out")
	if got := mustSay(t, room, "export", dir).stdout; got != "wrote 19 files with 47 entries to "+dir+"\n" {
		t.Errorf("stdout = %q", got)
	}
	total := 0
	for _, name := range []string{"count", "sizes", "moved", "corrected", "fed"} {
		data, err := os.ReadFile(filepath.Join(dir, name+".csv"))
		if err != nil {
			t.Fatal(err)
		}
		if strings.Count(string(data), "\n") != strings.Count(string(data), "\r\n") {
			t.Errorf("%s.csv: a line does not end in CR LF (RFC 4180)", name)
		}
		rows, err := csv.NewReader(strings.NewReader(string(data))).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		if got := strings.Join(rows[0][:6], ","); got != "n,at,keyed,by,kind,amended" {
			t.Errorf("%s.csv begins with %s", name, got)
		}
		total += len(rows) - 1
	}
	if total != 4+5+3+2+3 {
		t.Errorf("%d rows in five files; want 17", total)
	}
	var sizes string
	data, _ := os.ReadFile(filepath.Join(dir, "sizes.csv"))
	sizes = string(data)
	if !strings.Contains(sizes, `46,2026-11-24T17:10:00-05:00,2026-11-25T10:12:00-05:00,JS,sizes,,C7,"772,760,755,781,764,769,30",`) {
		t.Errorf("sizes.csv = %s", sizes)
	}
	data, _ = os.ReadFile(filepath.Join(dir, "look.csv"))
	if !strings.Contains(string(data), "sizes") && !strings.Contains(string(data), "void by 30") {
		t.Errorf("look.csv does not say that entry 29 is void: %s", data)
	}
	roomText, _ := os.ReadFile(filepath.Join(dir, "room.json"))
	for path, want := range map[string]string{
		"name": "Paper room Île-d'Été", "timezone": "America/Nassau", "house.change_hours": "48", "house.mesh.1.um.0": "200",
		"house.growth.0.low_um": "300", "tank.len": "7", "tank.0.name": "Ç1", "entries.sizes": "5", "total": "47",
	} {
		got, err := lookUp(string(roomText), path)
		if err != nil || inWords(got) != want {
			t.Errorf("room.json %s = %v, %v; want %s", path, got, err, want)
		}
	}
}

func TestExportWritesOverNothing(t *testing.T) {
	room := paperRoom(t)
	dir := filepath.Join(t.TempDir(), "out")
	writeFile(t, filepath.Join(dir, "moved.csv"), "mine")
	got := say(t, room, "export", dir)
	if got.status != exitRefused || !strings.Contains(got.stderr, "moved.csv is there already") || !isRefusal(got.stderr) {
		t.Errorf("status %d, stderr %q", got.status, got.stderr)
	}
	files, err := os.ReadDir(dir)
	if err != nil || len(files) != 1 {
		t.Errorf("%d files, %v; want the one that was there", len(files), err)
	}
	onFile := say(t, room, "export", filepath.Join(dir, "moved.csv"))
	if onFile.status != exitRefused || !isRefusal(onFile.stderr) {
		t.Errorf("a file for a folder: status %d, stderr %q", onFile.status, onFile.stderr)
	}
}

// TestRowsOfAnExportInARoomWithEntries: what names an entry names it still.
func TestRowsOfAnExportInARoomWithEntries(t *testing.T) {
	from, to := paperRoom(t), workedRoom(t)
	dir := filepath.Join(t.TempDir(), "out")
	mustSay(t, from, "export", dir)
	rows := filepath.Join(t.TempDir(), "rows.csv")
	writeFile(t, rows, "n,kind,at,tank,celsius,entry,why,void\n"+
		"90,corrected,2026-11-24T12:10:00-05:00,,,71,slip,true\n71,temperature,2026-11-24T12:00:00-05:00,C1,29,,,\n")
	if got := mustSay(t, to, "import", rows).stdout; !strings.HasPrefix(got, "saved 2 entries, 10 to 11\n") {
		t.Errorf("stdout = %q", got)
	}
	journal := ""
	for _, text := range journalOf(t, to) {
		journal += text
	}
	if !strings.Contains(journal, "kind = \"corrected\"\nentry = 10\n") {
		t.Error("the correction does not name the entry's new number")
	}
	cases := map[string]struct{ rows, want string }{
		"not in the file": {"n,kind,entry,why,void\n9,corrected,3,slip,true\n", "line 2: corrected: entry: entry 3 is not in this file"},
		"twice":           {"n,kind,text\n9,noted,a\n9,noted,b\n", "line 3: n: 9 stands there twice"},
		"missing":         {"n,kind,text\n9,noted,a\n,noted,b\n", "line 3: n: is missing"},
		"no number":       {"n,kind,text\nx,noted,a\n", `line 2: n: "x" is no number`},
		"keyed later":     {"keyed,kind,text\n2027-01-01T00:00:00Z,noted,a\n", "line 2: keyed: 2026-12-31T19:00:00-05:00 lies in the future"},
		"set":             {"kind,entry,why,set\ncorrected,1,x,{celsius}\n", "line 2: corrected: set: "},
		"set trailing":    {"kind,entry,why,set\ncorrected,1,x,\"{\"\"celsius\"\":27}}\"\n", "line 2: corrected: set: "},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			writeFile(t, rows, c.rows)
			got := say(t, to, "import", rows)
			if got.status != exitRefused || !strings.Contains(got.stderr, c.want) || !isRefusal(got.stderr) {
				t.Errorf("status %d, stderr %q; want %q", got.status, got.stderr, c.want)
			}
		})
	}
}

func TestGuards(t *testing.T) {
	for text, want := range map[string]string{
		"=1": "'=1", "+1": "'+1", "-1": "'-1", "@a": "'@a", "\ta": "'\ta", "'=1": "''=1", "'a": "'a", "'": "'", "a=1": "a=1",
		" a": "' a", "a ": "'a ", "": "", "é": "é", "' ": "'' ",
	} {
		if got := guarded(text); got != want {
			t.Errorf("guarded(%q) = %q; want %q", text, got, want)
		}
		if got := unguarded(want); got != text {
			t.Errorf("unguarded(%q) = %q; want %q", want, got, text)
		}
	}
	for cell, want := range map[string]string{" a ": "a", "'tis": "'tis", "  ": "", "1": "1"} {
		if got := unguarded(cell); got != want {
			t.Errorf("unguarded(%q) = %q; want %q", cell, got, want)
		}
	}
}

func FuzzGuards(f *testing.F) {
	for _, s := range []string{"=1", "''=1", " ", "a ", "'", "\u00a0x"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if got := unguarded(guarded(s)); got != s {
			t.Errorf("%q came back as %q", s, got)
		}
		if g := guarded(s); g != "" && strings.ContainsRune("=+-@\t\r\n", rune(g[0])) {
			t.Errorf("%q is written as %q, which a spreadsheet runs", s, g)
		}
	})
}

func TestColumnsOfLengths(t *testing.T) {
	cases := map[string]struct {
		text     string
		c        lengthColumn
		want     string
		wantFail string
	}{
		"comma":       {" ,Area,Length\n1,5,612.5\n2,6,620\n", lengthColumn{column: "Length"}, "[612.5 620]", ""},
		"tab":         {"\tLength\n1\t612,5\n", lengthColumn{column: "Length"}, "[612.5]", ""},
		"semicolon":   {"n;Length\n1;612,5\n", lengthColumn{column: "length"}, "[612.5]", ""},
		"blank cells": {"n,Length\n1,\n2, 600 \n3\n", lengthColumn{column: "Length"}, "[600]", ""},
		"pixels":      {"Length\n1000\n1001\n", lengthColumn{column: "Length", perPixel: umPerPixel{0.6543}}, "[654.3 654.954]", ""},
		"byte order":  {"\ufeffLength\n600\n", lengthColumn{column: "Length"}, "[600]", ""},
		"exact case":  {"length,Length\n1,600\n", lengthColumn{column: "Length"}, "[600]", ""},
		"text":        {"n,Length\n1,600\n2,n.a.\n", lengthColumn{column: "Length"}, "", `line 3: Length: "n.a." is not a number`},
		"too long":    {"Length\n600\n60000\n", lengthColumn{column: "Length"}, "", "line 3: Length: "},
		"none":        {"Length\n\n", lengthColumn{column: "Length"}, "", `column "Length" holds no length`},
		"no column":   {"n,Area\n1,2\n", lengthColumn{column: "Length"}, "", `line 1: no column "Length"; there are n, Area`},
		"twice":       {"Length,Length\n1,2\n", lengthColumn{column: "Length"}, "", "stands there twice"},
		"doubtful":    {"length,LENGTH\n1,2\n", lengthColumn{column: "Length"}, "", "stands there twice"},
		"empty":       {"", lengthColumn{column: "Length"}, "", "is empty"},
		"infinite":    {"Length\ninf\n", lengthColumn{column: "Length"}, "", "is not a number"},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			um, err := lengthsIn(strings.NewReader(c.text), c.c)
			if c.wantFail != "" {
				if err == nil || !strings.Contains(err.Error(), c.wantFail) {
					t.Errorf("got %v, %v; want %q", um, err, c.wantFail)
				}
				return
			}
			if got := fmt.Sprint(um); err != nil || got != c.want {
				t.Errorf("got %s, %v; want %s", got, err, c.want)
			}
		})
	}
}

func TestALengthColumnBecomesOneEntry(t *testing.T) {
	room := workedRoom(t)
	file := filepath.Join(t.TempDir(), "shells.csv")
	writeFile(t, file, "Label,Length\na,1000\nb,\nc,1010\n")
	got := mustSay(t, room, "import", file, "--kind", "sizes", "--tank", "c1", "--column", "Length", "--um-per-pixel", "0.6", "--at", "2026-11-25T09:00:00-05:00", "--by", "JS")
	if !strings.HasPrefix(got.stdout, "saved 10 sizes C1 600, 606 µm") {
		t.Errorf("stdout = %q", got.stdout)
	}
	before := journalOf(t, room)
	for name, c := range map[string]struct {
		args   []string
		status int
		want   string
	}{
		"other kind":     {[]string{"--kind", "count", "--tank", "C1", "--column", "Length"}, exitUsage, "one column can be taken as sizes"},
		"no kind":        {[]string{"--tank", "C1", "--column", "Length"}, exitUsage, "one column can be taken as sizes"},
		"no tank":        {[]string{"--kind", "sizes", "--column", "Length"}, exitUsage, "needs --tank and --column"},
		"no such tank":   {[]string{"--kind", "sizes", "--tank", "X9", "--column", "Length"}, exitRefused, "X9"},
		"empty tank":     {[]string{"--kind", "sizes", "--tank", "C2", "--column", "Length"}, exitRefused, "holds no larvae"},
		"no such column": {[]string{"--kind", "sizes", "--tank", "C1", "--column", "Feret"}, exitRefused, "there are Label, Length"},
		"pixel of none":  {[]string{"--kind", "sizes", "--tank", "C1", "--column", "Length", "--um-per-pixel", "0"}, exitUsage, "more than 0"},
	} {
		t.Run(name, func(t *testing.T) {
			got := say(t, room, append([]string{"import", file}, c.args...)...)
			if got.status != c.status || !strings.Contains(got.stderr, c.want) || !isRefusal(got.stderr) {
				t.Errorf("status %d, stderr %q; want %d and %q", got.status, got.stderr, c.status, c.want)
			}
		})
	}
	if !sameFiles(before, journalOf(t, room)) {
		t.Error("a refused import changed the journal")
	}
}
