package feed

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/lipgloss"

	"drainboard/model"
	"drainboard/tui/screen"
	"drainboard/tui/text"
)

// Below smallW x smallH the screen is a list of tanks and what they get.
const smallW, smallH = 60, 14

// View draws the screen in exactly h rows of w cells. The root draws the footer
// beneath it.
func (f *Feed) View(w, h int) []string {
	if w < 1 || h < 1 {
		return text.Frame(nil, w, h)
	}
	f.sync()
	switch {
	case f.ask != nil:
		return f.questionView(w, h)
	case f.phase == oneByOne:
		return f.goingView(w, h)
	case f.phase == typing:
		return f.slipView(w, h)
	case f.phase == pours:
		return f.pageView("POUR LIST "+text.Clean(f.desk.Ledger.Room().Name), f.pourLines(w-1), w, h)
	case f.phase == ahead:
		return f.pageView("DEMAND of the next 14 days", f.demandLines(w-1), w, h)
	case w < smallW || h < smallH:
		return f.smallView(w, h)
	}
	return f.tableView(w, h)
}

// titleLine is the first row: the answer in words, and the clock.
func (f *Feed) titleLine(words string, style lipgloss.Style, w int) string {
	d := f.desk
	layout := "Mon 2 Jan 15:04:05"
	if w < 60 {
		layout = "15:04:05"
	}
	clock := d.Theme.Faint.Render(d.Now.In(d.Ledger.Room().Zone).Format(layout))
	if d.ReadOnly != "" {
		clock = d.Theme.Action.Render(" reading along ") + " " + clock
	}
	return text.Ends(style.Render(" "+words+" "), clock, w)
}

// answer says in words what is to be fed now.
func (f *Feed) answer() (string, lipgloss.Style) {
	th := f.desk.Theme
	if f.round.err != nil {
		return "FEED cannot be worked out", th.Error
	}
	names := f.toFeed()
	if len(names) == 0 {
		return f.nothingWords(), th.Strong
	}
	total := map[string]float64{}
	for _, name := range names {
		t, _ := f.tank(name)
		for alga, x := range t.Litres() {
			total[alga] += x
		}
	}
	words, style := fmt.Sprintf("FEED %d of %s now", len(names), tanksWord(len(f.round.Tanks))), th.Strong
	for _, d := range f.round.Round.Draws {
		if d.Short() > 0 {
			words, style = words+", SHORT OF "+strings.ToUpper(text.Clean(d.Alga)), th.Hold
		}
	}
	sign := ": "
	for _, d := range f.round.Round.Draws {
		if total[d.Alga] > 0 {
			words += sign + text.Clean(d.Alga) + " " + litreWords(total[d.Alga])
			sign = ", "
		}
	}
	return words, style
}

// nothingWords says why no tank is to be fed.
func (f *Feed) nothingWords() string {
	switch {
	case len(f.round.Tanks) == 0:
		return "FEED nothing: no tank holds larvae"
	case len(f.round.fed) > 0:
		return fmt.Sprintf("FEED done: %s fed in this round", tanksWord(len(f.round.fed)))
	}
	for _, t := range f.round.Tanks {
		if t.Asked && !t.Enough() {
			return "FEED nothing can be poured"
		}
	}
	return "FEED nothing now"
}

func tanksWord(n int) string {
	if n == 1 {
		return "1 tank"
	}
	return fmt.Sprintf("%d tanks", n)
}

// tableView is the cultures, the tanks, and the chosen tank in words.
func (f *Feed) tableView(w, h int) []string {
	words, style := f.answer()
	lines := []string{f.titleLine(words, style, w)}
	if f.round.err != nil {
		lines = append(lines, badgeLines(f.desk.Theme.Error, text.Clean(f.round.err.Error()), w)...)
	}
	lines = append(lines, f.cultureLines(w, max(2, h/4))...)
	var under []string
	if t, ok := f.tank(f.chosen); ok {
		under = f.tankLines(t, w)
	}
	under = under[:min(len(under), h/3)]
	foot := f.sayLines(f.say, w)
	air := h >= len(lines)+len(f.round.Tanks)+1+len(under)+len(foot)+3 || h > 30
	if air {
		lines = append(lines, "")
	}
	room := h - len(lines) - len(under) - len(foot)
	if air {
		room--
	}
	lines = append(lines, f.tankTable(w, max(1, room))...)
	if air {
		lines = append(lines, "")
	}
	if lack := h - len(lines) - len(under) - len(foot); lack > 0 {
		under = append(under, make([]string, lack)...)
	}
	return text.Frame(append(append(lines, under...), foot...), w, h)
}

// smallView is one row a tank: its name and what it gets.
func (f *Feed) smallView(w, h int) []string {
	words, style := f.answer()
	lines := []string{f.titleLine(words, style, w)}
	foot := f.sayLines(f.say, w)
	foot = foot[:min(len(foot), max(0, h-2))]
	var l screen.List
	for i, t := range f.round.Tanks {
		l.Items = append(l.Items, text.Truncate(text.Fit(text.Clean(t.Tank.Tank.Name), 5)+" "+f.gets(t), max(1, w-2)))
		if t.Tank.Tank.Name == f.chosen {
			l.Chosen = i
		}
	}
	room := max(0, h-len(lines)-len(foot))
	lines = append(lines, l.View(f.desk.Theme, w, room)...)
	return text.Frame(append(lines, foot...), w, h)
}

// gets is what a tank gets, or why it gets nothing, in few words.
func (f *Feed) gets(t model.TankFeeding) string {
	mark := ""
	if _, done := f.round.fed[t.Tank.Tank.Name]; done {
		return f.desk.Theme.Marks.Done + " fed " + poursWords(t.Pours)
	}
	switch {
	case len(t.Litres()) > 0:
		if t.Part < 1 {
			mark = fmt.Sprintf(", %.0f %%", 100*t.Part)
		}
		return poursWords(t.Pours) + mark
	case !t.Asked:
		return "fed " + text.ShortDuration(f.desk.Now.Sub(t.Fed.At)) + " ago, next " + text.ShortUntil(f.feedDue(t), false)
	case t.Enough():
		return "enough there: pour nothing"
	case len(t.Problems) > 0:
		return f.desk.Theme.Marks.Odd + " " + text.Clean(strings.Join(t.Problems, ", "))
	case t.Part == 0:
		return "nothing: no " + text.Clean(t.Feed.ShortOf) + " at hand"
	}
	return "less than can be measured"
}

// questionView asks in the middle of the screen.
func (f *Feed) questionView(w, h int) []string {
	var lines []string
	for _, l := range text.Wrap(f.ask.ask, max(1, w-4)) {
		lines = append(lines, "  "+f.desk.Theme.Strong.Render(l))
	}
	lines = lines[:min(len(lines), max(0, h-1))]
	return text.Centre(append(lines, "  "+f.desk.Theme.Action.Render(" Enter: yes ")+"  Esc: no"), w, h)
}

// sayLines is what the last key did, at most three rows.
func (f *Feed) sayLines(m message, w int) []string {
	th := f.desk.Theme
	style, mark := th.Plain, ""
	switch m.mood {
	case screen.Saved:
		style, mark = th.Saved, th.Marks.Done+" "
	case screen.Refused:
		style = th.Error
	case screen.Info:
	}
	if m.text == "" {
		return nil
	}
	lines := badgeLines(style, mark+m.text, w)
	return lines[:min(len(lines), 3)]
}

// badgeLines are words in a style, broken to w cells.
func badgeLines(style lipgloss.Style, words string, w int) []string {
	var lines []string
	for _, l := range text.Wrap(words, max(1, w-4)) {
		lines = append(lines, "  "+style.Render(" "+l+" "))
	}
	return lines
}
