package main

import (
	"bytes"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// testNow is the clock of the tests that run the program in place.
func testNow() time.Time { return time.Date(2026, 11, 25, 15, 12, 0, 0, time.UTC) }

// said is what a run of the program came to.
type said struct {
	status         int
	stdout, stderr string
}

// say runs the program on a room.
func say(t *testing.T, room string, args ...string) said {
	t.Helper()
	var stdout, stderr bytes.Buffer
	env := map[string]string{"DRAINBOARD_ROOM": room}
	status := run(environment{
		args: args, stdin: strings.NewReader(""), stdout: &stdout, stderr: &stderr,
		getenv: func(name string) string { return env[name] }, dir: t.TempDir(), now: testNow,
	})
	return said{status, stdout.String(), stderr.String()}
}

// mustSay is say for what has to succeed.
func mustSay(t *testing.T, room string, args ...string) said {
	t.Helper()
	s := say(t, room, args...)
	if s.status != exitDone {
		t.Fatalf("drainboard %q: status %d, %s", args, s.status, s.stderr)
	}
	return s
}

// workedRoom has a tank in every state, two algae, a source and an open session,
// which is entry 9.
func workedRoom(t *testing.T) string {
	t.Helper()
	room := filepath.Join(t.TempDir(), "room")
	writeFile(t, filepath.Join(room, "room.toml"), `version = 1
name = "Worked room"
timezone = "America/Nassau"
[[algae]]
name = "iso"
[[algae]]
name = "chaet"
[[tank]]
name = "C1"
litres = 120
[[tank]]
name = "C2"
litres = 120
[[tank]]
name = "C3"
litres = 120
[[tank]]
name = "C4"
litres = 120
[[tank]]
name = "C5"
litres = 120
[[supply]]
name = "header"
`)
	rows := filepath.Join(t.TempDir(), "rows.csv")
	writeFile(t, rows, `at,kind,tank,celsius,batch,hatched,larvae,out,from,to,moves
2026-11-23T08:00:00-05:00,filled,C1,28,,,,,,,
2026-11-23T09:00:00-05:00,stocked,C1,,26-05,2026-11-08,9000,,,,
2026-11-23T09:30:00-05:00,stocked,C5,,26-06,2026-11-20,9000,,,,
2026-11-23T10:00:00-05:00,filled,C2,27.5,,,,,,,
2026-11-23T10:10:00-05:00,washed,C3,,,,,,,,
2026-11-23T10:20:00-05:00,service,C4,,,,,true,,,
2026-11-23T10:30:00-05:00,filled,C3,27,,,,,,,
2026-11-23T11:00:00-05:00,moved,,,,,,,C5,C3,
2026-11-23T12:00:00-05:00,opened,,,,,,,,,C1:C2
`)
	mustSay(t, room, "import", rows)
	return room
}

func writeFile(t *testing.T, path, text string) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

// journalOf returns the bytes of every file of a room's journal.
func journalOf(t *testing.T, room string) map[string]string {
	t.Helper()
	files := map[string]string{}
	err := filepath.WalkDir(filepath.Join(room, "journal"), func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		text, err := os.ReadFile(path)
		files[path] = string(text)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

func sameFiles(a, b map[string]string) bool { return maps.Equal(a, b) }
