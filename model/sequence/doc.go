// Package sequence finds the order of moves of a change session, lays out its
// timetable and says whether that order is proved best.
//
// A session empties tanks one by one: the larvae of a source are siphoned into
// a ready tank, and the emptied tank is washed and filled to become a
// destination itself. [Best] looks for the order that leaves the fewest sources
// unmoved, then makes the worst overrun smallest, then follows the room's own
// rank as far as those two allow. [Retime] times a list that people have made.
//
// Why exact search is affordable: which tank a source goes into depends only on
// the order of moves, never on the clock, because tanks become ready in the
// order they were emptied and the one ready longest is preferred. So, for a
// given order, all times are sums and maxima of durations, earlier can never
// hurt, and sources of one volume are interchangeable but for their due times.
//
// A source may be split, that is moved in equal parts, each a siphon and a rinse of
// its own into a tank of its own; and two of one batch may be joined in a tank that
// was fresh in this session. Both only where the [Problem] asks for it. A split
// source counts as unmoved unless all its parts are moved, and the plan begins none
// that it cannot finish. Such problems have a search of their own, exact as well,
// for there sources no longer swap places freely.
//
// The package is pure: no clock, no disk, no randomness, and the search is
// bounded by a count of nodes, so the same problem always gives the same plan.
// It knows no batches, meshes or journals and takes plain values; only ledger.go
// knows the room's ledger, and states it as a [Problem]. The command line and the
// screens import it; the package model does not.
package sequence
