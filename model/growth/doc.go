// Package growth works on shell lengths: the summary of a sample, readings that look odd, growth
// between looks, the age at which a batch should be ready, and which sieve would hold the larvae.
//
// Every function is pure: readings in, figures out. Lengths are micrometres (um), ages are days
// since hatch as a real number, intervals are 95 % and two-sided. Nothing here knows a tank, a
// date, a clock or a screen, and nothing here drops a reading: odd ones are named, people decide.
//
// The model imports it, and so does whatever shows or prints its figures; it imports only the
// standard library and gonum.
package growth
