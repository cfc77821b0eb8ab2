package state

import (
	"drainboard/model"
)

// writeProcedure writes a procedure as a commented procedure.toml.
func writeProcedure(steps model.Procedure) string {
	w := &tomlWriter{}
	w.remark("The steps of a change session, in order. Word them as the room does; without this",
		"file these hold.",
		"",
		`name     as kept in the journal; two are fixed: "source" and "destination"`,
		`lane     "session" once before the first move, "move" for each move, "wash" for each emptied tank`,
		"pause    begins a section: what was deferred comes back here, and work can stop here safely",
		`ask      "tank", "celsius", "number", "choice" or "enter"`,
		`records  what the answer is beside a step: "from_celsius", "to_celsius", "mesh_um", "moved",`,
		`         "washed" or "filled"; the last three must each be there once`,
		"text     at most nine words, the verb first; words in { } are filled in",
		"why      shown beneath it",
		`choices  for "choice"; the first lets the step pass`,
		`least, most, unit   for "number"; outside of them the step waits`,
		"critical while it is open a session closes only as incomplete",
		`caution  "acid" shows the cautions for acid beside the step`)
	for _, s := range steps {
		writeStep(w, s)
	}
	return w.String()
}

func writeStep(w *tomlWriter, s model.Step) {
	w.head("[[step]]", "")
	w.key("name", s.Name, "")
	w.key("lane", string(s.Lane), "")
	w.keyIf(s.Pause != "", "pause", s.Pause)
	w.key("ask", string(s.Ask), "")
	w.keyIf(s.Records != "", "records", s.Records)
	w.key("text", s.Text, "")
	w.keyIf(s.Why != "", "why", s.Why)
	w.keyIf(len(s.Choices) > 0, "choices", s.Choices)
	if s.Least != nil {
		w.key("least", *s.Least, "")
	}
	if s.Most != nil {
		w.key("most", *s.Most, "")
	}
	w.keyIf(s.Unit != "", "unit", s.Unit)
	w.keyIf(s.Critical, "critical", s.Critical)
	w.keyIf(s.Caution != "", "caution", s.Caution)
}

// keyIf writes a key that says something.
func (w *tomlWriter) keyIf(says bool, key string, value any) {
	if says {
		w.key(key, value, "")
	}
}
