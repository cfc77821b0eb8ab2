// Package wash holds the sums about cleaning with acid and with bleach: how
// much stock makes a bath, how strong it is, what neutralises it, and the
// cautions that belong beside every such figure.
//
// It is pure functions over numbers. It knows no tanks, no entries and no
// screen, imports the standard library alone and rounds nothing but the pH.
// Its figures come second to the bottle's label and the safety data sheet.
//
// Units are in the names. Every function that takes a person's numbers
// refuses what cannot be with a [FieldError].
//
// The command line, the screens and the plan of a change session import it.
package wash
