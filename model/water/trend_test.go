package water

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
	"pgregory.net/rapid"
)

func TestTrend(t *testing.T) {
	band := Band{25, 31.5}
	for _, c := range []struct {
		name     string
		readings []Timed
		heading  Heading
		hours    float64
		trust    Trust
	}{
		{"no reading", nil, Untold, 0, NoTrend},
		{"one reading", []Timed{{0, 28}}, Untold, 0, NoTrend},
		{"one reading, too warm", []Timed{{0, 32}}, TooWarm, 0, Read},
		{"one reading, at the edge", []Timed{{0, 31.5}}, Untold, 0, NoTrend},
		{"two within a minute", []Timed{{0, 28}, {0.01, 29}}, Untold, 0, NoTrend},
		{"two, falling", []Timed{{0, 28}, {2, 27}}, TooCold, 4, Few},
		{"two, the same", []Timed{{0, 28}, {2, 28}}, Inside, 0, Flat},
		{"four, falling steadily", []Timed{{0, 29}, {1, 28.5}, {2, 28}, {3, 27.5}}, TooCold, 5, Fair},
		{"four, rising steadily", []Timed{{0, 29}, {1, 29.5}, {2, 30}, {3, 30.5}}, TooWarm, 2, Fair},
		{"the same out of order", []Timed{{2, 30}, {0, 29}, {3, 30.5}, {1, 29.5}}, TooWarm, 2, Fair},
		{"falling slowly, the edge far off", []Timed{{0, 29}, {1, 28.8}, {2, 28.6}, {3, 28.4}}, TooCold, 17, Far},
		{"scatter without a way", []Timed{{0, 28}, {1, 28.3}, {2, 27.9}, {3, 28.2}}, Inside, 0, Flat},
		{"a tenth in two hours is what a thermometer may hide", []Timed{{0, 28}, {1, 28}, {2, 28.1}}, Inside, 0, Flat},
		{"the same on another day", []Timed{{100, 29}, {101, 29.5}, {102, 30}, {103, 30.5}}, TooWarm, 2, Fair},
		{"two within a minute on another day", []Timed{{100, 28}, {100.01, 29}}, Untold, 0, NoTrend},
		{"the edge a little too far off", []Timed{{0, 29}, {1, 28.6}, {2, 28.2}, {3, 27.8}}, TooCold, 7, Far},
		{"the edge as far as may be", []Timed{{0, 29.5}, {1, 29}, {2, 28.5}, {3, 28}}, TooCold, 6, Fair},
		{"the line is out though the last reading is not", []Timed{{0, 29}, {1, 27.8}, {2, 26.2}, {3, 25.05}, {4, 25}}, TooCold, 0, Fair},
		{"on the low edge, steady", []Timed{{0, 25}, {1, 25}, {2, 25}}, Inside, 0, Flat},
		{"already out, still falling", []Timed{{0, 26}, {1, 25.5}, {2, 25}, {3, 24.5}}, TooCold, 0, Read},
		{"already out, coming back", []Timed{{0, 33}, {1, 32.6}, {2, 32.2}, {3, 31.8}}, TooWarm, 0, Read},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := must(NewTrend(band, c.readings))
			if got.Heading != c.heading || got.Trust != c.trust || got.Readings != len(c.readings) {
				t.Errorf("got %+v, want %s, %s", got, c.heading, c.trust)
			}
			near(t, "hours", got.Hours, c.hours, 1e-9)
		})
	}
}

func TestTrendRefuses(t *testing.T) {
	for _, band := range []Band{{31, 25}, {28, 28}, {math.NaN(), 31}, {25, math.NaN()}} {
		_, err := NewTrend(band, nil)
		refused(t, err, "bearable", "below the second")
	}
	for _, x := range notNumbers() {
		_, err := NewTrend(Band{25, 31}, []Timed{{0, 28}, {1, x}})
		refused(t, err, "celsius", "")
		_, err = NewTrend(Band{25, 31}, []Timed{{x, 28}})
		refused(t, err, "hours", "")
	}
}

func TestTrendLeavesItsReadingsAlone(t *testing.T) {
	readings := []Timed{{2, 30}, {0, 29}, {1, 29.5}}
	must(NewTrend(Band{25, 31}, readings))
	if readings[0] != (Timed{2, 30}) || readings[2] != (Timed{1, 29.5}) {
		t.Errorf("the caller's readings were reordered: %v", readings)
	}
}

// The slope against gonum; its margin against the text-book formula
// s/sqrt(Sxx) with Student's t from gonum.
func TestLineAgainstGonum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(3, 40).Draw(t, "n")
		var readings []Timed
		var x, y []float64
		for i := range n {
			r := Timed{float64(i), rapid.Float64Range(20, 35).Draw(t, "celsius")}
			readings = append(readings, r)
			x, y = append(x, r.Hours), append(y, r.Celsius)
		}
		b0, b1 := stat.LinearRegression(x, y, nil, false)
		l := fitLine(readings)
		near(t, "slope", l.slope, b1, 1e-9)
		near(t, "at 7 hours", l.at(7), b0+7*b1, 1e-8)
		var rest float64
		for i := range x {
			rest += math.Pow(y[i]-b0-b1*x[i], 2)
		}
		sxx := stat.Variance(x, nil) * float64(n-1)
		want := studentT(min(n-2, 30)) * math.Sqrt(rest/float64(n-2)/sxx)
		if want < 1.96*readTo/math.Sqrt(sxx) {
			want = 1.96 * readTo / math.Sqrt(sxx)
		}
		near(t, "margin over text-book margin", l.margin/want, 1, 3e-4)
	})
}

func studentT(df int) float64 {
	return distuv.StudentsT{Mu: 0, Sigma: 1, Nu: float64(df)}.Quantile(0.975)
}

func TestStudentTable(t *testing.T) {
	for df := 1; df <= 30; df++ {
		near(t, "t", t975(df), studentT(df), 0.00051)
	}
	if t975(200) < studentT(200) {
		t.Error("beyond the table the margin must not be too narrow")
	}
}
