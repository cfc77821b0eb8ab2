package model

import (
	"fmt"
	"slices"
	"time"
)

// Ledger is the fold of a room's entries: what stands where, and all that was
// written. It is not safe for use by several goroutines at once.
type Ledger struct {
	room    *Room
	entries []Entry // as written, by n
	events  []Entry // as they count, in the order in which things happened
	fold    *fold

	// checked is the ledger with the entry that Check let pass last, where the
	// whole history had to be folded for it: Apply need not fold it again.
	checked *Ledger
}

// NewLedger returns the ledger of a room with no entries yet.
func NewLedger(room *Room) *Ledger {
	return &Ledger{room: room, fold: newFold(room)}
}

// LoadLedger folds entries that a journal holds. An entry that cannot be true
// in the room is an ImpossibleError.
func LoadLedger(room *Room, entries []Entry) (*Ledger, error) {
	l := NewLedger(room)
	for i, e := range entries {
		if e.N != i+1 {
			return nil, fmt.Errorf("entry %d stands where entry %d is expected", e.N, i+1)
		}
		if err := checkFact(room, e.Fact); err != nil {
			return nil, &ImpossibleError{e, err}
		}
		if err := l.checkCorrection(e, entries[:i]); err != nil {
			return nil, &ImpossibleError{e, err}
		}
	}
	l.entries = slices.Clone(entries)
	if err := l.refold(); err != nil {
		return nil, err
	}
	return l, nil
}

// ImpossibleError says which entry cannot be true, and why.
type ImpossibleError struct {
	Entry Entry
	Err   error
}

// Error reads "entry 14 (moved): to: C1 is dirty".
func (e *ImpossibleError) Error() string {
	return fmt.Sprintf("entry %d (%s): %v", e.Entry.N, e.Entry.Kind(), e.Err)
}

// Unwrap returns the reason.
func (e *ImpossibleError) Unwrap() error { return e.Err }

// Room returns the room the ledger is of.
func (l *Ledger) Room() *Room { return l.room }

// Next returns the number the next entry gets.
func (l *Ledger) Next() int { return len(l.entries) + 1 }

// Entries returns every entry as written, by n. The caller must not change it.
func (l *Ledger) Entries() []Entry { return l.entries }

// Events returns the entries as they count: corrections followed, void ones
// left out, in the order in which things happened. The caller must not change it.
func (l *Ledger) Events() []Entry { return l.events }

// Check says whether an entry can be true; now is the moment of asking. It
// gives the entry its number, whole seconds, and names as the room writes them.
// What makes a
// later entry impossible is refused by naming that entry.
func (l *Ledger) Check(e *Entry, now time.Time) error {
	e.N = l.Next()
	// The journal keeps whole seconds; what is folded here must order the same
	// way when it is read back.
	e.At, e.Keyed = e.At.Truncate(time.Second), e.Keyed.Truncate(time.Second)
	if e.At.IsZero() {
		return wrong("at", "is missing; write a moment as 2026-11-25T09:14:05-05:00")
	}
	if e.At.After(now) {
		return wrong("at", "%s lies in the future; it is %s now", l.clock(e.At), l.clock(now))
	}
	if err := checkText("by", e.By, false); err != nil {
		return err
	}
	if err := checkFact(l.room, e.Fact); err != nil {
		return err
	}
	if err := l.checkCorrection(*e, l.entries); err != nil {
		return err
	}
	if l.appends(*e) {
		return l.fold.allows(*e)
	}
	return l.checkRefold(*e)
}

func (l *Ledger) clock(t time.Time) string { return t.In(l.room.Zone).Format(time.RFC3339) }

// appends reports whether an entry happened after all others, so that nothing
// before it has to be folded again.
func (l *Ledger) appends(e Entry) bool {
	return e.Kind() != KindCorrected && !e.At.Before(l.fold.last)
}

// checkCorrection says whether a correction names an earlier entry and fields
// it has, and writes the values as the journal holds them.
func (l *Ledger) checkCorrection(e Entry, before []Entry) error {
	f, ok := e.Fact.(*Corrected)
	if !ok {
		return nil
	}
	if f.Entry > len(before) {
		return wrong("entry", "there is no entry %d before this one; the last is %d", f.Entry, len(before))
	}
	if f.Void {
		return nil
	}
	target := before[f.Entry-1]
	changed, err := change{e.N, f.Set}.apply(l.room, target)
	if err != nil {
		return err
	}
	if changed.At.After(e.At) && changed.At.After(target.At) {
		return wrong("set.at", "%s lies after the correction itself, %s", l.clock(changed.At), l.clock(e.At))
	}
	typed := map[string]any{}
	for _, field := range changed.Fact.Fields() {
		if _, given := f.Set[field.Name]; given {
			typed[field.Name], _ = field.Value()
		}
	}
	if _, given := f.Set["at"]; given {
		typed["at"] = changed.At
	}
	if _, given := f.Set["by"]; given {
		typed["by"] = changed.By
	}
	f.Set = typed
	return nil
}

// checkRefold folds the whole history with e in its place.
func (l *Ledger) checkRefold(e Entry) error {
	trial := &Ledger{room: l.room, entries: append(slices.Clip(l.entries), e)}
	err := trial.refold()
	impossible, ok := err.(*ImpossibleError)
	switch {
	case err == nil:
		l.checked = trial
		return nil
	case ok && impossible.Entry.N == e.N:
		return impossible.Err
	case ok:
		return fmt.Errorf("entry %d (%s, %s) would become impossible: %w",
			impossible.Entry.N, impossible.Entry.Kind(), l.clock(impossible.Entry.At), impossible.Err)
	}
	return err
}

// Apply folds an entry in that Check has let pass and that is durable.
func (l *Ledger) Apply(e Entry) error {
	if e.N != l.Next() {
		return fmt.Errorf("entry %d cannot follow entry %d", e.N, len(l.entries))
	}
	if l.appends(e) {
		if err := l.fold.add(e); err != nil {
			return &ImpossibleError{e, err}
		}
		l.entries = append(l.entries, e)
		l.events = append(l.events, e)
		l.checked = nil
		return nil
	}
	trial := l.checked
	if !trial.endsWith(e) {
		trial = &Ledger{room: l.room, entries: append(slices.Clip(l.entries), e)}
		if err := trial.refold(); err != nil {
			return err
		}
	}
	*l = *trial
	return nil
}

// endsWith reports whether the last entry of a ledger is e itself.
func (l *Ledger) endsWith(e Entry) bool {
	if l == nil || len(l.entries) != e.N {
		return false
	}
	last := l.entries[e.N-1]
	return last.At.Equal(e.At) && last.Keyed.Equal(e.Keyed) && last.By == e.By && last.Fact == e.Fact
}

// refold folds every entry from the first on.
func (l *Ledger) refold() error {
	events, err := effective(l.room, l.entries)
	if err != nil {
		return err
	}
	l.events = events
	l.fold = newFold(l.room)
	for _, e := range events {
		if err := l.fold.add(e); err != nil {
			return &ImpossibleError{e, err}
		}
	}
	return nil
}

// Copy returns a ledger of its own with the same entries.
func (l *Ledger) Copy() *Ledger {
	twin := &Ledger{room: l.room, entries: slices.Clone(l.entries)}
	// The entries fold here, so they fold there.
	_ = twin.refold()
	return twin
}

// At returns the room as it stood at a moment, by all that is known today:
// corrections count whenever they were made.
func (l *Ledger) At(t time.Time) *Ledger {
	if !l.fold.last.After(t) {
		return l
	}
	then := &Ledger{room: l.room, entries: l.entries, fold: newFold(l.room)}
	for _, e := range l.events {
		if e.At.After(t) {
			break
		}
		// The whole history folds, so each beginning of it does.
		_ = then.fold.add(e)
		then.events = append(then.events, e)
	}
	return then
}

// Tanks returns every tank as it stands, in the order of room.toml.
func (l *Ledger) Tanks() []TankNow { return l.fold.tanks }

// Tank returns a tank as it stands, and false where the room has none of that
// name.
func (l *Ledger) Tank(name string) (TankNow, bool) {
	t := l.fold.tank(name)
	if t == nil {
		return TankNow{}, false
	}
	return *t, true
}

// Batches returns every batch in the order of its first stocking.
func (l *Ledger) Batches() []*Batch { return l.fold.batches }

// Batch returns a batch by name, nil where there is none.
func (l *Ledger) Batch(name string) *Batch { return l.fold.batch(name) }

// Session returns the change session that is open, nil where none is.
func (l *Ledger) Session() *SessionNow { return l.fold.openSession() }

// Sessions returns every change session, the latest last.
func (l *Ledger) Sessions() []*SessionNow { return l.fold.sessions }

// Supply returns a water source as it stands, nil where the room has none of
// that name.
func (l *Ledger) Supply(name string) *SupplyNow { return l.fold.supplies[name] }

// Culture returns the last cell count of an alga's culture, nil where there is
// none.
func (l *Ledger) Culture(alga string) *CellCount { return l.fold.cultures[alga] }

// Void reports which entries count no longer, by n.
func (l *Ledger) Void() map[int]bool {
	void, _ := corrections(l.entries)
	return void
}

// Undo returns the correction that undoes the last entry that counts, and false
// where there is none.
func (l *Ledger) Undo() (*Corrected, bool) {
	void := l.Void()
	for i := len(l.entries) - 1; i >= 0; i-- {
		if e := l.entries[i]; e.Kind() != KindCorrected && !void[e.N] {
			return &Corrected{Entry: e.N, Why: "undone", Void: true}, true
		}
	}
	return nil, false
}
