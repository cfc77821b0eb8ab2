package state

import (
	"testing"

	"drainboard/model"
)

func TestWhatIsAppendedIsReadBack(t *testing.T) {
	dir := newRoom(t)
	f := openRoom(t, dir, Options{Write: true})
	mustEnter(t, f, "2026-11-25T09:14:05-05:00", &model.Filled{Tank: "c1", Celsius: num(27.4)})
	mustEnter(t, f, "2026-12-02T09:14:05-05:00", &model.Noted{Text: "a \"quoted\"\nremark\t\\"})
	want := f.Ledger().Entries()
	if err := f.Close(); err != nil {
		t.Fatal(err)
	}
	sameEntries(t, openRoom(t, dir, Options{}).Ledger().Entries(), want)
}

// The example of an entry as it stands on disk; its sum is worked out by
// coreutils: printf '[[entry]]\nn = 1\n...' | sha256sum.
func TestAnEntryOnDisk(t *testing.T) {
	dir := newRoom(t)
	f := openRoom(t, dir, Options{Write: true})
	mustEnter(t, f, "2026-11-25T09:14:05-05:00", &model.Filled{Tank: "c1", Celsius: num(27.4)})
	mustEnter(t, f, "2026-11-25T14:20:00Z", &model.Temperature{Tank: "C1", Celsius: 28})
	want := `[[entry]]
n = 1
at = 2026-11-25T09:14:05-05:00
kind = "filled"
tank = "C1"
celsius = 27.4
sum = "fb78d75577efdc7a"

[[entry]]
n = 2
at = 2026-11-25T09:20:00-05:00
kind = "temperature"
tank = "C1"
celsius = 28
sum = "b183d052eef6ba0f"
`
	if got := readFile(t, dir, "journal", "2026-11.toml"); got != want {
		t.Errorf("journal:\n%s\nwant:\n%s", got, want)
	}
}
