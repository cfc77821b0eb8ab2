package inventory

import (
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"drainboard/model"
	"drainboard/tui/desk/desktest"
	"drainboard/tui/keys"
	"drainboard/tui/screen"
)

func TestWholeRoom(t *testing.T) {
	s, d, k := opened(t)
	typed(t, s, wholeRoom...)
	if s.phase != asking {
		t.Fatalf("the last Enter does not ask:\n%s", frame(s))
	}
	if len(k.Entries) != 0 {
		t.Fatal("something was saved before the question was answered")
	}
	sent := typed(t, s, "enter")
	want := []string{
		"Mon 16:00 L2 filled",
		"Tue 07:14 K1 stocked with batch P-05, hatched 2026-11-08, 12800 larvae",
		"Tue 07:14 K1: mean length 720 um before the start",
		"Tue 07:14 K2 stocked with batch P-05, hatched 2026-11-08, 11900 larvae",
		"Tue 14:30 K3 stocked with batch P-05, hatched 2026-11-08, 12100 larvae",
		"Tue 17:10 L4 out of use (before the start)",
		"Tue 17:10 L4 back in use (stands dirty)",
		"Wed 06:30 K4 stocked with batch P-06, hatched 2026-11-21, 9800 larvae",
		"Wed 06:30 K5 stocked with batch P-06, hatched 2026-11-21, 9400 larvae",
		"Wed 06:30 L1 stocked with batch P-06, hatched 2026-11-21",
		"Wed 09:14 L3 washed",
	}
	if diff := cmp.Diff(want, written(d)); diff != "" {
		t.Error(diff)
	}
	if len(k.Entries) != len(want) {
		t.Errorf("%d entries are kept; want %d", len(k.Entries), len(want))
	}
	if len(sent) != 2 || sent[0] != (screen.Toast{Text: "9 tanks entered, 11 entries", Mood: screen.Saved}) || sent[1] != (screen.Back{}) {
		t.Errorf("sent %v", sent)
	}
	states := map[string]model.State{"K1": model.Holding, "L1": model.Holding, "L2": model.Ready, "L3": model.WashedDown, "L4": model.Dirty}
	for name, want := range states {
		if tank, _ := d.Ledger.Tank(name); tank.State != want || !tank.Known {
			t.Errorf("%s is %s, known %v; want %s", name, tank.State, tank.Known, want)
		}
	}
	if tank, _ := d.Ledger.Tank("K1"); tank.Larvae.Sample != nil {
		t.Error("the mean length became a reading")
	}
	if e := d.Ledger.Entries()[0]; e.By != "KT" || !e.Keyed.Equal(d.Now.Truncate(time.Second)) {
		t.Errorf("entry 1 by %q, keyed %s; want the initials and the moment of typing", e.By, e.Keyed)
	}
}

// TestUnderFiveMinutes counts the keys of ten tanks. With half a second a key and
// 1.35 s to make up the mind before each field (Card, Moran & Newell 1980, Comm.
// ACM 23:396, from memory: random letters and codes) they take about two and a half
// minutes.
func TestUnderFiveMinutes(t *testing.T) {
	d, _ := desktest.Empty(t)
	d.Ledger.Room().Tanks = append(d.Ledger.Room().Tanks, model.Tank{Name: "L5", Litres: 160})
	d.Ledger = model.NewLedger(d.Ledger.Room())
	s := New(d).(*Inventory)
	script := append(append([]string{}, wholeRoom...), "5", "enter", "enter")
	typed(t, s, script...)
	for _, tank := range d.Ledger.Tanks() {
		if !tank.Known {
			t.Fatalf("%s was not entered", tank.Tank.Name)
		}
	}
	n, fields := pressed(script...), 0
	for _, w := range script {
		if w != "enter" {
			fields++
		}
	}
	seconds := 0.5*float64(n) + 1.35*float64(fields)
	t.Logf("%d keys in %d fields: about %.0f s", n, fields, seconds)
	if n > 200 || seconds > 5*60 {
		t.Errorf("%d keys, about %.0f s; want at most 200 keys and 5 minutes", n, seconds)
	}
}

// Every key of a row can come from the number pad.
func TestNumberPadAlone(t *testing.T) {
	s, d, _ := opened(t)
	script := []string{"1", "5", "enter", "17", "enter", "26.5", "enter", "12800", "enter", "720", "enter", "*", "enter"}
	if bad := strings.Trim(strings.ReplaceAll(strings.Join(script, ""), "enter", ""), "0123456789.+-*/"); bad != "" {
		t.Fatalf("the script needs %q, which no number pad has", bad)
	}
	typed(t, s, script...)
	if got := written(d); len(got) != 2 || got[0] != "Tue 06:44 K1 stocked with batch 5, hatched 2026-11-08, 12800 larvae" {
		t.Errorf("entries %q", got)
	}
}

func TestProblemsAreNamed(t *testing.T) {
	cases := map[string]struct {
		keys   []string
		want   string
		at     cell
		review bool // whether it is found only then
	}{
		"no such time":          {[]string{"h", "P", "enter", "4", "enter", "25:00", "tab"}, `K1, last change: "25:00" is no moment`, cell{0, larvae}, false},
		"a time to come":        {[]string{"h", "P", "enter", "4", "enter", "2026-11-25 10:00", "tab"}, "K1, last change: 2026-11-25 10:00 lies in the future", cell{0, larvae}, false},
		"hours without end":     {[]string{"r", "905", "tab"}, "K1, last change: 905 hours ago is long", cell{1, state}, false},
		"no such day":           {[]string{"h", "P", "enter", "11-31", "tab"}, `K1, hatched: "11-31" is no hatch`, cell{0, changed}, false},
		"a hatch to come":       {[]string{"h", "P", "enter", "2026-12-01", "tab"}, "K1, hatched: 2026-12-01 lies in the future", cell{0, changed}, false},
		"a length out of reach": {[]string{"h", "P", "enter", "4", "enter", "26", "enter", "enter", "72000", "*"}, "K1, mean length: 72000 cannot be true", cell{0, length}, true},
		"no batch":              {[]string{"h", "*"}, "K1, batch: is missing", cell{0, batch}, true},
		"no hatch":              {[]string{"h", "P", "enter", "enter", "26", "*"}, "K1, hatched: is missing", cell{0, hatched}, true},
		"no change":             {[]string{"h", "P", "enter", "4", "*"}, "K1, last change: is missing", cell{0, changed}, true},
		"no larvae at all":      {[]string{"h", "P", "enter", "4", "enter", "26", "enter", "0", "*"}, "K1, larvae: 0 cannot be true", cell{0, larvae}, true},
		"hatched after the change": {
			[]string{"h", "P", "enter", "1", "enter", "49", "*"}, "K1, hatched: 2026-11-24 is after the stocking on 2026-11-23", cell{0, hatched}, true,
		},
		"two hatches of a batch": {
			[]string{"h", "P", "enter", "4", "enter", "26", "down", "up", "down", "h", "P", "tab", "5", "enter", "+", "*"},
			"K2, hatched: batch P was entered as hatched on 2026-11-21",
			cell{1, hatched},
			true,
		},
		"a state taken back": {[]string{"h", "P", "left", "backspace", "*"}, "K1, state: is missing", cell{0, state}, true},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			s, _, k := opened(t)
			sent := typed(t, s, c.keys...)
			f := frame(s)
			if !strings.Contains(f, c.want) {
				t.Fatalf("%q is not said:\n%s", c.want, f)
			}
			if s.at != c.at || s.phase != typing || len(k.Entries) != 0 {
				t.Errorf("cursor at %v, phase %v; want %v and nothing entered", s.at, s.phase, c.at)
			}
			if c.review && (len(sent) == 0 || sent[len(sent)-1] != (screen.Beep{Times: 1})) {
				t.Errorf("sent %v; want a beep", sent)
			}
		})
	}
}

// A refusal of the ledger stands only until its row changes.
func TestRefusalGoesWithTheText(t *testing.T) {
	s, d, _ := opened(t)
	typed(t, s, "h", "P", "enter", "1", "enter", "49", "*")
	typed(t, s, "backspace", "9")
	if f := frame(s); strings.Contains(f, "is after the stocking") {
		t.Errorf("the refusal stays:\n%s", f)
	}
	typed(t, s, "*", "enter")
	if len(d.Ledger.Entries()) != 1 {
		t.Errorf("entries %q; want one", written(d))
	}
}

func TestTanksWithEntriesAreLeftAlone(t *testing.T) {
	d, k := desktest.Desk(t)
	s := New(d).(*Inventory)
	before := len(k.Entries)
	if s.rows[s.at.row].tank != "K2" {
		t.Errorf("the cursor begins at %s; want K2, the first of which nothing is known", s.rows[s.at.row].tank)
	}
	f := frame(s)
	for _, want := range []string{"6 entered before", "P-03           2026-11-07", "K4   dirty", "OPENING INVENTORY  0 of 3 tanks typed"} {
		if !strings.Contains(f, want) {
			t.Errorf("%q does not show:\n%s", want, f)
		}
	}
	// A batch that is known brings its hatch, and its spelling.
	typed(t, s, "h", "p-05", "enter", "26", "enter", "500", "*", "enter")
	if got := written(d)[before:]; len(got) != 1 || got[0] != "Tue 07:14 K2 stocked with batch P-05, hatched 2026-11-21, 500 larvae" {
		t.Errorf("entries %q", got)
	}
	for range 12 {
		typed(t, s, "down")
		if name := s.rows[s.at.row].tank; name != "K5" && name != "L3" && name != "K2" {
			t.Fatalf("the cursor stands on %s, which was entered before", name)
		}
	}
}

func TestAllKnown(t *testing.T) {
	d, _ := desktest.Empty(t)
	for _, tank := range d.Ledger.Room().Tanks {
		desktest.Enter(t, d, time.Hour, &model.Filled{Tank: tank.Name})
	}
	s := New(d).(*Inventory)
	if f := frame(s); !strings.Contains(f, "every tank is entered") {
		t.Error(f)
	}
	for _, key := range []string{"h", "+", "enter", "*", "down", "tab", "backspace", "7"} {
		typed(t, s, key)
	}
	if s.phase != typing || len(s.filled()) != 0 {
		t.Errorf("something can be typed in a room that is entered:\n%s", frame(s))
	}
}

func TestReadOnly(t *testing.T) {
	s, d, _ := opened(t)
	d.ReadOnly = "MO writes this room on another PC"
	typed(t, s, "h", "P", "enter", "4", "enter", "26")
	sent := typed(t, s, "*")
	if len(sent) != 1 || s.phase != typing || !strings.Contains(frame(s), "MO writes this room") {
		t.Errorf("sent %v:\n%s", sent, frame(s))
	}
	if got := s.rows[0].text(changed); got != "26" {
		t.Errorf("last change %q; want what was typed", got)
	}
}

func TestEscAsks(t *testing.T) {
	s, _, _ := opened(t)
	if sent := typed(t, s, "esc"); len(sent) != 1 || sent[0] != (screen.Back{}) {
		t.Errorf("esc of an empty table sent %v", sent)
	}
	typed(t, s, "h", "P")
	if sent := typed(t, s, "esc"); len(sent) != 0 || !strings.Contains(frame(s), "Leave without what was typed of 1 tank?") {
		t.Errorf("sent %v:\n%s", sent, frame(s))
	}
	typed(t, s, "esc", "x")
	if got := s.rows[0].text(batch); got != "Px" {
		t.Errorf("batch %q after the question; want to go on typing", got)
	}
	if sent := typed(t, s, "esc", "enter"); len(sent) != 1 || sent[0] != (screen.Back{}) {
		t.Errorf("sent %v; want to leave", sent)
	}
}

// Hours ago count from when they were typed, however long the rest takes.
func TestHoursStay(t *testing.T) {
	s, d, _ := opened(t)
	typed(t, s, "h", "P", "enter", "4", "enter", "26", "enter")
	d.Now = d.Now.Add(7 * time.Minute)
	typed(t, s, "*", "enter")
	if got := written(d)[0]; !strings.HasPrefix(got, "Tue 07:14") {
		t.Errorf("entered as %q; want Tue 07:14", got)
	}
}

func TestAsAbove(t *testing.T) {
	s, _, _ := opened(t)
	if sent := typed(t, s, "+"); len(sent) != 1 || !strings.Contains(frame(s), "no tank above has its state") {
		t.Errorf("sent %v:\n%s", sent, frame(s))
	}
	typed(t, s, "h", "A+B", "enter")
	if got := s.rows[0].text(batch); got != "A+B" {
		t.Errorf("batch %q; a plus within a name is a plus", got)
	}
	typed(t, s, "down", "+", "+")
	if s.rows[1].state != model.Holding || s.rows[1].text(batch) != "A+B" {
		t.Errorf("row %q %q; want the state and the batch of the one above", s.rows[1].state, s.rows[1].text(batch))
	}
}

func TestKeysAreSound(t *testing.T) {
	s, _, _ := opened(t)
	check := func(when string) {
		for _, p := range keys.Problems(s.Keys(), keys.Everywhere()) {
			t.Errorf("%s: %s", when, p)
		}
	}
	check("typing")
	typed(t, s, "r", "*")
	check("asking")
	typed(t, s, "esc", "esc")
	check("leaving")
}
