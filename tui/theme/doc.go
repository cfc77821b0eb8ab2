// Package theme holds how things look: one [Theme] value of styles named by
// meaning, one set of marks and one of frames, built once at the start.
//
// A state is always told by a word, a mark and a place as well; the colour
// comes on top and may be missing. Normal is grey: with nothing due no style
// that is in use has a hue. Badges (overdue, due, moving, an asked-for action,
// just saved) set both ink and fill, so their contrast does not depend on the
// terminal's own colours. The hues are those of Okabe and Ito (2008), which
// stay apart for colour-blind eyes; text reaches the contrast of 4.5:1 that
// WCAG 2.2 asks for (success criterion 1.4.3), drawn lines 3:1 (1.4.11).
//
// The package reads no environment and asks the terminal nothing: [Options]
// brings both in, and the lipgloss renderer is the theme's own. Everything
// under tui imports it; it imports only text, lipgloss and termenv.
//
// A style ends with a full reset, so styles are put side by side and never one
// inside the other.
package theme
