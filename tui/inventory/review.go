package inventory

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/tui/factform"
	"drainboard/tui/screen"
	"drainboard/tui/text"
)

// review is what will be entered, as it was shown.
type review struct {
	list []dated
	rows []int // of which there are entries, in the order of the room
	page screen.Page
	h    int // rows of the page in the last frame
}

// toReview shows what will be entered, or goes to the first cell that is wrong.
func (s *Inventory) toReview() tea.Cmd {
	s.settle()
	s.asked, s.say = true, ""
	s.refused = map[cell]string{}
	if s.desk.ReadOnly != "" {
		return s.beepFor("not saved: " + s.desk.ReadOnly)
	}
	if len(s.filled()) == 0 {
		return s.beepFor("nothing is typed yet: choose the state of a tank first")
	}
	list, wrong := s.gather()
	if len(wrong) == 0 {
		wrong = s.try(list)
		maps.Copy(s.refused, wrong)
	}
	if len(wrong) > 0 {
		s.at = first(wrong)
		return screen.Send(screen.Beep{Times: 1})
	}
	s.review = review{list: list, rows: s.filled()}
	s.phase = asking
	return nil
}

// first is the cell that stands highest and most to the left.
func first(wrong map[cell]string) cell {
	return slices.MinFunc(slices.Collect(maps.Keys(wrong)), func(a, b cell) int {
		if a.row != b.row {
			return a.row - b.row
		}
		return int(a.column - b.column)
	})
}

func (s *Inventory) onReview(key tea.KeyMsg) tea.Cmd {
	switch key.Type {
	case tea.KeyEsc:
		s.phase = typing
	case tea.KeyEnter:
		s.phase = typing
		return s.save()
	default:
		s.review.page, _ = s.review.page.Update(key, s.review.h)
	}
	return nil
}

// save makes the entries one by one. Where one cannot be saved it stops: what is
// saved stays saved, and all else stays as it was typed.
func (s *Inventory) save() tea.Cmd {
	for k, x := range s.review.list {
		if _, err := s.desk.EnterAt(x.at, x.fact); err != nil {
			s.keep(s.review.list[k:])
			return s.stopped(err)
		}
	}
	s.keep(nil)
	words := fmt.Sprintf("%s entered, %s", tanks(len(s.review.rows)), entries(len(s.review.list)))
	return tea.Batch(screen.Send(screen.Toast{Text: words, Mood: screen.Saved}), screen.Send(screen.Back{}))
}

// keep notes which entries are still to be made of rows of which others are saved.
func (s *Inventory) keep(left []dated) {
	for _, i := range s.review.rows {
		s.rows[i].pending = nil
	}
	for _, i := range s.review.rows {
		open := s.open(i)
		for _, x := range left {
			if x.row == i && !open {
				s.rows[i].pending = append(s.rows[i].pending, x)
			}
		}
	}
}

// stopped says which tanks are saved and which are not.
func (s *Inventory) stopped(err error) tea.Cmd {
	var saved, part, not []string
	for _, i := range s.review.rows {
		name := text.Clean(s.rows[i].tank)
		switch {
		case s.open(i):
			not = append(not, name)
		case len(s.rows[i].pending) > 0:
			part = append(part, name)
		default:
			saved = append(saved, name)
		}
	}
	words := []string{strings.TrimSuffix(factform.NotSaved(err), ".")}
	for _, g := range []struct {
		what  string
		names []string
	}{{"saved", saved}, {"saved in part", part}, {"not saved, all kept as typed", not}} {
		if len(g.names) > 0 {
			words = append(words, g.what+": "+strings.Join(g.names, ", "))
		}
	}
	return s.beepFor(strings.Join(append(words, "* tries again"), ". "))
}

// reviewLines are the tanks with what will be entered of each.
func (s *Inventory) reviewLines(w int) []string {
	var lines []string
	wide := 4
	for _, i := range s.review.rows {
		wide = max(wide, min(12, text.Width(text.Clean(s.rows[i].tank))))
	}
	for _, i := range s.review.rows {
		for k, l := range text.Wrap(s.rowWords(i), max(1, w-wide-4)) {
			name := ""
			if k == 0 {
				name = text.Clean(s.rows[i].tank)
			}
			lines = append(lines, "  "+s.desk.Theme.Strong.Render(text.Fit(name, wide))+"  "+l)
		}
	}
	return append(lines, s.leftOut(w)...)
}

// rowWords says what will be entered of one tank.
func (s *Inventory) rowWords(i int) string {
	var words []string
	for _, x := range s.review.list {
		if x.row != i {
			continue
		}
		switch f := x.fact.(type) {
		case *model.Stocked:
			words = append(words, s.stockedWords(f, x.at))
		case *model.Noted:
			words = append(words, "as a remark: "+f.Text)
		case *model.Filled:
			words = append(words, "ready"+s.since(x))
		case *model.Washed:
			words = append(words, "washed, not filled"+s.since(x))
		case *model.Service:
			if !f.Out {
				words = []string{"dirty" + s.since(x) + "; entered as out of use and back, to be washed"}
				continue
			}
			words = append(words, "out of use"+s.since(x))
		}
	}
	return strings.Join(words, "; ")
}

// since says from when an empty tank stands so; without a time it is as of now.
func (s *Inventory) since(x dated) string {
	if s.rows[x.row].empty(changed) {
		return ", no time typed: entered as of now"
	}
	return " since " + s.clock(x.at)
}

func (s *Inventory) stockedWords(f *model.Stocked, at time.Time) string {
	room := s.desk.Ledger.Room()
	number := "number not known"
	if f.Larvae != nil {
		number = text.Decimal(*f.Larvae, 0) + " larvae"
	}
	age := model.DayOf(s.desk.Now, room.Zone).Sub(f.Hatched.Day(room.Zone))
	return fmt.Sprintf("holds %s, hatched %s, day %d; %s; water changed %s, next change %s",
		text.Clean(f.Batch), f.Hatched, age, number, s.clock(at), s.dueWords(at, text.Until))
}

// dueWords says when water of a moment is to be changed.
func (s *Inventory) dueWords(at time.Time, until func(left time.Duration, overdue bool) string) string {
	house := s.desk.Ledger.Room().House
	due := at.Add(time.Duration(house.ChangeHours * float64(time.Hour)))
	late := s.desk.Now.Sub(due) > time.Duration(house.GraceHours*float64(time.Hour))
	if late {
		return until(due.Sub(s.desk.Now), true)
	}
	return "due " + until(due.Sub(s.desk.Now), false)
}

func (s *Inventory) clock(at time.Time) string {
	layout := "Mon 2 Jan 15:04"
	if s.desk.Now.Sub(at) > 300*24*time.Hour {
		layout = "2 Jan 2006 15:04"
	}
	return at.In(s.desk.Ledger.Room().Zone).Format(layout)
}

// leftOut names the tanks of which nothing will be entered.
func (s *Inventory) leftOut(w int) []string {
	var blank, before []string
	for i := range s.rows {
		switch {
		case slices.Contains(s.review.rows, i):
		case s.open(i):
			blank = append(blank, text.Clean(s.rows[i].tank))
		default:
			before = append(before, text.Clean(s.rows[i].tank))
		}
	}
	var lines []string
	for _, g := range []struct {
		what  string
		names []string
	}{{"left out, nothing typed: ", blank}, {"left alone, entered before: ", before}} {
		if len(g.names) == 0 {
			continue
		}
		lines = append(lines, "")
		for _, l := range text.Wrap(g.what+strings.Join(g.names, ", "), max(1, w-3)) {
			lines = append(lines, "  "+s.desk.Theme.Faint.Render(l))
		}
	}
	return lines
}
