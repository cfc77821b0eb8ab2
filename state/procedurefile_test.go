package state

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"drainboard/model"
)

func TestAProcedureIsReadAsItIsWritten(t *testing.T) {
	got, problems := decodeProcedure("procedure.toml", writeProcedure(model.DefaultProcedure()))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	if diff := cmp.Diff(model.DefaultProcedure(), got); diff != "" {
		t.Errorf("procedure differs (-written +read):\n%s", diff)
	}
}

func TestProceduresThatAreRefusedByLine(t *testing.T) {
	whole := writeProcedure(model.DefaultProcedure())
	cases := map[string]struct{ old, put, key, want string }{
		"unknown key":   {"lane = \"session\"\n", "lane = \"session\"\ncolour = 3\n", "colour", "step[1].colour: is not known here; known are"},
		"misspelt key":  {"lane = \"session\"\n", "lane = \"session\"\nchioces = [\"x\"]\n", "chioces", "step[1].chioces: is not known here; did you mean choices?"},
		"unknown lane":  {"lane = \"wash\"", "lane = \"kitchen\"", "lane = \"kitchen\"", `step[16].lane: "kitchen" is not one of`},
		"long text":     {"Put the lid on {to}", "Put the lid on {to} and then go and rest now", "Put the lid", "step[15].text: has 11 words; at most nine"},
		"least as text": {"least = 75", "least = \"75\"", "least = \"75\"", "step[7].least: a number is expected"},
		"choice of one": {`["swimming", "on the bottom"]`, `["swimming"]`, "[\"swimming\"]", "step[12].choices: 1 given"},
		"choice of 1":   {`["swimming", "on the bottom"]`, `["swimming", 1]`, "[\"swimming\", 1]", "step[12].choices: text in quotes is expected, not the number 1"},
		"choices, text": {`["swimming", "on the bottom"]`, `"swimming"`, "choices = \"swimming\"", "step[12].choices: a list of texts is expected"},
		"critical as 1": {"critical = true", "critical = 1", "critical = 1", "step[3].critical: true or false is expected, not the number 1"},
		"stray table":   {"[[step]]", "[[stop]]", "[[stop]]", "stop: is not known here; did you mean step?"},
		"no TOML":       {"lane = \"move\"", "lane = move", "lane = move", "not TOML"},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			text := strings.Replace(whole, c.old, c.put, 1)
			_, problems := decodeProcedure("procedure.toml", text)
			line := strings.Count(text[:strings.Index(text, c.key)], "\n") + 1
			for _, p := range problems {
				if p.Line == line && strings.Contains(p.Text, c.want) {
					return
				}
			}
			t.Errorf("refusals %v; want line %d: %s", problems, line, c.want)
		})
	}
}

// A room without the file has the default steps; one with it has its own.
func TestAProcedureOfTheRoomsOwn(t *testing.T) {
	dir := newRoom(t)
	text := strings.Replace(readFile(t, dir, procedureFile), "Put the lid on {to}", "Cover {to}", 1)
	writeFile(t, text, dir, procedureFile)
	lid, ok := openRoom(t, dir, Options{}).Room().Procedure.Step("lid")
	if !ok || lid.Text != "Cover {to}" {
		t.Errorf("lid = %+v; want the room's own wording", lid)
	}
	writeFile(t, "[[step]]\nname = \"x\"\n", dir, procedureFile)
	if _, err := Open(dir, Options{}); err == nil || !strings.Contains(err.Error(), "procedure.toml:1: step[1].lane: is missing") {
		t.Errorf("refusal = %v", err)
	}
}

func FuzzProcedure(f *testing.F) {
	f.Add(writeProcedure(model.DefaultProcedure()))
	f.Add("[[step]]\nname = \"x\"\nlane = \"move\"\nask = \"choice\"\ntext = \"y\"\nchoices = [\"a\", \"b\"]\n")
	f.Fuzz(func(t *testing.T, text string) {
		procedure, problems := decodeProcedure("procedure.toml", text)
		for _, p := range problems {
			if p.Line < 1 || strings.ContainsAny(p.Text, "\n\r") {
				t.Errorf("refusal %q on line %d", p.Text, p.Line)
			}
		}
		if len(problems) > 0 {
			return
		}
		again, problems := decodeProcedure("procedure.toml", writeProcedure(procedure))
		if len(problems) > 0 || !cmp.Equal(procedure, again) {
			t.Errorf("written again it reads otherwise: %v\n%s", problems, cmp.Diff(procedure, again))
		}
	})
}
