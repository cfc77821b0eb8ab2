package main

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"drainboard/model"
)

// filledIn puts the tanks of the worked room into a template.
func filledIn(t *testing.T, name string, tanks ...string) string {
	t.Helper()
	text := mustSay(t, "", "template", name).stdout
	for i, tank := range tanks {
		text = strings.ReplaceAll(text, "EXAMPLE-"+string(rune('1'+i)), tank)
	}
	file := filepath.Join(t.TempDir(), name+".csv")
	writeFile(t, file, text)
	return file
}

// blankRoom has five tanks of which nothing was entered.
func blankRoom(t *testing.T) string {
	t.Helper()
	room := workedRoom(t)
	if err := os.RemoveAll(filepath.Join(room, "journal")); err != nil {
		t.Fatal(err)
	}
	if err := os.RemoveAll(filepath.Join(room, "cache")); err != nil {
		t.Fatal(err)
	}
	return room
}

func TestInventoryTemplateIsImported(t *testing.T) {
	room := blankRoom(t)
	got := mustSay(t, room, "import", filledIn(t, "inventory", "C1", "C2", "C3", "C4", "C5"), "--by", "KT").stdout
	if got != "saved 7 entries, 1 to 7\n" {
		t.Errorf("import says %q", got)
	}
	shown := mustSay(t, room, "show").stdout
	for _, want := range []string{"C1    holding  26-05", "C2    ready", "C3    washed", "C4    out", "C5    dirty", "12 800"} {
		if !strings.Contains(shown, want) {
			t.Errorf("%q does not show in\n%s", want, shown)
		}
	}
	mustSay(t, room, "verify")
}

func TestLateTemplateIsImported(t *testing.T) {
	room := blankRoom(t)
	start := filepath.Join(t.TempDir(), "start.csv")
	writeFile(t, start, `at,kind,tank,batch,hatched,larvae,out
2026-11-23T08:00:00-05:00,stocked,C1,26-05,2026-11-08,9400,
2026-11-23T08:10:00-05:00,filled,C2,,,,
`)
	mustSay(t, room, "import", start)
	got := mustSay(t, room, "import", filledIn(t, "late", "C1", "C2", "C3")).stdout
	if !strings.HasPrefix(got, "saved 16 entries, 3 to 18\n") {
		t.Errorf("import says %q", got)
	}
	mustSay(t, room, "verify")
}

// A template imported as it is changes nothing, whatever the room.
func TestExamplesAreRefused(t *testing.T) {
	for _, tmpl := range csvTemplates() {
		t.Run(tmpl.name, func(t *testing.T) {
			room := workedRoom(t)
			before := journalOf(t, room)
			got := say(t, room, "import", filledIn(t, tmpl.name))
			if got.status != exitRefused || !isRefusal(got.stderr) || !strings.Contains(got.stderr, `"EXAMPLE-1" is not a tank of this room`) {
				t.Errorf("status %d, %q", got.status, got.stderr)
			}
			if !sameFiles(before, journalOf(t, room)) {
				t.Error("something was entered")
			}
			for _, e := range tmpl.examples {
				if !strings.Contains(strings.Join([]string{e.cells["tank"], e.cells["from"]}, " "), "EXAMPLE-") {
					t.Errorf("the example of %s names no tank, so import would take it", e.kind)
				}
			}
		})
	}
}

// The rows of late are every kind there is but those that belong to a session on
// the screen and to the correction of an entry, in the order of time.
func TestLateHasEveryKind(t *testing.T) {
	rest := []model.Kind{model.KindOpened, model.KindStep, model.KindClosed, model.KindCorrected}
	examples := lateTemplate().examples
	for _, k := range model.Kinds() {
		has := slices.ContainsFunc(examples, func(e example) bool { return e.kind == k })
		if has == slices.Contains(rest, k) {
			t.Errorf("%s: an example is there %v", k, has)
		}
	}
	if !slices.IsSortedFunc(examples, func(a, b example) int { return int(b.ago - a.ago) }) {
		t.Error("the examples are not in the order of time")
	}
}

// Every cell of an example stands in a column of its name, and the help names each
// row.
func TestTemplateHoldsItsExamples(t *testing.T) {
	for _, tmpl := range csvTemplates() {
		text, err := tmpl.csv(testNow())
		if err != nil {
			t.Fatal(err)
		}
		rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		for i, e := range tmpl.examples {
			for name, want := range e.cells {
				at := slices.Index(rows[0], name)
				if at < 0 || rows[i+1][at] != want {
					t.Errorf("%s, row %d: no %s %q", tmpl.name, i+1, name, want)
				}
			}
			if !strings.Contains(tmpl.help(), e.what) {
				t.Errorf("%s: the help does not say %q", tmpl.name, e.what)
			}
		}
	}
}

// The offset of the examples is that of the room.
func TestTemplateOffset(t *testing.T) {
	if got := mustSay(t, workedRoom(t), "template", "inventory").stdout; !strings.Contains(got, "2026-11-24T08:12:00-05:00,,stocked") {
		t.Errorf("in a room of Nassau:\n%s", got)
	}
	if got := mustSay(t, "", "template", "inventory").stdout; !strings.Contains(got, "2026-11-24T13:12:00Z,,stocked") {
		t.Errorf("without a room:\n%s", got)
	}
	got := say(t, "", "template", "late", "--room", t.TempDir())
	if got.status != exitRefused || !isRefusal(got.stderr) || got.stdout != "" {
		t.Errorf("of a room that is none: status %d, %q", got.status, got.stderr)
	}
}

func TestTemplateUsage(t *testing.T) {
	for name, c := range map[string]struct {
		args []string
		want string
	}{
		"no name":      {[]string{"template"}, "give one of inventory, late"},
		"no such name": {[]string{"template", "spring"}, `unknown command "spring"`},
		"a word more":  {[]string{"template", "late", "x"}, `takes no "x"`},
	} {
		t.Run(name, func(t *testing.T) {
			got := say(t, "", c.args...)
			if got.status != exitUsage || !isRefusal(got.stderr) || !strings.Contains(got.stderr, c.want) {
				t.Errorf("status %d, %q; want %q", got.status, got.stderr, c.want)
			}
		})
	}
}
