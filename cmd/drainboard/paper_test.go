package main

import (
	"encoding/json"
	"flag"
	"fmt"
	unescape "html"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"drainboard/cmd/drainboard/document"
	"drainboard/tui/text"
)

var updatePapers = flag.Bool("update-papers", false, "write the papers of testdata/paper anew")

const papersDir = "testdata/paper"

// paperRoom is an invented room with 17 days of history: names with accents, a
// batch without counts and lengths, corrections, a hold that was passed, a step
// put off, a move left out, a remark that would run in a spreadsheet or a browser.
func paperRoom(t testing.TB) string {
	t.Helper()
	room := filepath.Join(t.TempDir(), "room")
	copyFile(t, filepath.Join(papersDir, "room.toml"), filepath.Join(room, "room.toml"))
	rows, err := filepath.Abs(filepath.Join(papersDir, "entries.csv"))
	if err != nil {
		t.Fatal(err)
	}
	imported(t, room, rows)
	return room
}

// imported is import with a clock that stands still, for tests and benchmarks.
func imported(t testing.TB, room, rows string) {
	t.Helper()
	var stderr strings.Builder
	status := run(environment{
		args: []string{"import", rows}, stdin: strings.NewReader(""), stdout: new(strings.Builder), stderr: &stderr,
		getenv: func(string) string { return room }, dir: t.TempDir(), now: testNow,
	})
	if status != exitDone {
		t.Fatalf("import %s: %s", rows, stderr.String())
	}
}

func copyFile(t testing.TB, from, to string) {
	t.Helper()
	data, err := os.ReadFile(from)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.MkdirAll(filepath.Dir(to), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(to, data, 0o644); err != nil {
		t.Fatal(err)
	}
}

// TestPapers holds what is printed of the room against files that a person has
// read. go test ./cmd/drainboard -run TestPapers -update-papers writes them anew.
func TestPapers(t *testing.T) {
	room := paperRoom(t)
	cases := map[string][]string{
		"sheet.txt":             {"sheet"},
		"sheet.html":            {"sheet", "--html"},
		"report.txt":            {"report", "26-05"},
		"report.html":           {"report", "26-05", "--html", "-"},
		"report.json":           {"report", "26-05", "--json"},
		"report-uncounted.txt":  {"report", "é-26"},
		"report-uncounted.json": {"report", "É-26", "--json"},
		"handover.txt":          {"handover", "--since", "2026-11-24T00:00:00-05:00"},
		"handover.json":         {"handover", "--since", "2026-11-24T00:00:00-05:00", "--json"},
		"handover-quiet.txt":    {"handover", "--since", "10:00"},
	}
	for name, args := range cases {
		t.Run(name, func(t *testing.T) {
			got := mustSay(t, room, args...).stdout
			path := filepath.Join(papersDir, name)
			if *updatePapers {
				writeFile(t, path, got)
			}
			want, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			if got != string(want) {
				t.Errorf("%s differs at line %d; read it and run with -update-papers", name, firstDifference(got, string(want)))
			}
			switch filepath.Ext(name) {
			case ".txt":
				fitsPages(t, got, strings.HasPrefix(name, "report"))
			case ".html":
				soundHTML(t, got)
			case ".json":
				if !json.Valid([]byte(got)) {
					t.Error("no JSON")
				}
			}
		})
	}
}

func firstDifference(a, b string) int {
	as, bs := strings.Split(a, "\n"), strings.Split(b, "\n")
	for i := range as {
		if i >= len(bs) || as[i] != bs[i] {
			return i + 1
		}
	}
	return len(as)
}

// fitsPages holds lines to 80 cells and, but for a report of any length, pages to
// 60 lines.
func fitsPages(t *testing.T, printed string, anyLength bool) {
	t.Helper()
	for i, page := range strings.Split(printed, "\f") {
		lines := strings.Split(strings.TrimSuffix(page, "\n"), "\n")
		if !anyLength && len(lines) > pageLines {
			t.Errorf("page %d has %d lines", i+1, len(lines))
		}
		for k, l := range lines {
			if text.Width(l) > document.Width {
				t.Errorf("page %d line %d is %d cells wide: %s", i+1, k+1, text.Width(l), l)
			}
		}
	}
}

var (
	tagPattern  = regexp.MustCompile(`<(/?)([a-zA-Z][a-zA-Z0-9]*)((?:[^>"]|"[^"]*")*)>`)
	loadPattern = regexp.MustCompile(`(?i)(https?:)?//[a-z]|url\(|@import|<(script|link|img|iframe|object|embed)\b|\son[a-z]+=`)
)

// soundHTML checks that every tag is closed in order, that ids and attributes are
// quoted, and that nothing is asked for from outside or would run.
func soundHTML(t *testing.T, html string) {
	t.Helper()
	if !strings.HasPrefix(html, document.Mark) {
		t.Error("does not begin with the mark of a paper")
	}
	void := map[string]bool{"meta": true}
	var open []string
	for _, m := range tagPattern.FindAllStringSubmatch(html, -1) {
		name := strings.ToLower(m[2])
		switch {
		case void[name] || strings.HasSuffix(m[3], "/"):
		case m[1] == "":
			open = append(open, name)
		case len(open) == 0 || open[len(open)-1] != name:
			t.Fatalf("</%s> closes %v", name, open)
		default:
			open = open[:len(open)-1]
		}
	}
	if len(open) > 0 {
		t.Errorf("never closed: %v", open)
	}
	rest := tagPattern.ReplaceAllString(strings.TrimPrefix(html, document.Mark), "")
	if i := strings.IndexAny(rest, "<"); i >= 0 {
		t.Errorf("a bare < stands in the text: %.60q", rest[i:])
	}
	tags := strings.Join(tagPattern.FindAllString(html, -1), "\n")
	if found := loadPattern.FindString(tags); found != "" {
		t.Errorf("a tag loads or runs: %q", found)
	}
	for _, r := range html {
		if r < ' ' && r != '\n' || r >= 0x7f && r < 0xa0 {
			t.Errorf("holds the control character %#x", r)
		}
	}
}

func TestUnsoundHTMLIsFound(t *testing.T) {
	for name, body := range map[string]string{
		"not closed": "<p>x", "crossed": "<p><b>x</p></b>", "bare": "<p>a < b</p>", "script": "<script>x</script>",
		"handler": `<p onclick="x">y</p>`, "image": `<p><img src="//x.y/z"></p>`, "control": "<p>\x01</p>",
	} {
		t.Run(name, func(t *testing.T) {
			inner := &testing.T{}
			done := make(chan struct{})
			go func() { // Fatalf ends the goroutine
				defer close(done)
				soundHTML(inner, document.Mark+body)
			}()
			<-done
			if !inner.Failed() {
				t.Errorf("%q passes for sound", body)
			}
		})
	}
}

// TestHostileTexts puts texts that run in a browser, a spreadsheet or a terminal
// through every paper.
func TestHostileTexts(t *testing.T) {
	room := filepath.Join(t.TempDir(), "room")
	writeFile(t, filepath.Join(room, "room.toml"), `version = 1
name = "<script>alert('room')</script>"
timezone = "America/Nassau"
[[algae]]
name = "<b"
[[house.ration]]
from_day = 0
cells_per_ml = 5000
share = { "<b" = 1.0 }
[[tank]]
name = "+cmd|A1"
litres = 120
[[tank]]
name = "<i onx"
litres = 120
[[tank]]
name = "T&'"
litres = 120
`)
	for _, args := range [][]string{
		{"filled", "tank=+cmd|A1"},
		{"stocked", "tank=+cmd|A1", `batch=</title><script>`, "hatched=2026-11-20", "larvae=5000", "origin=\u202e</td>\u200b"},
		{"filled", "tank=<i onx"},
		{"noted", "text=@SUM(1)\n\tnext", "tank=+cmd|A1"},
		{"look", "tank=+cmd|A1", `text="><svg onload=alert(1)>`, "lobes=2"},
		{"fed", "tank=+cmd|A1", "litres=<b:0.3"},
		{"moved", "from=+cmd|A1", "to=<i onx", "why=-1+1"},
		{"sizes", "tank=<i onx", "um=300,310,320"},
	} {
		mustSay(t, room, append([]string{"enter", "--by", "<J>"}, args...)...)
	}
	for _, args := range [][]string{{"sheet", "--html"}, {"report", "</title><script>", "--html", "-"}} {
		html := mustSay(t, room, args...).stdout
		soundHTML(t, html)
		if strings.Contains(html, "\u202e") {
			t.Error("a format character came through")
		}
		if !strings.Contains(unescape.UnescapeString(html), "+cmd|A1") {
			t.Error("the tank's name is lost")
		}
	}
	for _, args := range [][]string{{"sheet"}, {"report", "</title><script>"}, {"handover", "--since", "2h"}} {
		printed := mustSay(t, room, args...).stdout
		fitsPages(t, printed, true)
		if strings.ContainsAny(printed, "\x1b\u202e\t") {
			t.Errorf("%v: a control character came through", args)
		}
	}
	dir := filepath.Join(t.TempDir(), "out")
	mustSay(t, room, "export", dir)
	all, err := os.ReadFile(filepath.Join(dir, "entries.csv"))
	if err != nil {
		t.Fatal(err)
	}
	for _, cell := range []string{",+cmd|A1", "\"@SUM", ",-1+1"} {
		if strings.Contains(string(all), cell) {
			t.Errorf("entries.csv holds %q, which a spreadsheet runs", cell)
		}
	}
	returns(t, room, dir)
}

func TestPapersThatCannotBeWritten(t *testing.T) {
	room := paperRoom(t)
	dir := t.TempDir()
	mine := filepath.Join(dir, "mine.html")
	writeFile(t, mine, "<html>my own page</html>")
	cases := map[string]struct {
		args   []string
		status int
		want   string
	}{
		"unknown batch":   {[]string{"report", "27-01"}, exitRefused, `no batch "27-01"; there are 26-05, É-26`},
		"before any":      {[]string{"report", "26-05", "--at", "2026-11-07T00:00:00Z"}, exitRefused, "no batch was stocked yet"},
		"no folder":       {[]string{"report", "26-05", "--html", filepath.Join(dir, "none", "x.html")}, exitRefused, "no such file or directory"},
		"a folder":        {[]string{"report", "26-05", "--html", dir}, exitRefused, "is no plain file"},
		"not a paper":     {[]string{"report", "26-05", "--html", mine}, exitRefused, "holds something that drainboard did not write"},
		"two answers":     {[]string{"report", "26-05", "--html", "-", "--json"}, exitUsage, "give one"},
		"no batch":        {[]string{"report"}, exitUsage, "no BATCH is given"},
		"no since":        {[]string{"handover"}, exitUsage, "--since is missing"},
		"since text":      {[]string{"handover", "--since", "soon"}, exitUsage, "write it as 06:00"},
		"since later":     {[]string{"handover", "--since", "2027-01-01T00:00:00Z"}, exitUsage, "lies after"},
		"since backwards": {[]string{"handover", "--since", "-3h"}, exitUsage, "write it as 06:00"},
		"sheet at":        {[]string{"sheet", "--at", "noon"}, exitUsage, "--at"},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			got := say(t, room, c.args...)
			if got.status != c.status || !strings.Contains(got.stderr, c.want) || !isRefusal(got.stderr) || got.stdout != "" {
				t.Errorf("status %d, stderr %q; want %d and %q", got.status, got.stderr, c.status, c.want)
			}
		})
	}
	if kept, _ := os.ReadFile(mine); string(kept) != "<html>my own page</html>" {
		t.Error("a page of one's own was written over")
	}
}

func TestAReportIsWrittenOverAnEarlierOne(t *testing.T) {
	room := paperRoom(t)
	path := filepath.Join(t.TempDir(), "report.html")
	for _, at := range []string{"2026-11-12T12:00:00Z", "2026-11-25T15:00:00Z"} {
		if got := mustSay(t, room, "report", "26-05", "--html", path, "--at", at); got.stdout != "wrote "+path+"\n" {
			t.Errorf("stdout = %q", got.stdout)
		}
	}
	html, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(string(html), "Wed 25 Nov 2026 10:00") {
		t.Error("the earlier report still stands")
	}
	if left, _ := filepath.Glob(filepath.Join(filepath.Dir(path), ".*")); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
}

// TestTheReportAgreesWithShow: one figure, one number, wherever it stands.
func TestTheReportAgreesWithShow(t *testing.T) {
	room := paperRoom(t)
	for i, batch := range []string{"26-05", "É-26"} {
		shown := mustSay(t, room, "show", "--json").stdout
		report := mustSay(t, room, "report", batch, "--json").stdout
		for _, key := range []string{"name", "hatched", "age_days", "tanks", "survival", "mean_um", "um_per_day", "ready_date", "ready_low", "ready_high"} {
			want, err := lookUp(shown, fmt.Sprintf("batches.%d.%s", i, key))
			if err != nil {
				t.Fatal(err)
			}
			got, err := lookUp(report, key)
			if err != nil {
				t.Fatal(err)
			}
			if fmt.Sprint(got) != fmt.Sprint(want) {
				t.Errorf("%s %s = %v; show has %v", batch, key, got, want)
			}
		}
	}
}

// TestSinceMoments: 06:00 is the last time it was.
func TestSinceMoments(t *testing.T) {
	room := paperRoom(t) // it is 2026-11-25 10:12 there
	for since, want := range map[string]string{
		"06:00": "2026-11-25T06:00:00-05:00", "10:12": "2026-11-25T10:12:00-05:00", "18:30": "2026-11-24T18:30:00-05:00",
		"12h": "2026-11-24T22:12:00-05:00", "2026-11-24T12:00:00Z": "2026-11-24T07:00:00-05:00",
	} {
		got, err := lookUp(mustSay(t, room, "handover", "--since", since, "--json").stdout, "since")
		if err != nil || got != want {
			t.Errorf("--since %s = %v, %v; want %s", since, got, err, want)
		}
	}
}

// TestAGapOfAYear: moments carry the year once days alone leave a doubt.
func TestAGapOfAYear(t *testing.T) {
	room := filepath.Join(t.TempDir(), "room")
	copyFile(t, filepath.Join(papersDir, "room.toml"), filepath.Join(room, "room.toml"))
	rows := filepath.Join(t.TempDir(), "rows.csv")
	writeFile(t, rows, `at,kind,tank,batch,hatched,larvae,celsius,um
2025-10-01T08:00:00-04:00,filled,C2,,,,27,
2025-10-01T09:00:00-04:00,stocked,C2,25-01,2025-10-01,5000,,
2025-10-02T09:00:00-04:00,sizes,C2,,,,,"300,310"
2026-11-20T09:00:00-05:00,sizes,C2,,,,,"1400,1450,1420"
2026-11-20T09:10:00-05:00,temperature,C2,,,,27.2,
`)
	imported(t, room, rows)
	printed := mustSay(t, room, "report", "25-01").stdout
	fitsPages(t, printed, true)
	for _, want := range []string{"2025-10-01 09:00", "415  2026-11-20", "day 420"} {
		if !strings.Contains(printed, want) {
			t.Errorf("the report says nothing of %q:\n%s", want, printed)
		}
	}
	soundHTML(t, mustSay(t, room, "report", "25-01", "--html", "-").stdout)
	fitsPages(t, mustSay(t, room, "sheet").stdout, false)
}
