package state

import (
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
	if err == nil {
		err = f.Append(entries...)
	}
	if closing := f.Close(); err == nil {
		err = closing
	}
	return err
}
