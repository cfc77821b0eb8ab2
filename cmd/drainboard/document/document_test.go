package document

import (
	"errors"
	"math"
	"strings"
	"testing"

	"drainboard/tui/chart"
	"drainboard/tui/text"
)

func TestWhatDoesNotFitGoesOnBeneath(t *testing.T) {
	d := Document{Title: "Title", Under: []string{"under"}, Sections: []Section{
		{Title: "figures", Figures: []Figure{{"a", "one"}, {"longer", strings.Repeat("word ", 20)}}},
		{Title: "table", Table: Table{
			Head: []string{">N", "<WHEN", "WHAT"},
			Rows: [][]string{{"1", "12 Nov 09:00", "short"}, {"12", "", strings.Repeat("and so on ", 9)}},
		}},
		{Title: "lines", Lines: []string{strings.Repeat("a sentence goes on ", 6)}},
	}}
	want := `Title
under

FIGURES
a       one
longer  word word word word word word word word word word word word word word
        word word word word word word

TABLE
 N  WHEN          WHAT
 1  12 Nov 09:00  short
12                and so on and so on and so on and so on and so on and so on
                  and so on and so on and so on

LINES
a sentence goes on a sentence goes on a sentence goes on a sentence goes on a
  sentence goes on a sentence goes on
`
	if got := d.Text(); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

// TestNothingIsLost: tables of any cells stay within the width, and every letter
// of every cell is there.
func TestNothingIsLost(t *testing.T) {
	cells := []string{"", "x", "Ångström-Ñandú", strings.Repeat("w", 100), "日本語の長い名前", "a b c d e f g h i j k l m n o p q r s t u v"}
	for columns := 1; columns <= 9; columns++ {
		table := Table{Head: make([]string, columns)}
		for i := range table.Head {
			table.Head[i] = []string{"NAME", ">FIGURE", "<WHEN"}[i%3]
		}
		for r := range cells {
			row := make([]string, columns)
			for i := range row {
				row[i] = cells[(r+i)%len(cells)]
			}
			table.Rows = append(table.Rows, row)
		}
		lines := table.lines(Width)
		letters := 0
		for _, l := range lines {
			if text.Width(l) > Width {
				t.Fatalf("%d columns: %d cells: %q", columns, text.Width(l), l)
			}
			letters += strings.Count(l, "w")
		}
		want := 0
		for _, row := range table.Rows {
			for _, c := range row {
				want += strings.Count(c, "w")
			}
		}
		if letters != want {
			t.Errorf("%d columns: %d letters of %d", columns, letters, want)
		}
	}
}

func TestADrawingStaysWithinItsFrame(t *testing.T) {
	inf := math.Inf(1)
	line := func(x float64) float64 { return 100 + 20*x }
	cases := map[string]chart.Scatter{
		"nothing":   {Empty: "no lengths"},
		"one point": {Points: []chart.Point{{X: 3, Y: 400}}},
		"open mark": {
			Points: []chart.Point{{X: 1, Y: 120, Low: 110, High: 130}, {X: 9, Y: 280}},
			Curves: []chart.Curve{{At: line, From: 1, To: 9}, {At: line, From: 9, To: 50, Forecast: true}},
			Levels: []chart.Level{{Y: 1100, Name: "ready"}},
			Marks:  []chart.Mark{{X: 50, Low: 40, High: inf, Name: "ready 2026"}},
		},
		"corridor":  {Points: []chart.Point{{X: 1, Y: 120}, {X: 2, Y: 130}}, Corridor: []chart.Span{{FromX: 0, ToX: inf, Low: 100, High: 200}}},
		"no number": {Points: []chart.Point{{X: math.NaN(), Y: inf}, {X: 1, Y: 2, Low: 1, High: 3}}},
		"per cent":  {Y: chart.Axis{Low: 0, High: 100}, Points: []chart.Point{{X: 1, Y: 90}}},
	}
	for name, s := range cases {
		t.Run(name, func(t *testing.T) {
			var b strings.Builder
			d := Document{Title: name, Sections: []Section{{Title: "s", Chart: &s}}}
			if err := d.HTML(&b); err != nil {
				t.Fatal(err)
			}
			html := b.String()
			for _, wrong := range []string{"NaN", "Inf", "ZgotmplZ", "<no value>"} {
				if strings.Contains(html, wrong) {
					t.Errorf("the drawing holds %s", wrong)
				}
			}
			if !strings.Contains(html, "</svg>") {
				t.Error("nothing was drawn")
			}
		})
	}
}

func TestTicks(t *testing.T) {
	for name, c := range map[string]struct {
		r    interval
		want []string
	}{
		"lengths":  {interval{200, 1200}, []string{"200", "400", "600", "800", "1000", "1200"}},
		"days":     {interval{0.25, 16.9}, []string{"5", "10", "15"}},
		"per cent": {interval{0, 100}, []string{"0", "20", "40", "60", "80", "100"}},
		"small":    {interval{0, 0.3}, []string{"0", "0.05", "0.1", "0.15", "0.2", "0.25", "0.3"}},
		"below 0":  {interval{-2, 2}, []string{"-2", "-1", "0", "1", "2"}},
	} {
		var got []string
		for _, v := range ticks(c.r) {
			got = append(got, tickText(v))
		}
		if strings.Join(got, " ") != strings.Join(c.want, " ") {
			t.Errorf("%s: got %v; want %v", name, got, c.want)
		}
	}
}

func TestHTMLEscapesWhatPeopleWrite(t *testing.T) {
	bad := `"><script>alert(1)</script>` + "\x1b[31m\u202e"
	d := Document{Title: bad, Under: []string{bad}, Sections: []Section{{
		Title: "s" + bad, Figures: []Figure{{bad, bad}}, Table: Table{Head: []string{">" + bad}, Rows: [][]string{{bad}}}, Lines: []string{bad},
		Chart: &chart.Scatter{Title: bad, X: chart.Axis{Title: bad}, Empty: bad, Levels: []chart.Level{{Y: 1, Name: bad}}, Marks: []chart.Mark{{X: 1, Name: bad}}},
	}}}
	var b strings.Builder
	if err := d.HTML(&b); err != nil {
		t.Fatal(err)
	}
	if strings.Contains(strings.ToLower(b.String()), "<script") || strings.ContainsAny(b.String(), "\x1b\u202e") {
		t.Errorf("a text came through as it was:\n%s", b.String())
	}
	if err := d.HTML(failing{}); err == nil {
		t.Error("a writer that takes nothing is no error")
	}
}

// failing takes nothing, like a full disk.
type failing struct{}

func (failing) Write([]byte) (int, error) { return 0, errors.New("no space left on device") }
