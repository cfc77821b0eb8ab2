package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"
	"time"

	"drainboard/state"

	"github.com/rogpeppe/go-internal/testscript"
)

// clockVariable sets the clock of the program as these tests run it. The product
// knows no such variable.
const clockVariable = "TEST_NOW"

// TestMain lets the test binary stand in for the program, with a clock that the
// scripts set.
func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"drainboard": func() {
			dir, _ := os.Getwd()
			os.Exit(run(environment{
				args: os.Args[1:], stdin: os.Stdin, stdout: os.Stdout, stderr: os.Stderr,
				getenv: os.Getenv, dir: dir, now: testClock,
			}))
		},
	})
}

func testClock() time.Time {
	t, err := time.Parse(time.RFC3339, os.Getenv(clockVariable))
	if err != nil {
		return time.Now()
	}
	return t
}

// TestScripts plays what is promised to people, one file a promise.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata/script",
		RequireExplicitExec: true,
		Setup: func(env *testscript.Env) error {
			env.Setenv(clockVariable, "2026-11-25T10:12:00-05:00")
			env.Setenv("DRAINBOARD_ROOM", "room")
			env.Setenv("HOME", env.WorkDir)
			return nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"exits":  scriptExits,
			"figure": scriptFigure,
			"keeper": scriptKeeper,
			"shrink": scriptShrink,
			"write":  scriptWrite,
		},
	})
}

// scriptExits runs a command that must end with a status. What is refused says
// so in one line on stderr: exits 2 drainboard plan --crew 3
func scriptExits(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: exits STATUS COMMAND ...")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	got := 0
	if err := ts.Exec(args[1], args[2:]...); err != nil {
		var exit *exec.ExitError
		if !errors.As(err, &exit) {
			ts.Fatalf("%v", err)
		}
		got = exit.ExitCode()
	}
	if got != want {
		ts.Fatalf("exit status = %d; want %d", got, want)
	}
	if stderr := ts.ReadFile("stderr"); want != 0 && !isRefusal(stderr) {
		ts.Fatalf("stderr = %q; want one line that begins with drainboard:", stderr)
	}
}

// scriptFigure looks a value up in the JSON on stdout: figure moves.0.to C1, or
// a number with a tolerance: figure minutes 171.080 0.001
func scriptFigure(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 || len(args) > 3 {
		ts.Fatalf("usage: figure PATH WANT [TOLERANCE]")
	}
	got, err := lookUp(ts.ReadFile("stdout"), args[0])
	ts.Check(err)
	if len(args) == 2 {
		if words := inWords(got); words != args[1] {
			ts.Fatalf("%s = %s; want %s", args[0], words, args[1])
		}
		return
	}
	want, err := strconv.ParseFloat(args[1], 64)
	ts.Check(err)
	tolerance, err := strconv.ParseFloat(args[2], 64)
	ts.Check(err)
	if x, ok := got.(float64); !ok || !(math.Abs(x-want) <= tolerance) {
		ts.Fatalf("%s = %v; want %v within %v", args[0], got, want, tolerance)
	}
}

// inWords writes a JSON value as a script names it.
func inWords(v any) string {
	switch x := v.(type) {
	case nil:
		return "null"
	case float64:
		return plain(x)
	}
	return fmt.Sprint(v)
}

// lookUp finds the value at a path such as tanks.0.name.
func lookUp(encoded, path string) (any, error) {
	var v any
	if err := json.Unmarshal([]byte(encoded), &v); err != nil {
		return nil, fmt.Errorf("stdout is not one JSON value: %w", err)
	}
	for name := range strings.SplitSeq(path, ".") {
		switch x := v.(type) {
		case map[string]any:
			inner, ok := x[name]
			if !ok {
				return nil, fmt.Errorf("%s: no key %q", path, name)
			}
			v = inner
		case []any:
			i, err := strconv.Atoi(name)
			if name == "len" {
				return float64(len(x)), nil
			}
			if err != nil || i < 0 || i >= len(x) {
				return nil, fmt.Errorf("%s: no item %q of %d", path, name, len(x))
			}
			v = x[i]
		default:
			return nil, fmt.Errorf("%s: %v holds no %q", path, v, name)
		}
	}
	return v, nil
}

// scriptKeeper holds the room for writing till the script ends, as another
// program does.
func scriptKeeper(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: keeper DIR INITIALS")
	}
	f, err := state.Open(ts.MkAbs(args[0]), state.Options{Write: true, Who: args[1]})
	ts.Check(err)
	ts.Defer(func() { _ = f.Close() })
}

// scriptShrink takes bytes off the end of a file, as a power cut does.
func scriptShrink(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: shrink FILE BYTES")
	}
	less, err := strconv.Atoi(args[1])
	ts.Check(err)
	text := ts.ReadFile(args[0])
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), []byte(text[:len(text)-less]), 0o644))
}

// scriptWrite writes a text with Go's escapes to a file: bytes a script cannot
// hold.
func scriptWrite(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: write FILE TEXT")
	}
	text, err := strconv.Unquote(`"` + strings.ReplaceAll(args[1], `"`, `\"`) + `"`)
	ts.Check(err)
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), []byte(text), 0o644))
}
