package log

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/tui/factform"
	"drainboard/tui/keys"
	"drainboard/tui/screen"
	"drainboard/tui/text"
)

// page is one entry read in full.
type page struct {
	n      int
	page   screen.Page
	height int

	made   int         // number of the next entry when what follows was looked up
	now    model.Entry // the entry as it counts, corrections followed
	counts bool        // false where it counts no longer
}

func (l *Log) pageKeys() keys.Table {
	t := keys.Table{Title: "Entry", Bindings: []keys.Binding{
		{Action: void, Keys: []string{"x"}, Short: "make void", Long: "Make the entry void, with a reason. It stays readable."},
		{Action: edit, Keys: []string{"e"}, Short: "correct", Long: "Correct fields of the entry, its moment or initials, with a reason. What was written stays readable."},
		{Action: newer, Keys: []string{"left"}, Short: "newer", Long: "The entry above it in the list."},
		{Action: older, Keys: []string{"right"}, Short: "older", Long: "The entry below it in the list."},
		{Action: scroll, Keys: []string{"up", "down", "pgup", "pgdown", "home", "end"}, Label: "up, down", Short: "scroll", Long: "Scroll."},
	}}
	e := l.entry(l.page.n)
	switch {
	case l.known.void[e.N]:
		return t.Off(void, "it is void already").Off(edit, "it is void; make the correction that says so void first")
	case e.Kind() == model.KindCorrected:
		return t.Off(edit, "a correction is made void, and the entry corrected anew")
	}
	return t
}

// onPage takes a key over an entry.
func (l *Log) onPage(key tea.KeyMsg) tea.Cmd {
	table := l.pageKeys()
	if why, off := table.Refused(key); off {
		return say("not now: "+why, screen.Refused)
	}
	action, _ := table.Match(key)
	switch {
	case key.Type == tea.KeyEsc:
		l.list.chosen, l.page = l.page.n, nil
	case action == void:
		l.openVoid()
	case action == edit:
		l.openEdit()
	case action == newer:
		l.turn(-1)
	case action == older:
		l.turn(1)
	case action == scroll:
		l.page.page, _ = l.page.page.Update(key, l.page.height)
	}
	return nil
}

// turn goes to the entry so many rows below in the list.
func (l *Log) turn(rows int) {
	l.list.chosen = l.page.n
	l.place()
	if n := l.at(l.list.index + rows); n > 0 {
		l.page, l.list.chosen = &page{n: n}, n
	}
}

// now is the entry that is read as it counts, corrections followed; false where
// it counts no longer.
func (l *Log) now() (model.Entry, bool) {
	p := l.page
	if p.made != l.known.made {
		p.made = l.known.made
		events := l.desk.Ledger.Events()
		i := slices.IndexFunc(events, func(e model.Entry) bool { return e.N == p.n })
		if p.counts = i >= 0; p.counts {
			p.now = events[i]
		}
	}
	return p.now, p.counts
}

// pageView draws the entry in exactly h rows of w cells.
func (l *Log) pageView(w, h int) []string {
	l.page.height = h
	l.page.page.Lines = l.pageLines(w - 2)
	return l.page.page.View(l.desk.Theme, w, h)
}

// pageLines are all there is to say of the entry.
func (l *Log) pageLines(w int) []string {
	e, th := l.entry(l.page.n), l.desk.Theme
	lines := []string{" " + th.Title.Render(fmt.Sprintf("Entry %d, %s", e.N, e.Kind())) + l.standing(e.N), ""}
	lines = append(lines, paragraph(model.Sentence(e.Fact), w)...)
	lines = append(lines, "", l.pair("happened", l.long(e.At)), l.pair("keyed", l.keyed(e)), l.pair("by", orNothing(e.By)), "")
	lines = append(lines, l.fieldLines(e.Fact, w)...)
	lines = append(lines, l.corrected(e, w)...)
	return append(lines, l.correctedBy(e.N, w)...)
}

// standing says that the entry counts no longer, or otherwise than written.
func (l *Log) standing(n int) string {
	th := l.desk.Theme
	switch {
	case l.known.void[n]:
		return "  " + th.Strong.Render(th.Marks.Out+" VOID")
	case len(l.known.by[n]) > 0:
		return "  " + th.Strong.Render(th.Marks.Odd+" CORRECTED")
	}
	return ""
}

const nameW = 17

func (l *Log) pair(name, value string) string {
	return " " + l.desk.Theme.Faint.Render(text.Fit(name, nameW)) + text.Clean(value)
}

func (l *Log) long(at time.Time) string {
	return at.In(l.desk.Ledger.Room().Zone).Format("Mon 2 Jan 2006 15:04:05 -07:00")
}

func (l *Log) keyed(e model.Entry) string {
	if e.Keyed.IsZero() {
		return "at once"
	}
	return l.long(e.Keyed)
}

func orNothing(s string) string {
	if s == "" {
		return "no initials"
	}
	return s
}

// fieldLines are every field of a fact that was given.
func (l *Log) fieldLines(fact model.Fact, w int) []string {
	var lines []string
	for _, field := range fact.Fields() {
		v, given := field.Value()
		if !given {
			continue
		}
		for i, part := range text.Wrap(valueWords(v, field.Unit), max(1, w-nameW-2)) {
			name := ""
			if i == 0 {
				name = strings.ReplaceAll(field.Name, "_", " ")
			}
			lines = append(lines, l.pair(name, part))
		}
	}
	return lines
}

// valueWords is a value with its unit.
func valueWords(v any, unit string) string {
	words := ""
	switch x := v.(type) {
	case []float64:
		words = spaced(x, func(f float64) string { return strconv.FormatFloat(f, 'f', -1, 64) })
	case []int:
		words = spaced(x, strconv.Itoa)
	case float64:
		words = strconv.FormatFloat(x, 'f', -1, 64)
	case bool:
		words = map[bool]string{true: "yes", false: "no"}[x]
	case map[string]float64:
		words = table(x, func(f float64) string { return strconv.FormatFloat(f, 'f', -1, 64) })
	case map[string]any:
		words = table(x, func(v any) string { return valueWords(v, "") })
	case []model.Leg:
		words = spaced(x, func(leg model.Leg) string { return leg.From + " into " + leg.To + "," })
		words = strings.TrimSuffix(words, ",")
	case time.Time:
		words = x.Format(time.RFC3339)
	default:
		words = fmt.Sprint(x)
	}
	return strings.TrimSpace(words + " " + factform.Unit(unit))
}

func spaced[T any](list []T, word func(T) string) string {
	words := make([]string, len(list))
	for i, x := range list {
		words[i] = word(x)
	}
	return strings.Join(words, " ")
}

func table[V any](m map[string]V, word func(V) string) string {
	var parts []string
	for name, v := range m {
		parts = append(parts, name+" "+word(v))
	}
	slices.Sort(parts)
	return strings.Join(parts, ", ")
}

// corrected says how the entry reads now, where that is otherwise than written.
func (l *Log) corrected(e model.Entry, w int) []string {
	if f, ok := e.Fact.(*model.Corrected); ok {
		return append([]string{"", " " + l.desk.Theme.Title.Render(fmt.Sprintf("Entry %d, of which it speaks", f.Entry))},
			paragraph(model.Sentence(l.entry(f.Entry).Fact), w)...)
	}
	if len(l.known.by[e.N]) == 0 {
		return nil
	}
	now, counts := l.now()
	if !counts {
		return nil
	}
	lines := append([]string{"", " " + l.desk.Theme.Title.Render("Reads now")}, paragraph(model.Sentence(now.Fact), w)...)
	return append(lines, l.pair("happened", l.long(now.At)), l.pair("by", orNothing(now.By)))
}

// correctedBy lists the corrections in force of the entry.
func (l *Log) correctedBy(n, w int) []string {
	by := l.known.by[n]
	if len(by) == 0 {
		return nil
	}
	lines := []string{"", " " + l.desk.Theme.Title.Render("Corrected by")}
	for _, c := range by {
		e := l.entry(c)
		lines = append(lines, paragraph(fmt.Sprintf("entry %d, %s %s: %s", c, l.long(e.At), e.By, model.Sentence(e.Fact)), w)...)
	}
	return lines
}

func paragraph(s string, w int) []string {
	lines := text.Wrap(inMicrometres(s), max(1, w-1))
	for i, l := range lines {
		lines[i] = " " + l
	}
	return lines
}
