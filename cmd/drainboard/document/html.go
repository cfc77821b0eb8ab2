package document

import (
	_ "embed"
	"html/template"
	"io"
	"strings"

	"drainboard/tui/text"
)

//go:embed document.html
var documentHTML string

//go:embed style.css
var style string

// Mark begins every file that HTML writes. By it a file that was written before
// is told from one that holds something else.
const Mark = "<!doctype html>\n<!-- drainboard paper -->\n"

// HTML writes a document as one file: styles and drawings are in it, and it asks
// for nothing from outside. What people wrote is escaped.
func (d Document) HTML(w io.Writer) error {
	if _, err := io.WriteString(w, Mark); err != nil {
		return err
	}
	return pages().ExecuteTemplate(w, "document", d)
}

// Page writes any value by the template of another page, with the styles and the
// head of a document.
func Page(w io.Writer, page string, value any) error {
	t, err := pages().New("page").Parse(page)
	if err != nil {
		return err
	}
	if _, err := io.WriteString(w, Mark); err != nil {
		return err
	}
	return t.Execute(w, value)
}

func pages() *template.Template {
	return template.Must(template.New("document").Funcs(template.FuncMap{
		"clean": text.Clean,
		"draw":  draw,
		"right": func(head string) bool { return strings.HasPrefix(head, ">") },
		"name":  name,
		"title": title,
		"style": func() template.CSS { return template.CSS(style) },
		"at":    func(t Table, i int) string { return t.Head[i] },
	}).Parse(documentHTML))
}

// title is a section's title with a capital.
func title(s string) string {
	s = text.Clean(s)
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}
