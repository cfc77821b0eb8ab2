// Package model holds the nouns and facts of a larval room: the Room and its
// house rules, the Entry that records one fact, and the Ledger that folds
// entries into what stands where now.
//
// There is one way in: an Entry is checked by Ledger.Check, made durable by
// whoever keeps the journal, and folded in by Ledger.Apply. There is one way
// out: every screen, sheet and JSON object is a view of the Ledger.
//
// The package knows no clock, no disk and no screen; "now" always comes in as
// a value. Package state keeps rooms on disk, packages below model hold the
// sums (water, wash, count, growth, feed) and the order of moves (sequence).
package model
