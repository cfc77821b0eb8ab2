package bench

import (
	"strconv"
	"strings"

	sums "drainboard/model/bench"
	"drainboard/tui/factform"
	"drainboard/tui/text"
)

// figureLines are what the sum comes to, w cells wide; or what is wrong, in full,
// and what is still to be typed.
func (b *Bench) figureLines(w int) []string {
	s, th := b.sheet(), b.desk.Theme
	w = max(1, w)
	var lines []string
	for _, p := range s.problems {
		row := s.row(p.Field)
		if row >= 0 && s.unfinished(row, p) {
			continue
		}
		words := p.Problem
		if row >= 0 {
			words = s.form.Rows[row].Label + ": " + strings.TrimLeft(p.Given+" ", " ") + p.Problem
		}
		for _, l := range text.Wrap(text.Clean(words), max(1, w-2)) {
			lines = append(lines, th.Error.Render(" "+l+" "))
		}
	}
	if missing := s.missing(); len(missing) > 0 {
		for _, l := range text.Wrap("still to type: "+strings.Join(missing, ", "), w) {
			lines = append(lines, th.Faint.Render(l))
		}
	}
	for _, f := range s.answer.Figures {
		for _, r := range rowsOf(f) {
			lines = append(lines, b.figureLine(r[0], r[1], w)...)
		}
	}
	return lines
}

// figureLine sets a figure to the right of its name, or beneath it where both do
// not fit.
func (b *Bench) figureLine(what, value string, w int) []string {
	th := b.desk.Theme
	if text.Width(what)+text.Width(value)+2 <= w {
		return []string{text.Fit(what, w-text.Width(value)) + th.Strong.Render(value)}
	}
	lines := text.Wrap(what, w)
	if last := lines[len(lines)-1]; text.Width(last)+text.Width(value)+2 <= w {
		lines[len(lines)-1] = text.Fit(last, w-text.Width(value)) + th.Strong.Render(value)
		return lines
	}
	for _, l := range text.Wrap(value, w) {
		lines = append(lines, th.Strong.Render(text.FitRight(l, w)))
	}
	return lines
}

// rowsOf is a figure as rows of name and value, none where it is not known.
func rowsOf(f sums.Figure) [][2]string {
	switch x := f.Value.(type) {
	case float64:
		return [][2]string{{f.What, numberWords(x, f)}}
	case int:
		return [][2]string{{f.What, withUnit(strconv.Itoa(x), f.Unit)}}
	case string:
		return [][2]string{{f.What, x}}
	case []float64:
		return [][2]string{{f.What, listWords(x, f.Unit)}}
	case []sums.Amount:
		rows := make([][2]string, len(x))
		for i, a := range x {
			rows[i] = [2]string{f.What + " " + text.Clean(a.Name), numberWords(a.X, f)}
		}
		return rows
	}
	return nil
}

// numberWords is a number with its unit; litres that are poured from a cylinder
// are shown in mL as well.
func numberWords(x float64, f sums.Figure) string {
	words := withUnit(text.Decimal(x, f.Places), f.Unit)
	if f.Unit == "L" && f.Places > 3 && x > 0 && x < 1 {
		words = text.Decimal(1000*x, 1) + " mL, " + words
	}
	return words
}

func withUnit(figure, unit string) string {
	if unit == "" {
		return figure
	}
	return figure + " " + factform.Unit(unit)
}

func listWords(xs []float64, unit string) string {
	if len(xs) == 0 {
		return "none"
	}
	words := make([]string, len(xs))
	for i, x := range xs {
		words[i] = plain(x)
	}
	return withUnit(strings.Join(words, ", "), unit)
}
