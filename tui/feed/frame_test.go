package feed

import (
	"fmt"
	"strings"
	"testing"

	"github.com/charmbracelet/x/exp/golden"
	"pgregory.net/rapid"

	"drainboard/model"
	"drainboard/tui/keys"
	"drainboard/tui/screen"
	"drainboard/tui/screen/screentest"
	"drainboard/tui/theme"
)

// phases are the screen in each of its phases, by what is typed to get there.
func phases() map[string][]string {
	return map[string][]string{
		"table":   nil,
		"fed":     {"enter"},
		"short":   {"l", "0,2", "enter", "enter", "enter"},
		"going":   {"f", "+"},
		"gone":    {"f", "enter", "+", "enter"},
		"pours":   {"enter", "p"},
		"demand":  {"d"},
		"culture": {"c", "iso", "enter", "46 50", "enter", "enter", "100"},
		"chamber": {"c", "kelp", "enter", "46.5", "enter", "neubauer-c"},
		"left":    {"r", "12 9 14", "enter", "sixteen-field"},
		"leaving": {"l", "3", "enter", "enter", "enter", "esc"},
	}
}

func TestFrames(t *testing.T) {
	for name, typed := range phases() {
		for _, size := range [][2]int{{80, 23}, {120, 39}} {
			t.Run(fmt.Sprintf("%s-%dx%d", name, size[0], size[1]), func(t *testing.T) {
				f := busy(t).screen()
				screentest.Type(f, typed...)
				rows := f.View(size[0], size[1])
				screentest.Exact(t, rows, size[0], size[1])
				rows = append(rows, screen.Footer(f.Keys().With(keys.Everywhere()), f.desk.Theme, size[0]))
				golden.RequireEqual(t, []byte(screentest.Join(rows)))
			})
		}
	}
}

func TestEveryFrameIsExact(t *testing.T) {
	for name, typed := range phases() {
		t.Run(name, func(t *testing.T) {
			w := busy(t)
			w.desk.Theme = theme.Build(true, theme.Ansi256, false)
			f := w.screen()
			screentest.Type(f, typed...)
			screentest.EverySize(t, f.View)
		})
	}
}

func TestKeysAreSound(t *testing.T) {
	for name, typed := range phases() {
		f := busy(t).screen()
		screentest.Type(f, typed...)
		for _, p := range keys.Problems(f.Keys(), keys.Everywhere()) {
			t.Errorf("%s: %s", name, p)
		}
	}
}

// Any text people may type stays inside the frame.
func TestFramesWithAnyText(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		r := room(t)
		r.Name = rapid.String().Draw(rt, "room")
		r.Tanks[0].Name = rapid.StringN(1, 16, -1).Draw(rt, "tank")
		alga := rapid.StringN(1, 16, -1).Draw(rt, "alga")
		r.Algae[0].Name = alga
		r.House.Ration[0].Share = map[string]float64{alga: 1, "chaet": 1}
		w := newWork(t, r)
		// What is refused leaves the room empty; that is drawn as well.
		_, _ = w.desk.Enter(&model.Filled{Tank: r.Tanks[0].Name},
			&model.Stocked{Tank: r.Tanks[0].Name, Batch: rapid.String().Draw(rt, "batch"), Hatched: model.Hatched{Date: model.DayOf(w.desk.Now, r.Zone).Add(-3)}},
			&model.Cells{Algae: alga, Counts: []int{40}, ChamberML: 1e-4})
		f := w.screen()
		screentest.Type(f, rapid.SampledFrom([]string{"", "f", "p", "d", "c", "r", "l"}).Draw(rt, "key"), rapid.String().Draw(rt, "typed"))
		width, height := rapid.IntRange(20, 220).Draw(rt, "w"), rapid.IntRange(5, 70).Draw(rt, "h")
		screentest.Exact(t, f.View(width, height), width, height)
		if t.Failed() {
			rt.Fatalf("at %dx%d", width, height)
		}
	})
}

func TestRowOneAnswers(t *testing.T) {
	empty := newWork(t, room(t))
	young := newWork(t, room(t))
	young.stock(12, "K1", "P-06", 1)
	uncounted := newWork(t, room(t))
	uncounted.stock(12, "K1", "P-06", 5)
	for name, c := range map[string]struct {
		w     work
		typed []string
		want  string
	}{
		"some to feed":    {busy(t), nil, "FEED 3 of 6 tanks now: iso 840 mL, chaet 434 mL"},
		"one short":       {busy(t), phases()["short"], "FEED 3 of 6 tanks now, SHORT OF ISO: iso 200 mL"},
		"all fed":         {busy(t), []string{"f", "enter", "enter", "enter", "enter"}, "FEED done: 3 tanks fed in this round"},
		"no larvae":       {empty, nil, "FEED nothing: no tank holds larvae"},
		"too young":       {young, nil, "FEED nothing can be poured"},
		"nothing counted": {uncounted, nil, "FEED nothing can be poured"},
	} {
		t.Run(name, func(t *testing.T) {
			f := c.w.screen()
			screentest.Type(f, c.typed...)
			if got := f.View(100, 23)[0]; !strings.Contains(got, c.want) {
				t.Errorf("row 1 = %q, want %q", got, c.want)
			}
		})
	}
}

// No row shows half of a feed: all algae have a column, or the row says it in words.
func TestEveryAlgaOfAFeedIsInItsRow(t *testing.T) {
	f := forty(t).screen()
	for w := smallW; w <= 130; w++ {
		c := f.columnsFor(w)
		if n := len(c.algae); n != 0 && n != 3 {
			t.Fatalf("at %d cells %d of 3 algae have a column", w, n)
		}
		if got := screentest.Join(f.View(w, 30)); !strings.Contains(got, "300") {
			t.Errorf("at %d cells no amount is in\n%s", w, got)
		}
	}
	if got := f.columnsFor(80); len(got.algae) != 3 || got.lean {
		t.Errorf("three algae at 80 cells: %+v; want a column each beside what is wanted and left", got)
	}
}

func BenchmarkView40Tanks(b *testing.B) {
	f := forty(b).screen()
	for b.Loop() {
		f.again()
		f.View(120, 39)
	}
}

func BenchmarkFrame40Tanks(b *testing.B) {
	f := forty(b).screen()
	for b.Loop() {
		f.View(120, 39)
	}
}

func forty(t testing.TB) work {
	r := room(t)
	r.Tanks = nil
	for i := range 40 {
		r.Tanks = append(r.Tanks, model.Tank{Name: fmt.Sprint("T", i+1), Litres: 120})
	}
	w := newWork(t, r)
	for i, tank := range r.Tanks {
		w.stock(30, tank.Name, fmt.Sprint("P-", i/2), 2+i/2)
	}
	for _, a := range []string{"iso", "chaet", "pav"} {
		w.cells(3, a, "", 5_000_000)
	}
	return w
}
