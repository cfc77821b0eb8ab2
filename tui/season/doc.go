// Package season is the screen of all batches side by side: how many were alive,
// how fast they grew, when they were ready and where their larvae went; and, on a
// second page, which habits of the house went with better batches, with a plot
// and the sentence that this proves nothing.
//
// The root opens it by its name. It opens the batch screen by its name and enters
// nothing. The figures are those of package model/season.
package season
