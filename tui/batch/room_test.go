package batch

import (
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/tui/desk"
	"drainboard/tui/desk/desktest"
	"drainboard/tui/screen"
	"drainboard/tui/screen/screentest"
)

// shown opens the screen of a batch of the invented room.
func shown(t testing.TB, name string) (*Batch, *desk.Desk) {
	t.Helper()
	d, _ := desktest.Desk(t)
	return New(d, name).(*Batch), d
}

// typed presses keys and gives what the screen sent.
func typed(t testing.TB, s *Batch, words ...string) []tea.Msg {
	t.Helper()
	next, sent := screentest.Type(s, words...)
	if next != screen.Screen(s) {
		t.Fatalf("%v opened another screen", words)
	}
	return sent
}

// frame is the screen without the spaces at the ends of its rows, large enough that
// all words are seen and few are wrapped.
func frame(s *Batch) string { return screentest.Join(s.View(200, 90)) }

// ended gives the room a third batch that has come and gone: P-01, split, fallen,
// culled, settled and lost.
func endedBatch(t testing.TB, d *desk.Desk) {
	t.Helper()
	hatched, err := model.ParseHatched("2026-10-20")
	if err != nil {
		t.Fatal(err)
	}
	enter := func(daysAgo float64, fact model.Fact) {
		t.Helper()
		desktest.Enter(t, d, time.Duration(daysAgo*24*float64(time.Hour)), fact)
	}
	larvae, half, mesh, warm, cold := 20000.0, 0.5, 105.0, 28.0, 23.5
	some, four := 9000.0, 4
	enter(33, &model.Filled{Tank: "L3"})
	enter(33, &model.Stocked{Tank: "L3", Batch: "P-01", Hatched: hatched, Larvae: &larvae, Origin: "pen 1"})
	for i, mean := range []float64{330, 420, 515, 590} {
		um := make([]float64, 20)
		for j := range um {
			um[j] = mean + float64((j*7)%20-9)*4
		}
		enter(31-3*float64(i), &model.Sizes{Tank: "L3", UM: um})
	}
	enter(31, &model.Count{Tank: "L3", Live: []int{92, 100, 95}, SampleML: 10, HoldingML: 2000})
	enter(29, &model.Look{Tank: "L3", Lobes: &four, Swim: model.SwimFair, Text: "some on the bottom"})
	enter(25, &model.Count{Tank: "L3", Live: []int{50, 47, 58}, SampleML: 10, HoldingML: 2000})
	enter(22, &model.Count{Tank: "L3", Live: []int{57, 52, 60}, SampleML: 10, HoldingML: 2000})
	enter(21.5, &model.Removed{Tank: "L3", Larvae: 500, Why: "sample"})
	enter(21, &model.Filled{Tank: "K2"})
	enter(20.9, &model.Moved{From: "L3", To: "K2", Share: &half, MeshUM: &mesh, FromCelsius: &warm, ToCelsius: &cold, Why: "thinned"})
	enter(20, &model.Count{Tank: "K2", Live: []int{24, 27}, SampleML: 10, HoldingML: 2000})
	enter(12, &model.Ended{Tank: "K2", Why: model.Discarded})
	enter(8, &model.Ended{Tank: "L3", Why: model.Settled, Larvae: &some})
}
