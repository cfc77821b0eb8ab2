package wash

import (
	"slices"
	"strings"
	"testing"
)

// Every caution a person must meet beside the figure, as words that have to be
// there. Sources: 29 CFR 1910.151(c) for the eyewash, CDC MMWR reports for acid
// meeting bleach, safety data sheets for the rest.
func TestCautionsSay(t *testing.T) {
	both := []string{
		"Label and safety data sheet first", "Goggles", "gloves", "fresh air", "eyewash",
		"Never acid and bleach", "hypochlorite", "drain", "chlorine gas", "leave at once", "call for help",
		"local rules", "licensed help", "at least 15 minutes", "this bottle's label",
	}
	for _, c := range []struct {
		name  string
		lines []string
		words []string
	}{
		{"acid", AcidCautions(), append([]string{"Acid into water, never the reverse", "zinc", "aluminium", "small portions"}, both...)},
		{"bleach", BleachCautions(), append([]string{"Clean off dirt", "no chlorine is left", "old bleach is weaker"}, both...)},
	} {
		t.Run(c.name, func(t *testing.T) {
			text := strings.Join(c.lines, "\n")
			for _, words := range c.words {
				if !strings.Contains(text, words) {
					t.Errorf("no line says %q", words)
				}
			}
			for _, line := range c.lines {
				if len(line) > 80 {
					t.Errorf("%d cells do not fit a screen of 80: %s", len(line), line)
				}
			}
		})
	}
}

func TestCautionsAreTheCallersOwn(t *testing.T) {
	AcidCautions()[0] = "changed"
	if slices.Contains(AcidCautions(), "changed") {
		t.Error("a caller changed the cautions of the next one")
	}
}
