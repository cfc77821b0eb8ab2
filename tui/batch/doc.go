// Package batch is the screen of one batch, by four pages: its growth with the
// day on which it should be ready, the lengths of all batches over one another,
// its survival by the counts, and its story. Batches that have left the room can
// be read like those in it.
//
// It enters nothing and works nothing out: every figure is one of the ledger's,
// worded here with what it comes from and how sure it is. The root opens it by
// the name of a batch; it opens the tank by its name and knows no other screen.
package batch
