// Package keys is what the keyboard can do, as data: one [Table] of bindings
// for each screen, from which the footer, the help page and the table in the
// README are made, so none of them can disagree with what a key does.
//
// It also brings the many ways in which terminals report a key to one:
// [Input] rewrites the bytes of a number pad in application mode before
// bubbletea reads them, [Normalise] turns what bubbletea delivers into one
// message for each key pressed, and [Guard] swallows the repeats of a command
// key that is held down or bounces under a glove.
//
// What an action does is the screen's business. Everything under tui imports
// this package; it imports bubbletea and bubbles/key only.
package keys
