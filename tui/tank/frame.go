package tank

import (
	"strconv"
	"strings"

	"drainboard/model"
	"drainboard/tui/text"
)

// leastStory is how many lines of the story are kept beside the figures.
const leastStory = 6

// View draws the screen in exactly h rows of w cells.
func (s *Tank) View(w, h int) []string {
	if w < 1 || h < 1 {
		return nil
	}
	t, ok := s.now()
	if !ok {
		return text.Frame([]string{" the room has no tank " + text.Clean(s.name), " Esc goes back"}, w, h)
	}
	s.story.gather(s.desk, s.name)
	head := append([]string{s.heading(t, w)}, s.lines(t, w)...)
	if s.slip != nil {
		return s.slipView(head, w, h)
	}
	kept := min(leastStory, (h+1)/2)
	head = head[:max(1, min(len(head), h-kept))]
	if len(head)+leastStory < h {
		head = append(head, s.rule(w))
	}
	return append(text.Frame(head, w, len(head)), s.story.view(s.desk, w, h-len(head))...)
}

// slipView draws the open form, with as much above it as leaves it its room.
func (s *Tank) slipView(head []string, w, h int) []string {
	below := s.below(w)
	needed := len(below) + 12
	head = head[:max(1, min(len(head), h-needed))]
	if len(head) >= h {
		head = head[:max(0, h-2)]
	}
	if len(head) > 1 {
		head = append(head, "")
	}
	return append(text.Frame(head, w, len(head)), s.slip.View(s.desk.Theme, w, h-len(head), below)...)
}

// heading names the tank, its state and its larvae, and shows the clock.
func (s *Tank) heading(t model.TankNow, w int) string {
	d := s.desk
	left := d.Theme.Strong.Render(" "+text.Clean(t.Tank.Name)) + "  " + s.state(t)
	if days, ok := d.Ledger.Age(t, d.Now); ok {
		left += "  " + text.Clean(t.Larvae.Batch) + " day " + strconv.Itoa(days)
	}
	left += d.Theme.Faint.Render("  " + text.Decimal(t.Tank.Litres, 0) + " L")
	layout := "Mon 2 Jan 15:04:05"
	if w < 60 {
		layout = "15:04:05"
	}
	return text.Ends(left, d.Theme.Faint.Render(d.Now.In(d.Ledger.Room().Zone).Format(layout)), w)
}

// state is the word of the state with its mark; what falls due is a badge.
func (s *Tank) state(t model.TankNow) string {
	d, m := s.desk, s.desk.Theme.Marks
	words := map[model.State]string{
		model.Ready: m.Ready + " READY", model.Dirty: m.Dirty + " DIRTY",
		model.WashedDown: m.Washed + " WASHED", model.Out: m.Out + " OUT OF USE",
	}[t.State]
	if !t.Known {
		words = "no entry yet"
	}
	if t.State != model.Holding {
		return d.Theme.Strong.Render(words)
	}
	switch {
	case d.Ledger.Overdue(t, d.Now):
		words = d.Theme.Overdue.Render(" " + m.Overdue + m.Overdue + " OVERDUE ")
	case !d.Ledger.Due(t).After(d.Now):
		words = d.Theme.Due.Render(" " + m.Due + " DUE ")
	default:
		words = d.Theme.Plain.Render("holding")
	}
	if t.Suspect {
		words += " " + d.Theme.Suspect.Render(" "+m.Suspect+" suspect ")
	}
	return words
}

// nameW is the width of a figure's name.
const nameW = 11

// lines are the alarms with what to check, and the figures.
func (s *Tank) lines(t model.TankNow, w int) []string {
	th := s.desk.Theme
	var lines []string
	for _, a := range s.alarms() {
		style, seen := th.Strong, ""
		if a.Seen {
			style, seen = th.Faint, " (seen"
			if a.SeenBy != "" {
				seen += " by " + text.Clean(a.SeenBy)
			}
			seen += ")"
		}
		for i, l := range text.Wrap(strings.ReplaceAll(a.Text, " um", " µm")+seen+" "+th.Marks.Arrow+" "+a.Advice, max(1, w-4)) {
			mark := " " + th.Marks.Overdue + " "
			if i > 0 {
				mark = "   "
			}
			lines = append(lines, style.Render(mark+l))
		}
	}
	for _, f := range figures(s.desk, t) {
		lines = append(lines, s.figureLines(f, w)...)
	}
	return lines
}

// figureLines are a figure in as many lines as its words need.
func (s *Tank) figureLines(f figure, w int) []string {
	th, name := s.desk.Theme, min(nameW, w/3)
	style := th.Plain
	if f.strong {
		style = th.Strong
	}
	lines := text.Wrap(f.words, max(1, w-name-2))
	for i, l := range lines {
		before := text.Fit("", name)
		if i == 0 {
			before = th.Faint.Render(text.Fit(text.Truncate(f.name, name-1), name))
		}
		lines[i] = " " + before + style.Render(l)
	}
	if f.after != "" {
		lines[len(lines)-1] += "  " + f.after
	}
	return lines
}

// rule parts the story from the figures.
func (s *Tank) rule(w int) string {
	th := s.desk.Theme
	words := " story, " + text.Whole(len(s.story.events)) + " entries "
	line := ""
	for range max(0, w-text.Width(words)-2) {
		line += th.Boxes.Single.Top
	}
	return th.Frame.Render(th.Boxes.Single.Top+words+line) + " "
}
