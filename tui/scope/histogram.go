package scope

import (
	"fmt"

	"drainboard/model/growth"
	"drainboard/tui/chart"
)

// Size of the histogram: beside the figures from wideW cells on, else beneath.
const (
	wideW                         = 104
	histogramW                    = 48
	leastHistogram, mostHistogram = 7, 12
)

// histogram draws the lengths beside those of last time.
func (s *Scope) histogram(w, h int) []string {
	f := s.figures
	if f.err != nil {
		return nil
	}
	most := max(4, w/4)
	drawn := chart.Histogram{
		Title: "readings", X: chart.Axis{Title: "µm"},
		TodayName: fmt.Sprintf("today %d", f.sum.N),
	}
	var bins growth.Histogram
	if f.before != nil && f.changeErr == nil {
		bins = growth.Bin(most, f.sample.UM, f.before.UM)
		drawn.Title, drawn.Before, drawn.BeforeName = "% of readings", bins.Counts[1], fmt.Sprintf("last time %d", f.beforeSum.N)
	} else {
		bins = growth.Bin(most, f.sample.UM)
	}
	drawn.Today, drawn.LowEdge, drawn.BinWidth = bins.Counts[0], bins.LowUM, bins.WidthUM
	mode := chart.Block
	if s.desk.Theme.ASCII {
		mode = chart.ASCII
	}
	return drawn.Draw(w, h, mode).Styled(s.charted)
}

func (s *Scope) charted(class chart.Class, cells string) string {
	th := s.desk.Theme
	switch class {
	case chart.ClassBar:
		return th.Plain.Render(cells)
	case chart.ClassTitle:
		return th.Strong.Render(cells)
	}
	return th.Faint.Render(cells)
}
