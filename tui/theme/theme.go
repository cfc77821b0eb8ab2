package theme

import (
	"io"

	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"
)

// Depth is how much styling the terminal gets.
type Depth int

// None writes no escape sequence at all; Attributes only bold, underline and
// reverse; the others that and their number of colours.
const (
	None Depth = iota
	Attributes
	Sixteen
	Ansi256
	TrueColor
)

// Theme is the looks of the whole program. It is built once and only read.
type Theme struct {
	Plain  lipgloss.Style // ordinary text, in the terminal's own ink
	Faint  lipgloss.Style // what is not needed at a glance
	Strong lipgloss.Style // the figure the eye shall find
	Title  lipgloss.Style // name of a screen or a block

	Overdue lipgloss.Style // badge: past due and grace; with a frame and a double mark
	Due     lipgloss.Style // badge: falls due now
	Moving  lipgloss.Style // badge: larvae on their way
	Action  lipgloss.Style // badge: what the program asks a person to do
	Saved   lipgloss.Style // badge: just saved; nothing else is green
	Suspect lipgloss.Style // badge without hue: tank marked suspect
	Hold    lipgloss.Style // badge: a move held back until someone decides
	Error   lipgloss.Style // badge: refused or failed

	Focus        lipgloss.Style // the chosen row or field; a mark shows it as well
	Key          lipgloss.Style // name of a key in the footer and the help page
	Frame        lipgloss.Style // frames and rules
	FrameOverdue lipgloss.Style // the double frame of an overdue tank
	Water        lipgloss.Style // the water level: time left
	Stale        lipgloss.Style // a figure older than its limit, with its age and ?

	Marks Marks
	Boxes Boxes
	Dark  bool // made for a dark ground
	ASCII bool // the last pass over a frame is text.ASCII
	Depth Depth
}

// New builds the theme that the options ask for. Options.Check has been passed.
func New(o Options) Theme {
	return Build(o.dark(), o.depth(), o.ascii())
}

// Bare is the theme without any escape sequence, for printing and for tests.
func Bare(ascii bool) Theme {
	return Build(true, None, ascii)
}

// Build makes a theme for a ground, a depth and a set of glyphs.
func Build(dark bool, d Depth, ascii bool) Theme {
	b := builder{renderer(dark, d), d}
	p := colours(dark)
	return Theme{
		Plain: b.style(), Faint: b.ink(p.faint), Strong: b.style().Bold(true), Title: b.style().Bold(true),
		Overdue: b.badge(p.dark, p.overdueFill, loud), Due: b.badge(p.dark, p.dueFill, reversed),
		Moving: b.badge(p.dark, p.movingFill, underlined), Action: b.badge(p.light, p.actionFill, loud),
		Saved: b.badge(p.dark, p.savedFill, strong), Suspect: b.badge(p.suspInk, p.suspFill, underlined),
		Hold: b.badge(p.dark, p.overdueFill, loud), Error: b.badge(p.dark, p.overdueFill, loud),
		Focus: b.badge(p.focusInk, p.focusFill, reversed), Key: b.style().Bold(true),
		Frame: b.ink(p.line), FrameOverdue: b.ink(p.overdueLine), Water: b.ink(p.water), Stale: b.ink(p.faint),
		Marks: marks(ascii), Boxes: boxes(ascii), Dark: dark, ASCII: ascii, Depth: d,
	}
}

// renderer is a lipgloss renderer that neither reads the environment nor asks
// the terminal.
func renderer(dark bool, d Depth) *lipgloss.Renderer {
	profile := termenv.Ascii
	switch d {
	case Attributes, Sixteen:
		profile = termenv.ANSI
	case Ansi256:
		profile = termenv.ANSI256
	case TrueColor:
		profile = termenv.TrueColor
	case None:
	}
	r := lipgloss.NewRenderer(io.Discard, termenv.WithProfile(profile))
	r.SetColorProfile(profile)
	r.SetHasDarkBackground(dark)
	return r
}

// builder makes styles for one depth.
type builder struct {
	r *lipgloss.Renderer
	d Depth
}

func (b builder) style() lipgloss.Style { return b.r.NewStyle() }

func (b builder) ink(s shade) lipgloss.Style { return b.style().Foreground(s.at(b.d)) }

// badge sets ink and fill, or, where there are no colours, what instead makes.
func (b builder) badge(ink, fill shade, instead func(lipgloss.Style) lipgloss.Style) lipgloss.Style {
	if b.d <= Attributes {
		return instead(b.style())
	}
	return b.style().Foreground(ink.at(b.d)).Background(fill.at(b.d))
}

func strong(s lipgloss.Style) lipgloss.Style   { return s.Bold(true) }
func reversed(s lipgloss.Style) lipgloss.Style { return s.Reverse(true) }
func loud(s lipgloss.Style) lipgloss.Style     { return s.Bold(true).Reverse(true) }

func underlined(s lipgloss.Style) lipgloss.Style {
	return s.Underline(true).UnderlineSpaces(true) // else each letter costs a sequence of its own
}
