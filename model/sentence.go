package model

import (
	"fmt"
	"strings"
)

// Sentence words a fact in one line, as the log and the command line show it.
func Sentence(f Fact) string {
	switch x := f.(type) {
	case *Stocked:
		return fmt.Sprintf("%s stocked with batch %s, hatched %s%s", x.Tank, x.Batch, x.Hatched, amount(", %.0f larvae", x.Larvae))
	case *Moved:
		return movedSentence(x)
	case *Washed:
		return fmt.Sprintf("%s washed%s", x.Tank, amount(" with %s mL acid", x.AcidML))
	case *Filled:
		return fmt.Sprintf("%s filled%s", x.Tank, amount(", %s °C", x.Celsius))
	case *Temperature:
		return fmt.Sprintf("%s %s °C", x.Tank+x.Supply, plain(x.Celsius))
	case *Sizes:
		return fmt.Sprintf("%s shell lengths: %s um", x.Tank, listed(x.UM))
	case *Look:
		return lookSentence(x)
	case *Count:
		return fmt.Sprintf("%s counted: %s live in %s mL out of %s mL", x.Tank, wholes(x.Live), plain(x.SampleML), plain(x.HoldingML))
	case *Cells:
		return fmt.Sprintf("%s cells counted: %s in %s mL", x.Tank+x.Algae, wholes(x.Counts), plain(x.ChamberML))
	case *Fed:
		return fmt.Sprintf("%s fed: %s", x.Tank, algaeWords(x.Litres))
	case *Water:
		return fmt.Sprintf("%s water%s%s%s%s", x.Tank+x.Supply, amount(", salinity %s", x.Salinity), amount(", pH %s", x.PH),
			amount(", oxygen %s mg/L", x.OxygenMgL), amount(", ammonia %s mg/L", x.AmmoniaMgL))
	}
	return deskSentence(f)
}

// deskSentence words the facts that are about the work, not the larvae.
func deskSentence(f Fact) string {
	switch x := f.(type) {
	case *Removed:
		return fmt.Sprintf("%s: %.0f larvae removed, %s", x.Tank, x.Larvae, x.Why)
	case *Ended:
		return fmt.Sprintf("%s ended: %s%s", x.Tank, x.Why, amount(", %.0f larvae", x.Larvae))
	case *Service:
		return fmt.Sprintf("%s %s%s", x.Tank, map[bool]string{true: "out of use", false: "back in use"}[x.Out], because(x.Why))
	case *Suspect:
		return fmt.Sprintf("%s %s%s", x.Tank, map[bool]string{true: "marked suspect", false: "no longer suspect"}[x.On], because(x.Why))
	case *Opened:
		return "change session opened: " + legWords(x.Moves)
	case *StepDone:
		return fmt.Sprintf("session %d move %d: %s %s%s", x.Session, x.Move, x.Name,
			map[bool]string{true: "done", false: "put off"}[x.Done], because(x.Why))
	case *Closed:
		return fmt.Sprintf("session %d closed %s%s", x.Session,
			map[bool]string{true: "complete", false: "incomplete"}[x.Complete], because(x.Why))
	case *Corrected:
		return correctedSentence(x)
	case *Noted:
		return strings.TrimPrefix(x.Tank+": ", ": ") + x.Text
	}
	return string(f.Kind())
}

func amount(format string, x *float64) string {
	switch {
	case x == nil:
		return ""
	case strings.Contains(format, "%s"):
		return fmt.Sprintf(format, plain(*x))
	}
	return fmt.Sprintf(format, *x)
}

func because(why string) string {
	if why == "" {
		return ""
	}
	return " (" + why + ")"
}

func movedSentence(x *Moved) string {
	s := fmt.Sprintf("%s moved into %s%s", x.From, x.To, amount(" over %s um", x.MeshUM))
	if !x.All() {
		s = fmt.Sprintf("%.0f %% of ", 100**x.Share) + s
	}
	if x.FromCelsius != nil && x.ToCelsius != nil {
		s += fmt.Sprintf(", %s to %s °C", plain(*x.FromCelsius), plain(*x.ToCelsius))
	}
	if x.Join {
		s += ", joined"
	}
	return s + because(x.Why)
}

func lookSentence(x *Look) string {
	s := x.Tank + " looked at"
	if x.Lobes != nil {
		s += fmt.Sprintf(", %d lobes", *x.Lobes)
	}
	s += amount(", %s %% golden", x.Golden)
	if x.Swim != "" {
		s += ", swimming " + x.Swim
	}
	s += amount(", %s %% dead", x.Dead)
	return s + because(x.Text)
}

func correctedSentence(x *Corrected) string {
	if x.Void {
		return fmt.Sprintf("entry %d void%s", x.Entry, because(x.Why))
	}
	var parts []string
	for _, name := range sortedKeys(x.Set) {
		parts = append(parts, fmt.Sprintf("%s = %v", name, x.Set[name]))
	}
	return fmt.Sprintf("entry %d reads %s%s", x.Entry, strings.Join(parts, ", "), because(x.Why))
}

// listed shows the beginning of a long list.
func listed(xs []float64) string {
	const most = 6
	words := make([]string, 0, most+1)
	for i, x := range xs {
		if i == most {
			words = append(words, fmt.Sprintf("and %d more", len(xs)-most))
			break
		}
		words = append(words, plain(x))
	}
	return strings.Join(words, ", ")
}

func wholes(xs []int) string {
	floats := make([]float64, len(xs))
	for i, x := range xs {
		floats[i] = float64(x)
	}
	return listed(floats)
}

func algaeWords(litres map[string]float64) string {
	var parts []string
	for _, alga := range sortedKeys(litres) {
		parts = append(parts, plain(litres[alga])+" L "+alga)
	}
	return strings.Join(parts, ", ")
}

func legWords(legs []Leg) string {
	parts := make([]string, len(legs))
	for i, leg := range legs {
		parts[i] = leg.From + " into " + leg.To
	}
	return strings.Join(parts, ", ")
}
