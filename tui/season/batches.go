package season

import (
	"fmt"

	"drainboard/model/season"
	"drainboard/tui/text"
)

// columnOf is one column of the table of batches.
type columnOf struct {
	head  string
	wide  int
	right bool
	words func(season.Batch) string
}

// columnsOf are the columns in the order in which they stand.
func columnsOf() []columnOf {
	loss := func(of func(season.Losses) season.Loss) func(season.Batch) string {
		return func(b season.Batch) string { return lossWords(of(b.Losses)) }
	}
	return []columnOf{
		{"BATCH", 8, false, func(b season.Batch) string { return text.Clean(b.Name) }},
		{"HATCHED", 10, false, func(b season.Batch) string { return b.Day.String() }},
		{"STOCKED", 7, true, func(b season.Batch) string { return figure(b.Stocked, 0) }},
		{"ALIVE %", 12, false, func(b season.Batch) string { return aliveWords(b.Alive) }},
		{"READY ON DAY", 20, false, func(b season.Batch) string { return readyWords(b.Ready) }},
		{"µm A DAY", 10, false, func(b season.Batch) string { return growthWords(b.Growth) }},
		{"MOVES", 5, true, func(b season.Batch) string { return fmt.Sprint(b.Moves) }},
		{"SETTLED", 8, true, loss(func(l season.Losses) season.Loss { return l.Settled })},
		{"DISCARDED", 9, true, loss(func(l season.Losses) season.Loss { return l.Discarded })},
		{"LOST", 8, true, loss(func(l season.Losses) season.Loss { return l.Lost })},
		{"REMOVED", 7, true, loss(func(l season.Losses) season.Loss { return l.Removed })},
	}
}

// byWorth is the order in which columns get room, as places in columnsOf. The causes
// of losses come together or not at all.
func byWorth() [][]int { return [][]int{{0}, {3}, {5}, {4}, {1}, {2}, {6}, {7, 8, 9, 10}} }

// columnsFor are those that have room in w cells, in the order in which they stand.
func columnsFor(w int) []columnOf {
	all, room := columnsOf(), w-2
	taken := make([]bool, len(all))
	for _, group := range byWorth() {
		need := 0
		for _, i := range group {
			need += all[i].wide + 1
		}
		if need > room && group[0] != 0 {
			break
		}
		for _, i := range group {
			taken[i] = true
		}
		room -= need
	}
	var out []columnOf
	for i, c := range all {
		if taken[i] {
			out = append(out, c)
		}
	}
	if extra := min(8, room); extra > 0 {
		out[0].wide += extra
	}
	return out
}

func (c columnOf) fit(words string) string {
	if c.right {
		return text.FitRight(words, c.wide)
	}
	return text.Fit(words, c.wide)
}

// table is the batches in at most h rows with a heading, the one under the pointer
// always among them.
func (s *Season) table(w, h int) []string {
	th, batches, columns := s.desk.Theme, s.shown().Batches, columnsFor(w)
	head := " "
	for _, c := range columns {
		head += " " + c.fit(c.head)
	}
	lines := []string{th.Faint.Render(text.Fit(head, w))}
	at, room := s.place(), max(0, h-1)
	top := max(0, min(at-room/2, len(batches)-room))
	for i := top; i < len(batches) && len(lines) < h; i++ {
		line := " "
		switch {
		case i == at:
			line = th.Focus.Render(th.Marks.Pointer)
		case i == top && top > 0, len(lines) == h-1 && i < len(batches)-1:
			line = th.Faint.Render(th.Marks.More)
		}
		for k, c := range columns {
			cell := c.fit(c.words(batches[i]))
			if i == at && k == 0 {
				cell = th.Strong.Render(cell)
			}
			line += " " + cell
		}
		lines = append(lines, line)
	}
	return text.Frame(lines, w, max(0, min(h, len(batches)+1)))
}

// details are the batch under the pointer in words, and how it was kept.
func (s *Season) details(w int) []string {
	b, ok := s.pointed()
	if !ok {
		return nil
	}
	th := s.desk.Theme
	here := "gone"
	if b.Here {
		here = "here"
	}
	age := fmt.Sprintf(" day %d, %s; %s", b.AgeDays, here, moves(b.Moves))
	if b.Growth.LastUM.Known {
		age += "; last mean " + figure(b.Growth.LastUM, 0) + " µm"
	}
	lines := []string{" " + th.Strong.Render(text.Clean(b.Name)) + age}
	for _, words := range []string{whereWords(b), aliveNote(b.Alive)} {
		for _, l := range text.Wrap(words, max(1, w-2)) {
			lines = append(lines, " "+l)
		}
	}
	return append(lines, s.kept(b, w)...)
}

func moves(n int) string {
	if n == 1 {
		return "1 move"
	}
	return fmt.Sprintf("%d moves", n)
}

// kept is how a batch was kept, in two columns where there is room.
func (s *Season) kept(b season.Batch, w int) []string {
	th := s.desk.Theme
	half := (w - 2) / 2
	if half < 38 {
		half = w - 1
	}
	var cells []string
	for _, h := range season.Habits() {
		name := text.Fit(short(h), 24)
		cells = append(cells, text.Fit(th.Faint.Render(name)+measureWords(h, b.Habit(h)), half))
	}
	if half == w-1 {
		return prefixed(cells)
	}
	var lines []string
	for i := 0; i < len(cells); i += 2 {
		line := cells[i]
		if i+1 < len(cells) {
			line += cells[i+1]
		}
		lines = append(lines, line)
	}
	return prefixed(lines)
}

func prefixed(lines []string) []string {
	for i, l := range lines {
		lines[i] = " " + l
	}
	return lines
}

// short is a habit in at most 23 cells.
func short(h season.Habit) string {
	switch h {
	case season.Difference:
		return "difference at moves"
	case season.OverFine:
		return "moves over step_fine"
	case season.OverHold:
		return "moves over step_hold"
	case season.Late:
		return "changes past due"
	case season.Overdue:
		return "past due and grace"
	case season.Golden, season.Density:
	}
	return h.Words()
}
