package state

import (
	"os"
	"runtime"
)

// disk is what an append does to a device. Tests put failures in its place.
type disk struct {
	write    func(f *os.File, b []byte, at int64) (int, error)
	sync     func(f *os.File) error
	truncate func(f *os.File, size int64) error
	syncDir  func(path string) error
}

func realDisk() disk {
	return disk{
		write:    func(f *os.File, b []byte, at int64) (int, error) { return f.WriteAt(b, at) },
		sync:     (*os.File).Sync,
		truncate: (*os.File).Truncate,
		syncDir:  syncDir,
	}
}

// syncDir makes the names within a folder durable. Windows has no such call and
// keeps names by itself.
func syncDir(path string) error {
	if runtime.GOOS == "windows" {
		return nil
	}
	d, err := os.Open(path)
	if err != nil {
		return err
	}
	defer d.Close()
	return d.Sync()
}
