package scope

import (
	"fmt"
	"slices"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/model/growth"
	"drainboard/tui/keys"
	"drainboard/tui/text"
)

func summaryKeys() keys.Table {
	return keys.Table{Title: "Figures", Bindings: []keys.Binding{
		{Action: onward, Keys: []string{"enter", "*"}, Short: "look", Long: "Go on to the look: lobes, gut, swimming, dead."},
		{Action: readOn, Keys: []string{"backspace"}, Short: "read on", Long: "Back to the readings; typing a digit does the same."},
		{Action: scroll, Keys: []string{"up", "down", "pgup", "pgdown", "home", "end"}, Label: "arrows", Short: "scroll", Long: "Scroll."},
	}}
}

// onSummary takes a key over the figures. A digit goes back to the readings:
// whoever types one is reading on.
func (s *Scope) onSummary(key tea.KeyMsg) tea.Cmd {
	action, _ := summaryKeys().Match(key)
	_, column := columnOf(key)
	switch {
	case action == onward:
		s.phase, s.say = looking, message{}
		return nil
	case action == readOn, key.Type == tea.KeyEsc:
		s.phase, s.say = reading, message{}
		return nil
	case column, key.Type == tea.KeyRunes && strings.Trim(string(key.Runes), "0123456789.,") == "":
		s.phase = reading
		return s.onReading(key)
	}
	s.page, _ = s.page.Update(key, s.height)
	return nil
}

// figureLines are the figures in words, for w cells.
func (s *Scope) figureLines(w int) []string {
	f := s.figures
	if f.err != nil {
		return []string{text.Truncate(text.Clean(f.err.Error()), w)}
	}
	var lines []string
	add := func(words string) { lines = append(lines, text.Wrap(words, w)...) }
	add(meanWords(f.sum))
	add(spreadWords(f.sum))
	lines = append(lines, s.sortedLines(w)...)
	lines = append(lines, s.growthLines(w)...)
	if f.place != growth.Unjudged {
		add(fmt.Sprintf("house corridor for the age %s to %s µm: %s", figure(f.band.LowUM), figure(f.band.HighUM), f.place))
	}
	return append(append(lines, ""), s.sieveLines(w)...)
}

func meanWords(sum growth.Sample) string {
	words := fmt.Sprintf("n %d, mean %s µm", sum.N, fixed(sum.Mean))
	if sum.HasSpread {
		words += " (95 % " + between(sum.MeanInterval) + ")"
	}
	return words
}

func spreadWords(sum growth.Sample) string {
	words := "median " + fixed(sum.Median) + " µm"
	if sum.HasSpread {
		words = fmt.Sprintf("sd %s, cv %s %%, ", fixed(sum.SD), fixed(sum.CVPercent)) + words
	}
	return words + fmt.Sprintf(", %s to %s", figure(sum.Min), figure(sum.Max))
}

func between(i growth.Interval) string { return fixed(i.Low) + " to " + fixed(i.High) }

// fixed writes a length to a tenth, without the space between thousands that a
// line might break at.
func fixed(um float64) string { return strings.ReplaceAll(text.Decimal(um, 1), " ", "") }

// growthLines are the difference to the lengths of an earlier sitting.
func (s *Scope) growthLines(w int) []string {
	f := s.figures
	switch {
	case f.before == nil:
		return text.Wrap("no earlier lengths of these larvae to compare with", w)
	case f.changeErr != nil:
		return text.Wrap(f.changeErr.Error(), w)
	}
	zone := s.desk.Ledger.Room().Zone
	first := fmt.Sprintf("since %s in %s: %+.1f µm", f.before.At.In(zone).Format("2 Jan 15:04"), f.before.Tank, f.change.UM)
	if f.change.HasInterval {
		first += " (95 % " + between(f.change.Interval) + ")"
		if !f.change.Sure() {
			first += ", no more than chance"
		}
	}
	lines := text.Wrap(first, w)
	if !f.change.HasRate {
		return append(lines, text.Wrap("less than half a day apart, so no growth a day", w)...)
	}
	rate := fmt.Sprintf("%+.1f µm a day over %.1f days", f.change.PerDay, f.change.Days)
	if f.change.HasInterval {
		rate += " (95 % " + between(f.change.PerDayInterval) + ")"
	}
	return append(lines, text.Wrap(rate, w)...)
}

// sieveLines say what each sieve of the room would hold, and what follows.
func (s *Scope) sieveLines(w int) []string {
	f, th := s.figures, s.desk.Theme
	if f.adviceErr != nil {
		return text.Wrap(f.adviceErr.Error(), w)
	}
	lines := []string{th.Title.Render(text.Truncate("  sieve      holds  loses     95 %", w))}
	for _, h := range f.advice.Sieves {
		note := ""
		if slices.Contains(f.ageMeshes, h.MeshUM) {
			note = "  age"
		}
		if h.MeshUM == f.advice.Use.MeshUM {
			note += "  " + th.Marks.Arrow + " use"
		}
		lost := h.LostInterval()
		lines = append(lines, text.Truncate(fmt.Sprintf("%4s µm  %3d of %-3d  %3.0f %%  %2.0f to %2.0f %%%s",
			figure(h.MeshUM), h.Held, h.Of, 100*h.Lost(), 100*lost.Low, 100*lost.High, note), w))
	}
	style := th.Plain
	if f.advice.Verdict != growth.MeshAgrees {
		style = th.Strong
	}
	for _, l := range text.Wrap(inMicrometres(f.advice.Words), w) {
		lines = append(lines, style.Render(l))
	}
	return lines
}

func inMicrometres(words string) string { return strings.ReplaceAll(words, " um", " µm") }

// sortedLines list the readings, the odd ones first.
func (s *Scope) sortedLines(w int) []string {
	f, th := s.figures, s.desk.Theme
	var words []string
	for _, um := range f.sum.Odd {
		words = append(words, th.Marks.Odd+figure(um))
	}
	rest := slices.Clone(f.sample.UM)
	for i := len(f.sum.OddAt) - 1; i >= 0; i-- {
		rest = slices.Delete(rest, f.sum.OddAt[i], f.sum.OddAt[i]+1)
	}
	slices.Sort(rest)
	for _, um := range rest {
		words = append(words, figure(um))
	}
	if n := len(f.sum.Odd); n > 0 {
		words = slices.Insert(words, n, fmt.Sprintf("(%d odd: look again)", n))
	}
	return text.Wrap(strings.Join(words, " "), w)
}

// summaryView draws the figures in exactly h rows of w cells: the histogram
// beside the words, or beneath them in what room is left.
func (s *Scope) summaryView(w, h int) []string {
	s.height = h
	if w >= wideW {
		left := w - histogramW - 1
		s.page.Lines = indented(s.figureLines(left - 3))
		return text.Beside(h, 1,
			text.Column{Lines: s.page.View(s.desk.Theme, left, h), W: left},
			text.Column{Lines: s.histogram(histogramW, min(h, 18)), W: histogramW})
	}
	lines := append(s.figureLines(w-3), "")
	left := max(leastHistogram, min(h-len(lines), mostHistogram))
	s.page.Lines = indented(append(lines, s.histogram(w-3, left)...))
	return s.page.View(s.desk.Theme, w, h)
}

func indented(lines []string) []string {
	for i, l := range lines {
		lines[i] = " " + l
	}
	return lines
}

// ago is how long ago something was, for a line.
func ago(now, at time.Time) string { return text.Duration(now.Sub(at)) + " ago" }

// sampleWords is a sample in a few words.
func sampleWords(s *model.Sample, now time.Time) string {
	sum, err := growth.Summarize(s.UM)
	if err != nil {
		return ""
	}
	return fmt.Sprintf("mean %s µm (n %d), %s", fixed(sum.Mean), sum.N, ago(now, s.Last))
}
