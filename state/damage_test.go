package state

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"drainboard/model"
)

// kept makes a room with a journal of n entries and returns its folder, the name
// of its last journal file and the entries.
func kept(t testing.TB, n int) (dir, file string, entries []model.Entry) {
	t.Helper()
	dir = newRoom(t)
	entries = busyEntries(n)
	writeJournal(t, dir, entries)
	return dir, monthOf(entries[n-1].At) + ".toml", entries
}

// pieces are the entries of a journal file as texts, each with its sum line.
func pieces(t testing.TB, text string) []string {
	t.Helper()
	var list []string
	for _, p := range allPieces(text, 0, 1) {
		list = append(list, text[p.from:p.end])
	}
	return list
}

func journalOf(parts ...string) string { return strings.Join(parts, "\n") }

// isPrefix reports whether entries are the first of all.
func isPrefix(t testing.TB, entries, all []model.Entry) bool {
	t.Helper()
	if len(entries) > len(all) {
		return false
	}
	for i, e := range entries {
		if string(appendEntry(nil, e, time.UTC)) != string(appendEntry(nil, all[i], time.UTC)) {
			return false
		}
	}
	return true
}

// A power cut may end a write at any byte. Whatever is left of the last entry is
// set aside, and the room goes on.
func TestTornAtEveryByte(t *testing.T) {
	dir, file, entries := kept(t, 4)
	whole := readFile(t, dir, journalDir, file)
	last := strings.LastIndex(whole, entryHead)
	for cut := last + 1; cut < len(whole)-1; cut++ {
		text := whole[:cut]
		writeFile(t, text, dir, journalDir, file)

		reading, err := Open(dir, Options{})
		if err != nil {
			t.Fatalf("cut at %d: reading: %v", cut, err)
		}
		if n := len(reading.Ledger().Entries()); n != 3 || len(reading.Notices()) != 1 {
			t.Fatalf("cut at %d: reading: %d entries, notices %q; want 3 and one", cut, n, reading.Notices())
		}
		if readFile(t, dir, journalDir, file) != text {
			t.Fatalf("cut at %d: reading changed the journal", cut)
		}

		f, err := Open(dir, Options{Write: true, Now: func() time.Time { return later }})
		if err != nil {
			t.Fatalf("cut at %d: %v", cut, err)
		}
		aside := filepath.Join(dir, journalDir, quarantineDir, "2024-01-4-20270601T000000Z.toml")
		notice := strings.Join(f.Notices(), "\n")
		for _, want := range []string{file + ":30: ", "entry 4", aside} {
			if !strings.Contains(notice, want) {
				t.Fatalf("cut at %d: notice %q does not name %q", cut, notice, want)
			}
		}
		if got := readFile(t, aside); got != whole[last:cut] {
			t.Fatalf("cut at %d: %q was set aside; want %q", cut, got, whole[last:cut])
		}
		if err := f.Append(entries[3]); err != nil {
			t.Fatalf("cut at %d: %v", cut, err)
		}
		if got := readFile(t, dir, journalDir, file); got != whole {
			t.Fatalf("cut at %d: the journal goes on as\n%s", cut, got)
		}
		f.Close()
		noProblems(t, dir)
		if err := os.RemoveAll(filepath.Join(dir, journalDir, quarantineDir)); err != nil {
			t.Fatal(err)
		}
	}
}

func noProblems(t testing.TB, dir string) {
	t.Helper()
	problems, err := Verify(dir)
	if err != nil || len(problems) > 0 {
		t.Fatalf("verify: %v %v", problems, err)
	}
}

func TestALastEntryThatLacksItsLineBreakIsGood(t *testing.T) {
	dir, file, entries := kept(t, 3)
	writeFile(t, strings.TrimSuffix(readFile(t, dir, journalDir, file), "\n"), dir, journalDir, file)
	f := openRoom(t, dir, Options{Write: true})
	if len(f.Notices()) > 0 || len(f.Ledger().Entries()) != 3 {
		t.Fatalf("%d entries, notices %q; want 3 and none", len(f.Ledger().Entries()), f.Notices())
	}
	if err := f.Append(busyEntries(4)[3]); err != nil {
		t.Fatal(err)
	}
	f.Close()
	noProblems(t, dir)
	if got := openRoom(t, dir, Options{}).Ledger().Entries(); !isPrefix(t, entries, got) || len(got) != 4 {
		t.Errorf("%d entries; want the 3 and the new one", len(got))
	}
}

// After a power cut a file may have grown without what was to stand in it.
func TestATailOfNoughtsIsTorn(t *testing.T) {
	dir, file, _ := kept(t, 3)
	whole := readFile(t, dir, journalDir, file)
	for name, tail := range map[string]string{
		"noughts alone":   strings.Repeat("\x00", 300),
		"behind a part":   "\n[[entry]]\nn = 4\nat = 20" + strings.Repeat("\x00", 300),
		"behind one byte": "\n[" + strings.Repeat("\x00", 4000),
		"a new file":      "",
	} {
		t.Run(name, func(t *testing.T) {
			writeFile(t, whole+tail, dir, journalDir, file)
			if tail == "" {
				writeFile(t, strings.Repeat("\x00", 300), dir, journalDir, "2024-02.toml")
			}
			f := openRoom(t, dir, Options{Write: true})
			if n := len(f.Ledger().Entries()); n != 3 || len(f.Notices()) != 1 {
				t.Errorf("%d entries, notices %q; want 3 and one", n, f.Notices())
			}
			f.Close()
			noProblems(t, dir)
		})
	}
}

// What was changed as a whole is no unfinished write, however little of it can be
// read.
func TestAFileChangedAsAWholeIsNoTornTail(t *testing.T) {
	dir, file, _ := kept(t, 600)
	whole := readFile(t, dir, journalDir, file)
	one := pieces(t, whole)[0]
	for name, text := range map[string]string{
		"other line ends":               strings.ReplaceAll(whole, "\n", "\r\n"),
		"other line ends, of one entry": strings.ReplaceAll(one, "\n", "\r\n"),
		"all noughts":                   strings.Repeat("\x00", len(whole)),
		"two bytes a letter":            strings.Join(strings.Split(one, ""), "\x00"),
		"another file":                  "version = 1\n",
		"indented":                      "  " + strings.ReplaceAll(one, "\n", "\n  "),
		"space behind the sum":          strings.TrimSuffix(one, "\n") + " \n",
	} {
		t.Run(name, func(t *testing.T) {
			writeFile(t, text, dir, journalDir, file)
			if _, err := Open(dir, Options{Write: true}); err == nil {
				t.Error("it was set aside as unfinished")
			}
		})
	}
}

// Whatever single byte of a journal changes, the room opens with a beginning of
// what was kept, or is refused by file and line; never with anything else.
func TestEveryByteFlipped(t *testing.T) {
	dir, file, entries := kept(t, 5)
	// A short room.toml: it is read anew for each byte.
	writeFile(t, "version = 1\n[[tank]]\nname = \"C1\"\nlitres = 120\n[[tank]]\nname = \"C2\"\nlitres = 120\n", dir, roomFile)
	if err := os.Remove(filepath.Join(dir, procedureFile)); err != nil {
		t.Fatal(err)
	}
	whole := readFile(t, dir, journalDir, file)
	lines := strings.Count(whole, "\n")
	prefixes, refusals := 0, 0
	for i := range len(whole) {
		for _, other := range []byte{whole[i] ^ 1, '\n', 0} {
			if other == whole[i] {
				continue
			}
			text := whole[:i] + string([]byte{other}) + whole[i+1:]
			writeFile(t, text, dir, journalDir, file)
			f, err := Open(dir, Options{})
			if err == nil {
				prefixes++
				if got := f.Ledger().Entries(); !isPrefix(t, got, entries) {
					t.Fatalf("byte %d as %q: %v; want a beginning of what was kept", i, other, got)
				}
				if n := len(f.Ledger().Entries()); n != 4 && n != 5 {
					t.Fatalf("byte %d as %q: only %d entries; the first 4 are whole", i, other, n)
				}
				continue
			}
			refusals++
			refused, ok := errors.AsType[*RefusedError](err)
			if !ok || refused.File != filepath.Join(dir, journalDir, file) || refused.Line < 1 || refused.Line > lines || strings.Contains(err.Error(), "\n") {
				t.Fatalf("byte %d as %q: %v; want one line with file and line", i, other, err)
			}
		}
	}
	if prefixes == 0 || refusals == 0 {
		t.Errorf("%d openings, %d refusals; want some of each", prefixes, refusals)
	}
}

func TestDamageIsNamed(t *testing.T) {
	dir, file, _ := kept(t, 6)
	whole := readFile(t, dir, journalDir, file)
	p := pieces(t, whole)
	edited := strings.Replace(p[1], "9000", "8000", 1)
	noSum := strings.Replace(p[1], "sum = ", "som = ", 1)
	lastEdited := strings.Replace(p[5], `"iso"`, `"oso"`, 1)
	if lastEdited == p[5] {
		lastEdited = strings.Replace(p[5], "C1", "C2", 1)
	}
	cases := map[string]struct {
		text   string
		line   int
		want   string
		repair bool // may repair set it aside?
	}{
		"edited in the middle":      {journalOf(p[0], edited, p[2], p[3], p[4], p[5]), 10, "entry 2 does not match its sum", false},
		"edited, one behind it":     {journalOf(p[0], p[1], p[2], p[3], strings.Replace(p[4], "501.5", "502.5", 1), p[5]), 39, "entry 5 does not match its sum", false},
		"edited at the end":         {journalOf(p[0], p[1], p[2], p[3], p[4], lastEdited), 48, "entry 6 does not match its sum", true},
		"sum of the last changed":   {journalOf(p[0], p[1], p[2], p[3], p[4], flipSum(p[5])), 48, "entry 6 does not match its sum", true},
		"sum changed, one behind":   {journalOf(p[0], p[1], p[2], p[3], flipSum(p[4]), p[5]), 39, "entry 5 does not match its sum", false},
		"sum line lost":             {journalOf(p[0], noSum, p[2], p[3], p[4], p[5]), 10, "entry 2 does not end in a whole sum line", false},
		"sum line lost, one behind": {journalOf(p[0], p[1], p[2], p[3], strings.Replace(p[4], "sum = ", "som = ", 1), p[5]), 39, "entry 5 does not end in a whole sum line", false},
		"first lost":                {journalOf(p[1:]...), 1, "entry 2 stands where entry 1 is expected; entry 1 is missing", false},
		"one lost":                  {journalOf(p[0], p[1], p[3], p[4], p[5]), 21, "entry 4 stands where entry 3 is expected; entry 3 is missing", false},
		"two lost":                  {journalOf(p[0], p[1], p[4], p[5]), 21, "entry 5 stands where entry 3 is expected; entries 3 to 4 are missing", false},
		"last but one lost":         {journalOf(p[0], p[1], p[2], p[3], p[5]), 39, "entry 6 stands where entry 5 is expected", true},
		"swapped":                   {journalOf(p[0], p[2], p[1], p[3], p[4], p[5]), 10, "entry 3 stands where entry 2 is expected", false},
		"swapped at the end":        {journalOf(p[0], p[1], p[2], p[3], p[5], p[4]), 39, "entry 6 stands where entry 5 is expected", false},
		"twice":                     {journalOf(p[0], p[1], p[1], p[2], p[3], p[4], p[5]), 21, "entry 2 stands where entry 3 is expected; it is there twice", false},
		"last twice":                {journalOf(p[0], p[1], p[2], p[3], p[4], p[5], p[5]), 57, "entry 6 stands where entry 7 is expected; it is there twice", true},
		"remark between":            {journalOf(p[0], "# checked by MB\n", p[1], p[2], p[3], p[4], p[5]), 10, "this is no entry; entry 2 is expected", false},
		"remark in front":           {"# journal\n" + whole, 1, "this is no entry; entry 1 is expected", false},
		"byte order mark":           {"\ufeff" + whole, 1, "this is no entry", false},
		"space between":             {journalOf(p[0], " \n", p[1], p[2], p[3], p[4], p[5]), 10, "this is no entry", false},
		"other line ends":           {strings.ReplaceAll(whole, "\n", "\r\n"), 1, "this is no entry", true},
		"one other line end":        {strings.Replace(whole, "kind = \"stocked\"\n", "kind = \"stocked\"\r\n", 1), 10, "entry 2 has line ends of another kind", false},
		"part left out":             {whole[:200] + whole[260:], 10, "entry 2 does not match its sum", false},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			writeFile(t, c.text, dir, journalDir, file)
			for _, o := range []Options{{}, {Write: true}, {Write: true, FallBack: true}} {
				_, err := Open(dir, o)
				if err == nil {
					t.Fatal("it was taken")
				}
				where := fmt.Sprintf("%s:%d: ", filepath.Join(dir, journalDir, file), c.line)
				if !strings.HasPrefix(err.Error(), where+c.want) || strings.Contains(err.Error(), "\n") {
					t.Errorf("refusal: %v\nwant     %s%s", err, where, c.want)
				}
				hint := "good entries follow, so nothing was changed; restore the journal from a backup"
				if c.repair {
					hint = "drainboard repair"
				}
				if !strings.Contains(err.Error(), hint) {
					t.Errorf("refusal: %v\nwant the hint %q", err, hint)
				}
			}
			problems, err := Verify(dir)
			if err != nil || len(problems) == 0 || problems[0].Line != c.line || !strings.HasPrefix(problems[0].Text, c.want) {
				t.Errorf("verify: %v %v; want line %d: %s", problems, err, c.line, c.want)
			}
			if readFile(t, dir, journalDir, file) != c.text {
				t.Error("the journal was changed")
			}
			_, err = Repair(dir, Options{})
			if (err == nil) != c.repair {
				t.Errorf("repair: %v; want it done: %v", err, c.repair)
			}
			if !c.repair && readFile(t, dir, journalDir, file) != c.text {
				t.Error("repair refused and changed the journal")
			}
		})
	}
}

// flipSum changes the last digit of an entry's sum.
func flipSum(text string) string {
	i := strings.LastIndexByte(text, '"') - 1
	digit := byte('0')
	if text[i] == '0' {
		digit = '1'
	}
	return text[:i] + string(digit) + text[i+1:]
}

// threeMonths makes a journal of three files.
func threeMonths(t testing.TB) (dir string, entries []model.Entry) {
	t.Helper()
	dir = newRoom(t)
	entries = busyEntries(9)
	for i := range entries {
		entries[i].At = entries[i].At.AddDate(0, i/3, 0)
	}
	writeJournal(t, dir, entries)
	return dir, entries
}

func TestAMissingMonthIsNamed(t *testing.T) {
	for file, c := range map[string]struct {
		in   string
		want string
	}{
		"2024-01.toml": {"2024-02.toml", "entry 4 stands where entry 1 is expected; entries 1 to 3 are missing"},
		"2024-02.toml": {"2024-03.toml", "entry 7 stands where entry 4 is expected; entries 4 to 6 are missing"},
	} {
		t.Run(file, func(t *testing.T) {
			dir, _ := threeMonths(t)
			if err := os.Remove(filepath.Join(dir, journalDir, file)); err != nil {
				t.Fatal(err)
			}
			_, err := Open(dir, Options{Write: true})
			if err == nil || !strings.Contains(err.Error(), c.in+":1: "+c.want) {
				t.Errorf("refusal = %v; want %s", err, c.want)
			}
			if _, err := Repair(dir, Options{}); err == nil {
				t.Error("repair set good entries aside")
			}
		})
	}
}

func TestFilesRenamedOutOfOrderAreNamed(t *testing.T) {
	dir, _ := threeMonths(t)
	for _, names := range [][2]string{{"2024-01", "x"}, {"2024-02", "2024-01"}, {"x", "2024-02"}} {
		if err := os.Rename(filepath.Join(dir, journalDir, names[0]+".toml"), filepath.Join(dir, journalDir, names[1]+".toml")); err != nil {
			t.Fatal(err)
		}
	}
	if _, err := Open(dir, Options{}); err == nil || !strings.Contains(err.Error(), "2024-01.toml:1: entry 4 stands where entry 1 is expected") {
		t.Errorf("refusal = %v", err)
	}
}

// A tail may reach over several files; a file that only ends badly while the
// chain goes on in the next is no tail.
func TestTailsOverSeveralFiles(t *testing.T) {
	t.Run("torn before a month that goes on", func(t *testing.T) {
		dir, _ := threeMonths(t)
		writeFile(t, readFile(t, dir, journalDir, "2024-02.toml")+"\n[[entry]]\nn = 7\n", dir, journalDir, "2024-02.toml")
		_, err := Open(dir, Options{Write: true})
		if err == nil || !strings.Contains(err.Error(), "2024-02.toml:28: entry 7 does not end in a whole sum line; good entries follow") {
			t.Errorf("refusal = %v", err)
		}
	})
	t.Run("damaged to the end", func(t *testing.T) {
		dir, entries := threeMonths(t)
		damaged := strings.NewReplacer("n = 6", "n = 66", "n = 7", "n = 77", "n = 8", "n = 88", "n = 9", "n = 99")
		var texts []string
		for _, file := range []string{"2024-02.toml", "2024-03.toml"} {
			texts = append(texts, damaged.Replace(readFile(t, dir, journalDir, file)))
			writeFile(t, texts[len(texts)-1], dir, journalDir, file)
		}
		done, err := Repair(dir, Options{Now: func() time.Time { return later }})
		if err != nil {
			t.Fatal(err)
		}
		if !done.Changed || done.N != 6 || len(done.Kept) != 2 {
			t.Errorf("repair did %+v; want two files set aside from entry 6 on", done)
		}
		if got := readFile(t, done.Kept[0]); !strings.HasSuffix(texts[0], got) || !strings.HasPrefix(got, "[[entry]]\nn = 66\n") {
			t.Errorf("set aside:\n%s", got)
		}
		if got := readFile(t, done.Kept[1]); got != texts[1] {
			t.Errorf("set aside:\n%s\nwant:\n%s", got, texts[1])
		}
		noProblems(t, dir)
		f := openRoom(t, dir, Options{Write: true})
		if err := f.Append(entries[5]); err != nil {
			t.Error(err)
		}
		f.Close()
		noProblems(t, dir)
	})
}

func TestARepairOfAWholeJournalDoesNothing(t *testing.T) {
	dir, file, _ := kept(t, 4)
	before := readFile(t, dir, journalDir, file)
	done, err := Repair(dir, Options{})
	if err != nil || done.Changed || !strings.Contains(done.Text, "4 entries, chain whole") {
		t.Errorf("repair: %+v %v; want nothing done", done, err)
	}
	if readFile(t, dir, journalDir, file) != before {
		t.Error("the journal was changed")
	}
}

// An entry another program wrote, its sum in order, is never set aside.
func TestAnEntryOfALaterVersionIsRefusedAndKept(t *testing.T) {
	dir, file, _ := kept(t, 3)
	text := readFile(t, dir, journalDir, file)
	all := allPieces(text, 0, 1)
	newer := "[[entry]]\nn = 4\nat = 2024-01-06T09:00:00-05:00\nkind = \"fed\"\ntank = \"C1\"\nlitres = { iso = 0.1 }\nflow = 3\n"
	writeFile(t, text+"\n"+newer+sumHead+sumOf(all[2].sum, newer)+"\"\n", dir, journalDir, file)
	for name, err := range map[string]error{
		"open":   func() error { _, err := Open(dir, Options{Write: true}); return err }(),
		"repair": func() error { _, err := Repair(dir, Options{}); return err }(),
	} {
		if err == nil || !strings.Contains(err.Error(), file+":36: entry 4: flow: fed has no such field") || !strings.Contains(err.Error(), "later version") {
			t.Errorf("%s: %v", name, err)
		}
	}
	if problems, err := Verify(dir); err != nil || len(problems) != 1 || problems[0].Line != 36 {
		t.Errorf("verify: %v %v; want the one on line 36", problems, err)
	}
}

// What the journal names must stay in room.toml.
func TestAnEntryTheRoomCannotHoldIsNamed(t *testing.T) {
	dir, file, _ := kept(t, 5)
	room := readFile(t, dir, roomFile)
	writeFile(t, strings.Replace(room, `name = "C2"`, `name = "D2"`, 1), dir, roomFile)
	want := file + `:21: entry 3 (filled): tank: "C2" is not a tank of this room`
	if _, err := Open(dir, Options{}); err == nil || !strings.Contains(err.Error(), want) || !strings.Contains(err.Error(), "room.toml changed") {
		t.Errorf("refusal = %v; want %s", err, want)
	}
	if problems, err := Verify(dir); err != nil || len(problems) != 1 || !strings.Contains(problems[0].Error(), want) {
		t.Errorf("verify: %v %v", problems, err)
	}
}

func TestVerifyListsEverything(t *testing.T) {
	dir, file, _ := kept(t, 6)
	p := pieces(t, readFile(t, dir, journalDir, file))
	text := journalOf(p[0], strings.Replace(p[1], "9000", "8000", 1), p[2], p[3], strings.Replace(p[4], "501.5", "502.5", 1), p[5], "[[entry]]\nn = 7")
	writeFile(t, text, dir, journalDir, file)
	writeFile(t, p[0], dir, journalDir, "2024-01 (copy).toml")
	writeFile(t, strings.Replace(readFile(t, dir, roomFile), "crew = 2", "crew = 3", 1), dir, roomFile)
	writeFile(t, strings.Replace(readFile(t, dir, procedureFile), `lane = "session"`, `lane = "kitchen"`, 1), dir, procedureFile)
	problems, err := Verify(dir)
	if err != nil {
		t.Fatal(err)
	}
	wants := []string{
		"room.toml:", "procedure.toml:", file + ":10: entry 2", file + ":39: entry 5", file + ":57: entry 7 does not end", "2024-01 (copy).toml: is not named as a journal file",
	}
	if len(problems) != len(wants) {
		t.Fatalf("%d problems: %v; want %d", len(problems), problems, len(wants))
	}
	for i, want := range wants {
		if !strings.Contains(problems[i].Error(), want) {
			t.Errorf("problem %d: %v; want %s", i+1, problems[i], want)
		}
	}
}

func TestAFolderWithoutARoom(t *testing.T) {
	dir := t.TempDir()
	_, opening := Open(dir, Options{Write: true})
	_, verifying := Verify(dir)
	_, repairing := Repair(dir, Options{})
	for name, err := range map[string]error{"open": opening, "verify": verifying, "repair": repairing} {
		if !errors.Is(err, ErrNoRoom) || !strings.Contains(err.Error(), "drainboard init") {
			t.Errorf("%s: %v; want ErrNoRoom and what to do", name, err)
		}
	}
	if files, _ := os.ReadDir(dir); len(files) > 0 {
		t.Errorf("the folder holds %v; want nothing", files)
	}
}

func TestAFileIsNoRoom(t *testing.T) {
	file := filepath.Join(newRoom(t), roomFile)
	if _, err := Open(file, Options{}); err == nil || !strings.Contains(err.Error(), "room.toml is no folder") {
		t.Errorf("open = %v; want it said that it is no folder", err)
	}
}

func TestAJournalThatLeadsElsewhereIsRefused(t *testing.T) {
	t.Run("file", func(t *testing.T) {
		dir, file, _ := kept(t, 3)
		path := filepath.Join(dir, journalDir, file)
		if err := os.Rename(path, filepath.Join(dir, "elsewhere")); err != nil {
			t.Fatal(err)
		}
		if err := os.Symlink(filepath.Join(dir, "elsewhere"), path); err != nil {
			t.Skip(err)
		}
		if _, err := Open(dir, Options{}); err == nil || !strings.Contains(err.Error(), file+": is no plain file") {
			t.Errorf("refusal = %v", err)
		}
	})
	t.Run("quarantine", func(t *testing.T) {
		dir, file, _ := kept(t, 3)
		if err := os.Symlink(t.TempDir(), filepath.Join(dir, journalDir, quarantineDir)); err != nil {
			t.Skip(err)
		}
		text := readFile(t, dir, journalDir, file) + "\n[[entry]]\n"
		writeFile(t, text, dir, journalDir, file)
		if _, err := Open(dir, Options{Write: true}); err == nil || !strings.Contains(err.Error(), "quarantine: is no folder") {
			t.Errorf("refusal = %v", err)
		}
		if readFile(t, dir, journalDir, file) != text {
			t.Error("what could not be kept was cut off")
		}
	})
	t.Run("folder", func(t *testing.T) {
		dir, _, _ := kept(t, 3)
		path := filepath.Join(dir, journalDir)
		if err := os.Rename(path, path+"2"); err != nil {
			t.Fatal(err)
		}
		if err := os.Symlink(path+"2", path); err != nil {
			t.Skip(err)
		}
		if _, err := Open(dir, Options{}); err == nil || !strings.Contains(err.Error(), "journal: is no folder") {
			t.Errorf("refusal = %v", err)
		}
	})
}
