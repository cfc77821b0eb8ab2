package main

import (
	"fmt"
	"slices"
	"strings"

	"drainboard/cmd/drainboard/document"
	"drainboard/model"
	"drainboard/model/paper"
	"drainboard/tui/text"
)

// handoverPart is one part of the page and how many lines it may take.
type handoverPart struct {
	title string
	most  int
	lines []string
	none  string // what is said where there are none
}

// handoverText is the handover on one page of pageLines lines. What does not fit
// is counted, and stands whole in --json.
func handoverText(h paper.Handover) string {
	lines := []string{
		text.Clean("HANDOVER, " + h.Room.Name),
		fmt.Sprintf("%s to %s (%s)", h.Since.Format("Mon 2 Jan 2006 15:04"), h.Now.Format("Mon 2 Jan 15:04"), text.Duration(h.Now.Sub(h.Since))),
		text.Truncate(whoWords(h), document.Width),
	}
	for _, part := range []handoverPart{
		{"done", 8, doneLines(h), "nothing was entered"},
		{"deviated", 12, deviationLines(h), "nothing"},
		{"notes", 4, noteLines(h), "none"},
		{"open", 6, openLines(h), "nothing"},
		{"alarms", 6, alarmLines(h), "none"},
		{"next", 9, nextLines(h), "nothing within a day"},
	} {
		lines = append(lines, "", strings.ToUpper(part.title))
		lines = append(lines, part.cut()...)
	}
	return trimmed(lines)
}

// mostOfOne is how many lines one thing may take.
const mostOfOne = 3

// cut breaks the lines of a part and leaves out what is too much, saying how
// many things that is.
func (p handoverPart) cut() []string {
	if len(p.lines) == 0 {
		return []string{p.none}
	}
	var out []string
	for i, l := range p.lines {
		broken := document.Hanging(l, document.Width)
		if len(broken) > mostOfOne {
			broken = append(broken[:mostOfOne-1:mostOfOne-1], text.Truncate(strings.Join(broken[mostOfOne-1:], " "), document.Width))
		}
		last := i == len(p.lines)-1
		if len(out)+len(broken) > p.most || !last && len(out)+len(broken) == p.most {
			return append(out, fmt.Sprintf("... and %d more; drainboard handover --json has them all", len(p.lines)-i))
		}
		out = append(out, broken...)
	}
	return out
}

func whoWords(h paper.Handover) string {
	if len(h.Done) == 0 {
		return "no entries"
	}
	var n paper.Numbers
	for _, e := range h.Done {
		n = append(n, e.N)
	}
	var who []string
	for _, p := range h.People {
		name := p.By
		if name == "" {
			name = "no initials"
		}
		who = append(who, fmt.Sprintf("%s %d", name, p.Entries))
	}
	return text.Clean(fmt.Sprintf("%s [%s]: %s", plural(len(h.Done), "entry"), n, strings.Join(who, ", ")))
}

// doneLines sum up what was done, one line a kind.
func doneLines(h paper.Handover) []string {
	byKind := map[model.Kind][]model.Entry{}
	for _, e := range h.Done {
		byKind[e.Kind()] = append(byKind[e.Kind()], e)
	}
	var lines []string
	for _, kind := range []model.Kind{
		model.KindStocked, model.KindEnded, model.KindRemoved, model.KindMoved, model.KindOpened, model.KindClosed,
	} {
		for _, e := range byKind[kind] {
			lines = append(lines, entryLine(e.At.In(h.Now.Location()).Format("15:04"), e.By, e.N, model.Sentence(e.Fact)))
		}
	}
	var short []string
	for _, kind := range []model.Kind{
		model.KindWashed, model.KindFilled, model.KindFed, model.KindLook, model.KindSizes, model.KindCount, model.KindTemperature,
		model.KindCells, model.KindWater, model.KindService, model.KindSuspect,
	} {
		if list := byKind[kind]; len(list) > 0 {
			short = append(short, fmt.Sprintf("%s %d (%s)", kind, len(list), strings.Join(namesOf(list), " ")))
		}
	}
	if len(short) > 0 {
		// What was done many times comes first: it is one thing, and must not be cut off.
		lines = append([]string{strings.Join(short, ", ")}, lines...)
	}
	if len(h.KeyedLate) > 0 {
		lines = append(lines, fmt.Sprintf("keyed late, of before: %s [%s]", plural(len(h.KeyedLate), "entry"), h.KeyedLate))
	}
	return lines
}

// namesOf lists the tanks and sources of entries, each once.
func namesOf(entries []model.Entry) []string {
	var names []string
	for _, e := range entries {
		for _, f := range e.Fact.Fields() {
			if f.Type != model.TankName && f.Type != model.Source && f.Type != model.AlgaName {
				continue
			}
			if v, ok := f.Value(); ok && !slices.Contains(names, v.(string)) {
				names = append(names, v.(string))
			}
		}
	}
	return names
}

func entryLine(when, by string, n int, words string) string {
	head := when
	if by != "" {
		head += " " + by
	}
	return fmt.Sprintf("%s %s [%d]", head, words, n)
}

func deviationLines(h paper.Handover) []string {
	var lines []string
	for _, d := range h.Deviations {
		lines = append(lines, entryLine(d.At.In(h.Now.Location()).Format("2 Jan 15:04"), d.By, d.N, deviationWords(h, d)))
	}
	return lines
}

// deviationWords says what went otherwise, and why.
func deviationWords(h paper.Handover, d paper.Deviation) string {
	move := d.Leg.From + " -> " + d.Leg.To
	switch x := d.Fact.(type) {
	case *model.StepDone:
		step := x.Name
		if d.Kind != paper.WentAhead {
			step = stepWords(h, x.Name, d.Leg)
		}
		if x.Move == 0 {
			move = "session"
		}
		switch d.Kind {
		case paper.WentAhead:
			return fmt.Sprintf("HOLD PASSED %s, %s %s", move, step, d.Why)
		case paper.LeftOut:
			return fmt.Sprintf("LEFT OUT %s: %s", move, d.Why)
		case paper.OtherTank:
			return fmt.Sprintf("OTHER TANK %s went into %s", move, d.Why)
		}
		return fmt.Sprintf("PUT OFF %s, %s: %s", move, step, d.Why)
	case *model.Closed:
		return fmt.Sprintf("CLOSED INCOMPLETE session %d: %s", x.Session, d.Why)
	case *model.Corrected:
		return "CORRECTED " + model.Sentence(x)
	case *model.Moved:
		if d.Kind == paper.MovedWhy {
			return "MOVED " + model.Sentence(x)
		}
	}
	return fmt.Sprintf("ODD %s: %s", model.Sentence(d.Fact), d.Why)
}

// stepWords is what a step asks for, with the tanks of its move.
func stepWords(h paper.Handover, name string, leg model.Leg) string {
	s, ok := h.Room.Procedure.Step(name)
	if !ok {
		return name
	}
	return strings.NewReplacer("{from}", leg.From, "{to}", leg.To).Replace(s.Text)
}

func noteLines(h paper.Handover) []string {
	var lines []string
	for _, e := range h.Notes {
		lines = append(lines, entryLine(e.At.In(h.Now.Location()).Format("2 Jan 15:04"), e.By, e.N, model.Sentence(e.Fact)))
	}
	return lines
}

func openLines(h paper.Handover) []string {
	var lines []string
	if s := h.Session; s != nil {
		lines = append(lines, fmt.Sprintf("change session %d of %s: %s to go", s.N, s.Opened.In(h.Now.Location()).Format("2 Jan 15:04"), plural(h.Moving, "move")))
	}
	for _, r := range h.Deferred {
		leg := model.Leg{}
		if r.Step.Move > 0 {
			leg = h.Session.Leg(r.Step.Move)
		}
		lines = append(lines, fmt.Sprintf("put off: %s: %s [%d]", stepWords(h, r.Step.Name, leg), r.Step.Why, r.N))
	}
	for _, t := range h.Suspect {
		words := "suspect: " + t.Tank.Name + ", changed last and with its own gear"
		if t.SuspectWhy != "" {
			words += " (" + t.SuspectWhy + ")"
		}
		lines = append(lines, words)
	}
	for _, x := range []struct {
		what  string
		names []string
	}{{"to wash", h.Dirty}, {"washed, to fill", h.Washed}, {"out of use", h.Out}} {
		if len(x.names) > 0 {
			lines = append(lines, x.what+": "+strings.Join(x.names, ", "))
		}
	}
	return lines
}

func alarmLines(h paper.Handover) []string {
	var lines []string
	for _, a := range h.Alarms {
		words := fmt.Sprintf("! %s %s: %s; %s", a.Tank, a.Kind, a.Text, a.Advice)
		if a.Seen {
			words += " (seen"
			if a.SeenBy != "" {
				words += " by " + a.SeenBy
			}
			words += ")"
		}
		lines = append(lines, words)
	}
	return lines
}

// nextLines list what falls due, one thing a kind: the page is short and the
// room may be large.
func nextLines(h paper.Handover) []string {
	var lines []string
	for _, kind := range []paper.TaskKind{paper.TaskChange, paper.TaskFeed, paper.TaskLook} {
		var parts []string
		for _, t := range h.Next {
			if t.Kind == kind {
				parts = append(parts, taskWords(h, t))
			}
		}
		if len(parts) > 0 {
			lines = append(lines, string(kind)+": "+strings.Join(parts, ", "))
		}
	}
	return lines
}

func taskWords(h paper.Handover, t paper.Task) string {
	when := t.Due.Format("15:04")
	if model.DayOf(t.Due, t.Due.Location()) != model.DayOf(h.Now, h.Now.Location()) {
		when = t.Due.Format("Mon 2 Jan 15:04")
	}
	words := t.Tank + " " + when
	if t.Due.Before(h.Now) {
		words += " (" + text.Until(t.Due.Sub(h.Now), t.Overdue && t.Kind == paper.TaskChange) + ")"
	}
	return words
}
