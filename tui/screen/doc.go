// Package screen is what every screen of the program is made of: the
// [Screen] interface the root drives, the few messages a screen sends to the
// root, and the parts screens share: [Field] and [Form] to type into, [List]
// to choose from, [Page] to read, and the [Footer] and [HelpLines] that are
// drawn from a screen's key table.
//
// Everything here is a value: Update gives the changed copy, View draws it in
// exactly the size it is told, and neither looks at a clock, a disk or the
// terminal. No screen knows another one; they meet in messages only. The
// screens and the root import this package; it imports keys, text and theme.
package screen
