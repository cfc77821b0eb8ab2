// Package scope is the screen at the microscope: shell lengths keyed one after
// the other without looking at the screen, what they add up to, and the look at
// lobes, gut, swimming and dead in the same rhythm.
//
// Each reading is an entry of its own and durable before the next is typed; the
// screen keeps no list beside the ledger, so what it shows survives a kill. The
// root opens it by the name of a tank.
package scope
