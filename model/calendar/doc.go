// Package calendar looks some days ahead: which tanks fall due on each day of
// the room's calendar, how long the crew needs for them, and what they take of
// sea water, acid and algae. It proposes which changes to make a little early so
// that no day is too full, and says what one more empty tank would save.
//
// It is a reckoning, not a plan: larvae are named by the tank that holds them
// today and keep its volume, every change is made when it falls due, no batch is
// stocked, and a batch leaves with the last day that the demand for food reckons
// with. The order of moves of a session is package sequence's.
//
// The package is pure: no clock, no disk, no randomness, and the search for a
// proposal is bounded by a count of nodes. It imports model, model/sequence and
// the sums below model; the command line and the screens import it.
package calendar
