package desktest

import "drainboard/model"

// Keeper keeps entries in memory. While Fail is set it keeps nothing.
type Keeper struct {
	Entries []model.Entry
	Fail    error
}

// Append keeps entries, or none of them.
func (k *Keeper) Append(entries ...model.Entry) error {
	if k.Fail != nil {
		return k.Fail
	}
	k.Entries = append(k.Entries, entries...)
	return nil
}
