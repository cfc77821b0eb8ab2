// Package desk is what every screen works at: the ledger, the clock, the theme
// and the one way to enter a fact. The root of the interface owns the desk and
// moves its clock; screens read it and enter facts. It draws nothing.
package desk

import (
	"time"

	"drainboard/model"
	"drainboard/tui/theme"
)

// Keeper makes entries durable. When Append returns nil they are on the device;
// when it returns an error nothing of them is.
type Keeper interface {
	Append(entries ...model.Entry) error
}

// Desk is shared by all screens of one program. Only the goroutine that updates
// the interface touches it.
type Desk struct {
	Ledger *model.Ledger
	Now    time.Time
	Theme  theme.Theme
	By     string // initials of who keys; empty where not given
	// ReadOnly says why nothing can be entered; empty where the room may be
	// written.
	ReadOnly string

	Keeper Keeper

	planned *planned
}

// Saved is what Enter made durable.
type Saved struct {
	Entries []model.Entry
	Odd     []string // what is odd about them, in words
}

// ReadOnlyError says why nothing can be entered.
type ReadOnlyError struct{ Why string }

// Error reads "not saved: ...".
func (e *ReadOnlyError) Error() string { return "not saved: " + e.Why }

// Enter checks each fact, makes it durable and folds it in, one after the other,
// as of now. It stops at the first that is refused or cannot be saved; what
// stood before it in the list stays saved and is returned.
func (d *Desk) Enter(facts ...model.Fact) (Saved, error) {
	return d.EnterAt(d.Now, facts...)
}

// EnterAt is Enter for what happened at an earlier moment.
func (d *Desk) EnterAt(at time.Time, facts ...model.Fact) (Saved, error) {
	var saved Saved
	if d.ReadOnly != "" {
		return saved, &ReadOnlyError{d.ReadOnly}
	}
	for _, fact := range facts {
		e := model.Entry{At: at.Truncate(time.Second), By: d.By, Fact: fact}
		if d.Now.Sub(e.At) > time.Minute {
			e.Keyed = d.Now.Truncate(time.Second)
		}
		if err := d.Ledger.Check(&e, d.Now); err != nil {
			return saved, err
		}
		odd := d.Ledger.Odd(e)
		if err := d.Keeper.Append(e); err != nil {
			return saved, err
		}
		if err := d.Ledger.Apply(e); err != nil {
			return saved, err
		}
		saved.Entries = append(saved.Entries, e)
		saved.Odd = append(saved.Odd, odd...)
	}
	return saved, nil
}

// Undo makes the last entry that counts void by a correction.
func (d *Desk) Undo() (Saved, error) {
	fact, ok := d.Ledger.Undo()
	if !ok {
		return Saved{}, errNothing
	}
	return d.Enter(fact)
}
