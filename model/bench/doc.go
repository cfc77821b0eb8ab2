// Package bench is the table of the bench sums: of each its name, what has to be
// given, and a function from what was typed to figures with their units, the
// published source of the formula and the cautions that belong to it.
//
// It works nothing out itself: the sums live in packages water, wash, count,
// growth and feed. It reads texts, so that whoever asks (a form, a flag) takes
// the same numbers and refuses with the same words, and it rounds nothing: a
// Figure says to how many decimals it is worth showing. It knows no room, no
// clock, no disk and no screen. The bench screen imports it, and the command
// line may.
package bench
