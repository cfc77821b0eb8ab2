package state

import (
	"archive/zip"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"drainboard/model"
)

// keptRoom is a room with everything a backup keeps, and what it leaves out.
func keptRoom(t testing.TB) string {
	t.Helper()
	dir := newRoom(t)
	f := openRoom(t, dir, Options{Write: true})
	mustEnter(t, f, "2026-10-30T08:00:00Z", &model.Filled{Tank: "C1", Celsius: num(27)})
	mustEnter(t, f, "2026-11-02T08:00:00Z", &model.Noted{Text: "with an é"})
	if err := f.Close(); err != nil {
		t.Fatal(err)
	}
	for _, folder := range []string{"journal/quarantine", "cache"} {
		if err := os.MkdirAll(filepath.Join(dir, folder), 0o755); err != nil {
			t.Fatal(err)
		}
	}
	writeFile(t, "[[entry]]\nn = 9\n", dir, "journal", "quarantine", "2026-11-9-x.toml")
	writeFile(t, "x", dir, "cache", "x")
	return dir
}

// filesOf reads every file below a folder but for what no backup keeps.
func filesOf(t testing.TB, dir string) map[string]string {
	t.Helper()
	files := map[string]string{}
	err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		rel, _ := filepath.Rel(dir, path)
		if rel != lockFile && !strings.HasPrefix(rel, "cache") {
			files[filepath.ToSlash(rel)] = readFile(t, path)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

func sameRoom(t testing.TB, got, want map[string]string) {
	t.Helper()
	if len(got) != len(want) {
		t.Errorf("%d files; want %d", len(got), len(want))
	}
	for name, text := range want {
		if got[name] != text {
			t.Errorf("%s differs", name)
		}
	}
}

func TestABackupComesBackAsItWas(t *testing.T) {
	dir := keptRoom(t)
	file := filepath.Join(t.TempDir(), "room.zip")
	done, err := Backup(dir, file)
	if err != nil || done.Files != 5 || len(done.Problems) > 0 {
		t.Fatalf("Backup = %+v, %v; want 5 files and no problem", done, err)
	}
	want := filesOf(t, dir)
	empty := filepath.Join(t.TempDir(), "empty")
	if err := os.Mkdir(empty, 0o755); err != nil {
		t.Fatal(err)
	}
	for name, to := range map[string]string{"new": filepath.Join(t.TempDir(), "a", "b"), "empty": empty} {
		t.Run(name, func(t *testing.T) {
			again, err := Restore(file, to)
			if err != nil || len(again.Problems) > 0 || again.Files != done.Files || again.Bytes != done.Bytes {
				t.Fatalf("Restore = %+v, %v; want %+v", again, err, done)
			}
			sameRoom(t, filesOf(t, to), want)
			noProblems(t, to)
			if left, _ := filepath.Glob(filepath.Join(filepath.Dir(to), ".drainboard*")); len(left) > 0 {
				t.Errorf("left behind: %v", left)
			}
		})
	}
	if left, _ := filepath.Glob(filepath.Join(filepath.Dir(file), ".drainboard*")); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
}

func TestBackupsAndRoomsAreNotWrittenOver(t *testing.T) {
	dir := keptRoom(t)
	file := filepath.Join(t.TempDir(), "room.zip")
	writeFile(t, "mine", file)
	if _, err := Backup(dir, file); err == nil || !strings.Contains(err.Error(), "is there already") || readFile(t, file) != "mine" {
		t.Errorf("a file that is there: %v", err)
	}
	within := filepath.Join(dir, "journal", "room.zip")
	if _, err := Backup(dir, within); err == nil || !strings.Contains(err.Error(), "lies in the journal") {
		t.Errorf("within the journal: %v", err)
	}
	if _, err := Backup(t.TempDir(), filepath.Join(t.TempDir(), "x.zip")); !errors.Is(err, ErrNoRoom) {
		t.Errorf("no room: %v", err)
	}
	if _, err := Backup(dir, filepath.Join(t.TempDir(), "none", "x.zip")); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("no folder: %v", err)
	}
	good := filepath.Join(t.TempDir(), "good.zip")
	if _, err := Backup(dir, good); err != nil {
		t.Fatal(err)
	}
	before := filesOf(t, dir)
	if _, err := Restore(good, dir); err == nil || !strings.Contains(err.Error(), "is not empty") {
		t.Errorf("over a room: %v", err)
	}
	sameRoom(t, filesOf(t, dir), before)
	if _, err := Restore(filepath.Join(t.TempDir(), "none.zip"), filepath.Join(t.TempDir(), "x")); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("no backup: %v", err)
	}
}

// TestALinkInTheJournalIsNotFollowed: a backup of what lies elsewhere would come
// back as something else.
func TestALinkInTheJournalIsNotFollowed(t *testing.T) {
	dir := keptRoom(t)
	if err := os.Symlink(filepath.Join(dir, roomFile), filepath.Join(dir, "journal", "link.toml")); err != nil {
		t.Skip(err)
	}
	file := filepath.Join(t.TempDir(), "room.zip")
	if _, err := Backup(dir, file); err == nil || !strings.Contains(err.Error(), "is no plain file") {
		t.Errorf("Backup: %v", err)
	}
	if _, err := os.Stat(file); !errors.Is(err, fs.ErrNotExist) {
		t.Error("a file was left")
	}
}

// TestARoomThatIsNotWholeIsKeptAsItIs: before a repair is when a copy matters.
func TestARoomThatIsNotWholeIsKeptAsItIs(t *testing.T) {
	dir := keptRoom(t)
	path := filepath.Join(dir, "journal", "2026-11.toml")
	text := readFile(t, path)
	writeFile(t, text[:len(text)-5], path)
	file := filepath.Join(t.TempDir(), "room.zip")
	done, err := Backup(dir, file)
	if err != nil || len(done.Problems) != 1 {
		t.Fatalf("Backup = %+v, %v; want one problem", done, err)
	}
	to := filepath.Join(t.TempDir(), "again")
	again, err := Restore(file, to)
	if err != nil || len(again.Problems) != 1 || !strings.HasPrefix(again.Problems[0].File, to) {
		t.Fatalf("Restore = %+v, %v; want one problem in %s", again, err, to)
	}
	sameRoom(t, filesOf(t, to), filesOf(t, dir))
}

// TestADamagedBackupNeverPassesForAGoodOne flips bits and cuts the file: what
// comes back is the room as it was, or nothing at all.
func TestADamagedBackupNeverPassesForAGoodOne(t *testing.T) {
	dir := keptRoom(t)
	want := filesOf(t, dir)
	file := filepath.Join(t.TempDir(), "room.zip")
	if _, err := Backup(dir, file); err != nil {
		t.Fatal(err)
	}
	whole := readFile(t, file)
	step := 13
	if testing.Short() {
		step = 97
	}
	bad := filepath.Join(t.TempDir(), "bad.zip")
	refused := 0
	try := func(what, text string) {
		writeFile(t, text, bad)
		to := filepath.Join(t.TempDir(), "again")
		_, err := Restore(bad, to)
		if err != nil {
			refused++
			if _, there := os.Stat(to); !errors.Is(there, fs.ErrNotExist) {
				t.Fatalf("%s: refused (%v) and left behind", what, err)
			}
			return
		}
		sameRoom(t, filesOf(t, to), want)
	}
	for i := 0; i < len(whole); i += step {
		try(fmt.Sprintf("bit of byte %d", i), whole[:i]+string([]byte{whole[i] ^ 0x40})+whole[i+1:])
		try(fmt.Sprintf("cut at %d", i), whole[:i])
	}
	if refused < len(whole)/step {
		t.Errorf("only %d of %d damaged files were refused", refused, 2*len(whole)/step)
	}
}

// part is a file of a zip made by hand.
type part struct {
	name, text string
	mode       fs.FileMode
	unlisted   bool // without a line in the sums
}

// handMade writes a zip file with right sums for whatever it holds.
func handMade(t testing.TB, parts ...part) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), "made.zip")
	f, err := os.Create(file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	z := zip.NewWriter(f)
	add := func(p part) {
		h := &zip.FileHeader{Name: p.name, Method: zip.Deflate}
		if p.mode != 0 {
			h.SetMode(p.mode)
		}
		w, err := z.CreateHeader(h)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := w.Write([]byte(p.text)); err != nil {
			t.Fatal(err)
		}
	}
	sums := ""
	for _, p := range parts {
		add(p)
		if sum := sha256.Sum256([]byte(p.text)); !p.unlisted {
			sums += hex.EncodeToString(sum[:]) + "  " + p.name + "\n"
		}
	}
	add(part{name: sumsFile, text: sums})
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	return file
}

func TestBackupsMadeByHandAreRefused(t *testing.T) {
	room := part{name: roomFile, text: readFile(t, newRoom(t), roomFile)}
	cases := map[string]struct {
		parts []part
		want  string
	}{
		"up":             {[]part{room, {name: "../evil", text: "x"}}, "leads out of the room"},
		"up from within": {[]part{room, {name: "journal/../../evil", text: "x"}}, "leads out of the room"},
		"root":           {[]part{room, {name: "/tmp/evil", text: "x"}}, "leads out of the room"},
		"backslash":      {[]part{room, {name: `journal\..\..\evil`, text: "x"}}, "leads out of the room"},
		"drive":          {[]part{room, {name: "C:/evil", text: "x"}}, "leads out of the room"},
		"stream":         {[]part{room, {name: "journal/a:b", text: "x"}}, "leads out of the room"},
		"double slash":   {[]part{room, {name: "journal//a", text: "x"}}, "leads out of the room"},
		"lock":           {[]part{room, {name: "lock", text: "x"}}, "is no file of a room"},
		"other folder":   {[]part{room, {name: "bin/run", text: "x"}}, "is no file of a room"},
		"link":           {[]part{room, {name: "journal/l", text: "/etc/passwd", mode: fs.ModeSymlink | 0o777}}, "is no plain file"},
		"twice":          {[]part{room, room}, "stands there twice"},
		"unlisted":       {[]part{room, {name: "journal/2026-11.toml", text: "", unlisted: true}}, "has no line in SHA256SUMS"},
		"no room":        {[]part{{name: "journal/2026-11.toml", text: ""}}, "no room.toml"},
		"too large":      {[]part{room, {name: "journal/2026-11.toml", text: strings.Repeat("\n", 1<<20)}}, "larger than a room can be"},
		"too many":       {append([]part{room}, manyParts(40)...), "holds 42 files; a room has at most 40"},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			parent := t.TempDir()
			to := filepath.Join(parent, "room")
			_, err := restoreWithin(handMade(t, c.parts...), to, backupLimits{bytes: 64 << 10, files: 40})
			if err == nil || !strings.Contains(err.Error(), c.want) || strings.Contains(err.Error(), "\n") {
				t.Errorf("Restore: %v; want one line with %q", err, c.want)
			}
			if left, _ := os.ReadDir(parent); len(left) > 0 {
				t.Errorf("left behind: %v", left)
			}
		})
	}
}

func manyParts(n int) []part {
	parts := make([]part, n)
	for i := range parts {
		parts[i] = part{name: fmt.Sprintf("journal/%d.toml", i)}
	}
	return parts
}

func TestBackupsWithoutWholeSumsAreRefused(t *testing.T) {
	room := readFile(t, newRoom(t), roomFile)
	sum := sha256.Sum256([]byte(room))
	line := hex.EncodeToString(sum[:]) + "  " + roomFile + "\n"
	for name, c := range map[string]struct{ sums, want string }{
		"none":         {"", "holds no SHA256SUMS"},
		"other sum":    {strings.Repeat("0", 64) + "  room.toml\n", "does not match its sum"},
		"missing file": {line + strings.Repeat("0", 64) + "  journal/2026-11.toml\n", "journal/2026-11.toml is missing"},
		"no sum":       {line + "hello\n", `"hello" is no sum of a file`},
	} {
		t.Run(name, func(t *testing.T) {
			file := filepath.Join(t.TempDir(), "made.zip")
			f, err := os.Create(file)
			if err != nil {
				t.Fatal(err)
			}
			defer f.Close()
			z := zip.NewWriter(f)
			for name, text := range map[string]string{roomFile: room, sumsFile: c.sums} {
				if text == "" {
					continue
				}
				w, err := z.Create(name)
				if err != nil {
					t.Fatal(err)
				}
				if _, err := w.Write([]byte(text)); err != nil {
					t.Fatal(err)
				}
			}
			if err := z.Close(); err != nil {
				t.Fatal(err)
			}
			_, err = Restore(file, filepath.Join(t.TempDir(), "room"))
			if err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("Restore: %v; want %q", err, c.want)
			}
		})
	}
}

// TestABackupWhileTheRoomIsWritten: what is kept is a beginning of what was
// entered, and never half an entry.
func TestABackupWhileTheRoomIsWritten(t *testing.T) {
	dir := keptRoom(t)
	f := openRoom(t, dir, Options{Write: true})
	entered := make(chan error, 1)
	go func() {
		var err error
		for i := range 150 {
			if err == nil {
				err = enter(f, "2026-11-03T08:00:00Z", &model.Noted{Text: fmt.Sprintf("note %d", i)})
			}
		}
		entered <- err
	}()
	for i, writing := 0, true; i < 3 || writing; i++ {
		select {
		case err := <-entered:
			if err != nil {
				t.Fatal(err)
			}
			writing = false
		default:
		}
		file := filepath.Join(t.TempDir(), "room.zip")
		done, err := Backup(dir, file)
		if err != nil || len(done.Problems) > 0 {
			t.Fatalf("Backup = %+v, %v", done, err)
		}
	}
	if n := len(f.Ledger().Entries()); n != 152 {
		t.Errorf("%d entries; want 152", n)
	}
}
