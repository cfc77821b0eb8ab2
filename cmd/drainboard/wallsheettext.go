package main

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"drainboard/cmd/drainboard/document"
	"drainboard/model"
	"drainboard/model/paper"
	"drainboard/model/sequence"
	"drainboard/tui/session"
	"drainboard/tui/text"
)

// pageLines is how many lines a printer puts on a page at least.
const pageLines = 60

// planPaper is the next change session in lines of 80 columns.
func planPaper(l *model.Ledger, now time.Time) ([]string, error) {
	problem, err := sequence.FromLedger(l, now, sequence.Options{})
	if err != nil {
		return nil, err
	}
	plan, err := sequence.Best(problem)
	if err != nil {
		return nil, err
	}
	return session.PlanText(l, now, problem, plan), nil
}

// sheetText is the wall sheet for any printer: pages of at most pageLines lines,
// a form feed between them.
func sheetText(s paper.Sheet, plan []string) string {
	pages := s.Pages()
	var papers []string
	for i, tanks := range pages {
		lines := []string{
			text.Ends(text.Clean("WALL SHEET, "+s.Room), fmt.Sprintf("page %d of %d", i+1, len(pages)), document.Width),
			s.At.Format("Mon 2 Jan 2006 15:04") + ". Boxes are in the order in which drainboard enter asks.",
			"",
		}
		for _, t := range tanks {
			lines = append(lines, tankLines(t, s)...)
		}
		papers = append(papers, trimmed(lines))
	}
	for part := range slices.Chunk(plan, pageLines) {
		papers = append(papers, trimmed(part))
	}
	return strings.Join(papers, "\f")
}

func trimmed(lines []string) string {
	var b strings.Builder
	for _, l := range lines {
		b.WriteString(strings.TrimRight(l, " ") + "\n")
	}
	return b.String()
}

// tankLines are the lines of one tank, at most nine.
func tankLines(t paper.SheetTank, s paper.Sheet) []string {
	lines := []string{tankHead(t)}
	set := func(words string) { lines = append(lines, text.Truncate("  "+words, document.Width)) }
	if t.State != model.Holding {
		set(emptyWords(t, s))
		if t.HasCelsius {
			set("last " + celsiusThen(t.Celsius, s.At.Location()))
		}
		set("°C " + box(6) + "  wash: acid mL " + box(5) + " water L " + box(5) + "  filled °C " + box(6))
		set("by " + box(4) + "  at " + box(6) + "  remark " + strings.Repeat("_", 46))
		return lines
	}
	set(dueLine(t, s))
	set(waterLine(t, s))
	set(larvaeLine(t, s))
	set("°C " + box(6) + "  lobes " + box(3) + "  golden % " + box(4) + "  swim good fair poor  dead % " + box(4))
	set("sizes µm " + strings.Repeat(box(4), 11))
	set("         " + strings.Repeat(box(4), 11))
	set("live " + strings.Repeat(box(4), 3) + "  sample mL " + box(4) + "  of mL " + box(5) + "  dead " + strings.Repeat(box(3), 3))
	set(fedBoxes(s.Algae))
	return lines
}

// box is a place to write in by hand.
func box(n int) string { return "[" + strings.Repeat("_", n) + "]" }

// tankHead names a tank; it also parts it from the one before. Marks that do not
// fit are counted.
func tankHead(t paper.SheetTank) string {
	left := fmt.Sprintf("== %s  %s", text.Clean(t.Name), strings.ToUpper(string(t.State)))
	if t.Batch != "" {
		left += fmt.Sprintf("  batch %s  day %d", text.Clean(t.Batch), t.AgeDays)
	}
	left += "  " + plain(t.Litres) + " L "
	right := ""
	for n := len(t.Marks); n > 0; n-- {
		right = " ! " + strings.Join(t.Marks[:n], ", ") + " "
		if more := len(t.Marks) - n; more > 0 {
			right += fmt.Sprintf("+%d ", more)
		}
		if text.Width(left+right)+2 <= document.Width {
			break
		}
	}
	rule := max(0, document.Width-text.Width(left)-text.Width(right)-2)
	return text.Truncate(left+strings.Repeat("=", rule)+right+"==", document.Width)
}

func emptyWords(t paper.SheetTank, s paper.Sheet) string {
	if !t.Known {
		return "nothing was entered yet; taken as dirty until then"
	}
	return "since " + t.Since.In(s.At.Location()).Format("Mon 2 Jan 15:04")
}

// dueLine says when, not how long from now: paper hangs for hours.
func dueLine(t paper.SheetTank, s paper.Sheet) string {
	zone := s.At.Location()
	sieve := "any"
	if len(t.MeshUM) > 0 {
		sieve = meshWords(t.MeshUM) + " µm"
	}
	return fmt.Sprintf("DUE %s   changed %s   sieve %s", t.Due.In(zone).Format("Mon 2 Jan 15:04"),
		t.Since.In(zone).Format("Mon 2 Jan 15:04"), sieve)
}

func waterLine(t paper.SheetTank, s paper.Sheet) string {
	zone := s.At.Location()
	water, length := "temperature not read", "lengths never read"
	if t.HasCelsius {
		water = celsiusThen(t.Celsius, zone)
	}
	if !t.SampleAt.IsZero() {
		length = fmt.Sprintf("%s µm, n %d, %s", text.Decimal(t.Sample.Mean, 0), t.Sample.N, t.SampleAt.In(zone).Format("2 Jan 15:04"))
	}
	return "last " + water + "   " + length
}

func celsiusThen(r model.Reading, zone *time.Location) string {
	return fmt.Sprintf("%s °C, %s", plain(r.Value), r.At.In(zone).Format("2 Jan 15:04"))
}

func larvaeLine(t paper.SheetTank, s paper.Sheet) string {
	words := "larvae not known"
	if t.Larvae.Value.Known {
		words = fmt.Sprintf("larvae %s, %s a litre", larvaeOr(t.Larvae, ""), text.Decimal(t.Larvae.Value.X/t.Litres, 0))
	}
	if t.CountedAt.IsZero() {
		return words + "; never counted"
	}
	return words + ", counted " + t.CountedAt.In(s.At.Location()).Format("2 Jan 15:04")
}

// fedBoxes has a box for each alga as far as they fit, and one to write a name
// into for the others.
func fedBoxes(algae []string) string {
	end := "  by " + box(4) + " at " + box(6)
	words := "fed L"
	for i, a := range algae {
		next := " " + text.Clean(a) + " " + box(5)
		other := ""
		if i < len(algae)-1 {
			other = " " + box(14)
		}
		if text.Width(words+next+other+end)+2 > document.Width {
			words += " " + box(14)
			break
		}
		words += next
	}
	return words + end
}
