package state

import (
	"math"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"

	"drainboard/model"
)

// everyKind is one entry of each kind with all its fields, and more of a kind
// where a field can be written in several ways. They tell one story, so that a
// room can hold them.
func everyKind() []model.Entry {
	hatched := model.Hatched{Date: model.Day{Year: 2026, Month: time.November, Date: 8}}
	moment := model.Hatched{Moment: at("2026-11-08T19:30:00-05:00")}
	facts := []model.Fact{
		&model.Filled{Tank: "C1", Celsius: num(28)},
		&model.Stocked{Tank: "C1", Batch: "26-05", Hatched: hatched, Larvae: num(9000), Origin: "egg mass 4"},
		&model.Filled{Tank: "C2", Celsius: num(27.25)},
		&model.Stocked{Tank: "C2", Batch: "26-06", Hatched: moment},
		&model.Temperature{Tank: "C1", Celsius: 27.4},
		&model.Temperature{Supply: "header", Celsius: -1.5},
		&model.Sizes{Tank: "C1", UM: []float64{98.49, 97.88, 101}, UMPerDivision: num(24.5)},
		&model.Look{Tank: "C1", Lobes: new(4), Golden: num(85), Swim: model.SwimFair, Dead: num(0.5), Text: "a\ttab, a \"quote\", a \\ and\ntwo lines, °C µm"},
		&model.Count{Tank: "C1", Live: []int{38, 42, 50}, SampleML: 0.05, HoldingML: 70, Dead: []int{0, 1, 0}},
		&model.Cells{Algae: "T-Iso", Counts: []int{46, 50}, ChamberML: 0.0009, Dilution: num(10)},
		&model.Cells{Tank: "C1", Counts: []int{0}, ChamberML: 0.0001},
		&model.Fed{Tank: "C1", Litres: map[string]float64{"T-Iso": 0.35, "chaet 2": 0.1}},
		&model.Water{Tank: "C1", Salinity: num(35.5), PH: num(8.1), OxygenMgL: num(6.1), AmmoniaMgL: num(0.02)},
		&model.Water{Supply: "header", Salinity: num(36)},
		&model.Removed{Tank: "C1", Larvae: 250, Why: "sampled for the permit"},
		&model.Suspect{Tank: "C1", On: true, Why: "ciliates"},
		&model.Filled{Tank: "C3"},
		&model.Opened{Moves: []model.Leg{{From: "C1", To: "C3"}, {From: "C2", To: "C1"}}},
		&model.StepDone{Session: 18, Move: 0, Name: "bin", Done: true},
		&model.StepDone{Session: 18, Move: 1, Name: "fed", Done: false, Why: "algae not counted yet"},
		&model.Moved{From: "C1", To: "C3", MeshUM: num(150), FromCelsius: num(27.9), ToCelsius: num(28.3), Share: num(0.5), Join: true, Why: "split"},
		&model.Moved{From: "C1", To: "C3", Join: true},
		&model.Washed{Tank: "C1", AcidML: num(40), WaterLitres: num(3.96)},
		&model.Closed{Session: 18, Complete: false, Why: "power cut"},
		&model.Ended{Tank: "C3", Why: model.Settled, Larvae: num(4100)},
		&model.Service{Tank: "C4", Out: true, Why: "cracked standpipe"},
		&model.Service{Tank: "C4"},
		&model.Noted{Text: "new bottle of acid, 31.45 %", Tank: "C4"},
		&model.Noted{Text: "héader drained"},
		&model.Corrected{Entry: 5, Why: "misread", Set: map[string]any{"celsius": 27.1, "at": at("2026-11-10T10:00:00-05:00"), "by": "MB"}},
		&model.Corrected{Entry: 2, Why: "recounted", Set: map[string]any{"larvae": 9200.0, "hatched": hatched, "origin": "egg mass 5"}},
		&model.Corrected{Entry: 9, Why: "second grid", Set: map[string]any{"live": []int{38, 42, 51}}},
		&model.Corrected{Entry: 12, Why: "bottle swapped", Set: map[string]any{"litres": map[string]float64{"T-Iso": 0.3}}},
		&model.Corrected{Entry: 30, Why: "it was right", Void: true},
	}
	entries := make([]model.Entry, len(facts))
	start := at("2026-11-10T10:00:00-05:00")
	for i, fact := range facts {
		entries[i] = model.Entry{N: i + 1, At: start.Add(time.Duration(i) * time.Hour), Fact: fact}
	}
	entries[3].By = "KT"
	entries[6].Keyed = entries[6].At.Add(61 * time.Second)
	return entries
}

// byInstant compares moments as instants: the zone they are shown in is the
// room's, not theirs.
var byInstant = cmp.Comparer(func(a, b time.Time) bool { return a.Equal(b) })

// loaded are entries as the ledger keeps them, the values of corrections typed.
func loaded(t testing.TB, entries []model.Entry) []model.Entry {
	t.Helper()
	ledger, err := model.LoadLedger(bigRoom(t), entries)
	if err != nil {
		t.Fatal(err)
	}
	return ledger.Entries()
}

func bigRoom(t testing.TB) *model.Room {
	t.Helper()
	return &model.Room{
		Name: "Test room", Zone: nassau(t), House: model.DefaultHouse(), Procedure: model.DefaultProcedure(),
		Tanks:    []model.Tank{{Name: "C1", Litres: 120}, {Name: "C2", Litres: 120}, {Name: "C3", Litres: 120}, {Name: "C4", Litres: 90}},
		Algae:    []model.Alga{{Name: "T-Iso"}, {Name: "chaet 2"}},
		Supplies: []model.Supply{{Name: "header"}},
	}
}

func TestEveryKindIsReadBack(t *testing.T) {
	seen := map[model.Kind]bool{}
	for _, want := range loaded(t, everyKind()) {
		seen[want.Kind()] = true
		text := string(appendEntry(nil, want, nassau(t)))
		for name, decode := range decoders(t) {
			t.Run(string(want.Kind())+" "+name, func(t *testing.T) {
				got, err := decode(text)
				if err != nil {
					t.Fatalf("%v in\n%s", err, text)
				}
				// A correction's values are typed by the ledger, from what it corrects.
				if want.Kind() == model.KindCorrected {
					if again := string(appendEntry(nil, got, nassau(t))); again != text {
						t.Errorf("written again:\n%s\nwant:\n%s", again, text)
					}
					return
				}
				if diff := cmp.Diff(want, got, byInstant); diff != "" {
					t.Errorf("entry differs (-written +read):\n%s\nfrom\n%s", diff, text)
				}
			})
		}
	}
	for _, kind := range model.Kinds() {
		if !seen[kind] {
			t.Errorf("no entry of kind %s was tried", kind)
		}
	}
}

// decoders are the fast reader alone and the library alone.
func decoders(t testing.TB) map[string]func(string) (model.Entry, error) {
	return map[string]func(string) (model.Entry, error){
		"as written": func(text string) (model.Entry, error) {
			d := newDecoder(nassau(t))
			if !d.values.entry(text, d.table) {
				t.Errorf("the fast reader does not take what is written:\n%s", text)
			}
			return d.build(d.table)
		},
		"by the library": func(text string) (model.Entry, error) {
			d := newDecoder(nassau(t))
			table, err := d.library(text)
			if err != nil {
				return model.Entry{}, err
			}
			return d.build(table)
		},
	}
}

func TestNumbersAreWrittenShort(t *testing.T) {
	cases := map[string]struct {
		x    float64
		want string
	}{
		"whole":      {28, "28"},
		"decimal":    {27.4, "27.4"},
		"small":      {0.0000001, "0.0000001"},
		"third":      {1.0 / 3, "0.3333333333333333"},
		"nought":     {0, "0"},
		"minus zero": {math.Copysign(0, -1), "0"},
		"large":      {1e12, "1000000000000"},
		"very large": {1e300, "1" + strings.Repeat("0", 300) + ".0"},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			if got := string(appendNumber(nil, c.x)); got != c.want {
				t.Errorf("%v is written %s; want %s", c.x, got, c.want)
			}
		})
	}
}

func TestKeyedIsWrittenWhereItSaysSomething(t *testing.T) {
	cases := map[string]struct {
		at, keyed string
		want      bool
	}{
		"the same":                       {"2026-11-25T09:14:05Z", "2026-11-25T09:14:05Z", false},
		"a minute later":                 {"2026-11-25T09:14:05Z", "2026-11-25T09:15:05Z", false},
		"over a minute later":            {"2026-11-25T09:14:05Z", "2026-11-25T09:15:06Z", true},
		"earlier, the clock was set":     {"2026-11-25T09:14:05Z", "2026-11-25T08:14:05Z", true},
		"over the turn of the UTC month": {"2026-11-30T23:59:50Z", "2026-12-01T00:00:10Z", true},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			e := model.Entry{N: 1, At: at(c.at), Keyed: at(c.keyed), Fact: &model.Noted{Text: "x"}}
			text := string(appendEntry(nil, e, time.UTC))
			if got := strings.Contains(text, "\nkeyed = "+c.keyed+"\n"); got != c.want {
				t.Errorf("keyed written: %v; want %v\n%s", got, c.want, text)
			}
		})
	}
}

// Until 1912 clocks in Nassau stood 5:09:30 behind Greenwich (IANA); RFC 3339
// has no seconds in an offset.
func TestAnOffsetWithSecondsIsWrittenInUTC(t *testing.T) {
	e := model.Entry{N: 1, At: at("1905-01-01T12:00:00Z"), Fact: &model.Noted{Text: "x"}}
	got, err := newDecoder(nassau(t)).entry(string(appendEntry(nil, e, nassau(t))))
	if err != nil || !got.At.Equal(e.At) {
		t.Errorf("read back as %v (%v); want %v", got.At, err, e.At)
	}
}

// What the fast reader does not take must still be read, and the two must never
// differ.
func TestOtherWaysOfWritingTOMLAreRead(t *testing.T) {
	head := "[[entry]]\nn = 3\nat = 2026-11-25T09:14:05-05:00\n"
	want := model.Entry{N: 3, At: at("2026-11-25T09:14:05-05:00"), Fact: &model.Temperature{Tank: "C1", Celsius: 27.5}}
	for name, rest := range map[string]string{
		"literal text":     "kind = 'temperature'\ntank = 'C1'\ncelsius = 27.5\n",
		"aligned":          "kind    = \"temperature\"\ntank    = \"C1\"\ncelsius = 27.5\n",
		"remark":           "kind = \"temperature\" # header\ntank = \"C1\"\ncelsius = 27.5\n",
		"exponent":         "kind = \"temperature\"\ntank = \"C1\"\ncelsius = 2.75e1\n",
		"unicode escape":   "kind = \"temperature\"\ntank = \"\\u0043\\U00000031\"\ncelsius = 27.5\n",
		"quoted key":       "kind = \"temperature\"\n\"tank\" = \"C1\"\ncelsius = +27.5\n",
		"another order":    "celsius = 27.5\ntank = \"C1\"\nkind = \"temperature\"\n",
		"moment with T":    "kind = \"temperature\"\ntank = \"C1\"\ncelsius = 27.5\nkeyed = 2026-11-25T09:14:05.25-05:00\n",
		"moment with a t":  "kind = \"temperature\"\ntank = \"C1\"\ncelsius = 27.5\nkeyed = 2026-11-25 09:14:05-05:00\n",
		"space at the end": "kind = \"temperature\" \ntank = \"C1\"\t\ncelsius = 27.5\n",
	} {
		t.Run(name, func(t *testing.T) {
			got, err := newDecoder(nassau(t)).entry(head + rest)
			if err != nil {
				t.Fatal(err)
			}
			got.Keyed = time.Time{}
			if diff := cmp.Diff(want, got, byInstant); diff != "" {
				t.Errorf("entry differs (-want +got):\n%s", diff)
			}
		})
	}
}

func TestEntriesThatAreRefused(t *testing.T) {
	const head = "[[entry]]\nn = 3\nat = 2026-11-25T09:14:05-05:00\n"
	for name, c := range map[string]struct{ text, want string }{
		"unknown kind":       {head + "kind = \"painted\"\n", `kind: "painted" is not known`},
		"no kind":            {head + "tank = \"C1\"\n", "kind: the kind"},
		"unknown field":      {head + "kind = \"filled\"\ntank = \"C1\"\ncolour = 3\n", "colour: filled has no such field"},
		"missing field":      {head + "kind = \"filled\"\n", "tank: is missing"},
		"wrong type":         {head + "kind = \"filled\"\ntank = 5\n", "tank: text in quotes"},
		"beyond what is":     {head + "kind = \"filled\"\ntank = \"C1\"\ncelsius = 270\n", "celsius: 270"},
		"no number":          {"[[entry]]\nat = 2026-11-25T09:14:05-05:00\nkind = \"filled\"\ntank = \"C1\"\n", "n: the number"},
		"number as text":     {"[[entry]]\nn = \"3\"\nat = 2026-11-25T09:14:05-05:00\nkind = \"filled\"\ntank = \"C1\"\n", "n: the number"},
		"no moment":          {"[[entry]]\nn = 3\nkind = \"filled\"\ntank = \"C1\"\n", "at: a moment"},
		"moment, no offset":  {"[[entry]]\nn = 3\nat = 2026-11-25T09:14:05\nkind = \"filled\"\ntank = \"C1\"\n", "at: a moment"},
		"date as moment":     {"[[entry]]\nn = 3\nat = 2026-11-25\nkind = \"filled\"\ntank = \"C1\"\n", "at: a moment"},
		"hatched, no offset": {head + "kind = \"stocked\"\ntank = \"C1\"\nbatch = \"b\"\nhatched = 2026-11-08T10:00:00\n", "hatched: "},
		"keyed as text":      {head + "keyed = \"now\"\nkind = \"filled\"\ntank = \"C1\"\n", "keyed: a moment"},
		"by as number":       {head + "by = 3\nkind = \"filled\"\ntank = \"C1\"\n", "by: text in quotes"},
		"no TOML":            {head + "kind = filled\n", "not TOML"},
		"key twice":          {head + "kind = \"filled\"\ntank = \"C1\"\ntank = \"C2\"\n", "not TOML"},
		"another table":      {head + "kind = \"filled\"\ntank = \"C1\"\n[house]\ncrew = 1\n", "nothing beside it"},
		"day that is none":   {"[[entry]]\nn = 3\nat = 2026-11-31T09:14:05-05:00\nkind = \"filled\"\ntank = \"C1\"\n", "not TOML"},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := newDecoder(nassau(t)).entry(c.text)
			if err == nil || !strings.Contains(err.Error(), c.want) || strings.Contains(err.Error(), "\n") {
				t.Errorf("refusal = %v; want one line that says %q", err, c.want)
			}
		})
	}
}

// FuzzDecode holds the fast reader against the library: what it takes, the
// library takes too and reads the same.
func FuzzDecode(f *testing.F) {
	for _, e := range everyKind() {
		f.Add(string(appendEntry(nil, e, time.UTC)))
	}
	f.Add("[[entry]]\nx = -0\ny = 1979-05-27\nz = [1, 2.5, \"a\"]\nt = { a = 1, b = { c = true } }\n")
	f.Fuzz(func(t *testing.T, text string) {
		d := newDecoder(time.UTC)
		if !d.values.entry(text, d.table) {
			return
		}
		want, err := d.library(text)
		if err != nil {
			t.Fatalf("taken, but the library says %v:\n%s", err, text)
		}
		same := cmp.Comparer(func(a, b float64) bool { return a == b })
		if diff := cmp.Diff(want, d.table, byInstant, same, sameLists); diff != "" {
			t.Errorf("read differently (-library +fast):\n%s", diff)
		}
	})
}

// sameLists lets a list of tables be either of the two types it is decoded to.
var sameLists = cmp.FilterValues(func(a, b any) bool {
	_, okA := a.([]map[string]any)
	_, okB := b.([]any)
	return okA && okB
}, cmp.Comparer(func(a, b any) bool {
	tables, list := a.([]map[string]any), b.([]any)
	if len(tables) != len(list) {
		return false
	}
	for i := range tables {
		if !cmp.Equal(any(tables[i]), list[i], byInstant) {
			return false
		}
	}
	return true
}))

// FuzzEntry writes an entry of any text and figure and reads it back by both
// readers.
func FuzzEntry(f *testing.F) {
	f.Add("C1", "a \"b\"\n\t\\", 27.4, int64(1700000000), int64(60), uint8(0))
	f.Add("\u0085\u2028", "", 1e-7, int64(-5), int64(-90000), uint8(1))
	f.Fuzz(func(t *testing.T, name, text string, x float64, sec, keyed int64, form uint8) {
		if math.IsNaN(x) || math.IsInf(x, 0) || sec < -6e10 || sec > 2e11 || keyed < -1e9 || keyed > 1e9 || !utf8.ValidString(name) || !utf8.ValidString(text) {
			return
		}
		e := model.Entry{N: 7, At: time.Unix(sec, 0), By: name, Keyed: time.Unix(sec+keyed, 0)}
		e.Fact = []model.Fact{
			&model.Noted{Text: text, Tank: name},
			&model.Water{Tank: name, Salinity: &x},
			&model.Fed{Tank: "C1", Litres: map[string]float64{name: x, text: 1}},
			&model.Corrected{Entry: 1, Why: text, Set: map[string]any{name: x, "text": text}},
			&model.Stocked{Tank: name, Batch: text, Hatched: model.Hatched{Moment: time.Unix(sec, 0)}, Larvae: &x},
			&model.Opened{Moves: []model.Leg{{From: name, To: text}}},
		}[form%6]
		written := string(appendEntry(nil, e, nassau(t)))
		got, err := newDecoder(nassau(t)).entry(written)
		if err != nil {
			return // an append refuses what does not read back
		}
		if again := string(appendEntry(nil, got, nassau(t))); again != written {
			t.Errorf("written again:\n%s\nwant:\n%s", again, written)
		}
		d := newDecoder(nassau(t))
		if _, err := d.library(written); err != nil {
			t.Errorf("the library says %v:\n%s", err, written)
		}
	})
}
