package batch

import (
	"strings"
	"testing"
)

func TestNumbersAreNotBroken(t *testing.T) {
	for words, want := range map[string]string{
		"5 267 (4 170 to 6 564) in":    "5_267 (4_170 to 6_564) in",
		"1 234 567":                    "1_234_567",
		"day 18 2026":                  "day 18 2026",
		"56.0 % of 1 150 µm, 27.5 °C":  "56.0_% of 1_150_µm, 27.5_°C",
		"176 readings of 8 days":       "176 readings of 8 days",
		"K3 700 larvae":                "K3_700 larvae", // costs a break, breaks nothing
		"":                             "",
		"ends in a digit and space 5 ": "ends in a digit and space 5 ",
	} {
		if got := strings.ReplaceAll(glued(words), glue, "_"); got != want {
			t.Errorf("glued(%q) = %q; want %q", words, got, want)
		}
	}
}

func TestFiguresWrapBetweenNumbers(t *testing.T) {
	s, _ := shown(t, "P-03")
	got := strings.Join(s.figureLines(figure{name: "alive", words: "there are 5 267 (4 170 to 6 564) of them"}, 29), "|")
	want := " alive    there are 5 267|          (4 170 to 6 564)|          of them"
	if got != want {
		t.Errorf("got %q; want %q", got, want)
	}
}

func TestManyOfANoun(t *testing.T) {
	for want, got := range map[string]string{
		"1 batch": many(1, "batch"), "2 batches": many(2, "batch"), "1 200 readings": many(1200, "reading"), "1 day": many(1, "day"),
	} {
		if got != want {
			t.Errorf("got %q; want %q", got, want)
		}
	}
}
