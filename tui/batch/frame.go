package batch

import (
	"fmt"
	"strings"

	"drainboard/model"
	"drainboard/tui/chart"
	"drainboard/tui/text"
)

// View draws the screen in exactly h rows of w cells.
func (s *Batch) View(w, h int) []string {
	if w < 1 || h < 1 {
		return nil
	}
	b := s.now()
	if b == nil {
		return text.Frame(s.nothing(w), w, h)
	}
	head := []string{s.heading(b, w), s.tabs(w)}
	head = head[:min(len(head), max(1, h-1))]
	body := h - len(head)
	words := s.words(b, w-1)
	if drawn := chartRows(body, len(words)); drawn > 0 {
		if lines := s.chart(b, w, drawn); lines != nil {
			head = append(head, lines...)
		}
	}
	s.rows = max(1, h-len(head))
	s.read.Lines = words
	return text.Frame(append(head, s.read.View(s.desk.Theme, w, s.rows)...), w, h)
}

// nothing is what is said where there is no batch to show.
func (s *Batch) nothing(w int) []string {
	if len(s.order()) == 0 {
		return []string{
			s.heading(nil, w), "",
			" No batch was stocked yet.",
			" A batch begins by an entry: choose a ready tank on the board, Enter, then i.",
			" Esc goes back.",
		}
	}
	return []string{
		s.heading(nil, w), "",
		" The room has no batch " + text.Clean(s.name) + ".",
		fmt.Sprintf(" It has %s; n shows the first. Esc goes back.", many(len(s.order()), "batch")),
	}
}

// Rows below which there is no chart, and the least it is drawn in.
const (
	leastChart = 9
	leastWords = 4
)

// chartRows shares the rows between the chart and the words: the chart has half
// of them and what the words do not need.
func chartRows(body, words int) int {
	if body < leastChart+leastWords {
		return 0
	}
	return max(leastChart, (body+1)/2, min(body-words, body*2/3))
}

// heading names the batch, where it is and what it came from, and shows the clock.
func (s *Batch) heading(b *model.Batch, w int) string {
	d := s.desk
	left := d.Theme.Strong.Render(" BATCH")
	if b != nil {
		left = d.Theme.Strong.Render(" "+text.Clean(b.Name)) + "  " + s.where(b)
		from := "  hatched " + s.day(b.Hatched.Day(d.Ledger.Room().Zone))
		if b.Origin != "" {
			from += ", " + text.Clean(b.Origin)
		}
		left += d.Theme.Faint.Render(from)
	}
	layout := "Mon 2 Jan 15:04:05"
	if w < 100 {
		layout = "15:04:05"
	}
	return text.Ends(left, d.Theme.Faint.Render(s.at(d.Now).Format(layout)), w)
}

// where is the age and the tanks of a batch, or when it ended.
func (s *Batch) where(b *model.Batch) string {
	d := s.desk
	zone := d.Ledger.Room().Zone
	tanks := d.Ledger.BatchTanks(b)
	if len(tanks) == 0 {
		end, ok := ended(b)
		if !ok {
			return "no longer in the room"
		}
		return fmt.Sprintf("ENDED %s, day %d: %s", s.date(end.At), b.AgeDays(end.At, zone), end.Why)
	}
	names := make([]string, len(tanks))
	for i, t := range tanks {
		names[i] = text.Clean(t.Tank.Name)
	}
	return fmt.Sprintf("day %d  in %s", b.AgeDays(d.Now, zone), strings.Join(names, ", "))
}

// ended is the loss by which the last tank of a batch was emptied.
func ended(b *model.Batch) (model.Loss, bool) {
	for i := len(b.Losses) - 1; i >= 0; i-- {
		if b.Losses[i].Ended {
			return b.Losses[i], true
		}
	}
	return model.Loss{}, false
}

// tabs names the pages, the one shown with a mark, and the place of the batch.
func (s *Batch) tabs(w int) string {
	th := s.desk.Theme
	line := ""
	for i, name := range []string{"growth", "all batches", "survival", "story"} {
		label := fmt.Sprintf("%d %s", i+1, name)
		if page(i) == s.page {
			line += " " + th.Focus.Render(th.Marks.Pointer+label+" ")
		} else {
			line += "  " + th.Faint.Render(label) + " "
		}
	}
	return text.Ends(line, th.Faint.Render(fmt.Sprintf("batch %d of %d", s.place()+1, len(s.order()))), w)
}

// words are the lines beneath the chart of the page that is shown.
func (s *Batch) words(b *model.Batch, w int) []string {
	switch s.page {
	case allPage:
		return s.lines(s.allWords(w), w)
	case survivalPage:
		return s.lines(s.survivalWords(b, w), w)
	case storyPage:
		return s.lines(s.storyWords(b, w), w)
	}
	return s.lines(s.growthWords(b), w)
}

// chart draws the chart of the page, nil where it has none.
func (s *Batch) chart(b *model.Batch, w, h int) []string {
	var drawn chart.Grid
	switch s.page {
	case growthPage:
		drawn = s.growthChart(b).Draw(w-1, h, s.mode())
	case allPage:
		drawn = s.allChart(b, w-1, h)
	case survivalPage:
		drawn = s.survivalChart(b).Draw(w-1, h, s.mode())
	default:
		return nil
	}
	lines := drawn.Styled(s.charted)
	for i := range lines {
		lines[i] += " "
	}
	return lines
}

// mode is the set of characters that charts are drawn with.
func (s *Batch) mode() chart.Mode {
	switch {
	case s.desk.Theme.ASCII:
		return chart.ASCII
	case s.dots:
		return chart.Braille
	}
	return chart.Block
}

// charted is the style of a run of cells of a chart.
func (s *Batch) charted(class chart.Class, cells string) string {
	th := s.desk.Theme
	switch class {
	case chart.ClassPoint, chart.ClassMark, chart.ClassLevel, chart.ClassNote, chart.ClassTitle:
		return th.Strong.Render(cells)
	case chart.ClassCurve, chart.ClassError, chart.ClassLabel:
		return th.Plain.Render(cells)
	case chart.ClassCorridor:
		return th.Water.Render(cells)
	}
	return th.Faint.Render(cells)
}
