package state

import (
	"iter"
	"os"

	"drainboard/model"
)

// Found makes a room in a new folder from the text of a room.toml, and lets
// history give the entries it begins with. It is how an invented room comes
// about; a room of people begins with Init.
func Found(dir, roomTOML string, o Options, history func(*model.Room) ([]model.Entry, error)) error {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	if err := (newFile{roomFile, roomTOML}).write(dir); err != nil {
		return err
	}
	o.Write = true
	f, err := Open(dir, o)
	if err != nil {
		return err
	}
	entries, err := history(f.Room())
	for month := range months(entries) {
		if err == nil {
			err = f.Append(month...)
		}
	}
	if closing := f.Close(); err == nil {
		err = closing
	}
	return err
}

// months cuts entries where their journal file changes.
func months(entries []model.Entry) iter.Seq[[]model.Entry] {
	return func(yield func([]model.Entry) bool) {
		from := 0
		for i := range entries {
			last := i == len(entries)-1
			if last || monthOf(entries[i+1].TypedAt()) != monthOf(entries[i].TypedAt()) {
				if !yield(entries[from : i+1]) {
					return
				}
				from = i + 1
			}
		}
	}
}
