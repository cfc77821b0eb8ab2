package main

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"drainboard/cmd/drainboard/document"
	"drainboard/model"
)

// ruleFigures are the house rules a batch was reared by.
func ruleFigures(h model.House) []document.Figure {
	t := h.Temperature
	figures := []document.Figure{
		{Name: "change", Words: fmt.Sprintf("every %s h, overdue %s h later", plain(h.ChangeHours), plain(h.GraceHours))},
		{Name: "look, feed", Words: fmt.Sprintf("every %s h, every %s h", plain(h.LookHours), plain(h.FeedHours))},
		{Name: "temperature", Words: fmt.Sprintf("best %s to %s °C, bearable %s to %s °C; two waters: fine up to %s °C apart, held above %s °C",
			plain(t.Best.Low), plain(t.Best.High), plain(t.Bearable.Low), plain(t.Bearable.High), plain(t.StepFine), plain(t.StepHold))},
		{Name: "ready", Words: fmt.Sprintf("%s µm, %d lobes", plain(h.Growth.ReadyUM), h.Growth.ReadyLobes)},
		{Name: "marked", Words: fmt.Sprintf("under %s %% golden, over %s %% dead", plain(h.Growth.GoldenShare), plain(h.Growth.DeadShare))},
		{Name: "sieve", Words: fmt.Sprintf("holds a larva longer than %s x mesh; may lose %s %%", plain(h.Growth.SieveFactor), plain(h.Growth.CullPercent))},
	}
	figures = append(figures, document.Figure{Name: "mesh", Words: byDay(h.Mesh, func(b model.MeshBand) (int, string) {
		return b.FromDay, meshWords(b.UM) + " µm"
	})})
	figures = append(figures, document.Figure{Name: "density", Words: byDay(h.Density, func(b model.DensityBand) (int, string) {
		return b.FromDay, plain(b.PerLitre) + " a litre"
	})})
	figures = append(figures, document.Figure{Name: "ration", Words: byDay(h.Ration, rationWords)})
	if len(h.Corridor) > 0 {
		figures = append(figures, document.Figure{Name: "corridor", Words: byDay(h.Corridor, func(b model.GrowthBand) (int, string) {
			return b.FromDay, fmt.Sprintf("%s to %s µm", plain(b.LowUM), plain(b.HighUM))
		})})
	}
	return figures
}

func rationWords(b model.RationBand) (int, string) {
	var parts []string
	for _, alga := range slices.Sorted(maps.Keys(b.Share)) {
		parts = append(parts, fmt.Sprintf("%s %s", alga, plain(round(b.Share[alga], 3))))
	}
	return b.FromDay, fmt.Sprintf("%s cells a mL (%s)", plain(b.CellsPerML), strings.Join(parts, ", "))
}

// byDay words bands by age: "from day 0 105 or 150 µm; from day 12 200 µm".
func byDay[B any](bands []B, words func(B) (int, string)) string {
	parts := make([]string, len(bands))
	for i, b := range bands {
		day, what := words(b)
		parts[i] = fmt.Sprintf("from day %d %s", day, what)
	}
	if len(parts) == 0 {
		return "none given"
	}
	return strings.Join(parts, "; ")
}
