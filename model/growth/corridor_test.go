package growth

import (
	"testing"
)

// A room's own corridor, invented.
var house = Corridor{{2, 320, 380}, {6, 400, 500}, {12, 520, 680}}

func TestCorridorPlace(t *testing.T) {
	tests := []struct {
		name     string
		age, um  float64
		position Position
		word     string
	}{
		{"before the first band", 1.9, 100, Unjudged, "not judged"},
		{"on its first day, at its low end", 2, 320, Within, "within"},
		{"at its high end", 5.9, 380, Within, "within"},
		{"above", 5.9, 380.1, Above, "above"},
		{"the next band holds from its day", 6, 399.9, Below, "below"},
		{"the last band holds for good", 40, 600, Within, "within"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got := house.Place(tt.age, tt.um)
			if got != tt.position || got.String() != tt.word {
				t.Errorf("got %v, want %v", got, tt.position)
			}
		})
	}
}

func TestCorridorRunningBelow(t *testing.T) {
	tests := []struct {
		name   string
		looks  []Look
		run    int
		behind bool
	}{
		{"none", nil, 0, false},
		{"only the latest", []Look{{2, 350, 0, 20}, {6, 390, 0, 20}}, 1, false},
		{"the latest two", []Look{{6, 390, 0, 20}, {2, 350, 0, 20}, {8, 395, 0, 20}}, 2, true},
		{"two of one day are one look", []Look{{2, 350, 0, 20}, {6.0, 390, 0, 20}, {6.1, 395, 0, 20}}, 1, false},
		{"two tanks of one day, pooled within", []Look{{6.0, 390, 0, 20}, {6.1, 430, 0, 20}}, 0, false},
		{"caught up", []Look{{6, 390, 0, 20}, {8, 395, 0, 20}, {10, 450, 0, 20}}, 0, false},
		{"before the first band", []Look{{0, 100, 0, 20}, {1, 100, 0, 20}}, 0, false},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			run, err := house.RunningBelow(tt.looks)
			behind := must(house.Behind(tt.looks))
			if err != nil || run != tt.run || behind != tt.behind {
				t.Errorf("got %d, %v, %v; want %d, %v", run, behind, err, tt.run, tt.behind)
			}
		})
	}
	_, err := house.Behind([]Look{{2, -1, 0, 20}})
	refuses(t, err, "not a length")
}

func TestCorridorCheck(t *testing.T) {
	if err := house.Check(); err != nil {
		t.Fatalf("refused: %v", err)
	}
	tests := []struct {
		name     string
		corridor Corridor
		words    string
	}{
		{"upside down", Corridor{{2, 380, 320}}, "band 1"},
		{"empty", Corridor{{2, 320, 380}, {4, 400, 400}}, "band 2"},
		{"out of order", Corridor{{6, 400, 500}, {2, 320, 380}}, "order of age"},
		{"twice from one day", Corridor{{6, 400, 500}, {6, 420, 500}}, "order of age"},
		{"before hatch", Corridor{{-1, 320, 380}}, "from 0 on"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) { refuses(t, tt.corridor.Check(), tt.words) })
	}
}
