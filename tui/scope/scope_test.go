package scope

import (
	"errors"
	"slices"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/tui/desk"
	"drainboard/tui/desk/desktest"
	"drainboard/tui/keys"
	"drainboard/tui/screen"
	"drainboard/tui/screen/screentest"
)

// scope opens the microscope on a tank of the invented room.
func scope(t testing.TB, tank string) (*Scope, *desk.Desk, *desktest.Keeper) {
	t.Helper()
	d, k := desktest.Desk(t)
	return New(d, tank).(*Scope), d, k
}

// typed presses keys and types words, and gives what the screen sent. It fails
// where another screen takes over.
func typed(t testing.TB, s *Scope, words ...string) []tea.Msg {
	t.Helper()
	next, sent := screentest.Type(s, words...)
	if next != screen.Screen(s) {
		t.Fatalf("%v opened another screen", words)
	}
	return sent
}

// read are the lengths of the sitting as the ledger has them.
func read(s *Scope) []float64 {
	if sample := s.sitting(); sample != nil {
		return sample.UM
	}
	return nil
}

func beeps(sent []tea.Msg) int {
	n := 0
	for _, msg := range sent {
		if b, ok := msg.(screen.Beep); ok {
			n += b.Times
		}
	}
	return n
}

func frame(s *Scope) string { return screentest.Join(s.View(100, 30)) }

// A three-digit reading costs exactly four keys, and each is an entry at once.
func TestAReadingCostsFourKeys(t *testing.T) {
	s, _, k := scope(t, "K3")
	before := len(k.Entries)
	pressed := 0
	for _, um := range []string{"702", "745", "731"} {
		for _, r := range um {
			typed(t, s, string(r))
			pressed++
		}
		typed(t, s, "enter")
		pressed++
	}
	if got, want := read(s), []float64{702, 745, 731}; !slices.Equal(got, want) {
		t.Errorf("read %v, want %v", got, want)
	}
	if pressed != 12 || len(k.Entries)-before != 3 {
		t.Errorf("%d keys made %d entries; want 12 and 3", pressed, len(k.Entries)-before)
	}
}

func TestRefusedAndOdd(t *testing.T) {
	seven := []string{"700", "enter", "705", "enter", "710", "enter", "715", "enter"}
	cases := map[string]struct {
		keys  []string
		beeps int
		n     int
		say   string
	}{
		"a second decimal sign":        {[]string{"7", "0", ".", "1", ","}, 1, 0, "second decimal"},
		"a comma is a decimal sign":    {[]string{"702,5", "enter"}, 0, 1, "702.5 µm saved"},
		"longer than any larva":        {[]string{"9000", "enter"}, 1, 0, "longer than any larva"},
		"shorter than any larva":       {[]string{"7", "enter"}, 1, 0, "shorter than any larva"},
		"refused, then typed again":    {[]string{"9000", "enter", "900", "enter"}, 1, 1, "900 µm saved"},
		"a point alone":                {[]string{".", "enter"}, 1, 0, "no number"},
		"a letter":                     {[]string{"x"}, 1, 0, "only digits"},
		"Enter with nothing read":      {[]string{"enter"}, 0, 0, "the look alone"},
		"a length unlike the others":   {append(slices.Clone(seven), "1400", "enter"), 2, 5, "unlike the 4 before"},
		"take back with nothing there": {[]string{"backspace"}, 1, 0, "nothing to take back"},
		"figures before Enter":         {append(slices.Clone(seven), "7", "*"), 1, 4, "Enter takes it first"},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			s, _, _ := scope(t, "K3")
			sent := typed(t, s, c.keys...)
			if beeps(sent) != c.beeps || len(read(s)) != c.n {
				t.Errorf("%d beeps, %d readings; want %d and %d", beeps(sent), len(read(s)), c.beeps, c.n)
			}
			if !strings.Contains(s.say.text, c.say) {
				t.Errorf("it says %q; want %q", s.say.text, c.say)
			}
		})
	}
}

func TestDivisionsOfAnEyepiece(t *testing.T) {
	s, d, k := scope(t, "K3")
	typed(t, s, "e", "72.5", "enter")
	f := k.Entries[len(k.Entries)-1].Fact.(*model.Sizes)
	if f.UM[0] != 710.5 || f.UMPerDivision == nil || *f.UMPerDivision != 9.8 {
		t.Errorf("entered %v with factor %v; want 72.5 divisions of 9.8 um: 710.5", f.UM, f.UMPerDivision)
	}
	if again := New(d, "K1").(*Scope); again.unit != (unit{"4x", 9.8}) {
		t.Errorf("the next tank is read %s; want the eyepiece of the last reading", again.unit.words())
	}
	typed(t, s, "e")
	if s.unit.name != "10x" {
		t.Errorf("unit %v after a second press; want the 10x eyepiece", s.unit)
	}
	typed(t, s, "e")
	if s.unit != (unit{}) {
		t.Errorf("unit %v after a third press; want micrometres", s.unit)
	}
	if sent := typed(t, s, "e", "72,5,", "enter"); beeps(sent) != 1 {
		t.Errorf("%d beeps; want one for the second comma", beeps(sent))
	}
}

func TestWithoutEyepiecesTheKeySaysWhy(t *testing.T) {
	s, d, _ := scope(t, "K3")
	d.Ledger.Room().House.Growth.Eyepieces = nil
	if sent := typed(t, s, "e"); beeps(sent) != 1 || !strings.Contains(s.say.text, "names no eyepiece") {
		t.Errorf("%d beeps, it says %q", beeps(sent), s.say.text)
	}
}

// What was read before a kill is there when the screen opens again within the
// sitting, and a new sample begins after it.
func TestResume(t *testing.T) {
	s, d, _ := scope(t, "K3")
	typed(t, s, "702", "enter", "745", "enter")
	d.Now = d.Now.Add(model.SittingGap)
	again := New(d, "K3").(*Scope)
	if got := read(again); !slices.Equal(got, []float64{702, 745}) {
		t.Errorf("read on after 30 minutes: %v; want both readings", got)
	}
	typed(t, again, "731", "enter")
	if len(read(again)) != 3 {
		t.Errorf("the third reading began a new sample")
	}
	d.Now = d.Now.Add(model.SittingGap + time.Second)
	if got := read(again); got != nil {
		t.Errorf("after more than the gap the sitting still has %v", got)
	}
	typed(t, again, "740", "enter")
	if got := read(again); !slices.Equal(got, []float64{740}) {
		t.Errorf("the new sitting has %v; want 740 alone", got)
	}
}

func TestTakeBackToAnyDepth(t *testing.T) {
	s, d, _ := scope(t, "K3")
	earlier := len(s.last().UM)
	typed(t, s, "702", "enter", "745", "enter", "731", "enter")
	for n := 2; n >= 0; n-- {
		typed(t, s, "backspace")
		if len(read(s)) != n {
			t.Fatalf("%d readings are left; want %d", len(read(s)), n)
		}
	}
	if sent := typed(t, s, "backspace"); beeps(sent) != 1 {
		t.Errorf("%d beeps where nothing is left; want 1", beeps(sent))
	}
	if len(s.last().UM) != earlier {
		t.Errorf("the sample of an earlier day has %d readings; want %d", len(s.last().UM), earlier)
	}
	void := 0
	for range d.Ledger.Void() {
		void++
	}
	if void != 3 {
		t.Errorf("%d entries are void; want the three taken back", void)
	}
}

func TestAFailingKeeperLosesNothing(t *testing.T) {
	s, _, k := scope(t, "K3")
	k.Fail = errors.New("no space left on device")
	sent := typed(t, s, "702", "enter")
	if beeps(sent) != 1 || !strings.Contains(s.say.text, "not saved: no space left") {
		t.Errorf("%d beeps, it says %q", beeps(sent), s.say.text)
	}
	if s.field.Text() != "702" || len(read(s)) != 0 {
		t.Errorf("the field holds %q, %d readings; want 702 and none", s.field.Text(), len(read(s)))
	}
	if sent := typed(t, s, "5"); beeps(sent) != 1 || s.field.Text() != "702" {
		t.Errorf("a digit was added to what is not saved: %q", s.field.Text())
	}
	k.Fail = nil
	typed(t, s, "enter")
	if got := read(s); !slices.Equal(got, []float64{702}) || s.field.Text() != "" {
		t.Errorf("after the next try: %v, field %q", got, s.field.Text())
	}
	k.Fail = errors.New("no space left on device")
	typed(t, s, "backspace")
	if len(read(s)) != 1 || !strings.Contains(s.say.text, "not saved") {
		t.Errorf("a take-back that was not saved: %d readings, it says %q", len(read(s)), s.say.text)
	}
	typed(t, s, "745", "enter", "backspace", "backspace", "backspace")
	if s.held || s.field.Text() != "" {
		t.Errorf("given up, the field holds %q", s.field.Text())
	}
	k.Fail = nil
	if typed(t, s, "731", "enter"); len(read(s)) != 2 {
		t.Errorf("%d readings; want the next one taken", len(read(s)))
	}
}

func TestReadOnly(t *testing.T) {
	s, d, _ := scope(t, "K3")
	d.ReadOnly = "another program keeps this room"
	typed(t, s, "702", "enter")
	if !strings.Contains(frame(s), "not saved: another program keeps this room") || s.field.Text() != "702" {
		t.Errorf("field %q, frame\n%s", s.field.Text(), frame(s))
	}
}

func TestTankEmptiedWhileOpen(t *testing.T) {
	s, d, _ := scope(t, "K3")
	typed(t, s, "702", "enter", "74")
	desktest.Enter(t, d, 0, &model.Moved{From: "K3", To: "L2"})
	if f := frame(s); !strings.Contains(f, "K3 holds no larvae since 25 Nov 09:14, they went") || !strings.Contains(f, "74") {
		t.Errorf("the frame does not say so or lost the typed 74:\n%s", f)
	}
	sent := typed(t, s, "enter")
	if beeps(sent) != 1 || s.field.Text() != "74" {
		t.Errorf("%d beeps, field %q; want the typed 74 kept", beeps(sent), s.field.Text())
	}
	typed(t, s, "esc")
	if s.ask == nil {
		t.Fatal("typed text is thrown away without a question")
	}
	if sent := typed(t, s, "enter"); len(sent) != 1 || sent[0] != (screen.Back{}) {
		t.Errorf("sent %v; want Back", sent)
	}
}

func TestEscape(t *testing.T) {
	s, _, _ := scope(t, "K3")
	if sent := typed(t, s, "esc"); len(sent) != 1 || sent[0] != (screen.Back{}) {
		t.Errorf("with nothing typed: %v; want Back", sent)
	}
	typed(t, s, "70", "esc", "esc")
	if s.ask != nil || s.field.Text() != "70" {
		t.Errorf("no to the question left %q", s.field.Text())
	}
}

func TestFiguresAndBack(t *testing.T) {
	s, _, _ := scope(t, "K3")
	typed(t, s, "702", "enter", "745", "enter", "731", "enter", "719", "enter", "enter")
	if s.phase != summary {
		t.Fatalf("Enter in an empty field did not show the figures")
	}
	f := frame(s)
	for _, want := range []string{"n 4", "mean 724.2 µm", "median 725", "sd 18.2", "a day over", "µm", "age  → use", "today 4"} {
		if !strings.Contains(f, want) {
			t.Errorf("the figures lack %q:\n%s", want, f)
		}
	}
	typed(t, s, "7")
	if s.phase != reading || s.field.Text() != "7" {
		t.Errorf("a digit in the figures: phase %v, field %q; want it typed", s.phase, s.field.Text())
	}
	typed(t, s, "backspace", "*", "esc")
	if s.phase != reading {
		t.Errorf("Esc in the figures goes to phase %v", s.phase)
	}
}

// The figures follow an undo made over them.
func TestFiguresFollowTheLedger(t *testing.T) {
	s, d, _ := scope(t, "K3")
	typed(t, s, "702", "enter", "745", "enter", "enter")
	if _, err := d.Undo(); err != nil {
		t.Fatal(err)
	}
	s.Update(screen.Tick{Now: d.Now})
	if !strings.Contains(frame(s), "n 1") {
		t.Errorf("the figures are not made anew:\n%s", frame(s))
	}
}

func TestKeyTables(t *testing.T) {
	s, _, _ := scope(t, "K3")
	for _, p := range []phase{reading, summary, looking, leaving} {
		s.phase = p
		table := s.Keys()
		if got := keys.Problems(table); len(got) > 0 {
			t.Errorf("%s: %v", table.Title, got)
		}
	}
	if s.phase = summary; s.Capturing() {
		t.Error("the figures capture keys, so help and undo cannot be had")
	}
}

func TestEverySize(t *testing.T) {
	s, d, _ := scope(t, "K3")
	d.Ledger.Room().Name = "a室\u0301\x1b[31m"
	screentest.EverySize(t, s.View)
	typed(t, s, "702", "enter", "745", "enter", "731", "enter", "719", "enter", "1400", "enter", "74")
	screentest.EverySize(t, s.View)
	typed(t, s, "backspace", "backspace", "*")
	screentest.EverySize(t, s.View)
	typed(t, s, "enter", "3", "enter")
	screentest.EverySize(t, s.View)
	typed(t, s, "esc")
	screentest.EverySize(t, s.View)
}
