package state

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"
	"testing"
	"time"
)

// The test binary runs itself as another program on a room: the variables say on
// which, and as what.
const (
	otherRoom  = "DRAINBOARD_TEST_ROOM"
	otherRole  = "DRAINBOARD_TEST_ROLE"
	crashCount = "DRAINBOARD_TEST_CRASHES" // how often the writer is killed; 20 if not given
)

func TestMain(m *testing.M) {
	dir := os.Getenv(otherRoom)
	switch os.Getenv(otherRole) {
	case "":
		os.Exit(m.Run())
	case "holder":
		os.Exit(hold(dir))
	case "writer":
		os.Exit(write(dir))
	}
}

// other starts the test binary in a role; it is killed with the test. What it
// prints comes through the reader.
func other(t *testing.T, role, dir string) (*exec.Cmd, *bufio.Reader) {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	c := exec.Command(self)
	c.Env = append(os.Environ(), otherRoom+"="+dir, otherRole+"="+role)
	c.Stderr = os.Stderr
	out, err := c.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	// Its stdin ends with this process, so that it never outlives it.
	if _, err := c.StdinPipe(); err != nil {
		t.Fatal(err)
	}
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		_ = c.Process.Kill()
		_ = c.Wait()
	})
	return c, bufio.NewReader(out)
}

// hold takes the room, says so, and keeps it until its stdin ends.
func hold(dir string) int {
	f, err := Open(dir, Options{Write: true, Who: "MB", Now: func() time.Time { return at("2026-11-25T09:14:00-05:00") }})
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	defer f.Close()
	fmt.Println("held")
	_, _ = io.Copy(io.Discard, os.Stdin)
	return 0
}

// write appends one entry after another, printing the number of each that was
// acknowledged, until it is killed. Every other entry is written in small parts,
// so that a kill often leaves a part.
func write(dir string) int {
	f, err := Open(dir, Options{Write: true})
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	real := f.journal.disk.write
	parts := false
	f.journal.disk.write = func(file *os.File, b []byte, at int64) (int, error) {
		if parts = !parts; !parts {
			return real(file, b, at)
		}
		for i := 0; i < len(b); i += 8 {
			for range 500 {
				sumOf(string(b), "") // work, so that the kill often comes between parts
			}
			if _, err := real(file, b[i:min(i+8, len(b))], at+int64(i)); err != nil {
				return i, err
			}
		}
		return len(b), nil
	}
	first := f.Ledger().Next()
	for _, e := range busyEntries(first + 5000)[first-1:] {
		if err := f.Append(e); err != nil {
			fmt.Fprintln(os.Stderr, err)
			return 1
		}
		fmt.Println(e.N)
	}
	return 0
}

// A writer is killed at a random moment, again and again. Everything it had said
// to be saved is there, once, and the journal is whole.
func TestNothingAcknowledgedIsLostWhenTheWriterIsKilled(t *testing.T) {
	seed := rand.Uint64()
	random := rand.New(rand.NewPCG(seed, 0))
	dir := newRoom(t)
	acknowledged, torn := 0, 0
	for round := range crashes(t) {
		last := killedWriter(t, dir, random)
		acknowledged = max(acknowledged, last)
		f, err := Open(dir, Options{Write: true})
		if err != nil {
			t.Fatalf("seed %d, round %d: %v", seed, round, err)
		}
		torn += len(f.Notices())
		entries := f.Ledger().Entries()
		f.Close()
		if len(entries) < acknowledged || len(entries) > acknowledged+1 {
			t.Fatalf("seed %d, round %d: %d entries; entry %d was acknowledged", seed, round, len(entries), acknowledged)
		}
		acknowledged = len(entries)
		if !isPrefix(t, entries, busyEntries(acknowledged)) {
			t.Fatalf("seed %d, round %d: the entries are not those written", seed, round)
		}
		noProblems(t, dir)
	}
	t.Logf("%d entries kept, %d writes found cut off", acknowledged, torn)
}

func crashes(t *testing.T) int {
	if n, err := strconv.Atoi(os.Getenv(crashCount)); err == nil {
		return n
	}
	if testing.Short() {
		return 4
	}
	return 20
}

// killedWriter runs a writer, kills it after a random number of entries, and
// returns the last number it acknowledged.
func killedWriter(t *testing.T, dir string, random *rand.Rand) int {
	t.Helper()
	c, out := other(t, "writer", dir)
	last := 0
	next := func() bool {
		line, err := out.ReadString('\n')
		if err != nil {
			return false
		}
		n, err := strconv.Atoi(strings.TrimSpace(line))
		if err != nil || last > 0 && n != last+1 {
			t.Fatalf("the writer says %q after %d", line, last)
		}
		last = n
		return true
	}
	for range 1 + random.IntN(10) {
		if !next() {
			t.Fatal("the writer ended by itself")
		}
	}
	for range random.IntN(3000) {
		runtime.Gosched()
	}
	if err := c.Process.Kill(); err != nil {
		t.Fatal(err)
	}
	for next() {
	}
	_ = c.Wait()
	return last
}

func TestOneWriterAtATime(t *testing.T) {
	dir, _, _ := kept(t, 3)
	c, out := other(t, "holder", dir)
	if line, err := out.ReadString('\n'); line != "held\n" {
		t.Fatalf("the holder says %q %v", line, err)
	}
	wantHolder := fmt.Sprintf("MB, process %d on %s since 2026-11-25 09:14", c.Process.Pid, hostname(t))

	_, err := Open(dir, Options{Write: true})
	if held, ok := errors.AsType[ErrHeld](err); !ok || held.Holder != wantHolder || held.Dir != dir {
		t.Errorf("second writer: %v; want ErrHeld by %s", err, wantHolder)
	}
	if _, err := Repair(dir, Options{}); err == nil || !strings.Contains(err.Error(), wantHolder) {
		t.Errorf("repair: %v; want it refused", err)
	}
	f := openRoom(t, dir, Options{Write: true, FallBack: true})
	if f.Writable() || len(f.Ledger().Entries()) != 3 {
		t.Errorf("falling back: writable %v, %d entries; want a room to read", f.Writable(), len(f.Ledger().Entries()))
	}
	if want := "kept by " + wantHolder + "; reading along"; len(f.Notices()) != 1 || f.Notices()[0] != want {
		t.Errorf("notices = %q; want %q", f.Notices(), want)
	}
	if err := f.Append(busyEntries(4)[3]); !errors.Is(err, ErrReadOnly) {
		t.Errorf("append = %v; want ErrReadOnly", err)
	}

	// A holder that is killed leaves its file behind, and nothing held.
	if err := c.Process.Kill(); err != nil {
		t.Fatal(err)
	}
	_ = c.Wait()
	again := openRoom(t, dir, Options{Write: true})
	if !again.Writable() || len(again.Notices()) > 0 {
		t.Errorf("after the holder's end: writable %v, notices %q", again.Writable(), again.Notices())
	}
}

func hostname(t *testing.T) string {
	t.Helper()
	name, err := os.Hostname()
	if err != nil {
		t.Fatal(err)
	}
	return name
}

func TestCloseGivesTheRoomFree(t *testing.T) {
	dir := newRoom(t)
	f := openRoom(t, dir, Options{Write: true})
	if _, err := Open(dir, Options{Write: true}); err == nil {
		t.Error("two writers in one program")
	}
	for range 2 { // closing twice does no harm
		if err := f.Close(); err != nil {
			t.Fatal(err)
		}
	}
	if f.Writable() {
		t.Error("a closed room can be written to")
	}
	openRoom(t, dir, Options{Write: true})
}

// A room that is refused is not left locked.
func TestARefusedRoomIsNotHeld(t *testing.T) {
	dir := newRoom(t)
	good := readFile(t, dir, roomFile)
	writeFile(t, "version = 1\n", dir, roomFile)
	if _, err := Open(dir, Options{Write: true}); err == nil {
		t.Fatal("it was taken")
	}
	writeFile(t, good, dir, roomFile)
	openRoom(t, dir, Options{Write: true})
}

// A room that cannot be locked, say on a medium that only reads, is read.
func TestARoomThatCannotBeWrittenIsRead(t *testing.T) {
	dir, _, _ := kept(t, 3)
	if err := os.Mkdir(filepath.Join(dir, lockFile), 0o755); err != nil {
		t.Fatal(err)
	}
	if _, err := Open(dir, Options{Write: true}); err == nil || !strings.HasPrefix(err.Error(), "take the room for writing: ") {
		t.Errorf("open = %v; want it refused", err)
	}
	f := openRoom(t, dir, Options{Write: true, FallBack: true})
	if f.Writable() || len(f.Notices()) != 1 || !strings.Contains(f.Notices()[0], "reading only") {
		t.Errorf("writable %v, notices %q", f.Writable(), f.Notices())
	}
}
