package growth

import (
	"errors"
	"math"
	"testing"
)

func TestCheckLength(t *testing.T) {
	tests := []struct {
		name  string
		um    float64
		words string // "" is accepted
	}{
		{"conch at hatch, 290 to 300 um (Brito-Manzano & Aldana Aranda 2004)", 300, ""},
		{"conch at metamorphosis (same source)", 902, ""},
		{"a slip that a look shows as odd", 42, ""},
		{"the shortest", ShortestUM, ""},
		{"the longest", LongestUM, ""},
		{"shorter", 19.9, "below 20 um"},
		{"longer", 5000.1, "above 5000 um"},
		{"zero", 0, "not above zero"},
		{"negative", -300, "not above zero"},
		{"not a number", math.NaN(), "not a number"},
		{"infinite", math.Inf(1), "not a number"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			err := CheckLength(tt.um)
			if tt.words == "" {
				if err != nil {
					t.Fatalf("refused: %v", err)
				}
				return
			}
			refuses(t, err, tt.words)
			if _, ok := errors.AsType[*LengthError](err); !ok {
				t.Errorf("a %T, want a *LengthError", err)
			}
		})
	}
}

func TestCalibrate(t *testing.T) {
	tests := []struct {
		name             string
		stage, divisions float64
		want             float64
		words            string
	}{
		{"1 mm over 80 divisions", 1000, 80, 12.5, ""},
		{"100 um over 40 divisions", 100, 40, 2.5, ""},
		{"parts of a division", 1000, 64.5, 15.503875969, ""},
		{"no length", 0, 40, 0, "stage length"},
		{"no divisions", 1000, 0, 0, "divisions"},
		{"negative divisions", 1000, -4, 0, "divisions"},
		{"not a number", math.NaN(), 4, 0, "stage length"},
		{"no microscope", 1e12, 1e-300, 0, "no microscope"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, err := Calibrate(tt.stage, tt.divisions)
			if tt.words != "" {
				refuses(t, err, tt.words)
				return
			}
			if err != nil {
				t.Fatal(err)
			}
			near(t, "um per division", got, tt.want, 1e-9)
		})
	}
}
