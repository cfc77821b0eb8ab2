package main

import (
	"bytes"
	"errors"
	"strings"
	"testing"
)

// full is a stdout that takes nothing, like a full disk.
type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("no space left on device") }

func runOn(t *testing.T, room string, args ...string) (status int, stderr string) {
	t.Helper()
	var b bytes.Buffer
	status = run(environment{
		args: args, stdin: strings.NewReader(""), stdout: full{}, stderr: &b,
		getenv: func(string) string { return room }, dir: t.TempDir(), now: testNow,
	})
	return status, b.String()
}

// TestAnAnswerThatCannotBeWritten must not look like an entry that was refused.
func TestAnAnswerThatCannotBeWritten(t *testing.T) {
	room := workedRoom(t)
	cases := map[string]struct {
		args []string
		want string
	}{
		"enter": {[]string{"enter", "noted", "text=x"}, "entry 10 is saved, but: write the answer: no space left"},
		"show":  {[]string{"show", "--json"}, "write the answer: no space left"},
		"calc":  {[]string{"calc", "acid", "--litres", "20"}, "write the answer: no space left"},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			status, stderr := runOn(t, room, c.args...)
			if status != exitRefused || !strings.Contains(stderr, c.want) || !isRefusal(stderr) {
				t.Errorf("status %d, stderr %q; want 1 and %q", status, stderr, c.want)
			}
		})
	}
	if got := mustSay(t, room, "verify").stdout; got != "10 entries, chain whole\n" {
		t.Errorf("verify = %q; want the entry to be there", got)
	}
}

// TestHelpOfEveryCommand keeps every command explained.
func TestHelpOfEveryCommand(t *testing.T) {
	p := &program{environment: environment{getenv: func(string) string { return "" }}}
	root := newRoot(p)
	for _, c := range append(root.Commands(), root) {
		if c.Short == "" {
			t.Errorf("%s has no line in the help", c.CommandPath())
		}
		got := say(t, "", append(strings.Fields(strings.TrimPrefix(c.CommandPath(), "drainboard")), "--help")...)
		if got.status != exitDone || got.stderr != "" || !strings.Contains(got.stdout, "Usage:") {
			t.Errorf("%s --help: status %d, stderr %q", c.CommandPath(), got.status, got.stderr)
		}
	}
}
