// Package season sets the batches of a room side by side: how many were alive,
// how they grew, when they were ready, where their larvae went, and by which
// habits of the house they were kept. It then asks whether batches kept one way
// fared better than batches kept another, by ranks.
//
// It is a way of looking, not a proof: no experiment was made, the batches are
// few, and habits change together. So it gives a rank correlation with the number
// of batches behind it and no test of it.
//
// It folds nothing of its own and keeps nothing: it reads a Ledger at a moment
// that comes in as a value. The season screen and the command line import it.
package season
