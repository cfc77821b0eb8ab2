package board

import (
	"strconv"
	"strings"

	"drainboard/model"
	"drainboard/model/growth"
	"drainboard/tui/desk"
	"drainboard/tui/text"
	"drainboard/tui/theme"

	"github.com/charmbracelet/lipgloss"
)

// urgency is how a holding tank stands to its next change.
type urgency int

const (
	calm urgency = iota
	due
	overdue
	moving
)

func urgencyOf(d *desk.Desk, t model.TankNow) urgency {
	switch {
	case t.State != model.Holding:
		return calm
	case inMove(d, t):
		return moving
	case d.Ledger.Overdue(t, d.Now):
		return overdue
	case !d.Ledger.Due(t).After(d.Now):
		return due
	}
	return calm
}

// inMove reports whether the open session is at this tank.
func inMove(d *desk.Desk, t model.TankNow) bool {
	s := d.Ledger.Session()
	if s == nil {
		return false
	}
	p, ok := s.MoverPrompt(d.Ledger.Room().Procedure)
	return ok && p.Move > 0 && p.Leg.From == t.Tank.Name
}

// style returns the badge of an urgency.
func (u urgency) style(th theme.Theme) lipgloss.Style {
	switch u {
	case overdue:
		return th.Overdue
	case due:
		return th.Due
	case moving:
		return th.Moving
	}
	return th.Plain
}

// stateWord is the word of a tank's state with its mark, in capitals where it
// must be seen.
func stateWord(d *desk.Desk, t model.TankNow, u urgency) string {
	m := d.Theme.Marks
	switch {
	case u == overdue:
		return m.Overdue + m.Overdue + " OVERDUE"
	case u == due:
		return m.Due + " DUE"
	case u == moving:
		return m.Moving + " MOVING"
	}
	switch t.State {
	case model.Ready:
		return m.Ready + " READY"
	case model.Dirty:
		return m.Dirty + " DIRTY"
	case model.WashedDown:
		return m.Washed + " WASHED"
	case model.Out:
		return m.Out + " OUT OF USE"
	}
	return ""
}

// dueWords words the time left to a tank's change in few cells.
func dueWords(d *desk.Desk, t model.TankNow) string {
	return text.ShortUntil(d.Ledger.Due(t).Sub(d.Now), d.Ledger.Overdue(t, d.Now))
}

// celsiusWords is the last temperature; where it is older than its limit it
// carries its age and a question mark.
func celsiusWords(d *desk.Desk, t model.TankNow) string {
	last, ok := t.LastCelsius()
	if !ok {
		return "no °C" + d.Theme.Marks.Stale
	}
	age := d.Now.Sub(last.At)
	if age > d.Ledger.ReadingLimit() {
		return text.Decimal(last.Value, 1) + "°" + d.Theme.Marks.Stale + text.ShortDuration(age)
	}
	return text.Decimal(last.Value, 1) + " °C"
}

// meshWords lists the sieves for the age of a tank's larvae.
func meshWords(d *desk.Desk, t model.TankNow) string {
	age, ok := d.Ledger.Age(t, d.Now)
	if !ok {
		return ""
	}
	var um []string
	for _, m := range d.Ledger.Room().House.MeshAt(age) {
		um = append(um, strconv.FormatFloat(m, 'f', -1, 64))
	}
	if len(um) == 0 {
		return "no sieve set"
	}
	return strings.Join(um, "/") + " µm"
}

// batchWords is the batch and its age in w cells.
func batchWords(d *desk.Desk, t model.TankNow, w int) string {
	age, _ := d.Ledger.Age(t, d.Now)
	day := " day " + strconv.Itoa(age)
	name := text.Clean(t.Larvae.Batch)
	if text.Width(name)+text.Width(day) > w {
		day = " d" + strconv.Itoa(age)
	}
	return text.Truncate(name, max(1, w-text.Width(day))) + day
}

// larvaeWords is the number thought to be in a tank.
func larvaeWords(t model.TankNow) string {
	n := t.Larvae.Number.Value
	if !n.Known {
		return "not counted"
	}
	return text.Whole(int(n.X+0.5)) + " larvae"
}

// markWords are the marks of a tank beside its state.
func markWords(d *desk.Desk, t model.TankNow) string {
	var marks []string
	for _, m := range d.Ledger.Marks(t, d.Now) {
		if m != "overdue" && m != "old temperature" {
			marks = append(marks, m)
		}
	}
	return strings.Join(marks, ", ")
}

// lengthWords is the mean of the last shell lengths.
func lengthWords(t model.TankNow) string {
	if t.Larvae.Sample == nil {
		return ""
	}
	sum, err := growth.Summarize(t.Larvae.Sample.UM)
	if err != nil {
		return ""
	}
	return text.Decimal(sum.Mean, 0) + " µm long"
}

// feedWords and lookWords say when the larvae are to be fed and looked at.
func feedWords(d *desk.Desk, t model.TankNow) string {
	return "feed " + text.ShortUntil(d.Ledger.FeedDue(t).Sub(d.Now), false)
}

func lookWords(d *desk.Desk, t model.TankNow) string {
	return "look " + text.ShortUntil(d.Ledger.LookDue(t).Sub(d.Now), false)
}
