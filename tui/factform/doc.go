// Package factform is a form to type one fact into. Its rows are made from the
// model's own table of a kind's fields, so that every screen asks for a fact in
// the same way and refuses it with the same words as the command line.
//
// It is not a screen and enters nothing: a screen shows it, hands it keys and
// takes the fact from it. The screens import it; it imports the model, screen
// and desk.
package factform
