package session

import (
	"fmt"

	"drainboard/model/wash"
	"drainboard/tui/text"
)

// View draws the screen in exactly h rows of w cells.
func (s *Session) View(w, h int) []string {
	if w < 1 || h < 1 {
		return text.Frame(nil, w, h)
	}
	s.sync()
	switch s.phase() {
	case open:
		return s.viewRunning(w, h)
	case done:
		return s.viewAfter(w, h)
	}
	return s.viewBefore(w, h)
}

func (s *Session) viewBefore(w, h int) []string {
	t, b := s.lay(), &s.before
	switch b.stage {
	case printing:
		b.pageH = max(1, h-1)
		head := s.headline(s.desk.Theme.Strong, "THE PLAN AS TEXT, to be copied or printed", w)
		return text.Frame(append(head.lines, b.page.View(s.desk.Theme, w, b.pageH)...), w, h)
	case confirming:
		return s.viewConfirm(w, h)
	case leaving:
		return stack([]block{
			s.headline(s.desk.Theme.Strong, "YOUR LIST IS NOT OPENED YET", w),
			{lines: []string{"  1  keep on with it", "  2  drop it and leave"}, air: true},
		}, w, h)
	case listing:
	}
	if t.err != nil {
		return stack([]block{
			s.headline(s.desk.Theme.Strong, "NO PLAN CAN BE MADE", w),
			{lines: badge(s.desk.Theme.Error, t.err.Error(), w)},
		}, w, h)
	}
	return s.viewList(w, h)
}

// planWords is the headline of the plan.
func planWords(t *laid) string {
	if len(t.rows) == 0 {
		return "NO CHANGE DUE"
	}
	first := "CHANGE SESSION"
	if len(t.plan.Moves) > 0 {
		m := t.plan.Moves[0]
		first = "NEXT " + text.Clean(t.name(m.From)) + " into " + text.Clean(t.name(m.To))
	}
	return fmt.Sprintf("%s: %s planned, crew of %d, %s", first, movesWord(len(t.plan.Moves)), t.problem.Crew, t.problem.Order)
}

// viewList draws the list of moves with what it takes.
func (s *Session) viewList(w, h int) []string {
	t, l, th := &s.before.laid, s.desk.Ledger, s.desk.Theme
	rows := tableCells(l, *t, th.Marks.Arrow)
	blocks := []block{s.headline(th.Strong, planWords(t), w)}
	mix := s.mixBlock(*t, w)
	rest := s.planFacts(*t, w)
	taken := height(rest) + len(mix.lines) + 1
	blocks = append(blocks, s.tableBlocks(rows, w, h, taken, len(mix.short)-len(mix.lines))...)
	if s.before.typing != nothing {
		blocks = append(blocks, block{lines: []string{s.typingLine(w)}})
	}
	blocks = append(blocks, block{lines: s.noteLines(w)})
	blocks = append(blocks, rest...)
	return stack(append(blocks, mix), w, h)
}

// tableBlocks is the table: a reason beneath each row where all of it fits, else
// the reason of the chosen row beneath the table. taken rows are wanted by the
// rest, of which less can be spared.
func (s *Session) tableBlocks(rows []cells, w, h, taken, less int) []block {
	th := s.desk.Theme
	if len(rows) == 0 {
		return []block{{lines: styled(th.Strong, nothingDue(s.desk.Ledger, s.desk.Now)+" Press a to add a tank.", w), air: true}}
	}
	cols := columnsFor(rows, w-1)
	wide := cols[8] >= 36
	inner := func(two bool) int {
		if two {
			return 1 + 2*len(rows)
		}
		return 2 + len(rows)
	}
	two := !wide && (taken+inner(true) <= h || taken+less+inner(true) <= h && taken+inner(false) > h)
	lines := []string{th.Faint.Render(" " + cols.line(headings()))}
	room := max(3, h-taken-less-2)
	if two {
		room = max(2, room/2)
	}
	top := max(0, min(s.before.chosen-room/2, len(rows)-room))
	end := min(len(rows), top+room)
	for i := top; i < end; i++ {
		hidden := i == top && top > 0 || i == end-1 && end < len(rows)
		lines = append(lines, s.tableRow(rows[i], cols, i, two, hidden, w)...)
	}
	if two {
		return []block{{lines: lines}}
	}
	chosen := rows[s.before.chosen]
	if wide || chosen.cannot {
		return []block{{lines: lines}}
	}
	return []block{{lines: lines}, {lines: []string{th.Faint.Render(text.Truncate(" "+chosen.n+" "+chosen.why, w))}, rank: 1}}
}

func (s *Session) tableRow(r cells, cols columns, i int, two, hidden bool, w int) []string {
	th := s.desk.Theme
	why := r.why
	two = two && !r.cannot
	if two {
		r.why = ""
	}
	style, pointer := th.Plain, " "
	if r.cannot {
		style = th.Error
	}
	if hidden {
		pointer = th.Marks.More
	}
	if i == s.before.chosen {
		pointer = th.Marks.Pointer
		style = th.Focus
	}
	lines := []string{style.Render(pointer + cols.line(r))}
	if two {
		lines = append(lines, "    "+th.Faint.Render(text.Truncate(why, max(0, w-4))))
	}
	return lines
}

// planFacts are the lines beneath the table.
func (s *Session) planFacts(t laid, w int) []block {
	th, l := s.desk.Theme, s.desk.Ledger
	var stay []string
	for _, line := range unmovedLines(t) {
		stay = append(stay, styled(th.Strong, line, w)...)
	}
	blocks := []block{{lines: stay, rank: 1}}
	if len(t.plan.Moves) == 0 {
		return blocks
	}
	return append(blocks,
		block{lines: styled(th.Plain, proofWords(t, s.before.draft.changed), w), rank: 1, air: true},
		block{lines: styled(th.Plain, finishWords(l, t), w), rank: 2},
		block{lines: styled(th.Plain, sieveLine(planSieves(l, t)), w), rank: 2})
}

// mixBlock is the acid and water with the cautions beside them; where they have no
// room a line says where they are.
func (s *Session) mixBlock(t laid, w int) block {
	if len(t.plan.Moves) == 0 {
		return block{}
	}
	th := s.desk.Theme
	var lines []string
	for _, line := range mixLines(s.desk.Ledger.Room().House.Wash, t.washes()) {
		lines = append(lines, styled(th.Strong, line, w)...)
	}
	for _, c := range wash.AcidCautions() {
		lines = append(lines, styled(th.Plain, c, w)...)
	}
	short := styled(th.Faint, "Acid and water with their cautions: Enter shows them before anything opens.", w)
	return block{lines: lines, short: short, rank: 3, air: true}
}

// typingLine is the name being typed.
func (s *Session) typingLine(w int) string {
	words := "add tank: "
	if s.before.typing == aiming && s.before.chosen < len(s.before.laid.rows) {
		words = text.Clean(s.before.laid.rows[s.before.chosen].leg.from) + " into: "
	}
	words = text.Truncate(words, w)
	return s.desk.Theme.Strong.Render(words) + s.before.field.View(s.desk.Theme, max(0, w-text.Width(words)), true)
}

// viewConfirm shows what a second Enter opens.
func (s *Session) viewConfirm(w, h int) []string {
	th, l, t := s.desk.Theme, s.desk.Ledger, s.before.agreed
	moves := ""
	for i, leg := range t.legs() {
		if i > 0 {
			moves += ", "
		}
		moves += text.Clean(leg.From) + th.Marks.Arrow + text.Clean(leg.To)
	}
	blocks := []block{
		s.headline(th.Action, "OPEN THE SESSION? Enter opens it, Esc goes back", w),
		{lines: styled(th.Strong, fmt.Sprintf("%s: %s", movesWord(len(t.plan.Moves)), moves), w), air: true},
	}
	for _, r := range t.rows {
		if r.move == nil {
			blocks = append(blocks, block{lines: styled(th.Strong, text.Clean("not among them: "+r.leg.from+", "+r.complaint), w), rank: 1})
		}
	}
	for _, line := range unmovedLines(t) {
		blocks = append(blocks, block{lines: styled(th.Plain, line, w), rank: 1})
	}
	blocks = append(blocks,
		block{lines: s.noteLines(w)},
		block{lines: styled(th.Plain, finishWords(l, t), w), rank: 2, air: true},
		block{lines: styled(th.Plain, sieveLine(planSieves(l, t)), w), rank: 1})
	mix := s.mixBlock(t, w)
	mix.short, mix.rank = styled(th.Strong, shortCaution, w), 3
	return stack(append(blocks, mix), w, h)
}
