// Package state keeps a larval room on disk: a folder with room.toml,
// procedure.toml, a journal of entries, and a lock. It is the only package that
// touches a disk.
//
// The journal is a folder of one TOML file a month (2026-11.toml, by the UTC
// month in which entries were keyed). An entry is one [[entry]] table whose last
// line is its sum: the first 16 hexadecimal digits of the SHA-256 of the sum of
// the entry before it, nothing for the first, followed by the exact bytes of
// this one from [[entry]] to the line before sum. One blank line, which no sum
// covers, stands between two entries. The chain goes on from file to file in the
// order of their names, so any entry that is changed, lost, moved or doubled
// shows, and with it a file that is missing between two others. Entries are only
// ever appended.
//
// An entry is durable, written and flushed to the device, before Append returns
// nil. Opening never goes on with less than what was kept without saying so: the
// unfinished last entry of a power cut is set aside with a notice, anything else
// that does not match its sum is refused with file, line and entry.
//
// The package does not judge what entries mean; model.Ledger does. It has no
// screen and says nothing by itself: what people should know comes back as an
// error, a Problem or a notice. It is imported by cmd only.
package state

// Time zones come with the program, so that a bare machine has them.
import _ "time/tzdata"
