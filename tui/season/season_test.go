package season

import (
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/tui/desk/desktest"
	"drainboard/tui/keys"
	"drainboard/tui/screen"
	"drainboard/tui/screen/screentest"
)

func typed(t testing.TB, s *Season, words ...string) []tea.Msg {
	t.Helper()
	next, sent := screentest.Type(s, words...)
	if next != screen.Screen(s) {
		t.Fatalf("%v opened another screen", words)
	}
	return sent
}

func TestGolden(t *testing.T) {
	for _, size := range [][2]int{{80, 23}, {120, 39}} {
		w, h := size[0], size[1]
		s := opened(t)
		golden(t, s, "batches", w, h)
		typed(t, s, "up", "up")
		golden(t, s, "not-counted", w, h)
		typed(t, s, "right")
		golden(t, s, "habits", w, h)
		typed(t, s, "down", "down", "down", "o")
		golden(t, s, "density-growth", w, h)
		typed(t, s, "y", "y")
		golden(t, s, "one-year", w, h)
		d, _ := desktest.Empty(t)
		golden(t, New(d).(*Season), "empty", w, h)
	}
	golden(t, opened(t), "batches", 40, 10)
}

// What is not known says so and never looks like a figure.
func TestUnknownsShow(t *testing.T) {
	s := opened(t)
	f := frame(s)
	row := func(name string) string {
		for _, l := range strings.Split(f, "\n") {
			if strings.Contains(l, name) {
				return strings.Join(strings.Fields(l), " ")
			}
		}
		return ""
	}
	if got := row("Été-2"); !strings.Contains(got, "9 900 ? gone before") {
		t.Errorf("%q; want a batch that was never counted to show no survival", got)
	}
	if got := row("P-03"); !strings.Contains(got, "11 000 0 gone before") {
		t.Errorf("%q; want a batch all lost to show none alive", got)
	}
	if got := row("Q-1"); !strings.Contains(got, "2026-09-30 ? ") || !strings.Contains(got, "*") {
		t.Errorf("%q; want a batch stocked without a number to show ? and a star", got)
	}
}

func TestKeys(t *testing.T) {
	s := opened(t)
	for range pages {
		for _, p := range keys.Problems(s.Keys(), keys.Everywhere()) {
			t.Error(p)
		}
		typed(t, s, "tab")
	}
	if sent := typed(t, s, "enter"); len(sent) != 1 || sent[0] != (screen.Open{Name: "batch", Arg: "P-05"}) {
		t.Errorf("enter sent %v; want the youngest batch opened", sent)
	}
	typed(t, s, "home")
	if sent := typed(t, s, "enter"); sent[0] != (screen.Open{Name: "batch", Arg: "P-25"}) {
		t.Errorf("enter sent %v; want the first batch opened", sent)
	}
	if sent := typed(t, s, "o"); !strings.Contains(sent[0].(screen.Toast).Text, "page of the habits") {
		t.Errorf("o sent %v", sent)
	}
	if sent := typed(t, s, "esc"); len(sent) != 1 || sent[0] != (screen.Back{}) {
		t.Errorf("esc sent %v", sent)
	}
	typed(t, s, "right", "end", "down")
	if s.habit != 6 {
		t.Errorf("habit %d; want the last", s.habit)
	}
	if sent := typed(t, s, "enter"); !strings.Contains(sent[0].(screen.Toast).Text, "page of the batches") {
		t.Errorf("enter sent %v", sent)
	}
}

func TestYears(t *testing.T) {
	s := opened(t)
	for _, want := range []string{"all years: 8 batches", "2026: 7 batches", "2025: 1 batch ", "all years: 8 batches"} {
		if f := frame(s); !strings.Contains(f, want) {
			t.Errorf("%q does not show:\n%s", want, f)
		}
		typed(t, s, "y")
	}
	d, _ := desktest.Desk(t)
	one := New(d).(*Season)
	if sent := typed(t, one, "y"); !strings.Contains(sent[0].(screen.Toast).Text, "in one year") {
		t.Errorf("y sent %v", sent)
	}
}

// The comparisons never stand without what they are worth, down to the sizes at
// which two habits are all that fits.
func TestCaveatStandsBesideThem(t *testing.T) {
	s := opened(t)
	typed(t, s, "right")
	for _, size := range [][2]int{{120, 39}, {80, 23}, {60, 14}, {40, 9}} {
		f := strings.Join(strings.Fields(screentest.Join(s.View(size[0], size[1]))), " ")
		if !strings.Contains(f, "This proves nothing") {
			t.Errorf("at %v the caveat is missing:\n%s", size, f)
		}
	}
	f := frame(s)
	if !strings.Contains(f, "at the foot: 1 all lost") {
		t.Errorf("the lost batch is not said to stand at the foot:\n%s", f)
	}
	if !strings.Contains(f, "(n 7)") || strings.Contains(strings.ToLower(f), "signific") || strings.Contains(f, "p =") {
		t.Errorf("want n beside each correlation and no test:\n%s", f)
	}
}

// New entries show at once.
func TestFresh(t *testing.T) {
	d, _ := desktest.Desk(t)
	s := New(d).(*Season)
	before := frame(s)
	desktest.Enter(t, d, 0, &model.Ended{Tank: "K1", Why: model.Lost, Larvae: num(900)})
	if frame(s) == before {
		t.Error("an entry does not change the frame")
	}
	d.Now = d.Now.Add(49 * time.Hour)
	if f := frame(s); !strings.Contains(f, "changes past due") {
		t.Error(f)
	}
}

func TestEverySize(t *testing.T) {
	s := opened(t)
	screentest.EverySize(t, s.View)
	typed(t, s, "right")
	screentest.EverySize(t, s.View)
	d, _ := desktest.Empty(t)
	screentest.EverySize(t, New(d).View)
}

func TestHostileNames(t *testing.T) {
	d, _ := desktest.Empty(t)
	names := []string{"\u0301x", "a\u200db\u202ec", strings.Repeat("long ", 8), "\u5317\u4eac\u6c34", "e\u0301te\u0301"}
	for i, name := range names {
		play(t, d, brood{name, 20 * (len(names) - i), 10, 9000, float64(i), 0.5, 25, 80, 0, model.Settled})
	}
	s := New(d).(*Season)
	for range names {
		screentest.EverySize(t, s.View)
		typed(t, s, "up")
	}
	typed(t, s, "right")
	screentest.EverySize(t, s.View)
}
