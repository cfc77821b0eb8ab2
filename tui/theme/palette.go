package theme

import "github.com/charmbracelet/lipgloss"

// shade is one colour as each kind of terminal gets it. An empty string leaves
// the terminal's own colour.
type shade struct {
	full    string // "#D55E00"
	ansi256 string // number in the xterm table of 256
	ansi16  string // number among the 16 a user may have redefined
}

// palette is every colour in use, ink and fill by pairs.
type palette struct {
	faint, line, water                     shade
	overdueFill, dueFill, movingFill       shade
	actionFill, savedFill                  shade
	dark, light                            shade // ink on fills
	focusInk, focusFill, suspInk, suspFill shade
	overdueLine                            shade
}

// The hues: Okabe and Ito, "Color Universal Design" (2008).
func hues() palette {
	return palette{
		overdueFill: shade{"#D55E00", "166", "9"}, // vermilion
		dueFill:     shade{"#F0E442", "227", "11"},
		movingFill:  shade{"#56B4E9", "74", "14"},
		actionFill:  shade{"#0072B2", "25", "4"},
		savedFill:   shade{"#009E73", "36", "10"},
		dark:        shade{"#000000", "16", "0"},
		light:       shade{"#FFFFFF", "231", "15"},
		overdueLine: shade{"#D55E00", "166", "9"},
	}
}

// colours adds the greys of a dark or a light ground to the hues. The 16
// colours have no grey that is readable on every user's ground, so there the
// terminal's own ink is kept.
func colours(dark bool) palette {
	p := hues()
	if dark {
		p.faint = shade{"#949494", "246", ""}
		p.line = shade{"#8A8A8A", "245", ""}
		p.water = shade{"#A8A8A8", "248", ""}
		p.focusInk, p.focusFill = shade{"#000000", "16", "0"}, shade{"#E4E4E4", "254", "7"}
		p.suspInk, p.suspFill = shade{"#000000", "16", "0"}, shade{"#A8A8A8", "248", "7"}
		return p
	}
	p.faint = shade{"#626262", "241", ""}
	p.line = shade{"#6C6C6C", "242", ""}
	p.water = shade{"#626262", "241", ""}
	p.focusInk, p.focusFill = shade{"#FFFFFF", "231", "15"}, shade{"#303030", "236", "0"}
	p.suspInk, p.suspFill = shade{"#FFFFFF", "231", "15"}, shade{"#626262", "241", "0"}
	return p
}

func (s shade) at(d Depth) lipgloss.TerminalColor {
	text := s.full
	switch d {
	case Ansi256:
		text = s.ansi256
	case Sixteen:
		text = s.ansi16
	case None, Attributes:
		text = ""
	}
	if text == "" {
		return lipgloss.NoColor{}
	}
	return lipgloss.Color(text)
}
