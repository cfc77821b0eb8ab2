package main

import (
	"encoding/json"
	"math"
	"strings"
	"testing"
	"time"

	"drainboard/model"
	"drainboard/model/bench"
)

func TestIsNumberAndIsWhole(t *testing.T) {
	cases := map[string]struct{ number, whole bool }{
		"27":     {true, true},
		"-1":     {true, true},
		" 3 ":    {true, true},
		"27.4":   {true, false},
		"1e3":    {true, true},
		"1e400":  {true, true}, // well written, and far out of any range
		"":       {false, false},
		"warm":   {false, false},
		"inf":    {false, false},
		"NaN":    {false, false},
		"0x10":   {false, false},
		"1_000":  {false, false},
		"27,4":   {false, false},
		"--1":    {false, false},
		"1.2.3":  {false, false},
		"+":      {false, false},
		"27.4 C": {false, false},
	}
	for text, want := range cases {
		if got := isNumber(text); got != want.number {
			t.Errorf("isNumber(%q) = %v; want %v", text, got, want.number)
		}
		if got := isWhole(text); got != want.whole {
			t.Errorf("isWhole(%q) = %v; want %v", text, got, want.whole)
		}
	}
}

func TestFiguresInJSON(t *testing.T) {
	cases := map[string]struct {
		got  *float64
		want string
	}{
		"rounded":      {known(43.3333, true, 1), "43.3"},
		"no minus 0":   {known(-0.001, true, 1), "0"},
		"negative":     {known(-1.26, true, 1), "-1.3"},
		"not known":    {known(3, false, 1), "null"},
		"not a number": {known(math.NaN(), true, 1), "null"},
		"infinite":     {known(math.Inf(1), true, 1), "null"},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			got, err := json.Marshal(c.got)
			if err != nil || string(got) != c.want {
				t.Errorf("got %s, %v; want %s", got, err, c.want)
			}
		})
	}
	if got := significant(0.1 + 0.2); got != 0.3 {
		t.Errorf("significant(0.1 + 0.2) = %v; want 0.3", got)
	}
}

func TestMinutesUntilCutsTowardZero(t *testing.T) {
	now := testNow()
	for _, c := range []struct {
		left time.Duration
		want int
	}{
		{59 * time.Second, 0},
		{-59 * time.Second, 0},
		{60 * time.Second, 1},
		{-60 * time.Second, -1},
		{-72*time.Minute - 30*time.Second, -72},
	} {
		if got := minutesUntil(now.Add(c.left), now); got != c.want {
			t.Errorf("%v left = %d min; want %d", c.left, got, c.want)
		}
	}
}

func TestEscapeControls(t *testing.T) {
	for name, raw := range map[string]string{
		"delete": "a\x7fb", "c1": "a\u009bb", "bidi": "a\u202eb", "tag": "a\U000E0041b", "escape": "a\x1bb",
	} {
		t.Run(name, func(t *testing.T) {
			encoded, err := json.Marshal(raw)
			if err != nil {
				t.Fatal(err)
			}
			escaped := escapeControls(string(encoded))
			if strings.ContainsFunc(escaped, func(r rune) bool { return r < ' ' || r > '~' }) {
				t.Errorf("%q still holds what should be escaped", escaped)
			}
			var back string
			if err := json.Unmarshal([]byte(escaped), &back); err != nil || back != raw {
				t.Errorf("read back as %q, %v; want %q", back, err, raw)
			}
		})
	}
	if got, want := escapeControls("\"µm → 中\""), "\"µm → 中\""; got != want {
		t.Errorf("escapeControls = %q; want %q", got, want)
	}
}

func TestAnswerKeepsItsOrder(t *testing.T) {
	a := answer{
		Figures: []bench.Figure{
			{Key: "total", What: "all", Value: 3.0, Unit: "L", Places: 1},
			{What: "for people alone", Value: 4.0, Unit: "L", Places: 1},
			{Key: "by", What: "of", Value: []bench.Amount{{Name: "zeta", X: 2}, {Name: "alpha", X: 1}}, Unit: "L", Places: 1},
			{Key: "odd", What: "odd", Value: []float64(nil), Unit: "um"},
			{Key: "unknown", What: "unknown", Unit: "%"},
		},
		Cautions: []string{"careful"},
	}
	got, err := json.Marshal(a)
	want := `{"total":3,"by":{"zeta":2,"alpha":1},"odd":[],"unknown":null,"cautions":["careful"]}`
	if err != nil || string(got) != want {
		t.Errorf("got %s, %v; want %s", got, err, want)
	}
	lines := a.lines()
	for _, line := range []string{"for people alone  4.0 L", "of zeta           2.0 L", "odd               none", "  ! careful"} {
		if !strings.Contains(lines, line+"\n") {
			t.Errorf("lines = %q; want %q in them", lines, line)
		}
	}
	if strings.Contains(lines, "unknown") {
		t.Errorf("lines = %q; what is not known does not belong there", lines)
	}
}

func TestTableLinesUp(t *testing.T) {
	got := table([]string{"TANK", ">°C", "MARKS"}, [][]string{{"C1", "27.4", "too warm"}, {"Ä-10", "8", ""}, {"X\x1b[31m", "", "end"}})
	want := "TANK    °C  MARKS\n" +
		"C1    27.4  too warm\n" +
		"Ä-10     8\n" +
		"X           end\n"
	if got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

func TestWording(t *testing.T) {
	um := make([]float64, 25)
	for i := range um {
		um[i] = 640
	}
	half := 0.5
	cases := map[string]struct {
		fact model.Fact
		want string
	}{
		"reading":   {&model.Temperature{Tank: "C5", Celsius: 27.4}, "C5 27.4 °C"},
		"move":      {&model.Moved{From: "C5", To: "C1", Share: &half, Join: true}, "from C5 to C1 share 0.5 join"},
		"long list": {&model.Sizes{Tank: "C5", UM: um}, "C5 640, 640, 640, 640, 640, 640, 640, 640 µm ... (25 in all)"},
		"fed":       {&model.Fed{Tank: "C5", Litres: map[string]float64{"iso": 0.35, "chaet": 0.1}}, "C5 chaet 0.1 L, iso 0.35 L"},
		"text":      {&model.Noted{Text: "two\nlines"}, `"two\nlines"`},
		"flag":      {&model.Suspect{Tank: "C5"}, "C5 not on"},
		"moves":     {&model.Opened{Moves: []model.Leg{{From: "C5", To: "C1"}, {From: "C2", To: "C5"}}}, "C5 to C1, C2 to C5"},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			if got := wording(c.fact); got != c.want {
				t.Errorf("got %q; want %q", got, c.want)
			}
		})
	}
}

func TestPlural(t *testing.T) {
	for want, got := range map[string]string{
		"1 entry": plural(1, "entry"), "0 entries": plural(0, "entry"), "2 entries": plural(2, "entry"),
		"1 tank": plural(1, "tank"), "4 tanks": plural(4, "tank"),
	} {
		if got != want {
			t.Errorf("got %q; want %q", got, want)
		}
	}
}
