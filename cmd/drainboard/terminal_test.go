//go:build !windows

package main

import (
	"encoding/json"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"
	"github.com/creack/pty"
)

// terminal is the program running in a pseudo-terminal.
type terminal struct {
	t    *testing.T
	cmd  *exec.Cmd
	file *os.File
	last time.Time // when keys were pressed

	mu   sync.Mutex
	seen strings.Builder // what was painted since the last look
}

// program builds the program once a test.
func build(t *testing.T) string {
	t.Helper()
	bin := filepath.Join(t.TempDir(), "drainboard")
	if out, err := exec.Command("go", "build", "-o", bin, ".").CombinedOutput(); err != nil {
		t.Fatalf("build: %v\n%s", err, out)
	}
	return bin
}

func start(t *testing.T, bin string, args ...string) *terminal {
	t.Helper()
	cmd := exec.Command(bin, args...)
	cmd.Env = append(os.Environ(), "TERM=xterm-256color", "NO_COLOR=1")
	file, err := pty.StartWithSize(cmd, &pty.Winsize{Rows: 50, Cols: 200})
	if err != nil {
		t.Fatal(err)
	}
	term := &terminal{t: t, cmd: cmd, file: file}
	go term.read()
	t.Cleanup(func() { _ = cmd.Process.Kill(); _ = file.Close() })
	return term
}

// read takes in what is painted, so that the program never waits for a reader.
func (term *terminal) read() {
	buf := make([]byte, 1<<16)
	for {
		n, err := term.file.Read(buf)
		term.mu.Lock()
		term.seen.Write(buf[:n])
		term.mu.Unlock()
		if err != nil {
			return
		}
	}
}

// wait waits until a pattern was painted since the last one waited for.
func (term *terminal) wait(pattern string) {
	term.t.Helper()
	expected := regexp.MustCompile(pattern)
	deadline := time.Now().Add(60 * time.Second)
	for time.Now().Before(deadline) {
		term.mu.Lock()
		shown := ansi.Strip(term.seen.String())
		found := expected.MatchString(shown)
		if found {
			term.seen.Reset()
		}
		term.mu.Unlock()
		if found {
			return
		}
		time.Sleep(5 * time.Millisecond)
	}
	term.mu.Lock()
	defer term.mu.Unlock()
	term.t.Fatalf("%q never showed; painted since:\n%s", pattern, ansi.Strip(term.seen.String()))
}

// press types keys no faster than a person does: the same command key within
// 150 ms counts as held down.
func (term *terminal) press(keys string) {
	term.t.Helper()
	time.Sleep(time.Until(term.last.Add(250 * time.Millisecond)))
	term.last = time.Now()
	if _, err := io.WriteString(term.file, keys); err != nil {
		term.t.Fatal(err)
	}
}

// room makes a room of two tanks whose change is due, one of them empty.
func dueRoom(t *testing.T, bin string) string {
	t.Helper()
	dir := filepath.Join(t.TempDir(), "room")
	now := time.Now()
	ago := func(d time.Duration) string { return now.Add(-d).Format(time.RFC3339) }
	for _, args := range [][]string{
		{"init", dir, "--tanks", "2"},
		{"enter", "filled", "tank=C1", "--at", ago(52 * time.Hour)},
		{"enter", "stocked", "tank=C1", "batch=N-1", "hatched=" + now.Add(-120*time.Hour).Format(time.DateOnly), "larvae=9000", "--at", ago(51 * time.Hour)},
		{"enter", "filled", "tank=C2", "celsius=27.2", "--at", ago(2 * time.Hour)},
	} {
		if args[0] != "init" {
			args = append(args, "--room", dir)
		}
		if out, err := exec.Command(bin, args...).CombinedOutput(); err != nil {
			t.Fatalf("%v: %v\n%s", args, err, out)
		}
	}
	return dir
}

// A whole change session by keys in a real terminal: killed in the middle by
// SIGKILL, resumed at the very step, closed; then the journal is whole and the
// room has its new empty tank.
func TestSessionKilledAndResumed(t *testing.T) {
	if testing.Short() {
		t.Skip("builds and drives the real program")
	}
	bin := build(t)
	dir := dueRoom(t, bin)

	term := start(t, bin, "--room", dir)
	term.wait(`NEXT C1 into C2`)
	term.press("s")
	term.wait(`C1.C2`)
	term.press("\r")
	term.wait(`(?i)acid`)
	term.press("\r")
	term.wait(`stand in it between tanks`)
	answers := []struct{ keys, next string }{
		{"\r", `Lay out|age in this session`},
		{"\r", `off the tank in front`},
		{"C1\r", `difference the move waits`},
		{"28.1\r", `apart is fine`},
	}
	for _, a := range answers {
		term.press(a.keys)
		term.wait(a.next)
	}
	if err := term.cmd.Process.Signal(syscall.SIGKILL); err != nil {
		t.Fatal(err)
	}
	_ = term.cmd.Wait()

	term = start(t, bin, "--room", dir)
	term.wait(`SESSION \d+: C1 into C2, move 1 of 1`)
	term.press("s")
	term.wait(`apart is fine`) // the very step: the destination's temperature
	for _, a := range []struct{ keys, next string }{
		{"27,3\r", `go over the side|clogs`},
		{"105\r", `three-quarters full`},
		{"80\r", `mesh under water`},
		{"\r", `off the tank in front`},
		{"C2\r", `outside of the mesh`},
		{"\r", `dry within minutes`},
		{"1\r", `hang in the water`},
		{"1\r", `without beating`},
		{"1\r", `holds no food`},
		{"1\r", `stay warm and clean`},
	} {
		term.press(a.keys)
		term.wait(a.next)
	}
	term.press("\r")
	term.wait(`no step is left`)
	term.press("+")
	term.wait(`mL acid`)
	term.press("40\r")
	term.wait(`(?i)C1 washed`)
	term.press("27.6\r")
	term.wait(`(?i)C1 filled`)
	term.press("1\r")
	term.wait(`(?i)closed complete|next due`)
	term.press("\x03\x03")
	_ = term.cmd.Process.Signal(syscall.SIGTERM)
	_ = term.cmd.Wait()

	if out, err := exec.Command(bin, "verify", "--room", dir).CombinedOutput(); err != nil {
		t.Errorf("verify: %v\n%s", err, out)
	}
	out, err := exec.Command(bin, "show", "--json", "--room", dir).Output()
	if err != nil {
		t.Fatal(err)
	}
	var shown struct {
		Tanks []struct{ Name, State string }
	}
	if err := json.Unmarshal(out, &shown); err != nil {
		t.Fatal(err)
	}
	if got := shown.Tanks; got[0].State != "ready" || got[1].State != "holding" {
		t.Errorf("tanks = %+v; want C1 the new empty tank and C2 holding", got)
	}
}
