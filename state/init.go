package state

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"time"

	"drainboard/model"
)

// InitOptions say what a new room begins with. Everything has a default.
type InitOptions struct {
	Name   string  // of the room; the folder's name where empty
	Tanks  int     // how many, named C1, C2, ...; 4 where 0
	Litres float64 // of each tank; 120 where 0
	Zone   string  // IANA name; the machine's where empty
}

// Init makes a room: a folder with a commented room.toml and procedure.toml that
// say what holds where nothing is said. It refuses to write over either, and
// options a room.toml could not hold.
func Init(dir string, o InitOptions) error {
	o = withDefaults(dir, o)
	if o.Tanks < 1 || o.Tanks > model.MaxTanks {
		return fmt.Errorf("%d tanks: a room has from 1 to %d", o.Tanks, model.MaxTanks)
	}
	files := []newFile{
		{procedureFile, writeProcedure(model.DefaultProcedure())},
		{roomFile, writeRoom(o)},
	}
	_, problems := decodeRoom(fileIn(dir, roomFile), files[1].text, o.Name)
	if err := refused(problems); err != nil {
		return fmt.Errorf("the room would not open: %w", err)
	}
	for _, f := range files {
		if _, err := os.Lstat(filepath.Join(dir, f.name)); !errors.Is(err, fs.ErrNotExist) {
			return fmt.Errorf("%s is there already; nothing was written", fileIn(dir, f.name))
		}
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	for _, f := range files {
		if err := f.write(dir); err != nil {
			return err
		}
	}
	return syncDir(dir)
}

func withDefaults(dir string, o InitOptions) InitOptions {
	if o.Name == "" {
		o.Name = folderName(dir)
	}
	if o.Tanks == 0 {
		o.Tanks = 4
	}
	if o.Litres == 0 {
		o.Litres = 120
	}
	if o.Zone == "" {
		o.Zone = machineZone()
	}
	return o
}

// machineZone finds the IANA name of the machine's time zone; empty where it
// cannot be known.
func machineZone() string {
	name := time.Local.String()
	if name == "Local" && runtime.GOOS != "windows" {
		if target, err := filepath.EvalSymlinks("/etc/localtime"); err == nil {
			_, name, _ = strings.Cut(filepath.ToSlash(target), "zoneinfo/")
		}
	}
	if _, err := time.LoadLocation(name); err != nil || name == "Local" {
		return ""
	}
	return name
}

// newFile is a file that must not be there yet.
type newFile struct{ name, text string }

func (n newFile) write(dir string) error {
	path := filepath.Join(dir, n.name)
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return err
	}
	_, err = f.WriteString(n.text)
	if err == nil {
		err = f.Sync()
	}
	if closing := f.Close(); err == nil {
		err = closing
	}
	if err != nil {
		// Half a file would stand in the way of the next try.
		_ = os.Remove(path)
	}
	return err
}
