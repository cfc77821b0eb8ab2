package batch

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/tui/desk/desktest"
	"drainboard/tui/keys"
	"drainboard/tui/screen"
	"drainboard/tui/screen/screentest"
	"drainboard/tui/theme"
)

// shows fails unless each of the words stands in the frame.
func shows(t *testing.T, frame string, words ...string) {
	t.Helper()
	for _, want := range words {
		if !strings.Contains(frame, want) {
			t.Errorf("%q does not show in\n%s", want, frame)
		}
	}
}

func TestOpensTheBatchAskedFor(t *testing.T) {
	d, _ := desktest.Desk(t)
	endedBatch(t, d)
	for _, c := range []struct{ name, arg, want string }{
		{"by name", "P-05", " P-05  day 4  in K1"},
		{"an ended one", "P-01", " P-01  ENDED Tue 17 Nov, day 28: settled  hatched Tue 20 Oct, pen 1"},
		{"without a name the first in the room", "", " P-03  day 18  in K3"},
		{"not in the room", "P-77", " The room has no batch P-77."},
	} {
		t.Run(c.name, func(t *testing.T) {
			shows(t, frame(New(d, c.arg).(*Batch)), c.want)
		})
	}
}

// Without any batch in the room an ended one is shown; without any at all, words.
func TestNeverAnEmptyPage(t *testing.T) {
	d, _ := desktest.Empty(t)
	s := New(d, "").(*Batch)
	for _, page := range []string{"1", "2", "3", "4"} {
		typed(t, s, page)
		shows(t, frame(s), "No batch was stocked yet.", "Esc goes back.")
	}
	endedBatch(t, d)
	shows(t, frame(New(d, "").(*Batch)), " P-01  ENDED")
	young, _ := shown(t, "P-05")
	for page, words := range map[string][]string{
		"1": {"none of P-05 were read yet", "no ready day: lengths of fewer than three days (of 0 so far)", "no lengths yet", "1 150 µm is the program's default and from memory"},
		"2": {"no lengths yet", "no ready day yet"},
		"3": {"as told at the stocking and never counted?", "none to judge", "what went over the side is not known", "nothing was removed, culled, lost or settled"},
		"4": {"never fed", "no temperature of its tanks", "none yet"},
	} {
		typed(t, young, page)
		shows(t, frame(young), words...)
	}
}

func TestPagesTurn(t *testing.T) {
	s, _ := shown(t, "P-03")
	for _, c := range []struct {
		key  string
		want page
	}{
		{"right", allPage},
		{"right", survivalPage},
		{"right", storyPage},
		{"right", growthPage},
		{"left", storyPage},
		{"left", survivalPage},
		{"2", allPage},
		{"1", growthPage},
		{"4", storyPage},
		{"3", survivalPage},
	} {
		if typed(t, s, c.key); s.page != c.want {
			t.Fatalf("after %s page %d; want %d", c.key, s.page, c.want)
		}
	}
}

// Those in the room come first, then the ended ones; round and round.
func TestNextAndPreviousBatch(t *testing.T) {
	s, d := shown(t, "P-03")
	endedBatch(t, d)
	for _, c := range []struct{ key, want string }{
		{"n", "P-05"},
		{"n", "P-01"},
		{"n", "P-03"},
		{"p", "P-01"},
		{"p", "P-05"},
	} {
		if typed(t, s, c.key); s.name != c.want {
			t.Fatalf("after %s %s; want %s", c.key, s.name, c.want)
		}
	}
	lost := New(d, "P-77").(*Batch)
	if typed(t, lost, "n"); lost.name != "P-03" {
		t.Errorf("from an unknown batch to %s; want the first", lost.name)
	}
}

func TestKeysThatLeadElsewhere(t *testing.T) {
	s, d := shown(t, "P-03")
	for key, want := range map[string]tea.Msg{
		"esc": screen.Back{},
		"t":   screen.Open{Name: "tank", Arg: "K3"},
		"a":   screen.Toast{Text: "not now: it is for the survival page", Mood: screen.Refused},
	} {
		if sent := typed(t, s, key); len(sent) != 1 || sent[0] != want {
			t.Errorf("%s sent %v; want %v", key, sent, want)
		}
	}
	endedBatch(t, d)
	typed(t, s, "p")
	want := screen.Toast{Text: "not now: no tank holds the batch", Mood: screen.Refused}
	if sent := typed(t, s, "t"); len(sent) != 1 || sent[0] != want {
		t.Errorf("t at an ended batch sent %v; want %v", sent, want)
	}
}

// Braille by a key, and by no key where the terminal has ASCII alone.
func TestBraille(t *testing.T) {
	s, d := shown(t, "P-03")
	dotted := func() bool {
		return strings.ContainsFunc(frame(s), func(r rune) bool { return r > 0x2800 && r < 0x2900 })
	}
	if dotted() {
		t.Error("dots without being asked for")
	}
	if typed(t, s, "b"); !dotted() {
		t.Errorf("no dots after b:\n%s", frame(s))
	}
	d.Theme = theme.Bare(true)
	if dotted() {
		t.Error("dots in ASCII")
	}
	want := screen.Toast{Text: "not now: the screen is drawn in ASCII", Mood: screen.Refused}
	if sent := typed(t, s, "b"); len(sent) != 1 || sent[0] != want {
		t.Errorf("b in ASCII sent %v; want %v", sent, want)
	}
}

func TestWordsScroll(t *testing.T) {
	s, _ := shown(t, "P-03")
	typed(t, s, "4")
	before := screentest.Join(s.View(80, 23))
	typed(t, s, "pgdown", "down")
	if after := screentest.Join(s.View(80, 23)); after == before || !strings.Contains(after, "waters °C") {
		t.Errorf("PgDn does not read on:\n%s", after)
	}
	if typed(t, s, "3"); s.read.Top != 0 {
		t.Errorf("a new page begins at line %d; want its beginning", s.read.Top)
	}
}

// What is entered shows at once, and an undone entry no more.
func TestFollowsTheLedger(t *testing.T) {
	s, d := shown(t, "P-05")
	shows(t, frame(s), "none of P-05 were read yet")
	desktest.Enter(t, d, 0, &model.Sizes{Tank: "K1", UM: []float64{310, 322, 305}})
	shows(t, frame(s), "3 readings of 1 day")
	if _, err := d.Undo(); err != nil {
		t.Fatal(err)
	}
	shows(t, frame(s), "none of P-05 were read yet")
}

func TestKeyTables(t *testing.T) {
	d, _ := desktest.Desk(t)
	endedBatch(t, d)
	for _, name := range []string{"P-03", "P-01", "P-77"} {
		s := New(d, name).(*Batch)
		for p := range pages {
			s.page = p
			if got := keys.Problems(s.Keys(), keys.Everywhere()); len(got) > 0 {
				t.Errorf("%s, page %d: %v", name, p, got)
			}
			if n := len(s.Keys().With(keys.Everywhere()).Footer()); n > keys.FooterKeys {
				t.Errorf("%s, page %d: %d keys in the footer", name, p, n)
			}
		}
	}
}

func TestEverySize(t *testing.T) {
	d, _ := desktest.Desk(t)
	endedBatch(t, d)
	desktest.Enter(t, d, 0, &model.Look{Tank: "K3", Text: "室\u0301 wide \U0001F980 \u202e and " + strings.Repeat("long ", 30)})
	desktest.Enter(t, d, 0, &model.Removed{Tank: "K3", Larvae: 2, Why: "e\u0301 室"})
	for _, c := range []struct {
		name string
		dots bool
		look theme.Theme
	}{
		{"P-03", false, theme.Bare(false)},
		{"P-05", false, theme.Bare(false)},
		{"P-01", true, theme.Build(true, theme.Ansi256, false)},
		{"P-03", false, theme.Bare(true)},
		{"nowhere", false, theme.Bare(false)},
	} {
		d.Theme = c.look
		s := New(d, c.name).(*Batch)
		s.dots = c.dots
		for s.page = range pages {
			screentest.EverySize(t, s.View)
		}
	}
}

func BenchmarkView(b *testing.B) {
	d, _ := desktest.Desk(b)
	endedBatch(b, d)
	for p, name := range []string{"growth", "all", "survival", "story"} {
		s := New(d, "P-03").(*Batch)
		s.page = page(p)
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				s.View(120, 39)
			}
		})
	}
	s := New(d, "P-03").(*Batch)
	b.Run("figures anew", func(b *testing.B) {
		for b.Loop() {
			s.known = known{}
			s.View(120, 39)
		}
	})
}

// hides fails where one of the words stands in the frame.
func hides(t *testing.T, frame string, words ...string) {
	t.Helper()
	for _, word := range words {
		if strings.Contains(frame, word) {
			t.Errorf("%q shows in\n%s", word, frame)
		}
	}
}
