package feed

import (
	"fmt"
	"slices"
	"strings"

	"drainboard/model"
	"drainboard/tui/text"
)

// demandDays is how far the demand looks ahead.
const demandDays = 14

// demand is the demand as it was last worked out.
type demand struct {
	model.FeedDemand
	ledger *model.Ledger
	next   int
	day    model.Day
}

// pageView draws lines to read, under a title.
func (f *Feed) pageView(title string, lines []string, w, h int) []string {
	f.pageH = max(1, h-1)
	f.page.Lines = lines
	return append([]string{f.titleLine(title, f.desk.Theme.Strong, w)}, f.page.View(f.desk.Theme, w, h-1)...)
}

// pourLines is the pour list: the tanks in their order with a box to tick, then
// what each culture gives.
func (f *Feed) pourLines(w int) []string {
	lines := []string{""}
	wide := 4
	for _, t := range f.round.Tanks {
		wide = max(wide, min(14, text.Width(text.Clean(t.Tank.Tank.Name))))
	}
	indent := strings.Repeat(" ", 6+wide+1)
	for _, t := range f.round.Tanks {
		if len(t.Litres()) == 0 {
			continue
		}
		box := "[ ]"
		if _, done := f.round.fed[t.Tank.Tank.Name]; done {
			box = "[x]"
		}
		var cells []string
		for _, p := range t.Pours {
			rough := ""
			if p.Rough {
				rough = "*"
			}
			cells = append(cells, text.Fit(text.Clean(p.Alga), 8)+text.FitRight(ml(p), 8)+" mL"+rough)
		}
		if t.Part < 1 {
			cells = append(cells, fmt.Sprintf("(%.0f %%)", 100*t.Part))
		}
		row := "  " + box + " " + f.desk.Theme.Strong.Render(text.Fit(text.Clean(t.Tank.Tank.Name), wide)) + " "
		for i, l := range flow(cells, max(1, w-len(indent))) {
			if i > 0 {
				row = indent
			}
			lines = append(lines, row+l)
		}
	}
	if len(lines) == 1 {
		lines = append(lines, "  nothing is to be poured", "")
	}
	return append(append(lines, ""), f.drawLines(w)...)
}

// flow sets cells beside each other, as many as fit a row.
func flow(cells []string, w int) []string {
	var lines []string
	line := ""
	for _, c := range cells {
		switch {
		case line == "":
			line = c
		case text.Width(line)+3+text.Width(c) <= w:
			line += "   " + c
		default:
			lines, line = append(lines, line), c
		}
	}
	return append(lines, line)
}

// drawLines say what each culture gives, and what is wrong with it.
func (f *Feed) drawLines(w int) []string {
	th := f.desk.Theme
	lines := []string{"  " + th.Title.Render("In all")}
	for _, d := range f.round.Round.Draws {
		words := fmt.Sprintf("%s %s", text.Clean(d.Alga), litreWords(f.measured(d.Alga)))
		if !d.Unlimited {
			words += fmt.Sprintf(" of %s at hand, %s asked", litreWords(d.Have), litreWords(d.Needed))
		}
		lines = append(lines, "  "+text.Truncate(words, max(1, w-2)))
		if d.Short() > 0 {
			lines = append(lines, badgeLines(th.Hold, fmt.Sprintf("short by %s: every tank that needs it gets the same part of what it lacks", litreWords(d.Short())), w)...)
		}
	}
	for _, c := range f.round.Cultures {
		switch {
		case c.Problem != "":
			lines = append(lines, badgeLines(th.Hold, text.Clean(c.Problem), w)...)
		case c.Stale:
			lines = append(lines, "  "+th.Stale.Render(text.Truncate(fmt.Sprintf("%s%s was counted %s, a stale count: count it again", text.Clean(c.Alga.Name), th.Marks.Stale, ago(c.Age)), max(1, w-2))))
		}
	}
	for _, note := range []string{
		"* rounded by more than 5 %: dilute the culture and pour more of it",
		"Stir each culture before it is poured. Fill each tank that much less, or draw as much off first.",
	} {
		for _, l := range text.Wrap(note, max(1, w-2)) {
			lines = append(lines, "  "+th.Faint.Render(l))
		}
	}
	return lines
}

// lookAhead works the demand out where the last one does not stand any more.
func (f *Feed) lookAhead() {
	d := f.desk
	day := model.DayOf(d.Now, d.Ledger.Room().Zone)
	if f.demand.ledger != d.Ledger || f.demand.next != d.Ledger.Next() || f.demand.day != day {
		f.demand = demand{d.Ledger.FeedDemand(d.Now, demandDays), d.Ledger, d.Ledger.Next(), day}
	}
}

// demandLines is the table of the days, and what it rests on.
func (f *Feed) demandLines(w int) []string {
	f.lookAhead()
	th := f.desk.Theme
	algae := f.askedAlgae()
	shown := algae[:min(len(algae), max(1, (w-19)/11))]
	head := "  " + text.Fit("DAY", 11) + text.FitRight("TANKS", 5)
	for _, a := range shown {
		unit := " L"
		if slices.Contains(f.demand.Uncounted, a) {
			unit = " G"
		}
		head += " " + text.FitRight(text.Truncate(text.Clean(a), 8)+unit, 10)
	}
	lines := []string{"", th.Faint.Render(head)}
	most := 0.0
	for _, d := range f.demand.Days {
		most = max(most, d.Cells.Sum())
	}
	total := map[string]float64{}
	for _, d := range f.demand.Days {
		row := "  " + text.Fit(d.Day.Start(f.desk.Ledger.Room().Zone).Format("Mon 2 Jan"), 11) + text.FitRight(fmt.Sprint(d.Tanks), 5)
		for _, a := range shown {
			row += " " + text.FitRight(f.dayWords(d, a), 10)
			total[a] += f.dayFigure(d, a)
		}
		lines = append(lines, row+"  "+th.Water.Render(f.bar(d.Cells.Sum(), most, w-text.Width(row)-2)))
	}
	row := "  " + text.Fit("in all", 16)
	for _, a := range shown {
		row += " " + text.FitRight(figureWords(total[a]), 10)
	}
	lines = append(lines, th.Strong.Render(row), "")
	if hidden := len(algae) - len(shown); hidden > 0 {
		lines = append(lines, "  "+th.Hold.Render(text.Truncate(fmt.Sprintf(" %d more algae do not fit: widen the window ", hidden), max(1, w-2))))
	}
	return append(lines, f.demandNotes(w)...)
}

// askedAlgae are the algae that any of the days asks for.
func (f *Feed) askedAlgae() []string {
	asked := map[string]float64{}
	for _, d := range f.demand.Days {
		for a, x := range d.Cells {
			asked[a] += x
		}
	}
	return f.inOrder(asked)
}

// gigacells is a thousand million cells, the unit of what has no litres.
const gigacells = 1e9

// dayFigure is litres, or thousand millions of cells of an alga whose culture is
// not counted.
func (f *Feed) dayFigure(d model.DemandDay, alga string) float64 {
	if slices.Contains(f.demand.Uncounted, alga) {
		return d.Cells[alga] / gigacells
	}
	return d.Litres[alga]
}

func (f *Feed) dayWords(d model.DemandDay, alga string) string {
	if d.Cells[alga] == 0 {
		return "-"
	}
	return figureWords(f.dayFigure(d, alga))
}

// figureWords keep three figures of a small amount.
func figureWords(x float64) string {
	switch {
	case x < 0.1:
		return text.Decimal(x, 4)
	case x < 10:
		return text.Decimal(x, 3)
	}
	return text.Decimal(x, 1)
}

// bar is an amount as a bar, the largest filling w cells.
func (f *Feed) bar(x, most float64, w int) string {
	if most <= 0 || w < 4 {
		return ""
	}
	return strings.Repeat(f.desk.Theme.Marks.Level[8], int(x/most*float64(min(w, 30))+0.5))
}

// demandNotes are what the demand rests on, the gaps first.
func (f *Feed) demandNotes(w int) []string {
	th, d := f.desk.Theme, &f.demand
	var lines []string
	for _, a := range d.Uncounted {
		if slices.Contains(f.askedAlgae(), a) {
			lines = append(lines, badgeLines(th.Hold, text.Clean(a)+": its culture has no count, so G is thousand million cells, not litres", w)...)
		}
	}
	for _, gap := range d.Gaps {
		lines = append(lines, badgeLines(th.Hold, text.Clean(gap), w)...)
	}
	for _, s := range d.Stays {
		words := fmt.Sprintf("%s stays: %s", text.Clean(s.Batch), text.Clean(s.Why))
		if !s.Last.IsZero() {
			words = fmt.Sprintf("%s until %s: %s", text.Clean(s.Batch), s.Last, text.Clean(s.Why))
		}
		for _, l := range text.Wrap(words, max(1, w-2)) {
			lines = append(lines, "  "+l)
		}
	}
	house := f.desk.Ledger.Room().House
	note := fmt.Sprintf("Each tank as it stands, its whole ration every %s h as in fresh water, cultures as dense as last counted. "+
		"A batch leaves %d days after its ready date. No batch to come is reckoned with.", plain(house.FeedHours), model.StayDays)
	for _, l := range text.Wrap(note, max(1, w-2)) {
		lines = append(lines, "  "+th.Faint.Render(l))
	}
	return lines
}
