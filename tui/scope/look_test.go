package scope

import (
	"errors"
	"strings"
	"testing"

	"drainboard/model"
	"drainboard/tui/screen"
	"drainboard/tui/screen/screentest"
)

func TestLook(t *testing.T) {
	s, d, _ := scope(t, "K3")
	typed(t, s, "702", "enter", "*", "enter")
	typed(t, s, "6", "enter", "18/25", "enter", "2", "enter", "4", "enter", "clumps on the bottom", "enter")
	tank, _ := d.Ledger.Tank("K3")
	l := tank.Larvae.Look
	if *l.Lobes != 6 || *l.Golden != 72 || l.Swim != model.SwimFair || *l.Dead != 4 || l.Text != "clumps on the bottom" {
		t.Errorf("look %s", model.Sentence(l))
	}
	if s.phase != leaving {
		t.Errorf("phase %v; want the choice of the next tank", s.phase)
	}
}

func TestLookSkipsAndRefuses(t *testing.T) {
	cases := map[string]struct {
		keys  []string
		beeps int
		want  string // of the last look; empty where none is entered
	}{
		"all skipped":           {[]string{"enter", "enter", "enter", "enter", "enter"}, 0, ""},
		"golden alone":          {[]string{"enter", "55,5", "enter", "enter", "enter", "enter"}, 0, "K3 looked at, 55.5 % golden"},
		"none of 25 dead":       {[]string{"enter", "enter", "enter", "0/25", "enter", "enter"}, 0, "K3 looked at, 0 % dead"},
		"three lobes, then two": {[]string{"3", "enter", "backspace", "2", "enter", "enter", "enter", "enter", "enter"}, 1, "K3 looked at, 2 lobes"},
		"more than all":         {[]string{"enter", "26/25", "enter"}, 1, ""},
		"a share of none":       {[]string{"enter", "0/0", "enter"}, 1, ""},
		"over 100 per cent":     {[]string{"enter", "101", "enter"}, 1, ""},
		"a letter for per cent": {[]string{"enter", "a"}, 1, ""},
		"swimming 4":            {[]string{"enter", "enter", "4", "enter"}, 1, ""},
		"back with Backspace":   {[]string{"2", "enter", "backspace", "backspace", "4", "enter", "enter", "enter", "enter", "enter"}, 0, "K3 looked at, 4 lobes"},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			s, d, k := scope(t, "K3")
			typed(t, s, "*")
			before := len(k.Entries)
			if sent := typed(t, s, c.keys...); beeps(sent) != c.beeps {
				t.Errorf("%d beeps; want %d", beeps(sent), c.beeps)
			}
			got := ""
			if len(k.Entries) > before {
				got = model.Sentence(d.Ledger.Entries()[len(d.Ledger.Entries())-1].Fact)
			}
			if got != c.want {
				t.Errorf("entered %q, want %q", got, c.want)
			}
		})
	}
}

func TestLookThatIsNotSavedStays(t *testing.T) {
	s, _, k := scope(t, "K3")
	k.Fail = errors.New("no space left on device")
	typed(t, s, "*", "6", "enter", "80", "enter", "1", "enter", "2", "enter", "pale", "enter")
	if s.phase != looking || s.look.form.Rows[remark].Field.Text() != "pale" || !strings.Contains(frame(s), "not saved: no space left") {
		t.Fatalf("phase %v, frame\n%s", s.phase, frame(s))
	}
	typed(t, s, "esc")
	if s.ask == nil {
		t.Error("Esc throws a typed look away without a question")
	}
	typed(t, s, "esc")
	k.Fail = nil
	typed(t, s, "enter")
	if s.phase != leaving {
		t.Errorf("the next try did not work: %q", s.say.text)
	}
}

func TestNextTank(t *testing.T) {
	cases := map[string]struct {
		keys []string
		want string
	}{
		"by name":           {[]string{"k1", "enter"}, "K1"},
		"by number":         {[]string{"2", "enter"}, "K3"},
		"the longest first": {[]string{"enter"}, "K1"},
		"by the pointer":    {[]string{"down", "enter"}, "K3"},
		"an empty tank":     {[]string{"L2", "enter"}, ""},
		"no such number":    {[]string{"9", "enter"}, ""},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			s, _, _ := scope(t, "K3")
			typed(t, s, "+", "*", "enter", "enter", "enter", "enter", "enter")
			if s.phase != leaving {
				t.Fatalf("phase %v", s.phase)
			}
			next, _ := screentest.Type(s, c.keys...)
			got := next.(*Scope)
			switch {
			case c.want == "":
				if got.phase != leaving || got.say.mood != screen.Refused {
					t.Errorf("went on with %s; want a refusal", got.tank)
				}
			case got.tank != c.want || got.phase != reading || got.want != wanted+1:
				t.Errorf("went on with %s, phase %v, %d wanted; want %s and 26", got.tank, got.phase, got.want, c.want)
			}
		})
	}
}

func TestOpenedOnAnEmptyTank(t *testing.T) {
	for _, arg := range []string{"L2", "", "nowhere"} {
		s, _, _ := scope(t, arg)
		if s.phase != leaving || !s.Capturing() {
			t.Errorf("opened on %q: phase %v; want the choice of a tank", arg, s.phase)
		}
	}
}
