package screen

import (
	"drainboard/tui/keys"
	"drainboard/tui/text"
	"drainboard/tui/theme"
)

// Footer draws the last row of the screen, exactly w cells: the keys of the
// table and what they do. Where they do not fit, the last ones go first, but
// help stays.
func Footer(t keys.Table, th theme.Theme, w int) string {
	rows := t.Footer()
	for len(rows) > 1 && footerWidth(rows) > w {
		i := len(rows) - 1
		if rows[i].Action == keys.Help {
			i--
		}
		rows = append(rows[:i:i], rows[i+1:]...)
	}
	line := ""
	for i, b := range rows {
		if i > 0 {
			line += "   "
		}
		line += th.Key.Render(b.Name()) + " " + th.Faint.Render(b.Short)
	}
	return text.Fit(line, w)
}

func footerWidth(rows []keys.Binding) int {
	w := 3 * (len(rows) - 1)
	for _, b := range rows {
		w += text.Width(b.Name()) + 1 + text.Width(b.Short)
	}
	return w
}

// HelpLines writes tables as lines of at most w cells for a [Page]: each key
// with its sentence, and the reason beside those that are not to be had now.
func HelpLines(th theme.Theme, w int, tables ...keys.Table) []string {
	column := 0
	for _, t := range tables {
		for _, b := range t.Bindings {
			column = max(column, text.Width(b.Names()))
		}
	}
	column = max(1, min(column, w/3))
	var out []string
	for i, t := range tables {
		if i > 0 {
			out = append(out, "")
		}
		out = append(out, th.Title.Render(text.Truncate(t.Title, w)))
		for _, b := range t.Bindings {
			out = append(out, helpRow(th, b, column, w)...)
		}
	}
	return out
}

func helpRow(th theme.Theme, b keys.Binding, column, w int) []string {
	sentence, style := b.Long, th.Plain
	if !b.Enabled() {
		sentence, style = b.Long+" Not now: "+b.Why()+".", th.Faint
	}
	var out []string
	for i, part := range text.Wrap(sentence, max(1, w-column-2)) {
		name := ""
		if i == 0 {
			name = b.Names()
		}
		out = append(out, th.Key.Render(text.Fit(name, column))+"  "+style.Render(part))
	}
	return out
}
