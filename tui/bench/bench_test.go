package bench

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/exp/golden"
	"pgregory.net/rapid"

	"drainboard/model"
	sums "drainboard/model/bench"
	"drainboard/tui/desk"
	"drainboard/tui/keys"
	"drainboard/tui/screen"
	"drainboard/tui/screen/screentest"
	"drainboard/tui/theme"

	tea "github.com/charmbracelet/bubbletea"
)

// keeper must not be asked: nothing is entered at the bench.
type keeper struct{ t testing.TB }

func (k keeper) Append(entries ...model.Entry) error {
	k.t.Errorf("the bench enters %v", entries)
	return nil
}

func newBench(t testing.TB) *Bench {
	t.Helper()
	house := model.DefaultHouse()
	house.Wash.MLPerLitre, house.Wash.StockPercent = 12, 28
	r := &model.Room{Name: "Quay larval room", Zone: time.UTC, House: house, Procedure: model.DefaultProcedure(), Algae: model.DefaultAlgae()}
	d := &desk.Desk{
		Ledger: model.NewLedger(r), Now: time.Date(2026, 11, 25, 15, 0, 0, 0, time.UTC),
		Theme: theme.Bare(false), Keeper: keeper{t},
	}
	return New(d, "").(*Bench)
}

// opened is the form of a sum with texts typed into its fields, one after the
// other.
func opened(t testing.TB, sum string, texts ...string) *Bench {
	t.Helper()
	b := newBench(t)
	for i, s := range b.sheets {
		if s.sum.Name == sum {
			b.list.Chosen = i
		}
	}
	screentest.Type(b, "enter")
	for i, s := range texts {
		if s != "" {
			screentest.Type(b, s)
		}
		if i < len(texts)-1 {
			screentest.Type(b, "enter")
		}
	}
	return b
}

func states(t testing.TB) map[string]*Bench {
	list := newBench(t)
	screentest.Type(list, "down")
	leaving := opened(t, "acid", "20")
	screentest.Type(leaving, "esc", "esc")
	return map[string]*Bench{
		"list":      list,
		"leaving":   leaving,
		"acid":      opened(t, "acid", "20"),
		"acidempty": opened(t, "acid"),
		"bleach":    opened(t, "bleach", "400", "200", "12,5"),
		"cool":      opened(t, "cool", "31", "25", "24", "30:30.2"),
		"cells":     opened(t, "cells", "46 50", "neubauer-c"),
		"count":     opened(t, "count", "38,42,50", "0.05", "70", "1 0 2", "10"),
		"feed":      opened(t, "feed", "10", "20000", "14080", "iso:3 chaet:1", "iso:5110909 chaet:4855454"),
		"sizes":     opened(t, "sizes", "98.49 97.88 100.05 101.1 106.35 101.43 96.96 102.02 103.02 192.34"),
		"ammonia":   opened(t, "ammonia", "27", "35", "81", "0.2"),
	}
}

func TestFrames(t *testing.T) {
	for name, b := range states(t) {
		for _, size := range [][2]int{{80, 23}, {120, 39}} {
			t.Run(fmt.Sprintf("%s-%dx%d", name, size[0], size[1]), func(t *testing.T) {
				frame := b.View(size[0], size[1])
				screentest.Exact(t, frame, size[0], size[1])
				frame = append(frame, screen.Footer(b.Keys().With(keys.Everywhere()), b.desk.Theme, size[0]))
				golden.RequireEqual(t, []byte(screentest.Join(frame)))
			})
		}
	}
}

func TestEveryFrameIsExact(t *testing.T) {
	for name, b := range states(t) {
		t.Run(name, func(t *testing.T) {
			b.desk.Theme = theme.Build(true, theme.Ansi256, false)
			screentest.EverySize(t, b.View)
		})
	}
}

func TestKeysAreSound(t *testing.T) {
	for name, b := range states(t) {
		for _, p := range keys.Problems(b.Keys(), keys.Everywhere()) {
			t.Errorf("%s: %s", name, p)
		}
	}
}

func frame(b *Bench, w, h int) string { return screentest.Join(b.View(w, h)) }

// Every caution, and the source, stands beside the figures at 80x24, whatever is
// typed.
func TestCautionsAreAlwaysSeen(t *testing.T) {
	for name, b := range map[string]*Bench{
		"acid, nothing typed":   opened(t, "acid"),
		"acid":                  opened(t, "acid", "20"),
		"acid, wrong":           opened(t, "acid", "0"),
		"acid, wrong stock":     opened(t, "acid", "20", "10", "99"),
		"bleach, nothing typed": opened(t, "bleach"),
		"bleach":                opened(t, "bleach", "400", "200", "12.5"),
		"bleach, wrong":         opened(t, "bleach", "400", "20000", "12.5"),
	} {
		t.Run(name, func(t *testing.T) {
			got := strings.Join(strings.Fields(strings.ReplaceAll(frame(b, 80, 23), "!", "")), " ")
			if len(b.sheet().answer.Cautions) < 8 {
				t.Fatalf("only %d cautions", len(b.sheet().answer.Cautions))
			}
			for _, c := range append(b.sheet().answer.Cautions, b.sheet().answer.Sources...) {
				if !strings.Contains(got, strings.Join(strings.Fields(c), " ")) {
					t.Errorf("%q is not in\n%s", c, frame(b, 80, 23))
				}
			}
		})
	}
}

// In a window too small for all of it, every figure can still be scrolled to.
func TestFiguresAreReachedInASmallWindow(t *testing.T) {
	for _, size := range [][2]int{{60, 14}, {40, 12}, {100, 9}} {
		b := opened(t, "acid", "20")
		seen := frame(b, size[0], size[1])
		if !strings.Contains(seen, "240.0 mL") || !strings.Contains(seen, "20_") || !strings.Contains(seen, "! Label") {
			t.Errorf("the first figure, the field or the first caution is not in\n%s", seen)
		}
		for range 20 {
			screentest.Type(b, "pgdown")
			seen += frame(b, size[0], size[1])
		}
		for _, want := range []string{"mol/L", "pH, about", "176.4 g", "Dispose of it", "CRC Handbook"} {
			if !strings.Contains(seen, want) {
				t.Errorf("at %v %q is never seen", size, want)
			}
		}
	}
}

// Where they do not all fit, they scroll, and the first of them is seen.
func TestCautionsScrollInASmallWindow(t *testing.T) {
	b := opened(t, "acid", "20")
	if got := frame(b, 60, 12); !strings.Contains(got, "! Label and safety data sheet first") || !strings.Contains(got, "⋮") {
		t.Fatalf("no caution, or no mark of more, in\n%s", got)
	}
	seen := frame(b, 60, 12)
	for range 12 {
		screentest.Type(b, "pgdown")
		seen += frame(b, 60, 12)
	}
	for _, c := range b.sheet().answer.Cautions {
		if !strings.Contains(seen, c[:30]) {
			t.Errorf("%q is never seen", c)
		}
	}
}

func TestFiguresFollowEachKey(t *testing.T) {
	b := opened(t, "acid")
	for _, c := range []struct{ key, want string }{
		{"2", "24.0 mL"}, // 12 mL a litre, as the house has it
		{"0", "240.0 mL"},
		{"backspace", "24.0 mL"},
		{".", "24.0 mL"},
		{"5", "30.0 mL"},
	} {
		screentest.Type(b, c.key)
		if got := frame(b, 80, 23); !strings.Contains(got, c.want) {
			t.Errorf("after %s %q is not in\n%s", c.key, c.want, got)
		}
	}
	screentest.Type(b, "backspace", "backspace", "backspace")
	if got := frame(b, 80, 23); strings.Contains(got, "mol/L") || !strings.Contains(got, "still to type: water") {
		t.Errorf("with the litres rubbed out\n%s", got)
	}
}

func TestHouseRulesStandInTheForm(t *testing.T) {
	if got := frame(opened(t, "acid", "20"), 120, 39); !strings.Contains(got, "stock of 28 % by weight") {
		t.Errorf("the stock of the house is not in\n%s", got)
	}
	if got := opened(t, "mesh").sheet().form.Rows[1].Field.Text(); got != "105 150 200 250 300" {
		t.Errorf("sieves %q; want those of the house", got)
	}
	b := opened(t, "acid", "20", "10")
	if got := b.sheet().form.Rows[1].Field.Text(); got != "10" {
		t.Errorf("10 typed over the 12 of the house reads %q", got)
	}
}

func TestProblemsStandAtTheirField(t *testing.T) {
	for name, c := range map[string]struct {
		sum   string
		texts []string
		row   int
		want  string
	}{
		"pH 81":                   {"ammonia", []string{"27", "35", "81", "0.2"}, 2, "pH: 81 must be between 4 and 11"},
		"a fractional count":      {"count", []string{"38.5 42", "1", "70"}, 0, "live: 38.5 is not a count"},
		"no water":                {"acid", []string{"0"}, 0, "water: 0 must be more than 0"},
		"a chamber of no volume":  {"cells", []string{"46", "0", "1"}, 1, "chamber: 0 is not possible"},
		"an alga without culture": {"feed", []string{"10", "20000", "", "iso:3 kelp:1", "iso:5000000"}, 4, `cultures: no cells per mL known for "kelp"`},
		"a share adding to zero":  {"feed", []string{"10", "20000", "", "iso:0", "iso:5000000"}, 3, "share: the shares sum to 0"},
		"a word for a list":       {"sizes", []string{"98 many"}, 0, `lengths: item 2: "many" is not a number`},
		"a flag of neither":       {"acid", []string{"20", "10", "30", "perhaps"}, 3, `made up: "perha`},
	} {
		t.Run(name, func(t *testing.T) {
			b := opened(t, c.sum, c.texts...)
			if b.sheet().form.Rows[c.row].Problem == "" || len(b.sheet().answer.Figures) > 0 {
				t.Errorf("row %d has no problem, or figures stand beside it: %+v", c.row, b.sheet().form.Rows[c.row])
			}
			got := strings.Join(strings.Fields(frame(b, 120, 39)), " ")
			if !strings.Contains(got, c.want) {
				t.Errorf("%q is not in\n%s", c.want, frame(b, 120, 39))
			}
		})
	}
}

// Wanting less than is there adds nothing, and says so.
func TestEnoughFoodAddsNothing(t *testing.T) {
	b := opened(t, "feed", "10", "30000", "31454", "iso:1", "iso:5110909")
	if got := frame(b, 80, 23); !strings.Contains(got, "There is enough already: pour nothing.") || !strings.Contains(got, "0.0000 L") {
		t.Errorf("got\n%s", got)
	}
}

func TestTypedFiguresStayUntilTheBenchIsLeft(t *testing.T) {
	b := opened(t, "blend", "120", "31")
	screentest.Type(b, "esc", "down", "enter", "esc", "up", "enter")
	if got := b.sheet().form.Rows[1].Field.Text(); b.sheet().sum.Name != "blend" || got != "31" {
		t.Fatalf("back at %s, the field holds %q; want blend and 31", b.sheet().sum.Name, got)
	}
	_, sent := screentest.Type(b, "esc", "esc")
	if len(sent) != 0 || !strings.Contains(frame(b, 80, 23), "Leave the bench? The figures typed here are not kept.") {
		t.Fatalf("sent %v, frame\n%s", sent, frame(b, 80, 23))
	}
	screentest.Type(b, "esc")
	if _, sent = screentest.Type(b, "esc", "enter"); len(sent) != 1 || sent[0] != (screen.Back{}) {
		t.Errorf("sent %v, want to go back", sent)
	}
	if _, sent = screentest.Type(newBench(t), "esc"); len(sent) != 1 || sent[0] != (screen.Back{}) {
		t.Errorf("with nothing typed Esc sends %v, want to go back", sent)
	}
}

func TestKeysThatMeanNothingBeep(t *testing.T) {
	b := opened(t, "acid")
	if _, sent := screentest.Type(b, "x"); len(sent) != 1 || sent[0] != (screen.Beep{Times: 1}) {
		t.Errorf("a letter in a number sends %v, want one beep", sent)
	}
	if got := b.sheet().form.Rows[1].Field.Text(); got != "12" {
		t.Errorf("the letter emptied the field: %q", got)
	}
}

func TestAPastedColumnIsAList(t *testing.T) {
	b := opened(t, "sizes")
	b.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("98,49\n97,88\n100,05"), Paste: true})
	if got := frame(b, 80, 23); !strings.Contains(got, "98.8 µm") {
		t.Errorf("the mean of three pasted lengths is not in\n%s", got)
	}
}

func TestASumIsOpenedByName(t *testing.T) {
	d := newBench(t).desk
	if got := New(d, "bleach").(*Bench); !got.open || got.sheet().sum.Name != "bleach" {
		t.Errorf("opens %s", got.sheet().sum.Name)
	}
}

// Any text people may type stays inside the frame.
func TestFramesWithAnyText(t *testing.T) {
	names := make([]string, 0, 12)
	for _, s := range sums.Sums() {
		names = append(names, s.Name)
	}
	rapid.Check(t, func(rt *rapid.T) {
		b := opened(t, rapid.SampledFrom(names).Draw(rt, "sum"))
		for range len(b.sheet().sum.Inputs) {
			screentest.Type(b, rapid.String().Draw(rt, "typed"), "tab")
		}
		w, h := rapid.IntRange(20, 220).Draw(rt, "w"), rapid.IntRange(5, 70).Draw(rt, "h")
		screentest.Exact(t, b.View(w, h), w, h)
		if t.Failed() {
			rt.Fatalf("at %dx%d", w, h)
		}
	})
}

// What a person feels: one key typed and the frame drawn.
func BenchmarkKeyToFrame(b *testing.B) {
	s := opened(b, "count", "38,42,50", "0.05", "70", "1 0 2", "10")
	for b.Loop() {
		screentest.Type(s, "0", "backspace")
		s.View(120, 39)
	}
}
