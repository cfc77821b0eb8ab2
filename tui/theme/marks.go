package theme

// Marks are the one-cell signs that stand beside words. Each has an ASCII twin;
// within one set all marks of states differ. None is an emoji, and none of the
// states' marks has two widths among East Asian terminals.
type Marks struct {
	Due      string // falls due now
	Overdue  string // past due and grace; drawn twice
	Ready    string // empty, clean and full: open for larvae
	Dirty    string // emptied, not washed yet
	Washed   string // washed, not filled yet
	Out      string // out of use
	Suspect  string // own gear, changed last
	Hold     string // held until someone decides
	Moving   string // larvae on their way
	Done     string // step done, entry saved
	Deferred string // step put off with a reason
	Odd      string // reading unlike its neighbours
	Stale    string // figure older than its limit, or unknown
	Pointer  string // the chosen row
	Arrow    string // from, to
	Bullet   string // item of a list
	More     string // more rows above or below

	// Level is the fill of one cell in eighths, from empty to full.
	Level [9]string
}

func marks(ascii bool) Marks {
	if ascii {
		return Marks{
			Due: "@", Overdue: "!", Ready: "o", Dirty: "~", Washed: "-", Out: "x", Suspect: "#", Hold: "|",
			Moving: "=", Done: "+", Deferred: "v", Odd: "*", Stale: "?",
			Pointer: ">", Arrow: ">", Bullet: "-", More: ":",
			Level: [9]string{" ", "_", "_", "_", "-", "-", "=", "=", "#"},
		}
	}
	return Marks{
		Due: "▪", Overdue: "!", Ready: "◊", Dirty: "~", Washed: "◦", Out: "x", Suspect: "#", Hold: "¦",
		Moving: "»", Done: "✓", Deferred: "▾", Odd: "*", Stale: "?",
		Pointer: "►", Arrow: "→", Bullet: "•", More: "⋮",
		Level: [9]string{" ", "▁", "▂", "▃", "▄", "▅", "▆", "▇", "█"},
	}
}

// Fill is the glyph for a cell of which share (0 to 1) is under water. Any
// water at all shows, and only a full cell looks full.
func (m Marks) Fill(share float64) string {
	switch {
	case !(share > 0): // also where the share is not a number
		return m.Level[0]
	case share >= 1:
		return m.Level[8]
	}
	return m.Level[max(1, min(7, int(share*8+0.5)))]
}
