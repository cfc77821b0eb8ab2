package keys

import (
	"slices"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
)

// Action names what a key does, for instance "open". Screens declare theirs as
// constants and switch over them; tests press keys by action.
type Action string

// Binding is one row of a [Table].
type Binding struct {
	Action Action
	// Keys are the keys as bubbletea names them: "enter", "esc", "pgup", "f1",
	// "u". Letters are small; the large one does the same.
	Keys []string
	// Label shows the keys where their own names would not do: "arrows".
	Label string
	// Short is one or two words for the footer, Long one sentence for the help
	// page and the README. No Short means: not in the footer.
	Short, Long string

	off string
}

// Table is the bindings of one screen in the order they are shown.
type Table struct {
	Title    string
	Bindings []Binding
}

// FooterKeys is the most keys a footer shows.
const FooterKeys = 7

// Match gives the action of a key. A disabled binding does not match, nor does
// pasted text, whatever it holds.
func (t Table) Match(msg tea.KeyMsg) (Action, bool) {
	b, ok := t.find(msg, true)
	return b.Action, ok
}

// Refused gives the reason why the key's action is not to be had now. It is
// false for a key that would work and for one that means nothing here.
func (t Table) Refused(msg tea.KeyMsg) (why string, refused bool) {
	if _, ok := t.find(msg, true); ok {
		return "", false
	}
	b, ok := t.find(msg, false)
	return b.off, ok
}

func (t Table) find(msg tea.KeyMsg, enabled bool) (Binding, bool) {
	if msg.Paste {
		return Binding{}, false
	}
	msg = small(msg)
	for _, b := range t.Bindings {
		if b.Enabled() == enabled && key.Matches(msg, key.NewBinding(key.WithKeys(b.Keys...))) {
			return b, true
		}
	}
	return Binding{}, false
}

// small makes a single letter small: with caps lock on the keys do the same.
func small(msg tea.KeyMsg) tea.KeyMsg {
	if msg.Type != tea.KeyRunes || len(msg.Runes) != 1 {
		return msg
	}
	msg.Runes = []rune(strings.ToLower(string(msg.Runes)))
	return msg
}

// Off gives the table with an action disabled. Why is shown to who presses its
// key; an empty one is read as "not now".
func (t Table) Off(a Action, why string) Table {
	if why == "" {
		why = "not now"
	}
	return t.set(a, why)
}

// On gives the table with an action enabled again.
func (t Table) On(a Action) Table { return t.set(a, "") }

func (t Table) set(a Action, off string) Table {
	t.Bindings = slices.Clone(t.Bindings)
	for i := range t.Bindings {
		if t.Bindings[i].Action == a {
			t.Bindings[i].off = off
		}
	}
	return t
}

// With gives the table with the bindings of other after its own.
func (t Table) With(other Table) Table {
	t.Bindings = slices.Concat(t.Bindings, other.Bindings)
	return t
}

// Footer gives the bindings for the last row of the screen: those that are
// enabled and have a Short, at most [FooterKeys], in order. [Help] is among
// them wherever the table has it, as the last one if need be.
func (t Table) Footer() []Binding {
	var out []Binding
	for _, b := range t.Bindings {
		switch {
		case !b.Enabled() || b.Short == "":
		case len(out) < FooterKeys:
			out = append(out, b)
		case b.Action == Help:
			out[FooterKeys-1] = b
		}
	}
	return out
}

// Key gives the first key of an action as a person would name it, for a prompt
// in a sentence; "" where the table does not have the action.
func (t Table) Key(a Action) string {
	for _, b := range t.Bindings {
		if b.Action == a {
			return name(b.Keys[0])
		}
	}
	return ""
}

// Press gives the key message that sets an action off. It panics where the
// table does not have the action: a test is wrong then.
func (t Table) Press(a Action) tea.KeyMsg {
	for _, b := range t.Bindings {
		if b.Action == a {
			return Msg(b.Keys[0])
		}
	}
	panic("keys: " + t.Title + " has no action " + string(a))
}

// Enabled says whether the action can be had now.
func (b Binding) Enabled() bool { return b.off == "" }

// Why is the reason why the action is not to be had, "" if it is.
func (b Binding) Why() string { return b.off }

// Bubbles gives the binding as bubbles components take it.
func (b Binding) Bubbles() key.Binding {
	out := key.NewBinding(key.WithKeys(b.Keys...), key.WithHelp(b.Name(), b.Short))
	out.SetEnabled(b.Enabled())
	return out
}

// Name is how the footer shows the keys: the label, or the first key's name.
func (b Binding) Name() string {
	if b.Label != "" {
		return b.Label
	}
	return name(b.Keys[0])
}

// Names is how the help page shows the keys: all of them.
func (b Binding) Names() string {
	if b.Label != "" {
		return b.Label
	}
	all := make([]string, len(b.Keys))
	for i, k := range b.Keys {
		all[i] = name(k)
	}
	return strings.Join(all, ", ")
}

// name is a key as it is printed on the keyboard.
func name(k string) string {
	switch k {
	case " ":
		return "Space"
	case "pgup":
		return "PgUp"
	case "pgdown":
		return "PgDn"
	}
	if len([]rune(k)) == 1 {
		return k
	}
	parts := strings.Split(k, "+")
	for i, p := range parts {
		if p != "" {
			parts[i] = strings.ToUpper(p[:1]) + p[1:]
		}
	}
	return strings.Join(parts, "+")
}
