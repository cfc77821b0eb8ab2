package chart

// glyphs are the one-cell characters of a mode.
type glyphs struct {
	vertical, tickY, corner, horizontal, tickX string // axes
	interval, foot                             string // of a mark, on the axis
	point                                      string
	bar, barTop, barBottom, barCross           string
	flat, steep                                string // a curve: level, and between two rows
	riseFrom, riseTo, fallFrom, fallTo         string // the corners of a climb and of a fall; "" for none
	forecast, corridor, level, mark            string
	today, before, beforeLow                   string
	eighths                                    [9]string
}

func boxGlyphs() glyphs {
	return glyphs{
		vertical: "│", tickY: "┤", corner: "└", horizontal: "─", tickX: "┬",
		interval: "━", foot: "┻",
		point: "●",
		bar:   "│", barTop: "┬", barBottom: "┴", barCross: "┼",
		flat: "─", steep: "│",
		riseFrom: "╯", riseTo: "╭", fallFrom: "╮", fallTo: "╰",
		forecast: "·", corridor: "░", level: "╌", mark: "┊",
		today: "█", before: "▒", beforeLow: "▁",
		eighths: [9]string{" ", "▁", "▂", "▃", "▄", "▅", "▆", "▇", "█"},
	}
}

func asciiGlyphs() glyphs {
	return glyphs{
		vertical: "|", tickY: "+", corner: "+", horizontal: "-", tickX: "+",
		interval: "=", foot: "^",
		point: "o",
		bar:   "|", barTop: "|", barBottom: "|", barCross: "|",
		flat: "-", steep: "|",
		riseFrom: "/", fallTo: "\\",
		forecast: "~", corridor: ":", level: "-", mark: "!",
		today: "#", before: ":", beforeLow: "_",
		eighths: [9]string{" ", "_", "_", "_", "-", "-", "=", "=", "#"},
	}
}

func glyphsOf(mode Mode) glyphs {
	if mode == ASCII {
		return asciiGlyphs()
	}
	return boxGlyphs()
}
