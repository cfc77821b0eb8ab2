package feed

import (
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/tui/keys"
	"drainboard/tui/screen"
	"drainboard/tui/text"
)

// going is the way through the tanks that are to be fed.
type going struct {
	tanks []string // as they stood when it began
	at    int      // the one that is shown; beyond the last where all were
}

func (f *Feed) startGoing() {
	f.phase, f.going, f.say = oneByOne, going{tanks: f.toFeed()}, message{}
}

func (f *Feed) goingKeys() keys.Table {
	t := keys.Table{Title: "One by one", Bindings: []keys.Binding{
		{Action: fed, Keys: []string{"enter"}, Short: "fed, next", Long: "Enter the tank as fed with the amounts that are shown, and go to the next."},
		{Action: next, Keys: []string{"+", "right", "down"}, Short: "skip", Long: "Go on; the tank stays to be fed."},
		{Action: leftIn, Keys: []string{"r"}, Short: "left", Long: "Enter a count of the cells left in this tank before it is fed."},
		{Action: before, Keys: []string{"-", "left", "up"}, Short: "before", Long: "Back to the tank before."},
	}}
	if f.going.at >= len(f.going.tanks) {
		t.Bindings[0].Short, t.Bindings[0].Long = "done", "Back to the table."
		t = t.Off(next, "there is no other tank").Off(leftIn, "no tank is shown")
	}
	return t
}

// onGoing takes a key while tank after tank is shown.
func (f *Feed) onGoing(key tea.KeyMsg) tea.Cmd {
	g := &f.going
	action, _ := f.Keys().Match(key)
	switch {
	case key.Type == tea.KeyEsc, action == fed && g.at >= len(g.tanks):
		f.phase = table
	case action == fed:
		name := g.tanks[g.at]
		if cmd := f.enterFed(name); f.say.mood != screen.Saved {
			return cmd // it stays, so that it can be tried again
		}
		f.chosen = name
		g.at++
	case action == leftIn:
		return f.startLeft(g.tanks[g.at])
	case action == next:
		g.at, f.say = g.at+1, message{}
	case action == before:
		g.at, f.say = max(0, g.at-1), message{}
	}
	return nil
}

// goingView shows one tank with its amounts, large where there is room.
func (f *Feed) goingView(w, h int) []string {
	g, th := f.going, f.desk.Theme
	if g.at >= len(g.tanks) {
		return f.goneThrough(w, h)
	}
	lines := []string{f.titleLine(fmt.Sprintf("FEED %d of %d", g.at+1, len(g.tanks)), th.Strong, w)}
	t, ok := f.tank(g.tanks[g.at])
	if !ok {
		return text.Frame(append(lines, f.sayLines(message{text.Clean(g.tanks[g.at]) + " holds no larvae any more; + goes on", screen.Refused}, w)...), w, h)
	}
	foot := f.sayLines(f.say, w)
	if why := f.notToFeed(t); why != "" && f.say.text == "" {
		foot = f.sayLines(message{why, screen.Info}, w)
	}
	notes := f.tankLines(t, w)
	body := f.amountsLarge(t, w)
	if len(lines)+len(body)+len(notes)+len(foot)+2 > h {
		body = f.amountsSmall(t, w)
	}
	if h > len(lines)+len(body)+len(notes)+len(foot)+2 {
		lines = append(lines, "")
	}
	lines = append(lines, body...)
	room := max(0, h-len(lines)-len(foot)-1)
	if room > len(notes) {
		lines = append(lines, "")
	}
	lines = append(lines, notes[:min(len(notes), room)]...)
	return text.Frame(append(lines, foot...), w, h)
}

// amountsLarge are the tank's name and each pour in digits to be read across the
// room.
func (f *Feed) amountsLarge(t model.TankFeeding, w int) []string {
	th := f.desk.Theme
	name, ok := text.Big(text.Clean(t.Tank.Tank.Name), th.ASCII)
	if !ok || text.Width(name[0]) > w-4 {
		return f.amountsSmall(t, w)
	}
	lines := make([]string, 0, 4*(len(t.Pours)+1))
	for _, row := range name {
		lines = append(lines, "  "+th.Strong.Render(row))
	}
	for _, p := range t.Pours {
		digits, ok := text.Big(strings.ReplaceAll(ml(p), " ", ""), th.ASCII)
		if !ok || text.Width(digits[0])+20 > w {
			return f.amountsSmall(t, w)
		}
		lines = append(lines, "")
		for i, row := range digits {
			label, unit := "", ""
			if i == text.BigRows-1 {
				label, unit = text.Clean(p.Alga), " mL"
			}
			lines = append(lines, "  "+text.Fit(label, 12)+" "+th.Strong.Render(row)+unit)
		}
	}
	return lines
}

func (f *Feed) amountsSmall(t model.TankFeeding, w int) []string {
	th := f.desk.Theme
	lines := []string{"  " + th.Strong.Render(text.Truncate(text.Clean(t.Tank.Tank.Name), max(1, w-2)))}
	for _, p := range t.Pours {
		lines = append(lines, "  "+text.Fit(text.Clean(p.Alga), 12)+" "+th.Strong.Render(text.FitRight(ml(p), 7))+" mL")
	}
	return lines
}

// goneThrough says what was fed and what was not.
func (f *Feed) goneThrough(w, h int) []string {
	th := f.desk.Theme
	var done, open []string
	for _, name := range f.going.tanks {
		t, ok := f.tank(name)
		switch {
		case ok && f.notToFeed(t) == "":
			open = append(open, text.Clean(name))
		case ok:
			done = append(done, text.Clean(name))
		}
	}
	lines := []string{f.titleLine("FEED all gone through", th.Strong, w), ""}
	add := func(words string, names []string) {
		for _, l := range text.Wrap(words+": "+strings.Join(names, ", "), max(1, w-4)) {
			lines = append(lines, "  "+l)
		}
	}
	if len(done) > 0 {
		add(fmt.Sprintf("fed, %d", len(done)), done)
	}
	if len(open) > 0 {
		add(fmt.Sprintf("not fed yet, %d", len(open)), open)
	}
	lines = append(lines, "")
	return text.Frame(append(lines, f.sayLines(f.say, w)...), w, h)
}
