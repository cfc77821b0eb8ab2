package session

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"drainboard/model"
	"drainboard/model/wash"
	"drainboard/model/water"
	"drainboard/tui/text"
)

// cells are the words of one row of the plan.
type cells struct {
	n, move, batch, age, sieve, span, waters, late, why string
	cannot                                              bool // the move cannot be made; why says the reason
}

func headings() cells {
	return cells{n: "#", move: "MOVE", batch: "BATCH", age: "AGE", sieve: "SIEVE", span: "TIME", waters: "WATERS", late: "LATE", why: "WHY"}
}

// rowCells words one row of a plan laid out in time.
func rowCells(l *model.Ledger, t laid, i int, arrow string) cells {
	r := t.rows[i]
	to := r.leg.to
	if r.move != nil {
		to = t.name(r.move.To)
	} else if to == "" {
		to = text.Unknown
	}
	c := cells{n: fmt.Sprint(i + 1), move: text.Clean(r.leg.from) + arrow + text.Clean(to), why: r.complaint}
	source, _ := l.Tank(r.leg.from)
	if age, ok := l.Age(source, t.problem.Now); ok {
		c.batch, c.age = text.Clean(source.Larvae.Batch), fmt.Sprintf("d%d", age)
		c.sieve = firstSieve(l.Room().House.MeshAt(age))
	}
	if r.move == nil {
		c.cannot = true
		return c
	}
	zone := l.Room().Zone
	c.span = r.move.Start.In(zone).Format("15:04") + "-" + r.move.End.In(zone).Format("15:04")
	c.waters = watersWords(l, t, i)
	c.late = lateWords(r.move.Overrun)
	c.why = text.Clean(r.move.Why + "; " + t.name(r.move.To) + " " + whyTo(r.move.WhyTo))
	return c
}

// whyTo turns the reason for a destination into the end of a sentence.
func whyTo(why string) string {
	switch {
	case why == "chosen":
		return "is your choice"
	case why == "smallest difference":
		return "has the " + why
	case strings.HasPrefix(why, "only "):
		return "alone is large enough"
	}
	return "is " + why
}

func firstSieve(um []float64) string {
	if len(um) == 0 {
		return "any"
	}
	return plain(um[0])
}

// watersWords says how far the two waters lie apart, in words.
func watersWords(l *model.Ledger, t laid, i int) string {
	d := t.rows[i].move.Difference
	if !d.Known {
		return "not read yet"
	}
	same := 0.0
	verdict := l.Rules().Compare(&d.Value, &same).Verdict
	word := string(verdict)
	if verdict == water.Hold {
		word = "HOLD"
	}
	return text.Decimal(d.Value, 1) + "° " + word
}

func lateWords(overrun time.Duration) string {
	if overrun <= 0 {
		return "-"
	}
	return fmt.Sprintf("+%d min", lateMinutes(overrun))
}

// columns are the widths of a table, in the order of cells.
type columns [9]int

func (c cells) list() [9]string {
	return [9]string{c.n, c.move, c.batch, c.age, c.sieve, c.span, c.waters, c.late, c.why}
}

// columnsFor finds the widths that show the rows, the last column taking what is
// left of w. Long names give way first, then the batch.
func columnsFor(rows []cells, w int) columns {
	var c columns
	for _, r := range append([]cells{headings()}, rows...) {
		for i, s := range r.list() {
			c[i] = max(c[i], text.Width(s))
		}
	}
	c[1], c[2], c[6] = min(c[1], 20), min(c[2], 14), min(c[6], 13)
	used := 0
	for _, n := range c[:8] {
		used += n + 1
	}
	for _, give := range []int{2, 1} {
		if over := used - (w - 12); over > 0 {
			cut := min(over, max(0, c[give]-6))
			c[give] -= cut
			used -= cut
		}
	}
	c[8] = max(0, w-used)
	return c
}

// line sets the cells out under each other, w cells wide.
func (c columns) line(row cells) string {
	var b strings.Builder
	for i, s := range row.list() {
		if i > 0 {
			b.WriteByte(' ')
		}
		if i == 0 || i == 3 || i == 4 {
			b.WriteString(text.FitRight(s, c[i]))
			continue
		}
		if row.cannot && i == 5 {
			b.WriteString(text.Fit("cannot go: "+row.why, c.from(5)))
			break
		}
		b.WriteString(text.Fit(s, c[i]))
	}
	return b.String()
}

// from is the width of a column and all that follow.
func (c columns) from(i int) int {
	w := len(c) - 1 - i
	for _, n := range c[i:] {
		w += n
	}
	return w
}

// tableCells words all rows.
func tableCells(l *model.Ledger, t laid, arrow string) []cells {
	rows := make([]cells, len(t.rows))
	for i := range t.rows {
		rows[i] = rowCells(l, t, i, arrow)
	}
	return rows
}

// planSieves lists the sieves of a plan, each once, ascending, um.
func planSieves(l *model.Ledger, t laid) []float64 {
	var um []float64
	for _, m := range t.plan.Moves {
		um = withSieve(um, l.Room().House.MeshAt(t.problem.Sources[m.Source].AgeDays))
	}
	return um
}

// unmovedLines names the tanks that stay, and why.
func unmovedLines(t laid) []string {
	var lines []string
	for _, u := range t.plan.Unmoved {
		if slices.ContainsFunc(t.rows, func(r row) bool { return r.leg.from == t.name(u.Tank) }) {
			continue // its complaint stands at its row
		}
		why := u.Why
		if why == "not in the list" {
			why = "left out by you"
		}
		lines = append(lines, text.Clean("not moved: "+t.name(u.Tank)+", "+why))
	}
	return lines
}

// finishWords says when all is done and what stands empty then.
func finishWords(l *model.Ledger, t laid) string {
	zone := l.Room().Zone
	var empty []string
	for _, tank := range t.plan.EmptyAfter {
		empty = append(empty, text.Clean(t.name(tank)))
	}
	words := fmt.Sprintf("last move done %s, all washed and filled %s", t.plan.LastMoveEnd.In(zone).Format("15:04"), t.plan.Finish.In(zone).Format("15:04"))
	if len(empty) > 0 {
		words += "; empty then: " + strings.Join(empty, ", ")
	}
	return words
}

// proofWords says how good the order is.
func proofWords(t laid, changed bool) string {
	switch {
	case changed:
		return t.against()
	case t.plan.Best && t.plan.WorstOverrun > 0:
		return fmt.Sprintf("proved the best order; worst overrun %d min past due and grace", lateMinutes(t.plan.WorstOverrun))
	case t.plan.Best:
		return "proved the best order; nothing passes due and grace"
	case t.plan.WorstOverrun > 0:
		return fmt.Sprintf("the best order found, not proved best; worst overrun %d min", lateMinutes(t.plan.WorstOverrun))
	}
	return "the best order found, not proved best; nothing passes due and grace"
}

// mixLines says how much acid and water the session takes, whole and in parts.
func mixLines(rules model.WashRules, washes int) []string {
	if washes == 0 {
		return []string{"nothing to wash"}
	}
	mix, err := mixFor(rules, washes)
	if err != nil {
		return []string{"acid and water: " + err.Error()}
	}
	part := func(m wash.Mix) string {
		return fmt.Sprintf("%s mL acid into %s L water", plain(m.AcidML), plain(m.WaterLitres))
	}
	return []string{
		fmt.Sprintf("MIX in all %s; stock %s %% HCl as on the label", part(mix.Total), plain(rules.StockPercent)),
		fmt.Sprintf("each of %s %s; gear bin %s mL into %s L", tanksWord(washes), part(mix.PerTank), plain(mix.Bin.AcidML), plain(mix.Bin.WaterLitres)),
	}
}

func tanksWord(n int) string {
	if n == 1 {
		return "1 tank"
	}
	return fmt.Sprintf("%d tanks", n)
}

func sieveLine(um []float64) string { return "LAY OUT sieves " + sieveWords(um) + " µm" }
