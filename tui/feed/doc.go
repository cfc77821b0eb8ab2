// Package feed is the screen of the feed round: what each tank gets today, what
// the cultures hold, the pour list to carry, and what the algae room must grow in
// the days to come. What was poured, counted in a culture or counted in a tank is
// entered here, one fact at a time.
//
// It works nothing out itself: the round and the demand come from the ledger. The
// root of the interface opens it by the name of the tank to begin with, or none;
// it imports no other screen.
package feed
