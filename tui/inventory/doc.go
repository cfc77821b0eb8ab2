// Package inventory is the screen by which a room begins in mid-season: what
// stands in each tank, one row a tank, typed with the digits, Enter and the
// arrows. It shows in words what will be entered, asks once, and then makes the
// entries in the order of time through the desk. Tanks of which the journal knows
// the state already are shown and left alone.
//
// What is not known is not made up: a mean length of which nobody knows the
// number of larvae becomes a remark, not a reading.
//
// The root opens it by its name. It opens no other screen.
package inventory
