package theme

import (
	"strings"

	"github.com/charmbracelet/lipgloss"

	"drainboard/tui/text"
)

// Box is the glyphs of a frame, one cell each.
type Box struct {
	TopLeft, Top, TopRight          string
	Left, Right                     string
	BottomLeft, Bottom, BottomRight string
}

// Boxes are the frames in use: Single for what is normal, Double for an
// overdue tank, Open (dashed) for an empty one.
type Boxes struct {
	Single, Double, Open Box
}

func boxes(ascii bool) Boxes {
	if ascii {
		return Boxes{
			Single: Box{"+", "-", "+", "|", "|", "+", "-", "+"},
			Double: Box{"#", "=", "#", "#", "#", "#", "=", "#"},
			Open:   Box{".", ".", ".", ":", ":", "'", ".", "'"},
		}
	}
	return Boxes{
		Single: Box{"┌", "─", "┐", "│", "│", "└", "─", "┘"},
		Double: Box{"╔", "═", "╗", "║", "║", "╚", "═", "╝"},
		Open:   Box{"┌", "╌", "┐", "╎", "╎", "└", "╌", "┘"},
	}
}

// Around draws the frame with body inside and title in its top edge, exactly h
// rows of w cells; the body has (w-2) x (h-2) cells. The style is that of the
// frame, title and body bring their own. Below 2 x 2 only the body is shown.
func (b Box) Around(style lipgloss.Style, title string, body []string, w, h int) []string {
	if w < 2 || h < 2 {
		return text.Frame(body, w, h)
	}
	out := make([]string, 0, h)
	out = append(out, b.top(style, title, w))
	left, right := style.Render(b.Left), style.Render(b.Right)
	for _, row := range text.Frame(body, w-2, h-2) {
		out = append(out, left+row+right)
	}
	for len(out) < h-1 { // no cell inside
		out = append(out, left+right)
	}
	return append(out, style.Render(b.BottomLeft+strings.Repeat(b.Bottom, w-2)+b.BottomRight))
}

// top is the upper edge with the title one cell in from the corner.
func (b Box) top(style lipgloss.Style, title string, w int) string {
	if title == "" || w < 6 {
		return style.Render(b.TopLeft + strings.Repeat(b.Top, w-2) + b.TopRight)
	}
	title = text.Fit(title, min(text.Width(title), w-4))
	rest := w - 3 - text.Width(title)
	return style.Render(b.TopLeft+b.Top) + title + style.Render(strings.Repeat(b.Top, rest)+b.TopRight)
}
