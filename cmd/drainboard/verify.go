package main

import (
	"fmt"
	"strings"

	"drainboard/state"
	"drainboard/tui/text"

	"github.com/spf13/cobra"
)

// newVerify is the command that checks the room on disk.
func newVerify(p *program) *cobra.Command {
	var ask asking
	c := &cobra.Command{
		Use: "verify", Short: "Check room.toml and every entry; say what is wrong and where", Args: noWords,
		RunE: doing(func([]string) error { return p.verify(ask) }),
	}
	ask.jsonFlag(c)
	return c
}

// problemView is one problem in verify --json.
type problemView struct {
	File string `json:"file"`
	Line int    `json:"line"`
	Text string `json:"text"`
	Hint string `json:"hint"`
}

type verifiedAnswer struct {
	Entries  *int          `json:"entries"` // null where the room cannot be opened
	Problems []problemView `json:"problems"`
}

func (p *program) verify(ask asking) error {
	dir, err := p.folder()
	if err != nil {
		return err
	}
	problems, err := state.Verify(dir)
	if err != nil {
		return err
	}
	var entries *int
	if len(problems) == 0 {
		n, err := p.entryCount()
		if err != nil {
			return err
		}
		entries = &n
	}
	if err := p.saidVerified(entries, problems, ask.json); err != nil {
		return err
	}
	if n := len(problems); n > 0 {
		return fmt.Errorf("%s: %s found; put right what is listed; drainboard repair sets a torn or damaged end aside", dir, plural(n, "problem"))
	}
	return nil
}

// entryCount counts the entries of a room in which nothing is wrong.
func (p *program) entryCount() (n int, err error) {
	err = p.reading(func(f *state.Folder) error {
		n = len(f.Ledger().Entries())
		return nil
	})
	return n, err
}

func (p *program) saidVerified(entries *int, problems []state.Problem, asJSON bool) error {
	if asJSON {
		answer := verifiedAnswer{entries, []problemView{}}
		for _, x := range problems {
			answer.Problems = append(answer.Problems, problemView{x.File, x.Line, x.Text, x.Hint})
		}
		return p.printJSON(answer)
	}
	if len(problems) == 0 {
		return p.print(fmt.Sprintf("%s, chain whole\n", plural(*entries, "entry")))
	}
	var b strings.Builder
	for _, x := range problems {
		b.WriteString(text.Clean(x.Error()) + "\n")
	}
	return p.print(b.String())
}

// newRepair is the command that sets a torn or damaged tail aside.
func newRepair(p *program) *cobra.Command {
	var ask asking
	c := &cobra.Command{
		Use: "repair", Short: "Set a torn or damaged tail aside; never touch a good entry", Args: noWords,
		RunE: doing(func([]string) error { return p.repair(ask) }),
	}
	ask.jsonFlag(c)
	return c
}

// repairedAnswer is what repair --json answers.
type repairedAnswer struct {
	Changed bool     `json:"changed"`
	File    string   `json:"file"`
	Line    int      `json:"line"`
	N       int      `json:"n"` // of the first entry set aside
	Kept    []string `json:"kept"`
	Text    string   `json:"text"`
}

func (p *program) repair(ask asking) error {
	dir, err := p.folder()
	if err != nil {
		return err
	}
	done, err := state.Repair(dir, state.Options{Now: p.now})
	if err != nil {
		return fmt.Errorf("repair: %w", err)
	}
	if ask.json {
		return p.printJSON(repairedAnswer{done.Changed, done.File, done.Line, done.N, list(done.Kept), done.Text})
	}
	return p.print(text.Clean(done.Text) + "\n")
}
