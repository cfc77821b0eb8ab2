// Package count turns what was seen under a microscope into numbers of larvae
// and cells, with the limits that chance alone puts on them.
//
// It holds the exact Poisson interval, the total from subsamples with its
// tests of mixing and settling, cell counts by chamber, the comparison of two
// counts, and Estimate, a figure that carries its limits through sharing,
// removing, adding and survival.
//
// It is not a record of counts: it knows no tank, no batch, no clock and no
// disk, and draws no random numbers. Every function works on values alone.
// Package model imports it for the Ledger, and the command line and the bench
// screen for their sums.
package count
