package model

import (
	"fmt"
	"slices"
	"time"
)

// effective returns the entries as they count now: corrections followed, void
// ones and the corrections themselves left out, in the order in which things
// happened. Entries of one moment stand in the order they were keyed.
func effective(room *Room, entries []Entry) ([]Entry, error) {
	void, set := corrections(entries)
	if len(void) == 0 && len(set) == 0 && inOrder(entries) {
		return withoutCorrections(entries), nil
	}
	out := make([]Entry, 0, len(entries))
	for _, e := range entries {
		if void[e.N] || e.Kind() == KindCorrected {
			continue
		}
		for _, change := range set[e.N] {
			changed, err := change.apply(room, e)
			if err != nil {
				return nil, fmt.Errorf("entry %d corrects entry %d: %w", change.by, e.N, err)
			}
			e = changed
		}
		out = append(out, e)
	}
	slices.SortStableFunc(out, func(a, b Entry) int { return a.At.Compare(b.At) })
	return out, nil
}

func inOrder(entries []Entry) bool {
	return slices.IsSortedFunc(entries, func(a, b Entry) int { return a.At.Compare(b.At) })
}

func withoutCorrections(entries []Entry) []Entry {
	out := make([]Entry, 0, len(entries))
	for _, e := range entries {
		if e.Kind() != KindCorrected {
			out = append(out, e)
		}
	}
	return out
}

// change is the set of one correction in force.
type change struct {
	by  int // n of the correction
	set map[string]any
}

// CorrectedBy lists by n of an entry the corrections in force that speak of it,
// by their n and the latest last.
func (l *Ledger) CorrectedBy() map[int][]int {
	_, _, by := amendments(l.entries)
	return by
}

// corrections finds which entries are void and which read differently.
func corrections(entries []Entry) (void map[int]bool, set map[int][]change) {
	void, set, _ = amendments(entries)
	return void, set
}

// amendments is corrections, with the corrections in force of each entry, the
// latest last. A correction may itself be corrected; the latest word counts, so
// they are followed from the last to the first.
func amendments(entries []Entry) (void map[int]bool, set map[int][]change, by map[int][]int) {
	void, set, by = map[int]bool{}, map[int][]change{}, map[int][]int{}
	for i := len(entries) - 1; i >= 0; i-- {
		e := entries[i]
		f, ok := e.Fact.(*Corrected)
		if !ok || void[e.N] {
			continue
		}
		for _, c := range set[e.N] {
			if changed, err := c.applyFact(nil, f); err == nil {
				f = changed.(*Corrected)
			}
		}
		by[f.Entry] = slices.Insert(by[f.Entry], 0, e.N)
		if f.Void {
			void[f.Entry] = true
		} else {
			set[f.Entry] = slices.Insert(set[f.Entry], 0, change{e.N, f.Set})
		}
	}
	return void, set, by
}

// apply returns e as it reads under the change.
func (c change) apply(room *Room, e Entry) (Entry, error) {
	rest := map[string]any{}
	for name, v := range c.set {
		switch name {
		case "at":
			at, err := toTime(v)
			if err != nil {
				return e, err
			}
			e.At = at
		case "by":
			by, ok := v.(string)
			if !ok {
				return e, wrong("by", "initials are expected, not %v", v)
			}
			if err := checkText("by", by, false); err != nil {
				return e, err
			}
			e.By = by
		default:
			rest[name] = v
		}
	}
	fact, err := change{c.by, rest}.applyFact(room, e.Fact)
	if err != nil {
		return e, err
	}
	e.Fact = fact
	return e, nil
}

// applyFact returns a copy of f with the fields set; with a room the result is
// checked against it.
func (c change) applyFact(room *Room, f Fact) (Fact, error) {
	twin := CopyFact(f)
	fields := twin.Fields()
	for _, name := range sortedKeys(c.set) {
		i := slices.IndexFunc(fields, func(x Field) bool { return x.Name == name })
		if i < 0 {
			return nil, wrong("set."+name, "%s has no such field; it takes %s, at, by", f.Kind(), fieldNames(fields))
		}
		if err := setLoosely(fields[i], c.set[name]); err != nil {
			return nil, err
		}
	}
	if room != nil {
		if err := checkFact(room, twin); err != nil {
			return nil, err
		}
	}
	return twin, nil
}

// setLoosely takes a value as a journal holds it, or the text of one as typed.
func setLoosely(f Field, v any) error {
	if s, ok := v.(string); ok {
		return ParseField(f, s)
	}
	return f.Set(v)
}

func toTime(v any) (time.Time, error) {
	switch t := v.(type) {
	case time.Time:
		return t.Truncate(time.Second), nil
	case string:
		at, err := ParseMoment(t)
		if err != nil {
			return time.Time{}, wrong("at", "%v", err)
		}
		return at, nil
	}
	return time.Time{}, wrong("at", "a moment is expected, as in 2026-11-25T09:14:05-05:00, not %v", v)
}

// ParseMoment reads an instant written as RFC 3339, to the second. What the
// RFC forbids but a lenient reader takes (a comma, an offset of a day) is
// refused.
func ParseMoment(s string) (time.Time, error) {
	t, err := time.Parse(time.RFC3339, s)
	_, offset := t.Zone()
	if err != nil || slices.Contains([]byte(s), ',') || offset <= -86400 || offset >= 86400 {
		return time.Time{}, fmt.Errorf("%q: write a moment as 2026-11-25T09:14:05-05:00", s)
	}
	return t.Truncate(time.Second), nil
}
