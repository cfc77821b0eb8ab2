package state

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"drainboard/model"
)

// newRoom makes a room of four tanks in a scratch folder.
func newRoom(t testing.TB) string {
	t.Helper()
	dir := filepath.Join(t.TempDir(), "room")
	if err := Init(dir, InitOptions{Name: "Test room", Zone: "America/Nassau"}); err != nil {
		t.Fatal(err)
	}
	return dir
}

// openRoom opens a room; it is closed with the test.
func openRoom(t testing.TB, dir string, o Options) *Folder {
	t.Helper()
	f, err := Open(dir, o)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { f.Close() })
	return f
}

func at(s string) time.Time {
	t, err := time.Parse(time.RFC3339, s)
	if err != nil {
		panic(err)
	}
	return t
}

var later = at("2027-06-01T00:00:00Z")

// enter goes the way every entry goes: checked, made durable, folded in.
func enter(f *Folder, when string, fact model.Fact) error {
	e := model.Entry{At: at(when), Fact: fact}
	if err := f.Ledger().Check(&e, later); err != nil {
		return err
	}
	if err := f.Append(e); err != nil {
		return err
	}
	return f.Ledger().Apply(e)
}

func mustEnter(t testing.TB, f *Folder, when string, fact model.Fact) {
	t.Helper()
	if err := enter(f, when, fact); err != nil {
		t.Fatalf("%s %s: %v", when, fact.Kind(), err)
	}
}

func num(x float64) *float64 { return &x }

// sameEntries fails the test where two lists of entries say different things.
func sameEntries(t testing.TB, got, want []model.Entry) {
	t.Helper()
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("entries differ (-want +got):\n%s", diff)
	}
}

func readFile(t testing.TB, path ...string) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(path...))
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func writeFile(t testing.TB, text string, path ...string) {
	t.Helper()
	if err := os.WriteFile(filepath.Join(path...), []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}
