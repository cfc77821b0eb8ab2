//go:build !windows

package darkbg

import (
	"bytes"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"github.com/creack/pty"
)

// query is how a program asks for the background colour (xterm control
// sequences, OSC 11).
const query = "\x1b]11;?"

// limit is how long a start may take; the wait for an answer is five seconds.
const limit = 2 * time.Second

// start builds a program of testdata, runs it on a terminal that answers
// nothing and tells what it wrote until it was ready, or until it asked.
func start(t *testing.T, name string) (wrote []byte, took time.Duration) {
	t.Helper()
	bin := filepath.Join(t.TempDir(), name)
	if out, err := exec.Command("go", "build", "-o", bin, "./testdata/"+name).CombinedOutput(); err != nil {
		t.Fatalf("build %s: %v\n%s", name, err, out)
	}
	cmd := exec.Command(bin)
	cmd.Env = append(cmd.Environ(), "TERM=xterm-256color", "COLORFGBG=", "CI=")
	began := time.Now()
	board, err := pty.Start(cmd)
	if err != nil {
		t.Skip("no pseudo terminal here: ", err)
	}
	defer board.Close()
	defer func() {
		_ = cmd.Process.Kill()
		_ = cmd.Wait()
	}()
	buf := make([]byte, 1024)
	for {
		n, err := board.Read(buf)
		wrote = append(wrote, buf[:n]...)
		if err != nil || bytes.Contains(wrote, []byte("ready")) || bytes.Contains(wrote, []byte(query)) {
			return wrote, time.Since(began)
		}
	}
}

func TestStartAsksTheTerminalNothing(t *testing.T) {
	wrote, took := start(t, "with")
	if bytes.Contains(wrote, []byte("\x1b")) {
		t.Errorf("the program asked the terminal: %q", wrote)
	}
	if !bytes.Contains(wrote, []byte("ready")) || took > limit {
		t.Errorf("not ready within %v: %q after %v", limit, wrote, took)
	}
}

// TestControl proves that the test above can fail. When this one fails,
// bubbletea asks no longer and the package may go.
func TestControl(t *testing.T) {
	if wrote, _ := start(t, "without"); !bytes.Contains(wrote, []byte(query)) {
		t.Errorf("without darkbg the program wrote %q, want the query %q", wrote, query)
	}
}
