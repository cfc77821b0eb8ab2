package scope

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/charmbracelet/lipgloss"

	"drainboard/model"
	"drainboard/model/growth"
	"drainboard/tui/screen"
	"drainboard/tui/text"
)

// From these sizes on the figures of a reading stand in three-row digits, and the
// last readings beside them instead of beneath.
const (
	bigH   = 11
	asideW = 56
	asideN = 22 // cells of the readings beside
)

// View draws the screen in exactly h rows of w cells.
func (s *Scope) View(w, h int) []string {
	if w < 1 || h < 1 {
		return nil
	}
	if s.ask != nil {
		return s.questionView(w, h)
	}
	lines := []string{s.heading(w)}
	switch s.phase {
	case summary:
		return text.Frame(append(lines, s.summaryView(w, h-1)...), w, h)
	case looking:
		return text.Frame(append(lines, s.lookView(w, h-1)...), w, h)
	case leaving:
		if h > 3 {
			lines = append(lines, s.sayLine(w))
		}
		return text.Frame(append(lines, s.nextView(w, h-len(lines))...), w, h)
	}
	return text.Frame(append(lines, s.readingView(w, h-1)...), w, h)
}

// heading names the tank, its larvae and the unit, and shows the clock.
func (s *Scope) heading(w int) string {
	d := s.desk
	left := " MICROSCOPE"
	if t, ok := s.now(); ok && s.phase != leaving {
		left += " " + text.Clean(t.Tank.Name)
		if days, holds := d.Ledger.Age(t, d.Now); holds {
			left += "  " + text.Clean(t.Larvae.Batch) + " day " + strconv.Itoa(days)
		}
	}
	if s.phase == reading {
		left += "  " + s.unit.words()
	}
	clock := d.Theme.Faint.Render(d.Now.In(d.Ledger.Room().Zone).Format("Mon 2 Jan 15:04:05"))
	if w < 60 {
		clock = d.Theme.Faint.Render(d.Now.In(d.Ledger.Room().Zone).Format("15:04:05"))
	}
	return text.Ends(d.Theme.Strong.Render(left), clock, w)
}

func (s *Scope) style(m screen.Mood) lipgloss.Style {
	switch m {
	case screen.Saved:
		return s.desk.Theme.Saved
	case screen.Refused:
		return s.desk.Theme.Error
	}
	return s.desk.Theme.Plain
}

// sayLine is what the last key did.
func (s *Scope) sayLine(w int) string {
	if s.say.text == "" {
		return ""
	}
	mark := ""
	if s.say.mood == screen.Saved {
		mark = s.desk.Theme.Marks.Done + " "
	}
	return "  " + s.style(s.say.mood).Render(text.Truncate(" "+mark+text.Clean(s.say.text)+" ", max(1, w-2)))
}

// sayLines is sayLine with as many rows as its words need, at most two.
func (s *Scope) sayLines(w int) []string {
	if text.Width(s.say.text)+7 <= w {
		return []string{s.sayLine(w)}
	}
	var lines []string
	for _, l := range text.Wrap(s.say.text, max(1, w-4)) {
		if len(lines) == 2 {
			break
		}
		lines = append(lines, "  "+s.style(s.say.mood).Render(" "+l+" "))
	}
	return lines
}

// readingView is n of N, the last value, the field, and what was read so far.
func (s *Scope) readingView(w, h int) []string {
	sample := s.sitting()
	left := w
	if w >= asideW && h >= 6 {
		left = w - asideN - 1
	}
	var lines []string
	if gone := s.emptied(); gone != "" {
		for _, l := range text.Wrap(gone, max(1, left-4)) {
			lines = append(lines, "  "+s.desk.Theme.Hold.Render(" "+l+" "))
		}
	}
	typing := []string{"  " + s.fieldLine(left-2)}
	typing = append(typing, s.sayLines(left)...)
	if h-len(lines) >= bigH {
		lines = append(append(append(lines, ""), s.bigLines(sample, left)...), "")
		typing = append(typing, "")
	} else if h > 1 {
		lines = append(lines, "  "+s.smallLine(sample))
	}
	lines = append(lines, typing...)
	lines = append(lines, s.runningLines(sample, left)...)
	if left < w {
		return text.Beside(h, 1, text.Column{Lines: text.Frame(lines, left, h), W: left},
			text.Column{Lines: s.lastLines(sample, min(h-1, 11)), W: asideN})
	}
	return text.Frame(append(lines, s.lastInOneLine(sample)), w, h)
}

func (s *Scope) fieldLine(w int) string {
	unit := s.unit.short()
	return "length " + s.field.View(s.desk.Theme, max(2, min(mostDigits+2, w-8-text.Width(unit))), true) + " " + unit
}

// counted is n of N.
func (s *Scope) counted(sample *model.Sample) string {
	n := 0
	if sample != nil {
		n = len(sample.UM)
	}
	return strconv.Itoa(n) + "/" + strconv.Itoa(s.want)
}

// lastValue is the last reading as it was typed, empty where there is none.
func (s *Scope) lastValue(sample *model.Sample) string {
	if sample == nil {
		return ""
	}
	return figure(s.unit.typed(sample.UM[len(sample.UM)-1]))
}

// bigLines are n of N and the last value, three rows high, with a row of words
// beneath; small where they do not fit.
func (s *Scope) bigLines(sample *model.Sample, w int) []string {
	ascii := s.desk.Theme.ASCII
	counted, last := s.counted(sample), s.lastValue(sample)
	wide := text.BigWidth(counted)
	rows, ok := text.Big(counted, ascii)
	values, okLast := text.Big(last, ascii)
	if !ok || !okLast || wide+text.BigWidth(last)+6 > w {
		return []string{"  " + s.smallLine(sample)}
	}
	lines := make([]string, 0, len(rows)+1)
	for i := range rows {
		lines = append(lines, "  "+s.desk.Theme.Plain.Render(rows[i])+"    "+s.desk.Theme.Strong.Render(values[i]))
	}
	beneath := "  " + text.Fit("read", wide) + "    "
	if last != "" {
		beneath += "last, " + s.unit.short()
		if s.oddAt(sample, len(sample.UM)-1) {
			beneath += "  " + s.desk.Theme.Error.Render(" "+s.desk.Theme.Marks.Odd+" odd ")
		}
	}
	return append(lines, beneath)
}

func (s *Scope) smallLine(sample *model.Sample) string {
	words := s.counted(sample) + " read"
	if sample == nil {
		return words
	}
	words += ", last " + s.desk.Theme.Strong.Render(s.lastValue(sample)) + " " + s.unit.short()
	if s.oddAt(sample, len(sample.UM)-1) {
		words += " " + s.desk.Theme.Error.Render(" "+s.desk.Theme.Marks.Odd+" odd ")
	}
	return words
}

// oddAt says that a reading of a sample is unlike those before it.
func (s *Scope) oddAt(sample *model.Sample, i int) bool {
	return growth.Odd(sample.UM[:i], sample.UM[i])
}

// runningLines are the figures so far and those of last time.
func (s *Scope) runningLines(sample *model.Sample, w int) []string {
	t, _ := s.now()
	if t.Larvae == nil {
		return nil
	}
	so := "no reading in this sitting yet"
	if sample != nil {
		if sum, err := growth.Summarize(sample.UM); err == nil {
			so = "so far   mean " + fixed(sum.Mean) + " µm"
			if sum.HasSpread {
				so += ", sd " + fixed(sum.SD)
			}
		}
		if !sample.OneByOne {
			so += "; pasted, the next length begins a new sample"
		}
	}
	lines := []string{"  " + text.Truncate(so, max(1, w-2))}
	if before := earlier(s.desk.Ledger, t, sample); before != nil {
		lines = append(lines, "  "+s.desk.Theme.Faint.Render(text.Truncate("earlier  "+sampleWords(before, s.desk.Now), max(1, w-2))))
	}
	return lines
}

// mostLast is how many of the last readings are listed.
const mostLast = 10

// lastLines list the last readings, the latest first.
func (s *Scope) lastLines(sample *model.Sample, h int) []string {
	th := s.desk.Theme
	lines := []string{th.Title.Render("last readings")}
	if sample == nil {
		return lines
	}
	for i := len(sample.UM) - 1; i >= max(0, len(sample.UM)-mostLast) && len(lines) < h; i-- {
		line := fmt.Sprintf("%4d  %7s µm", i+1, figure(sample.UM[i]))
		if s.oddAt(sample, i) {
			line += " " + th.Error.Render(th.Marks.Odd)
		}
		lines = append(lines, line)
	}
	return lines
}

func (s *Scope) lastInOneLine(sample *model.Sample) string {
	if sample == nil {
		return ""
	}
	var words []string
	for i := len(sample.UM) - 1; i >= max(0, len(sample.UM)-mostLast); i-- {
		mark := ""
		if s.oddAt(sample, i) {
			mark = s.desk.Theme.Marks.Odd
		}
		words = append(words, mark+figure(sample.UM[i]))
	}
	return s.desk.Theme.Faint.Render("  " + strings.Join(words, " "))
}

// lookView draws the form of the look.
func (s *Scope) lookView(w, h int) []string {
	th := s.desk.Theme
	var lines []string
	if gone := s.emptied(); gone != "" {
		lines = append(lines, "  "+th.Hold.Render(" "+text.Truncate(gone, max(1, w-4))+" "))
	}
	if h > 9 {
		lines = append(lines, "")
		if t, _ := s.now(); t.Larvae != nil && t.Larvae.Look != nil {
			words := "last look " + ago(s.desk.Now, t.Larvae.Seen) + ": " + text.Clean(model.Sentence(t.Larvae.Look))
			lines = append(lines, "  "+th.Faint.Render(text.Truncate(words, max(1, w-2))), "")
		}
	}
	below := s.sayLines(w)
	if h < 6 {
		below = nil
	}
	room := max(0, h-len(lines)-len(below)-1)
	lines = append(lines, s.look.form.View(th, w, min(room, len(s.look.form.Rows)+3))...)
	return text.Frame(append(append(lines, ""), below...), w, h)
}

// questionView asks in the middle of the screen.
func (s *Scope) questionView(w, h int) []string {
	var lines []string
	for _, l := range text.Wrap(text.Clean(s.ask.ask), max(1, w-4)) {
		lines = append(lines, "  "+s.desk.Theme.Strong.Render(l))
	}
	lines = lines[:min(len(lines), max(0, h-1))]
	return text.Centre(append(lines, "  "+s.desk.Theme.Action.Render(" Enter: yes ")+"  Esc: no"), w, h)
}
