package bench

import (
	"math"
	"strings"
	"testing"
)

// scallopDay2 are 25 shell lengths of bay scallop F2 2022, tank B, day 2
// (NOAA/NEFSC): mean 100.096, standard deviation 5.25, median 101.1.
const scallopDay2 = "98.49 97.88 100.05 101.1 106.35 101.43 96.96 102.02 103.02 92.34 104.24 101.61 101.72 " +
	"100.59 107.72 105.34 96.46 106.66 95.74 92.05 101.66 93.27 94.68 90.43 110.59"

func run(t *testing.T, name string, typed map[string]string) Answer {
	t.Helper()
	s, err := Named(name)
	if err != nil {
		t.Fatal(err)
	}
	a, problems := s.Run(typed)
	if len(problems) > 0 {
		t.Fatalf("%s: %v", name, problems)
	}
	return a
}

// value finds a figure by key; of an amount by key and name.
func value(t *testing.T, a Answer, key, name string) any {
	t.Helper()
	for _, f := range a.Figures {
		if f.Key != key {
			continue
		}
		if amounts, ok := f.Value.([]Amount); ok {
			for _, x := range amounts {
				if x.Name == name {
					return x.X
				}
			}
		}
		return f.Value
	}
	t.Fatalf("no figure %s", key)
	return nil
}

func TestSumsComeToWhatTheySay(t *testing.T) {
	type texts = map[string]string
	for _, c := range []struct {
		sum       string
		typed     texts
		key, name string
		want      float64
		off       float64
	}{
		// By hand: 10 mL a litre is common practice, no source.
		{"acid", texts{"litres": "20"}, "acid_ml", "", 200, 1e-9},
		{"acid", texts{"litres": "20", "made-up": "y"}, "water_litres", "", 19.8, 1e-9},
		// By hand: 80 g of chlorine from 125 g a litre.
		{"bleach", texts{"litres": "400", "ppm": "200", "stock-percent": "12,5"}, "bleach_ml", "", 640, 1e-9},
		{"blend", texts{"litres": "120", "have": "31", "want": "28", "with": "22"}, "swap_litres", "", 40, 1e-9},
		{"blend", texts{"litres": "120", "have": "31", "want": "28", "with": "22"}, "add_litres", "", 60, 1e-9},
		// By hand: 30 ln(6/3) / ln(6/5.2).
		{"cool", texts{"start": "31", "room": "25", "want": "28", "read": "30:30,2"}, "minutes", "", 145.3130, 1e-4},
		// Bay scallop F2 2022, tank A, day 2 (NOAA/NEFSC): 60,667 larvae.
		{"count", texts{"live": "38,42,50", "sample-ml": "0.05", "holding-ml": "70"}, "larvae", "", 60666.667, 1e-3},
		{"count", texts{"live": "38 42 50", "sample-ml": "0.05", "holding-ml": "70", "tank-litres": "10"}, "per_litre", "", 6066.6667, 1e-3},
		{"cells", texts{"counts": "46,50", "chamber-ml": "0.0009"}, "cells_per_ml", "", 96 / 0.0018, 1e-6},
		{"cells", texts{"counts": "46+50", "chamber-ml": "neubauer-all", "dilution": "10"}, "cells_per_ml", "", 960 / 0.0018, 1e-5},
		// Bay scallop F2 2022 feeding sheet (NOAA/NEFSC), day 2; by hand.
		{"feed", texts{"litres": "10", "want": "20000", "there": "14080", "share": "iso:3,chaet:1", "culture": "iso:5110909 chaet:4855454"}, "litres", "iso", 0.008687, 5e-7},
		{"feed", texts{"litres": "10", "want": "20000", "there": "14080", "share": "iso:3,chaet:1", "culture": "iso:5110909 chaet:4855454"}, "litres", "chaet", 0.003048, 5e-7},
		{"feed", texts{"litres": "10", "want": "30000", "there": "31454", "share": "iso:3", "culture": "iso:5110909"}, "total_litres", "", 0, 0},
		{"sizes", texts{"um": scallopDay2}, "mean_um", "", 100.096, 5e-4},
		{"sizes", texts{"um": scallopDay2}, "sd_um", "", 5.25, 5e-3},
		{"sizes", texts{"um": scallopDay2}, "median_um", "", 101.1, 1e-9},
		{"mesh", texts{"um": "80 90 100 110", "mesh": "75 105"}, "held_percent", "105", 25, 1e-9},
		// Benson and Krause 1984 at 25 degrees and 35, one atmosphere, as in package water.
		{"oxygen", texts{"celsius": "25", "salinity": "35"}, "full_mg_l", "", 6.7721, 5e-4},
		// US EPA 1989: at pH 8, 25 degrees and 35 about 4.4 to 5.6 % by the scale of the pH.
		{"ammonia", texts{"celsius": "25", "salinity": "35", "ph": "8", "total-mg-l": "1"}, "unionised_percent", "", 4.4, 0.5},
		// EOS-80 check value (UNESCO 1983) at 25 degrees of IPTS-68, 24.994 of today.
		// By mass balance at 25 degrees C: 93.38 L where volumes alone say 90.91.
		{"salinity", texts{"litres": "1000", "from": "36", "to": "33"}, "fresh_litres", "", 93.38, 0.7},
		{"salinity", texts{"litres": "1000", "from": "36", "to": "33"}, "by_volume_litres", "", 90.91, 0.005},
		// 1000 L from 30 to 35 at 25 degrees C: 5.283 kg of salts without water.
		{"salinity", texts{"litres": "1000", "from": "30", "to": "35"}, "salts_kg", "", 5.283, 5e-4},
		// EOS-80: 1.02686 at 60F/60F and 1.02435 at 25C/60F are both salinity 35.
		{"hydrometer", texts{"gravity": "1.02435", "celsius": "25"}, "salinity_25c_60f", "", 35, 0.01},
		{"hydrometer", texts{"gravity": "1.02637", "celsius": "25"}, "salinity_25c_25c", "", 35, 0.01},
		{"eyepiece", texts{"stage-um": "1000", "divisions": "40"}, "um_per_division", "", 25, 1e-12},
		{"density", texts{"celsius": "24.994", "salinity": "35"}, "kg_per_m3", "", 1023.343, 5e-4},
	} {
		t.Run(c.sum+" "+c.key+c.name, func(t *testing.T) {
			got, ok := value(t, run(t, c.sum, c.typed), c.key, c.name).(float64)
			if !ok || math.Abs(got-c.want) > c.off {
				t.Errorf("got %v, want %v within %v", got, c.want, c.off)
			}
		})
	}
}

func TestEverySumIsWhole(t *testing.T) {
	for _, s := range Sums() {
		t.Run(s.Name, func(t *testing.T) {
			a, problems := s.Run(s.Example())
			if len(problems) > 0 {
				t.Fatalf("its own example: %v", problems)
			}
			if len(a.Figures) == 0 || len(a.Sources) == 0 || s.Short == "" {
				t.Errorf("%d figures, %d sources, %q", len(a.Figures), len(a.Sources), s.Short)
			}
			seen := map[string]bool{}
			for _, in := range s.Inputs {
				if in.Label == "" || in.What == "" || in.Example == "" || seen[in.Name] {
					t.Errorf("input %+v lacks a word or is there twice", in)
				}
				seen[in.Name] = true
			}
			for _, f := range a.Figures {
				switch f.Value.(type) {
				case nil, float64, int, string, []float64, []Amount:
				default:
					t.Errorf("%s is a %T", f.Key, f.Value)
				}
			}
		})
	}
	if _, err := Named("tide"); err == nil || !strings.Contains(err.Error(), "acid, bleach, blend") {
		t.Errorf("an unknown sum: %v", err)
	}
}

func TestCautionsStandBesideNoFigureToo(t *testing.T) {
	for _, name := range []string{"acid", "bleach"} {
		s, _ := Named(name)
		a, _ := s.Run(nil)
		if len(a.Figures) != 0 || !strings.Contains(strings.Join(a.Cautions, "\n"), "Never acid and bleach") {
			t.Errorf("%s without input: %d figures, cautions %q", name, len(a.Figures), a.Cautions)
		}
	}
}

// TestProblems is bad input: each is named at its field, in one line.
func TestProblems(t *testing.T) {
	type texts = map[string]string
	feed := func(change texts) texts {
		typed := texts{"litres": "10", "want": "20000", "share": "iso:3 chaet:1", "culture": "iso:5110909 chaet:4855454"}
		for k, v := range change {
			typed[k] = v
		}
		return typed
	}
	for name, c := range map[string]struct {
		sum   string
		typed texts
		want  string
	}{
		"a fractional count":       {"count", texts{"live": "38.5,42", "sample-ml": "1", "holding-ml": "70"}, "live: 38.5 is not a count"},
		"a count of -1":            {"cells", texts{"counts": "-1", "chamber-ml": "1"}, "counts: -1 is not a count"},
		"a missing count":          {"cells", texts{"counts": "46,,50", "chamber-ml": "1"}, "counts: item 2: a number is missing"},
		"a word for a count":       {"cells", texts{"counts": "46 many", "chamber-ml": "1"}, `counts: item 2: "many" is not a number`},
		"an unknown chamber":       {"cells", texts{"counts": "46", "chamber-ml": "burker"}, `chamber-ml: "burker" is not known`},
		"a chamber of two":         {"cells", texts{"counts": "46", "chamber-ml": "neubauer-c"}, `chamber-ml: "neubauer-c" may be neubauer-centre or neubauer-corner`},
		"a chamber of no volume":   {"cells", texts{"counts": "46", "chamber-ml": "0"}, "chamber-ml: 0 is not possible"},
		"a dilution taken out":     {"cells", texts{"counts": "46", "chamber-ml": "1", "dilution": ""}, "dilution: is missing"},
		"no water":                 {"acid", texts{"litres": "0"}, "litres 0: must be more than 0"},
		"no water to feed":         {"feed", feed(texts{"litres": "0"}), "litres: 0 is not possible"},
		"an alga without culture":  {"feed", feed(texts{"share": "iso:3 kelp:1"}), `culture: no cells per mL known for "kelp"`},
		"a share adding to zero":   {"feed", feed(texts{"share": "iso:0 chaet:0"}), "share: the shares sum to 0"},
		"a share below zero":       {"feed", feed(texts{"share": "iso:-3"}), "share: iso: -3 is not possible"},
		"a culture without cells":  {"feed", feed(texts{"culture": "iso:0 chaet:1"}), "culture: iso: 0 is not possible"},
		"a share twice":            {"feed", feed(texts{"share": "iso:1 iso:2"}), "share: iso is given twice"},
		"a share without a number": {"feed", feed(texts{"share": "iso"}), `share: "iso:": write name:number`},
		"pH 81":                    {"ammonia", texts{"celsius": "27", "salinity": "35", "ph": "81", "total-mg-l": "1"}, "ph 81: must be between 4 and 11"},
		"stock over 100 percent":   {"acid", texts{"litres": "20", "stock-percent": "120"}, "stock-percent 120: must be between 0.5 and 40"},
		"stock taken out":          {"acid", texts{"litres": "20", "stock-percent": ""}, "stock-percent: is missing"},
		"a flag of neither":        {"acid", texts{"litres": "20", "made-up": "perhaps"}, `made-up: "perhaps": write yes or no`},
		"two decimal signs":        {"acid", texts{"litres": "2.0.1"}, `litres: "2.0.1" is not a number`},
		"infinity":                 {"acid", texts{"litres": "inf"}, `litres: "inf" is not a number`},
		"a number beyond":          {"acid", texts{"litres": strings.Repeat("9", 400)}, "is beyond any number"},
		"a reading without colon":  {"cool", texts{"start": "31", "room": "25", "want": "28", "read": "30"}, `read: "30:": write minutes:temperature`},
		"never reached":            {"cool", texts{"start": "31", "room": "25", "want": "24", "read": "30:30.2"}, "want 24: is never reached"},
		"a length of zero":         {"sizes", texts{"um": "0"}, "um: item 1: 0 cannot be"},
		"a factor of zero":         {"mesh", texts{"um": "90", "mesh": "75", "factor": "0"}, "factor 0: must be more than 0"},
		"an unknown input":         {"density", texts{"celsius": "25", "salinity": "35", "depth": "3"}, "depth: is nothing that density takes"},
		"nothing":                  {"density", nil, "celsius: is missing; as in 27"},
	} {
		t.Run(name, func(t *testing.T) {
			s, _ := Named(c.sum)
			a, problems := s.Run(c.typed)
			if len(problems) == 0 || !strings.Contains(problems[0].Error(), c.want) || strings.Contains(problems[0].Error(), "\n") {
				t.Fatalf("got %v, want %q", problems, c.want)
			}
			if len(a.Figures) > 0 {
				t.Errorf("%d figures stand beside the problem", len(a.Figures))
			}
		})
	}
}

func TestEveryProblemIsNamedAtOnce(t *testing.T) {
	s, _ := Named("blend")
	_, problems := s.Run(map[string]string{"litres": "much", "have": "31", "want": "2 8"})
	var got []string
	for _, p := range problems {
		got = append(got, p.Field)
	}
	if strings.Join(got, " ") != "litres want with" || !problems[2].Missing || problems[0].Missing {
		t.Errorf("got %v, want litres, want and the missing with", problems)
	}
}

func TestCellRemarks(t *testing.T) {
	for name, c := range map[string]struct {
		typed map[string]string
		want  string
	}{
		"uneven":    {map[string]string{"counts": "10 90", "chamber-ml": "sixteen-field"}, "differ more than chance"},
		"too dense": {map[string]string{"counts": "700", "chamber-ml": "neubauer-all", "dilution": "1"}, "dilute more"},
		"too thin":  {map[string]string{"counts": "5", "chamber-ml": "neubauer-large"}, "dilute less"},
	} {
		t.Run(name, func(t *testing.T) {
			if got := strings.Join(run(t, "cells", c.typed).Remarks, "\n"); !strings.Contains(got, c.want) {
				t.Errorf("remarks %q; want %q", got, c.want)
			}
		})
	}
	if got := run(t, "cells", map[string]string{"counts": "300", "chamber-ml": "neubauer-all"}).Remarks; len(got) != 1 {
		t.Errorf("a good count has remarks %q; want the border rule alone", got)
	}
}

func TestPairs(t *testing.T) {
	for text, want := range map[string]string{
		"iso:3,chaet:1":       "iso=3 chaet=1",
		"iso:3 chaet:1":       "iso=3 chaet=1",
		"iso:0,35; chaet:0,1": "iso=0.35 chaet=0.1",
		"iso:0,35,chaet:1":    "iso=0.35 chaet=1",
		"chaet 2:1, iso:3":    "chaet 2=1 iso=3",
		"30:30,2 60:29,6":     "30=30.2 60=29.6",
		"30:30.2,60:29.6":     "30=30.2 60=29.6",
		"iso":                 "iso=",
		" , ;":                "",
	} {
		var got []string
		for _, p := range pairs(text) {
			got = append(got, p[0]+"="+p[1])
		}
		if strings.Join(got, " ") != want {
			t.Errorf("pairs(%q) = %q, want %q", text, strings.Join(got, " "), want)
		}
	}
}

func TestLists(t *testing.T) {
	for text, want := range map[string][]float64{
		"98.5,97.9":       {98.5, 97.9},
		"98,5 97,9":       {98.5, 97.9},
		"98.5, 97.9, 100": {98.5, 97.9, 100},
		"98.5,97.9 100":   {98.5, 97.9, 100},
		"1,2,3 4":         {1, 2, 3, 4},
		"98;97":           {98, 97},
		"98,":             {98},
	} {
		got, err := readList(text, true)
		if err != nil || len(got) != len(want) {
			t.Errorf("%q = %v, %v; want %v", text, got, err, want)
			continue
		}
		for i := range got {
			if got[i] != want[i] {
				t.Errorf("%q = %v; want %v", text, got, want)
			}
		}
	}
	if got, err := readList("46,50 47", false); err != nil || len(got) != 3 {
		t.Errorf("counts 46,50 47 = %v, %v; want three whole numbers", got, err)
	}
}

// Whatever is typed, a sum answers or refuses: no figure is ever no number.
func FuzzRun(f *testing.F) {
	for i, s := range Sums() {
		for _, in := range s.Inputs {
			f.Add(uint8(i), in.Example, "1", "0")
		}
	}
	f.Fuzz(func(t *testing.T, which uint8, a, b, c string) {
		s := Sums()[int(which)%len(Sums())]
		typed := s.Example()
		for i, text := range []string{a, b, c} {
			if i < len(s.Inputs) {
				typed[s.Inputs[i].Name] = text
			}
		}
		answer, problems := s.Run(typed)
		for _, p := range problems {
			if p.Problem == "" {
				t.Errorf("%v refused without a reason", typed)
			}
		}
		for _, f := range answer.Figures {
			if x, ok := f.Value.(float64); ok && (math.IsNaN(x) || math.IsInf(x, 0)) {
				t.Errorf("%s %v: %s is %v", s.Name, typed, f.Key, x)
			}
		}
	})
}

func BenchmarkEverySum(b *testing.B) {
	for b.Loop() {
		for _, s := range Sums() {
			s.Run(s.Example())
		}
	}
}
