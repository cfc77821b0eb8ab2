// Package bench is the screen of the bench sums: a list to choose from and a small
// form for each, worked out anew at every key. Each figure has its unit, each sum
// its source, and the cautions about acid and bleach stand beside the figures
// whatever is typed.
//
// It works nothing out itself and enters nothing: the sums come from package bench
// of the model. The root of the interface opens it; it imports no other screen.
package bench
