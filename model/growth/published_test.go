package growth

import (
	"math"
	"strconv"
	"strings"
	"testing"
)

// Published data that several tests share. R values were printed by R 4.2.2.

// norris: NIST StRD linear regression "Norris", x and y.
var (
	norrisX = numbers(`0.2 337.4 118.2 884.6 10.1 226.5 666.3 996.3 448.6 777.0 558.2 0.4 0.6 775.5 666.9 338.0 447.5 11.6
		556.0 228.1 995.8 887.6 120.2 0.3 0.3 556.8 339.1 887.2 999.0 779.0 11.1 118.3 229.2 669.1 448.9 0.5`)
	norrisY = numbers(`0.1 338.8 118.1 888.0 9.2 228.1 668.5 998.5 449.1 778.9 559.2 0.3 0.1 778.1 668.8 339.3 448.9 10.8
		557.7 228.3 998.0 888.8 119.6 0.3 0.6 557.6 339.3 888.0 998.5 778.9 10.2 117.6 228.9 668.4 449.2 0.2`)
)

// michelson: NIST StRD univariate "Michelso" is 299 + km/s / 1000 of these 100 speeds (R `morley`).
var michelsonSpeed = numbers(`850 740 900 1070 930 850 950 980 980 880 1000 980 930 650 760 810 1000 1000 960 960
	960 940 960 940 880 800 850 880 900 840 830 790 810 880 880 830 800 790 760 800
	880 880 880 860 720 720 620 860 970 950 880 910 850 870 840 840 850 840 840 840
	890 810 810 820 800 770 760 740 750 760 910 920 890 860 880 720 840 850 850 780
	890 840 780 810 760 810 790 810 820 850 870 870 810 740 810 940 950 800 810 870`)

// sleep: R `sleep`, extra hours, groups 1 and 2 (Cushny & Peebles 1905).
var (
	sleepOne = numbers("0.7 -1.6 -0.2 -1.2 -0.1 3.4 3.7 0.8 0.0 2.0")
	sleepTwo = numbers("1.9 0.8 1.1 0.1 -0.1 4.4 5.5 1.6 4.6 3.4")
)

// bayScallopDay2: shell lengths, um, bay scallop F2 ambient, tank B, day 2 (US National Marine
// Fisheries Service, Northeast Fisheries Science Center, public data of 2022). Published with it:
// mean 100.096, SD 5.25.
var bayScallopDay2 = numbers(`98.49 97.88 100.05 101.1 106.35 101.43 96.96 102.02 103.02 92.34 104.24 101.61 101.72 100.59
	107.72 105.34 96.46 106.66 95.74 92.05 101.66 93.27 94.68 90.43 110.59`)

// bayScallopF1: the same source, F1 of 2021 in ambient water, five tanks pooled.
var bayScallopF1 = []Look{
	{2, 96.57, 6.14, 147},
	{4, 108.07, 8.57, 181},
	{6, 122.30, 17.37, 244},
	{8, 164.53, 25.44, 490},
	{10, 180.18, 29.19, 230},
	{14, 316.29, 75.05, 160},
	{18, 546.73, 107.62, 95},
}

// bayScallopF2: the same source, F2 of 2022 in ambient water, tanks A, B and C.
var bayScallopF2 = [][]Look{
	{
		{2, 104.90, 4.62, 56},
		{4, 111.18, 6.14, 44},
		{6, 127.49, 10.45, 36},
		{8, 139.28, 16.67, 22},
		{10, 165.42, 28.67, 19},
		{12, 176.73, 27.17, 78},
		{14, 201.13, 8.78, 11},
		{21, 350.64, 46.08, 13},
	},
	{
		{2, 100.10, 5.25, 25},
		{4, 109.31, 7.03, 24},
		{6, 132.97, 11.35, 19},
		{8, 144.39, 21.17, 20},
		{10, 168.93, 23.84, 25},
		{12, 187.74, 19.05, 44},
		{14, 206.63, 0, 4},
		{21, 349.68, 41.36, 14},
	},
	{
		{2, 104.54, 5.03, 33},
		{4, 109.61, 12.72, 41},
		{6, 129.83, 13.64, 23},
		{8, 147.90, 16.09, 39},
		{10, 177.45, 32.04, 15},
		{12, 188.81, 23.35, 41},
		{14, 203.05, 13.88, 7},
		{21, 315.10, 27.46, 6},
	},
}

// meshRecord: the same source, F2: the sieve each drop was made on and the lengths of that day, um.
var meshRecord = []struct{ day, mesh, mean, smallest, p05 float64 }{
	{2, 36, 102.3, 83.7, 91.5},
	{4, 54, 108.7, 95.0, 97.3},
	{6, 75, 127.8, 107.8, 111.6},
	{8, 75, 143.1, 103.7, 117.0},
	{10, 75, 164.2, 109.3, 121.1},
	{12, 75, 177.8, 101.6, 126.0},
	{14, 100, 197.4, 160.8, 172.6},
}

// looksOf makes looks of one reading each, so that a weighted fit is an ordinary one.
func looksOf(x, y []float64) []Look {
	looks := make([]Look, len(x))
	for i := range x {
		looks[i] = Look{AgeDays: x[i], MeanUM: y[i], N: 1}
	}
	return looks
}

func numbers(text string) []float64 {
	var list []float64
	for _, word := range strings.Fields(text) {
		x, err := strconv.ParseFloat(word, 64)
		if err != nil {
			panic(err)
		}
		list = append(list, x)
	}
	return list
}

// near fails unless got is within a relative tolerance of want, or an absolute one about zero.
func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if math.IsNaN(got) || math.Abs(got-want) > tolerance*max(1, math.Abs(want)) {
		t.Errorf("%s = %.12g, want %.12g", what, got, want)
	}
}

func nearInterval(t *testing.T, what string, got Interval, low, high, tolerance float64) {
	t.Helper()
	near(t, what+" low", got.Low, low, tolerance)
	near(t, what+" high", got.High, high, tolerance)
}

// must takes the result of a call that the test needs to succeed.
func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

// refuses fails unless err is one clear line that holds the given words.
func refuses(t *testing.T, err error, words string) {
	t.Helper()
	if err == nil {
		t.Fatalf("no error, want one with %q", words)
	}
	if !strings.Contains(err.Error(), words) || strings.Contains(err.Error(), "\n") {
		t.Errorf("error %q, want one line with %q", err, words)
	}
}
