package growth

import (
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/stat"
	"pgregory.net/rapid"
)

func TestFitLinePublished(t *testing.T) {
	womenHeight := numbers("58 59 60 61 62 63 64 65 66 67 68 69 70 71 72")
	womenWeight := numbers("115 117 120 123 126 129 132 135 139 142 146 150 154 159 164")
	anscombeX := numbers("10 8 13 9 11 14 6 4 12 7 5")
	anscombeY := numbers("8.04 6.95 7.58 8.81 8.33 9.96 7.24 4.26 10.84 4.82 5.68")
	tests := []struct {
		name                   string // with its source
		x, y                   []float64
		slope, slopeSE         float64
		intercept, interceptSE float64
		sd, r2                 float64
		low, high              float64
		tolerance              float64
	}{
		{
			"NIST StRD Norris, certified; interval with t(34)", norrisX, norrisY, 1.00211681802045, 0.429796848199937e-3,
			-0.262323073774029, 0.232818234301152, 0.884796396144373, 0.999993745883712, 1.0012433657, 1.0029902703, 1e-9,
		},
		{
			"Anscombe 1973, first set, R lm", anscombeX, anscombeY, 0.5000909091, 0.1179055006,
			3.0000909091, 1.1247467908, 1.236603323, 0.6665424595, 0.233370136385, 0.766811681797, 1e-9,
		},
		{
			"R women, weight ~ height", womenHeight, womenWeight, 3.45, 0.0911364957,
			-87.5166666667, 5.936944, 1.525005254, 0.9910098327, 3.25311157173, 3.64688842827, 1e-6,
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			f := must(FitLine(looksOf(tt.x, tt.y)))
			near(t, "slope", f.Slope, tt.slope, tt.tolerance)
			near(t, "slope se", f.SlopeSE, tt.slopeSE, tt.tolerance)
			near(t, "intercept", f.Intercept, tt.intercept, tt.tolerance)
			near(t, "intercept se", f.InterceptSE, tt.interceptSE, tt.tolerance)
			near(t, "residual sd", f.ResidualSD, tt.sd, tt.tolerance)
			near(t, "R2", f.RSquared, tt.r2, tt.tolerance)
			slope, known := f.SlopeInterval()
			if !known {
				t.Fatal("no interval")
			}
			nearInterval(t, "slope", slope, tt.low, tt.high, tt.tolerance)
		})
	}
}

// The bay scallop means through R 4.2.2: lm(m ~ a, weights = n) and lm(log(m) ~ a, weights = n),
// confint, and predict(interval = "confidence").
func TestFitBayScallop(t *testing.T) {
	early := func(looks []Look) []Look {
		return slices.DeleteFunc(slices.Clone(looks), func(l Look) bool { return l.AgeDays > 14 })
	}
	f2 := slices.Concat(bayScallopF2...)
	tests := []struct {
		name                string
		fit                 func([]Look) (Fit, error)
		looks               []Look
		intercept, slope    float64
		sd, r2, squares     float64
		slopeLow, slopeHigh float64
		age, at             float64 // in the scale of the fit
		atLow, atHigh       float64
	}{
		{
			"F1 to day 10, line", FitLine, bayScallopF1[:5], 64.2385970923, 11.7975744147, 153.662674746, 0.940309394982, 70836.6528301,
			6.33608890524, 17.2590599242, 14, 229.404638898, 187.460777166, 271.34850063,
		},
		{
			"F1 to day 10, exponential", FitExponential, bayScallopF1[:5], 4.355329926685, 0.0873629132951, 1.01295623368, 0.952104402091, 63761.5233593,
			0.0513603785149, 0.123365448075, 14, 5.57841071282, 5.30191353303, 5.85490789261,
		},
		{
			"F1, line", FitLine, bayScallopF1, -17.8468054743, 24.9615490095, 750.456168984, 0.848415245859, 2815922.30783,
			12.8320882352, 37.0910097839, 20, 481.384174717, 329.838301369, 632.930048064,
		},
		{
			"F1, exponential", FitExponential, bayScallopF1, 4.229720369664, 0.107799729663, 1.29353735139, 0.972325874443, 599653.198923,
			0.0868925651779, 0.128706894148, 20, 6.38571496292, 6.12450017687, 6.64692974898,
		},
		{
			"F2 to day 14, line", FitLine, early(f2), 81.41766446277, 8.40868408423, 30.751308508, 0.974140598982, 17967.2165242,
			7.75083865116, 9.0665295173, 15, 207.547925726, 201.926799923, 213.169051529,
		},
		{
			"F2, exponential", FitExponential, f2, 4.4859199138127, 0.0617817571867, 0.198949696156, 0.985372827578, 34395.456175,
			0.0584535451499, 0.0651099692234, 15, 5.41264627161, 5.38457080912, 5.4407217341,
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			f := must(tt.fit(tt.looks))
			near(t, "intercept", f.Intercept, tt.intercept, 1e-9)
			near(t, "slope", f.Slope, tt.slope, 1e-9)
			near(t, "residual sd", f.ResidualSD, tt.sd, 1e-9)
			near(t, "R2", f.RSquared, tt.r2, 1e-9)
			near(t, "squares", f.SquaresUM, tt.squares, 1e-9)
			slope, _ := f.SlopeInterval()
			nearInterval(t, "slope", slope, tt.slopeLow, tt.slopeHigh, 1e-9)
			near(t, "at", f.scale(f.At(tt.age)), tt.at, 1e-9)
			rate, _ := f.PerDayInterval(tt.age)
			per := 1.0
			if f.Shape == Exponential {
				per = math.Exp(tt.at) // the length there
			}
			nearInterval(t, "um per day", rate, per*tt.slopeLow, per*tt.slopeHigh, 1e-9)
			mean, known := f.MeanInterval(tt.age)
			if !known {
				t.Fatal("no interval")
			}
			nearInterval(t, "mean", Interval{f.scale(mean.Low), f.scale(mean.High)}, tt.atLow, tt.atHigh, 1e-9)
		})
	}
}

func TestFitExponentialExact(t *testing.T) {
	var looks []Look
	for age := 0.0; age <= 10; age += 2 {
		looks = append(looks, Look{AgeDays: age, MeanUM: 80 * math.Exp(0.05*age), N: 20})
	}
	f := must(FitExponential(looks))
	near(t, "rate", f.Slope, 0.05, 1e-12)
	near(t, "at hatch", f.At(0), 80, 1e-12)
	doubling, known := f.DoublingDays()
	if !known {
		t.Fatal("no doubling time")
	}
	near(t, "doubling", doubling, 13.8629436112, 1e-9) // ln 2 / 0.05
	near(t, "um per day at day 10", f.PerDay(10), 0.05*80*math.Exp(0.5), 1e-12)
	if _, known := must(FitLine(looks)).DoublingDays(); known {
		t.Error("a straight line has a doubling time")
	}
}

// Three looks on one line by luck: the readings' own scatter keeps the interval open. With sd 20 and
// 60 readings, t(57) x 20 / sqrt(sxx), sxx = 20 x (4 + 0 + 4).
func TestFitFloorFromReadings(t *testing.T) {
	looks := []Look{{2, 320, 20, 20}, {4, 370, 20, 20}, {6, 420, 20, 20}}
	f := must(FitLine(looks))
	if f.ResidualSD > 1e-9 {
		t.Fatalf("residual sd %g, want none", f.ResidualSD)
	}
	slope, _ := f.SlopeInterval()
	half := 2.002465459 * 20 / math.Sqrt(160) // t(57): R qt(.975, 57)
	nearInterval(t, "slope", slope, 25-half, 25+half, 1e-8)
}

func TestFitTwoDays(t *testing.T) {
	f := must(FitLine([]Look{{2, 320, 20, 20}, {2.3, 330, 20, 20}, {6, 420, 20, 20}}))
	if f.HasIntervals || f.Days != 2 {
		t.Fatalf("got %+v, want two days without intervals", f)
	}
	if _, known := f.SlopeInterval(); known {
		t.Error("a slope interval from two days")
	}
	if _, known := f.MeanInterval(4); known {
		t.Error("a mean interval from two days")
	}
	if _, known := f.PerDayInterval(4); known {
		t.Error("a rate interval from two days")
	}
}

func TestFitRefuses(t *testing.T) {
	tests := []struct {
		name  string
		looks []Look
		words string
	}{
		{"nothing", nil, "looks of 0 days"},
		{"one day, two tanks", []Look{{2.1, 100, 5, 20}, {2.4, 104, 5, 20}}, "looks of 1 day:"},
		{"a length that is none", []Look{{2, 100, 5, 20}, {4, -3, 5, 20}}, "not a length"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := FitLine(tt.looks)
			refuses(t, err, tt.words)
			_, err = Grow(tt.looks)
			refuses(t, err, tt.words)
		})
	}
}

// No other line has smaller weighted squares, and gonum's weighted regression finds the same one.
func TestFitIsLeastSquares(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		looks := drawLooks(t, 2)
		f := must(FitLine(looks))
		var x, y, w []float64
		for _, l := range looks {
			x, y, w = append(x, l.AgeDays), append(y, l.MeanUM), append(w, float64(l.N))
		}
		intercept, slope := stat.LinearRegression(x, y, w, false)
		if math.Abs(intercept-f.Intercept) > 1e-5 || math.Abs(slope-f.Slope) > 1e-5 {
			t.Fatalf("got %g + %g x, want %g + %g x", f.Intercept, f.Slope, intercept, slope)
		}
		squares := func(a, b float64) (sum float64) {
			for i := range x {
				sum += w[i] * (y[i] - a - b*x[i]) * (y[i] - a - b*x[i])
			}
			return sum
		}
		least := squares(f.Intercept, f.Slope)
		for _, step := range [][2]float64{{0.1, 0}, {-0.1, 0}, {0, 0.01}, {0, -0.01}, {0.1, -0.01}, {-0.1, 0.01}} {
			if squares(f.Intercept+step[0], f.Slope+step[1]) < least {
				t.Fatalf("%g + %g x has smaller squares", f.Intercept+step[0], f.Slope+step[1])
			}
		}
	})
}
