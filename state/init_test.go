package state

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"drainboard/model"
)

// What init writes says just what holds where nothing is said.
func TestANewRoomIsTheDefaults(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "a", "new room")
	if err := Init(dir, InitOptions{Name: "North \"room\"", Tanks: 6, Litres: 97.5, Zone: "America/Nassau"}); err != nil {
		t.Fatal(err)
	}
	want := &model.Room{
		Name: "North \"room\"", Zone: nassau(t), House: model.DefaultHouse(), Algae: model.DefaultAlgae(), Procedure: model.DefaultProcedure(),
	}
	for i := range 6 {
		want.Tanks = append(want.Tanks, model.Tank{Name: fmt.Sprintf("C%d", i+1), Litres: 97.5, Row: i/3 + 1, Column: i%3 + 1})
	}
	f := openRoom(t, dir, Options{Write: true})
	if diff := cmp.Diff(want, f.Room(), byZone); diff != "" {
		t.Errorf("room differs (-want +got):\n%s", diff)
	}
	f.Close()
	noProblems(t, dir)
}

func TestANewRoomHasItsOwnDefaults(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "north")
	if err := Init(dir, InitOptions{}); err != nil {
		t.Fatal(err)
	}
	room := openRoom(t, dir, Options{}).Room()
	if room.Name != "north" || len(room.Tanks) != 4 || room.Tanks[3] != (model.Tank{Name: "C4", Litres: 120, Row: 1, Column: 4}) {
		t.Errorf("room %q with %v", room.Name, room.Tanks)
	}
}

// Every key that is read is written or shown in a remark, with a word beside it.
func TestEveryKeyIsExplained(t *testing.T) {
	text := writeRoom(withDefaults("x", InitOptions{}))
	every := readFile(t, roomsDir, "every-key", "room.toml")
	for path := range indexLines(every) {
		key := path[strings.LastIndexAny(path, ".")+1:]
		key, _, _ = strings.Cut(key, "[")
		if strings.Contains(path, ".share.") {
			continue
		}
		if !strings.Contains(text, key) {
			t.Errorf("a new room.toml does not show %s", path)
		}
	}
	for i, line := range strings.Split(text, "\n") {
		if n := len([]rune(line)); n > 130 {
			t.Errorf("line %d is %d characters long", i+1, n)
		}
		if strings.Contains(line, "%!") {
			t.Errorf("line %d: %s", i+1, line)
		}
	}
}

func TestInitWritesOverNothing(t *testing.T) {
	for _, name := range []string{roomFile, procedureFile} {
		t.Run(name, func(t *testing.T) {
			dir := t.TempDir()
			writeFile(t, "mine", dir, name)
			err := Init(dir, InitOptions{})
			if err == nil || !strings.Contains(err.Error(), filepath.Join(dir, name)+" is there already; nothing was written") {
				t.Errorf("init = %v; want it refused", err)
			}
			files, _ := os.ReadDir(dir)
			if len(files) != 1 || readFile(t, dir, name) != "mine" {
				t.Errorf("the folder holds %v; want %s alone, as it was", files, name)
			}
		})
	}
}

func TestInitRefusesWhatWouldNotOpen(t *testing.T) {
	for name, c := range map[string]struct {
		o    InitOptions
		want string
	}{
		"too many tanks":  {InitOptions{Tanks: 201}, "201 tanks: a room has from 1 to 200"},
		"negative tanks":  {InitOptions{Tanks: -1}, "-1 tanks"},
		"negative litres": {InitOptions{Litres: -5}, "tank[1].litres: -5"},
		"unknown zone":    {InitOptions{Zone: "Mars"}, `timezone: "Mars" is not a time zone`},
		"long name":       {InitOptions{Name: strings.Repeat("x", 61)}, "name: is 61 characters"},
		"name of noise":   {InitOptions{Name: "a\x07"}, "name: holds a character"},
	} {
		t.Run(name, func(t *testing.T) {
			dir := filepath.Join(t.TempDir(), "room")
			err := Init(dir, c.o)
			if err == nil || !strings.Contains(err.Error(), c.want) || strings.Contains(err.Error(), "\n") {
				t.Errorf("init = %v; want one line that says %s", err, c.want)
			}
			if _, err := os.Stat(dir); err == nil {
				t.Error("the folder was made")
			}
		})
	}
}

func TestFilesAreReadableAsTheUsersOwn(t *testing.T) {
	dir := newRoom(t)
	f := openRoom(t, dir, Options{Write: true})
	mustEnter(t, f, "2026-11-25T09:14:05-05:00", &model.Noted{Text: "x"})
	for _, name := range []string{roomFile, procedureFile, lockFile, journalDir + "/2026-11.toml"} {
		info, err := os.Stat(filepath.Join(dir, name))
		if err != nil {
			t.Fatal(err)
		}
		if mode := info.Mode().Perm(); mode&0o400 == 0 || mode&0o111 != 0 {
			t.Errorf("%s has the mode %o", name, mode)
		}
	}
}
