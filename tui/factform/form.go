package factform

import (
	"maps"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/tui/screen"
	"drainboard/tui/text"
	"drainboard/tui/theme"
)

// Form is the fields of one fact beneath each other, and what else a screen asks
// with them.
type Form struct {
	kind  model.Kind
	fixed map[string]string // fields that are known and not asked
	rows  []row
	form  screen.Form
	whole string // what is wrong with the fact as a whole
}

// row is what stands behind one row of the form.
type row struct {
	name  string // of the field, or of the extra row
	alga  string // for one alga of a table by alga
	field model.Field
	extra bool
	begun string // the text it began with
}

// New is an empty form of a kind. Fields in fixed have their text already, or are
// left out where it is empty, and are not asked; a table by alga gets a row for
// each alga of the room.
func New(room *model.Room, kind model.Kind, fixed map[string]string) Form {
	fact, _ := model.NewFact(kind)
	f := Form{kind: kind, fixed: fixed}
	for _, field := range fact.Fields() {
		if _, known := fixed[field.Name]; known {
			continue
		}
		if field.Type != model.PerAlga {
			f.add(row{name: field.Name, field: field}, label(field), unit(field), note(field))
			continue
		}
		for _, a := range room.Algae {
			f.add(row{name: field.Name, alga: a.Name, field: field}, label(field)+" "+text.Clean(a.Name), unit(field), "a number; . or , before the decimals")
		}
	}
	return f
}

// Of is a form that holds a fact as it reads, to change it.
func Of(room *model.Room, fact model.Fact) Form {
	f := New(room, fact.Kind(), nil)
	for _, field := range fact.Fields() {
		v, given := field.Value()
		if !given {
			continue
		}
		for i, r := range f.rows {
			if r.name == field.Name {
				f.begin(i, written(v, r.alga))
			}
		}
	}
	return f
}

// With is the form with one more row that is no field of the fact, such as the
// moment or a reason. Its text is read by Text.
func (f Form) With(name, note, begun string, most int) Form {
	f.rows, f.form.Rows = slices.Clone(f.rows), slices.Clone(f.form.Rows)
	f.add(row{name: name, extra: true, field: model.Field{Name: name}}, name, "", note)
	last := len(f.rows) - 1
	f.form.Rows[last].Field = screen.NewField(screen.Line, most)
	f.begin(last, begun)
	return f
}

func (f *Form) add(r row, label, unit, note string) {
	f.rows = append(f.rows, r)
	f.form.Rows = append(f.form.Rows, screen.Row{Label: label, Field: fieldOf(r.field.Type), Unit: unit, Note: note})
}

func (f *Form) begin(i int, s string) {
	f.form.Rows[i].Field = f.form.Rows[i].Field.With(s)
	f.rows[i].begun = f.form.Rows[i].Field.Text()
}

// Kind is the kind of the fact.
func (f Form) Kind() model.Kind { return f.kind }

// Update takes a key.
func (f Form) Update(msg tea.KeyMsg) (Form, screen.Outcome) {
	if pasted, ok := screen.Column(msg); ok && f.list() {
		msg.Runes = []rune(strings.Join(pasted, " "))
	}
	var out screen.Outcome
	f.form, out = f.form.Update(msg)
	if out == screen.Edited {
		f.whole = ""
	}
	return f, out
}

// list says that the row in focus takes more than one number.
func (f Form) list() bool {
	if f.form.Focus >= len(f.rows) {
		return false
	}
	t := f.rows[f.form.Focus].field.Type
	return t == model.Numbers || t == model.Wholes
}

// Typed says that a text differs from the one it began with.
func (f Form) Typed() bool {
	for i, r := range f.rows {
		if f.form.Rows[i].Field.Text() != r.begun {
			return true
		}
	}
	return false
}

// Text is what a row holds now, by the name of its field.
func (f Form) Text(name string) string {
	for i, r := range f.rows {
		if r.name == name {
			return f.form.Rows[i].Field.Text()
		}
	}
	return f.fixed[name]
}

// Fact reads the texts. What is wrong with one of them is a model.FieldError.
func (f Form) Fact() (model.Fact, error) {
	texts := f.texts()
	maps.Copy(texts, f.fixed)
	maps.DeleteFunc(texts, func(_, s string) bool { return s == "" })
	fact, _ := model.NewFact(f.kind)
	return fact, model.ParseFact(fact, texts)
}

// Changed reads the texts that differ from those they began with, as a
// correction takes them.
func (f Form) Changed() (map[string]any, error) {
	fact, _ := model.NewFact(f.kind)
	set := map[string]any{}
	now := f.texts()
	for _, field := range fact.Fields() {
		if !f.Touched(field.Name) {
			continue
		}
		if now[field.Name] == "" && !mayBeCleared(field) {
			return nil, &model.FieldError{Field: field.Name, Problem: "cannot be taken out again; make the entry void and enter it anew"}
		}
		if err := model.ParseField(field, now[field.Name]); err != nil {
			return nil, err
		}
		set[field.Name], _ = field.Value()
	}
	return set, nil
}

// mayBeCleared says that a correction can leave a field empty: texts and names
// can, a number cannot be unsaid.
func mayBeCleared(field model.Field) bool {
	switch field.Type {
	case model.Text, model.Word, model.TankName, model.Source, model.AlgaName, model.ShortName:
		return !field.Need
	}
	return false
}

// Touched says that a text of a field's rows differs from the one it began with.
func (f Form) Touched(name string) bool {
	for i, r := range f.rows {
		if r.name == name && f.form.Rows[i].Field.Text() != r.begun {
			return true
		}
	}
	return false
}

// texts are the fields as the model reads them.
func (f Form) texts() map[string]string {
	texts := map[string]string{}
	for i, r := range f.rows {
		typed := f.form.Rows[i].Field.Text()
		switch {
		case r.extra:
		case r.alga == "":
			texts[r.name] = read(r.field, typed)
		case typed != "":
			texts[r.name] = strings.TrimPrefix(texts[r.name]+","+r.alga+":"+read(r.field, typed), ",")
		}
	}
	return texts
}

// Refused shows why the fact was not taken: at its field where the reason names
// one, else beneath the form. Only a reason of the fact's own is looked at; one
// that speaks of another entry is not about a field here.
func (f Form) Refused(err error) Form {
	f.whole = ""
	wrong, ok := err.(*model.FieldError)
	if !ok {
		f.whole = NotSaved(err)
		return f
	}
	name := strings.TrimPrefix(wrong.Field, "set.")
	field, alga, _ := strings.Cut(name, ".")
	for i, r := range f.rows {
		if r.name == name || r.name == field && (r.alga == alga || alga == "") {
			f.form.Rows = slices.Clone(f.form.Rows)
			f.form.Rows[i].Problem = text.Clean(wrong.Problem)
			f.form.Focus = i
			return f
		}
	}
	f.whole = NotSaved(err)
	return f
}

// View draws the form in exactly h rows of w cells: the fields, what is wrong,
// and the lines below in what room is left.
func (f Form) View(th theme.Theme, w, h int, below []string) []string {
	trouble := f.trouble(th, w)
	trouble = trouble[:max(0, min(len(trouble), h-2))]
	needed := len(f.rows) + 1 // with the note of the row in focus
	for _, r := range f.form.Rows {
		if r.Problem != "" {
			needed++
		}
	}
	drawn := f.form.View(th, w, max(0, min(needed, h-len(trouble))))
	for len(drawn) > 0 && strings.TrimSpace(drawn[len(drawn)-1]) == "" {
		drawn = drawn[:len(drawn)-1]
	}
	drawn = append(drawn, trouble...)
	if len(below) > 0 {
		drawn = append(append(drawn, ""), below...)
	}
	return text.Frame(drawn, w, h)
}

// trouble is what is wrong, in full: the whole fact, or a field whose problem
// does not fit in its row.
func (f Form) trouble(th theme.Theme, w int) []string {
	words := f.whole
	for _, r := range f.form.Rows {
		if words == "" && text.Width(r.Problem) > w-6 {
			words = r.Label + ": " + r.Problem
		}
	}
	if words == "" {
		return nil
	}
	lines := []string{""}
	for _, l := range text.Wrap(words, max(1, w-4)) {
		lines = append(lines, "  "+th.Error.Render(" "+l+" "))
	}
	return lines
}
