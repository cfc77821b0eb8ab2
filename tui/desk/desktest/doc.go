// Package desktest sets up a desk for the tests of screens: an invented room
// with some weeks of entries, kept in memory by a keeper that can be made to
// fail. Only tests import it.
package desktest
