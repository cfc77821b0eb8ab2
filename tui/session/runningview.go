package session

import (
	"fmt"
	"strings"

	"drainboard/model"
	"drainboard/model/wash"
	"drainboard/tui/text"
)

// From wideW x wideH on the two lanes stand beside each other; below smallW x
// smallH there is no room for large letters.
const (
	wideW, wideH   = 100, 28
	smallW, smallH = 60, 14
)

// shortCaution stands beside a figure of acid where the full list has no room.
const shortCaution = "Goggles, gloves, fresh air; acid into water; never with bleach; label first."

// viewRunning draws an open session.
func (s *Session) viewRunning(w, h int) []string {
	at := s.now()
	head := s.headline(s.desk.Theme.Moving, s.sessionWords(at), w)
	if w >= wideW && h >= wideH {
		return s.viewLanes(at, head, w, h)
	}
	blocks := append([]block{head}, s.moverOrWasher(at, s.running.washing, true, w, w >= smallW && h >= smallH)...)
	blocks = append(blocks,
		block{lines: s.deferredLines(at, w), rank: 1, foot: true},
		block{lines: s.otherLane(at, w), rank: 4, foot: true},
		block{lines: s.progressLines(at, w), rank: 5, foot: true})
	return stack(blocks, w, h)
}

// viewLanes draws both lanes beside each other, what is put off and the progress
// beneath.
func (s *Session) viewLanes(at now, head block, w, h int) []string {
	th := s.desk.Theme
	foot := append(s.deferredLines(at, w), s.progressLines(at, w)...)
	room := h - len(head.lines) - len(foot)
	left := w * 3 / 5
	lane := func(washing bool, name string, w int) []string {
		focused := washing == s.running.washing
		title := th.Faint.Render(" " + name + " ")
		style := th.Frame
		if focused {
			title, style = th.Focus.Render(" "+th.Marks.Pointer+" "+name+" "), th.Plain
		}
		body := stack(s.moverOrWasher(at, washing, focused, w-4, true), w-4, room-2)
		for i := range body {
			body[i] = " " + body[i]
		}
		return th.Boxes.Single.Around(style, title, body, w, room)
	}
	lines := append([]string{}, head.lines...)
	lines = append(lines, text.Beside(room, 0,
		text.Column{Lines: lane(false, "MOVER", left), W: left},
		text.Column{Lines: lane(true, s.washerName(), w-left), W: w - left})...)
	return text.Frame(append(lines, foot...), w, h)
}

// washerName is the head of the washer's lane: a crew of one does both.
func (s *Session) washerName() string {
	if s.desk.Ledger.Room().House.Crew == 1 {
		return "WASHING"
	}
	return "WASHER"
}

// sessionWords says where the session stands.
func (s *Session) sessionWords(at now) string {
	switch {
	case !at.open:
		return fmt.Sprintf("SESSION %d: no step is left, close it", at.session.N)
	case at.prompt.Move == 0:
		return fmt.Sprintf("SESSION %d: before the first move", at.session.N)
	}
	leg := at.prompt.Leg
	return fmt.Sprintf("SESSION %d: %s into %s, move %d of %d", at.session.N, text.Clean(leg.From), text.Clean(leg.To), at.prompt.Move, len(at.session.Legs))
}

// moverOrWasher is one lane as blocks.
func (s *Session) moverOrWasher(at now, washing, focused bool, w int, big bool) []block {
	r := &s.running
	var blocks []block
	if r.away != "" && !washing {
		blocks = append(blocks, block{lines: badge(s.desk.Theme.Action, r.away+"; every answer is kept", w), rank: 2})
	}
	switch {
	case focused && r.reason.active:
		blocks = append(blocks, s.reasonBlocks(w)...)
	case r.ask.kind != none && (focused && r.asking() || !washing && r.ask.kind.automatic()):
		blocks = append(blocks, s.questionBlocks(r.ask, w, focused, big)...)
	case washing:
		blocks = append(blocks, s.washerBlocks(at, w, focused, big)...)
	default:
		blocks = append(blocks, s.moverBlocks(at, w, focused, big)...)
	}
	return blocks
}

// noteBlock is what came of the last key, beneath the answer.
func (s *Session) noteBlock(w int, focused bool) block {
	if !focused {
		return block{}
	}
	return block{lines: s.noteLines(w), air: true, cut: true}
}

// textBlock is a step's words: bold, or large where there is room.
func (s *Session) textBlock(words string, w int, big bool) block {
	b := block{lines: styled(s.desk.Theme.Strong, words, w), air: true, cut: true}
	if big {
		b.more = large(words, w, s.desk.Theme.ASCII)
		for i := range b.more {
			b.more[i] = s.desk.Theme.Strong.Render(b.more[i])
		}
	}
	return b
}

func (s *Session) moverBlocks(at now, w int, focused, big bool) []block {
	if !at.open {
		return []block{{lines: []string{"no step is left"}}}
	}
	p, th := at.prompt, s.desk.Theme
	f := moverFigures(s.desk.Ledger, at.session, p, s.desk.Now)
	blocks := []block{
		s.textBlock(f.fill(p.Step.Text), w, big && focused),
		{lines: styled(th.Faint, f.fill(p.Step.Why), w), rank: 4, air: true},
	}
	if p.Again {
		why := fmt.Sprintf("asked again; put off before: %s", text.Clean(p.Why))
		if p.Move > 0 {
			why = fmt.Sprintf("move %d, %s into %s, %s", p.Move, text.Clean(p.Leg.From), text.Clean(p.Leg.To), why)
		}
		blocks = append(blocks, block{lines: styled(th.Strong, th.Marks.Deferred+" "+why, w), rank: 1})
	}
	if list := s.stepChoices(p.Step, w); len(list) > 0 {
		blocks = append(blocks, block{lines: list, air: true, cut: true}, block{lines: []string{s.answerLine(at, w, focused)}})
	} else {
		blocks = append(blocks, block{lines: []string{s.answerLine(at, w, focused)}, air: true})
	}
	blocks = append(blocks, s.noteBlock(w, focused))
	return append(blocks, s.cautionBlock(p.Step, w, focused)...)
}

// stepChoices are the numbered answers of a step that has them.
func (s *Session) stepChoices(step model.Step, w int) []string {
	var lines []string
	for i, c := range step.Choices {
		lines = append(lines, s.desk.Theme.Key.Render(fmt.Sprintf("%3d  ", i+1))+text.Truncate(text.Clean(c), max(1, w-5)))
	}
	return lines
}

// answerLine is where the answer is typed, and how.
func (s *Session) answerLine(at now, w int, focused bool) string {
	hint := ""
	switch step := at.prompt.Step; step.Ask {
	case model.AskTank:
		hint = "the tank's name, then Enter"
	case model.AskCelsius:
		hint = "°C, then Enter"
	case model.AskChoice:
		hint = "number, then Enter"
	case model.AskNumber:
		hint = text.Clean(step.Unit) + ", then Enter"
	case model.AskEnter:
		if !s.plainGuard(at) {
			return s.enterLine("Enter when it is done", w, focused)
		}
		hint = "type 1, then Enter, when it is done"
	}
	return s.fieldLine(s.running.mover, hint, w, focused)
}

func (s *Session) enterLine(words string, w int, focused bool) string {
	if !focused {
		return "  " + text.Truncate(words, max(0, w-2))
	}
	th := s.desk.Theme
	return th.Strong.Render(th.Marks.Pointer) + " " + th.Action.Render(" "+text.Truncate(words, max(0, w-4))+" ")
}

func (s *Session) washerBlocks(at now, w int, focused, big bool) []block {
	job, rest, ok := s.jobOf(at)
	if !ok {
		return []block{{lines: styled(s.desk.Theme.Plain, "Nothing to wash: every emptied tank is ready.", w)}}
	}
	th := s.desk.Theme
	f := washFigures(s.desk.Ledger, at.session, job, s.desk.Now)
	answer := s.enterLine("Enter when it is done", w, focused)
	switch job.Step.Ask {
	case model.AskCelsius:
		answer = s.fieldLine(s.running.washer, "°C, then Enter", w, focused)
	case model.AskNumber:
		answer = s.fieldLine(s.running.washer, text.Clean(job.Step.Unit)+", then Enter", w, focused)
	case model.AskTank, model.AskChoice, model.AskEnter:
	}
	blocks := []block{
		s.textBlock(f.fill(job.Step.Text), w, big && focused),
		{lines: styled(th.Faint, f.fill(job.Step.Why), w), rank: 4, air: true},
		{lines: []string{answer}, air: true},
		s.noteBlock(w, focused),
	}
	if words := queueWords(rest); words != "" {
		blocks = append(blocks, block{lines: styled(th.Faint, "then "+words, w), rank: 3, air: true})
	}
	return append(blocks, s.cautionBlock(job.Step, w, focused)...)
}

// queueWords lists the tanks that wait for the washer.
func queueWords(queue []model.WashPrompt) string {
	words := make([]string, len(queue))
	for i, q := range queue {
		words[i] = text.Clean(q.Tank.Tank.Name) + " (" + string(q.Tank.State) + ")"
	}
	return strings.Join(words, ", ")
}

// cautionBlock is the cautions for acid beside a step that handles it.
func (s *Session) cautionBlock(step model.Step, w int, focused bool) []block {
	if step.Caution == "" {
		return nil
	}
	th := s.desk.Theme
	short := styled(th.Strong, shortCaution, w)
	if !focused && w < 60 {
		return []block{{lines: short, more: cautionLines(w), air: true}}
	}
	lines := cautionLines(w)
	return []block{{lines: lines, short: short, rank: 2, air: true}}
}

func cautionLines(w int) []string {
	var lines []string
	for _, c := range wash.AcidCautions() {
		lines = append(lines, text.Wrap(c, max(1, w))...)
	}
	return lines
}

// questionBlocks is a numbered question.
func (s *Session) questionBlocks(q question, w int, focused, big bool) []block {
	th := s.desk.Theme
	head := block{lines: styled(th.Strong, q.head, w)}
	if q.loud {
		head.lines = badge(th.Hold, q.head, w)
		if rows := large(q.big, w, th.ASCII); big && focused && rows != nil {
			for i := range rows {
				rows[i] = th.Strong.Render(rows[i])
			}
			head.more = append(append(rows, ""), head.lines...)
		}
	}
	return listAndField(head, s.choiceLines(q, w), s.fieldLine(q.field, "number, then Enter", w, focused), s.noteBlock(w, focused))
}

// listAndField sets numbered lines and their field beneath a head. On a small
// screen the list and the head are cut, the field never.
func listAndField(head block, list []string, field string, note block) []block {
	head.cut = true
	return []block{head, {lines: list, air: true, cut: true}, {lines: []string{field}}, note}
}

func (s *Session) reasonBlocks(w int) []block {
	r := s.running.reason
	head := block{lines: badge(s.desk.Theme.Action, r.head, w)}
	return append(listAndField(head, s.reasonLines(r, w), s.reasonField(r, w), s.noteBlock(w, true)),
		block{lines: styled(s.desk.Theme.Faint, "A number of the list, or your own words; Enter keeps it, Esc goes back.", w), rank: 4, air: true})
}

// otherLane is the lane that does not have the keys, in few rows.
func (s *Session) otherLane(at now, w int) []string {
	l, th := s.desk.Ledger, s.desk.Theme
	if s.running.washing {
		words := s.askHead(at)
		return []string{s.rule("MOVER, + goes there", w), th.Plain.Render(text.Truncate(words, w))}
	}
	lines := []string{s.rule(s.washerName()+", + goes there", w)}
	job, rest, ok := s.jobOf(at)
	if !ok {
		return append(lines, th.Faint.Render(text.Truncate("nothing to wash", w)))
	}
	words := washFigures(l, at.session, job, s.desk.Now).fill(job.Step.Text)
	if then := queueWords(rest); then != "" {
		words += "; then " + then
	}
	lines = append(lines, text.Truncate(words, w))
	if job.Step.Caution != "" {
		lines = append(lines, th.Faint.Render(text.Truncate(shortCaution, w)))
	}
	return lines
}

// askHead is what the mover is asked, in one line.
func (s *Session) askHead(at now) string {
	switch {
	case s.running.ask.kind.automatic():
		return s.running.ask.head
	case !at.open:
		return "no step is left"
	}
	return moverFigures(s.desk.Ledger, at.session, at.prompt, s.desk.Now).fill(at.prompt.Step.Text)
}

// rule is a line across with a word in it.
func (s *Session) rule(words string, w int) string {
	th := s.desk.Theme
	line := th.Boxes.Single.Top
	n := max(0, w-text.Width(words)-4)
	return th.Frame.Render(line+line) + " " + th.Title.Render(text.Truncate(words, max(0, w-4))) + " " + th.Frame.Render(strings.Repeat(line, n))
}
