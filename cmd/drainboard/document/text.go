package document

import (
	"strings"

	"drainboard/tui/chart"
	"drainboard/tui/text"
)

// Width is that of a printed line, in cells.
const Width = 80

const (
	chartRows = 16
	gap       = 2  // cells between two columns
	readable  = 12 // cells that a column of words keeps while figures can give way
	narrowest = 6  // cells that any column keeps
)

// Text lays a document out in lines of at most Width cells.
func (d Document) Text() string {
	lines := text.Wrap(text.Clean(d.Title), Width)
	for _, u := range d.Under {
		lines = append(lines, text.Wrap(text.Clean(u), Width)...)
	}
	for _, s := range d.Sections {
		lines = append(lines, "", strings.ToUpper(text.Clean(s.Title)))
		lines = append(lines, s.lines()...)
	}
	return joined(lines)
}

func joined(lines []string) string {
	var b strings.Builder
	for _, l := range lines {
		b.WriteString(strings.TrimRight(l, " ") + "\n")
	}
	return b.String()
}

func (s Section) lines() []string {
	lines := figureLines(s.Figures)
	lines = append(lines, s.Table.lines(Width)...)
	if s.Chart != nil {
		lines = append(lines, s.Chart.Draw(Width, chartRows, chart.Block).Lines()...)
	}
	for _, l := range s.Lines {
		lines = append(lines, Hanging(l, Width)...)
	}
	return lines
}

func figureLines(figures []Figure) []string {
	names := 0
	for _, f := range figures {
		names = max(names, text.Width(text.Clean(f.Name)))
	}
	var lines []string
	for _, f := range figures {
		for i, part := range text.Wrap(text.Clean(f.Words), Width-names-gap) {
			name := ""
			if i == 0 {
				name = text.Clean(f.Name)
			}
			lines = append(lines, text.Fit(name, names)+strings.Repeat(" ", gap)+part)
		}
	}
	return lines
}

// Hanging breaks a sentence into lines of at most w cells, what follows set in.
func Hanging(sentence string, w int) []string {
	sentence = text.Clean(sentence)
	if text.Width(sentence) <= w {
		return []string{sentence}
	}
	parts := text.Wrap(sentence, w-gap)
	for i := range parts {
		if i > 0 {
			parts[i] = strings.Repeat(" ", gap) + parts[i]
		}
	}
	return parts
}

// lines lays the rows out in columns that fit into w cells; words that do not
// fit go on in the next line of their column, so that nothing is lost.
func (t Table) lines(w int) []string {
	if len(t.Rows) == 0 {
		return nil
	}
	widths := t.widths(w)
	lines := t.row(t.names(), widths)
	for _, r := range t.Rows {
		lines = append(lines, t.row(r, widths)...)
	}
	return lines
}

func (t Table) names() []string {
	names := make([]string, len(t.Head))
	for i, h := range t.Head {
		names[i] = name(h)
	}
	return names
}

// name is the name of a column without what says how it stands.
func name(head string) string { return strings.TrimLeft(head, "<>") }

func (t Table) right(i int) bool { return strings.HasPrefix(t.Head[i], ">") }

// widths finds the width of every column. Where they do not all fit, the widest
// of the columns of words gives way, and when these are but readable the widest
// of all.
func (t Table) widths(w int) []int {
	widths := make([]int, len(t.Head))
	for _, r := range append([][]string{t.names()}, t.Rows...) {
		for i := range widths {
			widths[i] = max(widths[i], text.Width(text.Clean(r[i])))
		}
	}
	total := gap * (len(widths) - 1)
	for _, n := range widths {
		total += n
	}
	for total > w {
		give := t.widest(widths)
		if give < 0 {
			break
		}
		widths[give]--
		total--
	}
	return widths
}

// widest is the column that gives way next; -1 where none can.
func (t Table) widest(widths []int) int {
	words := func(i int) bool { return !strings.ContainsAny(t.Head[i], "<>") }
	all := func(int) bool { return true }
	for _, pass := range []struct {
		may  func(int) bool
		keep int
	}{{words, readable}, {all, narrowest}} {
		give := -1
		for i, n := range widths {
			if pass.may(i) && n > pass.keep && (give < 0 || n > widths[give]) {
				give = i
			}
		}
		if give >= 0 {
			return give
		}
	}
	return -1
}

func (t Table) row(cells []string, widths []int) []string {
	parts := make([][]string, len(widths))
	rows := 1
	for i, n := range widths {
		parts[i] = text.Wrap(text.Clean(cells[i]), n)
		rows = max(rows, len(parts[i]))
	}
	lines := make([]string, rows)
	for k := range lines {
		var b strings.Builder
		for i, n := range widths {
			part := ""
			if k < len(parts[i]) {
				part = parts[i][k]
			}
			if t.right(i) {
				b.WriteString(text.FitRight(part, n))
			} else {
				b.WriteString(text.Fit(part, n))
			}
			if i < len(widths)-1 {
				b.WriteString(strings.Repeat(" ", gap))
			}
		}
		lines[k] = b.String()
	}
	return lines
}
