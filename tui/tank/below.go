package tank

import (
	"fmt"

	"drainboard/model"
	"drainboard/model/count"
	"drainboard/model/wash"
	"drainboard/tui/text"
)

// below is what is known of the typed fact before it is entered: the figures of
// a count, what is odd, and beside acid its cautions.
func (s *Tank) below(w int) []string {
	fact, err := s.slip.Form.Fact()
	var lines []string
	say := func(strong bool, words string) {
		style := s.desk.Theme.Plain
		if strong {
			style = s.desk.Theme.Strong
		}
		for _, l := range text.Wrap(words, max(1, w-2)) {
			lines = append(lines, " "+style.Render(l))
		}
	}
	if s.slip.Form.Kind() == model.KindWashed {
		house := s.desk.Ledger.Room().House.Wash
		say(true, fmt.Sprintf("house: %g mL of acid a litre, %g L a tank. Beside acid always:", house.MLPerLitre, house.TankLitres))
		for _, c := range wash.AcidCautions() {
			say(false, c)
		}
	}
	if err != nil {
		return lines
	}
	if c, ok := fact.(*model.Count); ok {
		s.counted(c, say)
	}
	for _, odd := range s.desk.Ledger.Odd(model.Entry{At: s.desk.Now, Fact: fact}) {
		say(true, s.desk.Theme.Marks.Odd+" odd: "+odd)
	}
	return lines
}

// enough is the half-width of an interval, in per cent of the number, up to which
// no further subsample is asked for. Common practice, no source.
const enough = 20

// counted says what a count comes to.
func (s *Tank) counted(c *model.Count, say func(strong bool, words string)) {
	total, err := count.Total(c.Sample())
	if err != nil {
		return // it is said where the entry is refused
	}
	t, _ := s.now()
	words := estimate(total.Total) + " larvae"
	if total.HalfWidthPercent.Known {
		words += fmt.Sprintf(", 95 %% within %.0f %%", total.HalfWidthPercent.X)
	}
	if per, err := count.PerLitre(total.Total, t.Tank.Litres); err == nil && per.Value.Known {
		words += "; " + text.Decimal(per.Value.X, 1) + " a litre"
	}
	say(true, words)
	if dead := total.DeadPercent; dead.Value.Known {
		say(false, fmt.Sprintf("dead %.1f %% (%.1f to %.1f)", dead.Value.X, dead.Low.X, dead.High.X))
	}
	say(total.Mixing.Uneven, mixing(total))
	if more, err := count.MoreSubsamples(c.Live, enough); err == nil && more > 0 {
		say(false, fmt.Sprintf("%d more such subsamples would bring it within %d %%", more, enough))
	}
}

// mixing is the verdict on the subsamples.
func mixing(l count.Larvae) string {
	switch {
	case l.Whole:
		return "all the water was counted"
	case l.Trend.Falling:
		return fmt.Sprintf("counts FALL from the first to the last (p %.3f): they settle, stir and count again", l.Trend.P)
	case l.Trend.Rising:
		return fmt.Sprintf("counts RISE from the first to the last (p %.3f): stir and count again", l.Trend.P)
	case l.Mixing.Uneven:
		return fmt.Sprintf("UNEVEN, more than chance (p %.3f): mix and count again", l.Mixing.P)
	case !l.Mixing.Judged:
		return "one subsample says nothing of the mixing"
	}
	return fmt.Sprintf("mixing even (p %.2f)", l.Mixing.P)
}
