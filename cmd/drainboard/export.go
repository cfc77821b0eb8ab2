package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"drainboard/model"
	"drainboard/state"

	"github.com/spf13/cobra"
)

// The files of an export beside those of the kinds.
const (
	allEntriesFile = "entries.csv"
	roomJSONFile   = "room.json"
)

// newExport is the command that writes the room as CSV and JSON.
func newExport(p *program) *cobra.Command {
	var ask asking
	c := &cobra.Command{
		Use: "export DIR", Short: "CSV, one file per kind, and room.json",
		Long: "Write every entry as CSV, one file a kind with a column a field, all of them in entries.csv in\n" +
			"the order of their numbers, and room.json: the room's rules, defaults among them. No file is\n" +
			"written over. drainboard import entries.csv takes all of it into an empty room again, numbers\n" +
			"and corrections too. A text that a spreadsheet would run begins with a ' that import takes off.\n" +
			"The column amended says what was corrected since, and by which entry.",
		Args: oneWord("DIR"),
		RunE: doing(func(args []string) error { return p.export(args[0], ask) }),
	}
	ask.jsonFlag(c)
	return c
}

// exportedAnswer is what export --json answers.
type exportedAnswer struct {
	Dir     string   `json:"dir"`
	Files   []string `json:"files"`
	Entries int      `json:"entries"`
}

// exported is one file of an export.
type exported struct {
	name string
	text []byte
}

func (p *program) export(dir string, ask asking) error {
	return p.reading(func(f *state.Folder) error {
		files, err := exportOf(f.Ledger())
		if err != nil {
			return fmt.Errorf("export: %w", err)
		}
		if err := writeExport(p.path(dir), files); err != nil {
			return fmt.Errorf("export %s: %w", dir, err)
		}
		n := len(f.Ledger().Entries())
		if ask.json {
			return p.printJSON(exportedAnswer{dir, mapped(files, func(f exported) string { return f.name }), n})
		}
		return p.print(fmt.Sprintf("wrote %s with %s to %s\n", plural(len(files), "file"), plural(n, "entry"), dir))
	})
}

// exportOf is everything an export writes: a file for each kind there is.
func exportOf(l *model.Ledger) ([]exported, error) {
	all, err := entriesCSV(l, "")
	if err != nil {
		return nil, err
	}
	files := []exported{{allEntriesFile, all}}
	room := roomOf(l)
	for _, kind := range model.Kinds() {
		if room.Entries[string(kind)] == 0 {
			continue
		}
		text, err := entriesCSV(l, kind)
		if err != nil {
			return nil, err
		}
		files = append(files, exported{string(kind) + ".csv", text})
	}
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(room); err != nil {
		return nil, err
	}
	return append(files, exported{roomJSONFile, []byte(escapeControls(b.String()))}), nil
}

// writeExport writes files into a folder, all or none; one that is there already
// is refused and named.
func writeExport(dir string, files []exported) error {
	var there []string
	for _, f := range files {
		if _, err := os.Lstat(filepath.Join(dir, f.name)); !errors.Is(err, fs.ErrNotExist) {
			if err != nil {
				return plainly(err)
			}
			there = append(there, f.name)
		}
	}
	if len(there) > 0 {
		return fmt.Errorf("%s there already; name an empty folder, or move them away; nothing was written", areThere(there))
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return plainly(err)
	}
	for i, f := range files {
		if err := createFile(filepath.Join(dir, f.name), f.text); err != nil {
			for _, done := range files[:i] {
				_ = os.Remove(filepath.Join(dir, done.name))
			}
			return fmt.Errorf("%s: %w; nothing was written", f.name, err)
		}
	}
	return nil
}

func areThere(names []string) string {
	const most = 5
	words := strings.Join(names[:min(len(names), most)], ", ")
	switch {
	case len(names) == 1:
		return words + " is"
	case len(names) > most:
		return fmt.Sprintf("%s and %d more are", words, len(names)-most)
	}
	return words + " are"
}

// createFile writes a file that must not be there yet; one that cannot be written
// whole does not stay.
func createFile(path string, text []byte) error {
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return plainly(err)
	}
	_, err = f.Write(text)
	if closing := f.Close(); err == nil {
		err = closing
	}
	if err != nil {
		_ = os.Remove(path)
	}
	return plainly(err)
}
