package tank

import (
	"errors"
	"fmt"
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

// tank opens the screen of a tank of the invented room.
func tank(t testing.TB, name string) (*Tank, *desk.Desk, *desktest.Keeper) {
	t.Helper()
	d, k := desktest.Desk(t)
	return New(d, name).(*Tank), d, k
}

// typed presses keys and types words, and gives what the screen sent.
func typed(t testing.TB, s *Tank, words ...string) []tea.Msg {
	t.Helper()
	next, sent := screentest.Type(s, words...)
	if next != screen.Screen(s) {
		t.Fatalf("%v opened another screen", words)
	}
	return sent
}

func frame(s *Tank) string { return screentest.Join(s.View(100, 36)) }

func last(d *desk.Desk) string {
	entries := d.Ledger.Entries()
	return model.Sentence(entries[len(entries)-1].Fact)
}

// Each key enters its kind of fact, with the tank known.
func TestKeysEnterTheirFacts(t *testing.T) {
	cases := map[string]struct {
		tank string
		keys []string
		want string
	}{
		"temperature":   {"K3", []string{"t", "27,4", "enter"}, "K3 27.4 °C"},
		"note":          {"K3", []string{"n", "lid left open", "enter"}, "K3: lid left open"},
		"suspect":       {"K3", []string{"x", "pale gut", "enter"}, "K3 marked suspect (pale gut)"},
		"no suspect":    {"K1", []string{"x", "enter"}, "K1 no longer suspect"},
		"count":         {"K3", []string{"c", "38 42 50", "enter", "10", "enter", "2000", "enter", "enter"}, "K3 counted: 38, 42, 50 live in 10 mL out of 2000 mL"},
		"removed":       {"K3", []string{"d", "200", "enter", "sample", "enter"}, "K3: 200 larvae removed, sample"},
		"ended":         {"K3", []string{"e", "1", "enter", "enter", "enter"}, "K3 ended: settled"},
		"washed":        {"K4", []string{"w", "40", "enter", "3.96", "enter"}, "K4 washed with 40 mL acid"},
		"filled":        {"L1", []string{"f", "27.5", "enter"}, "L1 filled, 27.5 °C"},
		"out":           {"K4", []string{"v", "leak", "enter"}, "K4 out of use (leak)"},
		"back":          {"L4", []string{"v", "enter"}, "L4 back in use"},
		"stocked":       {"L2", []string{"i", "P-06", "enter", "2026-11-24", "enter", "9000", "enter", "enter"}, "L2 stocked with batch P-06, hatched 2026-11-24, 9000 larvae"},
		"first of all":  {"K5", []string{"f", "enter"}, "K5 filled"},
		"water of L2":   {"L2", []string{"t", "26.9", "enter"}, "L2 26.9 °C"},
		"alarm is seen": {"K3", []string{"a"}, "K3: seen: overdue"},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			s, d, k := tank(t, c.tank)
			if name == "alarm is seen" {
				d.Now = d.Now.Add(7 * time.Hour)
			}
			before := len(k.Entries)
			sent := typed(t, s, c.keys...)
			if len(k.Entries) != before+1 || last(d) != c.want {
				t.Fatalf("%d entries, the last %q; want %q\n%s", len(k.Entries)-before, last(d), c.want, frame(s))
			}
			if s.slip != nil {
				t.Error("the form stays open")
			}
			if toast, ok := sent[0].(screen.Toast); !ok || toast.Mood != screen.Saved {
				t.Errorf("sent %v; want that it is saved", sent)
			}
		})
	}
}

func TestKeysThatAreOffSayWhy(t *testing.T) {
	for _, c := range []struct{ tank, key, why string }{
		{"K4", "c", "holds no larvae"},
		{"K4", "e", "holds no larvae"},
		{"K4", "m", "holds no larvae"},
		{"K4", "g", "holds no larvae"},
		{"K4", "f", "it is dirty and cannot be filled"},
		{"K4", "i", "it is dirty and cannot be stocked"},
		{"K3", "w", "it is holding and cannot be washed"},
		{"K3", "v", "move them first"},
		{"K3", "i", "it is holding"},
		{"L4", "t", "out of use"},
		{"K3", "a", "no alarm"},
		{"Z9", "t", "no such tank"},
	} {
		s, _, k := tank(t, c.tank)
		before := len(k.Entries)
		sent := typed(t, s, c.key)
		if len(sent) != 1 || s.slip != nil || len(k.Entries) != before {
			t.Fatalf("%s on %s: sent %v", c.key, c.tank, sent)
		}
		if toast := sent[0].(screen.Toast); !strings.Contains(toast.Text, c.why) {
			t.Errorf("%s on %s says %q; want %q", c.key, c.tank, toast.Text, c.why)
		}
	}
}

// What a key says of a tank's state is what the ledger says of the entry.
func TestOffAgreesWithTheLedger(t *testing.T) {
	number := 27.5
	hatched, _ := model.ParseHatched("2026-11-24")
	facts := map[keys.Action]func(string) model.Fact{
		"temperature": func(n string) model.Fact { return &model.Temperature{Tank: n, Celsius: number} },
		"count":       func(n string) model.Fact { return &model.Count{Tank: n, Live: []int{4}, SampleML: 1, HoldingML: 2} },
		"note":        func(n string) model.Fact { return &model.Noted{Tank: n, Text: "x"} },
		"washed":      func(n string) model.Fact { return &model.Washed{Tank: n} },
		"filled":      func(n string) model.Fact { return &model.Filled{Tank: n} },
		"stocked":     func(n string) model.Fact { return &model.Stocked{Tank: n, Batch: "Q", Hatched: hatched} },
		"ended":       func(n string) model.Fact { return &model.Ended{Tank: n, Why: model.Lost} },
		"removed":     func(n string) model.Fact { return &model.Removed{Tank: n, Larvae: 5, Why: "x"} },
	}
	for _, name := range []string{"K1", "K3", "K4", "K5", "L1", "L2", "L4"} {
		s, d, _ := tank(t, name)
		now, _ := s.now()
		for _, k := range kinds() {
			fact, asked := facts[k.action]
			if !asked {
				continue
			}
			err := d.Ledger.Check(&model.Entry{At: d.Now, Fact: fact(name)}, d.Now)
			if (err != nil) != (k.off(now) != "") {
				t.Errorf("%s of %s: the key says %q, the ledger %v", k.action, name, k.off(now), err)
			}
		}
	}
}

func TestOpensOtherScreens(t *testing.T) {
	s, _, _ := tank(t, "k3")
	for key, want := range map[string]tea.Msg{
		"m":   screen.Open{Name: "scope", Arg: "K3"},
		"g":   screen.Open{Name: "batch", Arg: "P-03"},
		"esc": screen.Back{},
	} {
		if sent := typed(t, s, key); len(sent) != 1 || sent[0] != want {
			t.Errorf("%s sent %v; want %v", key, sent, want)
		}
	}
}

func TestOddIsSavedAndRung(t *testing.T) {
	s, d, _ := tank(t, "K3")
	typed(t, s, "t", "33")
	if f := frame(s); !strings.Contains(f, "outside the bearable 25 to 31.5") || !strings.Contains(f, "since the last reading") {
		t.Errorf("the odd reading is not marked before it is saved:\n%s", f)
	}
	sent := typed(t, s, "enter")
	if last(d) != "K3 33 °C" || len(sent) != 2 || sent[1] != (screen.Beep{Times: 2}) {
		t.Errorf("last %q, sent %v; want it saved and rung twice", last(d), sent)
	}
	if f := frame(s); !strings.Contains(f, "too warm") || !strings.Contains(f, "heater or chiller") {
		t.Errorf("the alarm and its advice are not shown:\n%s", f)
	}
}

func TestRefusalStaysInTheForm(t *testing.T) {
	s, _, k := tank(t, "K3")
	before := len(k.Entries)
	sent := typed(t, s, "t", "270", "enter")
	if len(sent) != 1 || sent[0] != (screen.Beep{Times: 1}) || !strings.Contains(frame(s), "270 cannot be true") {
		t.Errorf("sent %v\n%s", sent, frame(s))
	}
	if sent := typed(t, s, "backspace", ".", "5", ".", "enter"); len(k.Entries) != before+1 || sent[0] != (screen.Beep{Times: 1}) {
		t.Errorf("%d entries; want 27.5 taken after the slip was mended, sent %v", len(k.Entries)-before, sent)
	}
}

func TestAFailingKeeperLosesNothing(t *testing.T) {
	s, d, k := tank(t, "K3")
	k.Fail = errors.New("no space left on device")
	typed(t, s, "n", "lid left open", "enter")
	if s.slip == nil || !strings.Contains(frame(s), "not saved: no space left on device") || !strings.Contains(frame(s), "lid left open") {
		t.Fatalf("frame\n%s", frame(s))
	}
	if strings.Contains(last(d), "lid") {
		t.Error("what was not saved stands in the ledger")
	}
	k.Fail = nil
	if typed(t, s, "enter"); last(d) != "K3: lid left open" || s.slip != nil {
		t.Errorf("the next try: last %q", last(d))
	}
}

func TestEscapeAsksWhereSomethingWasTyped(t *testing.T) {
	s, _, _ := tank(t, "K3")
	typed(t, s, "n", "esc")
	if s.slip != nil {
		t.Error("an empty form asks before it closes")
	}
	typed(t, s, "n", "x", "esc")
	if s.slip == nil || !strings.Contains(frame(s), "Throw away") {
		t.Fatalf("frame\n%s", frame(s))
	}
	typed(t, s, "esc", "y", "enter")
	if s.story.gather(s.desk, "K3"); model.Sentence(s.story.events[0].Fact) != "K3: xy" {
		t.Errorf("after no and more typing: %s", model.Sentence(s.story.events[0].Fact))
	}
}

func TestEndNamesWhatLeaves(t *testing.T) {
	s, d, _ := tank(t, "K3")
	typed(t, s, "e", "2", "enter", "enter")
	if f := frame(s); !strings.Contains(f, "batch P-03, about") || !strings.Contains(f, "are discarded") {
		t.Errorf("the question does not name it:\n%s", f)
	}
	if strings.Contains(last(d), "ended") {
		t.Fatal("ended before the answer")
	}
}

func TestCountIsReckonedBeforeItIsSaved(t *testing.T) {
	cases := map[string]struct{ live, want string }{
		"even":          {"38 42 50", "mixing even"},
		"one subsample": {"38", "says nothing of the mixing"},
		"uneven":        {"38 90 41", "UNEVEN"},
		"settling":      {"90 60 31", "FALL from the first"},
		"few":           {"3 4 2", "more such subsamples"},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			s, _, _ := tank(t, "K3")
			typed(t, s, "c", c.live, "enter", "10", "enter", "2000")
			if f := frame(s); !strings.Contains(f, c.want) || !strings.Contains(f, "a litre") {
				t.Errorf("the frame lacks %q:\n%s", c.want, f)
			}
		})
	}
	s, _, _ := tank(t, "K3")
	typed(t, s, "c", "10 10 10", "enter", "10", "enter", "2000")
	// 10 larvae in 10 mL of 2000 mL are 2000; Garwood 1936 gives 20.24 to 42.83 for 30 seen.
	if f := frame(s); !strings.Contains(f, "2 000 (1 349 to 2 855) larvae") {
		t.Errorf("the interval is not Garwood's:\n%s", f)
	}
}

func TestAcidHasItsCautionsBesideIt(t *testing.T) {
	s, _, _ := tank(t, "K4")
	typed(t, s, "w")
	f := screentest.Join(s.View(80, 23))
	for _, want := range []string{"Goggles", "Acid into water", "chlorine gas", "safety data sheet", "10 mL of acid a litre"} {
		if !strings.Contains(strings.ReplaceAll(f, "\n", " "), want) {
			t.Errorf("at 80x24 the form for acid lacks %q:\n%s", want, f)
		}
	}
}

func TestFiguresCarryTheirAge(t *testing.T) {
	s, d, _ := tank(t, "K3")
	f := frame(s)
	for _, want := range []string{"DUE", "P-03 day 18", "27.1 °C, 2 h 00 min ago", "steady, as far as 8 readings tell", "limit 100", "mean 7", "µm a day", "300 µm for the age", "fed ", "6 lobes"} {
		if !strings.Contains(f, want) {
			t.Errorf("the figures lack %q:\n%s", want, f)
		}
	}
	d.Now = d.Now.Add(23 * time.Hour)
	if f := frame(s); !strings.Contains(f, "27.1 °C?, 25 h 00 min ago") || !strings.Contains(f, "OVERDUE") {
		t.Errorf("a day later the temperature looks fresh:\n%s", f)
	}
}

func TestHeading(t *testing.T) {
	cases := map[string]struct {
		hoursAgo []float64
		celsius  []float64
		want     string
	}{
		"one reading":           {[]float64{1}, []float64{28}, "no trend yet"},
		"two readings":          {[]float64{2, 1}, []float64{28, 29}, "31.5 °C in 1 h 30 min by two readings only"},
		"no change":             {[]float64{3, 2, 1}, []float64{28, 28.1, 28}, "steady, as far as 3 readings tell"},
		"falling":               {[]float64{3, 2, 1, 0}, []float64{28, 27.5, 27, 26.5}, "falling 0.5 °C an hour, 25.0 °C in 3 h 00 min"},
		"reached by the clock":  {[]float64{9, 8}, []float64{28, 30}, "31.5 °C reached by now, read again"},
		"outside":               {[]float64{2, 1}, []float64{28, 32}, "OUTSIDE 25.0 to 31.5 °C"},
		"two days and no edge":  {[]float64{30, 20, 10, 0}, []float64{27, 27.3, 27.6, 27.9}, "no edge within two days"},
		"further than they say": {[]float64{1.5, 1, 0.5, 0}, []float64{27, 27.25, 27.5, 27.75}, "far ahead of the readings"},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			d, _ := desktest.Empty(t)
			desktest.Enter(t, d, 48*time.Hour, &model.Filled{Tank: "K3"})
			for i, ago := range c.hoursAgo {
				desktest.Enter(t, d, time.Duration(ago*float64(time.Hour)), &model.Temperature{Tank: "K3", Celsius: c.celsius[i]})
			}
			now, _ := d.Ledger.Tank("K3")
			if got := headingWords(d, now); !strings.Contains(got, c.want) {
				t.Errorf("got %q, want %q", got, c.want)
			}
		})
	}
}

func TestStoryIsNewestFirstAndScrolls(t *testing.T) {
	s, d, _ := tank(t, "K3")
	desktest.Enter(t, d, 0, &model.Noted{Tank: "K3", Text: "the very last"})
	desktest.Enter(t, d, 0, &model.Noted{Tank: "K1", Text: "of another tank"})
	f := frame(s)
	if !strings.Contains(f, "Wed 25 Nov 09:14  KT  K3: the very last") || strings.Contains(f, "of another tank") {
		t.Errorf("frame\n%s", f)
	}
	typed(t, s, "end")
	if f := frame(s); !strings.Contains(f, "K3 filled") || strings.Contains(f, "the very last") {
		t.Errorf("the end of the story is not shown:\n%s", f)
	}
	typed(t, s, "home", "down", "pgdown", "up", "pgup", "pgup")
	if s.story.top != 0 {
		t.Errorf("top %d; want the beginning", s.story.top)
	}
}

// A story follows a correction at once.
func TestStoryFollowsTheLedger(t *testing.T) {
	s, d, _ := tank(t, "K3")
	desktest.Enter(t, d, 0, &model.Noted{Tank: "K3", Text: "a slip"})
	if f := frame(s); !strings.Contains(f, "a slip") {
		t.Fatal("the note is not there")
	}
	if _, err := d.Undo(); err != nil {
		t.Fatal(err)
	}
	if f := frame(s); strings.Contains(f, "a slip") {
		t.Errorf("a void note is still told:\n%s", f)
	}
}

func TestKeyTables(t *testing.T) {
	for _, name := range []string{"K3", "K4", "L4", "Z9"} {
		s, _, _ := tank(t, name)
		if got := keys.Problems(s.Keys(), keys.Everywhere()); len(got) > 0 {
			t.Errorf("%s: %v", name, got)
		}
	}
}

func TestEverySize(t *testing.T) {
	s, d, _ := tank(t, "K3")
	desktest.Enter(t, d, 0, &model.Noted{Tank: "K3", Text: "室\u0301 wide \U0001F980 \u202e and\nbroken"})
	desktest.Enter(t, d, 0, &model.Suspect{Tank: "K3", On: true, Why: strings.Repeat("long ", 60)})
	screentest.EverySize(t, s.View)
	d.Now = d.Now.Add(60 * time.Hour)
	screentest.EverySize(t, s.View)
	typed(t, s, "c", "38 42 71", "enter", "10", "enter", "2000")
	screentest.EverySize(t, s.View)
	typed(t, s, "enter", "2", "enter", "esc")
	screentest.EverySize(t, s.View)
	other, _, _ := tank(t, "nowhere")
	screentest.EverySize(t, other.View)
}

func BenchmarkView(b *testing.B) {
	s, d, _ := tank(b, "K3")
	for i := range 20_000 {
		desktest.Enter(b, d, 0, &model.Noted{Tank: "K3", Text: fmt.Sprint("remark ", i)})
	}
	b.ReportAllocs()
	for b.Loop() {
		s.View(120, 39)
	}
}
