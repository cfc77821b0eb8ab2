package theme

import (
	"fmt"
	"strconv"
	"strings"
)

// Options says how the screen shall look. The zero value means: find out from
// Env, dark where it does not tell, and no escape sequence at all where there
// is no TERM.
type Options struct {
	Theme string // "auto", "dark" or "light"; "" is auto
	Color string // "auto", "always" or "never"; "" is auto
	ASCII bool   // marks and frames in plain ASCII
	// Env looks an environment variable up and gives "" where it is not set.
	Env func(string) string
}

// Check says what is wrong with the words given for Theme and Color.
func (o Options) Check() error {
	switch o.Theme {
	case "", "auto", "dark", "light":
	default:
		return fmt.Errorf("theme %q is not known: use auto, dark or light", o.Theme)
	}
	switch o.Color {
	case "", "auto", "always", "never":
	default:
		return fmt.Errorf("color %q is not known: use auto, always or never", o.Color)
	}
	return nil
}

// Plain says that the terminal can do no more than print lines (TERM=dumb), so
// the program runs without the alternate screen.
func (o Options) Plain() bool {
	return o.env("TERM") == "dumb"
}

// ascii decides on plain glyphs: as asked for, where the terminal knows no
// others, and where it is set to draw frames and blocks two cells wide.
func (o Options) ascii() bool {
	wide, err := strconv.ParseBool(o.env("RUNEWIDTH_EASTASIAN"))
	return o.ASCII || o.Plain() || err == nil && wide
}

func (o Options) env(name string) string {
	if o.Env == nil {
		return ""
	}
	return o.Env(name)
}

// dark decides the ground: as asked for, else from COLORFGBG ("ink;ground" by
// number of the 16 colours, set by some terminals), else dark.
func (o Options) dark() bool {
	switch o.Theme {
	case "dark":
		return true
	case "light":
		return false
	}
	parts := strings.Split(o.env("COLORFGBG"), ";")
	ground, err := strconv.Atoi(parts[len(parts)-1])
	if err != nil || len(parts) < 2 {
		return true
	}
	return ground != 7 && ground < 9 // 7 and 9-15 are the light ones
}

// depth decides how many colours are used. --color=always beats NO_COLOR,
// which beats what the terminal can do.
func (o Options) depth() Depth {
	can := o.terminalDepth()
	switch {
	case o.Color == "always":
		return max(can, Sixteen)
	case can == None:
		return None
	case o.Color == "never", o.env("NO_COLOR") != "":
		return Attributes
	}
	return can
}

// terminalDepth reads what the terminal says of itself.
func (o Options) terminalDepth() Depth {
	term := o.env("TERM")
	switch colorterm := strings.ToLower(o.env("COLORTERM")); {
	case term == "dumb":
		return None
	case colorterm == "truecolor", colorterm == "24bit", o.env("WT_SESSION") != "", strings.HasSuffix(term, "-direct"):
		return TrueColor
	case term == "":
		return None
	case strings.Contains(term, "256color"):
		return Ansi256
	case strings.HasPrefix(term, "vt"):
		return Attributes
	}
	return Sixteen
}
