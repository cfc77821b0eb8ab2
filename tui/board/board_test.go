package board

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/exp/golden"
	"pgregory.net/rapid"

	"drainboard/model"
	"drainboard/tui/desk"
	"drainboard/tui/keys"
	"drainboard/tui/screen/screentest"
	"drainboard/tui/theme"
)

var now = time.Date(2026, 11, 25, 15, 0, 0, 0, time.UTC)

// room has n tanks of 120 L that stand in rows of four.
func room(n int) *model.Room {
	r := &model.Room{
		Name: "Test room", Zone: time.UTC, House: model.DefaultHouse(),
		Procedure: model.DefaultProcedure(), Algae: model.DefaultAlgae(),
	}
	for i := range n {
		r.Tanks = append(r.Tanks, model.Tank{Name: fmt.Sprintf("T%d", i+1), Litres: 120, Row: 1 + i/4, Column: 1 + i%4})
	}
	return r
}

// keeper keeps entries in memory, so that tests need no disk.
type keeper struct{ entries []model.Entry }

func (k *keeper) Append(entries ...model.Entry) error {
	k.entries = append(k.entries, entries...)
	return nil
}

func deskOf(t testing.TB, r *model.Room, history ...any) *desk.Desk {
	t.Helper()
	d := &desk.Desk{Ledger: model.NewLedger(r), Now: now, Theme: theme.Bare(false), Keeper: &keeper{}}
	for i := 0; i < len(history); i += 2 {
		if _, err := d.EnterAt(now.Add(-history[i].(time.Duration)), history[i+1].(model.Fact)); err != nil {
			t.Fatal(err)
		}
	}
	return d
}

func num(x float64) *float64 { return &x }

func stocked(tank, batch string, day int) *model.Stocked {
	return &model.Stocked{Tank: tank, Batch: batch, Hatched: model.Hatched{Date: model.DayOf(now, time.UTC).Add(-day)}, Larvae: num(8000)}
}

// busy is a room with a tank overdue, one due, one calm, and one of each empty
// state.
func busy(t testing.TB) *desk.Desk {
	return deskOf(t, room(7),
		60*time.Hour, stocked("T1", "N-1", 17),
		50*time.Hour, stocked("T2", "N-1", 17),
		20*time.Hour, stocked("T3", "N-2", 5),
		19*time.Hour, &model.Filled{Tank: "T4", Celsius: num(27.4)},
		18*time.Hour, &model.Washed{Tank: "T5"},
		17*time.Hour, &model.Service{Tank: "T6", Out: true, Why: "cracked"},
		3*time.Hour, &model.Temperature{Tank: "T1", Celsius: 27.6},
		30*time.Hour, &model.Temperature{Tank: "T2", Celsius: 27.1},
		2*time.Hour, &model.Suspect{Tank: "T3", On: true, Why: "pale"},
	)
}

func TestRowOneAnswersWhatIsNext(t *testing.T) {
	cases := map[string]struct {
		desk *desk.Desk
		want string
	}{
		"overdue":        {busy(t), "NEXT T1 into T4, overdue 12 h 00 min"},
		"nothing due":    {deskOf(t, room(2), 10*time.Hour, stocked("T1", "N-1", 3)), "NEXT T1, due in 1 d 14 h"},
		"no ready tank":  {deskOf(t, room(1), 50*time.Hour, stocked("T1", "N-1", 3)), "NEXT T1, due 2 h 00 min ago, NO READY TANK"},
		"an empty room":  {deskOf(t, room(3)), "NEXT nothing: no tank holds larvae"},
		"a session open": {deskOf(t, room(2), 49*time.Hour, stocked("T1", "N-1", 3), time.Hour, &model.Opened{Moves: []model.Leg{{From: "T1", To: "T2"}}}), "SESSION 2: before the first move"},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			got := New(c.desk).View(80, 23)[0]
			if !strings.Contains(strings.ReplaceAll(got, "38 h 00 min", "1 d 14 h"), c.want) {
				t.Errorf("row 1 = %q; want %q in it", got, c.want)
			}
		})
	}
}

func TestStatesAreWords(t *testing.T) {
	frame := screentest.Join(New(busy(t)).View(80, 23))
	for _, want := range []string{"OVERDUE", "DUE", "READY", "WASHED", "OUT OF USE", "DIRTY", "SUSPECT", "27.6 °C", "27.1°?30h00"} {
		if !strings.Contains(frame, want) {
			t.Errorf("%q is not on the board:\n%s", want, frame)
		}
	}
}

func TestOverdueHasTheFirstPlace(t *testing.T) {
	d := deskOf(t, room(3), 20*time.Hour, stocked("T1", "N-1", 20), 60*time.Hour, stocked("T3", "N-2", 4))
	b := New(d)
	b.View(80, 23)
	if b.order[0].Tank.Name != "T3" {
		t.Errorf("first place = %s; want the overdue T3 before the older T1", b.order[0].Tank.Name)
	}
}

func TestAlarmsFoldFromTheSixth(t *testing.T) {
	var history []any
	for i := range 7 {
		history = append(history, 60*time.Hour, stocked(fmt.Sprintf("T%d", i+1), "N-1", 5))
	}
	b := New(deskOf(t, room(8), history...))
	frame := b.View(120, 39)
	if got := len(b.alarmLines(120)); got != mostAlarms {
		t.Errorf("%d alarm lines; want %d", got, mostAlarms)
	}
	if last := frame[len(frame)-1]; !strings.Contains(last, "and 10 more") {
		t.Errorf("last line = %q; want the number of the others", last)
	}
}

func TestAnAlarmIsSeenByName(t *testing.T) {
	d := busy(t)
	b := New(d)
	b.View(80, 23)
	before := len(b.unseen)
	screentest.Press(t, b, seen)
	b.View(80, 23)
	if before != 1 || len(b.unseen) != 0 {
		t.Errorf("unseen overdue tanks went from %d to %d; want 1 to 0", before, len(b.unseen))
	}
}

func TestOnlyTheMarkOfAnUnseenOverdueTankFlashes(t *testing.T) {
	d := busy(t)
	b := New(d)
	d.Now = d.Now.Add(100 * time.Millisecond)
	lit := screentest.Join(b.View(80, 23))
	d.Now = d.Now.Add(500 * time.Millisecond)
	dark := screentest.Join(b.View(80, 23))
	if !strings.HasPrefix(lit, " !! NEXT") || !strings.HasPrefix(dark, "    NEXT") {
		t.Errorf("the mark of an unseen overdue tank does not flash:\n%.80s\n%.80s", lit, dark)
	}
	_, after, _ := strings.Cut(lit, "NEXT")
	if _, darkAfter, _ := strings.Cut(dark, "NEXT"); after != darkAfter {
		t.Error("more than the mark flashes")
	}
	screentest.Press(t, b, seen)
	if rest := screentest.Join(b.View(80, 23)); !strings.HasPrefix(rest, " NEXT") {
		t.Errorf("once seen, something flashes still: %.80s", rest)
	}
}

func TestEveryFrameIsExact(t *testing.T) {
	b := New(busy(t))
	for name, set := range map[string]func(){"cones": func() {}, "by place": func() { b.byPlace = true }, "wall": func() { b.byPlace, b.wall = false, true }} {
		t.Run(name, func(t *testing.T) {
			set()
			screentest.EverySize(t, b.View)
		})
	}
}

// Any text people may type stays inside its tile.
func TestFramesWithAnyText(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		r := room(rapid.IntRange(1, 40).Draw(rt, "tanks"))
		r.Name = rapid.String().Draw(rt, "room")
		r.Tanks[0].Name = rapid.StringN(1, 16, -1).Draw(rt, "tank")
		d := &desk.Desk{Ledger: model.NewLedger(r), Now: now, Theme: theme.Bare(rapid.Bool().Draw(rt, "ascii")), Keeper: &keeper{}}
		batch := rapid.StringN(1, 40, -1).Draw(rt, "batch")
		// A batch name that is refused leaves the room empty; that is drawn as well.
		_, _ = d.EnterAt(now.Add(-50*time.Hour), stocked(r.Tanks[0].Name, batch, 3))
		b := New(d)
		b.wall = rapid.Bool().Draw(rt, "wall")
		w, h := rapid.IntRange(20, 220).Draw(rt, "w"), rapid.IntRange(5, 70).Draw(rt, "h")
		screentest.Exact(t, b.View(w, h), w, h)
		if t.Failed() {
			rt.Fatalf("at %dx%d with %q, %q, %q", w, h, r.Name, r.Tanks[0].Name, batch)
		}
	})
}

func TestArrange(t *testing.T) {
	cases := []struct {
		w, h, n int
		wall    bool
		want    grid
	}{
		{80, 20, 9, false, grid{asCones, 3, 3, 26, 6}},
		{120, 36, 40, true, grid{asWall, 8, 5, 15, 7}},
		{80, 20, 40, false, grid{kind: asList, cols: 1, rows: 20, tileW: 80, tileH: 1}},
		{120, 36, 40, false, grid{asTiles, 5, 8, 24, 4}},
	}
	for _, c := range cases {
		if got := arrange(c.w, c.h, c.n, c.wall, false); got != c.want {
			t.Errorf("arrange(%d, %d, %d, wall %v) = %+v; want %+v", c.w, c.h, c.n, c.wall, got, c.want)
		}
	}
}

func TestKeysAreSound(t *testing.T) {
	for _, p := range keys.Problems(New(busy(t)).Keys(), keys.Everywhere()) {
		t.Error(p)
	}
}

func TestFrames(t *testing.T) {
	for _, size := range [][2]int{{80, 23}, {120, 39}} {
		t.Run(fmt.Sprintf("%dx%d", size[0], size[1]), func(t *testing.T) {
			golden.RequireEqual(t, []byte(screentest.Join(New(busy(t)).View(size[0], size[1]))))
		})
	}
}

func BenchmarkView40Tanks(b *testing.B) {
	var history []any
	for i := range 38 {
		history = append(history, 50*time.Hour, stocked(fmt.Sprintf("T%d", i+1), "N-1", 5))
	}
	history = append(history, 49*time.Hour, &model.Filled{Tank: "T40", Celsius: num(27)})
	board := New(deskOf(b, room(40), history...))
	for b.Loop() {
		board.View(120, 39)
	}
}
