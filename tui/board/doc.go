// Package board is the first screen: the grid of tanks, what falls due, the
// empty tank and what is wrong. It shows the ledger and changes nothing but by
// the desk. The root of the interface opens it; it imports no other screen.
package board
