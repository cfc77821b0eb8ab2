package factform

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/google/go-cmp/cmp"

	"drainboard/model"
	"drainboard/tui/desk"
	"drainboard/tui/desk/desktest"
	"drainboard/tui/keys"
	"drainboard/tui/screen"
	"drainboard/tui/screen/screentest"
	"drainboard/tui/theme"
)

// fillIn types texts into the rows of a form, from the first on.
func fillIn(f Form, texts ...string) Form {
	for i, s := range texts {
		for _, r := range s {
			f, _ = f.Update(keys.Msg(string(r)))
		}
		if i < len(texts)-1 {
			f, _ = f.Update(keys.Msg("down"))
		}
	}
	return f
}

func k3() map[string]string { return map[string]string{"tank": "K3"} }

func TestFact(t *testing.T) {
	cases := map[string]struct {
		kind  model.Kind
		typed []string
		want  string
	}{
		"a comma before the decimals": {model.KindTemperature, []string{"", "27,4"}, "K3 27.4 °C"},
		"a list with spaces":          {model.KindCount, []string{"38 42 50", "10", "2000", "0 1 0"}, "K3 counted: 38, 42, 50 live in 10 mL out of 2000 mL"},
		"a list with commas":          {model.KindCount, []string{"38,42, 50", "10", "2000"}, "K3 counted: 38, 42, 50 live in 10 mL out of 2000 mL"},
		"a word by its number":        {model.KindEnded, []string{"2"}, "K3 ended: discarded"},
		"a word by its beginning":     {model.KindEnded, []string{"Se", "4100"}, "K3 ended: settled, 4100 larvae"},
		"a row for each alga":         {model.KindFed, []string{"0,35", "0.1"}, "K3 fed: 0.1 L chaet, 0.35 L iso"},
		"one alga alone":              {model.KindFed, []string{"", "0.1"}, "K3 fed: 0.1 L chaet"},
		"a flag by a letter":          {model.KindService, []string{"Y", "cracked"}, "K3 out of use (cracked)"},
		"a flag by a word":            {model.KindSuspect, []string{"no"}, "K3 no longer suspect"},
		"a hatch date":                {model.KindStocked, []string{"P-06", "2026-11-24", "9000"}, "K3 stocked with batch P-06, hatched 2026-11-24, 9000 larvae"},
		"text":                        {model.KindNoted, []string{"airlift turned down"}, "K3: airlift turned down"},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			f := fillIn(New(desktest.Room(t), c.kind, k3()), c.typed...)
			fact, err := f.Fact()
			if err != nil {
				t.Fatal(err)
			}
			if got := model.Sentence(fact); got != c.want {
				t.Errorf("got %q, want %q", got, c.want)
			}
		})
	}
}

func TestRefusedStandsAtItsField(t *testing.T) {
	cases := map[string]struct {
		kind  model.Kind
		typed []string
		focus int
		want  string
	}{
		"a missing field":   {model.KindRemoved, []string{""}, 0, "is missing"},
		"a word of no list": {model.KindEnded, []string{"gone"}, 0, "not one of settled, discarded, lost"},
		"a wrong list":      {model.KindCount, []string{"38 x"}, 0, "is not a number"},
		"no date":           {model.KindStocked, []string{"P-06", "24 Nov"}, 1, "write a date as"},
		"no flag":           {model.KindService, []string{"maybe"}, 0, "true or false is expected"},
		"beyond the range":  {model.KindTemperature, []string{"", "270"}, 1, "270 cannot be true"},
		"an alga":           {model.KindFed, []string{"0.3", "1000000"}, 1, "cannot be true"},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			f := fillIn(New(desktest.Room(t), c.kind, k3()), c.typed...)
			_, err := f.Fact()
			if err == nil {
				t.Fatal("taken")
			}
			f = f.Refused(err)
			if f.form.Focus != c.focus || !strings.Contains(f.form.Rows[c.focus].Problem, c.want) {
				t.Errorf("focus %d, problems %q; want %q at row %d", f.form.Focus, f.form.Rows[f.form.Focus].Problem, c.want, c.focus)
			}
		})
	}
}

// A refusal that speaks of another entry is shown whole and at no field, though
// the reason within it names one.
func TestRefusedForAnotherEntry(t *testing.T) {
	f := New(desktest.Room(t), model.KindTemperature, k3())
	f = f.Refused(fmt.Errorf("entry 14 would become impossible: %w", &model.FieldError{Field: "celsius", Problem: "too late"}))
	if f.form.Rows[1].Problem != "" || f.whole != "not saved: entry 14 would become impossible: celsius: too late" {
		t.Errorf("at the field %q, beneath %q", f.form.Rows[1].Problem, f.whole)
	}
	f = f.Refused(&model.FieldError{Field: "tank", Problem: "K3 is dirty"})
	if f.whole != "not taken: K3 is dirty" {
		t.Errorf("beneath the form: %q; want the refusal of the field that is not shown", f.whole)
	}
}

func TestNotSaved(t *testing.T) {
	if got := NotSaved(errors.New("not saved: disk full")); got != "not saved: disk full" {
		t.Errorf("said twice: %q", got)
	}
	for want, err := range map[string]error{
		"not saved: it is only read here": &desk.ReadOnlyError{Why: "it is only read here"},
		"not taken: is missing":           &model.FieldError{Field: "larvae", Problem: "is missing"},
		"not saved: disk full":            errors.New("disk full"),
	} {
		if got := NotSaved(err); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

// Whatever fact there is, its form reads back as the same fact, and nothing
// counts as changed.
func TestOfReadsBack(t *testing.T) {
	room := desktest.Room(t)
	d, _ := desktest.Desk(t)
	half, um, salinity := 0.5, 150.0, 35.5
	hatched, _ := model.ParseHatched("2026-11-08T19:30:00-05:00")
	facts := []model.Fact{
		&model.Moved{From: "K1", To: "K2", MeshUM: &um, Share: &half, Join: true, Why: "split"},
		&model.Stocked{Tank: "K1", Batch: "P-09", Hatched: hatched},
		&model.Opened{Moves: []model.Leg{{From: "K1", To: "K2"}, {From: "K3", To: "K1"}}},
		&model.Water{Supply: "header", Salinity: &salinity},
		&model.Sizes{Tank: "K1", UM: []float64{702.5, 745}},
	}
	for _, e := range d.Ledger.Entries() {
		facts = append(facts, e.Fact)
	}
	for _, fact := range facts {
		f := Of(room, fact)
		got, err := f.Fact()
		if err != nil {
			t.Fatalf("%s: %v", model.Sentence(fact), err)
		}
		if diff := cmp.Diff(fact, got); diff != "" {
			t.Errorf("%s reads back otherwise:\n%s", model.Sentence(fact), diff)
		}
		if set, err := f.Changed(); err != nil || len(set) > 0 || f.Typed() {
			t.Errorf("%s: changed %v, %v, typed %v", model.Sentence(fact), set, err, f.Typed())
		}
	}
}

func TestChanged(t *testing.T) {
	acid, litres := 40.0, 3.96
	f := Of(desktest.Room(t), &model.Washed{Tank: "K3", AcidML: &acid, WaterLitres: &litres})
	f.form.Focus = 1
	for _, k := range []string{"backspace", "5"} {
		f, _ = f.Update(keys.Msg(k))
	}
	set, err := f.Changed()
	if diff := cmp.Diff(map[string]any{"acid_ml": 45.0}, set); err != nil || diff != "" {
		t.Errorf("changed, with error %v:\n%s", err, diff)
	}
	for range 2 {
		f, _ = f.Update(keys.Msg("backspace"))
	}
	if _, err := f.Changed(); err == nil || !strings.Contains(err.Error(), "make the entry void") {
		t.Errorf("a number taken out: %v", err)
	}
	text := Of(desktest.Room(t), &model.Moved{From: "K1", To: "K2", Why: "x"})
	text.form.Focus = 7
	text, _ = text.Update(keys.Msg("backspace"))
	if set, err := text.Changed(); err != nil || set["why"] != "" || len(set) != 1 {
		t.Errorf("a text taken out: %v, %v", set, err)
	}
}

func TestMoment(t *testing.T) {
	zone, err := time.LoadLocation("America/Nassau")
	if err != nil {
		t.Fatal(err)
	}
	now := time.Date(2026, 11, 25, 9, 14, 5, 0, zone)
	cases := map[string]string{
		"09:14":                     "2026-11-25T09:14:00-05:00",
		"9:14":                      "2026-11-25T09:14:00-05:00",
		"14:05":                     "2026-11-24T14:05:00-05:00",
		" 00:00 ":                   "2026-11-25T00:00:00-05:00",
		"2026-11-20 08:30":          "2026-11-20T08:30:00-05:00",
		"2026-10-20 08:30:15":       "2026-10-20T08:30:15-04:00",
		"2026-11-20T08:30:00+01:00": "2026-11-20T08:30:00+01:00",
	}
	for typed, want := range cases {
		got, err := Moment(typed, now, zone)
		if err != nil || got.Format(time.RFC3339) != want {
			t.Errorf("%q: %s, %v; want %s", typed, got.Format(time.RFC3339), err, want)
		}
	}
	for _, typed := range []string{"", "25:00", "noon", "2026-11-31 08:30", "2026-11-20", "08.30"} {
		if got, err := Moment(typed, now, zone); err == nil {
			t.Errorf("%q is taken as %v", typed, got)
		}
	}
}

func slip(t *testing.T, kind model.Kind) Slip {
	t.Helper()
	return Slip{Title: "K3: " + string(kind), Form: New(desktest.Room(t), kind, k3())}
}

func press(s Slip, names ...string) (Slip, Step) {
	var step Step
	for _, n := range names {
		s, step = s.Update(keys.Msg(n))
	}
	return s, step
}

func TestSlipAsksBeforeItThrowsAway(t *testing.T) {
	s := slip(t, model.KindNoted)
	if _, step := press(s, "esc"); step != Left {
		t.Errorf("with nothing typed Esc gives %v; want Left", step)
	}
	s, step := press(s, "a", "esc")
	if step != Typing || !strings.Contains(view(s, 60, 8), "Throw away what was typed?") {
		t.Fatalf("step %v, frame\n%s", step, view(s, 60, 8))
	}
	back, step := press(s, "esc")
	if step != Typing || back.Form.Text("text") != "a" {
		t.Errorf("after no: step %v, text %q", step, back.Form.Text("text"))
	}
	if _, step := press(s, "enter"); step != Left {
		t.Errorf("after yes: step %v; want Left", step)
	}
}

func TestSlipConfirmsTheConcreteThing(t *testing.T) {
	s := slip(t, model.KindEnded)
	s.Confirm = func(f Form) string { return "End K3 as " + f.Text("why") + "?" }
	bad, step := press(s, "enter", "enter")
	if step != Done || bad.asking != nothing {
		t.Errorf("an empty form: step %v; want it done, to be refused", step)
	}
	s, step = press(s, "1", "enter", "enter")
	if step != Typing || !strings.Contains(view(s, 60, 8), "End K3 as 1?") {
		t.Fatalf("step %v, frame\n%s", step, view(s, 60, 8))
	}
	if no, step := press(s, "x", "esc"); step != Typing || no.asking != nothing {
		t.Errorf("after no: step %v", step)
	}
	if _, step := press(s, "enter"); step != Done {
		t.Errorf("after yes: step %v; want Done", step)
	}
}

func TestSlipRejects(t *testing.T) {
	s := slip(t, model.KindTemperature)
	if _, step := press(s, "down", "2", "7", ".", "."); step != Rejected {
		t.Errorf("a second point: step %v; want Rejected", step)
	}
}

func TestAPastedColumnGoesIntoAList(t *testing.T) {
	f := New(desktest.Room(t), model.KindCount, k3())
	f, _ = f.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("38\n42\n50\n"), Paste: true})
	if got := f.Text("live"); got != "38 42 50" {
		t.Errorf("live holds %q", got)
	}
}

func view(s Slip, w, h int) string {
	return screentest.Join(s.View(theme.Bare(false), w, h, []string{"  19 h 00 min ago"}))
}

func TestSlipView(t *testing.T) {
	s, _ := press(slip(t, model.KindCount), "3", "8")
	s = s.Refused(&model.FieldError{Field: "sample_ml", Problem: "is missing"})
	got := view(s, 50, 14)
	want := `K3: count

  live        38                            larvae
► sample ml   _               mL
     is missing
  holding ml                  mL
  dead                                      larvae

  19 h 00 min ago





`
	if got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

func TestEverySize(t *testing.T) {
	s := slip(t, model.KindMoved)
	screentest.EverySize(t, func(w, h int) []string { return s.View(theme.Bare(false), w, h, []string{"below"}) })
	s = s.Refused(errors.New(strings.Repeat("a refusal 室 that is long ", 12)))
	screentest.EverySize(t, func(w, h int) []string { return s.View(theme.Bare(false), w, h, nil) })
	s, _ = press(s, "a", "esc")
	screentest.EverySize(t, func(w, h int) []string { return s.View(theme.Bare(false), w, h, nil) })
}

func TestKeyTables(t *testing.T) {
	s := slip(t, model.KindNoted)
	if got := keys.Problems(s.Keys(), keys.Everywhere()); len(got) > 0 {
		t.Error(got)
	}
	s, _ = press(s, "a", "esc")
	if got := keys.Problems(s.Keys()); len(got) > 0 {
		t.Error(got)
	}
}

// Every kind that a person enters by hand is explained.
func TestMeaning(t *testing.T) {
	for _, k := range model.Kinds() {
		byHand := k != model.KindOpened && k != model.KindStep && k != model.KindClosed && k != model.KindCorrected
		if got := Meaning(k); (got != "") != byHand {
			t.Errorf("%s means %q", k, got)
		}
	}
}

func TestEditedClearsTheRefusal(t *testing.T) {
	f := New(desktest.Room(t), model.KindNoted, k3()).Refused(errors.New("disk full"))
	f, out := f.Update(keys.Msg("a"))
	if out != screen.Edited || f.whole != "" {
		t.Errorf("outcome %v, beneath %q", out, f.whole)
	}
}
