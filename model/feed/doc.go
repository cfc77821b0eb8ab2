// Package feed turns the food wanted in a tank into litres of algae: the ration
// of one tank, the feed round of a whole room from the cultures at hand, the
// pour list, and what the algae room must grow in the days to come.
//
// A mixed diet is always split by cells, whatever the room thinks in; weight
// tables turn a diet by weight into one by cells first. 1 cell per uL is 1,000
// cells per mL.
//
// It is not a feeding record and gives no orders: it knows no clock, no disk,
// no screen and no room, and takes every age and volume as a value. Package
// model imports it for the Ledger, and the command line and the feed and
// calendar screens for their sums.
package feed
