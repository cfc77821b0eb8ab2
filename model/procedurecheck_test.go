package model

import (
	"slices"
	"strings"
	"testing"
)

func TestProceduresThatAreRefused(t *testing.T) {
	at := func(p Procedure, name string) *Step {
		i := slices.IndexFunc(p, func(s Step) bool { return s.Name == name })
		return &p[i]
	}
	without := func(name string) func(Procedure) Procedure {
		return func(p Procedure) Procedure {
			return slices.DeleteFunc(p, func(s Step) bool { return s.Name == name })
		}
	}
	in := func(name string, put func(*Step)) func(Procedure) Procedure {
		return func(p Procedure) Procedure {
			put(at(p, name))
			return p
		}
	}
	cases := map[string]struct {
		change func(Procedure) Procedure
		want   string // one refusal that begins so
	}{
		"ten words":                  {in("lid", func(s *Step) { s.Text = "one two three four five six seven eight nine ten" }), "step[15].text: has 10 words; at most nine"},
		"no text":                    {in("lid", func(s *Step) { s.Text = " " }), "step[15].text: is empty"},
		"two lines":                  {in("lid", func(s *Step) { s.Text = "Put the\nlid on" }), "step[15].text: is over 200 characters long or holds"},
		"why of two lines":           {in("lid", func(s *Step) { s.Why = "a\nb" }), "step[15].why: is over"},
		"name twice":                 {in("lid", func(s *Step) { s.Name = "air" }), `step[15].name: "air" is taken`},
		"name of a pause":            {in("lid", func(s *Step) { s.Name = "before the lid" }), `step[15].name: "before the lid" is taken`},
		"name the session has":       {in("lid", func(s *Step) { s.Name = StepLeftOut }), `step[15].name: "left-out" is taken`},
		"no name":                    {in("lid", func(s *Step) { s.Name = "" }), `step[15].name: "" cannot be kept`},
		"pause twice":                {in("lid", func(s *Step) { s.Pause = "before the lid" }), `step[15].pause: "before the lid" is taken`},
		"pause of the washer":        {in("wash", func(s *Step) { s.Pause = "x" }), "step[16].pause: pause points stand in the lane"},
		"unknown lane":               {in("lid", func(s *Step) { s.Lane = "kitchen" }), `step[15].lane: "kitchen" is not one of session, move, wash`},
		"unknown ask":                {in("lid", func(s *Step) { s.Ask = "shout" }), `step[15].ask: "shout" is not one of tank, celsius`},
		"unknown record":             {in("lid", func(s *Step) { s.Records = "lid" }), `step[15].records: "lid" is not one of filled, from_celsius`},
		"record in the wrong lane":   {in("lid", func(s *Step) { s.Records = RecordFilled }), "step[15].records: filled belongs in the lane"},
		"record of the wrong answer": {in("lid", func(s *Step) { s.Records = RecordMesh }), "step[15].records: mesh_um is the answer to ask"},
		"unknown caution":            {in("lid", func(s *Step) { s.Caution = "bleach" }), `step[15].caution: "bleach" is not one of acid`},
		"one choice":                 {in("air", func(s *Step) { s.Choices = s.Choices[:1] }), "step[13].choices: 1 given; at least two"},
		"a choice twice":             {in("air", func(s *Step) { s.Choices[1] = s.Choices[0] }), `step[13].choices: "gentle roll" is empty, there already`},
		"choices without":            {in("lid", func(s *Step) { s.Choices = []string{"a", "b"} }), "step[15].choices: belong to ask"},
		"limits without":             {in("lid", func(s *Step) { s.Most = num(3) }), "step[15]: least and most belong to ask"},
		"limits out of order":        {in("bucket", func(s *Step) { s.Most = num(3) }), "step[7].least: 75 is above most (3)"},
		"unit without":               {in("lid", func(s *Step) { s.Unit = "mL" }), "step[15].unit: belongs to ask"},
		"no source":                  {without(NameFrom), "step: a step named source is missing"},
		"no destination":             {without(NameTo), "step: a step named destination is missing"},
		"no move":                    {without("rinse"), "step: a step that records moved is missing"},
		"no wash":                    {without("wash"), "step: a step that records washed is missing"},
		"no filling":                 {without("fill"), "step: a step that records filled is missing"},
		"source not asked":           {in(NameFrom, func(s *Step) { s.Ask = AskEnter }), `step[3].ask: source asks for a "tank"`},
		"two moves":                  {in("lid", func(s *Step) { s.Records = RecordMoved }), "step[15]: is the second of what there is one of: a step that records moved"},
		"moved too early": {func(p Procedure) Procedure {
			rinse := *at(p, "rinse")
			return slices.Insert(without("rinse")(p), 3, rinse)
		}, "step[4].records: moved comes after"},
		"filled before washed": {func(p Procedure) Procedure {
			fill := *at(p, "fill")
			return slices.Insert(without("fill")(p), 0, fill)
		}, "step[1].records: filled comes after washed"},
		"nothing": {func(Procedure) Procedure { return nil }, "step: a step named source is missing"},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			var got []string
			for _, wrong := range c.change(DefaultProcedure()).Check() {
				got = append(got, wrong.Error())
			}
			if !slices.ContainsFunc(got, func(s string) bool { return strings.HasPrefix(s, c.want) }) {
				t.Errorf("refusals = %q; want one that begins %q", got, c.want)
			}
		})
	}
}

func TestSignsAreNoWords(t *testing.T) {
	for text, want := range map[string]int{
		"Put the lid on {to}":                5,
		"Stand sieve in bucket: type % full": 6,
		"Read {from}: 75 % at least":         5,
		"Siphon – slowly – onto the sieve":   5,
		"":                                   0,
	} {
		if got := wordsIn(text); got != want {
			t.Errorf("%q has %d words; want %d", text, got, want)
		}
	}
}
