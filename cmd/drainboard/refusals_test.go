package main

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"drainboard/model"
)

// trueEntries can be true in the worked room: one of every kind, with every field.
func trueEntries() map[model.Kind]map[string]string {
	return map[model.Kind]map[string]string{
		model.KindStocked:     {"tank": "C2", "batch": "26-07", "hatched": "2026-11-24", "larvae": "9000", "origin": "strands"},
		model.KindMoved:       {"from": "C1", "to": "C2", "mesh_um": "200", "from_celsius": "27.4", "to_celsius": "27", "share": "0.5", "join": "false", "why": "thinned"},
		model.KindWashed:      {"tank": "C5", "acid_ml": "40", "water_litres": "3.96"},
		model.KindFilled:      {"tank": "C2", "celsius": "27.5"},
		model.KindTemperature: {"tank": "C1", "celsius": "27.5"},
		model.KindSizes:       {"tank": "C1", "um": "640,655.5", "um_per_division": "12.5"},
		model.KindLook:        {"tank": "C1", "lobes": "6", "golden": "80", "swim": "good", "dead": "2", "text": "fine"},
		model.KindCount:       {"tank": "C1", "live": "38,42", "sample_ml": "10", "holding_ml": "2000", "dead": "1,0"},
		model.KindCells:       {"algae": "iso", "counts": "510,522", "chamber_ml": "0.0001", "dilution": "10"},
		model.KindFed:         {"tank": "C1", "litres": "iso:0.35,chaet:0.1"},
		model.KindWater:       {"supply": "header", "salinity": "35.5", "ph": "8.1", "oxygen_mg_l": "6.4", "ammonia_mg_l": "0.1"},
		model.KindRemoved:     {"tank": "C1", "larvae": "40", "why": "sample"},
		model.KindEnded:       {"tank": "C1", "why": "settled", "larvae": "8000"},
		model.KindService:     {"tank": "C2", "out": "true", "why": "cracked"},
		model.KindSuspect:     {"tank": "C1", "on": "true", "why": "pale"},
		model.KindOpened:      {"moves": "C1:C2"},
		model.KindStep:        {"session": "9", "move": "1", "name": "source", "done": "true", "why": "C1"},
		model.KindClosed:      {"session": "9", "complete": "false", "why": "power cut"},
		model.KindCorrected:   {"entry": "1", "why": "misread", "set": "celsius:28.1"},
		model.KindNoted:       {"text": "lid cracked", "tank": "C2"},
	}
}

// others are fields that cannot stand beside those of trueEntries: one of two
// places, one of two ways to correct.
func others() map[model.Kind]map[string]string {
	return map[model.Kind]map[string]string{
		model.KindTemperature: {"supply": "header", "celsius": "27.5"},
		model.KindCells:       {"tank": "C1", "counts": "4", "chamber_ml": "0.0009"},
		model.KindWater:       {"tank": "C1", "ph": "8.1"},
		model.KindCorrected:   {"entry": "1", "why": "misread", "void": "true"},
	}
}

// wrongTexts are texts that are not of a field's type: wrong usage.
func wrongTexts(f model.Field) []string {
	switch f.Type {
	case model.Number:
		return []string{"warm", "27,4", "inf", "NaN", "0x1b", "--1", "1 2"}
	case model.Whole:
		return []string{"many", "1.5"}
	case model.Word:
		return []string{"nonsense", "GOOD"}
	case model.Flag:
		return []string{"perhaps", "1"}
	case model.HatchDay:
		return []string{"spring", "2026-02-30", "25.11.2026", "2026-11-08T12:00"}
	case model.Numbers:
		return []string{"1,x", "1,,2", "650;660"}
	case model.Wholes:
		return []string{"1,x", "1,2.5", ","}
	case model.PerAlga:
		return []string{"iso", "iso:x", ":1", "iso:1,"}
	case model.Legs:
		return []string{"C1", "C1:C2,C5"}
	case model.Changes:
		return []string{"celsius"}
	}
	return nil
}

// untrueTexts are well written and cannot be true: refused.
func untrueTexts(f model.Field) []string {
	number := func(texts ...string) []string {
		if f.Range.Above {
			texts = append(texts, plain(f.Range.Low))
		}
		return append(texts, plain(f.Range.Low-1), plain(f.Range.High*2+1))
	}
	switch f.Type {
	case model.Number, model.Whole:
		return number()
	case model.Numbers, model.Wholes:
		texts := number()
		for i, x := range texts {
			texts[i] = "100," + x
		}
		return append(texts, strings.TrimSuffix(strings.Repeat("100,", 5001), ","))
	case model.TankName, model.Source, model.AlgaName:
		return []string{"nowhere"}
	case model.ShortName:
		return []string{strings.Repeat("x", 41), "a\x1b[31m"}
	case model.Text:
		return []string{strings.Repeat("x", 2001), "a\x07b"}
	case model.HatchDay:
		return []string{"2026-11-26", "2026-11-25T23:00:00Z"}
	case model.PerAlga:
		return []string{"iso:-1", "iso:1e9", "spirulina:1", "iso:0"}
	case model.Legs:
		return []string{"C1:C9", "C1:C1"}
	case model.Changes:
		return []string{"celsius:270", "depth:3"}
	}
	return nil
}

func TestEveryKindIsTaken(t *testing.T) {
	room := workedRoom(t)
	for _, tables := range []map[model.Kind]map[string]string{trueEntries(), others()} {
		for kind, table := range tables {
			t.Run(string(kind), func(t *testing.T) {
				copied := copyRoom(t, room)
				if kind == model.KindOpened {
					mustSay(t, copied, "enter", "closed", "session=9", "complete=true")
				}
				s := mustSay(t, copied, enterArgs(kind, table)...)
				if !strings.HasPrefix(s.stdout, "saved ") || s.stderr != "" {
					t.Errorf("stdout %q, stderr %q; want a saved line and silence", s.stdout, s.stderr)
				}
			})
		}
	}
}

// TestRefusals spoils one field at a time of an entry that would be taken.
func TestRefusals(t *testing.T) {
	worked := workedRoom(t)
	for _, kind := range model.Kinds() {
		room := copyRoom(t, worked)
		before := journalOf(t, room)
		fact, _ := model.NewFact(kind)
		for _, f := range fact.Fields() {
			table := baseFor(t, kind, f.Name)
			refused := func(what, field, text string, want int) {
				spoilt := maps.Clone(table)
				spoilt[field] = text
				if field == "" {
					delete(spoilt, "")
					delete(spoilt, f.Name)
				}
				t.Run(fmt.Sprintf("%s %s %s %.20q", kind, f.Name, what, text), func(t *testing.T) {
					checkRefused(t, say(t, room, enterArgs(kind, spoilt)...), want)
					if !sameFiles(before, journalOf(t, room)) {
						t.Fatal("the journal has changed")
					}
				})
			}
			if f.Need {
				refused("missing", "", "", exitUsage)
			}
			refused("unknown", f.Name+"_x", "1", exitUsage)
			for _, text := range wrongTexts(f) {
				refused("wrong type", f.Name, text, exitUsage)
			}
			for _, text := range untrueTexts(f) {
				refused("untrue", f.Name, text, exitRefused)
			}
		}
	}
}

// baseFor is a true entry that holds the field.
func baseFor(t *testing.T, kind model.Kind, field string) map[string]string {
	t.Helper()
	for _, tables := range []map[model.Kind]map[string]string{trueEntries(), others()} {
		if _, ok := tables[kind][field]; ok {
			return tables[kind]
		}
	}
	t.Fatalf("no true entry of kind %s gives its field %s; add it to the tables", kind, field)
	return nil
}

func enterArgs(kind model.Kind, table map[string]string) []string {
	args := []string{"enter", string(kind)}
	for _, name := range slices.Sorted(maps.Keys(table)) {
		args = append(args, name+"="+table[name])
	}
	return args
}

func checkRefused(t *testing.T, got said, status int) {
	t.Helper()
	if got.status != status {
		t.Errorf("status = %d; want %d (%s)", got.status, status, strings.TrimSpace(got.stderr))
	}
	if got.stdout != "" || !isRefusal(got.stderr) {
		t.Errorf("stdout %q, stderr %q; want silence and one line", got.stdout, got.stderr)
	}
}

// isRefusal reports whether a text is one line of the program's own, without
// control characters.
func isRefusal(stderr string) bool {
	line, rest, ended := strings.Cut(stderr, "\n")
	clean := !strings.ContainsFunc(line, func(r rune) bool { return r < ' ' || r == 0x7f })
	return ended && rest == "" && clean && strings.HasPrefix(line, "drainboard: ") && len(line) > len("drainboard: ")
}

func copyRoom(t *testing.T, room string) string {
	t.Helper()
	dir := filepath.Join(t.TempDir(), "room")
	if err := os.CopyFS(dir, os.DirFS(room)); err != nil {
		t.Fatal(err)
	}
	return dir
}
