package calendar

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/tui/desk"
	"drainboard/tui/keys"
	"drainboard/tui/screen"
	"drainboard/tui/screen/screentest"
	"drainboard/tui/text"
	"drainboard/tui/theme"
)

var update = flag.Bool("update", false, "write the frames to testdata")

// golden holds the frame of a screen, its keys beneath, to testdata.
func golden(t *testing.T, c *Calendar, name string, w, h int) {
	t.Helper()
	rows := c.View(w, h)
	screentest.Exact(t, rows, w, h)
	got := screentest.Join(append(rows, screen.Footer(c.Keys().With(keys.Everywhere()), c.desk.Theme, w)))
	file := filepath.Join("testdata", fmt.Sprintf("%s-%dx%d.txt", name, w, h))
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("%s\ngot\n%s\nwant\n%s", file, got, want)
	}
}

func shown(d *desk.Desk) *Calendar { return New(d).(*Calendar) }

func frame(c *Calendar, w, h int) string { return screentest.Join(c.View(w, h)) }

// limited is the busy room with a limit to a day's work.
func limited(t testing.TB, minutes float64) *desk.Desk {
	t.Helper()
	d := busy(t)
	d.Ledger.Room().House.DayMinutes = minutes
	return d
}

func TestGolden(t *testing.T) {
	for _, size := range [][2]int{{80, 23}, {120, 39}} {
		w, h := size[0], size[1]
		golden(t, shown(busy(t)), "days", w, h)
		full := shown(limited(t, 150))
		screentest.Type(full, "down")
		golden(t, full, "full", w, h)
		screentest.Type(full, "enter")
		golden(t, full, "day", w, h)
		screentest.Type(full, "esc", "l")
		golden(t, full, "level", w, h)
		hopeless := shown(limited(t, 60))
		screentest.Type(hopeless, "l")
		golden(t, hopeless, "hopeless", w, h)
		golden(t, shown(empty(t, "2026-11-25T09:14:05-05:00")), "empty", w, h)
	}
	small := shown(limited(t, 150))
	golden(t, small, "list", 60, 12)
}

func TestEverySize(t *testing.T) {
	d := limited(t, 150)
	d.Theme = theme.Build(true, theme.TrueColor, false)
	d.Ledger.Room().Tanks[1].Name = "Ä\x1b[31m\u0301漢字"
	c := shown(d)
	screentest.EverySize(t, c.View)
	for _, key := range []string{"enter", "l"} {
		screentest.Type(c, key)
		screentest.EverySize(t, c.View)
		screentest.Type(c, "esc")
	}
	screentest.EverySize(t, shown(empty(t, "2026-11-25T09:14:05-05:00")).View)
}

func TestKeys(t *testing.T) {
	c := shown(limited(t, 150))
	for _, press := range []string{"", "enter", "l"} {
		if press != "" {
			screentest.Type(c, press)
		}
		for _, p := range keys.Problems(c.Keys(), keys.Everywhere()) {
			t.Errorf("after %q: %s", press, p)
		}
		if press != "" {
			if _, sent := screentest.Type(c, "esc"); len(sent) != 0 || c.phase != table {
				t.Errorf("esc in %s sent %v; want the days", press, sent)
			}
		}
	}
	if _, sent := screentest.Type(c, "esc"); len(sent) != 1 || sent[0] != (screen.Back{}) {
		t.Errorf("esc sent %v; want to go back", sent)
	}
}

// A day that is too full says so in words and with a mark, without colour, in each
// layout.
func TestFullDaysAreSaidInWords(t *testing.T) {
	c := shown(limited(t, 150))
	for _, size := range [][2]int{{80, 23}, {120, 39}, {60, 14}, {40, 14}} {
		got := frame(c, size[0], size[1])
		if n := strings.Count(got, "! too full"); n < 6 {
			t.Errorf("at %v %d days are marked:\n%s", size, n, got)
		}
	}
	screentest.Type(c, "down")
	if got := frame(c, 80, 23); !strings.Contains(got, "! TOO FULL by") {
		t.Errorf("the chosen day does not say by how much:\n%s", got)
	}
}

func TestNoEmptyTankIsSaid(t *testing.T) {
	d := busy(t)
	put(t, d, "2026-11-25T09:10:00-05:00", &model.Service{Tank: "K6", Out: true})
	put(t, d, "2026-11-25T09:10:00-05:00", &model.Service{Tank: "L3", Out: true})
	got := frame(shown(d), 80, 23)
	if !strings.Contains(got, "! no empty") || !strings.Contains(got, "NO EMPTY TANK to move into") {
		t.Errorf("no empty tank is not said:\n%s", got)
	}
}

func TestWhatIsNotKnownHasAQuestionMark(t *testing.T) {
	d := busy(t)
	d.Ledger.Room().House.Wash.StockPercent = 0.1
	d.Ledger.Room().Algae = append(d.Ledger.Room().Algae, model.Alga{Name: "tet"})
	d.Ledger.Room().House.Ration[0].Share = map[string]float64{"tet": 1}
	c := shown(d)
	got := frame(c, 120, 39)
	for _, want := range []string{"tet ? L (its culture is not counted)", "acid not known: stock-percent", "?"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q does not show in\n%s", want, got)
		}
	}
	screentest.Type(c, "enter")
	if got := frame(c, 120, 60); !strings.Contains(got, "Litres are not known of tet") {
		t.Errorf("the page of the day does not say so:\n%s", got)
	}
}

// The figure of acid never stands without its cautions.
func TestCautionsStandBesideTheAcid(t *testing.T) {
	c := shown(busy(t))
	if got := frame(c, 80, 23); !strings.Contains(got, "320 mL acid") && !strings.Contains(got, "acid into") || !strings.Contains(got, "! acid: label and safety data sheet first") {
		t.Errorf("no caution in\n%s", got)
	}
	screentest.Type(c, "enter")
	if got := frame(c, 80, 40); !strings.Contains(got, "Never acid and bleach") {
		t.Errorf("the page of a day lacks the cautions:\n%s", got)
	}
}

// The calendar is made anew when an entry was made or the minute has changed, and
// the proposal with it.
func TestItFollowsTheRoom(t *testing.T) {
	d := limited(t, 150)
	c := shown(d)
	screentest.Type(c, "l")
	c.View(80, 23)
	before := c.level
	d.Now = d.Now.Add(20 * time.Second)
	if c.View(80, 23); c.level != before {
		t.Error("the proposal was worked out twice within a minute")
	}
	put(t, d, "2026-11-25T09:14:20-05:00", &model.Moved{From: "K1", To: "K6"})
	if c.View(80, 23); c.level == before {
		t.Error("the proposal is that of before the move")
	}
	screentest.Type(c, "esc")
	if got := frame(c, 80, 23); strings.Contains(got, "K1!!") || !strings.Contains(got, "K6") {
		t.Errorf("K1 has been moved into K6:\n%s", got)
	}
	d.Now = d.Now.Add(24 * time.Hour)
	c.Update(screen.Tick{Now: d.Now})
	if got := frame(c, 80, 23); !strings.Contains(got, "► Thu 26 Nov") || strings.Contains(got, "  Wed 25 Nov K") {
		t.Errorf("yesterday still shows:\n%s", got)
	}
}

func TestARoomWithoutACalendarSaysWhy(t *testing.T) {
	d := busy(t)
	d.Ledger.Room().House.ChangeHours = 0.5
	c := shown(d)
	if got := frame(c, 80, 23); !strings.Contains(got, "house.change_hours: 0.5") {
		t.Errorf("it does not say why:\n%s", got)
	}
	if why, refused := c.Keys().Refused(keys.Msg("l")); !refused || why == "" {
		t.Error("levelling is to be had")
	}
	screentest.EverySize(t, c.View)
}

func TestASCII(t *testing.T) {
	d := limited(t, 150)
	d.Theme = theme.Bare(true)
	for _, row := range shown(d).View(80, 23) {
		if strings.ContainsFunc(text.ASCII(row), func(r rune) bool { return r > '~' }) || text.Width(text.ASCII(row)) != 80 {
			t.Errorf("%q", row)
		}
	}
}

// BenchmarkFrame is what a person feels: a key on the calendar of a busy room.
func BenchmarkFrame(b *testing.B) {
	c := shown(limited(b, 150))
	var key tea.Msg = keys.Msg("down")
	for b.Loop() {
		c.Update(key)
		c.View(120, 39)
	}
}

// BenchmarkNewMinute works everything out again, the proposal as well.
func BenchmarkNewMinute(b *testing.B) {
	d := limited(b, 150)
	c := shown(d)
	screentest.Type(c, "l")
	for b.Loop() {
		d.Now = d.Now.Add(time.Minute)
		c.View(120, 39)
	}
}
