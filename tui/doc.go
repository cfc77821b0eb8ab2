// Package tui is the root of the full-screen interface: it shows one screen at
// a time over a stack, draws the footer, keeps the clock and hands keys on. Each
// screen is a package of its own below; they know each other by name only. The
// disk is handed in by the command as a desk.Keeper.
package tui
