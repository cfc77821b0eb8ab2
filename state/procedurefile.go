package state

import (
	"drainboard/model"
)

// decodeProcedure reads the text of procedure.toml and says everything that is
// wrong with it.
func decodeProcedure(file, text string) (model.Procedure, []Problem) {
	top, syntax := parseTOML(file, text)
	if syntax != nil {
		return nil, []Problem{*syntax}
	}
	steps, _ := top.list("step")
	procedure := make(model.Procedure, len(steps))
	for i, t := range steps {
		readStep(t, &procedure[i])
	}
	top.done()
	return procedure, located(file, text, merge(*top.wrong, procedure.Check()))
}

func readStep(t *table, s *model.Step) {
	t.need("name", "\"rinse\"")
	t.need("lane", "\"move\"")
	t.need("ask", "\"enter\"")
	t.need("text", "\"Rinse larvae into {to}\"")
	var lane, ask string
	t.text("name", &s.Name)
	t.text("lane", &lane)
	t.text("ask", &ask)
	t.text("text", &s.Text)
	t.text("why", &s.Why)
	t.text("pause", &s.Pause)
	t.text("records", &s.Records)
	t.texts("choices", &s.Choices)
	t.maybe("least", &s.Least)
	t.maybe("most", &s.Most)
	t.text("unit", &s.Unit)
	t.flag("critical", &s.Critical)
	t.text("caution", &s.Caution)
	t.done()
	s.Lane, s.Ask = model.Lane(lane), model.Ask(ask)
}
