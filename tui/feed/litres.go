package feed

import (
	"fmt"
	"slices"
	"strconv"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/tui/screen"
	"drainboard/tui/text"
)

// startLitres asks how much of each alga is at hand. What was typed before is
// shown less what was poured since.
func (f *Feed) startLitres() {
	room := f.desk.Ledger.Room()
	var form screen.Form
	for _, a := range room.Algae {
		field := screen.NewField(screen.Number, 9)
		if left, ok := f.leftOf(a.Name); ok {
			field = field.With(strconv.FormatFloat(left, 'f', 3, 64))
		}
		form.Rows = append(form.Rows, screen.Row{
			Label: text.Clean(a.Name), Field: field, Unit: "L",
			Note: "litres of culture that stand in the algae room now; empty: there is enough",
		})
	}
	heading := []string{"not kept when this screen is left"}
	if kept := room.House.Feeding.ReserveShare; kept > 0 {
		heading = append(heading, fmt.Sprintf("%s %% of them stay behind as seed (house.reserve_percent)", plain(kept)))
	}
	f.startSlip(slip{title: "LITRES AT HAND", form: form, heading: heading, look: func(*slip) {}, save: f.takeLitres})
}

// leftOf is what stands in the algae room of an alga whose litres were typed,
// less what was entered as poured since.
func (f *Feed) leftOf(alga string) (float64, bool) {
	at, typed := f.hand[alga]
	if !typed {
		return 0, false
	}
	for _, b := range f.desk.Ledger.Batches() {
		for _, feed := range b.Feeds {
			if feed.N >= at.From {
				at.Litres -= feed.Fed.Litres[alga]
			}
		}
	}
	return max(0, at.Litres), true
}

// takeLitres makes a new round of what was typed. An alga whose figure was not
// touched keeps its own.
func (f *Feed) takeLitres() tea.Cmd {
	room := f.desk.Ledger.Room()
	hand := map[string]model.AtHand{}
	f.slip.form.Rows = slices.Clone(f.slip.form.Rows)
	for i, a := range room.Algae {
		typed := f.slip.text(i)
		if at, had := f.hand[a.Name]; had && !f.slip.touched(i) {
			hand[a.Name] = at
			continue
		}
		if typed == "" {
			continue
		}
		x, ok := screen.ParseNumber(typed)
		if !ok || x > 1e6 {
			return f.wrong(i, "a number of litres is expected, or nothing")
		}
		hand[a.Name] = model.AtHand{Litres: x, From: f.desk.Ledger.Next()}
	}
	f.hand, f.phase = hand, table
	f.say = message{"the round is worked out with the litres at hand", screen.Info}
	f.again()
	f.sync()
	return nil
}
