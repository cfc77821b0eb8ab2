package main

import (
	"fmt"

	"drainboard/state"
	"drainboard/tui/text"

	"github.com/spf13/cobra"
)

// newBackup is the command that keeps the room in one file.
func newBackup(p *program) *cobra.Command {
	var ask asking
	c := &cobra.Command{
		Use: "backup FILE.zip", Short: "Keep the room in one zip file, read back before it counts",
		Long: "Keep room.toml, procedure.toml and the journal with its quarantine in a new zip file. It is read\n" +
			"back and verified before this says so. The room may be open meanwhile. Keep it on another device.",
		Args: oneWord("FILE.zip"),
		RunE: doing(func(args []string) error { return p.backup(args[0], ask) }),
	}
	ask.jsonFlag(c)
	return c
}

// archiveAnswer is what backup --json and restore --json answer.
type archiveAnswer struct {
	Dir   string `json:"dir"`
	File  string `json:"file"`
	Files int    `json:"files"`
	Bytes int64  `json:"bytes"`
}

func (p *program) backup(file string, ask asking) error {
	dir, err := p.folder()
	if err != nil {
		return err
	}
	done, err := state.Backup(dir, p.path(file))
	if err != nil {
		return fmt.Errorf("backup: %w; nothing was written", err)
	}
	if n := len(done.Problems); n > 0 {
		return fmt.Errorf("backup: %s holds the room as it is, but that is not whole: %s%s; drainboard verify lists what is wrong",
			file, done.Problems[0].Text, andMore(n-1))
	}
	if ask.json {
		return p.printJSON(archiveAnswer{dir, file, done.Files, done.Bytes})
	}
	return p.print(text.Clean(fmt.Sprintf("wrote %s: %s, %s bytes, read back and verified", file, plural(done.Files, "file"), text.Whole(int(done.Bytes)))) + "\n")
}

func andMore(n int) string {
	if n == 0 {
		return ""
	}
	return fmt.Sprintf(" (and %d more)", n)
}

// newRestore is the command that makes a room of a backup.
func newRestore(p *program) *cobra.Command {
	var ask asking
	c := &cobra.Command{
		Use: "restore FILE.zip DIR", Short: "Make a room of a backup, in a new folder",
		Long: "Make a room of what drainboard backup wrote, in a folder that is not there yet or is empty. Every\n" +
			"byte is held against its sum; nothing is written over, and a file that is not whole leaves nothing.",
		RunE: doing(func(args []string) error {
			if len(args) != 2 {
				return usagef("restore: name the file and a new folder; write drainboard restore FILE.zip DIR")
			}
			return p.restore(args[0], args[1], ask)
		}),
	}
	ask.jsonFlag(c)
	return c
}

func (p *program) restore(file, dir string, ask asking) error {
	done, err := state.Restore(p.path(file), p.path(dir))
	if err != nil {
		return fmt.Errorf("restore: %w; nothing was restored", err)
	}
	if n := len(done.Problems); n > 0 {
		return fmt.Errorf("restore: %s is as the backup has it, but that is not whole: %s%s; drainboard verify --room %s lists what is wrong",
			dir, done.Problems[0].Text, andMore(n-1), dir)
	}
	if ask.json {
		return p.printJSON(archiveAnswer{dir, file, done.Files, done.Bytes})
	}
	return p.print(text.Clean(fmt.Sprintf("restored %s: %s, %s bytes, verified", dir, plural(done.Files, "file"), text.Whole(int(done.Bytes)))) + "\n")
}
