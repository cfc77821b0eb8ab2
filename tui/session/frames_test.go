package session

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/exp/golden"
	"pgregory.net/rapid"

	"drainboard/model"
	"drainboard/tui/keys"
	"drainboard/tui/screen"
	"drainboard/tui/screen/screentest"
	"drainboard/tui/text"
	"drainboard/tui/theme"
)

// oddRoom has names as people may type them.
func oddRoom(t testing.TB) *model.Room {
	room := testRoom(t)
	room.Name = "北 room with a long, long, long, long name"
	for i, name := range []string{"Köln 北 1", "a rather long name for a tank", "C3", "é", "+-*", "D2"} {
		room.Tanks[i].Name = name
	}
	room.Procedure[2].Why = "Köln 北 " + room.Procedure[2].Why
	return room
}

// wander presses keys at random, so that the screen comes into any state.
func wander(rt *rapid.T, c *crew) {
	press := []string{
		"enter", "enter", "enter", "enter", "+", "-", "*", "esc", "1", "2", "3", "4", "5", "6", ".", "x", "a", "d", "p", "r", "q",
		"up", "down", "tab", "backspace", "left", "pgdown", "well", "well", "well", "well", "well", "minute", "hour", "full", "kill",
		"27,4", "22.9", "40", "80", "北 why not", "a reason that is far too long to stand in one row of any screen, whatever its width may be",
	}
	for _, p := range rapid.SliceOfN(rapid.SampledFrom(press), 0, 60).Draw(rt, "keys") {
		switch p {
		case "well":
			if s := c.screen(); s.phase() == open && !s.running.reason.active && s.running.ask.kind == none && !s.running.washing && c.step() != "" {
				c.press(wellAnswer(s.now().prompt), "enter")
			}
		case "minute":
			c.pass(time.Minute)
		case "hour":
			c.desk.Now = c.desk.Now.Add(time.Hour)
			c.s.Update(screen.Tick{Now: c.desk.Now})
		case "full":
			c.keep.fail = map[bool]error{true: nil, false: errFull}[c.keep.fail != nil]
		case "kill":
			c.restart("KT")
		default:
			c.press(p)
		}
	}
}

// TestEveryFrameIsExact draws any state at any size.
func TestEveryFrameIsExact(t *testing.T) {
	themes := []theme.Theme{theme.Bare(false), theme.Bare(true), theme.Build(true, theme.Ansi256, false), theme.Build(false, theme.TrueColor, false)}
	rapid.Check(t, func(rt *rapid.T) {
		room := testRoom(t)
		var c *crew
		if rapid.Bool().Draw(rt, "odd names") {
			c = oddCrew(t, oddRoom(t))
		} else {
			room.House.Crew = rapid.IntRange(1, 2).Draw(rt, "crew")
			c = newCrew(t, room)
		}
		c.desk.Theme = rapid.SampledFrom(themes).Draw(rt, "theme")
		wander(rt, c)
		for range 12 {
			w, h := rapid.IntRange(20, 220).Draw(rt, "w"), rapid.IntRange(5, 70).Draw(rt, "h")
			exactly(rt, c.s.View(w, h), w, h)
			if c.desk.Theme.ASCII {
				for _, row := range c.s.View(w, h) {
					if text.Width(text.ASCII(row)) != w {
						rt.Fatalf("in ASCII at %dx%d: %q", w, h, row)
					}
				}
			}
		}
	})
}

func exactly(rt *rapid.T, rows []string, w, h int) {
	if len(rows) != h {
		rt.Fatalf("%d rows at %dx%d", len(rows), w, h)
	}
	blank := true
	for y, row := range rows {
		if text.Width(row) != w {
			rt.Fatalf("row %d at %dx%d is %d cells: %q", y, w, h, text.Width(row), row)
		}
		blank = blank && text.Fit("", w) == row
	}
	if blank {
		rt.Fatalf("blank at %dx%d", w, h)
	}
}

// oddCrew is the room of odd names, with two tanks due.
func oddCrew(t testing.TB, room *model.Room) *crew {
	c := newCrewOf(t, room, model.NewLedger(room))
	for i := range 3 {
		name := room.Tanks[i].Name
		c.at(start.Add(-47*time.Hour), &model.Filled{Tank: name, Celsius: num(28)})
		c.at(start.Add(-46*time.Hour), &model.Stocked{Tank: name, Batch: "batch 北 " + fmt.Sprint(i), Hatched: model.Hatched{Date: model.DayOf(start.Add(-300*time.Hour), room.Zone)}})
	}
	c.at(start.Add(-time.Hour), &model.Filled{Tank: room.Tanks[4].Name, Celsius: num(28)})
	c.open()
	return c
}

// TestAnswersAreNeverLost holds that whatever is pressed, what the keeper has is
// what the ledger says, and a restart shows the same step.
func TestAnswersAreNeverLost(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		c := newCrew(t, testRoom(t))
		wander(rt, c)
		if len(c.keep.entries) != c.desk.Ledger.Next()-1 {
			rt.Fatalf("%d entries kept, %d in the ledger", len(c.keep.entries), c.desk.Ledger.Next()-1)
		}
		step, phase := c.step(), c.screen().phase()
		l, err := model.LoadLedger(c.desk.Ledger.Room(), c.keep.entries)
		if err != nil {
			rt.Fatal(err)
		}
		c.desk.Ledger = l
		if phase == open && c.step() != step {
			rt.Fatalf("step %q, after a restart %q", step, c.step())
		}
	})
}

// scenes are the frames people see, by name.
func scenes(t *testing.T) []struct {
	name string
	crew *crew
} {
	at := func(step string, press ...string) *crew {
		c := begin(t)
		c.to(step)
		c.press(press...)
		return c
	}
	plan := newCrew(t, testRoom(t))
	changed := newCrew(t, testRoom(t))
	changed.press("2", "x", "1", "d", "c2", "enter")
	confirm := newCrew(t, testRoom(t))
	confirm.press("enter")
	nothing := newCrew(t, testRoom(t))
	nothing.desk.Now = start.Add(-40 * time.Hour)
	nothing.desk.Ledger = nothing.desk.Ledger.At(nothing.desk.Now)
	nothing.open()
	away := at("bucket")
	away.desk.Now = away.desk.Now.Add(41 * time.Minute)
	away.restart("KT")
	deferred := at("bucket", "*", "bucket is in the bin", "enter", "enter")
	blocked := at("lid")
	blocked.answerWell()
	blocked.to("lid")
	blocked.answerWell()
	unsaved := at("sieve")
	unsaved.keep.fail = errors.New("write journal: no space left on device")
	unsaved.press("200", "enter")
	after := at("to_celsius", "22.9", "enter", "5", "enter", "2", "enter")
	after.to("fed")
	after.press("2", "enter")
	after.to(model.NameFrom)
	after.press("*", "1", "enter")
	after.to("")
	after.press("2", "enter")
	after.press("2", "enter")
	solo := testRoom(t)
	solo.House.Crew = 1
	alone := newCrew(t, solo)
	alone.press("enter", "enter", "enter", "enter", "d1", "enter")
	return []struct {
		name string
		crew *crew
	}{
		{"plan", plan},
		{"plan-changed", changed},
		{"plan-nothing", nothing},
		{"confirm", confirm},
		{"bin", func() *crew { c := newCrew(t, testRoom(t)); c.press("enter", "enter"); return c }()},
		{"source", at(model.NameFrom)},
		{"stop", at(model.NameFrom, "c1", "enter")},
		{"temperature", at("to_celsius", "27")},
		{"hold", at("to_celsius", "22.9", "enter")},
		{"reason", at("to_celsius", "22.9", "enter", "5", "enter")},
		{"choice", at("sieve_empty")},
		{"deferred", deferred},
		{"blocked", blocked},
		{"wash", at("siphon", "+")},
		{"menu", at("bucket", "-")},
		{"away", away},
		{"unsaved", unsaved},
		{"alone", alone},
		{"end", at("")},
		{"after", after},
	}
}

// TestFrames holds the frames as they are at two sizes, with their footer.
func TestFrames(t *testing.T) {
	for _, scene := range scenes(t) {
		for _, size := range [][2]int{{80, 24}, {120, 40}} {
			w, h := size[0], size[1]
			t.Run(fmt.Sprintf("%s-%dx%d", scene.name, w, h), func(t *testing.T) {
				s := scene.crew.s
				rows := append(s.View(w, h-1), screen.Footer(s.Keys().With(keys.Everywhere()), scene.crew.desk.Theme, w))
				screentest.Exact(t, rows, w, h)
				golden.RequireEqual(t, []byte(screentest.Join(rows)))
			})
		}
	}
}

// TestSceneSizes draws each scene at every size.
func TestSceneSizes(t *testing.T) {
	if testing.Short() {
		t.Skip("draws some thousands of frames")
	}
	for _, scene := range scenes(t) {
		t.Run(scene.name, func(t *testing.T) {
			for w := 20; w <= 220; w += 8 {
				for h := 5; h <= 70; h += 5 {
					screentest.Exact(t, scene.crew.s.View(w, h), w, h)
				}
			}
		})
	}
}

// TestWhatMustStandAtTheSmallestSizes: what to do and where to type stay on the
// screen however small it is.
func TestWhatMustStandAtTheSmallestSizes(t *testing.T) {
	for _, scene := range scenes(t) {
		s := scene.crew.screen()
		if s.phase() != open {
			continue
		}
		for _, size := range [][2]int{{80, 23}, {60, 14}, {40, 10}, {20, 5}} {
			found := false
			for _, row := range s.View(size[0], size[1]) {
				found = found || strings.HasPrefix(row, "► ")
			}
			if !found {
				t.Errorf("%s at %dx%d: nowhere to answer:\n%s", scene.name, size[0], size[1], scene.crew.frame(size[0], size[1]))
			}
		}
	}
}

func BenchmarkView(b *testing.B) {
	c := newCrew(b, testRoom(b))
	c.press("enter", "enter", "enter", "enter")
	for b.Loop() {
		c.s.View(120, 39)
	}
}

func BenchmarkViewPlan(b *testing.B) {
	c := newCrew(b, testRoom(b))
	for b.Loop() {
		c.s.View(120, 39)
	}
}
