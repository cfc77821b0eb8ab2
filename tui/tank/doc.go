// Package tank is the screen of one tank: what is known of it now, with the age
// of each figure, and its story, the newest first. Facts of the tank are entered
// here by one table of keys and kinds.
//
// The root opens it by the name of a tank; it opens the microscope and the batch
// by their names and knows no other screen.
package tank
