// Package state keeps a larval room on disk: a folder with room.toml,
// procedure.toml, a journal of entries, and a lock. It is the only package that
// touches a disk.
//
// An entry is durable, written and flushed to the device, before Append returns
// nil. Opening never goes on with less than what was kept without saying so:
// the unfinished last entry of a power cut is set aside with a notice, anything
// else that does not match its sum is refused with file, line and entry.
//
// The package does not judge what entries mean; model.Ledger does. It has no
// screen and says nothing by itself: what people should know comes back as an
// error, a Problem or a notice. It is imported by cmd only.
package state

// Time zones come with the program, so that a bare machine has them.
import _ "time/tzdata"
