// Package session is the screen of a change session. Before it the plan stands
// with its reasons, and the crew may change it; while it is open one step stands
// on the screen at a time; after it, what moved and what went otherwise.
//
// All that must survive a restart is in the ledger: the screen keeps only what is
// being typed. It decides nothing about larvae: the order comes from package
// sequence, what an answer means from the ledger. Its one way to write is the
// desk. The root of the interface opens it; the command line prints [PlanText].
package session
