package growth

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

var rosner = numbers(`-0.25 0.68 0.94 1.15 1.20 1.26 1.26 1.34 1.38 1.43 1.49 1.49 1.55 1.56 1.58 1.65 1.69 1.70 1.76 1.77
	1.81 1.91 1.94 1.96 1.99 2.06 2.09 2.10 2.14 2.15 2.23 2.24 2.26 2.35 2.37 2.40 2.47 2.54 2.62 2.64 2.90 2.92 2.92 2.93
	3.21 3.26 3.30 3.59 3.68 4.30 4.64 5.34 5.42 6.01`)

func TestOddInSample(t *testing.T) {
	tests := []struct {
		name string // with its source
		um   []float64
		want []float64
	}{
		{"Iglewicz & Hoaglin 1993 (from memory)", numbers("2.1 2.6 2.4 2.5 2.3 2.1 2.3 2.6 8.2 8.3"), []float64{8.2, 8.3}},
		{"uranium mass spectrometer, NIST/SEMATECH handbook 1.3.5.17", numbers("199.31 199.53 200.19 200.82 201.92 201.95 202.18 245.57"), []float64{245.57}},
		{"masked for a plain z score, Seo 2006 (from memory)", numbers("3.2 3.4 3.7 3.7 3.8 3.9 4 4 4.1 4.2 4.7 4.8 14 15"), []float64{14, 15}},
		{"Rosner 1983, 54 points (from memory)", rosner, []float64{5.34, 5.42, 6.01}},
		{"bay scallop F2 tank B day 2: none", bayScallopDay2, nil},
		{"the same with the 42.0 of that batch's day 4", append(slices.Clone(bayScallopDay2), 42), []float64{42}},
		{"too few to tell", []float64{100, 101, 700}, nil},
		{"all alike", []float64{300, 300, 300, 300, 300}, nil},
		{"most tie, the rest one 10 um division off", []float64{300, 300, 300, 310, 310}, nil},
		{"most tie, one far off", []float64{300, 300, 300, 310, 300, 310, 300, 300, 620}, []float64{620}},
		{"a very even sample: 2.9 % off is within the floor", []float64{300, 300.1, 299.9, 300.2, 299.8, 308.7}, nil},
		{"and 3.1 % off is not", []float64{300, 300.1, 299.9, 300.2, 299.8, 309.4}, []float64{309.4}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := must(Summarize(tt.um)).Odd; !slices.Equal(got, tt.want) {
				t.Errorf("got %v, want %v", got, tt.want)
			}
		})
	}
}

func TestModifiedZ(t *testing.T) {
	tests := []struct {
		name string
		um   []float64
		x    float64
		want float64
	}{
		{"Iglewicz & Hoaglin 1993, 8.2", numbers("2.1 2.6 2.4 2.5 2.3 2.1 2.3 2.6 8.2 8.3"), 8.2, 25.856},
		{"Iglewicz & Hoaglin 1993, 8.3", numbers("2.1 2.6 2.4 2.5 2.3 2.1 2.3 2.6 8.2 8.3"), 8.3, 26.306},
		{"uranium, 245.57", numbers("199.31 199.53 200.19 200.82 201.92 201.95 202.18 245.57"), 245.57, 29.9627},
		{"Seo 2006, 15", numbers("3.2 3.4 3.7 3.7 3.8 3.9 4 4 4.1 4.2 4.7 4.8 14 15"), 15, 24.732},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, known := ModifiedZ(tt.um, tt.x)
			if !known {
				t.Fatal("not known")
			}
			near(t, "modified z", got, tt.want, 1e-4)
		})
	}
	if _, known := ModifiedZ([]float64{5, 5, 5, 9}, 9); known {
		t.Error("known where the median absolute deviation is zero")
	}
}

func TestOddWhileTyping(t *testing.T) {
	scallops := bayScallopDay2[:8]
	tests := []struct {
		name     string
		previous []float64
		x        float64
		want     bool
	}{
		{"the day-4 slip of 42.0 behind eight of its batch", scallops, 42.0, true},
		{"the same behind four", scallops[:4], 42.0, true},
		{"a digit too many", scallops, 1011, true},
		{"an ordinary one", scallops, 103.02, false},
		{"a small one", scallops, 90.43, false},
		{"nothing to compare with", scallops[:3], 42.0, false},
		{"not a number", nil, math.NaN(), true},
		{"alike so far, one division of 12.5 um more", []float64{300, 300, 300, 300}, 312.5, false},
		{"alike so far, a slip", []float64{300, 300, 300, 300}, 390, true},
		{"ten alike, 2.9 % more", slices.Repeat([]float64{300}, 10), 308.7, false},
		{"ten alike, 3.1 % more", slices.Repeat([]float64{300}, 10), 309.4, true},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := Odd(tt.previous, tt.x); got != tt.want {
				t.Errorf("got %v, want %v", got, tt.want)
			}
		})
	}
}

// A person who keys 30 ordinary lengths should hear the odd beep at most about once, and a reading
// keyed with a digit dropped or doubled should always be heard.
func TestOddRarelyCriesWolf(t *testing.T) {
	r := rand.New(rand.NewPCG(20, 26))
	const looks, readings = 400, 30
	alarms, missed := 0, 0
	for range looks {
		var typed []float64
		for range readings {
			x := 300 + 24*r.NormFloat64() // cv 8 %, as in bay scallop looks of about 10 days
			if Odd(typed, x) {
				alarms++
			}
			if len(typed) >= FewestForOdd && (!Odd(typed, x/10) || !Odd(typed, 10*x)) {
				missed++
			}
			typed = append(typed, x)
		}
	}
	if share := float64(alarms) / (looks * readings); share > 0.02 || share < 0.001 {
		t.Errorf("ordinary readings called odd: %.2f %%, want 0.1 to 2 %%", 100*share)
	}
	if missed > 0 {
		t.Errorf("%d slips by a factor of ten missed", missed)
	}
}

func TestOddProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		previous := drawLengths(t, 0, 40)
		x := rapid.Float64Range(ShortestUM, LongestUM).Draw(t, "x")
		odd := Odd(previous, x)
		reversed := slices.Clone(previous)
		slices.Reverse(reversed)
		if Odd(reversed, x) != odd {
			t.Fatal("the order matters")
		}
		if len(previous) == 0 {
			return
		}
		median := Median(previous)
		if Odd(previous, median) {
			t.Fatal("the median is odd")
		}
		if further := median + 2*(x-median); odd && !Odd(previous, further) {
			t.Fatalf("%g is odd and %g, further off, is not", x, further)
		}
	})
}
