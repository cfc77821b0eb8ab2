package main

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strings"
	"testing"
)

// The arrows of the house: cmd -> tui -> model, cmd -> state -> model. The
// screens and the disk never meet, and the model knows neither.
func TestImportArrows(t *testing.T) {
	root := filepath.Join("..", "..")
	seen := 0
	for _, top := range []string{"cmd", "tui", "model", "state"} {
		err := filepath.WalkDir(filepath.Join(root, top), func(path string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
				return err
			}
			if strings.HasSuffix(filepath.Base(filepath.Dir(path)), "test") {
				return nil // only tests import it
			}
			f, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ImportsOnly)
			if err != nil {
				return err
			}
			for _, spec := range f.Imports {
				seen++
				imported := strings.Trim(spec.Path.Value, `"`)
				if terminal := filepath.Join(root, "tui", "keys"); imported == "os" && filepath.Dir(path) == terminal {
					continue // it reads the terminal, which is a file by name only
				}
				if why := crossed(top, imported); why != "" {
					t.Errorf("%s imports %s: %s", path, imported, why)
				}
			}
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	if seen == 0 {
		t.Fatal("no import was looked at")
	}
}

// crossed says which arrow an import runs against.
func crossed(top, imported string) string {
	within := func(folder string) bool {
		return imported == "drainboard/"+folder || strings.HasPrefix(imported, "drainboard/"+folder+"/")
	}
	switch {
	case top != "cmd" && within("cmd"):
		return "nothing imports cmd"
	case top == "model" && (within("tui") || within("state")):
		return "model knows no disk and no screen"
	case top == "model" && strings.Contains(imported, ".") && !strings.HasPrefix(imported, "gonum.org/"):
		return "model imports the standard library and gonum only"
	case top == "model" && (imported == "os" || imported == "io/fs" || imported == "log"):
		return "model knows no disk"
	case top == "state" && within("tui"), top == "tui" && within("state"):
		return "screens and disk never meet"
	case top == "state" && strings.Contains(imported, "charmbracelet"):
		return "the disk draws nothing"
	case top == "tui" && (imported == "os" || imported == "io/fs"):
		return "screens touch no disk; cmd hands them what they need"
	}
	return ""
}

func TestCrossedArrowsAreFound(t *testing.T) {
	for _, c := range [][2]string{
		{"model", "os"},
		{"model", "github.com/x/y"},
		{"model", "drainboard/tui/text"},
		{"tui", "drainboard/state"},
		{"state", "drainboard/tui"},
		{"state", "drainboard/cmd/drainboard"},
	} {
		if crossed(c[0], c[1]) == "" {
			t.Errorf("%s may import %s; it must not", c[0], c[1])
		}
	}
	for _, c := range [][2]string{{"model", "gonum.org/v1/gonum/stat"}, {"cmd", "drainboard/state"}, {"tui", "drainboard/model"}} {
		if why := crossed(c[0], c[1]); why != "" {
			t.Errorf("%s must be free to import %s: %s", c[0], c[1], why)
		}
	}
}
