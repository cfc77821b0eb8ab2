// Package log is the screen of every entry as it was written, the newest first:
// searched, read in full, made void or corrected with a reason, and added to by
// entries of what happened earlier.
//
// However many entries there are, a frame makes only the rows that are seen, and
// a search goes on in small pieces between the keys.
package log
