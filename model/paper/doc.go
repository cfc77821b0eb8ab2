// Package paper gathers the figures that go on paper: the wall sheet of a room,
// the report of one batch from hatch to today, and the handover from one shift
// to the next.
//
// Everything is a pure function from a Ledger and a moment to a value. The
// package words nothing and lays nothing out, knows no clock, no disk and no
// screen. The command line imports it and turns its values into text, HTML and
// JSON.
package paper
