package bench

import (
	"slices"
	"strconv"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	sums "drainboard/model/bench"
	"drainboard/tui/factform"
	"drainboard/tui/screen"
	"drainboard/tui/text"
)

// sheet is the form of one sum and what it comes to.
type sheet struct {
	sum   sums.Sum
	form  screen.Form
	begun []string // the texts it began with
	// fresh are rows whose text was put there by the screen and not gone into yet:
	// what is typed takes its place, so that 10 does not become 110.
	fresh []bool

	answer   sums.Answer
	problems []sums.Problem
}

// newSheet is the form of a sum. What the house rules say stands in it already.
func newSheet(s sums.Sum, house model.House) sheet {
	sh := sheet{sum: s}
	for _, in := range s.Inputs {
		begin := in.Default
		if of, ok := ofHouse(s.Name, in.Name, house); ok {
			begin = of
		}
		field := fieldOf(in.Kind).With(begin)
		sh.form.Rows = append(sh.form.Rows, screen.Row{Label: in.Label, Field: field, Unit: factform.Unit(in.Unit), Note: in.What})
		sh.begun, sh.fresh = append(sh.begun, field.Text()), append(sh.fresh, begin != "")
	}
	sh.work()
	return sh
}

// ofHouse is what the room's own rules give for an input.
func ofHouse(sum, input string, house model.House) (string, bool) {
	switch sum + " " + input {
	case "acid ml-per-litre":
		return plain(house.Wash.MLPerLitre), true
	case "acid stock-percent":
		return plain(house.Wash.StockPercent), true
	case "mesh mesh":
		var um []string
		for _, x := range house.Sieves() {
			um = append(um, plain(x))
		}
		return strings.Join(um, " "), true
	case "mesh factor":
		return plain(house.Growth.SieveFactor), true
	}
	return "", false
}

func plain(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// Most characters of a number and of a list.
const (
	mostNumber = 14
	mostList   = 4000
)

// fieldOf is what an input is typed into.
func fieldOf(k sums.Kind) screen.Field {
	switch k {
	case sums.Number:
		return screen.NewField(screen.Number, mostNumber)
	case sums.Flag:
		return screen.NewField(screen.Name, 5)
	case sums.Volume:
		return screen.NewField(screen.Name, 30)
	case sums.Numbers, sums.Counts, sums.ByName, sums.Readings:
	}
	return screen.NewField(screen.Line, mostList)
}

// typed says that a text differs from the one it began with.
func (s *sheet) typed() bool {
	for i, r := range s.form.Rows {
		if r.Field.Text() != s.begun[i] {
			return true
		}
	}
	return false
}

// update takes a key; false where it means nothing in the field.
func (s *sheet) update(key tea.KeyMsg) bool {
	if words, ok := screen.Column(key); ok {
		key.Runes = []rune(strings.Join(words, " "))
	}
	s.goInto(key)
	form, out := s.form.Update(key)
	s.form = form
	if out == screen.Entered {
		s.form.Focus = 0
	}
	s.work()
	return out != screen.Rejected && (out != screen.Ignored || key.Type != tea.KeyRunes)
}

// goInto empties a fresh row when something is typed into it or rubbed out.
func (s *sheet) goInto(key tea.KeyMsg) {
	at := s.form.Focus
	if !s.fresh[at] {
		return
	}
	empty := s.form.Rows[at].Field.With("")
	switch key.Type {
	case tea.KeyUp, tea.KeyDown, tea.KeyTab, tea.KeyShiftTab, tea.KeyEnter:
		return
	case tea.KeyRunes:
		if _, out := empty.Update(key); out != screen.Edited {
			return
		}
	case tea.KeyBackspace, tea.KeyDelete:
	default:
		s.fresh[at] = false // the cursor moves: the text is to be mended
		return
	}
	s.fresh[at] = false
	s.form.Rows = slices.Clone(s.form.Rows)
	s.form.Rows[at].Field = empty
}

// work works the sum out from what is typed and marks what is wrong at its row.
func (s *sheet) work() {
	typed := map[string]string{}
	for i, in := range s.sum.Inputs {
		typed[in.Name] = s.form.Rows[i].Field.Text()
	}
	s.answer, s.problems = s.sum.Run(typed)
	s.form.Rows = slices.Clone(s.form.Rows)
	for i := range s.form.Rows {
		s.form.Rows[i].Problem = ""
	}
	for _, p := range s.problems {
		if i := s.row(p.Field); i >= 0 && !s.unfinished(i, p) {
			s.form.Rows[i].Problem = text.Clean(p.Problem)
		}
	}
}

// row is the row of an input, -1 where there is none of that name.
func (s *sheet) row(input string) int {
	return slices.IndexFunc(s.sum.Inputs, func(in sums.Input) bool { return in.Name == input })
}

// unfinished says that a problem is only that nothing, or not all of a name, is
// typed yet.
func (s *sheet) unfinished(row int, p sums.Problem) bool {
	if p.Missing {
		return true
	}
	return row == s.form.Focus && s.sum.Inputs[row].Kind == sums.Volume && len(sums.ChambersBegun(s.form.Rows[row].Field.Text())) > 0
}

// missing are the labels of what is still to be typed.
func (s *sheet) missing() []string {
	var labels []string
	for _, p := range s.problems {
		if i := s.row(p.Field); i >= 0 && s.unfinished(i, p) {
			labels = append(labels, s.form.Rows[i].Label)
		}
	}
	return labels
}
